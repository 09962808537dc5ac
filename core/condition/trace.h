#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/error.h"
#include "base/signal.h"
#include "base/time.h"
#include "condition/reading.h"

namespace flowhand {

/// Signals over time, to try a condition on. Rows are in order of time; those of one time are one.
struct Trace {
    struct Row {
        Time time{};
        std::vector<std::pair<SignalId, Value>> changes; ///< of one signal, the last counts
    };
    SignalTable signals;
    std::vector<Row> rows; ///< at least one
};

/// A table of comma-separated cells, split but not yet understood. Owns its text.
class TraceTable {
public:
    struct Cell {
        std::string text;
        int column = 0; ///< where it begins in its line, from 1
    };
    struct Line {
        int number = 0;
        std::vector<Cell> cells; ///< as many as the header has
    };

    /// First line `time,SIGNAL,...`; a signal may be `name [unit]`. `name` stands in messages as the file.
    /// Errors: `bad-trace` with the place.
    [[nodiscard]] static Result<TraceTable> parse(std::string_view text, std::string name);

    /// Of the columns with signals, without their units.
    [[nodiscard]] std::vector<std::string> signalNames() const;

    /// `known`: signals whose kind, unit and positions are given, as those of an aircraft; the trace gets them all.
    /// Others take their kind from their cells: true and false, numbers, else positions in the order of first mention
    /// or, when all are called by numbers, of these. `reading` decides of columns without a value, and that numbers
    /// without a unit are names of positions.
    [[nodiscard]] Result<Trace> read(const SignalTable& known, const TraceReading& reading) const;

private:
    /// What a column says of its signal.
    struct Column {
        std::size_t index = 0;
        std::string name;
        Unit unit;
        bool hasUnit = false;
        bool isNumber = false;          ///< every cell
        std::optional<SignalKind> kind; ///< nothing: its cells leave it open
        std::vector<std::string> positions;
    };
    [[nodiscard]] tl::unexpected<Error> bad(const Line& line, const Cell& cell, std::string message) const;
    [[nodiscard]] Result<std::vector<Column>> columnsOfHeader() const;
    [[nodiscard]] Result<SignalTable> signalsOf(const std::vector<Column>& columns, const SignalTable& known,
                                                const TraceReading& reading) const;
    [[nodiscard]] Status lookAtCells(Column& column) const;
    [[nodiscard]] static Column* columnOf(std::vector<Column>& columns, const std::string& name);
    static void settleKinds(std::vector<Column>& columns, const SignalTable& known, const TraceReading& reading);
    void settlePositions(std::vector<Column>& columns, const SignalTable& known, const TraceReading& reading) const;
    [[nodiscard]] Result<Value> valueOf(const Line& line, const Cell& cell, const Signal& signal,
                                        const Unit& unit) const;

    std::string m_name;
    Line m_header;
    std::vector<Line> m_lines;
};

/// A decimal number of seconds, exactly: "12", "-0.5", "3.000000001".
[[nodiscard]] Result<Time> parseSeconds(std::string_view text);
[[nodiscard]] std::string secondsText(Time time);

} // namespace flowhand
