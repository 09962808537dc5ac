#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "report/debrief.h"
#include "store/store.h"

namespace flowhand {

/// A stored run made ready for its debrief: its own aircraft and flow, read from the record, not today's files.
class StoredDebrief {
public:
    /// With `isJudgedAgain`, or where the run has no result that can be read, it is judged by this program, and what
    /// changed is part of the debrief. Error `unreadable-run` when the aircraft or the flow cannot be read any more.
    [[nodiscard]] static Result<StoredDebrief> of(StoredRun run, bool isJudgedAgain, const std::string& programVersion);

    /// Borrows from this object.
    [[nodiscard]] DebriefInput input() const;

private:
    StoredDebrief(StoredRun run, std::unique_ptr<Aircraft> aircraft, std::unique_ptr<Flow> flow);

    [[nodiscard]] bool readEvents();
    void judge(bool isCompared, const std::string& programVersion);

    StoredRun m_run;
    std::unique_ptr<Aircraft> m_aircraft;
    std::unique_ptr<Flow> m_flow;
    std::vector<Event> m_events;
    std::optional<Rejudgement> m_rejudgement;
};

} // namespace flowhand
