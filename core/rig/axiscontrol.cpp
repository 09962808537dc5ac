// A number from one axis: potentiometer, load cell, the twist of a stick. After the filter (axisfilter.cpp):
//
//   #  case                                                   the signals get
//   1  no reading since the device came                       nothing yet: unknown
//   2  `sweep`, and both ends have not been reached since     unknown
//   3  otherwise                                              the count's value, by the map
//   4  an input of `crosstalk` is beyond its limit            the same, with the wider dead band
//   5  `spring_rate`, and the spring moves it                 the same, moved by the machine (springreturn.cpp)
//   6  `rests_at`, and the first reading is at the other end  the same, and a fault that says so
#include <algorithm>
#include <cmath>

#include "rig/axisfilter.h"
#include "rig/controls.h"
#include "rig/springreturn.h"

namespace flowhand {

namespace {

/// Another movement of the same stick that this axis feels.
struct Crosstalk {
    std::int64_t centre = 0;
    std::int64_t limit = 0; ///< counts from the centre from which it is felt
    bool isBeyond = false;
};

struct AxisSpec {
    AxisMap map;
    AxisLimits limits;
    bool needsSweep = false;
    std::optional<SpringReturn> spring;
    std::optional<double> rest; ///< share of the travel, 0 or 1
    std::vector<Crosstalk> crosstalk;
    std::int64_t crosstalkDeadBand = 0;
};

/// This near to an end of the travel a sweep has reached it.
constexpr double kSweptShare = 0.05;
/// This far from its rest a control that nobody touches is probably wired backwards.
constexpr double kWrongRestShare = 0.75;

class AxisControl final : public Control {
public:
    AxisControl(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, AxisSpec spec)
        : Control(std::move(name), std::move(signals), std::move(inputs)), m_spec(std::move(spec)),
          m_filter(m_spec.limits, m_spec.map.low(), m_spec.map.high()) {}

    void take(std::size_t slot, std::int64_t raw, Time time, Outputs& outputs) override {
        if (slot > 0) {
            Crosstalk& crosstalk = m_spec.crosstalk[slot - 1];
            crosstalk.isBeyond = std::abs(raw - crosstalk.centre) > crosstalk.limit;
            if (m_filter.held())
                tell(time, outputs);
            return;
        }
        const bool isFirst = !m_filter.held();
        if (m_filter.take(raw, time))
            tell(time, outputs);
        if (isFirst && m_spec.rest)
            m_restsWrong = std::fabs(m_spec.map.share(raw) - *m_spec.rest) > kWrongRestShare;
    }

    void advance(Time time, Outputs& outputs) override {
        if (m_filter.advance(time))
            tell(time, outputs);
    }

    [[nodiscard]] Time nextTimer() const override { return m_filter.nextTimer(); }

    void forget() override {
        m_filter.forget();
        m_isLowSwept = m_isHighSwept = m_restsWrong = false;
        if (m_spec.spring)
            m_spec.spring->forget();
        for (Crosstalk& crosstalk : m_spec.crosstalk)
            crosstalk.isBeyond = false;
    }

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        wishes.push_back({0, m_spec.map.raw(value.number()), {}});
    }

    [[nodiscard]] ControlFacts facts(std::size_t) const override {
        ControlFacts facts;
        facts.perCount = m_spec.map.valuePerCount();
        facts.sigma = m_spec.limits.noise * facts.perCount;
        facts.range = m_spec.map.travel();
        return facts;
    }

    [[nodiscard]] Phrase remark() const override {
        return m_spec.needsSweep ? phrase("move it once from end to end whenever it was plugged in") : Phrase();
    }

    [[nodiscard]] Phrase fault() const override {
        if (m_restsWrong)
            return phrase(
                "stood at the far end when its device came; if nobody held it there, exchange the two numbers "
                "of its range");
        if (m_spec.needsSweep && m_filter.held() && !isSwept())
            return phrase("move it once from end to end; until then its card does not know the range");
        return {};
    }

private:
    [[nodiscard]] bool isSwept() const { return m_isLowSwept && m_isHighSwept; }

    void tell(Time time, Outputs& outputs) {
        const std::int64_t raw = *m_filter.held();
        const double share = m_spec.map.share(raw);
        m_isLowSwept |= share <= kSweptShare;
        m_isHighSwept |= share >= 1 - kSweptShare;
        m_restsWrong = m_restsWrong && m_spec.rest && std::fabs(share - *m_spec.rest) > 1 - kWrongRestShare;
        if (m_spec.needsSweep && !isSwept())
            return;
        const double value = m_spec.map.value(raw, deadBand());
        const Actor actor = m_spec.spring ? m_spec.spring->take(value, time) : Actor::Hand;
        for (std::size_t i = 0; i < signals().size(); ++i)
            outputs.push_back({i, Value::number(value), time, actor});
    }

    [[nodiscard]] std::int64_t deadBand() const {
        const bool isFelt =
            std::any_of(m_spec.crosstalk.begin(), m_spec.crosstalk.end(), [](const Crosstalk& crosstalk) {
                return crosstalk.isBeyond;
            });
        return isFelt ? m_spec.crosstalkDeadBand : m_spec.map.shape().deadBand;
    }

    AxisSpec m_spec;
    AxisFilter m_filter;
    bool m_isLowSwept = false;
    bool m_isHighSwept = false;
    bool m_restsWrong = false;
};

void readCrosstalk(ControlReader& reader, AxisSpec& spec, std::vector<InputRef>& inputs) {
    for (const TomlNode* table : reader.toml().tables("crosstalk")) {
        TomlReader entry(reader.toml().file(), *table, "'crosstalk' of '" + reader.name() + "'",
                         reader.toml().problems());
        const std::string name = entry.requiredText("input");
        inputs.push_back(reader.inputNamed(name, entry.placeOf("input"), InputUse::Axis));
        const std::optional<std::int64_t> centre = entry.integer("centre");
        const std::optional<std::int64_t> limit = entry.integer("beyond");
        if (!centre || !limit || *limit < 0)
            reader.error("missing-key", "'crosstalk' needs 'centre' and 'beyond', both in counts of its input",
                         table->place);
        spec.crosstalk.push_back({centre.value_or(0), limit.value_or(0), false});
        entry.finish();
    }
    spec.crosstalkDeadBand = reader.counts("crosstalk_dead_band", 0);
    if (spec.crosstalk.empty())
        return;
    const AxisMap::Shape& shape = spec.map.shape();
    const std::int64_t room =
        shape.centre ? std::min(std::abs(*shape.centre - shape.from), std::abs(shape.to - *shape.centre)) : 0;
    if (spec.crosstalkDeadBand <= shape.deadBand || spec.crosstalkDeadBand + shape.endBand >= room)
        reader.error("bad-dead-band",
                     "'crosstalk' widens the dead band: it needs a 'centre' and a 'crosstalk_dead_band' that is wider "
                     "than 'dead_band' and fits the range",
                     "crosstalk");
}

void readSpring(ControlReader& reader, AxisSpec& spec) {
    const std::optional<double> rate = reader.toml().number("spring_rate");
    if (!rate)
        return;
    const AxisMap::Shape& shape = spec.map.shape();
    if (*rate <= 0)
        reader.error("bad-rate", "'spring_rate' is how much a second the spring moves it at least, above 0",
                     "spring_rate");
    const double rest = shape.centre ? shape.values[1] : shape.values[0];
    spec.spring.emplace(*rate, rest, 0.1 * spec.map.travel());
}

} // namespace

std::unique_ptr<Control> readAxis(ControlReader& reader) {
    AxisSpec spec;
    std::vector<InputRef> inputs = {reader.input("input", InputUse::Axis)};
    spec.map = reader.map();
    expectRaws(inputs[0], spec.map);
    spec.limits = reader.limits();
    spec.needsSweep = reader.toml().boolean("sweep").value_or(false);
    if (const std::optional<std::string> rest = reader.toml().text("rests_at")) {
        if (*rest != "low" && *rest != "high")
            reader.error("bad-value", "'rests_at' is low or high: the end of the control, not of the counts",
                         "rests_at");
        spec.rest = *rest == "high" ? 1.0 : 0.0;
    }
    readSpring(reader, spec);
    readCrosstalk(reader, spec, inputs);
    for (std::size_t i = 1; i < reader.signalIds().size(); ++i)
        if (reader.demand(SignalKind::Number, i) && !(reader.signal(i).unit == reader.signal().unit))
            reader.error("wrong-wiring", "the signals of one axis must have the same unit; wire them one by one",
                         "signal");
    return std::make_unique<AxisControl>(reader.name(), reader.signalIds(), std::move(inputs), std::move(spec));
}

} // namespace flowhand
