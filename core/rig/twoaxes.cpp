// Two axes for one signal. Each gives the share of its travel, 0 at rest; a and b are the shares:
//
//   #  combine        case                               the signal gets
//   1  any            an axis not reported yet           unknown
//   2  "difference"   -                                  centre + (b - a) of the way to an end: two pedals
//   3  "max"          -                                  low end + the larger of the way up: two seats
//   4  "split"        both at rest                       centre
//   5  "split"        one leaves its rest                that one leads: the first towards the low end, the
//                                                        second towards the high end
//   6  "split"        the other leaves its rest as well  the leader's, unchanged
//   7  "split"        the leader is back at rest         the other leads if it is off its rest
#include <cmath>

#include "rig/axisfilter.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

enum class Combine : std::uint8_t { Difference, Max, Split };

struct TwoAxesSpec {
    std::vector<AxisMap> maps; ///< counts to share
    AxisLimits limits;
    Combine combine = Combine::Difference;
    std::array<double, 3> values{};
};

class TwoAxes final : public Control {
public:
    TwoAxes(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, TwoAxesSpec spec)
        : Control(std::move(name), std::move(signals), std::move(inputs)), m_spec(std::move(spec)) {
        for (const AxisMap& map : m_spec.maps)
            m_filters.emplace_back(m_spec.limits, map.low(), map.high());
    }

    void take(std::size_t slot, std::int64_t raw, Time time, Outputs& outputs) override {
        if (m_filters[slot].take(raw, time))
            tell(time, outputs);
    }

    void advance(Time time, Outputs& outputs) override {
        bool hasChanged = false;
        for (AxisFilter& filter : m_filters)
            hasChanged |= filter.advance(time);
        if (hasChanged)
            tell(time, outputs);
    }

    [[nodiscard]] Time nextTimer() const override {
        return std::min(m_filters[0].nextTimer(), m_filters[1].nextTimer());
    }

    void forget() override {
        for (AxisFilter& filter : m_filters)
            filter.forget();
        m_leader.reset();
    }

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        const auto& [low, centre, high] = m_spec.values;
        const double number = value.number();
        std::array<double, 2> shares{};
        if (m_spec.combine == Combine::Max)
            shares[0] = (number - low) / (high - low);
        else if (number < centre)
            shares[0] = (centre - number) / (centre - low);
        else
            shares[1] = (number - centre) / (high - centre);
        for (std::size_t i = 0; i < 2; ++i)
            wishes.push_back({i, m_spec.maps[i].raw(shares[i]), {}});
    }

    [[nodiscard]] ControlFacts facts(std::size_t) const override {
        const auto& [low, centre, high] = m_spec.values;
        const double perShare = m_spec.combine == Combine::Max ? high - low : std::max(centre - low, high - centre);
        const double a = m_spec.maps[0].valuePerCount();
        const double b = m_spec.maps[1].valuePerCount();
        ControlFacts facts;
        // Independent noise of two axes adds by squares.
        facts.perCount = perShare * (m_spec.combine == Combine::Difference ? std::hypot(a, b) : std::max(a, b));
        facts.sigma = m_spec.limits.noise * facts.perCount;
        facts.range = high - low;
        return facts;
    }

private:
    void tell(Time time, Outputs& outputs) {
        if (!m_filters[0].held() || !m_filters[1].held())
            return;
        constexpr double kGrid = 1e6; // takes the traces of binary arithmetic off decimal shares
        const double number =
            combined(m_spec.maps[0].value(*m_filters[0].held()), m_spec.maps[1].value(*m_filters[1].held()));
        const double tidy = std::round(number * kGrid) / kGrid;
        outputs.push_back({0, Value::number(tidy == 0.0 ? 0.0 : tidy), time});
    }

    [[nodiscard]] double combined(double a, double b) {
        const auto& [low, centre, high] = m_spec.values;
        if (m_spec.combine == Combine::Max)
            return low + std::max(a, b) * (high - low);
        double deflection = b - a;
        if (m_spec.combine == Combine::Split) {
            if (m_leader && (*m_leader == 0 ? a : b) == 0.0)
                m_leader.reset();
            if (!m_leader && (a > 0.0 || b > 0.0))
                m_leader = a > 0.0 ? 0 : 1;
            deflection = !m_leader ? 0.0 : *m_leader == 0 ? -a : b;
        }
        return centre + deflection * (deflection < 0 ? centre - low : high - centre);
    }

    TwoAxesSpec m_spec;
    std::vector<AxisFilter> m_filters;
    std::optional<std::size_t> m_leader;
};

} // namespace

std::unique_ptr<Control> readTwoAxes(ControlReader& reader) {
    TwoAxesSpec spec;
    std::vector<InputRef> inputs = reader.inputs("input", InputUse::Axis, 2, 2);
    const std::optional<std::string> combine = reader.toml().text("combine");
    if (!combine)
        reader.error("needs-combine",
                     "say how the two axes of '" + reader.name() +
                         "' make one value: combine = \"difference\", \"max\" or \"split\"",
                     "combine");
    else if (*combine != "difference" && *combine != "max" && *combine != "split")
        reader.error("bad-value", "'combine' of axes is difference, max or split", "combine");
    spec.combine = combine == "max" ? Combine::Max : combine == "split" ? Combine::Split : Combine::Difference;
    if (reader.demand(SignalKind::Number))
        spec.values = reader.wholeRange(0);
    for (std::size_t i = 0; i < 2; ++i) {
        spec.maps.push_back(reader.mapOfPart(i, 2, {0.0, 0.5, 1.0}));
        expectRaws(inputs[i], spec.maps[i]);
    }
    spec.limits = reader.limits();
    return std::make_unique<TwoAxes>(reader.name(), reader.signalIds(), std::move(inputs), std::move(spec));
}

} // namespace flowhand
