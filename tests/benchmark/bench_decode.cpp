// What decoding a report of a device with 6 axes of 16 bits, 32 buttons and a hat costs: the same report again, one
// axis that moves, and everything that moves.
#include <chrono>
#include <cstdio>
#include <vector>

#include "device/recording.h"
#include "device/report.h"

using namespace flowhand;

namespace {

constexpr int kReports = 1'000'000;
constexpr const char* kDescriptor =
    "05 01 09 04 A1 01 15 00 27 FF FF 00 00 75 10 95 06 09 30 09 31 09 32 09 33 09 34 09 35 "
    "81 02 05 09 19 01 29 20 25 01 75 01 95 20 81 02 05 01 09 39 25 07 75 04 95 01 81 42 "
    "81 03 C0";

enum class Move { Nothing, OneAxis, Everything };

void moveOn(std::vector<std::uint8_t>& report, Move move, int i) {
    if (move == Move::Nothing)
        return;
    const std::size_t moved = move == Move::OneAxis ? 2 : report.size() - 1;
    for (std::size_t at = 0; at < moved; ++at)
        report[at] = static_cast<std::uint8_t>(i % 2 ? 0xFF : i);
}

void measure(const Descriptor& descriptor, const char* title, Move move) {
    ReportDecoder decoder(descriptor);
    std::vector<std::uint8_t> report(descriptor.reports.front().bytes());
    std::vector<InputChange> changes;
    std::size_t changed = 0;
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < kReports; ++i) {
        moveOn(report, move, i);
        changes.clear();
        decoder.decode(report, changes);
        changed += changes.size();
    }
    const std::chrono::duration<double, std::nano> took = std::chrono::steady_clock::now() - start;
    std::printf("decode, %-18s %7.1f ns a report, %.2f changes a report\n", title, took.count() / kReports,
                static_cast<double>(changed) / kReports);
}

} // namespace

int main() {
    const auto descriptor = parseDescriptor(*parseHex(kDescriptor));
    if (!descriptor) {
        std::fprintf(stderr, "%s\n", descriptor.error().message.c_str());
        return 1;
    }
    measure(*descriptor, "the same again", Move::Nothing);
    measure(*descriptor, "one axis moves", Move::OneAxis);
    measure(*descriptor, "everything moves", Move::Everything);
    return 0;
}
