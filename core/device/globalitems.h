#pragma once

#include <cstdint>
#include <vector>

#include "base/error.h"
#include "device/items.h"

namespace flowhand {

/// Both ends belong to it.
struct ValueRange {
    std::int64_t lowest = 0;
    std::int64_t highest = 0;
};

/// The power of ten of a Unit Exponent item: a nibble in two's complement by 6.2.2.7; whole numbers of one byte or more
/// are met too. -128..127.
[[nodiscard]] int exponentOf(const Item& item);

/// The state that stays in force from item to item, with its stack (USB HID 1.11, 6.2.2.7).
class GlobalItems {
public:
    [[nodiscard]] Status take(const Item& item);

    [[nodiscard]] std::uint16_t page() const { return m_now.page; }
    [[nodiscard]] ValueRange logical() const;
    /// Equal to logical() where none is given.
    [[nodiscard]] ValueRange physical() const;
    [[nodiscard]] std::uint32_t unit() const { return m_now.unit; }
    [[nodiscard]] int unitExponent() const { return m_now.unitExponent; }
    [[nodiscard]] std::uint32_t reportSize() const { return m_now.reportSize; }
    [[nodiscard]] std::uint32_t reportCount() const { return m_now.reportCount; }
    [[nodiscard]] std::uint8_t reportId() const { return m_now.reportId; }
    /// Whether any Report ID item came so far.
    [[nodiscard]] bool hasReportIds() const { return m_hasReportIds; }

private:
    /// A bound as written: whether it is negative is decided at the main item, when its partner is known.
    struct Bound {
        std::int64_t asSigned = 0;
        std::int64_t asUnsigned = 0;
    };
    /// What Push saves and Pop brings back: all of these, nothing else (5.4).
    struct Values {
        std::uint16_t page = 0;
        Bound logicalLowest, logicalHighest, physicalLowest, physicalHighest;
        std::uint32_t unit = 0;
        int unitExponent = 0;
        std::uint32_t reportSize = 0;
        std::uint32_t reportCount = 0;
        std::uint8_t reportId = 0;
    };

    [[nodiscard]] static ValueRange rangeOf(const Bound& lowest, const Bound& highest);
    [[nodiscard]] Status takeReportId(const Item& item);
    [[nodiscard]] Status takePop(const Item& item);

    Values m_now;
    std::vector<Values> m_pushed;
    bool m_hasReportIds = false;
};

} // namespace flowhand
