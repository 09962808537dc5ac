#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/unit.h"
#include "condition/condition.h"
#include "condition/expression.h"
#include "condition/scope.h"
#include "condition/syntax.h"

namespace flowhand {

/// A number in a condition with its unit, and where it is written.
struct Quantity {
    Expression expression; ///< in `unit`
    Unit unit;
    std::vector<SignalId> signals; ///< in the order of first mention, each once
    std::size_t begin = 0;
    std::size_t end = 0;
};

/// Collects what is wrong with one condition while it is compiled.
class Complaints {
public:
    Complaints(std::string_view text, std::vector<ConditionProblem>& problems) : m_text(text), m_problems(problems) {}

    void error(std::size_t offset, std::string code, std::string message) {
        m_problems.push_back({offset, std::move(code), std::move(message), false});
        m_hasErrors = true;
    }
    void warning(std::size_t offset, std::string code, std::string message) {
        m_problems.push_back({offset, std::move(code), std::move(message), true});
    }
    [[nodiscard]] bool hasErrors() const { return m_hasErrors; }
    /// What was written from `begin` to `end`, in quotes.
    [[nodiscard]] std::string quoted(std::size_t begin, std::size_t end) const {
        return "'" + std::string(m_text.substr(begin, end - begin)) + "'";
    }

private:
    std::string_view m_text;
    std::vector<ConditionProblem>& m_problems;
    bool m_hasErrors = false;
};

/// Checks arithmetic for types and units and turns it into expressions. What is wrong goes to `complaints`; then there
/// is no value.
class Arithmetic {
public:
    Arithmetic(const ConditionScope& scope, Complaints& complaints) : m_scope(scope), m_complaints(complaints) {}

    [[nodiscard]] std::optional<Quantity> quantity(const Syntax& tree);
    /// Changes `quantity` to the unit of `to`, with which it is compared or added.
    [[nodiscard]] bool convertTo(const Quantity& to, Quantity& quantity);
    /// A length of time: a number with its unit, exactly, or `aircraft.NAME`.
    [[nodiscard]] std::optional<Duration> duration(const Syntax& tree);

    void complainOfUnknown(const Syntax& word);
    /// Null after complaining of an unknown name.
    [[nodiscard]] const AircraftValue* aircraftValue(const Syntax& tree);

private:
    [[nodiscard]] std::optional<Quantity> number(const Syntax& tree);
    [[nodiscard]] std::optional<Quantity> signal(const Syntax& tree);
    [[nodiscard]] std::optional<Quantity> fromAircraft(const Syntax& tree);
    [[nodiscard]] std::optional<Quantity> sum(const Syntax& tree);
    [[nodiscard]] std::optional<Quantity> product(const Syntax& tree);
    [[nodiscard]] std::optional<Quantity> call(const Syntax& tree);
    [[nodiscard]] std::optional<Quantity> finished(const Syntax& tree, Quantity quantity);
    [[nodiscard]] std::optional<Quantity> notANumber(const Syntax& tree);

    const ConditionScope& m_scope;
    Complaints& m_complaints;
};

/// Adds those of `more` that are not yet in `signals`.
void addSignals(std::vector<SignalId>& signals, const std::vector<SignalId>& more);

} // namespace flowhand
