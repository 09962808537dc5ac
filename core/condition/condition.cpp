#include "condition/condition.h"

#include <algorithm>

#include "condition/compiler.h"
#include "condition/program.h"

namespace flowhand {

namespace {

using Kind = ProgramNode::Kind;

/// Works out every node from its children; `leaf(node, left, right)` gives those that are not plain logic, and a stage
/// of a sequence, which is an `and` of the stage before (left) and what rises (right).
template <class Leaf>
Kleene evaluate(const ConditionProgram& program, Leaf leaf) {
    std::vector<Kleene> is(program.nodes.size());
    const auto at = [&](std::uint32_t index) {
        return index == ProgramNode::kNone ? Kleene::Unknown : is[index];
    };
    for (std::size_t i = 0; i < program.nodes.size(); ++i) {
        const ProgramNode& node = program.nodes[i];
        const Kleene left = at(node.left);
        const Kleene right = at(node.right);
        switch (node.kind) {
        case Kind::Constant:
            is[i] = node.constant;
            break;
        case Kind::Not:
            is[i] = !right;
            break;
        case Kind::And:
            is[i] = program.nodes[node.left].isStrict ? leaf(node, left, right) : left && right;
            break;
        case Kind::Or:
            is[i] = left || right;
            break;
        default:
            is[i] = leaf(node, left, right);
            break;
        }
    }
    return is.back();
}

} // namespace

std::optional<Condition> Condition::compile(std::string_view text, const ConditionScope& scope,
                                            std::vector<ConditionProblem>& problems) {
    std::optional<ConditionProgram> program = compileProgram(text, scope, problems);
    if (!program)
        return std::nullopt;
    warnOf(*program, scope.signals, problems);
    return Condition(std::make_shared<const ConditionProgram>(std::move(*program)));
}

const std::string& Condition::text() const {
    return m_program->text;
}
const std::vector<SignalId>& Condition::signals() const {
    return m_program->signals;
}
bool Condition::isInstant() const {
    return m_program->isInstant;
}
bool Condition::usesReference() const {
    return m_program->usesReference;
}
bool Condition::hasOpenMoved() const {
    return m_program->hasOpenMoved;
}
const ConditionWindow& Condition::longestWindow() const {
    return m_program->longestWindow;
}

bool Condition::fits(SignalId signal, Value value, const std::vector<Value>& otherValues) const {
    std::vector<Value> values = otherValues;
    values.resize(std::max(values.size(), indexOf(signal) + 1));
    for (const SignalId id : m_program->signals)
        values.resize(std::max(values.size(), indexOf(id) + 1));
    values[indexOf(signal)] = value;
    const Kleene result = evaluate(*m_program, [&](const ProgramNode& node, Kleene left, Kleene right) {
        switch (node.kind) {
        case Kind::Comparison: {
            const Comparison& comparison = m_program->comparisons[node.item];
            return reads(comparison, signal) ? holds(comparison, values) : Kleene::Unknown;
        }
        case Kind::And:
            return left || right;
        case Kind::Since:
            return left && Kleene::Unknown;
        case Kind::Moved:
            return right && Kleene::Unknown;
        default:
            return right;
        }
    });
    return isPossible(result);
}

Truth Condition::holdsNow(const std::vector<Value>& values) const {
    return truthOf(evaluate(*m_program, [&](const ProgramNode& node, Kleene left, Kleene right) {
        switch (node.kind) {
        case Kind::Comparison:
            return holds(m_program->comparisons[node.item], values);
        case Kind::Once:
        case Kind::Held:
            return right;
        case Kind::Since:
            return left && right;
        default:
            return Kleene::False;
        }
    }));
}

} // namespace flowhand
