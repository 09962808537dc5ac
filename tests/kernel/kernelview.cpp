#include "kernelview.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <linux/input-event-codes.h>
#include <numeric>
#include <utility>

#include "device/bits.h"
#include "device/usagenames.h"

using namespace flowhand;

namespace {

constexpr int kNotches = 120; // a notch of REL_WHEEL_HI_RES (input-event-codes.h)
constexpr std::uint16_t kMicrosoftVendor = 0xFF00;
constexpr std::uint16_t kLastKeyboardError = 3;
constexpr std::uint16_t kErrorRollOver = 1; // HUT, keyboard page

/// The absolute axis of a usage; nothing: the kernel shows none. HID_GD_X.. and HID_UP_SIMULATION of hid-input.c.
std::optional<int> axisOf(Usage usage) {
    static const std::map<Usage, int> axes = {{0x010030, ABS_X},        {0x010031, ABS_Y},        {0x010032, ABS_Z},
                                              {0x010033, ABS_RX},       {0x010034, ABS_RY},       {0x010035, ABS_RZ},
                                              {0x010036, ABS_THROTTLE}, {0x010037, ABS_RUDDER},   {0x010038, ABS_WHEEL},
                                              {0x0200BA, ABS_RUDDER},   {0x0200BB, ABS_THROTTLE}, {0x0200C4, ABS_GAS},
                                              {0x0200C5, ABS_BRAKE},    {0x0200C8, ABS_WHEEL}};
    const auto at = axes.find(usage);
    return at == axes.end() ? std::nullopt : std::optional<int>(at->second);
}

bool isStick(Usage usage) {
    return usage >= 0x010030 && usage <= 0x010035;
}

/// Left -1, right 1; up -1, down 1 for the eight directions clockwise from up.
constexpr std::pair<int, int> kDirections[8] = {{0, -1}, {1, -1}, {1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}};

/// The eighth of the circle in which our angle lies.
std::pair<int, int> directionOf(const InputInfo& hat, std::int64_t raw) {
    const double share = double(raw - hat.lowest) / double(hat.highest - hat.lowest);
    const double angle = hat.firstAngle + share * (hat.lastAngle - hat.firstAngle);
    return kDirections[static_cast<std::size_t>(std::floor(angle / 45.0 + 1e-9)) % 8];
}

} // namespace

KernelView::KernelView(const SampleDevice& device, const ReportDecoder& decoder, std::map<Usage, std::vector<int>> keys)
    : m_device(device), m_decoder(decoder), m_map(makeInputs(decoder.descriptor())), m_keys(std::move(keys)) {
    // The kernel goes from report to report, in the order in which their ids came up
    std::vector<std::size_t> order(decoder.descriptor().elements.size());
    std::iota(order.begin(), order.end(), 0);
    std::map<std::uint8_t, std::size_t> rank;
    for (const InputElement& element : decoder.descriptor().elements)
        rank.try_emplace(element.reportId, rank.size());
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return rank[elementAt(a).reportId] < rank[elementAt(b).reportId];
    });
    for (const std::size_t element : order) {
        if (elementAt(element).isArray)
            mapArray(element);
        else
            mapVariable(element);
    }
    for (const Difference& difference : device.differences)
        addExtras(difference);
}

void KernelView::addExtras(const Difference& difference) {
    const auto addExtra = [&](EventCode code) {
        m_deviations.insert(difference.why);
        m_shown.push_back({0, code, "no control", {}, 0, nullptr, nullptr, {}, {}, {}});
    };
    if (difference.what == Difference::What::Extra)
        addExtra({EV_ABS, static_cast<int>(difference.usageOrCode)});
    if (difference.what != Difference::What::ExtraKeys)
        return;
    for (const auto& [usage, codes] : m_keys)
        for (const int code : codes)
            if (usage >= difference.usageOrCode && code != KEY_RESERVED)
                addExtra({EV_KEY, code});
}

/// A node for every kind of application collection.
std::size_t KernelView::nodeOf(const InputElement& element) {
    const auto known = m_nodes.find(element.reportId);
    if (known != m_nodes.end())
        return known->second;
    const auto& collections = m_decoder.descriptor().collections;
    int at = element.collection;
    while (at >= 0 && collections[static_cast<std::size_t>(at)].type != Collection::kApplication)
        at = collections[static_cast<std::size_t>(at)].parent;
    const Usage application = at < 0 ? 0 : collections[static_cast<std::size_t>(at)].usage;
    const auto same = std::find(m_applications.begin(), m_applications.end(), application);
    const auto node = static_cast<std::size_t>(same - m_applications.begin());
    if (same == m_applications.end())
        m_applications.push_back(application);
    return m_nodes[element.reportId] = node;
}

EvdevNode::Range KernelView::rangeOf(const InputElement& element) {
    for (const Difference& difference : m_device.differences) {
        if (difference.what == Difference::What::Range && difference.usageOrCode == element.usage) {
            m_deviations.insert(difference.why);
            return {difference.lowest, difference.highest};
        }
    }
    return {static_cast<int>(element.lowest), static_cast<int>(element.highest)};
}

std::optional<std::size_t> KernelView::find(std::size_t node, EventCode code) const {
    for (std::size_t i = 0; i < m_shown.size(); ++i)
        if (m_shown[i].node == node && m_shown[i].code == code)
            return i;
    return std::nullopt;
}

std::size_t KernelView::add(std::size_t node, EventCode code, std::uint16_t input) {
    std::size_t index = m_shown.size();
    if (const auto known = find(node, code))
        index = *known;
    else
        m_shown.push_back({node, code, {}, {}, 0, nullptr, nullptr, {}, {}, {}});
    ShownControl& shown = m_shown[index];
    if (input != ElementInputs::kNone) {
        const std::string& name = m_decoder.inputs()[input].name;
        shown.name += (shown.name.empty() ? "" : ", ") + name;
        shown.inputs.push_back(input);
    }
    return index;
}

void KernelView::hide(Usage usage, const char* why) {
    if (why)
        m_deviations.insert(why);
    else
        m_unexplained.push_back(usageName(usage));
}

void KernelView::mapVariable(std::size_t index) {
    const InputElement& element = elementAt(index);
    Variable variable{index, m_map.elements[index].input, rangeOf(element), {}, 0};
    const std::size_t node = nodeOf(element);
    const std::uint16_t page = pageOf(element.usage);
    const auto hidden = std::find_if(m_device.differences.begin(), m_device.differences.end(), [&](const auto& d) {
        return d.what == Difference::What::Hidden && d.usageOrCode == element.usage;
    });
    if (hidden != m_device.differences.end()) {
        hide(element.usage, hidden->why);
    } else if (page == usage::kButton || page == usage::kKeyboardPage) {
        if (const auto shown = mapKey(node, element.usage)) {
            variable.shown.push_back(add(node, m_shown[*shown].code, variable.input));
            if (element.highest > 1)
                m_shown[*shown].why = deviation::kButtonTravel;
        }
    } else if (page == kMicrosoftVendor) {
        hide(element.usage, deviation::kVendorPage);
    } else if (element.isRelative) {
        mapRelative(variable);
    } else if (element.usage == usage::kHatSwitch) {
        mapHat(variable);
    } else if (const auto axis = axisOf(element.usage)) {
        mapAxis(variable, *axis);
    } else {
        hide(element.usage, page == usage::kSimulation ? deviation::kSimulation : nullptr);
    }
    m_variables[index] = std::move(variable);
}

void KernelView::mapAxis(Variable& variable, int code) {
    const InputElement& element = elementAt(variable.element);
    const std::size_t node = nodeOf(element);
    if (find(node, {EV_ABS, code})) {
        hide(element.usage, isStick(element.usage) ? deviation::kSharedAxis : deviation::kAgainDropped);
        if (!isStick(element.usage))
            return;
    }
    variable.shown.push_back(add(node, {EV_ABS, code}, variable.input));
    ShownControl& shown = m_shown[variable.shown.front()];
    shown.ourRange = EvdevNode::Range{static_cast<int>(element.lowest), static_cast<int>(element.highest)};
    shown.expectedRange = variable.range;
    if (shown.inputs.size() > 1)
        shown.why = deviation::kSharedAxis;
    if (element.size >= 32 && !element.isSigned())
        shown.why = deviation::kThirtyTwoBits;
    for (const Difference& difference : m_device.differences)
        if (difference.what == Difference::What::Range && difference.usageOrCode == element.usage)
            shown.why = difference.why;
}

void KernelView::mapHat(Variable& variable) {
    const InputElement& element = elementAt(variable.element);
    const std::size_t node = nodeOf(element);
    if (find(node, {EV_ABS, ABS_HAT0X})) {
        hide(element.usage, deviation::kOneHat);
        return;
    }
    for (const int code : {ABS_HAT0X, ABS_HAT0Y}) {
        variable.shown.push_back(add(node, {EV_ABS, code}, variable.input));
        m_shown.back().ourRange = m_shown.back().expectedRange = EvdevNode::Range{-1, 1};
        m_shown.back().why = element.highest > INT8_MAX ? deviation::kHatInEightBits : nullptr;
    }
}

void KernelView::mapRelative(Variable& variable) {
    const InputElement& element = elementAt(variable.element);
    const std::size_t node = nodeOf(element);
    const int code = idOf(element.usage) & 0xF; // REL_X.. are numbered as the usages are
    if (pageOf(element.usage) != usage::kGenericDesktop || find(node, {EV_REL, code})) {
        hide(element.usage, find(node, {EV_REL, code}) ? deviation::kAgainDropped : nullptr);
        return;
    }
    variable.shown.push_back(add(node, {EV_REL, code}, variable.input));
    if (code == REL_WHEEL) {
        variable.shown.push_back(add(node, {EV_REL, REL_WHEEL_HI_RES}, variable.input));
        m_shown.back().why = deviation::kWheelTwice;
    }
}

/// The kernel says itself which key a usage is; the code of the usage's next occurrence.
std::optional<std::size_t> KernelView::mapKey(std::size_t node, Usage usage) {
    const std::vector<int>& codes = m_keys[usage];
    const std::size_t nth = m_keysTaken[usage]++;
    const int code = nth < codes.size() ? codes[nth] : KEY_RESERVED;
    if (code != KEY_RESERVED) {
        const auto known = find(node, {EV_KEY, code});
        const std::size_t shown = known ? *known : add(node, {EV_KEY, code}, ElementInputs::kNone);
        if (known) {
            m_deviations.insert(deviation::kSharedKey);
            m_shown[shown].why = deviation::kSharedKey;
        }
        return shown;
    }
    if (pageOf(usage) == usage::kKeyboardPage && idOf(usage) <= kLastKeyboardError)
        hide(usage, deviation::kNoKey);
    else if (nth > 0)
        hide(usage, deviation::kAgainDropped);
    else
        hide(usage, pageOf(usage) == usage::kButton && idOf(usage) > 80 ? deviation::kManyButtons : nullptr);
    return std::nullopt;
}

void KernelView::mapArray(std::size_t index) {
    const InputElement& element = elementAt(index);
    const std::size_t node = nodeOf(element);
    Array array{index, {}, {}, std::vector<std::int64_t>(element.count, 0), false};
    for (const UsageRange& range : element.usages)
        for (std::uint64_t i = 0; i < range.size(); ++i)
            array.usages.push_back(static_cast<Usage>(range.first + i));
    while (array.usages.size() < element.count) // the last usage repeats
        array.usages.push_back(array.usages.back());
    const auto& inputs = m_map.elements[index].byIndex;
    for (std::size_t i = 0; i < array.usages.size(); ++i) {
        const auto shown = mapKey(node, array.usages[i]);
        array.shown.push_back(shown);
        if (shown && i < inputs.size())
            add(node, m_shown[*shown].code, inputs[i]);
        if (shown && i >= inputs.size())
            m_deviations.insert(deviation::kUnusedUsages);
    }
    m_arrays[index] = std::move(array);
}

void KernelView::take(const ReportValues& values, std::span<const std::uint8_t> data,
                      const std::vector<InputState>& states) {
    for (const ElementValue& value : values.elements) {
        Variable& variable = m_variables.at(value.element);
        if (!variable.shown.empty())
            takeVariable(variable, value.raw, states[variable.input]);
    }
    for (const ArrayValue& value : values.arrays)
        takeArray(m_arrays.at(value.element), data);
    for (ShownControl& shown : m_shown) {
        if (shown.code.first != EV_KEY || shown.inputs.empty())
            continue;
        shown.ours.reset();
        for (const std::uint16_t input : shown.inputs)
            if (states[input].isKnown)
                shown.ours = std::max(shown.ours.value_or(0), states[input].raw);
    }
}

/// hidinput_hid_event(): null states are ignored; what is out of range is clamped, where there is a range; an absolute
/// value that is then as the one sent before is ignored.
void KernelView::takeVariable(Variable& variable, std::int64_t raw, const InputState& state) {
    const InputElement& element = elementAt(variable.element);
    if (element.usage == usage::kHatSwitch && !element.isRelative) {
        takeHat(variable, raw, state);
        return;
    }
    const std::int64_t before = std::exchange(variable.raw, static_cast<std::int32_t>(raw));
    std::int64_t value = variable.raw;
    bool isIgnored = false;
    if (variable.range.lowest < variable.range.highest) {
        value = std::clamp<std::int64_t>(value, variable.range.lowest, variable.range.highest);
        isIgnored = element.hasNull && value != variable.raw;
    }
    isIgnored |= !element.isRelative && value == before;
    for (const std::size_t index : variable.shown) {
        ShownControl& shown = m_shown[index];
        if (state.isKnown)
            shown.ours = state.raw;
        if (isIgnored)
            continue;
        if (shown.code.first == EV_REL)
            shown.expected += shown.code.second == REL_WHEEL_HI_RES ? value * kNotches : value;
        else
            shown.expected = shown.code.first == EV_KEY ? value != 0 : value;
    }
}

void KernelView::takeHat(const Variable& variable, std::int64_t raw, const InputState& state) {
    const auto lowest = static_cast<std::int8_t>(variable.range.lowest);
    const auto highest = static_cast<std::int8_t>(variable.range.highest);
    const std::int64_t direction = (raw - lowest) * 8 / (highest - lowest + 1) + 1;
    const bool isReleased = direction < 1 || direction > 8;
    const auto [x, y] = isReleased ? std::pair(0, 0) : kDirections[direction - 1];
    const auto [ourX, ourY] =
        state.isNull ? std::pair(0, 0) : directionOf(m_decoder.inputs()[variable.input], state.raw);
    m_shown[variable.shown[0]].expected = x;
    m_shown[variable.shown[1]].expected = y;
    m_shown[variable.shown[0]].ours = ourX;
    m_shown[variable.shown[1]].ours = ourY;
}

/// hid_input_array_field(): what was asserted before and is no more goes up, what is newly asserted goes down, slot by
/// slot.
void KernelView::takeArray(Array& array, std::span<const std::uint8_t> data) {
    const InputElement& element = elementAt(array.element);
    const auto indexOf = [&](std::int64_t raw) -> std::optional<std::size_t> {
        const bool isValid = raw >= element.lowest && raw <= element.highest &&
                             std::uint64_t(raw - element.lowest) < array.usages.size();
        return isValid ? std::optional(static_cast<std::size_t>(raw - element.lowest)) : std::nullopt;
    };
    std::vector<std::int64_t> slots;
    for (std::uint32_t i = 0; i < element.count; ++i)
        slots.push_back(extractBits(data, element.bit + i * element.size, element.size, element.isSigned()));
    const bool isRollOver = std::any_of(slots.begin(), slots.end(), [&](std::int64_t raw) {
        const auto index = indexOf(raw);
        return index && array.usages[*index] == (Usage(usage::kKeyboardPage) << 16 | kErrorRollOver);
    });
    const auto set = [&](std::int64_t raw, const std::vector<std::int64_t>& others, int value) {
        const auto index = indexOf(raw);
        if (!index || std::find(others.begin(), others.end(), raw) != others.end() || !array.shown[*index])
            return;
        m_shown[*array.shown[*index]].expected = value;
    };
    for (std::size_t i = 0; i < slots.size() && !isRollOver; ++i) {
        set(array.slots[i], slots, 0);
        set(slots[i], array.slots, 1);
    }
    array.hasChanged |= slots != array.slots;
    for (const auto& index : array.shown) {
        if (!index)
            continue;
        ShownControl& shown = m_shown[*index];
        shown.whyNow = isRollOver ? deviation::kRollOver : array.hasChanged ? nullptr : deviation::kFirstZero;
    }
    if (!isRollOver)
        array.slots = slots;
}
