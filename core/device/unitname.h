#pragma once

#include <cstdint>
#include <string>

namespace flowhand {

/// A Unit item's code in words (USB HID 1.11, 6.2.2.7): "degrees", "cm^2 g s^-2", "none"; "vendor's" for a system that
/// the text does not define.
[[nodiscard]] std::string unitName(std::uint32_t code);

} // namespace flowhand
