// Reports at the rates at which hardware sends them: is one lost, what do they cost, how soon is a step seen? The
// program, with and without its window, beside a bare reading loop, both over the same reports at the same time.
// README.md tells what is measured and how to read it.
//
//   bench_rates [ROW]

#include <atomic>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <thread>

#include "device/recording.h"
#include "rates/bareloop.h"
#include "rates/rateflight.h"
#include "rates/rateprocess.h"
#include "rates/ratesrow.h"
#include "rates/sockethid.h"
#include "rates/stream.h"
#include "rates/windowflight.h"

using namespace flowhand;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t kSteps = 120; // more than any row presses buttons
constexpr auto kStandPeriod = std::chrono::seconds(2);
constexpr auto kStandTime = std::chrono::milliseconds(100);

const RatesRow kRows[] = {
    {"8 devices, at rest", RateProgram::WithoutWindow, 8, {1000, 12, StreamMotion::Rest}},
    {"8 devices, all axes flicker", RateProgram::WithoutWindow, 8, {1000, 12, StreamMotion::Flicker}},
    {"8 devices, a lever of each moves", RateProgram::WithoutWindow, 8, {1000, 12, StreamMotion::Move}},
    {"1 device, all axes flicker", RateProgram::WithoutWindow, 1, {8000, 12, StreamMotion::Flicker}},
    {"8 devices, a lever of each moves, window", RateProgram::WithWindow, 8, {1000, 12, StreamMotion::Move}},
    {"1 device, all axes flicker, idle window",
     RateProgram::WithIdleWindow,
     1,
     {8000, 10, StreamMotion::Flicker, false}},
    {"1 device, its lever moves, window", RateProgram::WithWindow, 1, {8000, 10, StreamMotion::Move}},
    {"1 device, its lever moves, window stopped for 0.1 s each 2 s",
     RateProgram::Stopped,
     1,
     {8000, 10, StreamMotion::Move}},
};

/// The nodes from which one process reads.
std::vector<SocketNode> nodes(std::size_t devices) {
    std::vector<SocketNode> all;
    for (std::size_t i = 0; i < devices; ++i)
        all.emplace_back(StreamReport::kBytes);
    return all;
}

SocketHid systemOf(const std::vector<SocketNode>& own, const std::vector<SocketNode>& others) {
    std::vector<int> files;
    for (const SocketNode& node : own) {
        files.push_back(node.read);
        close(node.send);
    }
    for (const SocketNode& node : others)
        close(node.send);
    return {files, RateFlight::kVendor, RateFlight::kFirstProduct, *parseHex(StreamReport::kDescriptor)};
}

Measured runProgram(const RatesRow& row, SocketHid& system, const std::string& folder, bool (*isOver)()) {
    const RateFlight flight(folder + "/flight", row.devices, kSteps);
    if (row.program == RateProgram::WithoutWindow)
        return flight.fly(system, isOver);
    return flyInWindow(flight, system, row.program == RateProgram::WithIdleWindow, isOver);
}

/// Lets the process stand now and then while it lives.
class Stops {
public:
    explicit Stops(const RateProcess& process)
        : m_thread([this, &process] {
              for (auto next = std::chrono::steady_clock::now() + kStandPeriod; !m_isOver; next += kStandPeriod) {
                  std::this_thread::sleep_until(next);
                  process.stand();
                  std::this_thread::sleep_for(kStandTime);
                  process.goOn();
              }
          }) {}
    ~Stops() {
        m_isOver = true;
        m_thread.join();
    }
    Stops(const Stops&) = delete;
    Stops& operator=(const Stops&) = delete;

private:
    std::atomic<bool> m_isOver = false;
    std::thread m_thread;
};

void measure(const RatesRow& row, const std::string& folder) {
    const std::vector<SocketNode> bareNodes = nodes(row.devices);
    const std::vector<SocketNode> programNodes = nodes(row.devices);
    {
        const RateProcess bare(folder + "/bare", [&](bool (*isOver)()) {
            SocketHid system = systemOf(bareNodes, programNodes);
            return runBareLoop(system, row.devices, isOver);
        });
        const RateProcess program(folder + "/program", [&](bool (*isOver)()) {
            SocketHid system = systemOf(programNodes, bareNodes);
            return runProgram(row, system, folder, isOver);
        });
        for (const std::vector<SocketNode>* all : {&bareNodes, &programNodes})
            for (const SocketNode& node : *all)
                close(node.read);
        std::this_thread::sleep_for(std::chrono::milliseconds(1500)); // both are up
        std::optional<Stops> stops;
        if (row.program == RateProgram::Stopped)
            stops.emplace(program);
        std::ofstream log(folder + "/sent");
        // Who is woken second runs on a busier processor: each is it every other time.
        bool isBareFirst = false;
        stream(row.devices, row.wish, log, [&](std::size_t device, const std::vector<std::uint8_t>& report) {
            isBareFirst = !isBareFirst;
            (void)(isBareFirst ? bareNodes : programNodes)[device].sendReport(report);
            (void)(isBareFirst ? programNodes : bareNodes)[device].sendReport(report);
        });
        stops.reset();
        std::this_thread::sleep_for(std::chrono::milliseconds(300)); // what waits is read
    }
    for (const std::vector<SocketNode>* all : {&bareNodes, &programNodes})
        for (const SocketNode& node : *all)
            close(node.send);
    tellRow(row, folder);
}

std::string newFolder() {
    std::string name = (fs::temp_directory_path() / "flowhand-rates.XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr)
        std::abort();
    return name;
}

} // namespace

int main(int argc, char** argv) {
    const std::string folder = newFolder();
    const std::size_t only = argc == 2 ? std::stoul(argv[1]) : 0;
    for (std::size_t row = 0; row < std::size(kRows); ++row)
        if (only == 0 || only == row + 1)
            measure(kRows[row], folder);
    fs::remove_all(folder);
}
