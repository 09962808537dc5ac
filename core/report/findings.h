#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "report/debrief.h"
#include "review/episodes.h"

namespace flowhand {

/// One step as a debrief shows it.
struct StepFinding {
    std::string id;
    std::string title;
    std::string seat;
    std::int64_t weight = 1;
    bool isOwn = true;
    std::optional<Time> due;
    std::optional<Time> done;
    Phrase verdict; ///< in words: "done", "1.2 s late"
    std::string by; ///< the control that did it, or who
    bool isSimulated = false;
    std::optional<double> margin;
    std::string marginUnit;
    std::int64_t milliPoints = 0; ///< lost
};

struct GuardFinding {
    std::string id;
    std::string title;
    bool isCritical = false;
    std::vector<Episode> episodes; ///< in which it was broken
};

struct ExtraFinding {
    Time time{};
    bool isWrongValue = false;
    Phrase text;
    bool isPutBack = false; ///< in time: it cost nothing
};

/// All that a debrief says of a run besides its header and score.
struct Findings {
    std::vector<LedgerLine> ledger; ///< guards first, then worst first; what the floor gives back last
    std::vector<StepFinding> steps;
    std::vector<GuardFinding> guards;
    std::vector<ExtraFinding> extras;
    std::vector<Phrase> remarks; ///< whole sentences
    bool isSimulated = false;
};

[[nodiscard]] Findings findingsOf(const DebriefInput& input);

/// Milli-points as points, exactly: 22500 is "22.5".
[[nodiscard]] std::string pointsText(std::int64_t milliPoints);

/// "2024-06-07 18:40", by the clock of where this program runs.
[[nodiscard]] std::string wallTime(std::int64_t unixMillis);

} // namespace flowhand
