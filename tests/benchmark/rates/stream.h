#pragma once

// A steady load for the benchmark of rates: reports of one shape at a steady rate, each with the time at which it was
// sent.

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <ostream>
#include <string>
#include <thread>
#include <vector>

/// What a streaming device sends: 6 axes of 16 bits, 32 buttons, and 12 bytes that belong to no control: the steady
/// clock's time in ns at the sending, and the report's number.
struct StreamReport {
    static constexpr std::size_t kAxes = 6;
    static constexpr std::size_t kBytes = 28;
    static constexpr int kButtons = 5;               ///< of the 32, that are ever pressed
    static constexpr int kPressed = kButtons + 1;    ///< and a lever, Y, that is thrown like a switch
    static constexpr std::uint16_t kBack = 0x4000;   ///< where Y stands
    static constexpr std::uint16_t kThrown = 0xC000; ///< and where it is thrown to
    /// The report descriptor, in hexadecimal.
    static constexpr const char* kDescriptor = "05010904A101"
                                               "150027FFFF0000751095060930093109320933093409358102"
                                               "0509190129202501750195208102"
                                               "7508950C8103C0";

    std::uint16_t axes[kAxes]{};
    std::uint32_t buttons = 0;
    std::int64_t sentNanos = 0; ///< 0: not told
    std::uint32_t number = 0;

    /// Little endian, as HID is and as the guest's processor is.
    [[nodiscard]] std::vector<std::uint8_t> bytes() const {
        std::vector<std::uint8_t> all(kBytes);
        std::memcpy(all.data(), axes, sizeof axes);
        std::memcpy(all.data() + 12, &buttons, sizeof buttons);
        std::memcpy(all.data() + 16, &sentNanos, sizeof sentNanos);
        std::memcpy(all.data() + 24, &number, sizeof number);
        return all;
    }
    /// The buttons that are down, a bit each, and behind them whether the lever is thrown.
    [[nodiscard]] static std::uint8_t pressedIn(const std::uint8_t* report) {
        return static_cast<std::uint8_t>(report[12] | (report[3] >> 7) << kButtons);
    }
};

/// What moves from report to report.
enum class StreamMotion {
    Rest,    ///< equal reports, but for the presses; they do not tell when they were sent
    Flicker, ///< every axis by a few counts, as cheap potentiometers do
    Move     ///< X goes to and fro as well: a hand on a lever of every device
};

struct StreamWish {
    int rate = 1000; ///< reports a second of each device
    int seconds = 1;
    StreamMotion motion = StreamMotion::Flicker;
    bool hasPresses = true;
};

/// What of the first device is pressed after so many ms, as pressedIn(): one after the other, every 160 ms, and each
/// stays down for 480 ms and up for 480 ms, which is what a control takes to come to rest (0.3 s) and a little more.
inline std::uint8_t pressedAt(std::int64_t millis) {
    std::uint8_t down = 0;
    for (int button = 0; button < StreamReport::kPressed; ++button)
        if (const std::int64_t since = millis - 160 * (button + 1); since >= 0 && since % 960 < 480)
            down |= static_cast<std::uint8_t>(1U << button);
    return down;
}

/// Sends from all devices in turn, evenly spread over time; the first one's buttons and lever as pressedAt() says.
/// Writes what was sent to `log`: a line `press NANOSECONDS` for each press, then how many reports each device sent and
/// by how much the latest one was late, in microseconds. `send(device, bytes)` sends one report.
template <class Send>
void stream(std::size_t devices, const StreamWish& wish, std::ostream& log, Send send) {
    using Clock = std::chrono::steady_clock;
    constexpr std::uint32_t kSweep = 4000; // reports to and fro
    constexpr int kFlicker = 16;           // of 65,536 counts: two of a converter with 13 good bits
    const std::int64_t each = std::int64_t(wish.rate) * wish.seconds;
    const std::chrono::nanoseconds step(1'000'000'000 / wish.rate / std::int64_t(devices));
    const auto start = Clock::now() + std::chrono::milliseconds(10);
    std::vector<std::int64_t> presses;
    std::uint8_t downBefore = 0;
    Clock::duration latest{};
    for (std::int64_t turn = 0; turn < each * std::int64_t(devices); ++turn) {
        const std::size_t device = static_cast<std::size_t>(turn) % devices;
        const std::int64_t number = turn / std::int64_t(devices);
        const auto due = start + turn * step;
        if (due > Clock::now())
            std::this_thread::sleep_until(due);
        const auto now = Clock::now();
        latest = std::max(latest, now - due);
        StreamReport report;
        const std::uint8_t down =
            device == 0 && wish.hasPresses ? pressedAt(number * 1000 / wish.rate) : std::uint8_t(0);
        constexpr std::uint32_t kButtonBits = (1U << StreamReport::kButtons) - 1;
        report.buttons = down & kButtonBits;
        if (wish.motion != StreamMotion::Rest) {
            for (std::uint16_t& axis : report.axes)
                axis = static_cast<std::uint16_t>(0x8000 + std::rand() % kFlicker);
            report.sentNanos = now.time_since_epoch().count();
            report.number = static_cast<std::uint32_t>(number);
        }
        if (wish.motion == StreamMotion::Move) {
            const auto way = static_cast<std::uint32_t>(number) % kSweep;
            report.axes[0] = static_cast<std::uint16_t>(std::min(way, kSweep - way) * (0xFFFF / (kSweep / 2)));
        }
        const bool isThrown = report.buttons != down;
        report.axes[1] = static_cast<std::uint16_t>((isThrown ? StreamReport::kThrown : StreamReport::kBack) +
                                                    report.axes[1] % kFlicker);
        if (device == 0) {
            if ((down & ~downBefore) != 0)
                presses.push_back(now.time_since_epoch().count());
            downBefore = down;
        }
        send(device, report.bytes());
    }
    for (const std::int64_t press : presses)
        log << "press " << press << '\n';
    log << "sent " << each << " late " << std::chrono::duration_cast<std::chrono::microseconds>(latest).count()
        << std::endl;
}
