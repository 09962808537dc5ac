#include "device/explain.h"

#include <algorithm>
#include <cstdio>

#include "device/globalitems.h"
#include "device/items.h"
#include "device/unitname.h"
#include "device/usagenames.h"

namespace flowhand {

namespace {

constexpr int kDeepest = 64; // of what is indented

constexpr const char* kGlobalNames[] = {"Usage Page",
                                        "Logical Minimum",
                                        "Logical Maximum",
                                        "Physical Minimum",
                                        "Physical Maximum",
                                        "Unit Exponent",
                                        "Unit",
                                        "Report Size",
                                        "Report ID",
                                        "Report Count",
                                        "Push",
                                        "Pop"};
constexpr const char* kLocalNames[] = {
    "Usage", "Usage Minimum", "Usage Maximum",  "Designator Index", "Designator Minimum", "Designator Maximum",
    nullptr, "String Index",  "String Minimum", "String Maximum",   "Delimiter"};
constexpr const char* kCollectionNames[] = {"Physical",    "Application",  "Logical",       "Report",
                                            "Named Array", "Usage Switch", "Usage Modifier"};

std::string hexNumber(std::uint32_t number) {
    char text[16];
    std::snprintf(text, sizeof text, "0x%X", number);
    return text;
}

std::string with(const char* name, const std::string& value) {
    return std::string(name) + " (" + value + ")";
}

/// 6.2.2.5: a word for each flag that is set, and for the three that are always told.
std::string flagsText(std::uint32_t flags, bool isInput) {
    std::string text = flags & 0x01 ? "Constant" : "Data";
    text += flags & 0x02 ? ", Variable" : ", Array";
    text += flags & 0x04 ? ", Relative" : ", Absolute";
    const std::pair<std::uint32_t, const char*> others[] = {{0x08, ", Wrap"},         {0x10, ", Non Linear"},
                                                            {0x20, ", No Preferred"}, {0x40, ", Null State"},
                                                            {0x80, ", Volatile"},     {0x100, ", Buffered Bytes"}};
    for (const auto& [bit, word] : others)
        if ((flags & bit) && !(isInput && bit == 0x80))
            text += word;
    return text;
}

std::string mainText(const Item& item) {
    switch (item.tag) {
    case tag::kInput:
        return with("Input", flagsText(item.number(), true));
    case tag::kOutput:
        return with("Output", flagsText(item.number(), false));
    case tag::kFeature:
        return with("Feature", flagsText(item.number(), false));
    case tag::kCollection:
        return with("Collection", item.number() < std::size(kCollectionNames) ? kCollectionNames[item.number()]
                                                                              : hexNumber(item.number()));
    case tag::kEndCollection:
        return "End Collection";
    default:
        return with("reserved main item", "skipped");
    }
}

std::string globalText(const Item& item) {
    if (item.tag >= std::size(kGlobalNames))
        return with("reserved global item", "skipped");
    const char* name = kGlobalNames[item.tag];
    switch (item.tag) {
    case tag::kUsagePage:
        return with(name, pageName(static_cast<std::uint16_t>(item.number())));
    case tag::kUnit:
        return with(name, unitName(item.number()));
    case tag::kUnitExponent:
        return with(name, std::to_string(exponentOf(item)));
    case tag::kReportSize:
    case tag::kReportId:
    case tag::kReportCount:
        return with(name, std::to_string(item.number()));
    case tag::kPush:
    case tag::kPop:
        return name;
    default: {
        std::string value = std::to_string(item.signedNumber());
        if (item.signedNumber() < 0)
            value += ", or " + std::to_string(item.number()) + " unsigned";
        return with(name, value);
    }
    }
}

std::string localText(const Item& item, std::uint16_t page) {
    if (item.tag >= std::size(kLocalNames) || !kLocalNames[item.tag])
        return with("reserved local item", "skipped");
    const char* name = kLocalNames[item.tag];
    if (item.tag == tag::kDelimiter)
        return with(name, item.number() ? "open" : "close");
    if (item.tag > tag::kUsageMaximum)
        return with(name, std::to_string(item.number()));
    const bool hasOwnPage = item.data.size() == 4;
    return with(name, usageName(hasOwnPage ? item.number() : Usage(page) << 16 | (item.number() & 0xFFFF)));
}

} // namespace

std::vector<ExplainedItem> explainDescriptor(std::span<const std::uint8_t> descriptor) {
    std::vector<ExplainedItem> explained;
    std::uint16_t page = 0;
    std::vector<std::uint16_t> pushed;
    int depth = 0;
    for (std::size_t offset = 0; offset < descriptor.size();) {
        const auto item = itemAt(descriptor, offset);
        if (!item)
            break;
        offset += item->bytes.size();
        if (item->is(ItemType::Main, tag::kEndCollection))
            depth = std::max(depth - 1, 0);
        ExplainedItem words{item->offset, item->bytes, depth, {}};
        if (item->isLong)
            words.text = with("long item", "skipped");
        else if (item->type == ItemType::Main)
            words.text = mainText(*item);
        else if (item->type == ItemType::Global)
            words.text = globalText(*item);
        else if (item->type == ItemType::Local)
            words.text = localText(*item, page);
        else
            words.text = with("reserved item", "skipped");
        explained.push_back(std::move(words));

        if (item->is(ItemType::Global, tag::kUsagePage)) {
            page = static_cast<std::uint16_t>(item->number());
        } else if (item->is(ItemType::Global, tag::kPush)) {
            pushed.push_back(page);
        } else if (item->is(ItemType::Global, tag::kPop) && !pushed.empty()) {
            page = pushed.back();
            pushed.pop_back();
        } else if (item->is(ItemType::Main, tag::kCollection)) {
            depth = std::min(depth + 1, kDeepest);
        }
    }
    return explained;
}

} // namespace flowhand
