// A gated lever from one axis. A gate's band is from at - band to at + band. After the filter (axisfilter.cpp):
//
//   #  now         count                                    then
//   1  unknown     in the band of a gate                    that gate
//   2  unknown     in no band                               between
//   3  between     in the band of a gate                    that gate
//   4  between     in no band                               between
//   5  in a gate   within its band and the hysteresis       that gate
//   6  in a gate   further out, in the band of another      the other gate
//   7  in a gate   further out, in no band                  between
//
// Whether a gate has been selected (dwelt in) is judged later, not here.
#include <algorithm>

#include "base/names.h"
#include "rig/axisfilter.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

struct Gate {
    int position = 0;
    std::int64_t at = 0;
    std::int64_t band = 0;
    SourcePlace place;

    [[nodiscard]] bool holds(std::int64_t raw, std::int64_t more) const { return std::abs(raw - at) <= band + more; }
};

class GatesControl final : public Control {
public:
    GatesControl(std::string name, std::vector<SignalId> signals, InputRef input, std::vector<Gate> gates,
                 std::int64_t hysteresis, AxisLimits limits)
        : Control(std::move(name), std::move(signals), {std::move(input)}), m_gates(std::move(gates)),
          m_hysteresis(hysteresis), m_filter(limits, m_gates.front().at, m_gates.back().at) {}

    void take(std::size_t, std::int64_t raw, Time time, Outputs& outputs) override {
        if (m_filter.take(raw, time))
            tell(time, outputs);
    }

    void advance(Time time, Outputs& outputs) override {
        if (m_filter.advance(time))
            tell(time, outputs);
    }

    [[nodiscard]] Time nextTimer() const override { return m_filter.nextTimer(); }

    void forget() override {
        m_filter.forget();
        m_gate = nullptr;
    }

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        for (std::size_t i = 0; i < m_gates.size(); ++i) {
            if (m_gates[i].position == value.position())
                wishes.push_back({0, m_gates[i].at, {}});
            else if (value == Value::between() && i == 1)
                wishes.push_back({0, (m_gates[0].at + m_gates[1].at) / 2, {}});
        }
    }

private:
    void tell(Time time, Outputs& outputs) {
        const std::int64_t raw = *m_filter.held();
        if (m_gate == nullptr || !m_gate->holds(raw, m_hysteresis)) {
            const auto found = std::find_if(m_gates.begin(), m_gates.end(), [&](const Gate& gate) {
                return gate.holds(raw, 0);
            });
            m_gate = found == m_gates.end() ? nullptr : &*found;
        }
        outputs.push_back({0, m_gate ? Value::position(m_gate->position) : Value::between(), time});
    }

    std::vector<Gate> m_gates; ///< by rising count
    std::int64_t m_hysteresis;
    AxisFilter m_filter;
    const Gate* m_gate = nullptr; ///< none: between
};

std::vector<Gate> readGateList(ControlReader& reader) {
    std::vector<Gate> gates;
    const std::int64_t band = reader.counts("band", 0);
    for (const TomlNode* table : reader.toml().tables("gates")) {
        TomlReader entry(reader.toml().file(), *table, "a gate of '" + reader.name() + "'", reader.toml().problems());
        Gate gate;
        gate.place = table->place;
        const std::string text = entry.requiredText("position");
        const Value position = reader.valueOf(text, entry.placeOf("position"));
        gate.position = position.isKnown() ? position.position() : -1;
        const std::optional<std::int64_t> at = entry.integer("at");
        if (!at)
            reader.error("missing-key", "the gate '" + text + "' needs 'at', the raw count in the middle of it",
                         table->place);
        gate.at = at.value_or(0);
        gate.band = entry.integer("band").value_or(band);
        if (gate.band <= 0)
            reader.error("missing-key",
                         "the gate '" + text + "' needs a 'band' above 0: how many counts either side are in it",
                         table->place);
        entry.finish();
        gates.push_back(gate);
    }
    std::sort(gates.begin(), gates.end(), [](const Gate& a, const Gate& b) {
        return a.at < b.at;
    });
    return gates;
}

void checkGates(ControlReader& reader, const std::vector<Gate>& gates, std::int64_t hysteresis) {
    const auto nameOf = [&](const Gate& gate) {
        return gate.position < 0 ? std::string("?")
                                 : reader.signal().positions[static_cast<std::size_t>(gate.position)];
    };
    for (std::size_t i = 1; i < gates.size(); ++i) {
        const std::int64_t gap = (gates[i].at - gates[i].band) - (gates[i - 1].at + gates[i - 1].band);
        const std::string pair = "'" + nameOf(gates[i - 1]) + "' and '" + nameOf(gates[i]) + "'";
        if (gap <= 0)
            reader.error("gates-overlap", "the bands of the gates " + pair + " overlap; make 'band' smaller",
                         gates[i].place);
        else if (hysteresis >= gap)
            reader.error("hysteresis-too-large",
                         "between the gates " + pair + " there are only " + std::to_string(gap) +
                             " counts, not more than the hysteresis; make it smaller",
                         "hysteresis");
    }
    std::vector<std::string> missing;
    for (std::size_t i = 0; i < reader.signal().positions.size(); ++i) {
        const auto count = std::count_if(gates.begin(), gates.end(), [&](const Gate& gate) {
            return gate.position == static_cast<int>(i);
        });
        if (count == 0)
            missing.push_back(reader.signal().positions[i]);
        if (count > 1)
            reader.error("gate-twice", "the gate '" + reader.signal().positions[i] + "' is given twice", "gates");
    }
    if (!missing.empty())
        reader.toml().problems().warning("position-not-wired",
                                         "'" + reader.name() + "' has no gate for " + joined(missing, ", "),
                                         reader.toml().placeOf("gates"));
}

} // namespace

std::unique_ptr<Control> readGates(ControlReader& reader) {
    InputRef input = reader.input("input", InputUse::Axis);
    const AxisLimits limits = reader.limits();
    const std::int64_t hysteresis = reader.counts("hysteresis", 0);
    if (!reader.demand(SignalKind::Position))
        return nullptr;
    std::vector<Gate> gates = readGateList(reader);
    if (gates.size() < 2) {
        reader.error("missing-key", "'" + reader.name() + "' needs 'gates', two or more", "gates");
        return nullptr;
    }
    checkGates(reader, gates, hysteresis);
    input.raws = std::pair(gates.front().at, gates.back().at);
    return std::make_unique<GatesControl>(reader.name(), reader.signalIds(), std::move(input), std::move(gates),
                                          hysteresis, limits);
}

} // namespace flowhand
