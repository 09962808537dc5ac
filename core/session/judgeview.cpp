#include <algorithm>

#include "base/figuretext.h"
#include "session/judge.h"
#include "session/response.h"
#include "session/slowtime.h"

namespace flowhand {

namespace {

bool isDoneState(StepState state) {
    return state == StepState::Done || state == StepState::TooEarly || state == StepState::Uncertain ||
           state == StepState::FoundSet;
}

Phrase lateText(Duration late) {
    return phrase("done, {1} late").with(secondsToTenths(late));
}

} // namespace

/// Times as the caller counts them. What the run stood still comes off a response as suspended time.
std::vector<StepResult> Judge::judgedResults() const {
    std::vector<StepResult> results(m_tracks.size());
    std::vector<bool> isDone(m_tracks.size());
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        const StepTrack& track = m_tracks[i];
        results[i] = {track.state, track.doer == Doer::Hand, track.due,        track.done, {},
                      track.mu,    track.isTooEarly,         track.isUncertain};
        isDone[i] = isDoneState(track.state);
    }
    const std::vector<Time> starts = responseStarts(results, isDone);
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        StepResult& result = results[i];
        const Time start = starts[i];
        const Time done = result.done;
        result.due = m_clock.fromRun(result.due);
        result.done = m_clock.fromRun(done);
        if (isDone[i])
            result.suspended =
                (result.done - m_clock.fromRun(start)) - (done - start) + pausedIn(m_tracks[i], start, done);
    }
    return results;
}

const std::vector<StepResult>& Judge::results() const {
    if (std::exchange(m_isStale, false))
        m_results = judgedResults();
    return m_results;
}

std::vector<GuardResult> Judge::guardResults() const {
    std::vector<GuardResult> results;
    for (std::size_t i = 0; i < m_guards.size(); ++i)
        results.push_back({static_cast<int>(i), m_guards[i].isBroken});
    return results;
}

/// Of sound and input, as long as it is on the run's clock.
Duration Judge::latency() const {
    return ofHands(m_setup.latency, m_setup.timeScale);
}

Score Judge::score() const {
    Score score = scoreOf(m_flow, results(), m_extras.all(), guardResults(), latency());
    if (m_hasJumped && score.isPassed) {
        score.isPassed = false;
        score.whyNotPassed = phrase("the run jumped, so it is not the whole flow");
    }
    return score;
}

Phrase Judge::verdict(std::size_t i, const Score& score) const {
    const StepTrack& track = m_tracks[i];
    switch (track.state) {
    case StepState::Waiting:
        return {};
    case StepState::Due:
        return track.why;
    case StepState::Seen:
        return phrase("seen");
    case StepState::Done: {
        Phrase text = score.isScored && score.outOfOrder[i]          ? phrase("done, out of order")
                      : score.isScored && score.late[i] > Duration{} ? lateText(score.late[i])
                                                                     : phrase("done");
        return track.isUndone ? phrase("{1}, undone again").with(std::move(text)) : text;
    }
    case StepState::Omitted:
        return phrase("not done");
    case StepState::FoundSet:
        return phrase("found set");
    case StepState::TooEarly:
        return phrase("too early");
    case StepState::Uncertain:
        return phrase("uncertain: too close to the noise of the control");
    case StepState::Void:
        return track.why.isEmpty() ? phrase("no longer called for") : track.why;
    case StepState::LeftOut:
        return phrase("left out: {1}").with(track.why);
    }
    return {};
}

SessionView Judge::view() const {
    SessionView view;
    view.phase = m_phase;
    view.time = m_real;
    const Score now = score();
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        const StepTrack& track = m_tracks[i];
        StepView shown;
        shown.state = track.state;
        shown.due = m_clock.fromRun(track.due);
        shown.seen = m_clock.fromRun(track.seen);
        shown.done = m_clock.fromRun(track.done);
        shown.isLate = now.isScored && now.late[i] > Duration{};
        shown.isOutOfOrder = now.isScored && now.outOfOrder[i];
        shown.margin = track.margin;
        shown.verdict = verdict(i, now);
        view.steps.push_back(std::move(shown));
        if (track.isOpen())
            view.due.push_back(static_cast<int>(i));
    }
    std::stable_partition(view.due.begin(), view.due.end(), [&](int i) {
        return m_tracks[static_cast<std::size_t>(i)].doer == Doer::Hand;
    });
    if (m_gate.isClosed())
        view.setUp = m_gate.wrong(m_values);
    for (const CockpitControl& control : m_aircraft.controls) {
        const SignalId id = control.signal;
        if (m_ownership.wantsMatch(id))
            view.toMatch.push_back(
                {id, m_ownership.wanted(id), m_ownership.isPartners(id) ? m_ownership.lever(id) : value(id)});
    }
    for (std::size_t i = 0; i < m_guards.size(); ++i) {
        if (m_guards[i].isBrokenNow)
            view.openGuards.push_back(static_cast<int>(i));
        if (m_guards[i].isBroken)
            view.brokenGuards.push_back(static_cast<int>(i));
    }
    if (m_speaker.isSpeaking()) {
        view.saying = m_speaker.current().text;
        view.sayingBy = m_speaker.current().by;
    }
    view.wordsBegun = m_wordsBegun;
    view.holdReason = m_holdReason;
    view.scoreFloor = now.milliPoints;
    view.scoreCeiling = ceiling();
    return view;
}

/// All that is open or coming done at once from now on, on cue and with full margin.
std::int64_t Judge::ceiling() const {
    std::vector<StepResult> best = results();
    Time last = m_real;
    for (const StepResult& result : best)
        if (isDoneState(result.state))
            last = std::max(last, result.done);
    for (StepResult& result : best)
        if (!isDoneState(result.state) && result.state != StepState::Omitted && result.state != StepState::Void &&
            result.state != StepState::LeftOut) {
            result.state = StepState::Done;
            result.due = result.done = last;
            result.suspended = {};
        }
    return scoreOf(m_flow, best, m_extras.all(), guardResults(), latency()).upperMilliPoints;
}

} // namespace flowhand
