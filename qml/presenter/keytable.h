#pragma once

#include <vector>

#include <QString>

namespace flowhand {

/// Where a key means something: the place of the window, or all of them.
enum class KeyPlace { Everywhere = -1, Fly = 0, Bench = 1, Review = 2, Progress = 3, Library = 4, Manual = 5 };

/// A key and what it does.
struct KeyUse {
    QString id; ///< in the settings: "fly.hold"; empty: the key is fixed
    KeyPlace place = KeyPlace::Everywhere;
    int key = 0;   ///< the usual one, a Qt::Key
    QString shown; ///< its name on buttons
    QString does;
    bool isControl = false; ///< moves an on-screen control
};

/// Every key of the window, in the order in which they are listed; the controls' (keymap.h) last. Made anew, so that
/// its words have the language of now.
[[nodiscard]] std::vector<KeyUse> keyTable();

} // namespace flowhand
