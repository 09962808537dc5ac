#pragma once

#include "device/descriptor.h"
#include "device/device.h"

namespace flowhand {

/// What a device is by its application collections; what people type or prove themselves with comes first.
[[nodiscard]] DeviceClass classOf(const Descriptor& descriptor);

/// A card that pretends its switches are keys: every key it sends goes to all programs, and it is no set of controls.
[[nodiscard]] bool isKeyboardOnly(const Descriptor& descriptor);

} // namespace flowhand
