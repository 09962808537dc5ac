#include "device/inputs.h"

#include <algorithm>
#include <map>
#include <string>

#include "device/usagenames.h"

namespace flowhand {

namespace {

constexpr std::uint32_t kUnitDegrees = 0x14; // 6.2.2.7: English rotation, to the power of one
constexpr double kFullTurn = 360.0;
constexpr double kHalfTurn = 180.0;

/// HUT, Hat Switch: degrees clockwise from up. Devices that give no sensible physical range divide the circle by
/// their logical one (practice).
void setAngles(InputInfo& input, const InputElement& element) {
    const double first = element.physical(element.lowest);
    const double last = element.physical(element.highest);
    const bool isGiven = element.physicalLowest != element.lowest || element.physicalHighest != element.highest;
    const bool isDegrees = (element.unit & 0xFF) == kUnitDegrees || (isGiven && last >= kHalfTurn);
    if (isDegrees && last > first && last - first < kFullTurn) {
        input.firstAngle = first;
        input.lastAngle = last;
        return;
    }
    const double steps = static_cast<double>(input.highest - input.lowest) + 1.0;
    input.firstAngle = 0.0;
    input.lastAngle = kFullTurn * (steps - 1.0) / steps;
}

class Namer {
public:
    InputInfo name(std::uint8_t reportId, Usage usage, InputKind kind) {
        const std::uint16_t nth = m_counts[usage]++;
        InputInfo input;
        input.key = {reportId, pageOf(usage), idOf(usage), nth};
        input.kind = kind;
        const std::string number = std::to_string(nth + 1);
        if (usage == usage::kHatSwitch)
            input.name = "hat " + number;
        else if (nth == 0)
            input.name = usageName(usage);
        else if (pageOf(usage) == usage::kButton)
            input.name = usageName(usage) + " (" + number + ")";
        else
            input.name = usageName(usage) + " " + number;
        return input;
    }

private:
    std::map<Usage, std::uint16_t> m_counts;
};

void addArray(const InputElement& element, ElementInputs& targets, std::vector<InputInfo>& inputs, Namer& namer) {
    std::uint64_t reachable = 0;
    for (const UsageRange& range : element.usages)
        reachable += range.size();
    reachable = std::min(reachable, static_cast<std::uint64_t>(element.highest - element.lowest) + 1);
    if (reachable > kMostArrayUsages)
        return;
    for (std::uint64_t index = 0; index < reachable && inputs.size() < kMostInputs; ++index) {
        const Usage asserted = element.usageOfSlot(element.lowest + static_cast<std::int64_t>(index));
        targets.byIndex.push_back(asserted == 0 ? ElementInputs::kNone : static_cast<std::uint16_t>(inputs.size()));
        if (asserted == 0)
            continue;
        inputs.push_back(namer.name(element.reportId, asserted, InputKind::Button));
        inputs.back().highest = 1;
    }
}

} // namespace

InputKind kindOf(const InputElement& element) {
    if (element.isRelative)
        return InputKind::Relative;
    if (element.usage == usage::kHatSwitch)
        return InputKind::Hat;
    const bool isOneBit = !element.hasRange() && element.size == 1;
    return isOneBit || element.highest - element.lowest == 1 ? InputKind::Button : InputKind::Axis;
}

const char* kindName(InputKind kind) {
    static constexpr const char* kNames[] = {"axis", "button", "hat", "relative"};
    return kNames[static_cast<std::size_t>(kind)];
}

InputMap makeInputs(const Descriptor& descriptor) {
    InputMap map;
    Namer namer;
    map.elements.resize(descriptor.elements.size());
    for (std::size_t i = 0; i < descriptor.elements.size() && map.inputs.size() < kMostInputs; ++i) {
        const InputElement& element = descriptor.elements[i];
        if (element.isArray) {
            addArray(element, map.elements[i], map.inputs, namer);
            continue;
        }
        map.elements[i].input = static_cast<std::uint16_t>(map.inputs.size());
        InputInfo input = namer.name(element.reportId, element.usage, kindOf(element));
        input.lowest = element.lowest;
        input.highest = element.highest;
        if (!element.hasRange()) { // none is given: all that the bits can say
            input.lowest = 0;
            input.highest = (std::int64_t(1) << std::min<int>(element.size, 32)) - 1;
        }
        if (input.kind == InputKind::Hat)
            setAngles(input, element);
        map.inputs.push_back(std::move(input));
    }
    return map;
}

} // namespace flowhand
