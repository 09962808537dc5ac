#pragma once

#include <cstdint>
#include <vector>

#include "device/descriptor.h"
#include "device/device.h"

namespace flowhand {

/// Where an element's values go: an index into the inputs, and for arrays one a slot value.
struct ElementInputs {
    static constexpr std::uint16_t kNone = 0xFFFF;
    std::uint16_t input = kNone;        ///< of a variable
    std::vector<std::uint16_t> byIndex; ///< of an array: by slot value - lowest
};

/// A device's inputs as rig files name them, and which element makes them.
struct InputMap {
    std::vector<InputInfo> inputs;
    std::vector<ElementInputs> elements; ///< as Descriptor::elements
};

/// More are left out: a device with more controls is not one a person sits at.
inline constexpr std::size_t kMostInputs = 4096;
/// An array that can assert more usages carries codes, not controls; it makes no inputs.
inline constexpr std::uint64_t kMostArrayUsages = 1024;

/// Of a variable element.
[[nodiscard]] InputKind kindOf(const InputElement& element);
/// "axis", "button", "hat", "relative".
[[nodiscard]] const char* kindName(InputKind kind);
[[nodiscard]] InputMap makeInputs(const Descriptor& descriptor);

} // namespace flowhand
