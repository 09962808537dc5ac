#include "bareloop.h"

#include <atomic>
#include <thread>

#include "rateflight.h"
#include "stream.h"

using namespace flowhand;

namespace {

struct Loop {
    std::unique_ptr<HidDevice> device;
    std::atomic<std::uint64_t> reports = 0;
    std::vector<std::int64_t> presses;

    void run(bool (*isOver)()) {
        std::vector<std::uint8_t> buffer(HidSystem::kMostReportBytes);
        std::uint8_t downBefore = 0;
        while (device != nullptr && !isOver()) {
            const auto length = device->read(buffer, std::chrono::milliseconds(100));
            if (!length || *length == 0)
                continue;
            ++reports;
            const std::uint8_t down = StreamReport::pressedIn(buffer.data());
            if ((down & ~downBefore) != 0)
                presses.push_back(steadyNanos());
            downBefore = down;
        }
    }
};

} // namespace

Measured runBareLoop(HidSystem& system, std::size_t devices, bool (*isOver)()) {
    std::vector<Loop> loops(devices);
    for (const DeviceInfo& info : system.list()) {
        const std::size_t at = info.product - RateFlight::kFirstProduct;
        if (info.vendor != RateFlight::kVendor || at >= devices)
            continue;
        if (auto device = system.open(info))
            loops[at].device = std::move(*device);
    }
    std::vector<std::thread> threads;
    for (Loop& loop : loops)
        threads.emplace_back([&loop, isOver] {
            loop.run(isOver);
        });
    while (loops.front().reports == 0 && !isOver())
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    const std::int64_t cpuBefore = cpuMicros();
    for (std::thread& thread : threads)
        thread.join();
    Measured measured;
    measured.cpuMicros = cpuMicros() - cpuBefore;
    for (const Loop& loop : loops)
        measured.reports.push_back(loop.reports);
    measured.seenNanos = loops.front().presses;
    return measured;
}
