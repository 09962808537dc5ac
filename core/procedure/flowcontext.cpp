#include "procedure/flowcontext.h"

#include <algorithm>

#include "base/names.h"

namespace flowhand {

namespace {

constexpr std::string_view kAircraftPrefix = "aircraft.";
constexpr int kMostWeight = 3;

std::vector<std::string> namesOf(const std::vector<Signal>& all, std::size_t count) {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < count; ++i)
        names.push_back(all[i].name);
    return names;
}

} // namespace

std::optional<PlacedCondition> FlowContext::condition(TomlReader& reader, std::string_view key) {
    if (!reader.text(key))
        return std::nullopt;
    return compile(*reader.node(key));
}

std::optional<PlacedCondition> FlowContext::requiredCondition(TomlReader& reader, std::string_view key) {
    (void)reader.requiredText(key);
    const TomlNode* node = reader.node(key);
    return node != nullptr && node->kind == TomlNode::Kind::Text ? compile(*node) : std::nullopt;
}

std::optional<PlacedCondition> FlowContext::compile(const TomlNode& text) {
    std::vector<ConditionProblem> found;
    std::optional<Condition> condition = Condition::compile(text.text, m_aircraft.scope(), found);
    for (ConditionProblem& problem : found)
        m_problems.add(problem.isWarning ? Severity::Warning : Severity::Error,
                       {std::move(problem.code), std::move(problem.message), m_file.placeInText(text, problem.offset)});
    return condition ? std::optional(PlacedCondition{std::move(*condition), text.place}) : std::nullopt;
}

std::optional<PlacedCondition> FlowContext::compile(const std::string& text, const SourcePlace& place) {
    std::vector<ConditionProblem> found;
    std::optional<Condition> condition = Condition::compile(text, m_aircraft.scope(), found);
    for (ConditionProblem& problem : found)
        m_problems.add(problem.isWarning ? Severity::Warning : Severity::Error,
                       {std::move(problem.code), std::move(problem.message), place});
    return condition ? std::optional(PlacedCondition{std::move(*condition), place}) : std::nullopt;
}

std::optional<SignalId> FlowContext::signal(const std::string& name, const SourcePlace& place) {
    const std::optional<SignalId> id = m_aircraft.signals.find(name);
    if (!id)
        m_problems.error("unknown-signal",
                         "the aircraft has no signal '" + name + "'" +
                             nearestHint(name, namesOf(m_aircraft.signals.all(), m_aircraft.signals.size())),
                         place);
    return id;
}

std::optional<SignalId> FlowContext::control(const std::string& name, const SourcePlace& place) {
    const std::optional<SignalId> id = m_aircraft.signals.find(name);
    if (id && m_aircraft.isControl(*id))
        return id;
    m_problems.error("unknown-control",
                     id ? "'" + name + "' tells how the aircraft moves; it is no control a hand can move"
                        : "the aircraft has no control '" + name + "'" +
                              nearestHint(name, namesOf(m_aircraft.signals.all(), m_aircraft.controls.size())),
                     place);
    return std::nullopt;
}

std::string FlowContext::seat(TomlReader& reader, std::string_view key, const std::string& fallback) {
    const std::optional<std::string> seat = reader.text(key);
    if (!seat)
        return fallback;
    const std::vector<std::string>& seats = m_aircraft.seats;
    if (std::find(seats.begin(), seats.end(), *seat) == seats.end())
        m_problems.error("unknown-seat",
                         "the aircraft has no seat '" + *seat + "'; it has " + joined(seats, ", ") +
                             nearestHint(*seat, seats),
                         reader.placeOf(key));
    return *seat;
}

std::optional<Value> FlowContext::value(const Signal& signal, const TomlNode& text) {
    if (text.kind != TomlNode::Kind::Text) {
        m_problems.error("wrong-type", "a value of " + signal.name + " is written in quotes", text.place);
        return std::nullopt;
    }
    Result<Value> value = Value::unknown();
    if (signal.kind == SignalKind::Number) {
        value = sum(signal, text.text).map([](double number) {
            return Value::number(number);
        });
    } else if (std::string_view(text.text).substr(0, kAircraftPrefix.size()) == kAircraftPrefix) {
        value = aircraftValue(text.text.substr(kAircraftPrefix.size())).and_then([&](const AircraftValue& named) {
            return parseValue(signal, named.isWord ? named.word : text.text);
        });
    } else {
        value = parseValue(signal, text.text);
    }
    if (value)
        return *value;
    m_problems.error(value.error().code, value.error().message, text.place);
    return std::nullopt;
}

int FlowContext::weight(TomlReader& reader) {
    const std::int64_t weight = reader.integer("weight").value_or(1);
    if (weight >= 1 && weight <= kMostWeight)
        return static_cast<int>(weight);
    m_problems.error("bad-value",
                     "the weight is " + std::to_string(weight) + "; write 1 (normal), 2 (important) or 3 (critical)",
                     reader.placeOf("weight"));
    return 1;
}

Result<double> FlowContext::sum(const Signal& signal, std::string_view text) const {
    double total = 0.0;
    double sign = 1.0;
    while (true) {
        const std::size_t end = std::min(text.find(" + "), text.find(" - "));
        const Result<double> next = term(signal, text.substr(0, end));
        if (!next)
            return next;
        total += sign * *next;
        if (end == std::string_view::npos)
            return total;
        sign = text[end + 1] == '+' ? 1.0 : -1.0;
        text.remove_prefix(end + 3);
    }
}

Result<double> FlowContext::term(const Signal& signal, std::string_view text) const {
    if (text.substr(0, kAircraftPrefix.size()) != kAircraftPrefix)
        return parseValue(signal, text).map([](Value value) {
            return value.number();
        });
    const Result<AircraftValue> named = aircraftValue(text.substr(kAircraftPrefix.size()));
    if (!named)
        return tl::unexpected(named.error());
    if (named->isWord || named->unit.dimension != signal.unit.dimension)
        return failure("wrong-unit", "'" + std::string(text) + "' is no value of " + signal.name + ", which is in " +
                                         (signal.unit.symbol.empty() ? "bare numbers" : signal.unit.symbol));
    return convert(named->number, named->unit, signal.unit);
}

Result<AircraftValue> FlowContext::aircraftValue(std::string_view name) const {
    const auto found = m_aircraft.values.find(name);
    if (found != m_aircraft.values.end())
        return found->second;
    if (m_aircraft.signals.find(std::string(kAircraftPrefix) + std::string(name)))
        return failure("moving-value", "'aircraft." + std::string(name) +
                                           "' is worked out while flying, for mass, flap, wind and surface, but what "
                                           "stands here is fixed when the flow is read; write a number with its unit, "
                                           "or use it in a condition");
    std::vector<std::string> known;
    for (const auto& [key, value] : m_aircraft.values)
        known.push_back(key);
    return failure("unknown-value",
                   "the aircraft file has no value '" + std::string(name) + "'" + nearestHint(name, known));
}

} // namespace flowhand
