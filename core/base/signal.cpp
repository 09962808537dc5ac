#include "base/signal.h"

#include <charconv>
#include <cmath>
#include <cstdio>

#include "base/names.h"

namespace flowhand {

Result<SignalId> SignalTable::add(Signal signal) {
    const SignalId id{static_cast<std::uint32_t>(m_signals.size())};
    const auto [at, isNew] = m_byName.emplace(signal.name, id);
    if (!isNew)
        return failure("duplicate-signal",
                       "the name '" + signal.name + "' is used twice; each control and signal needs its own");
    m_signals.push_back(std::move(signal));
    return id;
}

std::optional<SignalId> SignalTable::find(std::string_view name) const {
    const auto at = m_byName.find(std::string(name));
    return at == m_byName.end() ? std::nullopt : std::optional(at->second);
}

std::string numberText(double number) {
    const double size = std::fabs(number);
    const int decimals = size >= 20 ? 0 : size >= 1 ? 1 : 2;
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", decimals, number);
    std::string result = text;
    if (result.find('.') != std::string::npos) {
        while (result.back() == '0')
            result.pop_back();
        if (result.back() == '.')
            result.pop_back();
    }
    return result == "-0" ? "0" : result;
}

std::string valueText(const Signal& signal, Value value) {
    if (!value.isKnown())
        return "not known yet";
    switch (signal.kind) {
    case SignalKind::OnOff:
        return value.isOn() ? "on" : "off";
    case SignalKind::Position:
        if (value.position() < 0 || value.position() >= static_cast<int>(signal.positions.size()))
            return "between";
        return signal.positions[static_cast<std::size_t>(value.position())];
    case SignalKind::Number:
        break;
    }
    return numberText(value.number()) + (signal.unit.symbol.empty() ? "" : " " + signal.unit.symbol);
}

namespace {

Result<Value> parseNumber(const Signal& signal, std::string_view text) {
    double number = 0.0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), number);
    std::string_view symbol = text.substr(static_cast<std::size_t>(end - text.data()));
    while (!symbol.empty() && symbol.front() == ' ')
        symbol.remove_prefix(1);
    const std::optional<Unit> unit = findUnit(symbol);
    if (problem != std::errc() || !std::isfinite(number) || !unit || unit->dimension != signal.unit.dimension)
        return failure(
            "bad-value",
            "'" + std::string(text) + "' is not a value of " + signal.name + "; write a number" +
                (signal.unit.symbol.empty() ? "" : " and its unit, as in \"10 " + signal.unit.symbol + "\""));
    return Value::number(convert(number, *unit, signal.unit));
}

} // namespace

Result<Value> parseValue(const Signal& signal, std::string_view text) {
    switch (signal.kind) {
    case SignalKind::Number:
        return parseNumber(signal, text);
    case SignalKind::OnOff:
        if (text == "on" || text == "true")
            return Value::onOff(true);
        if (text == "off" || text == "false")
            return Value::onOff(false);
        return failure("bad-value",
                       "'" + std::string(text) + "' is not a value of " + signal.name + "; write on or off");
    case SignalKind::Position:
        break;
    }
    for (std::size_t i = 0; i < signal.positions.size(); ++i)
        if (signal.positions[i] == text)
            return Value::position(static_cast<int>(i));
    if (text == "between")
        return Value::between();
    return failure("bad-value", "'" + std::string(text) + "' is not a position of " + signal.name + "; it has " +
                                    joined(signal.positions, ", ") + nearestHint(text, signal.positions));
}

} // namespace flowhand
