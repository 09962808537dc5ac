#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "base/names.h"
#include "condition/compiler.h"

namespace flowhand {

namespace {

using Kind = ProgramNode::Kind;

/// Most combinations of values that are tried; what has more is not looked at.
constexpr std::size_t kMostCombinations = 256;

/// Tries values of the signals, one on each side of every constant, and looks which truths come up. What looks back and
/// what calculates counts as unknown.
class Inspector {
public:
    Inspector(const ConditionProgram& program, const SignalTable& signals, std::vector<ConditionProblem>& problems)
        : m_program(program), m_signals(signals), m_problems(problems), m_values(signals.size()),
          m_isConstant(program.nodes.size(), false), m_isInstant(program.nodes.size(), false) {}

    void run() {
        for (std::uint32_t i = 0; i < m_program.nodes.size(); ++i)
            inspect(i);
    }

private:
    void inspect(std::uint32_t i) {
        const ProgramNode& node = m_program.nodes[i];
        m_isInstant[i] = node.kind == Kind::Rise ||
                         (node.kind == Kind::And && (is(m_isInstant, node.left) || is(m_isInstant, node.right)));
        const bool hasConstantPart = is(m_isConstant, node.left) || is(m_isConstant, node.right);
        m_isConstant[i] = hasConstantPart;
        if (node.kind == Kind::Constant && i + 1 == m_program.nodes.size())
            warn(node, "constant-condition", node.constant == Kleene::True ? " is always true" : " is never true");
        if (node.kind == Kind::Comparison || ((node.kind == Kind::And || node.kind == Kind::Or) && !hasConstantPart))
            lookForConstant(i);
        if (node.kind == Kind::Since && !hasConstantPart) {
            const std::optional<Seen> seen = seenOver({node.left, node.right}, [&] {
                return truth(node.left) && truth(node.right);
            });
            if (seen && !seen->isTrue && !seen->isUnknown)
                warn(node, "exclusive-operands",
                     " is never true: both operands have to be true at one moment, but exclude each other; to count "
                     "from "
                     "the moment at which B ends, write since(A, fall(B))");
        }
        if (node.kind == Kind::Held && *node.longest > Duration::zero() && is(m_isInstant, node.right))
            warn(node, "instant-held", " is never true: what is true only for an instant cannot be held");
    }

    static bool is(const std::vector<bool>& flags, std::uint32_t index) {
        return index != ProgramNode::kNone && flags[index];
    }

    void lookForConstant(std::uint32_t i) {
        const std::optional<Seen> seen = seenOver({i}, [&] {
            return truth(i);
        });
        if (!seen || seen->isUnknown || (seen->isTrue && seen->isFalse))
            return;
        m_isConstant[i] = true;
        const ProgramNode& node = m_program.nodes[i];
        warn(node, "constant-condition", (seen->isTrue ? " is always true" : " is never true") + because(node));
    }

    std::string because(const ProgramNode& node) const {
        if (node.kind != Kind::Comparison)
            return ": its parts exclude or complete each other";
        const Comparison& comparison = m_program.comparisons[node.item];
        const Signal& signal = m_signals[comparison.signals.front()];
        if (signal.kind != SignalKind::Number || !(signal.lowest < signal.highest))
            return "";
        return ": " + signal.name + " goes from " + valueText(signal, Value::number(signal.lowest)) + " to " +
               valueText(signal, Value::number(signal.highest));
    }

    void warn(const ProgramNode& node, std::string code, const std::string& message) {
        m_problems.push_back({node.begin, std::move(code),
                              "'" + m_program.text.substr(node.begin, node.end - node.begin) + "'" + message, true});
    }

    struct Seen {
        bool isTrue = false;
        bool isFalse = false;
        bool isUnknown = false;
    };

    /// The truths of `truth` over all combinations of values of the signals under `nodes`; nothing when there are too
    /// many.
    std::optional<Seen> seenOver(const std::vector<std::uint32_t>& nodes, const std::function<Kleene()>& truth) {
        std::map<SignalId, std::vector<double>> choices;
        for (const std::uint32_t node : nodes)
            collect(node, choices);
        std::size_t combinations = 1;
        for (auto& [signal, constants] : choices) {
            constants = valuesToTry(m_signals[signal], std::move(constants));
            combinations *= constants.size();
            if (combinations > kMostCombinations)
                return std::nullopt;
        }
        Seen seen;
        for (std::size_t which = 0; which < combinations; ++which) {
            std::size_t rest = which;
            for (const auto& [signal, constants] : choices) {
                m_values[indexOf(signal)] = Value::number(constants[rest % constants.size()]);
                rest /= constants.size();
            }
            const Kleene is = truth();
            seen.isTrue |= is == Kleene::True;
            seen.isFalse |= is == Kleene::False;
            seen.isUnknown |= is == Kleene::Unknown;
        }
        return seen;
    }

    bool isReadable(const Comparison& comparison) const { return comparison.isThreshold || comparison.isDiscrete; }

    void collect(std::uint32_t i, std::map<SignalId, std::vector<double>>& choices) const {
        const ProgramNode& node = m_program.nodes[i];
        if (node.kind == Kind::Comparison) {
            const Comparison& comparison = m_program.comparisons[node.item];
            if (isReadable(comparison))
                for (const SignalId signal : comparison.signals)
                    choices[signal].push_back(comparison.constant);
        } else if (!remembers(node.kind)) {
            for (const std::uint32_t child : {node.left, node.right})
                if (child != ProgramNode::kNone)
                    collect(child, choices);
        }
    }

    /// Surely on the other side of `constant`, however large that is.
    static double beyond(double constant, double direction) {
        return constant + direction * std::max(1.0, std::fabs(constant) / 2.0);
    }

    static std::vector<double> valuesToTry(const Signal& signal, std::vector<double> constants) {
        std::vector<double> values;
        if (signal.kind != SignalKind::Number) {
            const int count = signal.kind == SignalKind::OnOff ? 2 : static_cast<int>(signal.positions.size());
            for (int i = signal.kind == SignalKind::OnOff ? 0 : -1; i < count; ++i)
                values.push_back(i);
            return values;
        }
        const bool hasRange = signal.lowest < signal.highest;
        if (hasRange)
            constants.insert(constants.end(), {signal.lowest, signal.highest});
        std::sort(constants.begin(), constants.end());
        values = {beyond(constants.front(), -1.0), beyond(constants.back(), 1.0)};
        for (std::size_t i = 0; i < constants.size(); ++i) {
            values.push_back(constants[i]);
            if (i > 0 && constants[i - 1] < constants[i])
                values.push_back(constants[i - 1] / 2 + constants[i] / 2);
        }
        if (hasRange)
            values.erase(std::remove_if(values.begin(), values.end(),
                                        [&](double value) {
                                            return value < signal.lowest || value > signal.highest;
                                        }),
                         values.end());
        return values;
    }

    Kleene truth(std::uint32_t i) const {
        const ProgramNode& node = m_program.nodes[i];
        switch (node.kind) {
        case Kind::Constant:
            return node.constant;
        case Kind::Comparison: {
            const Comparison& comparison = m_program.comparisons[node.item];
            return isReadable(comparison) ? holds(comparison, m_values) : Kleene::Unknown;
        }
        case Kind::Not:
            return !truth(node.right);
        case Kind::And:
            return truth(node.left) && truth(node.right);
        case Kind::Or:
            return truth(node.left) || truth(node.right);
        default:
            return Kleene::Unknown;
        }
    }

    const ConditionProgram& m_program;
    const SignalTable& m_signals;
    std::vector<ConditionProblem>& m_problems;
    std::vector<Value> m_values;
    std::vector<bool> m_isConstant;
    std::vector<bool> m_isInstant;
};

} // namespace

void warnOf(const ConditionProgram& program, const SignalTable& signals, std::vector<ConditionProblem>& problems) {
    Inspector(program, signals, problems).run();
}

} // namespace flowhand
