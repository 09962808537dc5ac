#pragma once

#include <QTemporaryDir>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

#include "store/store.h"

namespace flowhand {

/// A small cockpit: a lever, a gated lever and a switch; then the motion signals.
inline const std::string kTestAircraft = R"(format = 1
title = "Bench"
engines = 1
seats = ["pilot"]

[[control]]
name = "thrust_lever_1"
label = "Thrust lever"
panel = "THRUST"
area = "pedestal"
kind = "lever"
unit = "%"
range = [0, 100]
scale = 100
continuous = true

[[control]]
name = "flap_lever"
label = "Flap lever"
panel = "FLAP"
area = "pedestal"
kind = "gated lever"
positions = ["up", "4", "12"]

[[control]]
name = "taxi_light"
label = "Taxi light"
panel = "TAXI"
area = "overhead"
kind = "switch"
)";

inline const std::string kTestFlow = R"(format = 1
title = "Taxi light and flap"
phases = ["taxi_out"]
seat = "pilot"

[[step]]
id = "taxi_light"
title = "Taxi light on"
done = "taxi_light"

[[step]]
id = "flap_12"
title = "Flap lever to 12"
done = "flap_lever == 12"
weight = 3
)";

inline RunHeader testHeader() {
    RunHeader header;
    header.startedUnixMillis = 1'700'000'000'123;
    header.pilot = "Kim";
    header.programVersion = "0.1.0";
    header.aircraftFolder = "bench";
    header.aircraftSource = kTestAircraft;
    header.flowId = "light_and_flap";
    header.flowTitle = "Taxi light and flap";
    header.flowFile = "procedures/bench/light_and_flap.toml";
    header.flowSource = kTestFlow;
    header.rigTitle = "One quadrant";
    header.rigSource = "title = \"One quadrant\"\n";
    header.motionSource = "practice aircraft";
    header.controlNames = {"", "axis 1", "button 3"};
    header.setup.ownSeat = "pilot";
    header.setup.isSolo = true;
    header.setup.seed = 0xFEDCBA9876543210U;
    header.setup.partnerErrorRate = 0.1;
    header.setup.hasPartnerHands = true;
    header.setup.latency = std::chrono::milliseconds(35);
    header.setup.controls.resize(3);
    ControlFacts& axis = header.setup.controls[0];
    axis.isWired = true;
    axis.sigma = 0.025;
    axis.range = 100.0;
    axis.controlName = "axis 1";
    ControlFacts& button = header.setup.controls[2];
    button.isWired = true;
    button.isSimulated = true;
    button.isMomentary = true;
    button.controlName = "button 3";
    return header;
}

/// A file of runs in a folder of its own, gone at the end.
class TemporaryStore {
public:
    [[nodiscard]] std::string file() const { return m_folder.filePath("runs.sqlite").toStdString(); }
    [[nodiscard]] std::string folder() const { return m_folder.path().toStdString(); }

private:
    QTemporaryDir m_folder;
};

inline Sample handSample(std::int64_t micros, std::uint32_t signal, double value, Origin origin = Origin::Device) {
    return {std::chrono::microseconds(micros),
            SignalId{signal},
            Value::number(value),
            Actor::Hand,
            origin,
            ControlId{static_cast<std::uint16_t>(signal + 1)}};
}

/// A lever moved at 50 Hz and its noise, for `seconds`, beside a motion signal.
inline std::vector<Sample> testSamples(int runSeconds) {
    std::vector<Sample> samples;
    for (int i = 0; i < runSeconds * 50; ++i) {
        samples.push_back(handSample(i * 20'000 + i % 7, 0, (i * 37 % 1000) / 10.0));
        samples.push_back({samples.back().time, SignalId{3}, Value::number(std::sqrt(double(i))), Actor::Machine,
                           Origin::Practice, kNoControl});
    }
    return samples;
}

inline Score testScore() {
    Score score;
    score.isScored = true;
    score.milliPoints = 77'500;
    score.upperMilliPoints = 80'000;
    score.whyNotPassed = phrase("a critical step was not surely done: {1}").with("Flap lever to 12");
    score.weight = 10;
    score.pace = std::chrono::milliseconds(12'345);
    score.ledger = {{22'500, 1, -1, LossKind::NotDone, phrase("{1}: not done").with("Flap lever to 12")}};
    score.outOfOrder = {false, true};
    score.late = {std::chrono::milliseconds(1500), Duration{}};
    return score;
}

inline std::vector<StepResult> testResults() {
    StepResult done;
    done.state = StepState::Done;
    done.due = std::chrono::seconds(1);
    done.done = std::chrono::microseconds(3'000'001);
    done.suspended = std::chrono::milliseconds(250);
    done.mu = 0.4;
    StepResult omitted;
    omitted.state = StepState::Omitted;
    omitted.isOwn = false;
    omitted.isUncertain = true;
    omitted.isTooEarly = true;
    return {done, omitted};
}

} // namespace flowhand
