#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "procedure/aircraftfile.h"
#include "procedure/flow.h"
#include "review/comparison.h"
#include "session/event.h"
#include "session/record.h"
#include "session/score.h"
#include "store/note.h"

namespace flowhand {

/// A stored run judged by this program, beside what the record says of it.
struct Rejudgement {
    std::string by;                 ///< version
    bool isCompared = false;        ///< the record had a result to compare with
    bool isSame = false;            ///< the events are the same to the byte
    std::vector<std::string> gone;  ///< canonical events of the record only
    std::vector<std::string> added; ///< canonical events of this judgement only
    std::int64_t milliPointsBefore = 0;
    std::string otherFlow;               ///< the file of the flow it was judged by; empty: its own, as it was flown
    std::vector<StepComparison> changed; ///< the steps that went another way, beside the record ('the other run')
    std::vector<Phrase> remarks;         ///< whole sentences: what of the record the other files have no place for
};

/// A run to be talked through, live or stored. Borrows all of it.
struct DebriefInput {
    const Flow& flow;
    const Aircraft& aircraft;
    const RunHeader& header;
    const Score& score;
    const std::vector<StepResult>& results; ///< by step
    const std::vector<Event>& events;
    std::int64_t runId = 0;                   ///< in the store; 0: not stored
    bool isCutOff = false;                    ///< the program ended in mid-run; what there is was recovered
    std::vector<std::string> damage = {};     ///< what could not be read back, in words
    const Rejudgement* rejudgement = nullptr; ///< where the run was judged again
    RunLosses losses = {};
    const std::vector<Note>* notes = nullptr; ///< in the order in which they were written; none: there are none
    const Timeline* timeline = nullptr;       ///< none: the samples are not at hand, and no times are told
};

/// The sentence that ends every debrief.
inline constexpr char kTrainingNote[] = "Flowhand is a hobby trainer and is not for real-world flight training.";

/// For a terminal: what went wrong first, then every step. Lines of at most 100 characters.
[[nodiscard]] std::string debriefText(const DebriefInput& input);

/// The same as one JSON object; times in whole microseconds from the start of the run, points in thousandths.
[[nodiscard]] std::string debriefJson(const DebriefInput& input);

} // namespace flowhand
