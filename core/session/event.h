#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/phrase.h"
#include "base/sample.h"

namespace flowhand {

/// What happened in a run. The list of events is derived from the samples and always the same for the same samples.
enum class EventKind : std::uint8_t {
    RunStarted,
    SetUpWanted, ///< a control is not where the start wants it
    SetUpWaived,
    WordsBegan, ///< `text`, by `by`
    StepDue,
    StepMoved, ///< first movement of one of its controls since due
    StepSeen,
    StepDone,
    StepOmitted,
    StepFoundSet,
    StepTooEarly,
    StepUncertain,
    StepVoid,
    StepLeftOut, ///< the rig lacks its control, or its motion signal is missing
    StepUndone,  ///< a done step's control left its place again before the flow ended
    WrongControl,
    WrongValue,
    ExtraCancelled, ///< a wrong control was put back in time
    GuardBroken,
    GuardOver,
    GuardLeftOut, ///< a motion signal that it reads is not observed: it may be broken unseen
    PartnerMoved,
    MatchWanted, ///< the partner moved a control that is also real: match the lever
    Matched,
    Held,
    Resumed,
    Gap,           ///< a device or feed was lost; time in it is not counted
    Jumped,        ///< the run goes on with `step`
    Placed,        ///< before that the practice aircraft was put at `text`, a start place of its own
    ScenarioEvent, ///< something happened that the scenario planned; `text` says what
    OutcomeReached,
    RunEnded
};

struct Event {
    Time time{};
    EventKind kind = EventKind::RunStarted;
    int step = -1;  ///< index in the flow, -1: none
    int guard = -1; ///< index in the flow, -1: none
    SignalId signal = kNoSignal;
    ControlId control = kNoControl;
    Value value;
    std::optional<double> margin; ///< finite margins only
    SignalId marginSignal = kNoSignal;
    std::string by; ///< seat or "cockpit", of words and partner moves
    Phrase text;    ///< words, outcome name, reason

    bool operator==(const Event&) const = default;
};

[[nodiscard]] std::string_view nameOf(EventKind kind);

/// One line of JSON, the canonical form that is stored: its text as phrasejson.h has it. `signals` gives names and
/// value texts.
[[nodiscard]] std::string toJson(const Event& event, const SignalTable& signals,
                                 const std::vector<std::string>& stepIds);

/// The same line with its text in English, as it is compared and printed: records of before there were other languages
/// have it so.
[[nodiscard]] std::string englishLine(const std::string& line);

} // namespace flowhand
