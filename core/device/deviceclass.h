#pragma once

#include <string>

#include "device/descriptor.h"
#include "device/device.h"

namespace flowhand {

/// What a device is by its application collections; what people type or prove themselves with comes first.
[[nodiscard]] DeviceClass classOf(const Descriptor& descriptor);

/// "keyboard", "security key" ...
[[nodiscard]] const char* className(DeviceClass deviceClass);

/// What people type, point or prove themselves with: listed, and opened only where a rig names it.
[[nodiscard]] bool isPrivate(DeviceClass deviceClass);

/// A card that pretends its switches are keys: every key it sends goes to all programs, and it is no set of controls.
[[nodiscard]] bool isKeyboardOnly(const Descriptor& descriptor);

/// Why no rig can use a device that isKeyboardOnly(), and the way out, in words after its name.
[[nodiscard]] std::string whyNoKeyboards();

} // namespace flowhand
