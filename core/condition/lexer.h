#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "condition/condition.h"

namespace flowhand {

/// One word of a condition's text. `begin` and `end` are byte offsets.
struct Token {
    enum class Kind { Number, Word, Quoted, Symbol, End };

    Kind kind = Kind::End;
    std::string text; ///< of numbers: without the unit; of quoted ones: without the quotes
    std::string unit; ///< of numbers: the unit's symbol where one follows, "" otherwise
    std::size_t begin = 0;
    std::size_t end = 0;
};

/// Longest text of a condition, in bytes. Written by hand they have some hundred.
inline constexpr std::size_t kLongestCondition = 8192;

/// The tokens up to and with one End. On an error `problems` has it and the list is empty.
[[nodiscard]] std::vector<Token> tokensOf(std::string_view text, std::vector<ConditionProblem>& problems);

/// The words, numbers and quoted texts in it, each once: what may be the name of a position. Nothing when it cannot be
/// read.
[[nodiscard]] std::vector<std::string> wordsOf(std::string_view text);

/// Whether it has a meaning of its own in the language, so that a position of that name needs quotes.
[[nodiscard]] bool isKeyword(std::string_view word);

} // namespace flowhand
