#pragma once

#include <string>
#include <vector>

#include "bench/evidence.h"
#include "bench/rigfeed.h"
#include "bench/walk.h"

namespace flowhand {

/// Leads a check walk over a rig whose devices are read, and keeps the evidence of each control as it is over. All that
/// it is given must outlive it. One thread.
class Walker {
public:
    struct Parts {
        const Aircraft& aircraft;
        const RigFile& file;
        const std::vector<Reach>& reaches;
        const std::vector<ControlFingerprint>& fingerprints;
        RigFeed& feed;
        std::string evidenceFile; ///< empty: nothing is kept
        bool isRecorded = false;  ///< from recordings, not seen live
    };

    Walker(Parts parts, Walk::Setup setup, Time begin);

    [[nodiscard]] const Walk& walk() const { return m_walk; }
    /// True when a control is over. Errors: those of appendEvidence().
    [[nodiscard]] Result<bool> advance(const std::vector<Sample>& samples, Time now);
    /// Gives up the control that is asked for.
    [[nodiscard]] Status skip(Time now);

private:
    [[nodiscard]] Status keep(const WalkedControl& control);

    Parts m_parts;
    WalkTolerances m_tolerances;
    Walk m_walk;
};

} // namespace flowhand
