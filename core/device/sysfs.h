#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/error.h"

namespace flowhand {

/// What the kernel tells of a hidraw node without opening it.
struct HidrawFacts {
    std::string name;   ///< HID_NAME
    std::string serial; ///< HID_UNIQ
    std::string port;   ///< HID_PHYS
};

/// `node` is a path as "/dev/hidraw3". What is missing stays empty.
[[nodiscard]] HidrawFacts hidrawFacts(const std::string& node);

/// hidapi 0.13 cannot give it; anyone may read it here. Error `no-descriptor`.
[[nodiscard]] Result<std::vector<std::uint8_t>> hidrawDescriptor(const std::string& node);

} // namespace flowhand
