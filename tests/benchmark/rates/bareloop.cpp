#include "bareloop.h"

#include <atomic>
#include <thread>

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
        while (!isOver()) {
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

Measured runBareLoop(std::vector<std::unique_ptr<HidDevice>> devices, bool (*isOver)()) {
    std::vector<Loop> loops(devices.size());
    std::vector<std::thread> threads;
    for (std::size_t i = 0; i < loops.size(); ++i) {
        loops[i].device = std::move(devices[i]);
        threads.emplace_back([&loop = loops[i], isOver] {
            loop.run(isOver);
        });
    }
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
