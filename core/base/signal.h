#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/error.h"
#include "base/unit.h"
#include "base/value.h"

namespace flowhand {

enum class SignalId : std::uint32_t {};
inline constexpr SignalId kNoSignal{0xFFFFFFFF};
[[nodiscard]] constexpr std::size_t indexOf(SignalId id) {
    return static_cast<std::size_t>(id);
}

enum class SignalKind : std::uint8_t { Number, OnOff, Position };

/// One piecewise constant, right-continuous quantity: a cockpit control's state or a motion quantity.
struct Signal {
    std::string name;  ///< as in conditions: lower case, digits, '_'
    std::string label; ///< as shown to a person
    SignalKind kind = SignalKind::Number;
    Unit unit;           ///< of numbers
    double lowest = 0.0; ///< of numbers, in `unit`; lowest == highest: no range is known
    double highest = 0.0;
    double scale = 1.0; ///< of numbers: a typical span, in `unit`; makes margins of different units comparable
    std::vector<std::string> positions; ///< of positions, in their order on the control
};

/// The signals of one run, by dense id. Immutable once a run has begun; then any thread may read it.
class SignalTable {
public:
    /// Error `duplicate-signal` when the name is taken.
    [[nodiscard]] Result<SignalId> add(Signal signal);
    [[nodiscard]] std::optional<SignalId> find(std::string_view name) const;
    [[nodiscard]] const Signal& operator[](SignalId id) const { return m_signals[indexOf(id)]; }
    [[nodiscard]] std::size_t size() const { return m_signals.size(); }
    [[nodiscard]] const std::vector<Signal>& all() const { return m_signals; }

private:
    std::vector<Signal> m_signals;
    std::unordered_map<std::string, SignalId> m_byName;
};

/// As a person reads it: "12", "on", "between", "82 kt", "4.9 deg", "not known yet".
[[nodiscard]] std::string valueText(const Signal& signal, Value value);

/// A number with sensible digits for its size, without its unit: 82, 4.9, 0.35.
[[nodiscard]] std::string numberText(double number);

/// Reads "82 kt", "on", "12", "down" for this signal. The error names what was expected.
[[nodiscard]] Result<Value> parseValue(const Signal& signal, std::string_view text);

} // namespace flowhand
