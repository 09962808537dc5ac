// Reports at the rates at which hardware sends them: is one lost, what do they cost, how soon is a step seen? The
// program without its window beside a bare reading loop, both over the same reports at the same time. README.md tells
// what is measured and how to read it.
//
//   bench_rates [ROW]

#include <algorithm>
#include <atomic>
#include <csignal>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>
#include <sys/wait.h>

#include "device/recording.h"
#include "rates/bareloop.h"
#include "rates/rateflight.h"
#include "rates/sockethid.h"
#include "rates/stream.h"

using namespace flowhand;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t kSteps = 120; // more than any row presses buttons

std::atomic<bool> g_isOver = false;

bool isOver() {
    return g_isOver;
}

struct Row {
    const char* title;
    std::size_t devices;
    StreamWish wish;
};

const Row kRows[] = {
    {"8 devices, 1000 reports/s each, at rest", 8, {1000, 15, StreamMotion::Rest}},
    {"8 devices, 1000 reports/s each, all axes flicker", 8, {1000, 15, StreamMotion::Flicker}},
    {"8 devices, 1000 reports/s each, a lever of each moves", 8, {1000, 15, StreamMotion::Move}},
    {"1 device, 8000 reports/s, all axes flicker", 1, {8000, 15, StreamMotion::Flicker}},
};

/// What stream() tells of what it sent.
struct Sent {
    std::uint64_t each = 0;
    std::int64_t latestMicros = 0;
    std::vector<std::int64_t> presses;

    static Sent read(std::istream& in) {
        Sent sent;
        for (std::string line; std::getline(in, line);) {
            std::istringstream words(line);
            std::string word;
            words >> word;
            if (std::int64_t nanos = 0; word == "press" && words >> nanos)
                sent.presses.push_back(nanos);
            else if (word == "sent")
                words >> sent.each >> word >> sent.latestMicros;
        }
        return sent;
    }
};

/// Microseconds from each press to when it was known, sorted. What was never known is missing.
std::vector<double> latencies(const Sent& sent, const Measured& measured) {
    std::vector<double> micros;
    for (auto press = sent.presses.begin(); press != sent.presses.end(); ++press) {
        const auto seen = std::lower_bound(measured.seenNanos.begin(), measured.seenNanos.end(), *press);
        const bool isSeen = seen != measured.seenNanos.end() && (press + 1 == sent.presses.end() || *seen < press[1]);
        if (isSeen)
            micros.push_back(static_cast<double>(*seen - *press) / 1000.0);
    }
    std::sort(micros.begin(), micros.end());
    return micros;
}

double percentile(const std::vector<double>& sorted, double share) {
    return sorted.empty() ? 0.0 : sorted[static_cast<std::size_t>(share * static_cast<double>(sorted.size() - 1))];
}

void tellReader(const char* name, const Sent& sent, const Measured& measured) {
    std::int64_t lost = 0;
    for (const std::uint64_t count : measured.reports)
        lost += static_cast<std::int64_t>(sent.each) - static_cast<std::int64_t>(count);
    const std::vector<double> micros = latencies(sent, measured);
    std::printf(
        "  %-10s lost %lld of %llu (told: %llu); CPU %.3f s; press known after p50 %.0f, p99 %.0f, most %.0f us (%zu "
        "of %zu)\n",
        name, static_cast<long long>(lost), static_cast<unsigned long long>(sent.each * measured.reports.size()),
        static_cast<unsigned long long>(measured.suspected), static_cast<double>(measured.cpuMicros) / 1e6,
        percentile(micros, 0.5), percentile(micros, 0.99), percentile(micros, 1.0), micros.size(), sent.presses.size());
}

void tell(const Row& row, const std::string& folder) {
    std::ifstream sentFile(folder + "/sent");
    std::ifstream bareFile(folder + "/bare");
    std::ifstream flyFile(folder + "/fly");
    const Sent sent = Sent::read(sentFile);
    const Measured bare = Measured::read(bareFile);
    const Measured fly = Measured::read(flyFile);
    std::printf("%s (%d s; the latest report was sent %.1f ms late)\n", row.title, row.wish.seconds,
                static_cast<double>(sent.latestMicros) / 1000.0);
    tellReader("bare loop", sent, bare);
    tellReader("program", sent, fly);
    std::printf("  %-10s CPU %.2f x (target 1.5), p99 %+.2f ms (target +1)\n", "beside it",
                static_cast<double>(fly.cpuMicros) / static_cast<double>(std::max<std::int64_t>(1, bare.cpuMicros)),
                (percentile(latencies(sent, fly), 0.99) - percentile(latencies(sent, bare), 0.99)) / 1000.0);
    std::fflush(stdout);
}

void readDevices(HidSystem& system, const std::string& kind, const std::string& folder, std::size_t devices) {
    std::signal(SIGTERM, [](int) {
        g_isOver = true;
    });
    Measured measured;
    if (kind == "fly") {
        measured = RateFlight(folder + "/flight", devices, kSteps).fly(system, isOver);
    } else {
        std::vector<std::unique_ptr<HidDevice>> opened(devices);
        for (const DeviceInfo& info : system.list())
            if (info.vendor == RateFlight::kVendor && info.product >= RateFlight::kFirstProduct)
                if (auto device = system.open(info))
                    opened.at(info.product - RateFlight::kFirstProduct) = std::move(*device);
        measured = runBareLoop(std::move(opened), isOver);
    }
    std::ofstream file(folder + "/" + kind);
    measured.write(file);
}

/// The ends of one reader's sockets: what it reads and what is sent into.
struct Ends {
    std::vector<int> read;
    std::vector<int> send;

    explicit Ends(std::size_t devices) {
        for (std::size_t i = 0; i < devices; ++i) {
            int pair[2];
            if (socketpair(AF_UNIX, SOCK_SEQPACKET, 0, pair) != 0)
                std::abort();
            read.push_back(pair[0]);
            send.push_back(pair[1]);
        }
    }
};

pid_t startReader(const char* kind, const std::string& folder, const Ends& ends) {
    const pid_t child = fork();
    if (child != 0) {
        for (const int file : ends.read)
            close(file);
        return child;
    }
    for (const int file : ends.send)
        close(file);
    SocketHid system(ends.read, RateFlight::kVendor, RateFlight::kFirstProduct, *parseHex(StreamReport::kDescriptor));
    readDevices(system, kind, folder, ends.read.size());
    std::_Exit(0);
}

void measureOverSockets(const Row& row, const std::string& folder) {
    const Ends bareEnds(row.devices);
    const Ends flyEnds(row.devices);
    const pid_t readers[] = {startReader("bare", folder, bareEnds), startReader("fly", folder, flyEnds)};
    std::this_thread::sleep_for(std::chrono::seconds(1)); // both are up
    std::ofstream log(folder + "/sent");
    stream(row.devices, row.wish, log, [&](std::size_t device, const std::vector<std::uint8_t>& report) {
        for (const Ends* ends : {&bareEnds, &flyEnds}) // a full queue drops the newest, as hidraw does
            (void)!send(ends->send[device], report.data(), report.size(), MSG_DONTWAIT | MSG_NOSIGNAL);
    });
    std::this_thread::sleep_for(std::chrono::milliseconds(300));
    for (const pid_t reader : readers) {
        kill(reader, SIGTERM);
        waitpid(reader, nullptr, 0);
    }
    for (const Ends* ends : {&bareEnds, &flyEnds})
        for (const int file : ends->send)
            close(file);
    tell(row, folder);
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
            measureOverSockets(kRows[row], folder);
    fs::remove_all(folder);
}
