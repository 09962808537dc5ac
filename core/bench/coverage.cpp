#include "bench/coverage.h"

#include <algorithm>
#include <utility>

#include "base/names.h"
#include "bench/measurednoise.h"
#include "procedure/replybutton.h"

namespace flowhand {

namespace {

bool isOneOf(const std::string& text, const std::vector<std::string>& all) {
    return std::find(all.begin(), all.end(), text) != all.end();
}

void addOnce(std::vector<SignalId>& ids, SignalId id) {
    if (std::find(ids.begin(), ids.end(), id) == ids.end())
        ids.push_back(id);
}

/// Whose hand does it.
const std::string& moverOf(const Step& step) {
    return step.movedBy.empty() ? step.seat : step.movedBy;
}

bool isOwn(const Step& step, const CoverageInput& input) {
    if (step.kind == StepKind::Say)
        return isOneOf(step.cue ? step.cue->by : step.seat, input.seats);
    return isOneOf(moverOf(step), input.seats);
}

/// The partner moves it in this flow, and none of one's own steps does.
bool isPartners(SignalId id, const Flow& flow, const CoverageInput& input) {
    bool isMoved = false;
    for (const Step& step : flow.steps) {
        if (std::find(step.controls.begin(), step.controls.end(), id) == step.controls.end())
            continue;
        if (isOwn(step, input))
            return false;
        isMoved = true;
    }
    return isMoved;
}

void prove(CoveredControl& control, const CoverageInput& input, const ControlFingerprint& fingerprint) {
    const FoundEvidence calibration = findEvidence(input.evidence, kCalibrationEvidence, fingerprint);
    const FoundEvidence walk = findEvidence(input.evidence, kWalkEvidence, fingerprint);
    for (const FoundEvidence* found : {&calibration, &walk}) {
        if (found->state != EvidenceState::Stale)
            continue;
        control.isStale = true;
        control.staleDate = std::max(control.staleDate, dateText(found->record->unixSeconds));
    }
    if (calibration.state == EvidenceState::Current && calibration.record->isGood) {
        control.proof = Proof::Calibrated;
        control.date = dateText(calibration.record->unixSeconds);
    }
    if (walk.state != EvidenceState::Current)
        return;
    if (!walk.record->isGood) {
        control.failedDate = dateText(walk.record->unixSeconds);
        return;
    }
    control.proof = Proof::SeenWorking;
    control.date = dateText(walk.record->unixSeconds);
    control.isStale = false; // what is proven anew is not stale for an older record
    control.staleDate.clear();
}

/// Obstacles once each, in words: a condition and a band may say the same.
void add(std::vector<Obstacle>& all, std::vector<Obstacle> more) {
    for (Obstacle& obstacle : more)
        if (std::none_of(all.begin(), all.end(), [&](const Obstacle& other) {
                return other.code == obstacle.code && other.signal == obstacle.signal;
            }))
            all.push_back(std::move(obstacle));
}

std::vector<SignalId> readOf(const Condition& condition, const std::vector<SignalId>& needed) {
    std::vector<SignalId> read;
    for (const SignalId id : condition.signals())
        if (std::find(needed.begin(), needed.end(), id) != needed.end())
            read.push_back(id);
    return read;
}

std::vector<Obstacle> obstaclesOf(const Step& step, const std::vector<SignalId>& needed,
                                  const std::vector<Reach>& reaches, const SignalTable& signals) {
    std::vector<Obstacle> all;
    for (const SignalId id : needed)
        if (!reaches[indexOf(id)].isWired)
            all.push_back({"not-wired", id, phrase("{1} is not wired").with(signals[id].label)});
    for (const std::optional<PlacedCondition>* placed : {&step.done, &step.when})
        if (*placed)
            add(all,
                flowhand::obstaclesOf((*placed)->condition, readOf((*placed)->condition, needed), reaches, signals));
    if (step.band && std::find(needed.begin(), needed.end(), step.band->signal) != needed.end())
        add(all, flowhand::obstaclesOf(*step.band, reaches, signals));
    return all;
}

} // namespace

std::string inputsText(const Control& control, const std::vector<DeviceWish>& devices) {
    static constexpr const char* kDirections[] = {" up", " right", " down", " left"};
    std::vector<std::string> names;
    std::optional<DeviceIndex> device;
    for (const InputRef& input : control.inputs()) {
        names.push_back((device == input.device ? "" : devices[input.device].name + ": ") + input.name +
                        (input.hatDirection ? kDirections[*input.hatDirection / 2] : ""));
        device = input.device;
    }
    return joined(names, ", ");
}

const char* proofText(Proof proof) {
    static constexpr const char* kTexts[] = {"unwired", "wired", "calibrated", "seen working"};
    return kTexts[static_cast<std::size_t>(proof)];
}

bool Coverage::isComplete() const {
    return std::all_of(steps.begin(), steps.end(), [](const CoveredStep& step) {
        return step.isConfirmable();
    });
}

bool Coverage::isProven() const {
    return isComplete() && std::all_of(steps.begin(), steps.end(), [](const CoveredStep& step) {
               return step.proof == Proof::SeenWorking;
           });
}

std::vector<SignalId> controlsNeeded(const Flow& flow, std::size_t at, const CoverageInput& input) {
    const Step& step = flow.steps[at];
    if (!isOwn(step, input))
        return {};
    std::vector<SignalId> needed = step.controls;
    if (step.kind == StepKind::Say && !step.done) {
        if (const std::optional<SignalId> button = replyButton(input.aircraft))
            addOnce(needed, *button);
    }
    for (const std::optional<PlacedCondition>* placed : {&step.done, &step.when})
        if (*placed)
            for (const SignalId id : (*placed)->condition.signals())
                if (input.aircraft.isControl(id) && !isPartners(id, flow, input))
                    addOnce(needed, id);
    return needed;
}

Result<Coverage> coverageOf(RigFile& rig, const CoverageInput& input) {
    const SignalTable& signals = input.aircraft.signals;
    const std::size_t count = input.aircraft.controls.size();
    const Result<std::vector<ControlFingerprint>> fingerprints = fingerprintsOf(rig, signals);
    if (!fingerprints)
        return tl::unexpected<Error>(fingerprints.error());
    const Result<std::vector<BenchControl>> controls = benchControlsOf(rig, signals);
    if (!controls)
        return tl::unexpected<Error>(controls.error());
    std::vector<Reach> reaches = reachesOf(rig, signals, count);
    takeMeasuredNoise(reaches, *controls, input.evidence);
    Coverage coverage;
    for (std::size_t i = 0; i < count; ++i) {
        CoveredControl control;
        control.signal = SignalId{static_cast<std::uint32_t>(i)};
        if (reaches[i].isWired) {
            const Control& physical = *rig.controls[reaches[i].control];
            control.wiredTo = physical.name();
            control.inputs = inputsText(physical, rig.devices);
            control.isCalibratable = reaches[i].hasAxis;
            control.sigma = reaches[i].sigma;
            control.noiseDate = reaches[i].measured;
            control.proof = Proof::Wired;
            prove(control, input, (*fingerprints)[reaches[i].control]);
        }
        coverage.controls.push_back(std::move(control));
    }
    for (std::size_t flow = 0; flow < input.flows.size(); ++flow) {
        for (std::size_t i = 0; i < input.flows[flow]->steps.size(); ++i) {
            CoveredStep step{flow, i, controlsNeeded(*input.flows[flow], i, input), {}, Proof::SeenWorking, false};
            for (const SignalId id : step.needed) {
                CoveredControl& control = coverage.controls[indexOf(id)];
                ++control.stepCount;
                step.proof = std::min(step.proof, control.proof);
                step.isStale = step.isStale || control.isStale;
            }
            step.obstacles = obstaclesOf(input.flows[flow]->steps[i], step.needed, reaches, signals);
            coverage.steps.push_back(std::move(step));
        }
    }
    for (const CoveredControl& control : coverage.controls)
        if (control.proof != Proof::Unwired && control.stepCount == 0)
            coverage.orphans.push_back(control.signal);
    return coverage;
}

} // namespace flowhand
