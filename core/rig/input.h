#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>

#include "base/error.h"
#include "device/device.h"

namespace flowhand {

/// How a control of the rig uses an input, and so what its numbers mean:
/// Axis: raw counts. Contact: 1 closed, 0 open. Hat: 0..7 clockwise from up, -1 released. Turns: a running total.
enum class InputUse : std::uint8_t { Axis, Contact, Hat, Turns };

/// The eighths of a hat, clockwise.
inline constexpr int kHatReleased = -1;
inline constexpr int kHatEighths = 8;

/// One input of a device as a control of the rig names it.
struct InputRef {
    DeviceIndex device = 0;
    std::string name; ///< as the device names it: "X", "button 3", "hat 1"
    InputUse use = InputUse::Axis;
    std::optional<int> hatDirection; ///< a contact that is one direction of a hat: 0 up, 2 right, 4 down, 6 left
    bool isNormallyClosed = false;   ///< of contacts: open means operated
    std::optional<std::pair<std::int64_t, std::int64_t>> raws; ///< lowest and highest raw number the rig file expects
    SourcePlace place;
};

/// What `reading` says in the terms of `ref.use`; nothing for an axis in its null state, which changes nothing.
[[nodiscard]] std::optional<std::int64_t> meaningOf(const Reading& reading, const InputRef& ref, const InputInfo& info);

/// The reverse: the raw value with which the device says `meaning`.
[[nodiscard]] Reading readingOf(std::int64_t meaning, const InputRef& ref, const InputInfo& info);

} // namespace flowhand
