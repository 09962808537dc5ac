#pragma once

#include <string>
#include <vector>

#include <QString>

namespace flowhand {

/// What a key does to the on-screen controls it is for.
enum class KeyAction { Raise, Lower, Toggle, Press };

/// One key for one control, or for a pair that is moved together.
struct KeyBinding {
    int key = 0; ///< Qt::Key
    QString shown;
    std::vector<std::string> controls; ///< signal names
    KeyAction action = KeyAction::Toggle;
};

/// The keys of the on-screen controls, by the controls' signal names. A control that is not named here is reached with
/// Tab and moved with the arrow keys, like all others.
[[nodiscard]] const std::vector<KeyBinding>& keyBindings();
/// "Q A" for the control's own keys (not those of pairs), more before less; empty when it has none.
[[nodiscard]] QString keysOf(const std::string& control);

} // namespace flowhand
