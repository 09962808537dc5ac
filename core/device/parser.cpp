#include "device/descriptor.h"

#include <algorithm>
#include <map>
#include <string>

#include "device/bits.h"
#include "device/globalitems.h"
#include "device/items.h"
#include "device/localitems.h"

namespace flowhand {

namespace {

class Parser {
public:
    Result<Descriptor> parse(std::span<const std::uint8_t> bytes);

private:
    Status take(const Item& item);
    Status takeMain(const Item& item);
    Status takeReportField(const Item& item);
    Status addElements(const Item& item, std::uint32_t firstBit);
    void openCollection(const Item& item);
    Status finish(std::size_t length);
    [[nodiscard]] int innermost() const { return m_open.empty() ? -1 : m_open.back(); }

    Descriptor m_result;
    GlobalItems m_globals;
    LocalItems m_locals;
    std::vector<int> m_open;                                               ///< collections
    std::map<std::pair<std::uint8_t, std::uint8_t>, std::uint32_t> m_bits; ///< by main tag and report id
};

Result<Descriptor> Parser::parse(std::span<const std::uint8_t> bytes) {
    if (bytes.empty())
        return tl::unexpected(descriptorError(0, "it is empty"));
    if (bytes.size() > kMostDescriptorBytes)
        return tl::unexpected(descriptorError(kMostDescriptorBytes, "longer than 65535 bytes"));
    for (std::size_t offset = 0; offset < bytes.size();) {
        const Result<Item> item = itemAt(bytes, offset);
        if (!item)
            return tl::unexpected(item.error());
        if (const Status status = take(*item); !status)
            return tl::unexpected(status.error());
        offset += item->bytes.size();
    }
    if (const Status status = finish(bytes.size()); !status)
        return tl::unexpected(status.error());
    return std::move(m_result);
}

Status Parser::take(const Item& item) {
    switch (item.type) {
    case ItemType::Main: {
        const Status status = takeMain(item);
        m_locals.clear();
        return status;
    }
    case ItemType::Global:
        return m_globals.take(item);
    case ItemType::Local:
        return m_locals.take(item, m_globals.page());
    case ItemType::Reserved:
        break;
    }
    return {};
}

Status Parser::takeMain(const Item& item) {
    switch (item.tag) {
    case tag::kInput:
    case tag::kOutput:
    case tag::kFeature:
        return takeReportField(item);
    case tag::kCollection:
        if (m_locals.hasDelimiter() && m_open.empty()) // 6.2.2.8
            return tl::unexpected(descriptorError(item.offset, "a Delimiter before a top level Collection"));
        openCollection(item);
        return {};
    case tag::kEndCollection:
        if (m_open.empty())
            return tl::unexpected(descriptorError(item.offset, "End Collection without a Collection"));
        m_open.pop_back();
        return {};
    default:
        return {};
    }
}

Status Parser::takeReportField(const Item& item) {
    const ValueRange logical = m_globals.logical();
    if (logical.highest < logical.lowest)
        return tl::unexpected(descriptorError(item.offset, "Logical Maximum " + std::to_string(logical.highest) +
                                                               " is below Logical Minimum " +
                                                               std::to_string(logical.lowest)));
    std::uint32_t& bits = m_bits[{item.tag, m_globals.reportId()}];
    const std::uint32_t firstBit = bits;
    const std::uint64_t length = firstBit + std::uint64_t(m_globals.reportSize()) * m_globals.reportCount();
    if (length > kMostReportBits)
        return tl::unexpected(descriptorError(item.offset, "the report is " + std::to_string(length) +
                                                               " bits long; 131064 are the most"));
    bits = static_cast<std::uint32_t>(length);
    if (item.tag != tag::kInput || length == firstBit)
        return {};
    return addElements(item, firstBit);
}

Status Parser::addElements(const Item& item, std::uint32_t firstBit) {
    const std::uint32_t flags = item.number(); // 6.2.2.5
    const bool isConstant = flags & 0x01;
    const std::vector<UsageRange> usages = m_locals.usages(m_globals.page());
    if (isConstant || usages.empty() || m_globals.reportSize() > kWidestField) // wider ones only take up their bits
        return {};
    const bool isArray = !(flags & 0x02);
    if (isArray && m_locals.hasDelimiter()) // 6.2.2.8: an index cannot tell alternatives apart
        return tl::unexpected(descriptorError(item.offset, "a Delimiter before an array"));

    InputElement element;
    element.reportId = m_globals.reportId();
    element.bit = firstBit;
    element.size = static_cast<std::uint16_t>(m_globals.reportSize());
    element.isArray = isArray;
    element.isRelative = flags & 0x04;
    element.hasNull = flags & 0x40;
    const ValueRange logical = m_globals.logical();
    element.lowest = logical.lowest;
    element.highest = logical.highest;
    const ValueRange physical = m_globals.physical();
    element.physicalLowest = physical.lowest;
    element.physicalHighest = physical.highest;
    element.unit = m_globals.unit();
    element.unitExponent = m_globals.unitExponent();
    element.collection = innermost();

    const std::size_t added = element.isArray ? 1 : m_globals.reportCount();
    if (m_result.elements.size() + added > kMostElements)
        return tl::unexpected(descriptorError(item.offset, "more than 65536 data elements"));
    if (element.isArray) {
        element.count = static_cast<std::uint16_t>(m_globals.reportCount());
        element.usages = usages;
        m_result.elements.push_back(std::move(element));
        return {};
    }
    std::size_t range = 0;
    std::uint64_t nth = 0; // in the range; the last usage of all repeats: 6.2.2.8
    for (std::uint32_t i = 0; i < m_globals.reportCount(); ++i, element.bit += m_globals.reportSize()) {
        element.usage = static_cast<Usage>(usages[range].first + nth);
        m_result.elements.push_back(element);
        if (nth + 1 < usages[range].size()) {
            ++nth;
        } else if (range + 1 < usages.size()) {
            ++range;
            nth = 0;
        }
    }
    return {};
}

void Parser::openCollection(const Item& item) {
    Collection collection;
    collection.parent = innermost();
    collection.type = static_cast<std::uint8_t>(item.number());
    if (const auto usages = m_locals.usages(m_globals.page()); !usages.empty())
        collection.usage = usages.front().first;
    m_open.push_back(static_cast<int>(m_result.collections.size()));
    m_result.collections.push_back(collection);
}

Status Parser::finish(std::size_t length) {
    m_result.hasReportIds = m_globals.hasReportIds();
    if (!m_open.empty())
        return tl::unexpected(descriptorError(length, std::to_string(m_open.size()) + " Collection(s) never end"));
    if (m_locals.isDelimiterOpen())
        return tl::unexpected(descriptorError(length, "a Delimiter never closes"));
    for (const auto& [key, bits] : m_bits)
        if (key.first == tag::kInput && (key.second != 0 || !m_result.hasReportIds))
            m_result.reports.push_back({key.second, bits});
    if (m_result.hasReportIds) { // fields before the first Report ID belong to no report that can come
        auto& elements = m_result.elements;
        elements.erase(std::remove_if(elements.begin(), elements.end(),
                                      [](const InputElement& element) {
                                          return element.reportId == 0;
                                      }),
                       elements.end());
    }
    return {};
}

} // namespace

Result<Descriptor> parseDescriptor(std::span<const std::uint8_t> bytes) {
    return Parser().parse(bytes);
}

} // namespace flowhand
