#pragma once

#include <cstdint>
#include <string>
#include <vector>

/// Where the kernel's evdev node differs on purpose from what a device's reports say. Each has its line in README.md.
struct Deviation {
    const char* id;
    const char* reason;
};

namespace deviation {
inline constexpr const char* kFuzz = "fuzz";
inline constexpr const char* kOneHat = "one-hat";
inline constexpr const char* kHatInEightBits = "hat-in-8-bits";
inline constexpr const char* kManyButtons = "many-buttons";
inline constexpr const char* kSimulation = "simulation";
inline constexpr const char* kSharedAxis = "shared-axis";
inline constexpr const char* kAgainDropped = "again-dropped";
inline constexpr const char* kFirstZero = "first-zero";
inline constexpr const char* kRollOver = "roll-over";
inline constexpr const char* kSharedKey = "shared-key";
inline constexpr const char* kNoKey = "no-key";
inline constexpr const char* kButtonTravel = "button-travel";
inline constexpr const char* kWheelTwice = "wheel-twice";
inline constexpr const char* kVendorPage = "vendor-page";
inline constexpr const char* kMaximumAtOnce = "maximum-at-once";
inline constexpr const char* kThirtyTwoBits = "32-bits";
inline constexpr const char* kWideFields = "wide-fields";
inline constexpr const char* kNoBits = "no-bits";
inline constexpr const char* kUnusedUsages = "unused-usages";
inline constexpr const char* kBackwardRange = "backward-range";
inline constexpr const char* kDelimiters = "delimiters";
} // namespace deviation

/// All of them.
[[nodiscard]] const std::vector<Deviation>& deviations();

/// What of a deviation cannot be told from our own reading of the descriptor.
struct Difference {
    enum class What : std::uint8_t {
        Hidden,    ///< the control with this usage is not shown
        Extra,     ///< an absolute axis with this code is shown that is no control
        ExtraKeys, ///< all the keys from this usage on are shown and are no controls
        Range      ///< the control with this usage has the range lowest..highest there
    };
    const char* why;
    What what;
    std::uint32_t usageOrCode;
    std::int32_t lowest = 0;
    std::int32_t highest = 0;
};

/// One sample device.
struct SampleDevice {
    std::string name;
    std::string descriptor;            ///< hexadecimal
    std::vector<std::string> reports;  ///< sent first, before the generated ones
    std::vector<std::string> deviates; ///< every deviation that it shows
    std::vector<Difference> differences = {};
};

/// The published devices, one for every trap of report descriptors that the kernel accepts, and those of `rigFolder`
/// (its *.hex files).
[[nodiscard]] std::vector<SampleDevice> sampleDevices(const std::string& rigFolder);
