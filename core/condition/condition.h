#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "base/signal.h"
#include "base/time.h"
#include "condition/scope.h"

namespace flowhand {

/// Kleene's three values.
enum class Truth : std::uint8_t { False, True, Unknown };

struct ConditionProgram; // the compiled form, private to core/condition

/// One thing wrong in a condition's text; `offset` counts bytes from the start of the text.
struct ConditionProblem {
    std::size_t offset = 0;
    std::string code;
    std::string message;
    bool isWarning = false;
};

/// A length of time in a condition.
struct ConditionWindow {
    Duration length{};
    std::size_t offset = 0; ///< in the text: of the form that has it
    bool isHeld = false;    ///< of a `held`: the time it takes at the least
};

/// A condition, parsed, checked for types and units, and compiled once. Immutable and cheap to copy; any thread.
class Condition {
public:
    /// Appends what it finds to `problems`; no value when any of it is an error. Grammar: core/condition/README.md.
    [[nodiscard]] static std::optional<Condition> compile(std::string_view text, const ConditionScope& scope,
                                                          std::vector<ConditionProblem>& problems);

    [[nodiscard]] const std::string& text() const;
    /// Every signal it reads, each once, in the order of first mention.
    [[nodiscard]] const std::vector<SignalId>& signals() const;
    /// True only at single instants: a `rise`, `fall` or `sequence` at the top, under `and`, or as all operands of
    /// `or`.
    [[nodiscard]] bool isInstant() const;
    /// Holds a `held`, or a `moved` without a window of its own: its truth depends on the reference time.
    [[nodiscard]] bool usesReference() const;
    /// Holds a `moved` without a window: refused in a guard.
    [[nodiscard]] bool hasOpenMoved() const;

    /// The longest window that ends, gap of a `sequence` or length of a `held`; of length 0 without.
    [[nodiscard]] const ConditionWindow& longestWindow() const;

    /// Whether a movement of the control `signal` that ends at `value` may be one towards this condition: is it true,
    /// as far as comparisons that read `signal` say? Comparisons that do not read it, and what was in the past, are
    /// left open, so with two levers in one condition each may move first. A comparison that also reads other signals
    /// takes them from `otherValues` (by SignalId) and is left open while one is unknown. `once`, `historically`,
    /// `held`, `rise`, `fall` (of the reverse) count as their operand, `since` as its left one, `sequence` as any of
    /// its operands, `moved` as its stretch or left open.
    [[nodiscard]] bool fits(SignalId signal, Value value, const std::vector<Value>& otherValues) const;

    /// Whether it is so for these values, by SignalId, without looking back: for 'found set'. `once`, `historically`
    /// and `held` count as their operand, `since` as both; `rise`, `fall`, `sequence` and `moved` need something to
    /// happen and are false.
    [[nodiscard]] Truth holdsNow(const std::vector<Value>& values) const;

    [[nodiscard]] const ConditionProgram& program() const { return *m_program; }

private:
    explicit Condition(std::shared_ptr<const ConditionProgram> program) : m_program(std::move(program)) {}
    std::shared_ptr<const ConditionProgram> m_program;
};

} // namespace flowhand
