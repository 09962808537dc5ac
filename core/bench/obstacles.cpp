#include "bench/obstacles.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "base/valuewords.h"
#include "condition/program.h"

namespace flowhand {

namespace {

/// Steps over a range in which stretches are looked for; what is narrower is found by its written bounds.
constexpr int kGrid = 1024;
/// Halvings of a grid step: to a 2^40th of the range.
constexpr int kHalvings = 30;

struct Stretch {
    double lowest = 0.0;
    double highest = 0.0;
    [[nodiscard]] double width() const { return highest - lowest; }
};

std::string numberWithUnit(const Signal& signal, double number) {
    return valueText(signal, Value::number(number));
}

Phrase whence(const std::string& measured) {
    return measured.empty() ? phrase("by the rig file") : phrase("measured {1}").with(measured.substr(0, 10));
}

/// Six times its noise, and whence that is known.
Phrase noiseText(const Reach& reach, const Signal& signal) {
    return phrase("{1}, {2}").with(numberWithUnit(signal, kLeastSigmas * reach.sigma), whence(reach.measured));
}

/// One condition held against what the rig's controls can be.
class Search {
public:
    Search(const Condition& condition, const std::vector<Reach>& reaches, const SignalTable& signals)
        : m_condition(condition), m_reaches(reaches), m_signals(signals), m_others(signals.size()) {}

    void look(SignalId id) {
        const Reach& reach = m_reaches[indexOf(id)];
        const std::string& label = m_signals[id].label;
        if (!reach.isWired)
            return tell("not-wired", id, phrase("{1} is not wired").with(label));
        if (!reach.isContinuous && reach.values.empty())
            return tell("unknown-reach", id, phrase("what {1} can be as it is wired is not known").with(label));
        if (!reach.isContinuous)
            return lookAtValues(id, reach);
        lookAtStretch(id, reach);
        lookAtMovements(id, reach);
    }

    /// Two levers that must agree: as near as their noise together lets them.
    void lookTogether(SignalId id, SignalId other) {
        if (!m_found.empty())
            return;
        const std::optional<Stretch> together = widestBeside(id, other);
        const double sigma = std::hypot(m_reaches[indexOf(id)].sigma, m_reaches[indexOf(other)].sigma);
        if (together && together->width() < kLeastSigmas * sigma)
            tell("too-narrow", id,
                 phrase("{1} and {2} must agree within {3}, less than six times their noise together ({4}, {5} and "
                        "{6})")
                     .with(m_signals[id].label, m_signals[other].label,
                           numberWithUnit(m_signals[id], together->width()),
                           numberWithUnit(m_signals[id], kLeastSigmas * sigma), whence(m_reaches[indexOf(id)].measured),
                           whence(m_reaches[indexOf(other)].measured)));
    }

    [[nodiscard]] std::vector<Obstacle> take() { return std::move(m_found); }

    [[nodiscard]] std::optional<double> narrowest(SignalId id) {
        const Reach& reach = m_reaches[indexOf(id)];
        if (!reach.isContinuous)
            return std::nullopt;
        std::vector<double> widths = movementsOf(id, reach);
        if (const std::optional<Stretch> alone = widest(id, reach.lowest, reach.highest))
            widths.push_back(alone->width());
        for (const Comparison& comparison : m_condition.program().comparisons) {
            const std::vector<SignalId>& read = comparison.signals;
            if (read.size() != 2 || (read[0] != id && read[1] != id))
                continue;
            const SignalId other = read[0] == id ? read[1] : read[0];
            if (indexOf(other) >= m_reaches.size()) // motion is no control
                continue;
            if (const std::optional<Stretch> together = widestBeside(id, other))
                widths.push_back(together->width() / std::sqrt(2.0));
        }
        const auto least = std::min_element(widths.begin(), widths.end());
        const bool isAny = least == widths.end() || *least >= (reach.highest - reach.lowest) * (1 - 1e-9);
        return isAny ? std::nullopt : std::optional(*least);
    }

private:
    /// Where `id` may be while `other` stands in the middle of where it may be.
    [[nodiscard]] std::optional<Stretch> widestBeside(SignalId id, SignalId other) {
        const Reach& reach = m_reaches[indexOf(id)];
        const Reach& beside = m_reaches[indexOf(other)];
        if (!reach.isContinuous || !beside.isContinuous)
            return std::nullopt;
        const std::optional<Stretch> alone = widest(other, beside.lowest, beside.highest);
        if (!alone)
            return std::nullopt;
        m_others[indexOf(other)] = Value::number((alone->lowest + alone->highest) / 2);
        const std::optional<Stretch> together = widest(id, reach.lowest, reach.highest);
        m_others[indexOf(other)] = Value::unknown();
        return together;
    }

    void tell(std::string code, SignalId id, Phrase text) { m_found.push_back({std::move(code), id, std::move(text)}); }

    [[nodiscard]] bool fits(SignalId id, Value value) const { return m_condition.fits(id, value, m_others); }

    void lookAtValues(SignalId id, const Reach& reach) {
        const bool isAny = std::any_of(reach.values.begin(), reach.values.end(), [&](const Value& value) {
            return fits(id, value);
        });
        if (isAny)
            return;
        const Signal& signal = m_signals[id];
        Phrase wanted;
        const int count = signal.kind == SignalKind::OnOff ? 2 : static_cast<int>(signal.positions.size());
        for (int i = 0; i < count && signal.kind != SignalKind::Number; ++i) {
            const Value value = signal.kind == SignalKind::OnOff ? Value::onOff(i == 1) : Value::position(i);
            if (fits(id, value))
                wanted = wanted.isEmpty() ? valueWords(signal, value)
                                          : phrase("{1} or {2}").with(std::move(wanted), valueWords(signal, value));
        }
        tell("not-a-position", id,
             phrase("{1} must be {2}, and as it is wired it can only be {3}")
                 .with(signal.label, wanted.isEmpty() ? Phrase("'" + m_condition.text() + "'") : wanted,
                       reachText(reach, signal)));
    }

    void lookAtStretch(SignalId id, const Reach& reach) {
        const Signal& signal = m_signals[id];
        const std::optional<Stretch> found = widest(id, reach.lowest, reach.highest);
        if (!found) {
            const std::optional<Stretch> wanted = widest(id, signal.lowest, signal.highest);
            if (wanted) // else nothing can be: that is for the lint to say
                tell("out-of-reach", id,
                     phrase("{1} must be {2} to {3}, outside its calibrated range of {4}")
                         .with(signal.label, numberWithUnit(signal, wanted->lowest),
                               numberWithUnit(signal, wanted->highest), reachText(reach, signal)));
            return;
        }
        if (found->width() < kLeastSigmas * reach.sigma)
            tell("too-narrow", id,
                 phrase("the band of {1} is {2} wide, less than six times its noise ({3})")
                     .with(signal.label, numberWithUnit(signal, found->width()), noiseText(reach, signal)));
    }

    void lookAtMovements(SignalId id, const Reach& reach) {
        const Signal& signal = m_signals[id];
        for (const double distance : movementsOf(id, reach)) {
            if (distance > (reach.highest - reach.lowest) * (1 + 1e-9))
                tell("out-of-reach", id,
                     phrase("{1} must be moved over {2}, more than its calibrated range of {3}")
                         .with(signal.label, numberWithUnit(signal, distance), reachText(reach, signal)));
            else if (distance < kLeastSigmas * reach.sigma)
                tell("too-narrow", id,
                     phrase("a movement of {1} over {2} is less than six times its noise ({3})")
                         .with(signal.label, numberWithUnit(signal, distance), noiseText(reach, signal)));
        }
    }

    /// How far the control must be moved, in its unit.
    [[nodiscard]] std::vector<double> movementsOf(SignalId id, const Reach& reach) const {
        std::vector<double> distances;
        for (const Movement& movement : m_condition.program().movements) {
            const std::vector<SignalId>& read = movement.signals;
            if (read.size() != 1 || read.front() != id)
                continue;
            std::vector<Value> values(m_signals.size());
            double lowest = std::numeric_limits<double>::infinity();
            double highest = -lowest;
            for (int i = 0; i <= kGrid; ++i) {
                values[indexOf(id)] = Value::number(reach.lowest + (reach.highest - reach.lowest) * i / kGrid);
                const double at = movement.expression.evaluate(values);
                lowest = std::min(lowest, at);
                highest = std::max(highest, at);
            }
            const double travel = reach.highest - reach.lowest;
            const double scale = travel > 0 && highest > lowest ? (highest - lowest) / travel : 1.0;
            distances.push_back(movement.distance / scale);
        }
        return distances;
    }

    /// The numbers that are worth trying: an even grid, and each written bound with what lies close to it.
    [[nodiscard]] std::vector<double> points(SignalId id, double lowest, double highest) const {
        std::vector<double> points;
        for (int i = 0; i <= kGrid; ++i)
            points.push_back(lowest + (highest - lowest) * i / kGrid);
        const double near = (highest - lowest) * 1e-9;
        for (const Comparison& comparison : m_condition.program().comparisons)
            if (comparison.isThreshold && comparison.signal == id)
                for (const double point : {comparison.constant - near, comparison.constant, comparison.constant + near})
                    if (point >= lowest && point <= highest)
                        points.push_back(point);
        std::sort(points.begin(), points.end());
        return points;
    }

    /// The widest stretch in which the condition can be true as far as this control says.
    [[nodiscard]] std::optional<Stretch> widest(SignalId id, double lowest, double highest) const {
        std::optional<Stretch> best;
        std::optional<Stretch> open;
        double before = lowest;
        for (const double point : points(id, lowest, highest)) {
            const bool isFit = fits(id, Value::number(point));
            if (isFit && !open)
                open = Stretch{edge(id, point, before), point};
            else if (isFit)
                open->highest = point;
            else if (open)
                open->highest = edge(id, open->highest, point);
            if (open && (!best || open->width() > best->width()))
                best = open;
            if (!isFit)
                open.reset();
            before = point;
        }
        return best;
    }

    /// Between one that fits and one that does not.
    [[nodiscard]] double edge(SignalId id, double inside, double outside) const {
        if (fits(id, Value::number(outside)))
            return outside;
        for (int i = 0; i < kHalvings; ++i) {
            const double middle = (inside + outside) / 2;
            (fits(id, Value::number(middle)) ? inside : outside) = middle;
        }
        return inside;
    }

    const Condition& m_condition;
    const std::vector<Reach>& m_reaches;
    const SignalTable& m_signals;
    std::vector<Value> m_others;
    std::vector<Obstacle> m_found;
};

} // namespace

std::vector<Obstacle> obstaclesOf(const Condition& condition, const std::vector<SignalId>& needed,
                                  const std::vector<Reach>& reaches, const SignalTable& signals) {
    Search search(condition, reaches, signals);
    for (const SignalId id : needed)
        search.look(id);
    for (const Comparison& comparison : condition.program().comparisons)
        if (comparison.signals.size() == 2 &&
            std::all_of(comparison.signals.begin(), comparison.signals.end(), [&](SignalId id) {
                return std::find(needed.begin(), needed.end(), id) != needed.end();
            }))
            search.lookTogether(comparison.signals[0], comparison.signals[1]);
    return search.take();
}

std::optional<double> narrowestJudged(const Condition& condition, SignalId id, const std::vector<Reach>& reaches,
                                      const SignalTable& signals) {
    return Search(condition, reaches, signals).narrowest(id);
}

std::vector<Obstacle> obstaclesOf(const Band& band, const std::vector<Reach>& reaches, const SignalTable& signals) {
    const Reach& reach = reaches[indexOf(band.signal)];
    const Signal& signal = signals[band.signal];
    if (!reach.isContinuous)
        return {};
    const double width = std::min(band.highest, reach.highest) - std::max(band.lowest, reach.lowest);
    if (width < 0)
        return {{"out-of-reach", band.signal,
                 phrase("the band of {1} is {2} to {3}, outside its calibrated range of {4}")
                     .with(signal.label, numberWithUnit(signal, band.lowest), numberWithUnit(signal, band.highest),
                           reachText(reach, signal))}};
    if (width < kLeastSigmas * reach.sigma)
        return {{"too-narrow", band.signal,
                 phrase("the band of {1} is {2} wide within its calibrated range, less than six times its noise ({3})")
                     .with(signal.label, numberWithUnit(signal, width), noiseText(reach, signal))}};
    return {};
}

} // namespace flowhand
