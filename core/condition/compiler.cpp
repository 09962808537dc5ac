#include "condition/compiler.h"

#include <algorithm>

#include "base/names.h"
#include "condition/arithmetic.h"
#include "condition/comparing.h"
#include "condition/parser.h"

namespace flowhand {

namespace {

using Index = std::optional<std::uint32_t>;
using NodeKind = ProgramNode::Kind;

struct Form {
    std::string_view name;
    std::string_view usage;
};

constexpr Form kForms[] = {
    {"once", "once(A), once(A, 5 s) or once(A, 1 s .. 5 s)"},
    {"historically", "historically(A), historically(A, 5 s) or historically(A, 1 s .. 5 s)"},
    {"since", "since(A, B), since(A, B, 5 s) or since(A, B, 1 s .. 5 s)"},
    {"rise", "rise(A)"},
    {"fall", "fall(A)"},
    {"held", "held(A, 2 s)"},
    {"sequence", "sequence(A, B, 20 s)"},
    {"moved", "moved(tiller, 10 deg) or moved(tiller, 10 deg, A)"},
};

class Compiler {
public:
    Compiler(std::string_view text, const ConditionScope& scope, std::vector<ConditionProblem>& problems)
        : m_complaints(text, problems), m_scope(scope), m_arithmetic(scope, m_complaints),
          m_comparing(scope, m_complaints, m_arithmetic, m_program) {
        m_program.text = text;
    }

    std::optional<ConditionProgram> run(const Syntax& tree) {
        const Index root = truth(tree);
        if (!root || m_complaints.hasErrors())
            return std::nullopt;
        finish();
        return std::move(m_program);
    }

private:
    Index truth(const Syntax& tree) {
        switch (tree.kind) {
        case Syntax::Kind::Truth:
            return constant(tree);
        case Syntax::Kind::Word:
            return m_comparing.standAlone(tree);
        case Syntax::Kind::Not:
            return unary(tree, NodeKind::Not, tree.children[0]);
        case Syntax::Kind::And:
            return chain(tree, NodeKind::And);
        case Syntax::Kind::Or:
            return chain(tree, NodeKind::Or);
        case Syntax::Kind::Compare:
            return m_comparing.comparison(tree);
        case Syntax::Kind::Call:
            return call(tree);
        default:
            m_complaints.error(tree.begin, "wrong-type",
                               m_complaints.quoted(tree.begin, tree.end) +
                                   " is not a condition; expected a comparison, as in 'airspeed > 80 kt'");
            return std::nullopt;
        }
    }

    std::uint32_t add(const Syntax& tree, ProgramNode node) {
        node.begin = tree.begin;
        node.end = tree.end;
        if (remembers(node.kind))
            node.state = m_program.stateCount++;
        m_program.nodes.push_back(node);
        return static_cast<std::uint32_t>(m_program.nodes.size() - 1);
    }
    std::uint32_t add(const Syntax& tree, NodeKind kind, std::uint32_t left, std::uint32_t right) {
        ProgramNode node;
        node.kind = kind;
        node.left = left;
        node.right = right;
        return add(tree, node);
    }
    std::uint32_t negated(const Syntax& tree, std::uint32_t operand) {
        return add(tree, NodeKind::Not, ProgramNode::kNone, operand);
    }

    Index constant(const Syntax& tree) {
        ProgramNode node;
        node.constant = kleene(tree.text == "true");
        return add(tree, node);
    }

    Index unary(const Syntax& tree, NodeKind kind, const Syntax& operand) {
        const Index child = truth(operand);
        return child ? Index(add(tree, kind, ProgramNode::kNone, *child)) : std::nullopt;
    }

    /// All operands are looked at, so that each error is told.
    Index chain(const Syntax& tree, NodeKind kind) {
        Index result = truth(tree.children[0]);
        for (std::size_t i = 1; i < tree.children.size(); ++i) {
            const Index next = truth(tree.children[i]);
            result = result && next ? Index(add(tree, kind, *result, *next)) : std::nullopt;
        }
        return result;
    }

    Index call(const Syntax& tree) {
        const auto form = std::find_if(std::begin(kForms), std::end(kForms), [&](const Form& known) {
            return known.name == tree.text;
        });
        if (form == std::end(kForms))
            return unknownForm(tree);
        const std::size_t count = tree.children.size();
        const bool isSince = tree.text == "since";
        if (tree.text == "sequence" && count >= 3)
            return sequence(tree);
        if (tree.text == "held" && count == 2)
            return held(tree);
        if (tree.text == "moved" && (count == 2 || count == 3))
            return moved(tree);
        if ((tree.text == "rise" || tree.text == "fall") && count == 1)
            return edge(tree);
        if (isSince ? count == 2 || count == 3 : (tree.text == "once" || tree.text == "historically") && count <= 2)
            return windowed(tree, isSince ? 2 : 1);
        m_complaints.error(tree.begin, "wrong-arguments",
                           "'" + tree.text + "' does not take " + std::to_string(count) +
                               (count == 1 ? " argument" : " arguments") + "; write " + std::string(form->usage));
        return std::nullopt;
    }

    Index unknownForm(const Syntax& tree) {
        if (tree.text == "abs" || tree.text == "min" || tree.text == "max") {
            if (const std::optional<Quantity> number = m_arithmetic.quantity(tree))
                m_complaints.error(tree.begin, "wrong-type",
                                   m_complaints.quoted(tree.begin, tree.end) + " is a number; compare it with another");
            return std::nullopt;
        }
        std::vector<std::string> known = {"abs", "min", "max"};
        for (const Form& form : kForms)
            known.emplace_back(form.name);
        m_complaints.error(tree.begin, "unknown-function",
                           "there is no function '" + tree.text + "'" + nearestHint(tree.text, known));
        return std::nullopt;
    }

    struct Window {
        Duration shortest{};
        std::optional<Duration> longest;
    };

    std::optional<Window> window(const Syntax& tree) {
        if (tree.kind != Syntax::Kind::Window) {
            const std::optional<Duration> length = m_arithmetic.duration(tree);
            return length ? std::optional(Window{Duration{}, *length}) : std::nullopt;
        }
        const std::optional<Duration> from = m_arithmetic.duration(tree.children[0]);
        if (tree.children.size() == 1)
            return from ? std::optional(Window{*from, std::nullopt}) : std::nullopt;
        const std::optional<Duration> to = m_arithmetic.duration(tree.children[1]);
        if (!from || !to)
            return std::nullopt;
        if (*from > *to) {
            m_complaints.error(tree.begin, "bad-window",
                               m_complaints.quoted(tree.begin, tree.end) +
                                   " ends before it begins; write the nearer time first");
            return std::nullopt;
        }
        return Window{*from, *to};
    }

    void note(const Syntax& tree, const std::optional<Duration>& length, bool isHeld = false) {
        if (length && *length > m_program.longestWindow.length)
            m_program.longestWindow = {*length, tree.begin, isHeld};
    }

    Index windowed(const Syntax& tree, std::size_t operands) {
        const bool isHistorically = tree.text == "historically";
        const Index first = truth(tree.children[0]);
        const Index second = operands == 2 ? truth(tree.children[1]) : first;
        const std::optional<Window> found =
            tree.children.size() > operands ? window(tree.children[operands]) : std::optional(Window{});
        if (!first || !second || !found)
            return std::nullopt;
        ProgramNode node;
        node.kind = operands == 2 ? NodeKind::Since : NodeKind::Once;
        node.left = operands == 2 ? *first : ProgramNode::kNone;
        node.right = isHistorically ? negated(tree, *second) : *second;
        node.shortest = found->shortest;
        node.longest = found->longest;
        note(tree, node.longest);
        const std::uint32_t once = add(tree, node);
        return isHistorically ? negated(tree, once) : once;
    }

    Index edge(const Syntax& tree) {
        const Index operand = truth(tree.children[0]);
        if (!operand)
            return std::nullopt;
        return add(tree, NodeKind::Rise, ProgramNode::kNone, tree.text == "fall" ? negated(tree, *operand) : *operand);
    }

    Index held(const Syntax& tree) {
        const Index operand = truth(tree.children[0]);
        const std::optional<Duration> length = m_arithmetic.duration(tree.children[1]);
        if (!operand || !length)
            return std::nullopt;
        ProgramNode node;
        node.kind = NodeKind::Held;
        node.right = *operand;
        node.longest = *length;
        note(tree, node.longest, true);
        m_program.usesReference = true;
        return add(tree, node);
    }

    /// Each stage is: its operand rises, and the stage before it was, earlier than now but no longer ago than the gap.
    Index sequence(const Syntax& tree) {
        const std::size_t stages = tree.children.size() - 1;
        const std::optional<Duration> gap = m_arithmetic.duration(tree.children[stages]);
        Index before;
        if (gap == Duration::zero()) {
            m_complaints.error(tree.children[stages].begin, "bad-window",
                               "the gap must be more than 0 s, for what comes next in a sequence comes later");
            return std::nullopt;
        }
        bool isSound = gap.has_value();
        for (std::size_t i = 0; i < stages; ++i) {
            const Index operand = truth(tree.children[i]);
            isSound = isSound && operand;
            if (!isSound)
                continue;
            std::uint32_t stage = add(tree, NodeKind::Rise, ProgramNode::kNone, *operand);
            if (i > 0) {
                ProgramNode earlier;
                earlier.kind = NodeKind::Once;
                earlier.isStrict = true;
                earlier.right = *before;
                earlier.longest = *gap;
                stage = add(tree, NodeKind::And, add(tree, earlier), stage);
            }
            before = stage;
        }
        note(tree, gap);
        return isSound ? before : std::nullopt;
    }

    Index moved(const Syntax& tree) {
        const std::optional<Quantity> moving = m_arithmetic.quantity(tree.children[0]);
        std::optional<Quantity> distance = m_arithmetic.quantity(tree.children[1]);
        const bool hasStretch = tree.children.size() == 3;
        const Index stretch = hasStretch ? truth(tree.children[2]) : std::nullopt;
        if (!moving || !distance || (hasStretch && !stretch) || !m_arithmetic.convertTo(*moving, *distance))
            return std::nullopt;
        if (!distance->expression.isConstant()) {
            m_complaints.error(tree.children[1].begin, "wrong-type",
                               "how far it has to move must not depend on a signal; write a number and its unit");
            return std::nullopt;
        }
        if (!(distance->expression.steps()[0].number >= 0.0)) {
            m_complaints.error(tree.children[1].begin, "bad-number",
                               "how far it has to move must not be negative; either way counts, so write no sign");
            return std::nullopt;
        }
        addSignals(m_program.signals, moving->signals);
        ProgramNode node;
        node.kind = NodeKind::Moved;
        node.right = stretch.value_or(ProgramNode::kNone);
        node.item = static_cast<std::uint32_t>(m_program.movements.size());
        m_program.movements.push_back({moving->expression, distance->expression.steps()[0].number, moving->signals,
                                       m_comparing.marginUnit(*moving)});
        m_program.usesReference |= !hasStretch;
        m_program.hasOpenMoved |= !hasStretch;
        return add(tree, node);
    }

    void finish() {
        std::vector<bool> isInstant;
        for (const ProgramNode& node : m_program.nodes) {
            bool is = node.kind == NodeKind::Rise;
            if (node.kind == NodeKind::And)
                is = isInstant[node.left] || isInstant[node.right];
            if (node.kind == NodeKind::Or)
                is = isInstant[node.left] && isInstant[node.right];
            isInstant.push_back(is);
        }
        m_program.isInstant = isInstant.back();
        makeMarginsComparable();
    }

    /// Margins of one dimension are compared as they are; of several, relative to the scale of their signal.
    void makeMarginsComparable() {
        std::vector<MarginUnit>& units = m_program.units;
        const auto unitOf = [&](const MarginUnit& unit) {
            return unit.signal == kNoSignal ? Unit{} : m_scope.signals[unit.signal].unit;
        };
        const auto all = [&](auto isSame) {
            return std::all_of(units.begin(), units.end(), isSame);
        };
        if (all([&](const MarginUnit& unit) {
                return unitOf(unit) == unitOf(units[0]);
            }))
            return;
        const bool isOneDimension = all([&](const MarginUnit& unit) {
            return unitOf(unit).dimension == unitOf(units[0]).dimension;
        });
        for (MarginUnit& unit : units) {
            if (isOneDimension)
                unit.toRelative = unitOf(unit).factor;
            else if (unit.signal != kNoSignal && m_scope.signals[unit.signal].scale > 0.0)
                unit.toRelative = 1.0 / m_scope.signals[unit.signal].scale;
        }
    }

    ConditionProgram m_program;
    Complaints m_complaints;
    const ConditionScope& m_scope;
    Arithmetic m_arithmetic;
    Comparing m_comparing;
};

} // namespace

std::optional<ConditionProgram> compileProgram(std::string_view text, const ConditionScope& scope,
                                               std::vector<ConditionProblem>& problems) {
    const std::optional<Syntax> tree = parseCondition(text, problems);
    return tree ? Compiler(text, scope, problems).run(*tree) : std::nullopt;
}

} // namespace flowhand
