#pragma once

#include <string_view>

namespace flowhand {

/// How much a pilot is shown while flying.
enum class Help {
    Guided,    ///< what to do, where the control is and has to go, and what comes next
    Prompted,  ///< what to do
    FromMemory ///< that something is to be done
};

/// By the word that the settings and a run's header have for it.
[[nodiscard]] constexpr Help helpNamed(std::string_view word) {
    return word == "prompted" ? Help::Prompted : word == "from memory" ? Help::FromMemory : Help::Guided;
}

} // namespace flowhand
