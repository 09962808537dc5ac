#include "condition/reading.h"

#include <algorithm>
#include <optional>

#include "condition/lexer.h"
#include "condition/parser.h"

namespace flowhand {

namespace {

using Kind = Syntax::Kind;

class Reader {
public:
    Reader(const std::vector<std::string>& signals, const std::map<std::string, AircraftValue, std::less<>>& aircraft,
           TraceReading& reading)
        : m_signals(signals), m_aircraft(aircraft), m_reading(reading) {}

    void truth(const Syntax& tree) {
        switch (tree.kind) {
        case Kind::Word:
            note(tree, SignalKind::OnOff);
            break;
        case Kind::Compare:
            comparison(tree.children[0], tree.children[1]);
            break;
        case Kind::Call:
            for (std::size_t i = 0; i < tree.children.size(); ++i) {
                if (tree.text == "moved" && i < 2)
                    number(tree.children[i]);
                else
                    truth(tree.children[i]);
            }
            break;
        case Kind::Not:
        case Kind::And:
        case Kind::Or:
            for (const Syntax& child : tree.children)
                truth(child);
            break;
        default: // a window, or what the compiler refuses
            break;
        }
    }

private:
    void comparison(const Syntax& left, const Syntax& right) {
        if (isSignal(left) && isSignal(right)) {
            m_reading.alike.emplace_back(left.text, right.text);
        } else if (isSignal(left)) {
            note(left, kindBeside(right));
            number(right);
        } else if (isSignal(right)) {
            note(right, kindBeside(left));
            number(left);
        } else {
            number(left);
            number(right);
        }
    }

    /// Of a signal that is compared with `other`; a bare number may be a position's name.
    [[nodiscard]] std::optional<SignalKind> kindBeside(const Syntax& other) const {
        switch (other.kind) {
        case Kind::Truth:
            return SignalKind::OnOff;
        case Kind::Word:
        case Kind::Quoted:
            return SignalKind::Position;
        case Kind::Number:
            return other.unit.empty() ? std::nullopt : std::optional(SignalKind::Number);
        case Kind::Aircraft: {
            const auto at = m_aircraft.find(other.text);
            return at != m_aircraft.end() && at->second.isWord ? SignalKind::Position : SignalKind::Number;
        }
        default:
            return SignalKind::Number;
        }
    }

    void number(const Syntax& tree) {
        if (isSignal(tree))
            note(tree, SignalKind::Number);
        for (const Syntax& child : tree.children)
            number(child);
    }

    [[nodiscard]] bool isSignal(const Syntax& tree) const {
        return tree.kind == Kind::Word && std::find(m_signals.begin(), m_signals.end(), tree.text) != m_signals.end();
    }

    /// The first use counts; the compiler complains of others.
    void note(const Syntax& word, std::optional<SignalKind> kind) {
        if (kind)
            m_reading.kinds.try_emplace(word.text, *kind);
    }

    const std::vector<std::string>& m_signals;
    const std::map<std::string, AircraftValue, std::less<>>& m_aircraft;
    TraceReading& m_reading;
};

} // namespace

TraceReading readingOf(std::string_view condition, const std::vector<std::string>& signals,
                       const std::map<std::string, AircraftValue, std::less<>>& aircraft) {
    TraceReading reading;
    std::vector<ConditionProblem> ignored; // the compiler says them
    if (const std::optional<Syntax> tree = parseCondition(condition, ignored)) {
        Reader(signals, aircraft, reading).truth(*tree);
        for (std::string& word : wordsOf(condition))
            if (std::find(signals.begin(), signals.end(), word) == signals.end())
                reading.positions.push_back(std::move(word));
    }
    return reading;
}

} // namespace flowhand
