#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "base/error.h"
#include "device/descriptor.h"
#include "device/items.h"

namespace flowhand {

/// The usages that stand before one main item, and how they join with pages and pair to ranges
/// (USB HID 1.11, 6.2.2.8). Cleared by every main item, collections too (5.4).
class LocalItems {
public:
    /// `page` is the usage page in force at the item.
    [[nodiscard]] Status take(const Item& item, std::uint16_t page);
    /// The usages for a main item. A short usage belongs to the page at the usage (6.2.2.7) or at the main item
    /// (6.2.2.8), the text says both; as the kernel does, the page at the main item takes all short usages back to the
    /// last that stood on it already.
    [[nodiscard]] std::vector<UsageRange> usages(std::uint16_t page) const;
    [[nodiscard]] bool isDelimiterOpen() const { return m_isDelimiterOpen; }
    /// Whether alternatives are among the usages.
    [[nodiscard]] bool hasDelimiter() const { return m_hasDelimiter; }
    void clear() { *this = {}; }

private:
    struct Entry {
        UsageRange range;
        bool hasOwnPage = false; ///< written with 4 bytes
    };
    struct Bound {
        Usage usage = 0;
        bool hasOwnPage = false;
    };

    void add(const Entry& entry);
    void pairBounds();

    std::vector<Entry> m_entries;
    std::optional<Bound> m_minimum;
    std::optional<Bound> m_maximum;
    bool m_isDelimiterOpen = false;
    bool m_hasDelimiter = false;
    bool m_hasPreferred = false; ///< of the open delimiter: the first usage is the preferred one
};

} // namespace flowhand
