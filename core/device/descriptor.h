#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "base/error.h"

namespace flowhand {

/// A usage as one number: page in the upper 16 bits, id in the lower.
using Usage = std::uint32_t;
[[nodiscard]] constexpr std::uint16_t pageOf(Usage usage) {
    return static_cast<std::uint16_t>(usage >> 16);
}
[[nodiscard]] constexpr std::uint16_t idOf(Usage usage) {
    return static_cast<std::uint16_t>(usage);
}

/// Both ends belong to it. Never unrolled: it may have 2^32 members.
struct UsageRange {
    Usage first = 0;
    Usage last = 0;

    bool operator==(const UsageRange&) const = default;
    [[nodiscard]] std::uint64_t size() const { return std::uint64_t(last) - first + 1; }
};

/// A group of elements (USB HID 1.11, 6.2.2.6).
struct Collection {
    static constexpr std::uint8_t kApplication = 1;
    int parent = -1; ///< index; -1: top level
    std::uint8_t type = 0;
    Usage usage = 0; ///< 0: none, as physical collections may
};

/// One variable field, or all the slots of one array item, of an input report. Constants and fields without a usage
/// take bits but are no elements.
struct InputElement {
    std::uint8_t reportId = 0; ///< 0: the device has no ids
    std::uint32_t bit = 0;     ///< from the start of the data after the id byte; 8.4: lowest bit first
    std::uint16_t size = 0;    ///< bits of a field or slot, 1..32; wider fields make no element
    std::uint16_t count = 1;   ///< slots of an array; a variable is 1
    bool isArray = false;
    bool isRelative = false;
    bool hasNull = false;           ///< 5.10: a value outside the logical range says nothing
    Usage usage = 0;                ///< of a variable
    std::vector<UsageRange> usages; ///< of an array, in the order of its indexes; may be empty
    std::int64_t lowest = 0;        ///< logical range; lowest == highest == 0: none is given
    std::int64_t highest = 0;
    std::int64_t physicalLowest = 0; ///< equal to the logical range where none is given
    std::int64_t physicalHighest = 0;
    std::uint32_t unit = 0; ///< the unit's code, 6.2.2.7; 0: none
    int unitExponent = 0;   ///< power of ten
    int collection = -1;    ///< the innermost; -1: outside all

    [[nodiscard]] bool hasRange() const { return lowest < highest; }
    /// 5.8: two's complement if the logical minimum is negative.
    [[nodiscard]] bool isSigned() const { return lowest < 0; }
    /// `raw` in the element's physical unit.
    [[nodiscard]] double physical(std::int64_t raw) const;
    /// The usage that an array's slot value asserts; 0: none.
    [[nodiscard]] Usage usageOfSlot(std::int64_t raw) const;
};

/// Length of one input report.
struct InputReport {
    std::uint8_t id = 0;
    std::uint32_t bits = 0; ///< without the id byte

    [[nodiscard]] std::size_t bytes() const { return (bits + 7) / 8; }
};

/// What a report descriptor says of the input reports. Output and feature reports are followed, to keep apart, and
/// left out.
struct Descriptor {
    bool hasReportIds = false; ///< then each report starts with its id byte: 5.6
    std::vector<Collection> collections;
    std::vector<InputElement> elements; ///< in the order of the descriptor
    std::vector<InputReport> reports;   ///< by id

    /// Usages of the top level application collections: "Joystick", "Keyboard" ...
    [[nodiscard]] std::vector<Usage> applications() const;
};

/// Limits that keep a hostile descriptor from taking memory. Report size, count and length are the Linux kernel's, so
/// that what it accepts is accepted.
inline constexpr std::size_t kMostDescriptorBytes = 65535; ///< wDescriptorLength has 16 bits: 6.2.1
inline constexpr std::uint32_t kMostReportSize = 256;
inline constexpr std::uint32_t kMostReportCount = 12288;
inline constexpr std::uint32_t kMostReportBits = (16384 - 1) * 8;
inline constexpr std::size_t kMostElements = 65536; ///< of all reports: 8 MiB

/// Any bytes are parsed, or refused with error `bad-descriptor` that names the byte and the reason.
[[nodiscard]] Result<Descriptor> parseDescriptor(std::span<const std::uint8_t> bytes);

} // namespace flowhand
