#include "device/globalitems.h"

#include <algorithm>
#include <string>

#include "device/descriptor.h"

namespace flowhand {

namespace {

constexpr std::size_t kMostPushes = 4; // the kernel's; it refuses the device beyond

} // namespace

int exponentOf(const Item& item) {
    if (item.number() <= 0xF)
        return static_cast<int>(item.number() ^ 0x8) - 8;
    return static_cast<int>(std::clamp<std::int64_t>(item.signedNumber(), -128, 127));
}

Status GlobalItems::take(const Item& item) {
    const Bound bound{item.signedNumber(), item.number()};
    switch (item.tag) {
    case tag::kUsagePage:
        m_now.page = static_cast<std::uint16_t>(item.number());
        break;
    case tag::kLogicalMinimum:
        m_now.logicalLowest = bound;
        break;
    case tag::kLogicalMaximum:
        m_now.logicalHighest = bound;
        break;
    case tag::kPhysicalMinimum:
        m_now.physicalLowest = bound;
        break;
    case tag::kPhysicalMaximum:
        m_now.physicalHighest = bound;
        break;
    case tag::kUnitExponent:
        m_now.unitExponent = exponentOf(item);
        break;
    case tag::kUnit:
        m_now.unit = item.number();
        break;
    case tag::kReportSize:
        if (item.number() > kMostReportSize)
            return tl::unexpected(
                descriptorError(item.offset, "Report Size " + std::to_string(item.number()) + " is over 256 bits"));
        m_now.reportSize = item.number();
        break;
    case tag::kReportCount:
        if (item.number() > kMostReportCount)
            return tl::unexpected(
                descriptorError(item.offset, "Report Count " + std::to_string(item.number()) + " is over 12288"));
        m_now.reportCount = item.number();
        break;
    case tag::kReportId:
        return takeReportId(item);
    case tag::kPush:
        if (m_pushed.size() == kMostPushes)
            return tl::unexpected(descriptorError(item.offset, "Push more than 4 deep"));
        m_pushed.push_back(m_now);
        break;
    case tag::kPop:
        return takePop(item);
    default:
        break;
    }
    return {};
}

Status GlobalItems::takeReportId(const Item& item) {
    if (item.number() == 0 || item.number() > 255)
        return tl::unexpected(
            descriptorError(item.offset, "Report ID " + std::to_string(item.number()) + "; ids are 1 to 255"));
    m_now.reportId = static_cast<std::uint8_t>(item.number());
    m_hasReportIds = true;
    return {};
}

Status GlobalItems::takePop(const Item& item) {
    if (m_pushed.empty())
        return tl::unexpected(descriptorError(item.offset, "Pop without a Push"));
    m_now = m_pushed.back();
    m_pushed.pop_back();
    return {};
}

/// Bounds are signed in their own width (6.2.2.7), but devices write 25 FF and mean 255: a maximum below a
/// minimum that is not negative is read unsigned.
ValueRange GlobalItems::rangeOf(const Bound& lowest, const Bound& highest) {
    const bool meansUnsigned = lowest.asSigned >= 0 && highest.asSigned < 0;
    return {lowest.asSigned, meansUnsigned ? highest.asUnsigned : highest.asSigned};
}

ValueRange GlobalItems::logical() const {
    return rangeOf(m_now.logicalLowest, m_now.logicalHighest);
}

ValueRange GlobalItems::physical() const {
    const ValueRange range = rangeOf(m_now.physicalLowest, m_now.physicalHighest);
    return range.lowest == 0 && range.highest == 0 ? logical() : range;
}

} // namespace flowhand
