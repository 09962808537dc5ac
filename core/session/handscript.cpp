#include "session/handscript.h"

#include <algorithm>
#include <sstream>

#include "base/names.h"

namespace flowhand {

namespace {

using namespace std::chrono_literals;

/// Common practice: a hand needs about this long for a short reach of a lever.
constexpr Duration kUsualMove = 300ms;
constexpr Duration kUsualPress = 200ms;
constexpr Duration kLongest = 4h;
/// Faster than any aircraft rolls on its own wheels to be steered.
constexpr double kFastestKept = 60.0;

/// Splits one line into words and reads it, keeping the place for errors.
class LineParser {
public:
    LineParser(std::string_view line, SourcePlace place, const Aircraft& aircraft, const Flow& flow, Problems& problems)
        : m_line(line), m_place(std::move(place)), m_aircraft(aircraft), m_flow(flow), m_problems(problems) {}

    std::optional<HandLine> parse() {
        const std::size_t colon = m_line.find(':');
        if (colon == std::string_view::npos) {
            error(0, "bad-hands", "a line of hands is 'WHEN: WHAT', as in 'after 1 s: taxi_light on'");
            return std::nullopt;
        }
        m_hand.place = m_place;
        m_isGood = true;
        parseTrigger(trimmed(0, colon));
        parseAct(trimmed(colon + 1, m_line.size()));
        return m_isGood ? std::optional(m_hand) : std::nullopt;
    }

private:
    struct Piece {
        std::size_t offset;
        std::string_view text;
    };

    Piece trimmed(std::size_t from, std::size_t to) const {
        while (from < to && (m_line[from] == ' ' || m_line[from] == '\t'))
            ++from;
        while (to > from && (m_line[to - 1] == ' ' || m_line[to - 1] == '\t'))
            --to;
        return {from, m_line.substr(from, to - from)};
    }

    Piece tail(Piece piece, std::size_t skip) const {
        return trimmed(piece.offset + skip, piece.offset + piece.text.size());
    }

    static bool beginsWith(std::string_view text, std::string_view word) {
        return text.substr(0, word.size()) == word && (text.size() == word.size() || text[word.size()] == ' ');
    }

    void error(std::size_t offset, std::string code, std::string message) {
        SourcePlace place = m_place;
        place.column += static_cast<int>(offset);
        m_problems.error(std::move(code), std::move(message), std::move(place));
        m_isGood = false;
    }

    Duration duration(Piece piece) {
        const Result<Duration> value = parseDuration(piece.text);
        if (!value)
            error(piece.offset, value.error().code, value.error().message);
        else if (*value > kLongest)
            error(piece.offset, "bad-duration", "no run is longer than 4 h");
        return value.value_or(Duration{});
    }

    /// Cuts ", 0.8 s later" off the end.
    Piece withoutDelay(Piece piece) {
        constexpr std::string_view kLater = " later";
        const std::size_t comma = piece.text.rfind(',');
        const bool hasDelay = piece.text.size() > kLater.size() &&
                              piece.text.substr(piece.text.size() - kLater.size()) == kLater &&
                              comma != std::string_view::npos;
        if (!hasDelay)
            return piece;
        m_hand.delay = duration(trimmed(piece.offset + comma + 1, piece.offset + piece.text.size() - kLater.size()));
        return trimmed(piece.offset, piece.offset + comma);
    }

    void parseTrigger(Piece piece) {
        if (beginsWith(piece.text, "after")) {
            m_hand.trigger = HandTrigger::After;
            m_hand.delay = duration(tail(piece, 5));
        } else if (beginsWith(piece.text, "at")) {
            m_hand.trigger = HandTrigger::At;
            m_hand.delay = duration(tail(piece, 2));
        } else if (piece.text == "with") {
            m_hand.trigger = HandTrigger::With;
        } else if (beginsWith(piece.text, "due")) {
            m_hand.trigger = HandTrigger::Due;
            m_hand.step = step(withoutDelay(tail(piece, 3)));
        } else if (beginsWith(piece.text, "when")) {
            m_hand.trigger = HandTrigger::When;
            parseCondition(withoutDelay(tail(piece, 4)));
        } else {
            error(piece.offset, "bad-hands",
                  "a line of hands begins with after, at, with, due or when, not '" + std::string(piece.text) + "'");
        }
    }

    std::size_t step(Piece piece) {
        std::vector<std::string> ids;
        for (const Step& step : m_flow.steps)
            ids.push_back(step.id);
        const auto at = std::find(ids.begin(), ids.end(), piece.text);
        if (at == ids.end())
            error(piece.offset, "unknown-step",
                  "the flow has no step '" + std::string(piece.text) + "'" + nearestHint(piece.text, ids));
        return at == ids.end() ? 0 : static_cast<std::size_t>(at - ids.begin());
    }

    void parseCondition(Piece piece) {
        std::vector<ConditionProblem> problems;
        m_hand.condition = Condition::compile(piece.text, m_aircraft.scope(), problems);
        for (const ConditionProblem& problem : problems)
            if (!problem.isWarning)
                error(piece.offset + problem.offset, problem.code, problem.message);
    }

    SignalId control(Piece piece) {
        const std::optional<SignalId> id = m_aircraft.signals.find(piece.text);
        if (id && m_aircraft.isControl(*id))
            return *id;
        std::vector<std::string> names;
        for (const CockpitControl& known : m_aircraft.controls)
            names.push_back(m_aircraft.signals[known.signal].name);
        error(piece.offset, "unknown-control",
              "there is no control '" + std::string(piece.text) + "'" + nearestHint(piece.text, names));
        return kNoSignal;
    }

    void parseAct(Piece piece) {
        if (piece.text == "let go")
            m_hand.act = HandAct::Stop;
        else if (beginsWith(piece.text, "press"))
            parsePress(tail(piece, 5));
        else if (beginsWith(piece.text, "follow the line with"))
            parseFollow(tail(piece, std::string_view("follow the line with").size()));
        else if (beginsWith(piece.text, "keep"))
            parseKeep(tail(piece, 4));
        else if (beginsWith(piece.text, "jump to"))
            parseJump(tail(piece, std::string_view("jump to").size()));
        else
            parseMove(piece);
    }

    void parsePress(Piece piece) {
        m_hand.act = HandAct::Press;
        m_hand.lasts = kUsualPress;
        const std::size_t split = piece.text.find(" for ");
        if (split != std::string_view::npos)
            m_hand.lasts = duration(tail(piece, split + 5));
        const Piece name = trimmed(piece.offset, piece.offset + std::min(split, piece.text.size()));
        const SignalId id = control(name);
        if (m_isGood && m_aircraft.control(id).kind != ControlKind::Button)
            error(name.offset, "bad-hands",
                  "only a button can be pressed; write a value for '" + std::string(name.text) + "'");
        m_hand.controls = {id};
    }

    void parseFollow(Piece piece) {
        m_hand.act = HandAct::Follow;
        const SignalId id = control(piece);
        if (m_isGood && m_aircraft.signals[id].kind != SignalKind::Number)
            error(piece.offset, "bad-hands", "'" + std::string(piece.text) + "' cannot steer");
        m_hand.controls = {id};
    }

    void parseKeep(Piece piece) {
        m_hand.act = HandAct::Keep;
        const std::size_t split = piece.text.find(" with ");
        if (split == std::string_view::npos) {
            error(piece.offset, "bad-hands", "write 'keep 10 kt with thrust_lever_1, toe_brake_left'");
            return;
        }
        const Piece speed = trimmed(piece.offset, piece.offset + split);
        const Result<Value> value =
            parseValue(m_aircraft.signals[*m_aircraft.signals.find("ground_speed")], speed.text);
        if (!value)
            error(speed.offset, value.error().code, value.error().message);
        else if (value->number() < 0.0 || value->number() > kFastestKept)
            error(speed.offset, "bad-value", "hands keep speeds from 0 to 60 kt");
        m_hand.target = value.value_or(Value());
        for (Piece rest = tail(piece, split + 6); !rest.text.empty();) {
            const std::size_t comma = std::min(rest.text.find(','), rest.text.size());
            m_hand.controls.push_back(control(trimmed(rest.offset, rest.offset + comma)));
            rest = tail(rest, std::min(comma + 1, rest.text.size()));
        }
    }

    void parseJump(Piece piece) {
        m_hand.act = HandAct::Jump;
        m_hand.jump = step(piece);
    }

    void parseMove(Piece piece) {
        m_hand.act = HandAct::Move;
        const std::size_t space = std::min(piece.text.find(' '), piece.text.size());
        const SignalId id = control(trimmed(piece.offset, piece.offset + space));
        if (id == kNoSignal)
            return;
        m_hand.controls = {id};
        const Piece rest = tail(piece, space);
        const std::size_t split = rest.text.rfind(" over ");
        const Piece value = trimmed(rest.offset, rest.offset + std::min(split, rest.text.size()));
        const Signal& signal = m_aircraft.signals[id];
        const Result<Value> target = parseValue(signal, value.text);
        if (!target)
            error(value.offset, target.error().code, target.error().message);
        else if (signal.kind == SignalKind::Number && signal.lowest < signal.highest &&
                 (target->number() < signal.lowest || target->number() > signal.highest))
            error(value.offset, "bad-value",
                  signal.label + " goes from " + valueText(signal, Value::number(signal.lowest)) + " to " +
                      valueText(signal, Value::number(signal.highest)));
        m_hand.target = target.value_or(Value());
        if (split != std::string_view::npos)
            m_hand.lasts = duration(tail(rest, split + 6));
        else
            m_hand.lasts = signal.kind == SignalKind::Number ? kUsualMove : Duration{};
    }

    std::string_view m_line;
    SourcePlace m_place;
    const Aircraft& m_aircraft;
    const Flow& m_flow;
    Problems& m_problems;
    HandLine m_hand;
    bool m_isGood = true;
};

} // namespace

std::optional<HandStretch> linesOf(const std::vector<HandLine>& lines, std::size_t step) {
    const auto waits = [&](std::size_t i) {
        return lines[i].trigger == HandTrigger::Due;
    };
    std::size_t first = 0;
    while (first < lines.size() && !(waits(first) && lines[first].step == step))
        ++first;
    if (first == lines.size())
        return std::nullopt;
    std::size_t end = first + 1;
    while (end < lines.size() && !waits(end))
        ++end;
    return HandStretch{first, end};
}

std::vector<HandLine> parseHandScript(const std::string& source, const std::string& name, const Aircraft& aircraft,
                                      const Flow& flow, Problems& problems) {
    std::vector<HandLine> lines;
    std::istringstream stream(source);
    std::string text;
    for (int number = 1; std::getline(stream, text); ++number) {
        text.resize(std::min(text.find('#'), text.size()));
        const std::size_t first = text.find_first_not_of(" \t\r");
        if (first == std::string::npos)
            continue;
        while (!text.empty() && text.back() == '\r')
            text.pop_back();
        LineParser parser(text, {name, number, 1}, aircraft, flow, problems);
        std::optional<HandLine> line = parser.parse();
        if (!line)
            continue;
        if (line->trigger == HandTrigger::Due)
            line->of = line->step;
        else if (!lines.empty())
            line->of = lines.back().of;
        lines.push_back(std::move(*line));
    }
    if (lines.empty() && !problems.hasErrors())
        problems.error("bad-hands", "there is no line of hands in this file", {name, 1, 1});
    return lines;
}

} // namespace flowhand
