#pragma once

#include <compare>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/time.h"
#include "device/device.h"

namespace flowhand {

/// One input of one device.
struct InputPlace {
    DeviceIndex device = 0;
    std::uint16_t input = 0;

    auto operator<=>(const InputPlace&) const = default;
};

/// A contact that changed, or a hat or wheel that moved, in the order in which it came.
struct InputEvent {
    InputPlace place;
    Time time{};
    std::int64_t raw = 0;
    bool isNull = false;
};

/// Where an input stands: the median of its raw number over a stretch, weighted by time. A released hat has no raw.
struct StandingInput {
    double raw = 0.0;
    bool isNull = false;
};
using Snapshot = std::map<InputPlace, StandingInput>; ///< of the inputs that have said anything

/// Watches every input of every device at once: how much each flickers at rest, when all stand still, and where. Told
/// readings and the time, both rising. One thread.
class InputWatch {
public:
    /// How long all must stand still to count as resting: longer than a person pauses in a movement (common practice).
    static constexpr Duration kStill = std::chrono::seconds(1);
    /// How long the flicker at rest is measured.
    static constexpr Duration kRest = std::chrono::seconds(2);
    /// Whatever does not rest for so long is left out as restless.
    static constexpr Duration kLongestRest = std::chrono::seconds(10);

    /// The device came, or came back: what it said before is forgotten.
    void connect(DeviceIndex device, std::vector<InputInfo> inputs);
    void take(const Reading& reading);

    /// All that rests from `since` on for kRest; learns the noise then. After kLongestRest what still moves is
    /// restless, and the rest is learned without it.
    [[nodiscard]] bool learnRest(Time since, Time now);

    /// Nothing but the restless has moved for kStill.
    [[nodiscard]] bool isStill(Time now) const;
    /// Over the last kStill.
    [[nodiscard]] Snapshot standing(Time now) const;
    /// What discrete inputs and wheels did after `since`.
    [[nodiscard]] std::vector<InputEvent> eventsSince(Time since) const;

    /// Whether two standings of one input differ by a movement: an axis by more than max(6 sigma, 1 % of its range),
    /// any other at all.
    [[nodiscard]] bool isMoved(InputPlace place, const StandingInput& a, const StandingInput& b) const;

    [[nodiscard]] const InputInfo& info(InputPlace place) const { return m_devices.at(place.device)[place.input].info; }
    /// Standard deviation at rest in raw counts, not below that of rounding.
    [[nodiscard]] double sigma(InputPlace place) const { return m_devices.at(place.device)[place.input].sigma; }
    [[nodiscard]] std::vector<InputPlace> restless() const;

private:
    struct Change {
        Time time{};
        std::int64_t raw = 0;
        bool isNull = false;
    };
    struct Watched {
        InputInfo info;
        double sigma = 0.0;
        bool isRestless = false;
        std::vector<Change> changes;
    };
    struct Spread {
        double median = 0.0;
        double low = 0.0; ///< 2nd and 98th hundredth, so that single spikes do not count
        double high = 0.0;
        double deviation = 0.0;
    };

    [[nodiscard]] static bool isAxis(const Watched& input) { return input.info.kind == InputKind::Axis; }
    [[nodiscard]] static bool isIdleFirstWord(const Watched& input, const Change& change);
    [[nodiscard]] static std::optional<Spread> spreadOf(const Watched& input, Time from, Time to);
    [[nodiscard]] static double limitOf(const Watched& input, double sigma);
    [[nodiscard]] bool isSteady(const Watched& input, Time from, Time to) const;

    std::map<DeviceIndex, std::vector<Watched>> m_devices;
};

} // namespace flowhand
