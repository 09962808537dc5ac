#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace flowhand {

/// Without spaces before and behind.
[[nodiscard]] inline std::string trimmed(std::string_view text) {
    const std::size_t begin = text.find_first_not_of(' ');
    return begin == std::string_view::npos ? std::string()
                                           : std::string(text.substr(begin, text.find_last_not_of(' ') + 1 - begin));
}

/// What stands between the separators, each trimmed(): "0 deg, 15 deg" at ','.
[[nodiscard]] inline std::vector<std::string> parted(std::string_view text, char separator) {
    std::vector<std::string> parts;
    for (;;) {
        const std::size_t end = text.find(separator);
        parts.push_back(trimmed(text.substr(0, end)));
        if (end == std::string_view::npos)
            return parts;
        text.remove_prefix(end + 1);
    }
}

} // namespace flowhand
