#include "report/eventlines.h"

#include <nlohmann/json.hpp>
#include <string_view>

#include "base/phrasejson.h"
#include "base/wholenumber.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

/// No run is longer; a time beyond it is damage.
constexpr Time kLongest = std::chrono::hours(24 * 365);

std::optional<EventKind> findKind(std::string_view name) {
    for (int i = 0; i <= static_cast<int>(EventKind::RunEnded); ++i)
        if (nameOf(static_cast<EventKind>(i)) == name)
            return static_cast<EventKind>(i);
    return std::nullopt;
}

/// Reads the members; false when one of them means nothing here.
class EventReader {
public:
    EventReader(const Json& json, const Aircraft& aircraft, const Flow& flow)
        : m_json(json), m_aircraft(aircraft), m_flow(flow) {}

    bool read(Event& event) {
        const std::optional<EventKind> kind = findKind(m_json.at("event").get<std::string>());
        if (!kind)
            return false;
        event.kind = *kind;
        event.time = Time(wholeNumber<std::int64_t>(m_json.at("time_ns")));
        if (event.time < -kLongest || event.time > kLongest)
            return false;
        if (m_json.contains("guard"))
            event.guard = wholeNumber<int>(m_json.at("guard"));
        if (m_json.contains("control"))
            event.control = ControlId{wholeNumber<std::uint16_t>(m_json.at("control"))};
        event.by = m_json.value("by", std::string());
        if (m_json.contains("text"))
            event.text = phraseFrom(m_json.at("text"));
        if (m_json.contains("margin"))
            event.margin = m_json.at("margin").get<double>();
        return event.guard >= -1 && event.guard < static_cast<int>(m_flow.guards.size()) && readStep(event) &&
               readSignal("margin_signal", event.marginSignal) && readSignal("signal", event.signal) &&
               (event.signal == kNoSignal || readValue(event));
    }

private:
    bool readStep(Event& event) {
        if (!m_json.contains("step"))
            return true;
        const auto id = m_json.at("step").get<std::string>();
        for (std::size_t i = 0; i < m_flow.steps.size() && event.step < 0; ++i)
            if (m_flow.steps[i].id == id)
                event.step = static_cast<int>(i);
        return event.step >= 0;
    }

    bool readSignal(const char* key, SignalId& signal) {
        if (!m_json.contains(key))
            return true;
        const std::optional<SignalId> found = m_aircraft.signals.find(m_json.at(key).get<std::string>());
        signal = found.value_or(kNoSignal);
        return found.has_value();
    }

    bool readValue(Event& event) {
        const Json& value = m_json.at("value");
        if (value.is_number()) {
            event.value = Value::number(value.get<double>());
            return true;
        }
        const Signal& signal = m_aircraft.signals[event.signal];
        const auto text = value.get<std::string>();
        if (text == valueText(signal, Value::unknown()))
            return true;
        const Result<Value> parsed = parseValue(signal, text);
        event.value = parsed.value_or(Value::unknown());
        return parsed.has_value();
    }

    const Json& m_json;
    const Aircraft& m_aircraft;
    const Flow& m_flow;
};

} // namespace

std::optional<Event> parseEvent(const std::string& line, const Aircraft& aircraft, const Flow& flow) {
    try {
        const Json json = Json::parse(line);
        Event event;
        if (EventReader(json, aircraft, flow).read(event))
            return event;
    } catch (const Json::exception&) {
        // As little an event as one with an unknown name.
    }
    return std::nullopt;
}

} // namespace flowhand
