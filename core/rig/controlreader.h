#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/signal.h"
#include "base/tomlfile.h"
#include "rig/axisfilter.h"
#include "rig/axismap.h"
#include "rig/control.h"

namespace flowhand {

/// What the controls of a rig file may refer to.
struct RigScope {
    const SignalTable& signals;
    std::size_t controlCount = 0; ///< the first so many signals can be wired
    const std::vector<DeviceWish>& devices;
};

/// Reads the keys of one [[control]] in the terms of rigs. Complaints go to the problems; what could not be read comes
/// back as something harmless, for the file is refused anyway. Lives while one control is read.
class ControlReader {
public:
    ControlReader(TomlReader& toml, const RigScope& scope);

    [[nodiscard]] TomlReader& toml() { return m_toml; }
    /// What the person calls it: `name`, else the first signal's label.
    [[nodiscard]] const std::string& name() const { return m_name; }
    /// Of `signal`; empty after an error.
    [[nodiscard]] const std::vector<SignalId>& signalIds() const { return m_signalIds; }
    [[nodiscard]] const Signal& signal(std::size_t at = 0) const { return m_scope.signals[m_signalIds[at]]; }
    [[nodiscard]] SourcePlace place() const { return m_toml.tableNode().place; }

    void error(std::string code, const std::string& message, std::string_view key);
    void error(std::string code, const std::string& message, SourcePlace place);

    /// The inputs of a key: one name or a list of `least` to `most`.
    [[nodiscard]] std::vector<InputRef> inputs(std::string_view key, InputUse use, std::size_t least, std::size_t most);
    /// Exactly one input.
    [[nodiscard]] InputRef input(std::string_view key, InputUse use);
    /// The input that `text` names: "button 3", "hat 1 up", or with its device "pedals: X".
    [[nodiscard]] InputRef inputNamed(const std::string& text, const SourcePlace& place, InputUse use);

    /// A value of signal `at`; `missing` when the key is not there, and an error when there is no `missing` either.
    [[nodiscard]] Value value(std::string_view key, std::optional<Value> missing, std::size_t at = 0);
    [[nodiscard]] Value valueOf(const std::string& text, const SourcePlace& place, std::size_t at = 0);
    /// Of a control that keeps its state by itself; unknown with `start = "ask"`.
    [[nodiscard]] Value start();
    [[nodiscard]] std::vector<Value> values(std::string_view key);
    /// On/off signals have natural values, the others none.
    [[nodiscard]] std::optional<Value> naturalValue(bool isOn) const;

    /// A whole number of counts, not negative.
    [[nodiscard]] std::int64_t counts(std::string_view key, std::int64_t missing);
    /// In whole ticks, rounded up.
    [[nodiscard]] Duration duration(std::string_view key, Duration missing);
    /// `noise`, `least_change`, `spike_limit`, `settle`, `median`, `smooth`.
    [[nodiscard]] AxisLimits limits();
    /// `range` and `to`, or `points`; `centre`, `dead_band` and `end_band`; of the number signal 0.
    [[nodiscard]] AxisMap map();
    /// Of one of `count` parts, from `ranges` and `end_band`.
    [[nodiscard]] AxisMap mapOfPart(std::size_t part, std::size_t count, std::array<double, 3> values);
    /// The signal's whole range; an error when it has none.
    [[nodiscard]] std::array<double, 3> wholeRange(std::size_t at);
    /// An error, and false, unless signal `at` is of this kind.
    bool demand(SignalKind kind, std::size_t at = 0);

    /// Two whole numbers that differ.
    [[nodiscard]] std::optional<std::pair<std::int64_t, std::int64_t>> span(const TomlNode& node);

private:
    void readSignals();
    void readRange(AxisMap::Shape& shape);
    void readPoints(AxisMap::Shape& shape);
    [[nodiscard]] std::optional<AxisMap::Point> point(const TomlNode& table);
    void checkShape(const AxisMap::Shape& shape);
    [[nodiscard]] std::array<double, 3> valuesOfRange();
    [[nodiscard]] std::optional<DeviceIndex> deviceNamed(const std::string& text, const SourcePlace& place);

    TomlReader& m_toml;
    const RigScope& m_scope;
    std::string m_name;
    std::vector<SignalId> m_signalIds;
    std::optional<DeviceIndex> m_device; ///< the one that inputs without a device belong to
};

/// The raw numbers that the rig file expects of an input, to be compared with what the device can send.
void expectRaws(InputRef& input, const AxisMap& map);

} // namespace flowhand
