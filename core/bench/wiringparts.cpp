#include "bench/wiringparts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <map>
#include <set>

#include "rig/axisfilter.h"
#include "rig/input.h"

namespace flowhand {

namespace {

bool isClosed(const InputWatch& watch, InputPlace place, const StandingInput& standing) {
    return !standing.isNull && std::llround(standing.raw) != watch.info(place).lowest;
}

/// Every input of a kind that has said anything in any stage.
std::set<InputPlace> placesOf(InputKind kind, const InputWatch& watch, const std::vector<StageResult>& stages) {
    std::set<InputPlace> places;
    for (const StageResult& stage : stages)
        for (const auto& [place, standing] : stage.standing)
            if (watch.info(place).kind == kind)
                places.insert(place);
    return places;
}

std::vector<InputPlace> movedOf(InputKind kind, const InputWatch& watch, const std::vector<StageResult>& stages) {
    std::vector<InputPlace> moved;
    for (const InputPlace place : placesOf(kind, watch, stages)) {
        const StandingInput* before = nullptr;
        bool isMoved = false;
        for (const StageResult& stage : stages) {
            const auto standing = stage.standing.find(place);
            if (standing == stage.standing.end())
                continue;
            isMoved = isMoved || (before != nullptr && watch.isMoved(place, *before, standing->second));
            before = &standing->second;
        }
        if (isMoved)
            moved.push_back(place);
    }
    return moved;
}

} // namespace

std::vector<FoundInput> movedAxes(const InputWatch& watch, const std::vector<StageResult>& stages) {
    std::vector<FoundInput> found;
    for (const InputPlace place : movedOf(InputKind::Axis, watch, stages)) {
        double low = 0.0;
        double high = 0.0;
        bool isFirst = true;
        for (const StageResult& stage : stages) {
            const auto standing = stage.standing.find(place);
            if (standing == stage.standing.end())
                continue;
            low = isFirst ? standing->second.raw : std::min(low, standing->second.raw);
            high = isFirst ? standing->second.raw : std::max(high, standing->second.raw);
            isFirst = false;
        }
        found.push_back({place, high - low, std::max(watch.sigma(place), kRoundingNoise)});
    }
    std::stable_sort(found.begin(), found.end(), [](const FoundInput& a, const FoundInput& b) {
        return a.score() > b.score();
    });
    return found;
}

std::vector<ContactStates> movedContacts(const InputWatch& watch, const std::vector<StageResult>& stages) {
    std::vector<ContactStates> contacts;
    for (const InputPlace place : placesOf(InputKind::Button, watch, stages)) {
        ContactStates states{place, {}};
        bool isHeard = false;
        bool isMoved = false;
        for (const StageResult& stage : stages) {
            const auto standing = stage.standing.find(place);
            const bool closed = standing != stage.standing.end() && isClosed(watch, place, standing->second);
            // What a contact was before its device first spoke is not known: it did not move by speaking.
            isMoved = isMoved || (isHeard && closed != states.closed.back());
            isHeard = isHeard || standing != stage.standing.end();
            states.closed.push_back(closed);
        }
        if (isMoved)
            contacts.push_back(std::move(states));
    }
    return contacts;
}

std::vector<InputPlace> movedWheels(const InputWatch& watch, const std::vector<StageResult>& stages) {
    return movedOf(InputKind::Relative, watch, stages);
}

std::vector<InputPlace> movedHats(const InputWatch& watch, const std::vector<StageResult>& stages) {
    return movedOf(InputKind::Hat, watch, stages);
}

std::vector<InputPlace> pulsesIn(const InputWatch& watch, const StageResult& stage) {
    std::map<InputPlace, std::size_t> counts;
    for (const InputEvent& event : stage.events)
        if (watch.info(event.place).kind == InputKind::Button)
            ++counts[event.place];
    std::vector<InputPlace> places;
    for (const auto& [place, count] : counts)
        if (count >= 2)
            places.push_back(place);
    return places;
}

std::int64_t rawAt(const std::vector<StageResult>& stages, std::size_t stage, InputPlace place) {
    for (; stage < stages.size(); ++stage) {
        const auto standing = stages[stage].standing.find(place);
        if (standing != stages[stage].standing.end())
            return std::llround(standing->second.raw);
    }
    return 0;
}

int hatEighth(const InputInfo& info, const StandingInput& standing) {
    Reading reading;
    reading.raw = std::llround(standing.raw);
    reading.isNull = standing.isNull;
    InputRef ref;
    ref.use = InputUse::Hat;
    return static_cast<int>(meaningOf(reading, ref, info).value_or(kHatReleased));
}

std::string hatKey(int eighth) {
    static constexpr std::array<const char*, kHatEighths> kKeys = {"up",   "up_right",  "right", "down_right",
                                                                   "down", "down_left", "left",  "up_left"};
    return eighth < 0 ? "released" : kKeys[static_cast<std::size_t>(eighth)];
}

unsigned fromGray(unsigned code) {
    unsigned number = 0;
    for (; code != 0; code >>= 1)
        number ^= code;
    return number;
}

std::string quoted(const std::string& text) {
    std::string result = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            result += '\\';
            result += c;
        } else if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) {
            char escaped[8];
            std::snprintf(escaped, sizeof escaped, "\\u%04X", static_cast<unsigned>(c));
            result += escaped;
        } else {
            result += c;
        }
    }
    return result + "\"";
}

std::string rangeLine(std::int64_t from, std::int64_t to) {
    return "range = [" + std::to_string(from) + ", " + std::to_string(to) + "]\n";
}

std::string noiseLine(double sigma) {
    if (sigma <= kRoundingNoise)
        return {};
    char text[40];
    std::snprintf(text, sizeof text, "noise = %.2f\n", std::ceil(sigma * 100) / 100);
    return text;
}

} // namespace flowhand
