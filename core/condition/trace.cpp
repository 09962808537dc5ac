#include "condition/trace.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "base/names.h"
#include "condition/program.h"

namespace flowhand {

namespace {

constexpr int kDecimals = 9; // of a second: nanoseconds

std::string_view trimmed(std::string_view text) {
    const auto isSpace = [](char c) {
        return c == ' ' || c == '\t' || c == '\r';
    };
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

std::optional<double> numberOf(std::string_view text) {
    if (!text.empty() && text.front() == '+')
        text.remove_prefix(1);
    double number = 0.0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool isNumber = problem == std::errc() && end == text.data() + text.size() && std::isfinite(number);
    return isNumber ? std::optional(number) : std::nullopt;
}

/// Splits one line. A quoted cell may hold commas; "" in it is a quote.
std::vector<TraceTable::Cell> cellsOf(std::string_view line) {
    std::vector<TraceTable::Cell> cells;
    std::size_t at = 0;
    for (;;) {
        TraceTable::Cell cell;
        cell.column = static_cast<int>(at) + 1;
        bool isQuoted = false;
        std::string text;
        for (; at < line.size() && (isQuoted || line[at] != ','); ++at) {
            if (line[at] == '"' && isQuoted && at + 1 < line.size() && line[at + 1] == '"')
                text += line[++at];
            else if (line[at] == '"')
                isQuoted = !isQuoted;
            else
                text += line[at];
        }
        cell.text = trimmed(text);
        cells.push_back(std::move(cell));
        if (at >= line.size())
            return cells;
        ++at;
    }
}

struct Heading {
    std::string name;
    Unit unit;
    bool hasUnit = false;
};

/// "name" or "name [unit]".
Result<Heading> headingOf(const std::string& text) {
    Heading heading;
    const std::size_t open = text.find('[');
    heading.name = trimmed(std::string_view(text).substr(0, open));
    if (heading.name.empty())
        return failure("bad-trace", "a column has no name; the first line names every signal");
    if (open == std::string::npos)
        return heading;
    const std::size_t close = text.find(']', open);
    const std::string symbol(trimmed(std::string_view(text).substr(open + 1, close - open - 1)));
    const std::optional<Unit> unit = findUnit(symbol);
    if (close == std::string::npos || !unit)
        return failure("bad-trace", "'" + symbol + "' is not a unit; known are " + joined(unitSymbols(), ", "));
    heading.unit = *unit;
    heading.hasUnit = true;
    return heading;
}

} // namespace

Result<Time> parseSeconds(std::string_view text) {
    const auto bad = [&](const std::string& why) {
        return failure("bad-time", "'" + std::string(text) + "' is not a time: " + why);
    };
    std::size_t at = !text.empty() && (text[0] == '-' || text[0] == '+') ? 1 : 0;
    std::int64_t count = 0;
    int decimals = -1;
    bool hasDigits = false;
    for (; at < text.size(); ++at) {
        if (text[at] == '.' && decimals < 0) {
            decimals = 0;
            continue;
        }
        if (text[at] < '0' || text[at] > '9')
            return bad("write decimal seconds, as in 12.5");
        hasDigits = true;
        if (decimals == kDecimals) {
            if (text[at] != '0')
                return bad("the finest is 9 decimals, a nanosecond");
            continue;
        }
        count = count * 10 + (text[at] - '0');
        if (decimals >= 0)
            ++decimals;
        if (count > kLongestWindow.count())
            return bad("the latest is 500000000 s");
    }
    if (!hasDigits)
        return bad("write decimal seconds, as in 12.5");
    for (int i = std::max(decimals, 0); i < kDecimals; ++i) {
        count *= 10;
        if (count > kLongestWindow.count())
            return bad("the latest is 500000000 s");
    }
    return Time(text[0] == '-' ? -count : count);
}

std::string secondsText(Time time) {
    const std::int64_t size = time.count() < 0 ? -time.count() : time.count();
    std::string text = std::to_string(size / 1'000'000'000);
    if (size % 1'000'000'000 != 0) {
        std::string fraction = std::to_string(1'000'000'000 + size % 1'000'000'000).substr(1);
        fraction.erase(fraction.find_last_not_of('0') + 1);
        text += "." + fraction;
    }
    return (time.count() < 0 ? "-" : "") + text;
}

tl::unexpected<Error> TraceTable::bad(const Line& line, const Cell& cell, std::string message) const {
    return failure("bad-trace", std::move(message), {m_name, line.number, cell.column});
}

Result<TraceTable> TraceTable::parse(std::string_view text, std::string name) {
    TraceTable table;
    table.m_name = std::move(name);
    if (text.substr(0, 3) == "\xEF\xBB\xBF") // a byte order mark
        text.remove_prefix(3);
    int number = 0;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        const std::string_view content = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        ++number;
        if (trimmed(content).empty())
            continue;
        Line line{number, cellsOf(content)};
        if (table.m_header.cells.empty()) {
            table.m_header = std::move(line);
            continue;
        }
        const std::size_t wanted = table.m_header.cells.size();
        if (line.cells.size() != wanted)
            return table.bad(line, line.cells.back(),
                             "this line has " + std::to_string(line.cells.size()) +
                                 " cells, but the first line names " + std::to_string(wanted));
        table.m_lines.push_back(std::move(line));
    }
    const bool hasTime = !table.m_header.cells.empty() &&
                         (table.m_header.cells[0].text == "time" || table.m_header.cells[0].text == "time [s]");
    if (!hasTime)
        return failure("bad-trace", "the first line must be 'time' and the names of the signals, separated by commas",
                       {table.m_name, 1, 1});
    if (table.m_lines.empty())
        return failure("bad-trace", "there is no line with values after the first one", {table.m_name, 1, 1});
    return table;
}

Result<Signal> TraceTable::signalOf(std::size_t column, const std::string& name, const Unit& unit, bool hasUnit,
                                    const TraceReading& reading) const {
    Signal signal;
    signal.name = name;
    signal.unit = unit;
    bool isOnOff = true;
    bool isNumber = true;
    bool isEmpty = true;
    for (const Line& line : m_lines) {
        const std::string& text = line.cells[column].text;
        if (text.empty())
            continue;
        isEmpty = false;
        isOnOff = isOnOff && (text == "true" || text == "false");
        isNumber = isNumber && numberOf(text).has_value();
        if (!isNumber && hasUnit)
            return bad(line, line.cells[column], "'" + text + "' is not a number, but " + name + " has a unit");
    }
    if (isEmpty)
        signal.kind = hasUnit ? SignalKind::Number : reading.emptyColumn;
    else if (isOnOff)
        signal.kind = SignalKind::OnOff;
    else
        signal.kind = isNumber && (hasUnit || !reading.numbersArePositions) ? SignalKind::Number : SignalKind::Position;
    if (signal.kind != SignalKind::Position)
        return signal;
    const auto add = [&](const std::string& position) {
        const bool isKnown =
            std::find(signal.positions.begin(), signal.positions.end(), position) != signal.positions.end();
        if (!isKnown && !position.empty() && position != "between")
            signal.positions.push_back(position);
    };
    for (const Line& line : m_lines)
        add(line.cells[column].text);
    for (const std::string& position : reading.positions)
        add(position);
    return signal;
}

Result<Value> TraceTable::valueOf(const Line& line, const Cell& cell, const Signal& signal, const Unit& unit) const {
    if (signal.kind == SignalKind::Number) {
        const std::optional<double> number = numberOf(cell.text);
        if (!number)
            return bad(line, cell, "'" + cell.text + "' is not a number, as " + signal.name + " is");
        return Value::number(convert(*number, unit, signal.unit));
    }
    Result<Value> value = parseValue(signal, cell.text);
    if (!value)
        return bad(line, cell, value.error().message);
    return value;
}

Result<Trace> TraceTable::read(const SignalTable& known, const TraceReading& reading) const {
    Trace trace;
    trace.signals = known;
    std::vector<SignalId> ids(1, kNoSignal);
    std::vector<Unit> units(1);
    for (std::size_t column = 1; column < m_header.cells.size(); ++column) {
        const Cell& cell = m_header.cells[column];
        const Result<Heading> heading = headingOf(cell.text);
        if (!heading)
            return bad(m_header, cell, heading.error().message);
        std::optional<SignalId> id = known.find(heading->name);
        if (!id) {
            Result<Signal> signal = signalOf(column, heading->name, heading->unit, heading->hasUnit, reading);
            if (!signal)
                return tl::unexpected(signal.error());
            const Result<SignalId> added = trace.signals.add(std::move(*signal));
            if (!added)
                return bad(m_header, cell, added.error().message);
            id = *added;
        }
        const Signal& signal = trace.signals[*id];
        if (heading->hasUnit && signal.unit.dimension != heading->unit.dimension)
            return bad(m_header, cell,
                       signal.name + " is in " + signal.unit.symbol + ", not in " + heading->unit.symbol);
        ids.push_back(*id);
        units.push_back(heading->hasUnit ? heading->unit : signal.unit);
    }
    for (const Line& line : m_lines) {
        const Result<Time> time = parseSeconds(line.cells[0].text);
        if (!time)
            return bad(line, line.cells[0], time.error().message);
        if (!trace.rows.empty() && *time < trace.rows.back().time)
            return bad(line, line.cells[0], "time goes back; lines must be in the order of time");
        if (trace.rows.empty() || trace.rows.back().time < *time)
            trace.rows.push_back({*time, {}});
        for (std::size_t column = 1; column < ids.size(); ++column) {
            if (line.cells[column].text.empty())
                continue;
            const Result<Value> value = valueOf(line, line.cells[column], trace.signals[ids[column]], units[column]);
            if (!value)
                return tl::unexpected(value.error());
            trace.rows.back().changes.emplace_back(ids[column], *value);
        }
    }
    return trace;
}

} // namespace flowhand
