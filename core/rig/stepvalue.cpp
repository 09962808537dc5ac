#include "rig/stepvalue.h"

#include <algorithm>
#include <cmath>

#include "rig/controlreader.h"

namespace flowhand {

namespace {

/// Sums of decimal steps stay decimal: 0.1 + 0.2 is 0.3.
double tidied(double number) {
    constexpr double kGrid = 1e6;
    const double tidy = std::round(number * kGrid) / kGrid;
    return tidy == 0.0 ? 0.0 : tidy;
}

} // namespace

void StepValue::move(std::int64_t steps) {
    const double wanted = tidied(m_number + static_cast<double>(steps) * m_spec.step);
    if (!m_spec.wraps) {
        m_number = std::clamp(wanted, m_spec.lowest, m_spec.highest);
        return;
    }
    // Positions wrap from the last to the first; both ends of a turning number are the same place.
    const double way = m_spec.highest - m_spec.lowest + (m_spec.kind == SignalKind::Number ? 0.0 : 1.0);
    const double turns = std::floor((wanted - m_spec.lowest) / way);
    m_number = tidied(wanted - turns * way);
}

void StepValue::set(Value value) {
    m_number = std::clamp(m_spec.kind == SignalKind::Number ? value.number() : static_cast<double>(value.position()),
                          m_spec.lowest, m_spec.highest);
}

Value StepValue::value() const {
    return m_spec.kind == SignalKind::Number ? Value::number(m_number) : Value::position(static_cast<int>(m_number));
}

std::optional<std::int64_t> StepValue::stepsTo(Value wanted) const {
    if (!wanted.isKnown() || wanted == Value::between())
        return std::nullopt;
    const double number = m_spec.kind == SignalKind::Number ? wanted.number() : wanted.position();
    return std::llround((number - m_number) / m_spec.step);
}

StepValue readStepValue(ControlReader& reader, std::string_view stepKey) {
    StepValue::Spec spec;
    const Signal& signal = reader.signal();
    spec.kind = signal.kind;
    spec.wraps = reader.toml().boolean("wraps").value_or(false);
    const Value start = reader.value("start", {});
    if (signal.kind == SignalKind::OnOff) {
        reader.demand(SignalKind::Number);
        return StepValue();
    }
    if (signal.kind == SignalKind::Position) {
        spec.start = start.isKnown() ? start.position() : 0;
        spec.highest = static_cast<double>(signal.positions.size()) - 1;
        return StepValue(spec);
    }
    spec.start = start.isKnown() ? start.number() : 0.0;
    const Value step = reader.value(stepKey, {});
    spec.step = step.isKnown() ? step.number() : 1.0;
    if (spec.step == 0.0) {
        reader.error("bad-value", "'" + std::string(stepKey) + "' cannot be 0", stepKey);
        spec.step = 1.0;
    }
    const auto range = reader.wholeRange(0);
    spec.lowest = range[0];
    spec.highest = range[2];
    if (spec.start < spec.lowest || spec.start > spec.highest)
        reader.error("bad-value", "'start' lies outside what '" + signal.name + "' can be", "start");
    return StepValue(spec);
}

} // namespace flowhand
