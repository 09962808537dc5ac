#include "command/progressline.h"

#include <cstdio>
#include <string_view>

namespace flowhand {

namespace {

/// The first word of the line; empty: not shown.
std::string_view wordOf(EventKind kind) {
    switch (kind) {
    case EventKind::RunStarted:
        return "started";
    case EventKind::SetUpWanted:
        return "set up";
    case EventKind::SetUpWaived:
        return "waived";
    case EventKind::WordsBegan:
        return "says";
    case EventKind::StepDue:
        return "due";
    case EventKind::StepDone:
        return "done";
    case EventKind::StepOmitted:
        return "not done";
    case EventKind::StepFoundSet:
        return "found set";
    case EventKind::StepTooEarly:
        return "too early";
    case EventKind::StepUncertain:
        return "uncertain";
    case EventKind::StepVoid:
        return "void";
    case EventKind::StepLeftOut:
        return "left out";
    case EventKind::StepUndone:
        return "undone";
    case EventKind::WrongControl:
        return "wrong control";
    case EventKind::WrongValue:
        return "wrong value";
    case EventKind::ExtraCancelled:
        return "put right";
    case EventKind::GuardBroken:
        return "never!";
    case EventKind::GuardLeftOut:
        return "not watched";
    case EventKind::ScenarioEvent:
        return "happens";
    case EventKind::PartnerMoved:
        return "partner";
    case EventKind::MatchWanted:
        return "match";
    case EventKind::Matched:
        return "matched";
    case EventKind::Held:
        return "held";
    case EventKind::Resumed:
        return "resumed";
    case EventKind::Gap:
        return "input lost";
    case EventKind::Jumped:
        return "jumped to";
    case EventKind::Placed:
        return "put at";
    case EventKind::OutcomeReached:
        return "outcome";
    case EventKind::RunEnded:
        return "ended";
    case EventKind::StepMoved:
    case EventKind::StepSeen:
    case EventKind::GuardOver:
        break;
    }
    return {};
}

std::string subjectOf(const Event& event, const Flow& flow, const Aircraft& aircraft) {
    std::string text;
    if (event.kind == EventKind::WordsBegan)
        return event.by + ": \"" + event.text.english() + "\"";
    if (event.step >= 0)
        text = flow.steps[static_cast<std::size_t>(event.step)].title;
    else if (event.guard >= 0)
        text = flow.guards[static_cast<std::size_t>(event.guard)].title;
    if (event.signal != kNoSignal &&
        (event.step < 0 || event.kind == EventKind::WrongControl || event.kind == EventKind::WrongValue)) {
        const Signal& signal = aircraft.signals[event.signal];
        text += (text.empty() ? "" : ": ") + signal.label + " " + valueText(signal, event.value);
    }
    if (!event.text.isEmpty())
        text += (text.empty() ? "" : " - ") + event.text.english();
    return text;
}

} // namespace

std::string progressLine(const Event& event, const Flow& flow, const Aircraft& aircraft) {
    const std::string_view word = wordOf(event.kind);
    if (word.empty())
        return {};
    char head[64];
    std::snprintf(head, sizeof head, "%8s  %-13.*s  ", clockText(event.time).c_str(), static_cast<int>(word.size()),
                  word.data());
    return head + subjectOf(event, flow, aircraft);
}

} // namespace flowhand
