#include "device/wishes.h"

#include <algorithm>
#include <charconv>
#include <cstdio>
#include <set>

#include "base/names.h"

namespace flowhand {

namespace {

bool isSpecific(const DeviceWish& wish) {
    return !wish.serial.empty() || !wish.port.empty();
}

bool hasId(const DeviceInfo& unit, const DeviceWish& wish) {
    return unit.vendor == wish.vendor && unit.product == wish.product;
}

bool answers(const DeviceInfo& unit, const DeviceWish& wish) {
    return hasId(unit, wish) && (wish.serial.empty() || wish.serial == unit.serial) &&
           (wish.port.empty() || wish.port == unit.port);
}

bool isSameUnit(const DeviceInfo& a, const DeviceInfo& b) {
    return a.serial == b.serial && (a.port == b.port || !a.serial.empty());
}

std::string portText(const DeviceInfo& unit) {
    return unit.port.empty() ? "an unknown port" : "port " + unit.port;
}

using Units = std::vector<const DeviceInfo*>;

void keepKnown(Units& candidates, const std::optional<DeviceInfo>& known) {
    if (!known || candidates.size() < 2)
        return;
    Units same;
    std::copy_if(candidates.begin(), candidates.end(), std::back_inserter(same), [&](const DeviceInfo* unit) {
        return isSameUnit(*unit, *known);
    });
    // Interfaces of one composite unit share its serial; the port tells them apart
    if (same.size() > 1)
        same.erase(std::remove_if(same.begin(), same.end(),
                                  [&](const DeviceInfo* unit) {
                                      return unit->port != known->port;
                                  }),
                   same.end());
    if (!same.empty())
        candidates = same;
}

void keepControls(Units& candidates) {
    const auto isOther = [](const DeviceInfo* unit) {
        return unit->deviceClass != DeviceClass::Controls;
    };
    if (!std::all_of(candidates.begin(), candidates.end(), isOther))
        candidates.erase(std::remove_if(candidates.begin(), candidates.end(), isOther), candidates.end());
}

Error whySeveral(const DeviceWish& wish, const Units& candidates) {
    std::vector<std::string> ports;
    for (const DeviceInfo* unit : candidates)
        ports.push_back(portText(*unit) + (unit->serial.empty() ? "" : ", serial " + unit->serial));
    return {"equal-units",
            std::to_string(candidates.size()) + " equal units answer to " + wishText(wish) + ": at " +
                joined(ports, "; at ") +
                "; name the one you mean by 'port' or 'serial' in the rig file; 'flowhand devices --identify' tells "
                "which is which",
            wish.place};
}

Error whyNone(const DeviceWish& wish, const std::vector<DeviceInfo>& connected, const std::set<std::string>& taken) {
    for (const DeviceInfo& unit : connected)
        if (!wish.port.empty() && hasId(unit, wish) && taken.count(unit.path) == 0 &&
            (wish.serial.empty() || wish.serial == unit.serial))
            return {"moved-port",
                    wishText(wish) + " should be at port " + wish.port + ", but is at " + portText(unit) +
                        ": plug it back, or change the port in the rig file",
                    wish.place};
    return {"device-missing", notPluggedIn(wish).english(), wish.place};
}

} // namespace

std::string idText(std::uint16_t vendor, std::uint16_t product) {
    char text[16];
    std::snprintf(text, sizeof text, "%04X:%04X", vendor, product);
    return text;
}

std::optional<std::pair<std::uint16_t, std::uint16_t>> parseIdText(std::string_view text) {
    std::pair<std::uint16_t, std::uint16_t> id;
    if (text.size() != 9 || text[4] != ':')
        return std::nullopt;
    const auto read = [&](std::size_t at, std::uint16_t& number) {
        const auto [end, problem] = std::from_chars(text.data() + at, text.data() + at + 4, number, 16);
        return problem == std::errc() && end == text.data() + at + 4;
    };
    return read(0, id.first) && read(5, id.second) ? std::optional(id) : std::nullopt;
}

std::string wishText(const DeviceWish& wish) {
    const std::string id = idText(wish.vendor, wish.product);
    return wish.name.empty() ? "device " + id : "'" + wish.name + "' (" + id + ")";
}

Phrase notPluggedIn(const DeviceWish& wish) {
    return wish.serial.empty()
               ? phrase("{1} is not plugged in: plug it in").with(wishText(wish))
               : phrase("{1} with serial {2} is not plugged in: plug it in").with(wishText(wish), wish.serial);
}

Status checkWishes(const std::vector<DeviceWish>& wishes) {
    for (std::size_t i = 0; i < wishes.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const DeviceWish& a = wishes[j];
            const DeviceWish& b = wishes[i];
            if (a.vendor == b.vendor && a.product == b.product && a.serial == b.serial && a.port == b.port)
                return failure("equal-units",
                               wishText(a) + " and " + wishText(b) +
                                   " cannot be told apart: give each its 'port' or 'serial' in the rig file; "
                                   "'flowhand devices --identify' tells which is which",
                               b.place);
        }
    }
    return {};
}

std::vector<WishMatch> matchWishes(const std::vector<DeviceWish>& wishes, const std::vector<DeviceInfo>& connected,
                                   const std::vector<std::optional<DeviceInfo>>& known) {
    std::vector<WishMatch> matches(wishes.size());
    std::set<std::string> taken; // paths
    const auto match = [&](std::size_t i) {
        Units candidates;
        for (const DeviceInfo& unit : connected)
            if (answers(unit, wishes[i]) && taken.count(unit.path) == 0)
                candidates.push_back(&unit);
        keepControls(candidates);
        keepKnown(candidates, known[i]);
        if (candidates.size() == 1) {
            matches[i].unit = *candidates.front();
            taken.insert(candidates.front()->path);
        } else {
            matches[i].why =
                candidates.empty() ? whyNone(wishes[i], connected, taken) : whySeveral(wishes[i], candidates);
        }
    };
    for (const bool specific : {true, false})
        for (std::size_t i = 0; i < wishes.size(); ++i)
            if (isSpecific(wishes[i]) == specific)
                match(i);
    return matches;
}

} // namespace flowhand
