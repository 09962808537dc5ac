#include "command/benchsource.h"

#include <thread>

#include "bench/reportcapture.h"
#include "command/interrupt.h"
#include "device/hidsystem.h"
#include "device/hub.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

constexpr Duration kLookPeriod = std::chrono::seconds(1); // as often as a person reads a new line

Result<DeviceSeries> recordedSeries(const BenchOptions& options, const DeviceWish& wish,
                                    const std::vector<std::string>& inputs) {
    for (const std::string& file : options.recordings) {
        const Result<Recording> recording = loadRecording(file);
        if (!recording)
            return tl::unexpected(recording.error());
        const bool isNamed = recording->device.size() >= 9;
        if (!isNamed || recording->device.substr(0, 9) == idText(wish.vendor, wish.product))
            return seriesOf(*recording, file, inputs);
    }
    return failure("no-recording",
                   "none of the recordings is of " + wishText(wish) + "; make one with 'flowhand devices " +
                       idText(wish.vendor, wish.product) + " --record FILE'",
                   wish.place);
}

Result<DeviceSeries> liveSeries(const BenchOptions& options, const DeviceWish& wish,
                                const std::vector<std::string>& inputs, const BenchLook& look) {
    const std::unique_ptr<HidSystem> system = systemDevices();
    const WishMatch match = matchWishes({wish}, system->list(), {std::nullopt}).front();
    if (!match.unit)
        return tl::unexpected(match.why);
    Recording recording;
    Result<std::vector<std::uint8_t>> descriptor = system->descriptor(*match.unit);
    if (!descriptor)
        return tl::unexpected(descriptor.error());
    recording.descriptor = std::move(*descriptor);
    Result<std::unique_ptr<HidDevice>> device = system->open(*match.unit);
    if (!device)
        return tl::unexpected(device.error());
    const Interrupt interrupt;
    const SteadyClock clock;
    const Time start = clock.now();
    ReportCapture capture(std::move(*device), clock);
    for (Time looked = start;;) {
        std::this_thread::sleep_for(DeviceHub::kReadWait);
        const bool isThere = capture.take(recording.reports);
        const Time now = clock.now();
        const bool isOver = !isThere || interrupt.isAsked() || seconds(now - start) >= options.seconds;
        if (!isOver && now - looked < kLookPeriod)
            continue;
        looked = now;
        Result<DeviceSeries> series = seriesOf(recording, wish.name, inputs);
        if (isOver || (series && look(*series)))
            return series;
        if (!series)
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
    command.add_option("--for", options.seconds, "Longest time to measure one device")
        ->type_name("SECONDS")
        ->check(CLI::Range(1.0, 3600.0));
    command.add_flag("--json", options.asJson, "One line of JSON a control; what to do now goes to standard error");
}

Result<DeviceSeries> measuredSeries(const BenchOptions& options, const DeviceWish& wish,
                                    const std::vector<std::string>& inputs, const BenchLook& look) {
    return options.recordings.empty() ? liveSeries(options, wish, inputs, look) : recordedSeries(options, wish, inputs);
}

} // namespace flowhand
