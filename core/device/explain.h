#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace flowhand {

/// One item of a report descriptor in words.
struct ExplainedItem {
    std::size_t offset = 0;
    std::span<const std::uint8_t> bytes;
    int depth = 0;    ///< of collections round it
    std::string text; ///< "Usage Page (Generic Desktop)", as HID 1.11 writes items
};

/// Item by item, to the end or to where an item is cut off. Borrows the descriptor's bytes.
[[nodiscard]] std::vector<ExplainedItem> explainDescriptor(std::span<const std::uint8_t> descriptor);

} // namespace flowhand
