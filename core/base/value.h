#pragma once

#include <cmath>
#include <limits>

namespace flowhand {

/// What a signal is at a moment. A number is in the signal's own unit; on/off is 1 or 0; a position is its index
/// in the signal's ordered list, `between` = in transit, equal to no position; unknown = nothing said yet.
class Value {
public:
    constexpr Value() = default;
    [[nodiscard]] static constexpr Value unknown() { return Value(); }
    /// `number` must be finite: readers and feeds refuse NaN and infinities at the door.
    [[nodiscard]] static constexpr Value number(double number) { return Value(number); }
    [[nodiscard]] static constexpr Value onOff(bool on) { return Value(on ? 1.0 : 0.0); }
    [[nodiscard]] static constexpr Value position(int index) { return Value(index); }
    [[nodiscard]] static constexpr Value between() { return Value(-1.0); }

    [[nodiscard]] bool isKnown() const { return !std::isnan(m_raw); }
    [[nodiscard]] double number() const { return m_raw; }
    [[nodiscard]] bool isOn() const { return m_raw == 1.0; }
    /// -1 for `between`. Only for a known position.
    [[nodiscard]] int position() const { return static_cast<int>(m_raw); }

    /// Two unknowns are equal; that is what 'nothing changed' means.
    friend bool operator==(Value a, Value b) { return a.m_raw == b.m_raw || (!a.isKnown() && !b.isKnown()); }

private:
    explicit constexpr Value(double raw) : m_raw(raw) {}
    double m_raw = std::numeric_limits<double>::quiet_NaN();
};

} // namespace flowhand
