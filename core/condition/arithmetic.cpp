#include "condition/arithmetic.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "base/names.h"
#include "condition/program.h"

namespace flowhand {

namespace {

using Kind = Syntax::Kind;
using Step = CalculationStep::Kind;

std::string unitName(const Unit& unit) {
    return unit.symbol.empty() ? (unit.dimension.isNone() ? "no unit" : "a combined unit") : unit.symbol;
}

/// "kt (or m/s, km/h, ft/min)": what may stand where a quantity of `unit` is wanted.
std::string unitChoice(const Unit& unit) {
    std::vector<std::string> others;
    for (const std::string& symbol : unitSymbols())
        if (symbol != unit.symbol && findUnit(symbol)->dimension == unit.dimension)
            others.push_back(symbol);
    return unitName(unit) + (others.empty() ? "" : " (or " + joined(others, ", ") + ")");
}

/// A unit for a product or quotient, with its symbol where there is one.
Unit combinedUnit(Dimension dimension, double factor) {
    for (const std::string& symbol : unitSymbols()) {
        const Unit known = *findUnit(symbol);
        if (known.dimension == dimension && known.factor == factor)
            return known;
    }
    return {"", dimension, factor};
}

/// Of what was calculated from decimals, the decimal that it is: 0.1 + 0.2 is 0.3. Of more digits than people write it
/// stays as it is.
double nearestDecimal(const Calculated& calculated) {
    constexpr int kDigits = 12; // more than anyone writes, few enough that rounding does not reach them
    char text[40];
    const auto written =
        std::to_chars(text, text + sizeof text, calculated.number, std::chars_format::general, kDigits);
    double decimal = calculated.number;
    (void)std::from_chars(text, written.ptr, decimal);
    return std::fabs(decimal - calculated.number) <= calculated.doubt ? decimal : calculated.number;
}

} // namespace

void addSignals(std::vector<SignalId>& signals, const std::vector<SignalId>& more) {
    for (const SignalId signal : more)
        if (std::find(signals.begin(), signals.end(), signal) == signals.end())
            signals.push_back(signal);
}

std::optional<Quantity> Arithmetic::quantity(const Syntax& tree) {
    switch (tree.kind) {
    case Kind::Number:
        return number(tree);
    case Kind::Word:
        return signal(tree);
    case Kind::Aircraft:
        return fromAircraft(tree);
    case Kind::Sum:
        return sum(tree);
    case Kind::Product:
        return product(tree);
    case Kind::Call:
        return call(tree);
    case Kind::Negate: {
        std::optional<Quantity> operand = quantity(tree.children[0]);
        if (!operand)
            return std::nullopt;
        operand->expression.push({Step::Negate, 0.0, kNoSignal});
        return finished(tree, std::move(*operand));
    }
    default:
        return notANumber(tree);
    }
}

std::optional<Quantity> Arithmetic::notANumber(const Syntax& tree) {
    m_complaints.error(tree.begin, "wrong-type",
                       m_complaints.quoted(tree.begin, tree.end) +
                           " is not a number; expected a number with its unit, or a signal that is one");
    return std::nullopt;
}

/// Folds constants and keeps the stack small.
std::optional<Quantity> Arithmetic::finished(const Syntax& tree, Quantity quantity) {
    quantity.begin = tree.begin;
    quantity.end = tree.end;
    if (quantity.expression.isConstant()) {
        const Calculated result = quantity.expression.calculate({});
        if (std::isnan(result.number)) {
            m_complaints.error(tree.begin, "bad-number",
                               m_complaints.quoted(tree.begin, tree.end) +
                                   " has no value: it divides by 0 or is too large");
            return std::nullopt;
        }
        const double value = quantity.expression.steps().size() > 1 ? nearestDecimal(result) : result.number;
        quantity.expression = {};
        quantity.expression.push({Step::Constant, value, kNoSignal});
    }
    if (quantity.expression.deepest() > kDeepestStack) {
        m_complaints.error(tree.begin, "too-deep", "this calculation is nested too deep; split the condition");
        return std::nullopt;
    }
    return quantity;
}

std::optional<Quantity> Arithmetic::number(const Syntax& tree) {
    Quantity result;
    double value = 0.0;
    const auto [end, problem] = std::from_chars(tree.text.data(), tree.text.data() + tree.text.size(), value);
    if (problem != std::errc()) {
        m_complaints.error(tree.begin, "bad-number", "'" + tree.text + "' is too large a number");
        return std::nullopt;
    }
    result.unit = findUnit(tree.unit).value_or(Unit{});
    result.expression.push({Step::Constant, value, kNoSignal});
    return finished(tree, std::move(result));
}

void Arithmetic::complainOfUnknown(const Syntax& word) {
    std::vector<std::string> known;
    for (const Signal& signal : m_scope.signals.all())
        known.push_back(signal.name);
    std::string hint = nearestHint(word.text, known);
    if (hint.empty() && m_scope.aircraft.find(word.text) != m_scope.aircraft.end())
        hint = "; did you mean 'aircraft." + word.text + "'?";
    m_complaints.error(word.begin, "unknown-name", "there is no signal '" + word.text + "'" + hint);
}

std::optional<Quantity> Arithmetic::signal(const Syntax& tree) {
    const std::optional<SignalId> id = m_scope.signals.find(tree.text);
    if (!id) {
        complainOfUnknown(tree);
        return std::nullopt;
    }
    const Signal& signal = m_scope.signals[*id];
    if (signal.kind != SignalKind::Number) {
        m_complaints.error(tree.begin, "wrong-type",
                           signal.kind == SignalKind::OnOff
                               ? "'" + tree.text +
                                     "' is on or off, not a number; write it alone or compare it with true or false"
                               : "'" + tree.text + "' is a position, not a number; compare it with one of " +
                                     joined(signal.positions, ", "));
        return std::nullopt;
    }
    Quantity result;
    result.unit = signal.unit;
    result.signals = {*id};
    result.expression.push({Step::Signal, 0.0, *id});
    return finished(tree, std::move(result));
}

const AircraftValue* Arithmetic::aircraftValue(const Syntax& tree) {
    const auto at = m_scope.aircraft.find(tree.text);
    if (at != m_scope.aircraft.end())
        return &at->second;
    std::vector<std::string> known;
    for (const auto& [name, value] : m_scope.aircraft)
        known.push_back(name);
    m_complaints.error(tree.begin, "unknown-name",
                       "the aircraft file has no value '" + tree.text + "'" + nearestHint(tree.text, known));
    return nullptr;
}

std::optional<Quantity> Arithmetic::fromAircraft(const Syntax& tree) {
    if (const std::optional<SignalId> computed = m_scope.signals.find("aircraft." + tree.text)) {
        Quantity result;
        result.unit = m_scope.signals[*computed].unit;
        result.signals = {*computed};
        result.expression.push({Step::Signal, 0.0, *computed});
        return finished(tree, std::move(result));
    }
    const AircraftValue* value = aircraftValue(tree);
    if (value == nullptr)
        return std::nullopt;
    if (value->isWord) {
        m_complaints.error(tree.begin, "wrong-type",
                           "aircraft." + tree.text + " is the word '" + value->word + "', not a number");
        return std::nullopt;
    }
    Quantity result;
    result.unit = value->unit;
    result.expression.push({Step::Constant, value->number, kNoSignal});
    return finished(tree, std::move(result));
}

bool Arithmetic::convertTo(const Quantity& to, Quantity& quantity) {
    if (quantity.unit.dimension == to.unit.dimension) {
        if (quantity.unit.factor != to.unit.factor) {
            if (quantity.expression.isConstant()) {
                const double value = convert(quantity.expression.evaluate({}), quantity.unit, to.unit);
                quantity.expression = {};
                quantity.expression.push({Step::Constant, value, kNoSignal});
            } else {
                quantity.expression.push({Step::Scale, quantity.unit.factor / to.unit.factor, kNoSignal});
            }
        }
        quantity.unit = to.unit;
        return true;
    }
    const std::string found = m_complaints.quoted(quantity.begin, quantity.end);
    const std::string other = m_complaints.quoted(to.begin, to.end);
    if (quantity.unit.dimension.isNone()) {
        const bool isNumber = quantity.expression.isConstant() && quantity.expression.steps().size() == 1;
        const std::string example =
            isNumber && !to.unit.symbol.empty()
                ? "; write its unit, as in '" + found.substr(1, found.size() - 2) + " " + to.unit.symbol + "'"
                : "; expected " + unitChoice(to.unit);
        m_complaints.error(quantity.begin, "missing-unit",
                           found + " has no unit, but " + other + " is in " + unitName(to.unit) + example);
    } else if (to.unit.dimension.isNone()) {
        m_complaints.error(quantity.begin, "wrong-unit",
                           found + " is in " + unitName(quantity.unit) + ", but " + other +
                               " has no unit; write a plain number");
    } else {
        m_complaints.error(quantity.begin, "wrong-unit",
                           found + " is in " + unitName(quantity.unit) + ", but " + other + " is not; expected " +
                               unitChoice(to.unit));
    }
    return false;
}

std::optional<Quantity> Arithmetic::sum(const Syntax& tree) {
    std::optional<Quantity> result = quantity(tree.children[0]);
    for (std::size_t i = 1; i < tree.children.size(); ++i) {
        std::optional<Quantity> next = quantity(tree.children[i]);
        if (!result || !next || !convertTo(*result, *next))
            return std::nullopt;
        result->expression.append(next->expression);
        result->expression.push({tree.operators[i - 1] == '+' ? Step::Add : Step::Subtract, 0.0, kNoSignal});
        addSignals(result->signals, next->signals);
    }
    return finished(tree, std::move(*result));
}

std::optional<Quantity> Arithmetic::product(const Syntax& tree) {
    std::optional<Quantity> result = quantity(tree.children[0]);
    for (std::size_t i = 1; i < tree.children.size(); ++i) {
        const std::optional<Quantity> next = quantity(tree.children[i]);
        if (!result || !next)
            return std::nullopt;
        const bool isTimes = tree.operators[i - 1] == '*';
        const Dimension dimension =
            isTimes ? result->unit.dimension * next->unit.dimension : result->unit.dimension / next->unit.dimension;
        const double factor =
            isTimes ? result->unit.factor * next->unit.factor : result->unit.factor / next->unit.factor;
        result->expression.append(next->expression);
        result->expression.push({isTimes ? Step::Multiply : Step::Divide, 0.0, kNoSignal});
        if (dimension.isNone() && factor != 1.0)
            result->expression.push({Step::Scale, factor, kNoSignal});
        result->unit = dimension.isNone() ? Unit{} : combinedUnit(dimension, factor);
        addSignals(result->signals, next->signals);
    }
    return finished(tree, std::move(*result));
}

std::optional<Quantity> Arithmetic::call(const Syntax& tree) {
    const bool isAbsolute = tree.text == "abs";
    if (!isAbsolute && tree.text != "min" && tree.text != "max")
        return notANumber(tree);
    if (isAbsolute ? tree.children.size() != 1 : tree.children.size() < 2) {
        m_complaints.error(tree.begin, "wrong-arguments",
                           isAbsolute ? "'abs' takes one number, as in 'abs(tiller)'"
                                      : "'" + tree.text + "' takes two or more numbers, as in '" + tree.text +
                                            "(thrust_lever_1, thrust_lever_2)'");
        return std::nullopt;
    }
    std::optional<Quantity> result = quantity(tree.children[0]);
    if (isAbsolute && result)
        result->expression.push({Step::Absolute, 0.0, kNoSignal});
    for (std::size_t i = 1; i < tree.children.size(); ++i) {
        std::optional<Quantity> next = quantity(tree.children[i]);
        if (!result || !next || !convertTo(*result, *next))
            return std::nullopt;
        result->expression.append(next->expression);
        result->expression.push({tree.text == "min" ? Step::Smaller : Step::Larger, 0.0, kNoSignal});
        addSignals(result->signals, next->signals);
    }
    return result ? finished(tree, std::move(*result)) : std::nullopt;
}

std::optional<Duration> Arithmetic::duration(const Syntax& tree) {
    const auto refuse = [&](const std::string& why) {
        m_complaints.error(tree.begin, "bad-window", why);
        return std::nullopt;
    };
    Result<Duration> result = Duration{};
    if (tree.kind == Kind::Number) {
        result = parseDuration(tree.text + " " + tree.unit);
        if (!result)
            return refuse(m_complaints.quoted(tree.begin, tree.end) +
                          " is not a length of time; write a number and s, ms, min or h, as in '2 s'");
    } else if (tree.kind == Kind::Aircraft) {
        const AircraftValue* value = aircraftValue(tree);
        if (value == nullptr)
            return std::nullopt;
        const Unit second = *findUnit("s");
        if (value->isWord || value->unit.dimension != second.dimension)
            return refuse("aircraft." + tree.text + " is not a length of time");
        const double length = convert(value->number, value->unit, second);
        if (!(length >= 0.0) || length > seconds(kLongestWindow))
            return refuse("aircraft." + tree.text + " is negative or too long for a window");
        result = fromSeconds(length);
    } else {
        return refuse("expected a length of time, as in '2 s', found " + m_complaints.quoted(tree.begin, tree.end));
    }
    if (*result > kLongestWindow)
        return refuse(m_complaints.quoted(tree.begin, tree.end) + " is too long; at most 138000 h");
    return *result;
}

} // namespace flowhand
