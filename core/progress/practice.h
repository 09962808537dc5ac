#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "store/store.h"

namespace flowhand {

/// A flow among those of all aircraft.
struct FlowName {
    std::string aircraftFolder;
    std::string flowId;

    auto operator<=>(const FlowName&) const = default;
};

/// What became of a step of the pilot's own in one run.
struct StepTry {
    std::string id;
    std::string title;
    /// What was done instead of it, in words: "not done", "late", "Spoiler lever at 40 % instead of: Flap lever to 12".
    /// Empty: it went right. A small margin alone is no mistake.
    std::vector<Phrase> mistakes;
};

/// A run that counts as practice: finished, scored, not deleted, flown by a person.
struct PractisedRun {
    std::int64_t id = 0;
    std::int64_t startedUnixMillis = 0;
    Duration length{};
    FlowName flow;
    std::string flowTitle;
    std::string help; ///< "guided" ...; empty: not said
    std::int64_t milliPoints = 0;
    bool isPassed = false;
    Phrase whyNotPassed;
    bool isComplete = false; ///< no step of the pilot's own was left undone
    Duration pace{};
    std::vector<StepTry> steps; ///< those that count
};

/// One pilot on one rig: whose runs are reckoned over together.
struct PracticeLine {
    std::string pilot; ///< empty: no name was given
    std::string rig;   ///< its title; empty: on-screen controls alone
    std::int64_t runs = 0;

    bool operator==(const PracticeLine&) const = default;
};

/// Whose runs are wanted. Without a pilot or rig those of the newest run that fits: pilots and rigs are mixed only
/// where that is asked for.
struct PracticeWish {
    std::optional<std::string> pilot;
    std::optional<std::string> rig; ///< its title, or onScreenName()
    bool isEveryPilot = false;
    bool isEveryRig = false;
};

struct PracticeRecord {
    PracticeLine line; ///< whose it is; `runs` as many as below
    bool isEveryPilot = false;
    bool isEveryRig = false;
    std::vector<PractisedRun> runs;  ///< oldest first
    std::int64_t simulatedRuns = 0;  ///< of these, those with simulated input: from the screen or a script
    std::vector<PracticeLine> lines; ///< all that there are, the most recent first
    std::vector<Phrase> remarks;     ///< whole sentences: what could not be read and is left out
};

/// What a rig's title is where there is none: "on-screen controls".
[[nodiscard]] std::string onScreenName();
/// "Kim, on Desk quadrant", "every pilot, on on-screen controls".
[[nodiscard]] Phrase describe(const PracticeRecord& record);

/// Reads the runs; away from the window. Errors: those of the store, `unknown-pilot`, `unknown-rig`. Without any run:
/// an empty record, whatever is wished.
[[nodiscard]] Result<PracticeRecord> practiceRecord(const std::string& storeFile, const PracticeWish& wish);

/// What the record of one run says of it; nothing when its flow cannot be read.
[[nodiscard]] std::optional<PractisedRun> practisedRun(const StoredRun& run, const Flow& flow);

} // namespace flowhand
