#include "session/score.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "base/figuretext.h"
#include "session/chain.h"
#include "session/response.h"

namespace flowhand {

namespace {

__extension__ using Wide = __int128;

constexpr std::int64_t kFullScore = 100'000; // milli-points
// Shares of a step's weight, in hundredths.
constexpr std::int64_t kOutOfOrderShare = 40; // out of order or too early
constexpr std::int64_t kLateShare = 30;
constexpr std::int64_t kMarginShare = 10;
constexpr std::int64_t kExtraShare = 25;     // of weight 1
constexpr std::int64_t kMuParts = 1'000'000; // μ is taken to the millionth
constexpr int kCritical = 3;

std::int64_t wholeMillis(Duration duration) {
    return std::chrono::floor<std::chrono::milliseconds>(duration + std::chrono::microseconds(500)).count();
}

std::string inSeconds(std::int64_t millis) {
    return toTenths(static_cast<double>(millis) / 1000.0) + " s";
}

/// In the order of LossKind.
constexpr std::array<std::string_view, 11> kLossNames = {
    "not done",     "uncertain",   "too early",     "out of order", "late", "small margin",
    "undone again", "wrong value", "wrong control", "guard broken", "floor"};
static_assert(kLossNames.size() == static_cast<std::size_t>(LossKind::Floor) + 1);

bool isDoneState(const Step& step, const StepResult& result, bool isUncertainDone) {
    switch (result.state) {
    case StepState::Done:
    case StepState::TooEarly:
        return isUncertainDone || !result.isUncertain;
    case StepState::Uncertain:
        return isUncertainDone;
    case StepState::FoundSet:
        return step.compareOnly;
    default:
        return false;
    }
}

bool counts(const Step& step, const StepResult& result) {
    return result.isOwn && result.state != StepState::Void && result.state != StepState::LeftOut &&
           (result.state != StepState::FoundSet || step.compareOnly);
}

struct Outside {
    const std::vector<ExtraResult>& extras;
    const std::vector<GuardResult>& guards;
    Duration latency;
};

/// The ledger of one reading of the run: uncertain steps all done, or all not done.
class Ledger {
public:
    Ledger(const Flow& flow, const std::vector<StepResult>& results, const Outside& outside, bool isUncertainDone)
        : m_flow(flow), m_results(results), m_outside(outside), m_isDone(flow.steps.size()),
          m_response(flow.steps.size()) {
        for (std::size_t i = 0; i < flow.steps.size(); ++i)
            m_isDone[i] = isDoneState(flow.steps[i], results[i], isUncertainDone);
        for (std::size_t i = 0; i < flow.steps.size(); ++i)
            if (counts(flow.steps[i], results[i]))
                m_score.weight += flow.steps[i].weight;
        m_score.outOfOrder.resize(flow.steps.size());
        m_score.late.resize(flow.steps.size());
    }

    Score total() {
        m_score.isScored = m_score.weight > 0;
        if (!m_score.isScored)
            return m_score;
        measureResponses();
        findOrder();
        addGuards();
        for (std::size_t i = 0; i < m_flow.steps.size(); ++i)
            if (counts(m_flow.steps[i], m_results[i]))
                addStep(i);
        addExtras();
        close();
        judgePass();
        return m_score;
    }

private:
    /// 100,000 · weight · share / 100 · part / whole / W, rounded half up.
    [[nodiscard]] std::int64_t points(std::int64_t weight, std::int64_t share, std::int64_t part = 1,
                                      std::int64_t whole = 1) const {
        const Wide over = Wide(kFullScore) * weight * share * part;
        const Wide under = Wide(100) * whole * m_score.weight;
        return static_cast<std::int64_t>((2 * over + under) / (2 * under));
    }

    void measureResponses() {
        const std::vector<Time> starts = responseStarts(m_results, m_isDone);
        for (std::size_t i = 0; i < m_results.size(); ++i)
            if (m_isDone[i])
                m_response[i] = wholeMillis(m_results[i].done - starts[i] - m_outside.latency - m_results[i].suspended);
    }

    [[nodiscard]] std::int64_t latePoints(std::size_t i) const {
        const Step& step = m_flow.steps[i];
        const std::int64_t within = wholeMillis(step.within);
        const std::int64_t span = std::max<std::int64_t>(wholeMillis(step.late) - within, 0);
        const std::int64_t over = m_response[i] - within;
        if (over <= 0)
            return 0;
        return over >= span ? points(step.weight, kLateShare) : points(step.weight, kLateShare, over, span);
    }

    void findOrder() {
        std::vector<ChainStep> candidates;
        for (std::size_t i = 0; i < m_flow.steps.size(); ++i) {
            if (!m_isDone[i] || m_results[i].isTooEarly || !counts(m_flow.steps[i], m_results[i]))
                continue;
            const std::int64_t worth = points(m_flow.steps[i].weight, kOutOfOrderShare) - latePoints(i);
            candidates.push_back({i, m_results[i].done, worth});
        }
        const std::vector<bool> isOutside = outOfOrder(m_flow.steps, candidates);
        for (std::size_t n = 0; n < candidates.size(); ++n)
            m_score.outOfOrder[candidates[n].step] = isOutside[n];
    }

    void add(std::int64_t milliPoints, int step, int guard, LossKind what, Phrase text) {
        if (milliPoints == 0)
            return;
        LedgerLine line{milliPoints, step, guard, what, std::move(text)};
        m_score.ledger.push_back(std::move(line));
    }

    void addGuards() {
        for (const GuardResult& result : m_outside.guards) {
            if (!result.isBroken)
                continue;
            const Guard& guard = m_flow.guards[static_cast<std::size_t>(result.guard)];
            add(points(guard.weight, 100), -1, result.guard, LossKind::GuardBroken,
                phrase("guard broken: {1}").with(guard.title));
        }
    }

    void addStep(std::size_t i) {
        const Step& step = m_flow.steps[i];
        const int index = static_cast<int>(i);
        if (!m_isDone[i]) {
            const bool isUncertain = m_results[i].isUncertain || m_results[i].state == StepState::Uncertain;
            add(points(step.weight, 100), index, -1, isUncertain ? LossKind::Uncertain : LossKind::NotDone,
                (isUncertain ? phrase("{1}: uncertain, too close to the noise of the control to be sure")
                             : phrase("{1}: not done"))
                    .with(step.title));
            return;
        }
        if (m_results[i].isTooEarly) {
            add(points(step.weight, kOutOfOrderShare), index, -1, LossKind::TooEarly,
                phrase("{1}: done too early").with(step.title));
        } else if (m_score.outOfOrder[i]) {
            add(points(step.weight, kOutOfOrderShare), index, -1, LossKind::OutOfOrder,
                phrase("{1}: done out of order").with(step.title));
        } else {
            const std::int64_t over = std::max<std::int64_t>(m_response[i] - wholeMillis(step.within), 0);
            m_score.late[i] = std::chrono::milliseconds(over);
            add(latePoints(i), index, -1, LossKind::Late,
                phrase("{1}: {2} late ({3}, within {4})")
                    .with(step.title, inSeconds(over), inSeconds(m_response[i]), inSeconds(wholeMillis(step.within))));
        }
        const double mu = std::isnan(m_results[i].mu) ? 0.0 : std::clamp(m_results[i].mu, 0.0, 1.0);
        const std::int64_t missing = kMuParts - std::llround(mu * kMuParts);
        char share[32];
        std::snprintf(share, sizeof share, "%.0f %%", mu * 100.0);
        add(points(step.weight, kMarginShare, missing, kMuParts), index, -1, LossKind::SmallMargin,
            phrase("{1}: small margin, {2} of the room in its band").with(step.title, share));
    }

    void addExtras() {
        for (const ExtraResult& extra : m_outside.extras) {
            const LossKind what = extra.isUndone       ? LossKind::UndoneAgain
                                  : extra.isWrongValue ? LossKind::WrongValue
                                                       : LossKind::WrongControl;
            add(points(1, kExtraShare), extra.step, -1, what, extra.text.isEmpty() ? lossWords(what) : extra.text);
        }
    }

    void close() {
        std::int64_t lost = 0;
        for (const LedgerLine& line : m_score.ledger)
            lost += line.milliPoints;
        m_score.milliPoints = std::max<std::int64_t>(kFullScore - lost, 0);
        add(std::min<std::int64_t>(kFullScore - lost, 0), -1, -1, LossKind::Floor,
            phrase("given back: a score does not go below 0"));
        m_score.pace = pace();
    }

    [[nodiscard]] Duration pace() const {
        Time first = kForever;
        Time last = Time::min();
        Duration suspended{};
        for (std::size_t i = 0; i < m_results.size(); ++i) {
            if (!counts(m_flow.steps[i], m_results[i]))
                continue;
            first = std::min(first, m_results[i].due);
            if (m_isDone[i]) {
                last = std::max(last, m_results[i].done);
                suspended += m_results[i].suspended;
            }
        }
        return last > first ? std::max(last - first - suspended, Duration{}) : Duration{};
    }

    void judgePass() {
        for (const GuardResult& result : m_outside.guards)
            if (result.isBroken && m_flow.guards[static_cast<std::size_t>(result.guard)].isCritical)
                fail(phrase("a critical guard was broken: {1}")
                         .with(m_flow.guards[static_cast<std::size_t>(result.guard)].title));
        for (std::size_t i = 0; i < m_flow.steps.size(); ++i) {
            if (m_flow.steps[i].weight < kCritical || !counts(m_flow.steps[i], m_results[i]))
                continue;
            Phrase fate = !m_isDone[i]              ? phrase("a critical step was not surely done: {1}")
                          : m_results[i].isTooEarly ? phrase("a critical step was done too early: {1}")
                          : m_score.outOfOrder[i]   ? phrase("a critical step was done out of order: {1}")
                                                    : Phrase();
            if (!fate.isEmpty())
                fail(std::move(fate).with(m_flow.steps[i].title));
        }
        const std::int64_t target = std::llround(m_flow.target * 1000.0);
        if (m_score.milliPoints < target) {
            fail(phrase("{1} points, the target is {2}")
                     .with(toTenths(static_cast<double>(m_score.milliPoints) / 1000.0), toTenths(m_flow.target)));
        }
        m_score.isPassed = m_score.whyNotPassed.isEmpty();
    }

    void fail(Phrase why) {
        if (m_score.whyNotPassed.isEmpty())
            m_score.whyNotPassed = std::move(why);
    }

    const Flow& m_flow;
    const std::vector<StepResult>& m_results;
    const Outside& m_outside;
    std::vector<bool> m_isDone;
    std::vector<std::int64_t> m_response; ///< r in ms, by step; of done steps
    Score m_score;
};

} // namespace

std::string_view nameOf(LossKind kind) {
    return kLossNames[static_cast<std::size_t>(kind)];
}

std::optional<LossKind> findLossKind(std::string_view name) {
    for (std::size_t i = 0; i < kLossNames.size(); ++i)
        if (kLossNames[i] == name)
            return static_cast<LossKind>(i);
    return std::nullopt;
}

Phrase lossWords(LossKind kind) {
    switch (kind) {
    case LossKind::NotDone:
        return phrase("not done");
    case LossKind::Uncertain:
        return phrase("uncertain");
    case LossKind::TooEarly:
        return phrase("too early");
    case LossKind::OutOfOrder:
        return phrase("out of order");
    case LossKind::Late:
        return phrase("late");
    case LossKind::SmallMargin:
        return phrase("small margin");
    case LossKind::UndoneAgain:
        return phrase("undone again");
    case LossKind::WrongValue:
        return phrase("wrong value");
    case LossKind::WrongControl:
        return phrase("wrong control");
    case LossKind::GuardBroken:
        return phrase("guard broken");
    case LossKind::Floor:
        break;
    }
    return phrase("floor");
}

Score scoreOf(const Flow& flow, const std::vector<StepResult>& steps, const std::vector<ExtraResult>& extras,
              const std::vector<GuardResult>& guards, Duration latency) {
    const Outside outside{extras, guards, latency};
    Score score = Ledger(flow, steps, outside, false).total();
    score.upperMilliPoints = Ledger(flow, steps, outside, true).total().milliPoints;
    if (!score.isScored)
        score.whyNotPassed = phrase("no step of this flow could be judged, so there is no score");
    return score;
}

} // namespace flowhand
