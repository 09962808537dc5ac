#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>

#include "base/error.h"

namespace flowhand {

enum class ItemType : std::uint8_t { Main, Global, Local, Reserved };

/// Tags of short items, with their type (USB HID 1.11, 6.2.2.4, 6.2.2.7, 6.2.2.8).
namespace tag {
inline constexpr std::uint8_t kInput = 0x8, kOutput = 0x9, kCollection = 0xA, kFeature = 0xB, kEndCollection = 0xC;
inline constexpr std::uint8_t kUsagePage = 0x0, kLogicalMinimum = 0x1, kLogicalMaximum = 0x2, kPhysicalMinimum = 0x3,
                              kPhysicalMaximum = 0x4, kUnitExponent = 0x5, kUnit = 0x6, kReportSize = 0x7,
                              kReportId = 0x8, kReportCount = 0x9, kPush = 0xA, kPop = 0xB;
inline constexpr std::uint8_t kUsage = 0x0, kUsageMinimum = 0x1, kUsageMaximum = 0x2, kDesignatorIndex = 0x3,
                              kDesignatorMinimum = 0x4, kDesignatorMaximum = 0x5, kStringIndex = 0x7,
                              kStringMinimum = 0x8, kStringMaximum = 0x9, kDelimiter = 0xA;
} // namespace tag

/// One item of a report descriptor (USB HID 1.11, 6.2.2.2 and 6.2.2.3). Borrows the descriptor's bytes.
struct Item {
    std::size_t offset = 0;              ///< of its first byte in the descriptor
    ItemType type = ItemType::Reserved;  ///< Reserved for long items
    std::uint8_t tag = 0;                ///< of short items
    bool isLong = false;                 ///< no long item is defined: skipped
    std::span<const std::uint8_t> bytes; ///< all of it
    std::span<const std::uint8_t> data;  ///< 0, 1, 2 or 4 bytes of a short item

    [[nodiscard]] bool is(ItemType wanted, std::uint8_t wantedTag) const {
        return type == wanted && tag == wantedTag && !isLong;
    }
    /// Little endian; an item without data carries 0.
    [[nodiscard]] std::uint32_t number() const;
    /// The same, two's complement in its own 1, 2 or 4 bytes.
    [[nodiscard]] std::int64_t signedNumber() const;
};

/// A `bad-descriptor` error that begins with the byte where it was found.
[[nodiscard]] Error descriptorError(std::size_t offset, const std::string& reason);

/// The item at `offset`, which must lie inside; error `bad-descriptor` when it is cut off.
[[nodiscard]] Result<Item> itemAt(std::span<const std::uint8_t> descriptor, std::size_t offset);

} // namespace flowhand
