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

/// A condition, parsed, checked for types and units, and compiled once. Immutable and cheap to copy; any thread.
class Condition {
public:
    /// Appends what it finds to `problems`; no value when any of it is an error. Grammar: procedures/README.md.
    [[nodiscard]] static std::optional<Condition> compile(std::string_view text, const ConditionScope& scope,
                                                          std::vector<ConditionProblem>& problems);

    [[nodiscard]] const std::string& text() const;
    /// Every signal it reads, each once, in the order of first mention.
    [[nodiscard]] const std::vector<SignalId>& signals() const;
    /// True only at single instants: a `rise`, `fall` or `sequence` at the top, or under `and`/`or`.
    [[nodiscard]] bool isInstant() const;
    /// Holds a `held`, or a `moved` without a window of its own: its truth depends on the reference time.
    [[nodiscard]] bool usesReference() const;
    /// Holds a `moved` without a window: refused in a guard.
    [[nodiscard]] bool hasOpenMoved() const;

    /// The parts of this condition that can be read off the value of `signal` alone, at one moment: what a movement of
    /// that control has to end with to fit. True also when the condition says nothing about the signal alone. `held`
    /// counts as its operand.
    [[nodiscard]] bool fits(SignalId signal, Value value, const std::vector<Value>& otherValues) const;

    /// Without windows and reference (held(A,d) counts as A; moved as false): is it so for these values, by SignalId?
    /// For 'found set'.
    [[nodiscard]] Truth holdsNow(const std::vector<Value>& values) const;

    [[nodiscard]] const ConditionProgram& program() const { return *m_program; }

private:
    explicit Condition(std::shared_ptr<const ConditionProgram> program) : m_program(std::move(program)) {}
    std::shared_ptr<const ConditionProgram> m_program;
};

} // namespace flowhand
