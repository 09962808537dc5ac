// The same as bench_rates without the window, but through a real Linux kernel: from a report that is sent into
// /dev/uhid of an emulated machine, stamped with its steady clock, by hidraw and hidapi to the step seen. README.md
// tells what is measured and how to read it.
//
//   bench_kernelrates            boots the machine (tests/kernel/guest) and measures there
//   bench_kernelrates ROW...     measures these rows, in the machine

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <memory>
#include <string>
#include <sys/wait.h>
#include <thread>

#include "device/hidsystem.h"
#include "device/recording.h"
#include "rates/bareloop.h"
#include "rates/rateflight.h"
#include "rates/rateprocess.h"
#include "rates/ratesrow.h"
#include "rates/stream.h"
#include "uhiddevice.h"

using namespace flowhand;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t kSteps = 120; // more than any row presses buttons
constexpr int kNoKernel = 77;       // exit status of the script 'guest'

const RatesRow kRows[] = {
    {"through a kernel, in real time: 8 devices, a lever of each moves",
     RateProgram::WithoutWindow,
     8,
     {25, 15, StreamMotion::Move}},
    {"through a kernel, by its own time: 8 devices, a lever of each moves",
     RateProgram::WithoutWindow,
     8,
     {1000, 3, StreamMotion::Move}},
    {"through a kernel, by its own time: 1 device, all axes flicker",
     RateProgram::WithoutWindow,
     1,
     {8000, 3, StreamMotion::Flicker}},
};

/// How the machine runs for which rows.
struct Boot {
    const char* options;
    const char* rows;
};
constexpr Boot kBoots[] = {{"--processors 1", "1"}, {"--own-time", "2 3"}};

std::vector<std::unique_ptr<UhidDevice>> plug(std::size_t devices) {
    std::vector<std::unique_ptr<UhidDevice>> all;
    for (std::size_t i = 0; i < devices; ++i) {
        DeviceShape shape;
        shape.name = "streaming device " + std::to_string(i);
        shape.vendor = RateFlight::kVendor;
        shape.product = static_cast<std::uint16_t>(RateFlight::kFirstProduct + i);
        shape.port = "stream/" + std::to_string(i);
        shape.descriptor = *parseHex(StreamReport::kDescriptor);
        all.push_back(std::make_unique<UhidDevice>(std::move(shape)));
    }
    return all;
}

void measure(const RatesRow& row, const std::string& folder) {
    const std::vector<std::unique_ptr<UhidDevice>> devices = plug(row.devices);
    {
        const RateProcess bare(folder + "/bare", [&](bool (*isOver)()) {
            return runBareLoop(*systemDevices(), row.devices, isOver);
        });
        const RateProcess program(folder + "/program", [&](bool (*isOver)()) {
            return RateFlight(folder + "/flight", row.devices, kSteps).fly(*systemDevices(), isOver);
        });
        for (const auto& device : devices)
            device->awaitOpen();
        std::this_thread::sleep_for(std::chrono::seconds(4)); // both are up
        std::ofstream log(folder + "/sent");
        stream(row.devices, row.wish, log, [&](std::size_t device, const std::vector<std::uint8_t>& report) {
            devices[device]->send(report);
        });
        std::this_thread::sleep_for(std::chrono::milliseconds(500)); // what waits is read
    }
    tellRow(row, folder);
}

int measureHere(int argc, char** argv) {
    std::string folder = (fs::temp_directory_path() / "flowhand-rates.XXXXXX").string();
    if (mkdtemp(folder.data()) == nullptr)
        giveUp("no folder can be made for what is measured");
    for (int i = 1; i < argc; ++i)
        measure(kRows[std::stoul(argv[i]) - 1], folder);
    fs::remove_all(folder);
    return EXIT_SUCCESS;
}

int measureInTheMachine(const std::string& self) {
    for (const Boot& boot : kBoots) {
        const std::string command =
            std::string("'" GUEST "' --seconds 300 ") + boot.options + " '" + self + "' " + boot.rows;
        const int status = std::system(command.c_str());
        if (WIFEXITED(status) && WEXITSTATUS(status) == kNoKernel) {
            std::cout << "skipped: there is no kernel to be had here" << std::endl;
            return EXIT_SUCCESS;
        }
        if (status != 0)
            return EXIT_FAILURE;
    }
    return EXIT_SUCCESS;
}

} // namespace

int main(int argc, char** argv) {
    return argc > 1 ? measureHere(argc, argv) : measureInTheMachine(fs::canonical("/proc/self/exe").string());
}
