#pragma once

#include <vector>

#include "session/record.h"

namespace flowhand {

/// Keeps what a run hands over, in memory.
class KeepingRecorder final : public Recorder {
public:
    Status begin(const RunHeader& begun) override {
        header = begun;
        return {};
    }
    Status samples(std::span<const Sample> batch) override {
        allSamples.insert(allSamples.end(), batch.begin(), batch.end());
        return {};
    }
    Status command(const RunCommand& command) override {
        commands.push_back(command);
        return {};
    }
    Status events(std::span<const Event> batch) override {
        allEvents.insert(allEvents.end(), batch.begin(), batch.end());
        return {};
    }
    Status flush(Time /*now*/) override { return {}; }
    Status finish(Time time, const Score& /*score*/, const std::vector<StepResult>& /*results*/) override {
        end = time;
        return {};
    }
    [[nodiscard]] std::int64_t runId() const override { return 1; }

    RunHeader header;
    std::vector<Sample> allSamples;
    std::vector<RunCommand> commands;
    std::vector<Event> allEvents;
    Time end{};
};

} // namespace flowhand
