#include "presenter/lanebars.h"

#include <algorithm>

#include "presenter/phrasetext.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

/// More lines than this would leave no room for signals; what overlaps then lies one over the other.
constexpr int kMostLines = 4;

/// Puts each bar on the first line that is free by then.
LaneBars laidOut(std::vector<LaneBar> bars) {
    std::stable_sort(bars.begin(), bars.end(), [](const LaneBar& a, const LaneBar& b) {
        return a.from < b.from;
    });
    LaneBars lane;
    std::vector<Time> free;
    for (LaneBar& bar : bars) {
        const auto line = std::find_if(free.begin(), free.end(), [&](Time until) {
            return until <= bar.from;
        });
        bar.line = static_cast<int>(line - free.begin());
        if (line == free.end() && bar.line < kMostLines)
            free.push_back(bar.to);
        else if (line == free.end())
            bar.line = kMostLines - 1;
        free[static_cast<std::size_t>(bar.line)] = std::max(free[static_cast<std::size_t>(bar.line)], bar.to);
        lane.lines = std::max(lane.lines, bar.line + 1);
    }
    lane.bars = std::move(bars);
    return lane;
}

LaneBar barOf(const Episode& episode, Time length, QString text, int verdict, int step) {
    LaneBar bar;
    bar.from = episode.from;
    bar.to = episode.to.value_or(length);
    bar.text = std::move(text);
    bar.verdict = verdict;
    bar.step = step;
    return bar;
}

} // namespace

int verdictOfStep(const ReviewedRun& run, std::size_t step) {
    const StepResult& result = run.results[step];
    StepView view;
    view.state = result.isUncertain ? StepState::Uncertain : result.isTooEarly ? StepState::TooEarly : result.state;
    view.isLate = step < run.score.late.size() && run.score.late[step] > Duration{};
    view.isOutOfOrder = step < run.score.outOfOrder.size() && run.score.outOfOrder[step];
    return verdictOf(view);
}

LaneBars stepBars(const Timeline& timeline) {
    std::vector<LaneBar> bars;
    for (std::size_t step = 0; step < timeline.steps().size(); ++step) {
        const std::optional<Episode> open = timeline.openStretch(step);
        if (!open)
            continue;
        LaneBar bar = barOf(*open, timeline.length(), QString::fromStdString(timeline.run().flow.steps[step].title),
                            verdictOfStep(timeline.run(), step), static_cast<int>(step));
        bar.tick = timeline.steps()[step].firstMovement;
        bars.push_back(std::move(bar));
    }
    return laidOut(std::move(bars));
}

LaneBars guardBars(const Timeline& timeline) {
    std::vector<LaneBar> bars;
    for (std::size_t guard = 0; guard < timeline.guards().size(); ++guard)
        for (const Episode& episode : timeline.guards()[guard])
            bars.push_back(barOf(episode, timeline.length(),
                                 QString::fromStdString(timeline.run().flow.guards[guard].title), Verdict::Wrong, -1));
    return laidOut(std::move(bars));
}

LaneBars callBars(const Timeline& timeline) {
    std::vector<LaneBar> bars;
    for (const Call& call : timeline.calls())
        bars.push_back(barOf({call.from, std::min(call.to, timeline.length())}, timeline.length(),
                             QString::fromStdString(call.text), Verdict::Info, call.step));
    return laidOut(std::move(bars));
}

LaneBars holdBars(const Timeline& timeline) {
    std::vector<LaneBar> bars;
    for (const Hold& hold : timeline.holds()) {
        QString text = textOf(hold.reason);
        if (text.isEmpty())
            text = hold.isGap ? QObject::tr("Input lost") : QObject::tr("Held");
        bars.push_back(barOf(hold.episode, timeline.length(), std::move(text),
                             hold.isGap ? Verdict::Unsure : Verdict::LeftOut, -1));
    }
    return laidOut(std::move(bars));
}

LaneBars noteBars(const Timeline& timeline, const std::vector<Note>& notes) {
    std::vector<LaneBar> bars;
    for (const Note& note : notes) {
        if (note.kind != NoteKind::Note)
            continue;
        const Time time = timeOf(note.anchor, timeline.run().flow, timeline.run().results);
        bars.push_back(barOf({time, time}, timeline.length(), QString::fromStdString(note.text), Verdict::Info, -1));
    }
    return laidOut(std::move(bars));
}

std::vector<std::vector<LaneLimit>> laneLimits(const Timeline& timeline) {
    std::vector<std::vector<LaneLimit>> all(timeline.run().aircraft.signals.size());
    for (std::size_t step = 0; step < timeline.steps().size(); ++step) {
        const std::optional<Episode> open = timeline.openStretch(step);
        if (!open)
            continue;
        for (const SignalLimits& limits : timeline.limits(step)) {
            LaneLimit limit{open->from, open->to.value_or(timeline.length()), static_cast<int>(step),
                            !limits.band.empty(), limits.band.empty() ? limits.allowed : limits.band};
            all[indexOf(limits.signal)].push_back(std::move(limit));
        }
    }
    return all;
}

} // namespace flowhand
