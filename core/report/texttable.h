#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace flowhand {

/// Characters as a terminal counts them, for UTF-8 without wide or combining ones.
[[nodiscard]] std::size_t textWidth(std::string_view text);

/// `text` broken at blanks into lines of at most `width` characters; longer words are cut.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t width);

struct TextColumn {
    std::string title;
    std::size_t widest = 0; ///< cells that need more are wrapped
    bool isNumber = false;  ///< to the right
};

/// A table in columns as narrow as their cells, two blanks apart, with its titles. `indent` stands before each line.
/// Each row has a cell for each column.
[[nodiscard]] std::string textTable(const std::vector<TextColumn>& columns,
                                    const std::vector<std::vector<std::string>>& rows, std::string_view indent);

} // namespace flowhand
