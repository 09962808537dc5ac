#include "device/items.h"

namespace flowhand {

namespace {

constexpr std::uint8_t kLongItem = 0xFE;
constexpr std::size_t kLongHeader = 3; // prefix, data size, tag

Error cutOff(std::size_t offset, std::size_t wanted, std::size_t left) {
    return descriptorError(offset, "the item needs " + std::to_string(wanted) + " bytes, but only " +
                                       std::to_string(left) + " are left: the descriptor is cut off");
}

} // namespace

std::uint32_t Item::number() const {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < data.size() && i < 4; ++i)
        value |= std::uint32_t(data[i]) << (8 * i);
    return value;
}

std::int64_t Item::signedNumber() const {
    switch (data.size()) {
    case 0:
        return 0;
    case 1:
        return static_cast<std::int8_t>(number());
    case 2:
        return static_cast<std::int16_t>(number());
    default:
        return static_cast<std::int32_t>(number());
    }
}

Error descriptorError(std::size_t offset, const std::string& reason) {
    return {"bad-descriptor", "malformed report descriptor at byte " + std::to_string(offset) + ": " + reason, {}};
}

Result<Item> itemAt(std::span<const std::uint8_t> descriptor, std::size_t offset) {
    const auto rest = descriptor.subspan(offset);
    const std::uint8_t prefix = rest[0];
    Item item;
    item.offset = offset;
    if (prefix == kLongItem) {
        if (rest.size() < kLongHeader)
            return tl::unexpected(cutOff(offset, kLongHeader, rest.size()));
        const std::size_t size = kLongHeader + rest[1];
        if (rest.size() < size)
            return tl::unexpected(cutOff(offset, size, rest.size()));
        item.isLong = true;
        item.bytes = rest.first(size);
        return item;
    }
    const std::size_t code = prefix & 0x3;
    const std::size_t dataSize = code == 3 ? 4 : code; // size code 3 is four bytes: 6.2.2.2
    if (rest.size() < 1 + dataSize)
        return tl::unexpected(cutOff(offset, 1 + dataSize, rest.size()));
    item.type = static_cast<ItemType>((prefix >> 2) & 0x3);
    item.tag = prefix >> 4;
    item.bytes = rest.first(1 + dataSize);
    item.data = rest.subspan(1, dataSize);
    return item;
}

} // namespace flowhand
