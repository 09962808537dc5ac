#include "device/descriptor.h"

#include <cmath>

namespace flowhand {

double InputElement::physical(std::int64_t raw) const {
    const double scale = std::pow(10.0, unitExponent);
    if (!hasRange())
        return static_cast<double>(raw) * scale;
    const double share = static_cast<double>(raw - lowest) / static_cast<double>(highest - lowest);
    return (static_cast<double>(physicalLowest) +
            share * (static_cast<double>(physicalHighest) - static_cast<double>(physicalLowest))) *
           scale;
}

Usage InputElement::usageOfSlot(std::int64_t raw) const {
    if (raw < lowest || raw > highest)
        return 0;
    auto index = static_cast<std::uint64_t>(raw - lowest);
    for (const UsageRange& range : usages) {
        if (index < range.size()) {
            const auto asserted = static_cast<Usage>(range.first + index);
            return idOf(asserted) == 0 ? 0 : asserted; // id 0 is 'no event': HUT, keyboard page
        }
        index -= range.size();
    }
    return 0;
}

std::vector<Usage> Descriptor::applications() const {
    std::vector<Usage> usages;
    for (const Collection& collection : collections)
        if (collection.parent < 0 && collection.type == Collection::kApplication)
            usages.push_back(collection.usage);
    return usages;
}

} // namespace flowhand
