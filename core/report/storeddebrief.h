#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "report/debrief.h"
#include "review/timeline.h"
#include "store/store.h"

namespace flowhand {

/// How a stored run is judged again.
struct RejudgeWish {
    std::string programVersion;
    bool isWanted = false; ///< else only where the record has no result that can be read
    /// Files to judge by in place of those that were flown; none: those. Both or neither.
    std::shared_ptr<const Aircraft> aircraft = nullptr;
    std::shared_ptr<const Flow> flow = nullptr;
};

/// A stored run made ready for its debrief: its own aircraft and flow, read from the record, not today's files. Any
/// thread.
class StoredDebrief {
public:
    /// Where it was judged again, what changed is part of the debrief. Error `unreadable-run` when the aircraft or the
    /// flow cannot be read any more.
    [[nodiscard]] static Result<StoredDebrief> of(StoredRun run, const RejudgeWish& wish);
    /// Of a run in the store, fast: judged again only where the record has no result that can be read. Errors: those of
    /// the store, and `unreadable-run`.
    [[nodiscard]] static Result<StoredDebrief> open(Store& store, std::int64_t run, const std::string& programVersion);

    /// Without its samples: those are in timeline().run().
    [[nodiscard]] const StoredRun& run() const { return m_run; }
    /// Borrows from this object, which then stays where it is.
    [[nodiscard]] DebriefInput input() const;
    [[nodiscard]] const Timeline& timeline() const { return *m_timeline; }

private:
    /// One judgement of the run.
    struct Judged {
        std::shared_ptr<const Aircraft> aircraft;
        std::shared_ptr<const Flow> flow;
        std::shared_ptr<const RunHeader> header;
        std::shared_ptr<const SamplesBySignal> samples;
        std::vector<Event> events;
        std::vector<StepResult> results;
        Score score;
    };

    explicit StoredDebrief(StoredRun run) : m_run(std::move(run)) {}

    [[nodiscard]] Status readSources();
    [[nodiscard]] bool readRecord();
    void layOut();
    void judge(bool isCompared, const RejudgeWish& wish);
    [[nodiscard]] ReviewedRun reviewed(const Judged& judged) const;

    StoredRun m_run; ///< its samples are in m_judged
    // Both stay where they are when this object is moved: the timeline borrows.
    std::unique_ptr<Judged> m_judged = std::make_unique<Judged>();
    std::unique_ptr<Timeline> m_timeline;
    std::optional<Rejudgement> m_rejudgement;
};

} // namespace flowhand
