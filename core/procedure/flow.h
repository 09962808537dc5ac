#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/problem.h"
#include "base/signal.h"
#include "base/time.h"
#include "condition/condition.h"
#include "procedure/aircraftfile.h"

namespace flowhand {

enum class Duty : std::uint8_t { Flying, Monitoring };

/// What a step is, which says how it is done and shown.
enum class StepKind : std::uint8_t {
    Act,   ///< a control is moved
    Reply, ///< the answer to words, by the reply button
    Check, ///< compare only: found set counts as done
    Say    ///< words alone; done when they end (the partner's) or on reply (one's own)
};

/// Words that cue a step, spoken by the partner or the cockpit when `when` comes true; the step is due when they end.
struct Words {
    std::string text;
    std::string by; ///< seat, "cockpit" or "ground"
};

/// The numbers a step's `done` must come to, and how exactly: margin is judged against half its width.
struct Band {
    SignalId signal = kNoSignal;
    double lowest = 0.0; ///< in the signal's unit
    double highest = 0.0;
};

/// A condition as written, with its place.
struct PlacedCondition {
    Condition condition;
    SourcePlace place;
};

/// One step of a flow or checklist. Times are from when it is due.
///
/// Reference time of its conditions: while it waits, the beginning of its control's current movement; once due, the
/// time it became due.
struct Step {
    std::string id;
    std::string title; ///< "Flap lever to 12"
    StepKind kind = StepKind::Act;
    std::string seat; ///< whose step it is
    Duty duty = Duty::Flying;
    std::string orderedBy; ///< seat that orders it, when not the one who moves
    std::string movedBy;   ///< seat whose hand moves; = seat unless said
    std::optional<Words> cue;
    std::string reply; ///< what is answered
    std::optional<PlacedCondition> when;
    std::optional<PlacedCondition> done; ///< of Act, Check and Reply always; Say without
    std::optional<PlacedCondition> expires;
    std::optional<Duration> expiresAfter;
    std::optional<PlacedCondition> suspend;
    std::vector<SignalId> controls; ///< whose movement by a hand does it; those in `done` unless said
    std::vector<std::size_t> after; ///< indexes of the steps it comes after
    Duration within{};              ///< a
    Duration late{};                ///< b
    int weight = 1;                 ///< 1 normal, 2 important, 3 critical
    std::optional<Band> band;
    bool compareOnly = false;    ///< found set counts as done
    std::vector<SignalId> needs; ///< motion signals without which it cannot be judged
    std::string group;           ///< steps of one group come in any order
    std::string jumpPlace;       ///< start place of the practice aircraft in a jump to it; empty: it stays where it is
    SourcePlace jumpWhere;       ///< where the file names that place
    std::string why;             ///< one line for the learner
    SourcePlace place;
};

/// What must never be, over a stretch of the flow.
struct Guard {
    std::string id;
    std::string title;
    PlacedCondition never;
    std::optional<std::size_t> from; ///< from when this step is due; none: from the start
    std::optional<std::size_t> to;   ///< until this step is done; none: to the end
    int weight = 1;
    bool isCritical = false; ///< weight 3: a run that breaks it does not pass
    SourcePlace place;
};

/// An end of the flow other than its last step: voids what is open.
struct Outcome {
    std::string name;
    std::string title;
    PlacedCondition when;
    std::string next; ///< flow that follows, or empty
    SourcePlace place;
};

/// A control's state that the flow starts from, for the set-up check and the practice aircraft.
struct StartValue {
    SignalId signal = kNoSignal;
    Value value;
    double tolerance = 0.0; ///< of numbers, in the signal's unit
};

/// A rule of `flowhand lint` that this file breaks on purpose, and why.
struct Waiver {
    std::string rule;
    std::string step; ///< id; empty: the whole file
    std::string reason;
    SourcePlace place;
};

/// What an abnormal or emergency flow is for: shown under its title.
struct Abnormal {
    std::string
        condition; ///< how it is known that this flow is wanted: "A fire bell; the handle of one engine is red."
    std::string objective; ///< what the crew has reached when it is done
};

enum class FlowStyle : std::uint8_t { Flow, DoThenVerify, ReadAndDo };

/// A flow or checklist file. Refers to its Aircraft's signals by id.
struct Flow {
    std::string id; ///< file name without .toml
    std::string file;
    std::string title;
    FlowStyle style = FlowStyle::Flow;
    std::string summary;
    std::optional<Abnormal> abnormal; ///< none: a normal flow
    std::string phaseFrom;            ///< where it lies on the way from gate to gate (procedure/phase.h)
    std::string phaseTo;
    double target = 80.0;   ///< score to pass, 0..100
    std::string startPlace; ///< of the ground plan or the practice aircraft: "stand", "line_up", "touchdown"
    SourcePlace startWhere; ///< where the file names its start place
    std::vector<StartValue> start;
    std::vector<Step> steps; ///< in order; `after` is filled in for all
    std::vector<Guard> guards;
    std::vector<Outcome> outcomes;
    std::vector<Waiver> waivers;
    std::string source; ///< the whole file, kept with a run
};

/// Reads one flow file for its aircraft. Nothing when `problems` got an error.
[[nodiscard]] std::optional<Flow> loadFlow(const std::string& file, const Aircraft& aircraft, Problems& problems);
/// The same from memory, as an editor holds it or a stored run keeps it; `file` stands in messages.
[[nodiscard]] std::optional<Flow> parseFlow(std::string source, const std::string& file, const Aircraft& aircraft,
                                            Problems& problems);

} // namespace flowhand
