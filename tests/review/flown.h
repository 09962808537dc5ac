#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/textfile.h"
#include "procedure/library.h"
#include "review/reviewedrun.h"
#include "session/keepingrecorder.h"
#include "session/onscreenfacts.h"
#include "session/replay.h"
#include "session/runloop.h"

namespace flowhand {

/// A record in memory, and its judgement by judgeAgain().
struct FlownRecord {
    std::shared_ptr<const Aircraft> aircraft;
    std::shared_ptr<const Flow> flow;
    RunHeader header;
    std::vector<Sample> samples;
    SamplesBySignal bySignal; ///< the same
    std::vector<RunCommand> commands;
    Time length{};
    JudgedRun judged;

    void judge() {
        judged = judgeAgain(*aircraft, *flow, header.setup, samples, commands, length);
        bySignal = SamplesBySignal(samples);
    }
    [[nodiscard]] ReviewedRun reviewed() const {
        return {*flow, *aircraft, header, bySignal, judged.events, judged.results, judged.score, length};
    }
    [[nodiscard]] std::size_t step(const std::string& id) const {
        for (std::size_t i = 0; i < flow->steps.size(); ++i)
            if (flow->steps[i].id == id)
                return i;
        return flow->steps.size();
    }
};

inline RunHeader headerFor(const Aircraft& aircraft, const Flow& flow) {
    RunHeader header;
    header.programVersion = "0.1.0";
    header.aircraftFolder = aircraft.folder;
    header.aircraftSource = aircraft.toml.source();
    header.flowId = flow.id;
    header.flowTitle = flow.title;
    header.flowFile = flow.file;
    header.flowSource = flow.source;
    header.motionSource = "practice aircraft";
    header.controlNames = {""};
    header.setup.controls = onScreenFacts(aircraft);
    return header;
}

inline std::string demonstrationOf(const std::string& flowId) {
    return readFile(PROCEDURES "/twin_jet/hands/" + flowId + ".hands", 1 << 20).value_or("");
}

/// Flies a flow of the shipped jet by a script of hands to its end. Nothing when the flow or the script cannot be read.
inline std::optional<FlownRecord> flown(const std::string& flowId, const std::string& hands) {
    Problems problems;
    FlownRecord record;
    std::optional<AircraftFolder> folder = loadAircraftFolder(PROCEDURES "/twin_jet", problems);
    if (!folder)
        return std::nullopt;
    record.aircraft = std::move(folder->aircraft);
    for (Flow& flow : folder->flows)
        if (flow.id == flowId)
            record.flow = std::make_shared<const Flow>(std::move(flow));
    if (!record.flow)
        return std::nullopt;
    RunParts parts;
    parts.aircraft = record.aircraft.get();
    parts.flow = record.flow.get();
    parts.header = headerFor(*record.aircraft, *record.flow);
    parts.hands = Hands::parse(hands, "test.hands", *record.aircraft, *record.flow, problems);
    Result<PracticeAircraft> practice = PracticeAircraft::create(*record.aircraft, record.flow->startPlace);
    if (!practice || !parts.hands)
        return std::nullopt;
    parts.practice.emplace(std::move(*practice));
    KeepingRecorder recorder;
    parts.recorder = &recorder;
    RunLoop loop(std::move(parts));
    loop.command(CommandKind::Start);
    for (Time time{}; time < std::chrono::hours(1) && !loop.isEnded(); time += std::chrono::milliseconds(20))
        loop.advance(time);
    record.header = recorder.header;
    record.samples = std::move(recorder.allSamples);
    record.commands = std::move(recorder.commands);
    record.length = recorder.end;
    record.judge();
    return record;
}

/// The same record with the hands (and all else) standing still for `pause` from `at` on.
inline FlownRecord paused(FlownRecord record, Time at, Duration pause) {
    for (Sample& sample : record.samples)
        if (sample.time >= at)
            sample.time += pause;
    for (RunCommand& command : record.commands)
        if (command.time >= at)
            command.time += pause;
    record.length += pause;
    record.judge();
    return record;
}

} // namespace flowhand
