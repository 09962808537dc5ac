#include "definition.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace flowhand::definition {

namespace {

constexpr int kFalse = 0;
constexpr int kUnknown = 1;
constexpr int kTrue = 2;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

bool compares(Comparator comparator, double a, double b) {
    switch (comparator) {
    case Comparator::Less:
        return a < b;
    case Comparator::LessEqual:
        return a <= b;
    case Comparator::Greater:
        return a > b;
    case Comparator::GreaterEqual:
        return a >= b;
    case Comparator::Equal:
        return a == b;
    default:
        return a != b;
    }
}

/// One formula over one trace.
class Reader {
public:
    Reader(const Trace& trace, const SignalTable& signals, bool isRelative)
        : m_trace(trace), m_signals(signals), m_isRelative(isRelative) {}

    Truths truths(const Formula& formula) const {
        std::vector<Truths> parts;
        for (const Formula& part : formula.parts)
            parts.push_back(truths(part));
        Truths result;
        for (int now = 0; now < m_trace.instants(); ++now)
            result.push_back(truthAt(formula, parts, now));
        return result;
    }

    Margins margins(const Formula& formula) const {
        std::vector<Margins> parts;
        std::vector<Truths> partTruths;
        for (const Formula& part : formula.parts) {
            parts.push_back(margins(part));
            partTruths.push_back(truths(part));
        }
        Margins result;
        for (int now = 0; now < m_trace.instants(); ++now)
            result.push_back({marginAt(formula, {parts, partTruths, false}, now),
                              marginAt(formula, {parts, partTruths, true}, now)});
        return result;
    }

private:
    // ---- what is read at one instant

    double number(const std::string& name, int now) const { return m_trace.at(now, *m_signals.find(name)).number(); }

    int compared(const Formula& formula, double a, double b) const {
        if (std::isnan(a) || std::isnan(b))
            return kUnknown;
        if (formula.shape == Shape::Position && a < 0)
            return formula.comparator == Comparator::NotEqual ? kTrue : kFalse;
        return compares(formula.comparator, a, b) ? kTrue : kFalse;
    }

    int readAt(const Formula& formula, int now) const {
        if (formula.shape == Shape::Difference)
            return compared(formula, number(formula.signal, now) - number(formula.other, now), formula.constant);
        return compared(formula, number(formula.signal, now), formula.constant);
    }

    // ---- truth

    static bool hasStart(const Formula& formula, int now, int then) {
        return then >= 0 && (!formula.longest || then >= now - 2 * *formula.longest) &&
               then <= now - 2 * formula.shortest;
    }

    int truthAt(const Formula& formula, const std::vector<Truths>& parts, int now) const {
        const auto i = static_cast<std::size_t>(now);
        switch (formula.shape) {
        case Shape::Not:
            return 2 - parts[0][i];
        case Shape::And:
            return std::min(parts[0][i], parts[1][i]);
        case Shape::Or:
            return std::max(parts[0][i], parts[1][i]);
        case Shape::Once:
            return onceAt(formula, parts[0], now);
        case Shape::Historically:
            return 2 - onceAt(formula, opposite(parts[0]), now);
        case Shape::Since:
            return sinceAt(formula, parts, now);
        case Shape::Rise:
            return riseAt(parts[0], now);
        case Shape::Fall:
            return riseAt(opposite(parts[0]), now);
        case Shape::Held:
            return heldAt(formula, parts[0], now);
        case Shape::Sequence:
            return stageAt(formula, parts, parts.size() - 1, now);
        case Shape::Moved:
        case Shape::MovedWithin:
            return movedAt(formula, parts, now);
        default:
            return readAt(formula, now);
        }
    }

    static Truths opposite(Truths truths) {
        for (int& truth : truths)
            truth = 2 - truth;
        return truths;
    }

    static int onceAt(const Formula& formula, const Truths& part, int now) {
        int result = kFalse;
        for (int then = 0; then <= now; ++then)
            if (hasStart(formula, now, then))
                result = std::max(result, part[static_cast<std::size_t>(then)]);
        return result;
    }

    static int sinceAt(const Formula& formula, const std::vector<Truths>& parts, int now) {
        int result = kFalse;
        for (int then = 0; then <= now; ++then) {
            if (!hasStart(formula, now, then))
                continue;
            int all = parts[1][static_cast<std::size_t>(then)];
            for (int between = then; between <= now; ++between)
                all = std::min(all, parts[0][static_cast<std::size_t>(between)]);
            result = std::max(result, all);
        }
        return result;
    }

    /// Just before a moment is the stretch that ends there; just before an instant of a stretch is the same stretch.
    static int riseAt(const Truths& part, int now) {
        if (now == 0)
            return kFalse;
        const int before = now % 2 == 0 ? now - 1 : now;
        return std::min(part[static_cast<std::size_t>(now)], 2 - part[static_cast<std::size_t>(before)]);
    }

    int heldAt(const Formula& formula, const Truths& part, int now) const {
        const int from = now - 2 * *formula.longest;
        if (from < 2 * m_trace.references[static_cast<std::size_t>(now)])
            return kFalse;
        int result = kTrue;
        for (int then = from; then <= now; ++then)
            result = std::min(result, part[static_cast<std::size_t>(then)]);
        return result;
    }

    /// Whether `then` is earlier than `now` by no more than `gap` steps. In one stretch there are earlier instants too.
    static bool isShortlyBefore(int then, int now, int gap) {
        return then >= now - 2 * gap && (now % 2 == 0 ? then < now : then <= now);
    }

    static int stageAt(const Formula& formula, const std::vector<Truths>& parts, std::size_t stage, int now) {
        const int rises = riseAt(parts[stage], now);
        if (stage == 0 || rises == kFalse)
            return rises;
        int earlier = kFalse;
        for (int then = 0; then <= now; ++then)
            if (isShortlyBefore(then, now, *formula.longest))
                earlier = std::max(earlier, stageAt(formula, parts, stage - 1, then));
        return std::min(rises, earlier);
    }

    struct Travel {
        double width = 0.0;
        bool hasNumber = false;
        bool hasUnknown = false;
    };

    Travel travel(const Formula& formula, int from, int now) const {
        double lowest = kInfinity;
        double highest = -kInfinity;
        bool hasUnknown = false;
        for (int then = from; then <= now; ++then) {
            const double value = number(formula.signal, then);
            hasUnknown |= std::isnan(value);
            if (!std::isnan(value)) {
                lowest = std::min(lowest, value);
                highest = std::max(highest, value);
            }
        }
        return {highest > lowest ? highest - lowest : 0.0, highest >= lowest, hasUnknown};
    }

    /// The movement within the stretch in which `part` has been at least `truth`; nothing outside such a stretch.
    std::optional<Travel> travelWithin(const Formula& formula, const Truths& part, int truth, int now) const {
        int from = now + 1;
        while (from > 0 && part[static_cast<std::size_t>(from - 1)] >= truth)
            --from;
        return from > now ? std::nullopt : std::optional(travel(formula, from, now));
    }

    int movedAt(const Formula& formula, const std::vector<Truths>& parts, int now) const {
        const auto reached = [&](const std::optional<Travel>& travel) {
            return travel && travel->hasNumber && travel->width >= formula.constant;
        };
        std::optional<Travel> certain;
        std::optional<Travel> possible;
        if (formula.shape == Shape::Moved) {
            certain = possible = travel(formula, 2 * m_trace.references[static_cast<std::size_t>(now)], now);
        } else {
            certain = travelWithin(formula, parts[0], kTrue, now);
            possible = travelWithin(formula, parts[0], kUnknown, now);
        }
        if (reached(certain))
            return kTrue;
        return possible && (reached(possible) || possible->hasUnknown) ? kUnknown : kFalse;
    }

    // ---- margins: every operator is worked out for the least and for the greatest that its parts may be

    struct Parts {
        const std::vector<Margins>& margins;
        const std::vector<Truths>& truths;
        bool isGreatest;

        double at(std::size_t which, int then) const {
            const Bounds& bounds = margins[which][static_cast<std::size_t>(then)];
            return isGreatest ? bounds.high : bounds.low;
        }
        /// Of `not part`, whose least is minus the greatest of the part.
        double opposite(std::size_t which, int then) const {
            const Bounds& bounds = margins[which][static_cast<std::size_t>(then)];
            return isGreatest ? -bounds.low : -bounds.high;
        }
    };

    double marginAt(const Formula& formula, const Parts& parts, int now) const {
        switch (formula.shape) {
        case Shape::Not:
            return parts.opposite(0, now);
        case Shape::And:
            return std::min(parts.at(0, now), parts.at(1, now));
        case Shape::Or:
            return std::max(parts.at(0, now), parts.at(1, now));
        case Shape::Once:
        case Shape::Historically:
            return windowMargin(formula, parts, now);
        case Shape::Since:
            return sinceMargin(formula, parts, now);
        case Shape::Rise:
        case Shape::Fall:
            return riseMargin(parts, 0, formula.shape == Shape::Fall, now);
        case Shape::Held:
            return heldMargin(formula, parts, now);
        case Shape::Sequence:
            return stageMargin(formula, parts, formula.parts.size() - 1, now);
        case Shape::Moved:
        case Shape::MovedWithin:
            return movedMargin(formula, parts, now);
        default:
            return readMargin(formula, parts.isGreatest, now);
        }
    }

    double scaled(const Formula& formula, double margin) const {
        return m_isRelative ? margin * (1.0 / m_signals[*m_signals.find(formula.signal)].scale) : margin;
    }

    double readMargin(const Formula& formula, bool isGreatest, int now) const {
        const int truth = readAt(formula, now);
        if (truth == kUnknown)
            return isGreatest ? kInfinity : -kInfinity;
        if (formula.shape == Shape::OnOff || formula.shape == Shape::Position)
            return truth == kTrue ? kInfinity : -kInfinity;
        const double other = formula.shape == Shape::Difference ? number(formula.other, now) : 0.0;
        const double distance = scaled(formula, std::fabs(number(formula.signal, now) - other - formula.constant));
        return truth == kTrue ? distance : -distance;
    }

    double windowMargin(const Formula& formula, const Parts& parts, int now) const {
        const bool isOnce = formula.shape == Shape::Once;
        double result = isOnce ? -kInfinity : kInfinity;
        for (int then = 0; then <= now; ++then)
            if (hasStart(formula, now, then))
                result = isOnce ? std::max(result, parts.at(0, then)) : std::min(result, parts.at(0, then));
        return result;
    }

    double sinceMargin(const Formula& formula, const Parts& parts, int now) const {
        double result = -kInfinity;
        for (int then = 0; then <= now; ++then) {
            if (!hasStart(formula, now, then))
                continue;
            double all = parts.at(1, then);
            for (int between = then; between <= now; ++between)
                all = std::min(all, parts.at(0, between));
            result = std::max(result, all);
        }
        return result;
    }

    static double riseMargin(const Parts& parts, std::size_t which, bool isFall, int now) {
        if (now == 0)
            return -kInfinity;
        const int before = now % 2 == 0 ? now - 1 : now;
        return isFall ? std::min(parts.opposite(which, now), parts.at(which, before))
                      : std::min(parts.at(which, now), parts.opposite(which, before));
    }

    double heldMargin(const Formula& formula, const Parts& parts, int now) const {
        const int from = now - 2 * *formula.longest;
        if (from < 2 * m_trace.references[static_cast<std::size_t>(now)])
            return -kInfinity;
        double result = kInfinity;
        for (int then = from; then <= now; ++then)
            result = std::min(result, parts.at(0, then));
        return result;
    }

    double stageMargin(const Formula& formula, const Parts& parts, std::size_t stage, int now) const {
        const double rises = riseMargin(parts, stage, false, now);
        if (stage == 0)
            return rises;
        double earlier = -kInfinity;
        for (int then = 0; then <= now; ++then)
            if (isShortlyBefore(then, now, *formula.longest))
                earlier = std::max(earlier, stageMargin(formula, parts, stage - 1, then));
        return std::min(rises, earlier);
    }

    double movedMargin(const Formula& formula, const Parts& parts, int now) const {
        std::optional<Travel> moved;
        double stretch = kInfinity;
        if (formula.shape == Shape::Moved) {
            moved = travel(formula, 2 * m_trace.references[static_cast<std::size_t>(now)], now);
        } else {
            moved = travelWithin(formula, parts.truths[0], parts.isGreatest ? kUnknown : kTrue, now);
            stretch = parts.at(0, now);
        }
        const double width = !moved ? 0.0 : parts.isGreatest && moved->hasUnknown ? kInfinity : moved->width;
        return std::min(scaled(formula, width - formula.constant), stretch);
    }

    const Trace& m_trace;
    const SignalTable& m_signals;
    bool m_isRelative;
};

} // namespace

Truths truths(const Formula& formula, const Trace& trace, const SignalTable& signals) {
    return Reader(trace, signals, false).truths(formula);
}

Margins margins(const Formula& formula, const Trace& trace, const SignalTable& signals, bool isRelative) {
    return Reader(trace, signals, isRelative).margins(formula);
}

} // namespace flowhand::definition
