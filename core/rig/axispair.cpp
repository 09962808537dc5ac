// One axis for two signals, of which one is meant at a time; the other reads its low end. Which one:
//
//   #  wiring `split_axis`: the split point              meant
//   1  first reading, on the first range's side          the first
//   2  first reading, on the second range's side         the second
//   3  the first is meant, beyond split + hysteresis     the second
//   4  the second is meant, beyond split + hysteresis    the first
//   5  nearer to the split point, on either side         as before
//
//   #  wiring `switched_axis`: a contact (contacts.cpp)  meant
//   6  not reported yet                                  none: both unknown
//   7  open                                              the first
//   8  closed                                            the second
#include <cmath>

#include "rig/axisfilter.h"
#include "rig/contactscontrol.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

struct PairSpec {
    std::array<AxisMap, 2> maps;
    AxisLimits limits;
    bool isSwitched = false;
    std::int64_t split = 0;
    std::int64_t hysteresis = 0;
    bool isFirstAbove = true; ///< the first range lies above the split point, in counts
    Duration debounce = kDebounce;
};

class AxisPair final : public Control {
public:
    AxisPair(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, PairSpec spec)
        : Control(std::move(name), std::move(signals), std::move(inputs)), m_spec(std::move(spec)),
          m_filter(m_spec.limits, std::min(m_spec.maps[0].low(), m_spec.maps[1].low()),
                   std::max(m_spec.maps[0].high(), m_spec.maps[1].high())),
          m_switch(1, m_spec.debounce) {}

    void take(std::size_t slot, std::int64_t meaning, Time time, Outputs& outputs) override {
        if (slot == 0 ? m_filter.take(meaning, time) : m_switch.take(0, meaning != 0, time))
            tell(time, outputs);
    }

    void advance(Time time, Outputs& outputs) override {
        const bool hasSettled = m_filter.advance(time);
        if (m_switch.advance(time) || hasSettled)
            tell(time, outputs);
    }

    [[nodiscard]] Time nextTimer() const override { return std::min(m_filter.nextTimer(), m_switch.nextTimer()); }

    void forget() override {
        m_filter.forget();
        m_switch.forget();
        m_meant.reset();
    }

    void wish(std::size_t signal, Value value, std::vector<InputWish>& wishes) const override {
        wishes.push_back({0, m_spec.maps[signal].raw(value.number()), {}});
        if (m_spec.isSwitched)
            wishes.push_back({1, static_cast<std::int64_t>(signal), {}});
    }

    [[nodiscard]] ControlFacts facts(std::size_t signal) const override {
        ControlFacts facts;
        facts.perCount = m_spec.maps[signal].valuePerCount();
        facts.sigma = m_spec.limits.noise * facts.perCount;
        facts.range = m_spec.maps[signal].travel();
        return facts;
    }

private:
    void choose(std::int64_t raw) {
        if (m_spec.isSwitched) {
            m_meant = m_switch.isClosed(0) ? 1 : 0;
            return;
        }
        const std::int64_t above = m_spec.isFirstAbove ? raw - m_spec.split : m_spec.split - raw;
        if (!m_meant)
            m_meant = above >= 0 ? 0 : 1;
        else if (m_meant == 0 && above < -m_spec.hysteresis)
            m_meant = 1;
        else if (m_meant == 1 && above > m_spec.hysteresis)
            m_meant = 0;
    }

    void tell(Time time, Outputs& outputs) {
        if (!m_filter.held() || (m_spec.isSwitched && !m_switch.areAllKnown()))
            return;
        choose(*m_filter.held());
        for (std::size_t i = 0; i < 2; ++i) {
            const AxisMap& map = m_spec.maps[i];
            outputs.push_back(
                {i, Value::number(i == m_meant ? map.value(*m_filter.held()) : map.value(map.shape().from)), time});
        }
    }

    PairSpec m_spec;
    AxisFilter m_filter;
    Contacts m_switch;
    std::optional<std::size_t> m_meant;
};

std::vector<InputRef> readPair(ControlReader& reader, PairSpec& spec) {
    std::vector<InputRef> inputs = {reader.input("input", InputUse::Axis)};
    for (std::size_t i = 0; i < 2; ++i) {
        reader.demand(SignalKind::Number, i);
        spec.maps[i] = reader.mapOfPart(i, 2, reader.wholeRange(i));
    }
    inputs[0].raws =
        std::pair(std::min(spec.maps[0].low(), spec.maps[1].low()), std::max(spec.maps[0].high(), spec.maps[1].high()));
    spec.limits = reader.limits();
    return inputs;
}

} // namespace

std::unique_ptr<Control> readSplitAxis(ControlReader& reader) {
    PairSpec spec;
    std::vector<InputRef> inputs = readPair(reader, spec);
    const std::optional<std::int64_t> split = reader.toml().integer("split");
    if (!split)
        reader.error("missing-key", "'" + reader.name() + "' needs 'split', the count between its two parts", "split");
    spec.split = split.value_or(0);
    spec.hysteresis = reader.counts("hysteresis", 0);
    const auto sideOf = [&](const AxisMap& map) {
        return map.low() >= spec.split ? 1 : map.high() <= spec.split ? -1 : 0;
    };
    const int first = sideOf(spec.maps[0]);
    if (split && (first == 0 || first == sideOf(spec.maps[1]) || sideOf(spec.maps[1]) == 0))
        reader.error("range-crosses-split", "the two ranges must lie on different sides of the split point", "ranges");
    spec.isFirstAbove = first > 0;
    const std::int64_t room =
        std::min(spec.maps[0].high() - spec.maps[0].low(), spec.maps[1].high() - spec.maps[1].low());
    if (spec.hysteresis >= room)
        reader.error("hysteresis-too-large", "the hysteresis is as large as one of the two ranges", "hysteresis");
    return std::make_unique<AxisPair>(reader.name(), reader.signalIds(), std::move(inputs), std::move(spec));
}

std::unique_ptr<Control> readSwitchedAxis(ControlReader& reader) {
    PairSpec spec;
    std::vector<InputRef> inputs = readPair(reader, spec);
    inputs.push_back(reader.input("switch", InputUse::Contact));
    spec.isSwitched = true;
    spec.debounce = reader.duration("debounce", kDebounce);
    return std::make_unique<AxisPair>(reader.name(), reader.signalIds(), std::move(inputs), std::move(spec));
}

} // namespace flowhand
