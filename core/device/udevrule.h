#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace flowhand {

/// What lets the person at this computer read one device: commands that install the rule for it.
[[nodiscard]] std::string howToAllow(std::uint16_t vendor, std::uint16_t product);

/// A udev rules file for just these devices (vendor, product), never all of hidraw: keyboards are there too.
[[nodiscard]] std::string udevRule(const std::vector<std::pair<std::uint16_t, std::uint16_t>>& devices);

} // namespace flowhand
