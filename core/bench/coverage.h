#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/error.h"
#include "bench/evidence.h"
#include "bench/obstacles.h"
#include "procedure/flow.h"

namespace flowhand {

/// How far the proof of a control has come; each includes those before.
enum class Proof : std::uint8_t {
    Unwired,
    Wired,
    Calibrated, ///< a calibration holds for it as it is wired now
    SeenWorking ///< the check walk confirmed it as it is wired and calibrated now
};

/// "unwired", "wired", "calibrated", "seen working".
[[nodiscard]] const char* proofText(Proof proof);

/// "quadrant: X, button 3, pedals: X".
[[nodiscard]] std::string inputsText(const Control& control, const std::vector<DeviceWish>& devices);

/// One control of the cockpit.
struct CoveredControl {
    SignalId signal = kNoSignal;
    std::string wiredTo; ///< the rig's name of the physical control
    std::string inputs;  ///< "quadrant: X"
    Proof proof = Proof::Unwired;
    std::string date;            ///< of the evidence for `proof`, UTC; empty where it needs none
    bool isStale = false;        ///< there is evidence, but wiring or calibration has changed since
    std::string staleDate;       ///< of the newest such
    std::string failedDate;      ///< the last walk that holds for it now did not confirm it
    bool isCalibratable = false; ///< it has counts; contacts have nothing to calibrate
    double sigma = 0.0;          ///< noise, in the signal's unit; 0 where it has none
    std::string noiseDate;       ///< of the measurement that it is from, UTC; empty: the rig file says so
    std::size_t stepCount = 0;   ///< steps that need it
};

/// One step of one flow.
struct CoveredStep {
    std::size_t flow = 0; ///< index into the flows
    std::size_t step = 0;
    std::vector<SignalId> needed;     ///< controls; none: the partner's, or words alone
    std::vector<Obstacle> obstacles;  ///< why it cannot be confirmed with this rig
    Proof proof = Proof::SeenWorking; ///< the least of its controls
    bool isStale = false;

    [[nodiscard]] bool isConfirmable() const { return obstacles.empty(); }
};

struct Coverage {
    std::vector<CoveredControl> controls; ///< by SignalId
    std::vector<CoveredStep> steps;       ///< in the order of the flows
    std::vector<SignalId> orphans;        ///< wired, and no step needs them

    [[nodiscard]] bool isComplete() const;
    /// Besides, each needed control was seen working.
    [[nodiscard]] bool isProven() const;
};

/// What is held against what. Borrows all of it.
struct CoverageInput {
    const Aircraft& aircraft;
    const std::vector<const Flow*>& flows;
    const std::vector<EvidenceRecord>& evidence;
    std::vector<std::string> seats; ///< whose steps the rig must confirm; the partner does the others
};

/// The controls that a step needs of the rig: those it is done by and those its conditions read, but not those that
/// only the partner moves in this flow. Steps of other seats, and words without a reply button, need none.
[[nodiscard]] std::vector<SignalId> controlsNeeded(const Flow& flow, std::size_t step, const CoverageInput& input);

/// Steps against controls. `rig` is moved in thought and fit for nothing else afterwards.
[[nodiscard]] Result<Coverage> coverageOf(RigFile& rig, const CoverageInput& input);

} // namespace flowhand
