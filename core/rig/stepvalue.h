#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "base/signal.h"

namespace flowhand {

class ControlReader;

/// The value of a control that only says 'one more' and 'one less': where it stands is counted from a start.
class StepValue {
public:
    /// `step`: of a number, in its unit; positions go one by one. Outside lowest..highest it stops, or begins anew at
    /// the other end if it `wraps`.
    struct Spec {
        SignalKind kind = SignalKind::Number;
        double start = 0.0;
        double step = 1.0;
        double lowest = 0.0;
        double highest = 0.0;
        bool wraps = false;
    };

    StepValue() = default;
    explicit StepValue(const Spec& spec) : m_spec(spec), m_number(spec.start) {}

    void move(std::int64_t steps);
    void set(Value value);
    [[nodiscard]] Value value() const;
    /// Steps from here to `wanted`, the nearest whole number; nothing for what it cannot be.
    [[nodiscard]] std::optional<std::int64_t> stepsTo(Value wanted) const;

private:
    Spec m_spec;
    double m_number = 0.0; ///< of positions: the index
};

/// Keys `start`, the one named `stepKey` (of numbers) and `wraps`. The signal must have a range or positions.
[[nodiscard]] StepValue readStepValue(ControlReader& reader, std::string_view stepKey);

} // namespace flowhand
