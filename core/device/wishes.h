#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/error.h"
#include "device/device.h"

namespace flowhand {

/// The unit that answers to a wish, or why none does, in words for the pilot.
struct WishMatch {
    std::optional<DeviceInfo> unit;
    Error why; ///< without a unit: `device-missing`, `moved-port`, `equal-units`
};

/// Error `equal-units` when two wishes can only mean the same unit, or cannot be told apart.
[[nodiscard]] Status checkWishes(const std::vector<DeviceWish>& wishes);

/// Which connected unit answers to which wish. `known` is by wish the unit that it had before.
///
///   1. Id, and serial and port as far as they are wished, must agree, letter by letter.
///   2. A unit answers to one wish; wishes that name a serial or a port choose first.
///   3. Where some are controls, the keyboard or mouse parts of composite devices are passed over.
///   4. Of several, the one known before wins: by serial, else by port.
///   5. Of several others none does, and the pilot is asked: `equal-units`.
///   6. Of none, a unit of that id at another port is named: `moved-port`. Else `device-missing`.
[[nodiscard]] std::vector<WishMatch> matchWishes(const std::vector<DeviceWish>& wishes,
                                                 const std::vector<DeviceInfo>& connected,
                                                 const std::vector<std::optional<DeviceInfo>>& known);

/// "1209:0001".
[[nodiscard]] std::string idText(std::uint16_t vendor, std::uint16_t product);
/// The reverse: vendor and product, where `text` is four hexadecimal digits, a colon and four more.
[[nodiscard]] std::optional<std::pair<std::uint16_t, std::uint16_t>> parseIdText(std::string_view text);

/// "the left unit (1209:0001)", for messages.
[[nodiscard]] std::string wishText(const DeviceWish& wish);
/// That no unit answers to the wish, and what to do.
[[nodiscard]] Phrase notPluggedIn(const DeviceWish& wish);

} // namespace flowhand
