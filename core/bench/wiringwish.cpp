#include "bench/wiringwish.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "base/names.h"
#include "base/valuewords.h"
#include "bench/listtext.h"

namespace flowhand {

namespace {

struct WayName {
    std::string_view name;
    WiringWay way;
    std::size_t signals; ///< that it makes; 0: any number
};
constexpr std::array<WayName, 11> kWays = {{{"split_axis", WiringWay::SplitAxis, 2},
                                            {"switched_axis", WiringWay::SwitchedAxis, 2},
                                            {"twist", WiringWay::Twist, 1},
                                            {"difference", WiringWay::Difference, 1},
                                            {"max", WiringWay::Max, 1},
                                            {"split", WiringWay::Split, 1},
                                            {"zones", WiringWay::Zones, 1},
                                            {"encoder", WiringWay::Encoder, 1},
                                            {"step_buttons", WiringWay::StepButtons, 1},
                                            {"relative_wheel", WiringWay::RelativeWheel, 1},
                                            {"parking_latch", WiringWay::ParkingLatch, 1}}};

Result<SignalId> controlNamed(const std::string& name, const Aircraft& aircraft) {
    const std::optional<SignalId> id = aircraft.signals.find(name);
    if (id && aircraft.isControl(*id))
        return *id;
    std::vector<std::string> known;
    for (const CockpitControl& control : aircraft.controls)
        known.push_back(aircraft.signals[control.signal].name);
    return failure("unknown-signal", "this aircraft has no control '" + name + "'" + nearestHint(name, known));
}

std::string zonesExample(const Signal& signal) {
    if (signal.kind == SignalKind::Position)
        return joined(signal.positions, ", ");
    std::vector<std::string> zones;
    for (const double share : {0.0, 0.5, 1.0})
        zones.push_back(valueText(signal, Value::number(signal.lowest + share * (signal.highest - signal.lowest))));
    return joined(zones, ", ");
}

/// What stands behind the colon.
BenchStatus readArguments(const std::string& text, const Aircraft& aircraft, WiringWish& wish) {
    const Signal& signal = aircraft.signals[wish.signals.front()];
    const bool counts =
        wish.way == WiringWay::Encoder || wish.way == WiringWay::StepButtons || wish.way == WiringWay::RelativeWheel;
    if (wish.way == WiringWay::Zones) {
        for (const std::string& part : parted(text, ',')) {
            const Result<Value> value = parseValue(signal, part);
            if (!value)
                return tl::unexpected<BenchError>(
                    {value.error(), phrase("“{1}” is no value of it; as in {2}").with(part, zonesExample(signal))});
            wish.zones.push_back(*value);
        }
        if (wish.zones.size() < 2)
            return benchFailure("bad-value",
                                phrase("zones need their values: {1}=zones:0 %,50 %,100 %").with(signal.name));
    } else if (counts && signal.kind == SignalKind::Number) {
        const Result<Value> value = parseValue(signal, text);
        if (!value || value->number() <= 0)
            return benchFailure("bad-value", phrase("say how much one click or press is: {1}=encoder:0.1 {2}")
                                                 .with(signal.name, signal.unit.symbol));
        wish.step = text;
    } else if (!text.empty()) {
        return failure("bad-value", "nothing can stand behind the colon here: '" + text + "'");
    }
    return {};
}

/// Of the ways that are asked for by name; none for the others.
std::vector<WiringStage> specialStages(WiringWay way, const Phrase& name, const std::vector<std::string>& labels) {
    const std::string& first = labels.front();
    const std::string& second = labels.back();
    switch (way) {
    case WiringWay::SplitAxis:
        return {{phrase("Put the lever of {1} at idle, hands off.").with(name)},
                {phrase("Move it to the far end of {1} and hold it.").with(first)},
                {phrase("Move it to the far end of {1} and hold it.").with(second)},
                {phrase("Back to idle.")}};
    case WiringWay::SwitchedAxis:
        return {{phrase("Lever of {1} at its low end, its switch at {2}, hands off.").with(name, first)},
                {phrase("Move the lever to its high end and hold it.")},
                {phrase("Move the lever back to its low end.")},
                {phrase("Now move the switch to {1} and hold it.").with(second)},
                {phrase("Move the switch back to {1}.").with(first)}};
    case WiringWay::Twist:
        return {{phrase("Leave the stick of {1} alone, hands off.").with(name)},
                {phrase("Twist it fully to the left (or low) side and hold it.")},
                {phrase("Twist it fully to the right (or high) side and hold it.")},
                {phrase("Let it spring back.")},
                {phrase("Push the stick fully to one side without twisting it, and hold it.")},
                {phrase("Let go.")},
                {phrase("Pull the stick fully towards you without twisting it, and hold it.")},
                {phrase("Let go.")}};
    case WiringWay::Difference:
    case WiringWay::Split:
        return {{phrase("Leave both axes of {1} at rest, hands and feet off.").with(name)},
                {phrase("Press the one for the left (or low) side fully and hold it.")},
                {phrase("Let go.")},
                {phrase("Press the one for the right (or high) side fully and hold it.")},
                {phrase("Let go.")}};
    case WiringWay::Max:
        return {{phrase("Leave both axes of {1} at rest, hands and feet off.").with(name)},
                {phrase("Press the first one fully and hold it.")},
                {phrase("Let go.")},
                {phrase("Press the second one fully and hold it.")},
                {phrase("Let go.")}};
    case WiringWay::Encoder:
        return {{phrase("Leave {1} alone.").with(name)},
                {phrase("Turn {1} by four clicks to the high side.").with(name)}};
    case WiringWay::RelativeWheel:
        return {{phrase("Leave {1} alone.").with(name)},
                {phrase("Turn {1} to the high side, as far as once round.").with(name)}};
    case WiringWay::StepButtons:
        return {{phrase("Leave {1} alone.").with(name)},
                {phrase("Press the button for more of {1} and hold it.").with(name)},
                {phrase("Let go.")},
                {phrase("Press the button for less and hold it.")},
                {phrase("Let go.")}};
    case WiringWay::ParkingLatch:
        return {{phrase("Leave the pedals and the pull of {1} alone.").with(name)},
                {phrase("Press both pedals (or the one there is) fully and hold them.")},
                {phrase("Let go of the pedals.")},
                {phrase("Pull the handle of {1} and hold it.").with(name)},
                {phrase("Let go.")}};
    case WiringWay::Zones:
    case WiringWay::Found:
        break;
    }
    return {};
}

/// Whether one input can say both.
bool isAlike(const Signal& a, const Signal& b) {
    return a.kind == b.kind && a.unit.symbol == b.unit.symbol && a.positions == b.positions;
}

/// About a hundredth of the range.
std::string stepExample(const Signal& signal) {
    return valueText(signal, Value::number(signal.highest - signal.lowest > 50 ? 1.0 : 0.1));
}

} // namespace

Phrase allOf(const std::vector<std::string>& labels) {
    Phrase all = labels.front();
    for (std::size_t i = 1; i < labels.size(); ++i)
        all = phrase("{1} and {2}").with(std::move(all), labels[i]);
    return all;
}

bool hasCentre(const Signal& signal) {
    return signal.kind == SignalKind::Number && signal.lowest < 0 && signal.highest > 0;
}

BenchResult<WiringWish> parseWiringWish(std::string_view text, const Aircraft& aircraft) {
    WiringWish wish;
    const std::size_t equals = text.find('=');
    for (const std::string& name : parted(text.substr(0, equals), '+')) {
        const Result<SignalId> id = controlNamed(name, aircraft);
        if (!id)
            return tl::unexpected<BenchError>(id.error());
        wish.signals.push_back(*id);
    }
    std::string arguments;
    if (equals != std::string_view::npos) {
        const std::string_view rest = text.substr(equals + 1);
        const std::string name = trimmed(rest.substr(0, rest.find(':')));
        const auto way = std::find_if(kWays.begin(), kWays.end(), [&](const WayName& candidate) {
            return candidate.name == name;
        });
        if (way == kWays.end()) {
            std::vector<std::string> known;
            for (const WayName& candidate : kWays)
                known.emplace_back(candidate.name);
            return failure("unknown-wiring", "there is no '" + name + "' to ask for" + nearestHint(name, known) +
                                                 " There are " + joined(known, ", ") +
                                                 "; everything else is found without asking");
        }
        if (way->signals != wish.signals.size())
            return failure("wrong-signals", "'" + name + "' makes " + std::to_string(way->signals) + " signal" +
                                                (way->signals == 1 ? "" : "s") + ", not " +
                                                std::to_string(wish.signals.size()));
        wish.way = way->way;
        if (const std::size_t colon = rest.find(':'); colon != std::string_view::npos)
            arguments = trimmed(rest.substr(colon + 1));
    }
    if (const BenchStatus status = readArguments(arguments, aircraft, wish); !status)
        return tl::unexpected(status.error());
    return wish;
}

std::vector<WiringOffer> wiringOffers(SignalId id, const Aircraft& aircraft) {
    const Signal& signal = aircraft.signals[id];
    const bool isNumber = signal.kind == SignalKind::Number;
    std::vector<SignalId> alike;
    for (const CockpitControl& control : aircraft.controls)
        if (control.signal != id && isAlike(signal, aircraft.signals[control.signal]))
            alike.push_back(control.signal);
    std::vector<WiringOffer> offers;
    if (!alike.empty())
        offers.push_back({"", phrase("One lever or switch of mine is for two controls"), alike, ""});
    if (isNumber && !alike.empty()) {
        offers.push_back(
            {"split_axis", phrase("One lever: above idle it is this control, below idle another"), alike, ""});
        offers.push_back(
            {"switched_axis", phrase("One lever, and a switch that says which of two controls it is"), alike, ""});
    }
    if (isNumber && hasCentre(signal)) {
        offers.push_back({"difference", phrase("Two pedals or levers: one less the other"), {}, ""});
        offers.push_back({"split", phrase("Two axes: one for the low side, one for the high side"), {}, ""});
    }
    if (isNumber)
        offers.push_back({"max", phrase("Two axes, as of two seats: whichever is moved further"), {}, ""});
    if (signal.kind != SignalKind::OnOff) {
        offers.push_back(
            {"zones", phrase("A lever made of contacts, with these values in turn"), {}, zonesExample(signal)});
        const std::string step = isNumber ? stepExample(signal) : std::string();
        offers.push_back({"encoder", phrase("A knob without end stops that clicks, on two contacts"), {}, step});
        offers.push_back({"step_buttons", phrase("A button for more and one for less"), {}, step});
        offers.push_back({"relative_wheel", phrase("A wheel whose card counts by itself"), {}, step});
    } else if (aircraft.control(id).kind != ControlKind::Button) {
        offers.push_back(
            {"parking_latch", phrase("Both toe brakes and a handle that is pulled, as a parking brake"), {}, ""});
    }
    return offers;
}

std::string wishText(const WiringOffer& offer, SignalId signal, SignalId other, const std::string& words,
                     const SignalTable& signals) {
    std::string text = signals[signal].name;
    if (!offer.others.empty())
        text += "+" + signals[other].name;
    if (!offer.name.empty())
        text += "=" + offer.name;
    return offer.example.empty() ? text : text + ":" + words;
}

std::vector<WiringStage> stagesOf(const WiringWish& wish, const Aircraft& aircraft) {
    const Signal& signal = aircraft.signals[wish.signals.front()];
    std::vector<std::string> labels;
    for (const SignalId id : wish.signals)
        labels.push_back(aircraft.signals[id].label);
    const Phrase name = allOf(labels);
    std::vector<WiringStage> stages = specialStages(wish.way, name, labels);
    if (!stages.empty())
        return stages;
    std::vector<Phrase> places;
    if (wish.way == WiringWay::Zones) {
        for (const Value& zone : wish.zones)
            places.push_back(valueWords(signal, zone));
    } else if (signal.kind == SignalKind::Position) {
        places.assign(signal.positions.begin(), signal.positions.end());
    } else if (signal.kind == SignalKind::OnOff) {
        places = {phrase("off"), phrase("on")};
    } else if (hasCentre(signal)) {
        places = {phrase("its centre"),
                  phrase("its low end ({1})").with(valueText(signal, Value::number(signal.lowest))),
                  phrase("its high end ({1})").with(valueText(signal, Value::number(signal.highest)))};
    } else {
        places = {phrase("its low end"), phrase("its high end")};
    }
    for (const Phrase& place : places)
        stages.push_back(
            {(stages.empty() ? phrase("Put {1} to {2}, hands off.") : phrase("Move {1} to {2} and hold it."))
                 .with(name, place)});
    stages.push_back({phrase("Back to {1}.").with(places.front())});
    return stages;
}

} // namespace flowhand
