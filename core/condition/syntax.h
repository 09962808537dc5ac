#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace flowhand {

enum class Comparator : std::uint8_t { Less, LessEqual, Greater, GreaterEqual, Equal, NotEqual };

/// What was written, before names, types and units are looked at. Chains of `and`, `or`, `+`, `*` are one node with
/// many children, so the tree is never deeper than kDeepestNesting.
struct Syntax {
    enum class Kind : std::uint8_t {
        Number,   ///< text, unit
        Word,     ///< text: a signal or a position
        Quoted,   ///< text: a position
        Aircraft, ///< text: the name after the point
        Truth,    ///< text: true or false
        Call,     ///< text(children...)
        Not,
        And,
        Or,
        Compare, ///< two children, comparator
        Sum,     ///< children, operators[i] between child i and i + 1: + or -
        Product, ///< the same: * or /
        Negate,
        Window ///< from .. to; one child: without end
    };

    Kind kind = Kind::Word;
    std::size_t begin = 0; ///< byte offsets in the text
    std::size_t end = 0;
    std::string text;
    std::string unit;
    Comparator comparator = Comparator::Equal;
    std::string operators;
    std::vector<Syntax> children;
};

} // namespace flowhand
