#pragma once

#include <string>

#include "device/descriptor.h"

namespace flowhand {

/// Pages and usages that the program itself speaks of (HID Usage Tables 1.12, sections 4, 5, 12).
namespace usage {
inline constexpr std::uint16_t kGenericDesktop = 0x01, kSimulation = 0x02, kKeyboardPage = 0x07, kButton = 0x09,
                               kFido = 0xF1D0, kVendor = 0xFF00;
inline constexpr Usage kPointer = 0x0001'0001, kMouse = 0x0001'0002, kKeyboard = 0x0001'0006, kKeypad = 0x0001'0007,
                       kSystemControl = 0x0001'0080, kConsumerControl = 0x000C'0001, kHatSwitch = 0x0001'0039;
} // namespace usage

/// "Generic Desktop", or the page in hexadecimal: "page FF00".
[[nodiscard]] std::string pageName(std::uint16_t page);

/// "X", "Throttle", "button 3"; a usage without a name: its page and id in hexadecimal, "FF00:0001".
[[nodiscard]] std::string usageName(Usage usage);

} // namespace flowhand
