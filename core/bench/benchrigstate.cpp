#include "bench/benchrigstate.h"

#include <filesystem>
#include <utility>

#include "base/textfile.h"
#include "bench/benchcontrol.h"
#include "bench/filterchange.h"
#include "bench/measured.h"
#include "bench/stepdemand.h"
#include "bench/wiringedit.h"

namespace flowhand {

namespace {

/// Beyond the outermost gates, of the way between them: a lever may be pushed past its last gate.
constexpr double kGateRoom = 0.08;

} // namespace

Result<BenchRigState> loadRigState(const std::string& file, const Aircraft& aircraft) {
    BenchRigState state;
    state.file = file;
    std::error_code ignored;
    state.isThere = std::filesystem::exists(file, ignored);
    if (!state.isThere) {
        state.reaches = reachesOf(state.rig, aircraft.signals, aircraft.controls.size());
        return state;
    }
    const Result<std::string> source = readFile(file);
    if (!source)
        return tl::unexpected<Error>(source.error());
    Problems problems;
    std::optional<RigFile> rig = parseRigFile(*source, file, aircraft.signals, aircraft.controls.size(), problems);
    state.live = Rig::parse(*source, file, aircraft.signals, aircraft.controls.size(), problems);
    if (!rig || !state.live)
        return tl::unexpected<Error>(problems.firstError());
    state.rig = std::move(*rig);
    Result<std::vector<ControlFingerprint>> fingerprints = fingerprintsOf(state.rig, aircraft.signals);
    if (!fingerprints)
        return tl::unexpected<Error>(fingerprints.error());
    state.fingerprints = std::move(*fingerprints);
    state.reaches = reachesOf(state.rig, aircraft.signals, aircraft.controls.size());
    return state;
}

std::vector<MeasuredControl> measuredOf(const BenchRigState& rig) {
    std::vector<MeasuredControl> all;
    for (std::size_t i = 0; i < rig.fingerprints.size(); ++i)
        for (const BenchTask task : {BenchTask::Measure, BenchTask::Check}) {
            const FoundEvidence found = findEvidence(
                rig.evidence, task == BenchTask::Check ? kRepeatEvidence : kHealthEvidence, rig.fingerprints[i]);
            if (found.state == EvidenceState::None)
                continue;
            for (const SignalId signal : rig.rig.controls[i]->signals())
                all.push_back({signal, task, dateText(found.record->unixSeconds), found.state == EvidenceState::Stale,
                               findingsIn(found.record->result)});
        }
    return all;
}

namespace {

/// What its last measurement, if it holds, asks for.
void addAdvice(ControlFilters& filters, const BenchRigState& rig, std::size_t control) {
    const FoundEvidence found = findEvidence(rig.evidence, kHealthEvidence, rig.fingerprints[control]);
    if (found.state != EvidenceState::Current)
        return;
    const Result<FilterAdvice> advice = filterAdviceOf(*found.record);
    if (!advice)
        return; // of a program before there was any
    if (const auto open = openKeys(rig.rig.source, control, advice->keys))
        filters.change = *open;
    filters.changedDelay = advice->delay;
    for (const Finding& finding : advice->findings)
        if (finding.verdict == Soundness::Bad || (finding.verdict == Soundness::Caution && !filters.change.empty()))
            filters.findings.push_back(finding);
}

} // namespace

std::vector<ControlFilters> filtersOf(const BenchRigState& rig, const Aircraft& aircraft,
                                      const std::vector<const Flow*>& flows) {
    std::vector<ControlFilters> all;
    const Result<std::vector<BenchControl>> controls = benchControlsOf(rig.rig, aircraft.signals);
    if (!controls || controls->empty())
        return all;
    const std::vector<EvidenceRecord> none;
    const std::vector<StepDemand> demands =
        stepDemandsOf(*controls, rig.reaches, {aircraft, flows, none, aircraft.seats});
    for (const BenchControl& control : *controls) {
        ControlFilters filters;
        const FiltersInFile& inFile = control.filters;
        if (!inFile.isOfAxis && !inFile.isOfGates && !inFile.isOfContact)
            continue;
        filters.words = filterWords(inFile);
        filters.delay = inFile.delay();
        filters.allowed = demands[control.index].delay;
        filters.allowedOf = demands[control.index].delayOf;
        filters.canUndo = lastFilterChange(rig.evidence, rig.fingerprints[control.index]).has_value();
        addAdvice(filters, rig, control.index);
        for (const SignalId signal : control.control->signals()) {
            filters.signal = signal;
            all.push_back(filters);
        }
    }
    return all;
}

std::vector<SharedInput> sharedOf(const RigFile& rig) {
    std::vector<SharedInput> all;
    for (const auto& control : rig.controls)
        for (const SignalId signal : control->signals())
            for (const WiringConflict& conflict : conflictsOf(rig, signal))
                all.push_back({signal, conflict.input, conflict.control});
    return all;
}

std::vector<WatchedTravel> travelsOf(const RigFile& rig, const SignalTable& signals) {
    std::vector<WatchedTravel> all;
    const Result<std::vector<BenchControl>> controls = benchControlsOf(rig, signals);
    for (const BenchControl& control : controls ? *controls : std::vector<BenchControl>()) {
        if (control.axes.empty() || control.axes.front().inFile.gates.empty())
            continue;
        const BenchAxis& axis = control.axes.front();
        WatchedTravel watched;
        GateTravel& travel = watched.travel;
        travel.signal = control.control->signals().front();
        watched.input = control.control->inputs()[axis.input];
        const std::vector<AxisInFile::Gate>& gates = axis.inFile.gates;
        travel.lowest = static_cast<double>(gates.front().at);
        travel.highest = static_cast<double>(gates.back().at);
        const double room = kGateRoom * (travel.highest - travel.lowest);
        travel.lowest -= room;
        travel.highest += room;
        for (std::size_t i = 0; i < gates.size(); ++i)
            travel.gates.push_back(
                {axis.ask.gates[i], static_cast<double>(gates[i].at), static_cast<double>(gates[i].band)});
        all.push_back(std::move(watched));
    }
    return all;
}

} // namespace flowhand
