#include "procedure/stepwriter.h"

#include <cctype>
#include <cmath>
#include <string>

namespace flowhand {

namespace {

/// Share of a lever's range that a hand on a home-built one hits without looking; our own choice.
constexpr double kRoom = 0.05;

/// A number as it stands in a condition: whole tenths.
std::string withUnit(double number, const Signal& signal) {
    const double tenths = std::round(number * 10.0) / 10.0;
    return numberText(tenths == 0.0 ? 0.0 : tenths) + (signal.unit.symbol.empty() ? "" : " " + signal.unit.symbol);
}

std::string numberCondition(const Signal& signal, double number) {
    const double room = kRoom * (signal.highest > signal.lowest ? signal.highest - signal.lowest : signal.scale);
    const bool isAtFoot = signal.highest > signal.lowest && number - room <= signal.lowest;
    const bool isAtTop = signal.highest > signal.lowest && number + room >= signal.highest;
    const std::string above = signal.name + " > " + withUnit(number - room, signal);
    const std::string below = signal.name + " < " + withUnit(number + room, signal);
    return isAtFoot ? below : isAtTop ? above : above + " and " + below;
}

std::string conditionOf(const Signal& signal, Value value) {
    switch (signal.kind) {
    case SignalKind::OnOff:
        return (value.isOn() ? "" : "not ") + signal.name;
    case SignalKind::Position:
        return signal.name + " == '" + signal.positions[static_cast<std::size_t>(value.position())] + "'";
    case SignalKind::Number:
        break;
    }
    return numberCondition(signal, value.number());
}

/// The title as an id that is not in the text yet.
std::string freeId(const std::string& title, std::string_view text) {
    std::string id;
    for (const char c : title)
        if (std::isalnum(static_cast<unsigned char>(c)) != 0)
            id += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        else if (!id.empty() && id.back() != '_')
            id += '_';
    if (!id.empty() && id.back() == '_')
        id.pop_back();
    std::string free = id;
    for (int number = 2; text.find("\"" + free + "\"") != std::string_view::npos; ++number)
        free = id + "_" + std::to_string(number);
    return free;
}

} // namespace

std::string stepTitle(const Signal& signal, Value value) {
    const std::string state = valueText(signal, value);
    return signal.kind == SignalKind::OnOff ? signal.label + " " + state : signal.label + " to " + state;
}

std::string stepText(const Aircraft& aircraft, SignalId control, Value value, std::string_view text) {
    const Signal& signal = aircraft.signals[control];
    const std::string title = stepTitle(signal, value);
    return "[[step]]\nid = \"" + freeId(title, text) + "\"\ntitle = \"" + title + "\"\ndone = \"" +
           conditionOf(signal, value) + "\"\nwithin = \"5 s\"\nwhy = \"Say in one line what it is for.\"\n";
}

} // namespace flowhand
