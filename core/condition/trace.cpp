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

/// "nan", "-inf" and the like, as other programs write what is no number.
bool isNoNumber(std::string_view text) {
    double number = 0.0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), number);
    return problem == std::errc() && end == text.data() + text.size() && !std::isfinite(number);
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

/// Gates that are all called by numbers stand in the order of these.
void sortIfNumbers(std::vector<std::string>& positions) {
    const bool areNumbers = std::all_of(positions.begin(), positions.end(), [](const std::string& position) {
        return numberOf(position).has_value();
    });
    if (areNumbers)
        std::stable_sort(positions.begin(), positions.end(), [](const std::string& a, const std::string& b) {
            return *numberOf(a) < *numberOf(b);
        });
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

std::vector<std::string> TraceTable::signalNames() const {
    std::vector<std::string> names;
    for (std::size_t column = 1; column < m_header.cells.size(); ++column)
        if (const Result<Heading> heading = headingOf(m_header.cells[column].text))
            names.push_back(heading->name);
    return names;
}

Result<std::vector<TraceTable::Column>> TraceTable::columnsOfHeader() const {
    std::vector<Column> columns;
    for (std::size_t i = 1; i < m_header.cells.size(); ++i) {
        Result<Heading> heading = headingOf(m_header.cells[i].text);
        if (!heading)
            return bad(m_header, m_header.cells[i], heading.error().message);
        columns.push_back({i, std::move(heading->name), heading->unit, heading->hasUnit, false, std::nullopt, {}});
    }
    return columns;
}

Status TraceTable::lookAtCells(Column& column) const {
    bool isOnOff = true;
    bool isEmpty = true;
    column.isNumber = true;
    for (const Line& line : m_lines) {
        const std::string& text = line.cells[column.index].text;
        if (text.empty())
            continue;
        if (isNoNumber(text))
            return bad(line, line.cells[column.index],
                       "'" + text + "' is not a number; leave the cell empty where there is no new value");
        isEmpty = false;
        isOnOff = isOnOff && (text == "true" || text == "false");
        column.isNumber = column.isNumber && numberOf(text).has_value();
        if (!column.isNumber && column.hasUnit)
            return bad(line, line.cells[column.index],
                       "'" + text + "' is not a number, but " + column.name + " has a unit");
    }
    column.isNumber = column.isNumber && !isEmpty;
    if (column.hasUnit)
        column.kind = SignalKind::Number;
    else if (!isEmpty && !column.isNumber)
        column.kind = isOnOff ? SignalKind::OnOff : SignalKind::Position;
    return {};
}

TraceTable::Column* TraceTable::columnOf(std::vector<Column>& columns, const std::string& name) {
    const auto at = std::find_if(columns.begin(), columns.end(), [&](const Column& column) {
        return column.name == name;
    });
    return at == columns.end() ? nullptr : &*at;
}

void TraceTable::settleKinds(std::vector<Column>& columns, const SignalTable& known, const TraceReading& reading) {
    const auto settle = [](Column& column, std::optional<SignalKind> kind) {
        if (!column.kind && kind && (!column.isNumber || *kind == SignalKind::Position))
            column.kind = kind;
    };
    for (Column& column : columns)
        if (const auto at = reading.kinds.find(column.name); at != reading.kinds.end())
            settle(column, at->second);
    for (std::size_t pass = 0; pass < reading.alike.size(); ++pass) { // one settles the next
        for (const auto& [left, right] : reading.alike) {
            Column* a = columnOf(columns, left);
            Column* b = columnOf(columns, right);
            const auto kindOf = [&](const Column* column, const std::string& name) {
                const std::optional<SignalId> id = known.find(name);
                return id ? std::optional(known[*id].kind) : column != nullptr ? column->kind : std::nullopt;
            };
            if (a != nullptr)
                settle(*a, kindOf(b, right));
            if (b != nullptr)
                settle(*b, kindOf(a, left));
        }
    }
}

/// Those of signals that are compared with each other are the same, in the same order.
void TraceTable::settlePositions(std::vector<Column>& columns, const SignalTable& known,
                                 const TraceReading& reading) const {
    const auto add = [](std::vector<std::string>& positions, const std::string& position) {
        const bool isKnown = std::find(positions.begin(), positions.end(), position) != positions.end();
        if (!isKnown && !position.empty() && position != "between")
            positions.push_back(position);
    };
    for (Column& column : columns) {
        if (column.kind != SignalKind::Position)
            continue;
        for (const Line& line : m_lines)
            add(column.positions, line.cells[column.index].text);
        for (const std::string& position : reading.positions)
            add(column.positions, position);
        sortIfNumbers(column.positions);
    }
    for (std::size_t pass = 0; pass < reading.alike.size(); ++pass) {
        for (const auto& [left, right] : reading.alike) {
            Column* a = columnOf(columns, left);
            Column* b = columnOf(columns, right);
            if (a != nullptr && b != nullptr) {
                for (const std::string& position : b->positions)
                    add(a->positions, position);
                sortIfNumbers(a->positions);
                b->positions = a->positions;
            } else if (a != nullptr && known.find(right)) {
                a->positions = known[*known.find(right)].positions;
            } else if (b != nullptr && known.find(left)) {
                b->positions = known[*known.find(left)].positions;
            }
        }
    }
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

Result<SignalTable> TraceTable::signalsOf(const std::vector<Column>& columns, const SignalTable& known,
                                          const TraceReading& reading) const {
    std::vector<Column> unknown;
    for (const Column& column : columns)
        if (!known.find(column.name))
            unknown.push_back(column);
    for (Column& column : unknown)
        if (const Status looked = lookAtCells(column); !looked)
            return tl::unexpected(looked.error());
    settleKinds(unknown, known, reading);
    settlePositions(unknown, known, reading);
    SignalTable signals = known;
    for (Column& column : unknown) {
        Signal signal;
        signal.name = column.name;
        signal.kind = column.kind.value_or(SignalKind::Number);
        signal.unit = column.unit;
        signal.positions = std::move(column.positions);
        const Result<SignalId> added = signals.add(std::move(signal));
        if (!added)
            return bad(m_header, m_header.cells[column.index], added.error().message);
    }
    return signals;
}

Result<Trace> TraceTable::read(const SignalTable& known, const TraceReading& reading) const {
    const Result<std::vector<Column>> columns = columnsOfHeader();
    if (!columns)
        return tl::unexpected(columns.error());
    Result<SignalTable> signals = signalsOf(*columns, known, reading);
    if (!signals)
        return tl::unexpected(signals.error());
    Trace trace{std::move(*signals), {}};
    std::vector<SignalId> ids(1, kNoSignal);
    std::vector<Unit> units(1);
    for (const Column& column : *columns) {
        const SignalId id = *trace.signals.find(column.name);
        const Signal& signal = trace.signals[id];
        if (column.hasUnit && signal.unit.dimension != column.unit.dimension)
            return bad(m_header, m_header.cells[column.index],
                       signal.name + " is in " + signal.unit.symbol + ", not in " + column.unit.symbol);
        ids.push_back(id);
        units.push_back(column.hasUnit ? column.unit : signal.unit);
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
