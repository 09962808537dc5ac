#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/tomlfile.h"
#include "procedure/aircraftfile.h"
#include "procedure/flow.h"

namespace flowhand {

/// What the readers of one flow file's tables share. Lives while the file is read; everything given must outlive it.
class FlowContext {
public:
    FlowContext(const TomlFile& file, const Aircraft& aircraft, Problems& problems)
        : m_file(file), m_aircraft(aircraft), m_problems(problems) {}

    [[nodiscard]] const TomlFile& file() const { return m_file; }
    [[nodiscard]] const Aircraft& aircraft() const { return m_aircraft; }
    [[nodiscard]] Problems& problems() { return m_problems; }

    /// The condition under `key`; nothing when there is none or it is wrong.
    [[nodiscard]] std::optional<PlacedCondition> condition(TomlReader& reader, std::string_view key);
    /// Like condition(), and an error `missing-key` when it is not there.
    [[nodiscard]] std::optional<PlacedCondition> requiredCondition(TomlReader& reader, std::string_view key);
    [[nodiscard]] std::optional<PlacedCondition> compile(const TomlNode& text);
    /// A condition that stands in no file, for steps that leave theirs out.
    [[nodiscard]] std::optional<PlacedCondition> compile(const std::string& text, const SourcePlace& place);

    /// Error `unknown-signal` with the nearest one.
    [[nodiscard]] std::optional<SignalId> signal(const std::string& name, const SourcePlace& place);
    /// Error `unknown-control` also for a motion signal.
    [[nodiscard]] std::optional<SignalId> control(const std::string& name, const SourcePlace& place);
    /// The seat under `key`, else `fallback`; error `unknown-seat`.
    [[nodiscard]] std::string seat(TomlReader& reader, std::string_view key, const std::string& fallback);

    /// A value for `signal`, written as in the cockpit ("12", "40 %") or with the aircraft's values
    /// ("aircraft.planned_flap", "aircraft.vref + 10 kt").
    [[nodiscard]] std::optional<Value> value(const Signal& signal, const TomlNode& text);

    /// `weight`, 1 to 3, 1 unless said.
    [[nodiscard]] int weight(TomlReader& reader);

private:
    [[nodiscard]] Result<double> sum(const Signal& signal, std::string_view text) const;
    [[nodiscard]] Result<double> term(const Signal& signal, std::string_view text) const;
    [[nodiscard]] Result<AircraftValue> aircraftValue(std::string_view name) const;

    const TomlFile& m_file;
    const Aircraft& m_aircraft;
    Problems& m_problems;
};

} // namespace flowhand
