#include "session/mistakes.h"

#include <algorithm>
#include <utility>

#include "base/names.h"
#include "procedure/fileformat.h"

namespace flowhand {

namespace {

using namespace std::chrono_literals;
using Lines = std::vector<HandLine>;

/// A hand that has done one thing turns to the next after about this long. Our own choice.
constexpr Duration kNextReach = 1s;

template <class Some>
auto at(Some& lines, std::size_t index) {
    return lines.begin() + static_cast<std::ptrdiff_t>(index);
}

/// One [[mistake]]: which edit of the good hands it is, and what the run finds.
class MistakeReader {
public:
    MistakeReader(const TomlFile& file, const TomlNode& table, const Lines& good, const Aircraft& aircraft,
                  const Flow& flow, Problems& problems)
        : m_file(file), m_reader(file, table, "a mistake", problems), m_good(good), m_aircraft(aircraft), m_flow(flow),
          m_problems(problems) {}

    Mistake read() {
        Mistake mistake;
        mistake.place = m_reader.tableNode().place;
        mistake.title = m_reader.requiredText("title");
        mistake.lines = edited(mistake.edit);
        mistake.finds = m_reader.texts("finds");
        mistake.doesPass = m_reader.boolean("passes").value_or(true);
        if (mistake.finds.empty())
            m_problems.error("missing-key", "a mistake needs 'finds', what the run says of it", mistake.place);
        m_reader.finish();
        return mistake;
    }

private:
    Lines edited(std::string& edit) {
        const std::vector<std::string> edits = present({"leave_out", "swap", "late", "before", "instead_of"});
        if (edits.size() != 1) {
            m_problems.error("bad-mistake",
                             "a mistake is one of leave_out, swap, late, before and instead_of" +
                                 (edits.empty() ? std::string() : ", not " + joined(edits, " with ")),
                             m_reader.tableNode().place);
            return m_good;
        }
        edit = edits.front();
        if (edit == "swap")
            return swapped();
        const std::optional<HandStretch> stretch = linesNamed(m_reader.requiredText(edit), edit);
        const bool hasHands = edit == "before" || edit == "instead_of";
        Lines own = hasHands ? handsGiven() : Lines();
        const std::optional<Duration> by = edit == "late" ? m_reader.duration("by") : std::nullopt;
        if (edit == "late" && !by)
            m_problems.error("missing-key", "'late' needs how long, as in by = \"8 s\"", m_reader.placeOf("late"));
        if (!stretch)
            return m_good;
        for (HandLine& line : own)
            line.of = line.of.value_or(m_good[stretch->first].step);
        Lines lines = m_good;
        if (edit == "leave_out" || edit == "instead_of")
            lines.erase(at(lines, stretch->first), at(lines, stretch->end));
        if (by)
            lines[stretch->first].delay += *by;
        lines.insert(at(lines, stretch->first), own.begin(), own.end());
        return lines;
    }

    /// At the first step's turn comes what belongs to the second, and then what belongs to the first.
    Lines swapped() {
        const std::vector<std::string> names = m_reader.texts("swap");
        if (names.size() != 2) {
            m_problems.error("bad-mistake", "'swap' takes two steps, as in swap = [\"flap\", \"light\"]",
                             m_reader.placeOf("swap"));
            return m_good;
        }
        const std::optional<HandStretch> first = linesNamed(names[0], "swap");
        const std::optional<HandStretch> second = linesNamed(names[1], "swap");
        if (!first || !second)
            return m_good;
        if (second->first < first->end) {
            m_problems.error("bad-mistake", "'swap' names the steps in the order of the good hands",
                             m_reader.placeOf("swap"));
            return m_good;
        }
        Lines moved(at(m_good, second->first), at(m_good, second->end));
        Lines delayed(at(m_good, first->first), at(m_good, first->end));
        moved.front().step = delayed.front().step;
        moved.front().delay = delayed.front().delay;
        delayed.front().trigger = HandTrigger::After;
        delayed.front().delay = kNextReach;
        Lines lines = m_good;
        lines.erase(at(lines, second->first), at(lines, second->end));
        lines.erase(at(lines, first->first), at(lines, first->end));
        moved.insert(moved.end(), delayed.begin(), delayed.end());
        lines.insert(at(lines, first->first), moved.begin(), moved.end());
        return lines;
    }

    std::vector<std::string> present(std::initializer_list<const char*> keys) {
        std::vector<std::string> found;
        for (const char* key : keys)
            if (m_reader.node(key) != nullptr)
                found.emplace_back(key);
        return found;
    }

    std::optional<HandStretch> linesNamed(const std::string& name, std::string_view key) {
        std::vector<std::string> ids;
        for (const Step& step : m_flow.steps)
            ids.push_back(step.id);
        const auto found = std::find(ids.begin(), ids.end(), name);
        if (found == ids.end()) {
            m_problems.error("unknown-step", "the flow has no step '" + name + "'" + nearestHint(name, ids),
                             m_reader.placeOf(key));
            return std::nullopt;
        }
        const std::optional<HandStretch> stretch = linesOf(m_good, static_cast<std::size_t>(found - ids.begin()));
        if (!stretch)
            m_problems.error("bad-mistake", "the good hands have no line that waits for '" + name + "'",
                             m_reader.placeOf(key));
        return stretch;
    }

    Lines handsGiven() {
        const std::string text = m_reader.requiredText("hands");
        if (text.empty())
            return {};
        Problems found;
        Lines lines = parseHandScript(text, m_file.name(), m_aircraft, m_flow, found);
        for (Problem problem : found.all()) {
            problem.error.place = placeInHands(text, problem.error.place);
            m_problems.add(problem.severity, std::move(problem.error));
        }
        return lines;
    }

    /// Line and column of the script within the file.
    SourcePlace placeInHands(const std::string& text, const SourcePlace& place) {
        std::size_t offset = 0;
        for (int line = 1; line < place.line; ++line)
            offset = text.find('\n', offset) + 1;
        return m_file.placeInText(*m_reader.node("hands"), offset + static_cast<std::size_t>(place.column - 1));
    }

    const TomlFile& m_file;
    TomlReader m_reader;
    const Lines& m_good;
    const Aircraft& m_aircraft;
    const Flow& m_flow;
    Problems& m_problems;
};

std::vector<Mistake> readMistakes(const Result<TomlFile>& file, const Lines& good, const Aircraft& aircraft,
                                  const Flow& flow, Problems& problems) {
    if (!file) {
        problems.add(Severity::Error, file.error());
        return {};
    }
    std::vector<Mistake> mistakes;
    TomlReader reader(*file, file->root(), "the file of mistakes", problems);
    readFormat(reader);
    for (const TomlNode* table : reader.tables("mistake")) {
        Problems own;
        Mistake mistake = MistakeReader(*file, *table, good, aircraft, flow, own).read();
        for (const Problem& problem : own.all())
            problems.add(problem.severity, problem.error);
        if (!own.hasErrors())
            mistakes.push_back(std::move(mistake));
    }
    reader.finish();
    return mistakes;
}

} // namespace

std::vector<Mistake> loadMistakes(const std::string& file, const std::vector<HandLine>& good, const Aircraft& aircraft,
                                  const Flow& flow, Problems& problems) {
    return readMistakes(TomlFile::load(file), good, aircraft, flow, problems);
}

std::vector<Mistake> parseMistakes(std::string source, const std::string& name, const std::vector<HandLine>& good,
                                   const Aircraft& aircraft, const Flow& flow, Problems& problems) {
    return readMistakes(TomlFile::parse(std::move(source), name), good, aircraft, flow, problems);
}

} // namespace flowhand
