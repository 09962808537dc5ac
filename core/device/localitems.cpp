#include "device/localitems.h"

namespace flowhand {

namespace {

constexpr Usage joined(std::uint16_t page, Usage id) {
    return Usage(page) << 16 | (id & 0xFFFF);
}

} // namespace

Status LocalItems::take(const Item& item, std::uint16_t page) {
    const bool hasOwnPage = item.data.size() == 4;
    const Usage usage = hasOwnPage ? item.number() : joined(page, item.number());
    switch (item.tag) {
    case tag::kUsage:
        add({{usage, usage}, hasOwnPage});
        break;
    case tag::kUsageMinimum:
        m_minimum = Bound{usage, hasOwnPage};
        pairBounds();
        break;
    case tag::kUsageMaximum:
        m_maximum = Bound{usage, hasOwnPage};
        pairBounds();
        break;
    case tag::kDelimiter:
        if (item.number() != 0 && m_isDelimiterOpen)
            return tl::unexpected(descriptorError(item.offset, "a Delimiter opens inside another"));
        if (item.number() == 0 && !m_isDelimiterOpen)
            return tl::unexpected(descriptorError(item.offset, "a Delimiter closes that was not opened"));
        m_isDelimiterOpen = item.number() != 0;
        m_hasDelimiter = true;
        m_hasPreferred = false;
        break;
    default:
        break; // designators, strings and reserved tags tell nothing about controls
    }
    return {};
}

void LocalItems::add(const Entry& entry) {
    if (m_isDelimiterOpen && m_hasPreferred)
        return;
    m_hasPreferred = m_isDelimiterOpen;
    m_entries.push_back(entry);
}

void LocalItems::pairBounds() {
    if (!m_minimum || !m_maximum)
        return;
    const UsageRange range{m_minimum->usage, m_maximum->usage};
    const bool isOnePage = pageOf(range.first) == pageOf(range.last);
    const bool isExtended = m_minimum->hasOwnPage && m_maximum->hasOwnPage;
    if (range.first <= range.last && (isOnePage || isExtended))
        add({range, m_minimum->hasOwnPage || m_maximum->hasOwnPage});
    m_minimum.reset();
    m_maximum.reset();
}

std::vector<UsageRange> LocalItems::usages(std::uint16_t page) const {
    std::vector<UsageRange> usages;
    usages.reserve(m_entries.size());
    for (const Entry& entry : m_entries)
        usages.push_back(entry.range);
    for (std::size_t i = m_entries.size(); i-- > 0;) {
        if (m_entries[i].hasOwnPage)
            continue;
        if (pageOf(usages[i].first) == page)
            break;
        usages[i] = {joined(page, usages[i].first), joined(page, usages[i].last)};
    }
    return usages;
}

} // namespace flowhand
