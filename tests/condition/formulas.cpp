#include <array>

#include "definition.h"

namespace flowhand::definition {

namespace {

int pick(std::mt19937& random, int lowest, int highest) {
    return lowest + static_cast<int>(random() % static_cast<unsigned>(highest - lowest + 1));
}
bool chance(std::mt19937& random, int oneIn) {
    return pick(random, 1, oneIn) == 1;
}

constexpr std::array<const char*, 6> kComparators = {"<", "<=", ">", ">=", "==", "!="};
constexpr std::array<const char*, 3> kPositions = {"low", "mid", "high"};

Formula randomReading(std::mt19937& random) {
    Formula formula;
    formula.comparator = static_cast<Comparator>(pick(random, 0, 5));
    switch (pick(random, 0, 5)) {
    case 0:
        formula.shape = Shape::Position;
        formula.signal = "g";
        formula.constant = pick(random, 0, 2);
        break;
    case 1:
        formula.shape = Shape::Difference;
        formula.signal = chance(random, 2) ? "x" : "w";
        formula.other = formula.signal == "x" ? "w" : "x";
        formula.constant = pick(random, 0, 2);
        break;
    case 2:
    case 3:
        formula.shape = Shape::OnOff;
        formula.signal = chance(random, 2) ? "p" : "q";
        formula.comparator = Comparator::Equal;
        formula.constant = 1;
        break;
    default:
        formula.shape = Shape::Compare;
        formula.signal = chance(random, 2) ? "x" : "y";
        formula.constant = pick(random, 0, 4);
        break;
    }
    return formula;
}

std::string readingText(const Formula& formula) {
    const std::string comparator = std::string(" ") + kComparators[static_cast<std::size_t>(formula.comparator)] + " ";
    const std::string unit = formula.signal == "y" ? " deg" : " kt";
    switch (formula.shape) {
    case Shape::OnOff:
        return formula.signal;
    case Shape::Position:
        return formula.signal + comparator + kPositions[static_cast<std::size_t>(formula.constant)];
    case Shape::Difference:
        return formula.signal + " - " + formula.other + comparator + std::to_string(formula.constant) + unit;
    default:
        return formula.signal + comparator + std::to_string(formula.constant) + unit;
    }
}

/// `steps` times the decimal number `step`, which is 0.000000001, 1 or 30000000 s.
std::string durationText(int steps, const std::string& step) {
    if (step.find('.') == std::string::npos)
        return std::to_string(steps * std::stoll(step)) + " s";
    std::string digits = std::to_string(steps);
    const std::size_t decimals = step.size() - 2;
    return "0." + std::string(decimals - digits.size(), '0') + digits + " s";
}

std::string windowText(const Formula& formula, const std::string& step) {
    if (!formula.longest)
        return formula.shortest == 0 ? "" : ", " + durationText(formula.shortest, step) + " ..";
    if (formula.shortest == 0 && *formula.longest % 2 == 0)
        return ", " + durationText(*formula.longest, step);
    return ", " + durationText(formula.shortest, step) + " .. " + durationText(*formula.longest, step);
}

} // namespace

SignalTable signalTable() {
    SignalTable table;
    const auto add = [&](const std::string& name, SignalKind kind, const std::string& unit, double scale) {
        Signal signal;
        signal.name = name;
        signal.kind = kind;
        signal.unit = *findUnit(unit);
        signal.scale = scale;
        if (kind == SignalKind::Position)
            signal.positions.assign(kPositions.begin(), kPositions.end());
        static_cast<void>(table.add(signal));
    };
    add("x", SignalKind::Number, "kt", 4.0);
    add("w", SignalKind::Number, "kt", 4.0);
    add("y", SignalKind::Number, "deg", 16.0);
    add("p", SignalKind::OnOff, "", 1.0);
    add("q", SignalKind::OnOff, "", 1.0);
    add("g", SignalKind::Position, "", 1.0);
    return table;
}

bool mixesUnits(const Formula& formula) {
    bool hasSpeed = false;
    bool hasAngle = false;
    const auto look = [&](const auto& self, const Formula& one) -> void {
        hasAngle |= one.signal == "y";
        hasSpeed |= one.signal == "x" || one.signal == "w";
        for (const Formula& part : one.parts)
            self(self, part);
    };
    look(look, formula);
    return hasSpeed && hasAngle;
}

std::string text(const Formula& formula, const std::string& step) {
    const auto part = [&](std::size_t i) {
        return text(formula.parts[i], step);
    };
    switch (formula.shape) {
    case Shape::Not:
        return "not (" + part(0) + ")";
    case Shape::And:
        return "(" + part(0) + ") and (" + part(1) + ")";
    case Shape::Or:
        return "(" + part(0) + ") or (" + part(1) + ")";
    case Shape::Once:
        return "once(" + part(0) + windowText(formula, step) + ")";
    case Shape::Historically:
        return "historically(" + part(0) + windowText(formula, step) + ")";
    case Shape::Since:
        return "since(" + part(0) + ", " + part(1) + windowText(formula, step) + ")";
    case Shape::Rise:
        return "rise(" + part(0) + ")";
    case Shape::Fall:
        return "fall(" + part(0) + ")";
    case Shape::Held:
        return "held(" + part(0) + ", " + durationText(*formula.longest, step) + ")";
    case Shape::Sequence: {
        std::string all;
        for (std::size_t i = 0; i < formula.parts.size(); ++i)
            all += part(i) + ", ";
        return "sequence(" + all + durationText(*formula.longest, step) + ")";
    }
    case Shape::Moved:
    case Shape::MovedWithin:
        return "moved(" + formula.signal + ", " + std::to_string(formula.constant) +
               (formula.signal == "y" ? " deg" : " kt") + (formula.parts.empty() ? "" : ", " + part(0)) + ")";
    default:
        return readingText(formula);
    }
}

Formula randomFormula(std::mt19937& random, int depth) {
    if (depth == 0 || chance(random, 6))
        return randomReading(random);
    Formula formula;
    formula.shape =
        static_cast<Shape>(pick(random, static_cast<int>(Shape::Not), static_cast<int>(Shape::MovedWithin)));
    int parts = 1;
    if (formula.shape == Shape::And || formula.shape == Shape::Or || formula.shape == Shape::Since)
        parts = 2;
    if (formula.shape == Shape::Sequence)
        parts = pick(random, 2, 3);
    if (formula.shape == Shape::Moved)
        parts = 0;
    for (int i = 0; i < parts; ++i)
        formula.parts.push_back(randomFormula(random, depth - 1));
    const bool mustEnd = formula.shape == Shape::Held || formula.shape == Shape::Sequence;
    const bool hasStart = !mustEnd && chance(random, 2);
    formula.shortest = hasStart ? pick(random, 0, 4) : 0;
    if (mustEnd || !chance(random, 4))
        formula.longest = formula.shortest + pick(random, formula.shape == Shape::Sequence ? 1 : 0, 5);
    if (formula.shape == Shape::Moved || formula.shape == Shape::MovedWithin) {
        formula.signal = chance(random, 2) ? "x" : "y";
        formula.constant = pick(random, 1, 4);
    }
    return formula;
}

Trace randomTrace(std::mt19937& random, const SignalTable& signals, int steps) {
    Trace trace;
    std::vector<Value> values(signals.size());
    const bool isLively = chance(random, 2);
    const bool hasUnknown = chance(random, 2);
    for (int step = 0; step < steps; ++step) {
        for (std::size_t i = 0; i < signals.size(); ++i) {
            if (step > 0 && !chance(random, isLively ? 2 : 5))
                continue;
            const SignalKind kind = signals.all()[i].kind;
            if (hasUnknown && chance(random, 4))
                values[i] = Value::unknown();
            else if (kind == SignalKind::OnOff)
                values[i] = Value::onOff(chance(random, 2));
            else
                values[i] = Value::number(
                    pick(random, kind == SignalKind::Position ? -1 : 0, kind == SignalKind::Position ? 2 : 4));
        }
        trace.steps.push_back(values);
    }
    trace.references.assign(2 * static_cast<std::size_t>(steps), 0);
    return trace;
}

} // namespace flowhand::definition
