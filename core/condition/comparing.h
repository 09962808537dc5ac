#pragma once

#include <cstdint>
#include <optional>

#include "condition/arithmetic.h"
#include "condition/program.h"

namespace flowhand {

/// Compiles what is read off the signals at one moment: comparisons of numbers, positions and on/off signals.
/// Each gives the index of the node that it added to `program`, or nothing after complaining.
class Comparing {
public:
    Comparing(const ConditionScope& scope, Complaints& complaints, Arithmetic& arithmetic, ConditionProgram& program)
        : m_scope(scope), m_complaints(complaints), m_arithmetic(arithmetic), m_program(program) {}

    [[nodiscard]] std::optional<std::uint32_t> comparison(const Syntax& tree);
    /// A word that stands alone.
    [[nodiscard]] std::optional<std::uint32_t> standAlone(const Syntax& word);
    /// The index in program.units for what is measured in the unit of `quantity`.
    [[nodiscard]] std::size_t marginUnit(const Quantity& quantity);

private:
    [[nodiscard]] std::optional<SignalId> signalOf(const Syntax& tree, SignalKind kind) const;
    [[nodiscard]] std::optional<std::uint32_t> numbers(const Syntax& tree);
    [[nodiscard]] std::optional<std::uint32_t> position(const Syntax& tree, SignalId signal, const Syntax& other,
                                                        Comparator comparator);
    [[nodiscard]] std::optional<std::uint32_t> onOff(const Syntax& tree, SignalId signal, const Syntax& other);
    [[nodiscard]] std::optional<std::string> positionName(const Signal& signal, const Syntax& other);
    std::optional<std::uint32_t> refuse(const Syntax& tree, std::string code, std::string message);
    std::uint32_t threshold(const Syntax& tree, SignalId signal, Comparator comparator, double constant,
                            bool isDiscrete);
    std::uint32_t twoSignals(const Syntax& tree, SignalId left, SignalId right);
    std::uint32_t add(const Syntax& tree, Comparison comparison);

    const ConditionScope& m_scope;
    Complaints& m_complaints;
    Arithmetic& m_arithmetic;
    ConditionProgram& m_program;
};

} // namespace flowhand
