#include "command/benchsource.h"

#include <thread>

#include "command/interrupt.h"
#include "device/hidsystem.h"
#include "device/hub.h"

namespace flowhand {

namespace {

constexpr Duration kLookPeriod = std::chrono::seconds(1); // as often as a person reads a new line

Result<Measurement> liveMeasurement(const BenchOptions& options, const std::vector<DeviceWish>& devices,
                                    const WantedInputs& wanted, const BenchLook& look) {
    const std::unique_ptr<HidSystem> system = systemDevices();
    const Interrupt interrupt;
    const SteadyClock clock;
    const Time start = clock.now();
    Result<LiveMeasurement> live = LiveMeasurement::begin(*system, clock, devices, wanted);
    if (!live)
        return tl::unexpected(live.error());
    for (Time looked = start;;) {
        std::this_thread::sleep_for(DeviceHub::kReadWait);
        const bool areThere = live->poll();
        const Time now = clock.now();
        const bool isOver = !areThere || interrupt.isAsked() || seconds(now - start) >= options.seconds;
        if (!isOver && now - looked < kLookPeriod)
            continue;
        looked = now;
        Result<Measurement> sofar = live->sofar();
        if (isOver || (sofar && look(*sofar)))
            return sofar;
        if (!sofar)
            look({});
    }
}

} // namespace

void addBenchOptions(CLI::App& command, BenchOptions& options) {
    command.add_option("CONTROL", options.controls, "Controls by their name in the rig file, or by their signal");
    command.add_option("--rig", options.rig, "Rig file")->required()->type_name("FILE");
    command
        .add_option("--aircraft", options.aircraft, "Whose controls the rig wires; left out, the shipped one that fits")
        ->type_name("FILE");
    command
        .add_option("--recording", options.recordings,
                    "Measure what 'devices --record' wrote, instead of the device; one a device")
        ->type_name("FILE")
        ->allow_extra_args(false);
    command.add_option("--for", options.seconds, "Longest time of one measurement")
        ->type_name("SECONDS")
        ->check(CLI::Range(1.0, 3600.0));
    command.add_flag("--json", options.asJson, "One line of JSON a control; what to do now goes to standard error");
}

Result<Measurement> measure(const BenchOptions& options, const std::vector<DeviceWish>& devices,
                            const WantedInputs& wanted, const BenchLook& look) {
    return options.recordings.empty() ? liveMeasurement(options, devices, wanted, look)
                                      : recordedMeasurement(options.recordings, devices, wanted);
}

} // namespace flowhand
