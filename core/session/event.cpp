#include "session/event.h"

#include <array>
#include <nlohmann/json.hpp>

#include "base/phrasejson.h"

namespace flowhand {

namespace {

/// In the order of EventKind.
constexpr std::array<std::string_view, 32> kNames{"run-started",
                                                  "set-up-wanted",
                                                  "set-up-waived",
                                                  "words-began",
                                                  "step-due",
                                                  "step-moved",
                                                  "step-seen",
                                                  "step-done",
                                                  "step-omitted",
                                                  "step-found-set",
                                                  "step-too-early",
                                                  "step-uncertain",
                                                  "step-void",
                                                  "step-left-out",
                                                  "step-undone",
                                                  "wrong-control",
                                                  "wrong-value",
                                                  "extra-cancelled",
                                                  "guard-broken",
                                                  "guard-over",
                                                  "guard-left-out",
                                                  "partner-moved",
                                                  "match-wanted",
                                                  "matched",
                                                  "held",
                                                  "resumed",
                                                  "gap",
                                                  "jumped",
                                                  "placed",
                                                  "scenario-event",
                                                  "outcome-reached",
                                                  "run-ended"};
static_assert(kNames.size() == static_cast<std::size_t>(EventKind::RunEnded) + 1);

} // namespace

std::string_view nameOf(EventKind kind) {
    return kNames[static_cast<std::size_t>(kind)];
}

std::string toJson(const Event& event, const SignalTable& signals, const std::vector<std::string>& stepIds) {
    nlohmann::ordered_json line;
    line["time_ns"] = event.time.count();
    line["event"] = nameOf(event.kind);
    if (event.step >= 0)
        line["step"] = stepIds[static_cast<std::size_t>(event.step)];
    if (event.guard >= 0)
        line["guard"] = event.guard;
    if (event.signal != kNoSignal) {
        const Signal& signal = signals[event.signal];
        line["signal"] = signal.name;
        if (event.value.isKnown() && signal.kind == SignalKind::Number)
            line["value"] = event.value.number();
        else
            line["value"] = valueText(signal, event.value);
    }
    if (event.control != kNoControl)
        line["control"] = static_cast<unsigned>(event.control);
    if (event.margin) {
        line["margin"] = *event.margin;
        line["margin_signal"] = signals[event.marginSignal].name;
    }
    if (!event.by.empty())
        line["by"] = event.by;
    if (!event.text.isEmpty())
        line["text"] = phraseJson(event.text);
    return line.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

std::string englishLine(const std::string& line) {
    try {
        nlohmann::ordered_json json = nlohmann::ordered_json::parse(line);
        const auto text = json.find("text");
        if (text == json.end() || !text->is_array())
            return line;
        *text = phraseFrom(*text).english();
        return json.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
    } catch (const nlohmann::json::exception&) {
        return line; // damaged: it is like no other
    }
}

} // namespace flowhand
