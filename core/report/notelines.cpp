#include "report/notelines.h"

#include <algorithm>

#include "base/figuretext.h"
#include "procedure/phase.h"
#include "session/anchor.h"

namespace flowhand {

namespace {

/// The order of a debriefing.
int rank(NoteKind kind) {
    switch (kind) {
    case NoteKind::Objective:
        return 0;
    case NoteKind::Account:
        return 1;
    case NoteKind::Note:
        return 2;
    case NoteKind::Ruling:
    case NoteKind::Cause:
        return 3;
    case NoteKind::Mark:
        return 4;
    case NoteKind::Practice:
        break;
    }
    return 5;
}

class LineWriter {
public:
    explicit LineWriter(const DebriefInput& input) : m_input(input) {}

    [[nodiscard]] NoteLine line(const Note& note) const {
        NoteLine line{note.id, what(note), {}, note.text, note.author};
        if (note.kind == NoteKind::Note)
            line.where = where(note.anchor);
        return line;
    }

private:
    [[nodiscard]] Phrase what(const Note& note) const {
        switch (note.kind) {
        case NoteKind::Note:
            return phrase("note");
        case NoteKind::Account:
            return phrase("the pilot's own account");
        case NoteKind::Objective:
            return phrase("objective");
        case NoteKind::Ruling:
            return phrase("ruling on '{1}': {2}").with(finding(note), choiceWords(note.choice));
        case NoteKind::Cause:
            return phrase("cause of '{1}', as the instructor sees it: {2}")
                .with(finding(note), choiceWords(note.choice));
        case NoteKind::Practice:
            return phrase("agreed to practise next");
        case NoteKind::Mark:
            break;
        }
        const std::optional<std::size_t> phase = findPhase(note.phase);
        const int mark = note.choice.empty() ? 0 : note.choice.front() - '0';
        return phrase("mark for {1}: {2} ({3})")
            .with(phase ? phases()[*phase].title : Phrase(note.phase), note.choice, markWords(mark));
    }

    [[nodiscard]] std::string titleOf(const std::string& step) const {
        for (const Step& other : m_input.flow.steps)
            if (other.id == step)
                return other.title;
        return step;
    }

    [[nodiscard]] std::string finding(const Note& note) const {
        for (const Guard& guard : m_input.flow.guards)
            if (guard.id == note.guard)
                return guard.title;
        return note.guard.empty() ? titleOf(note.anchor.step) : note.guard;
    }

    [[nodiscard]] Phrase where(const Anchor& anchor) const {
        std::string time = clockText(timeOf(anchor, m_input.flow, m_input.results));
        if (anchor.step.empty())
            return time;
        return phrase("{1}, {2} into '{3}'")
            .with(std::move(time), secondsToTenths(anchor.offset), titleOf(anchor.step));
    }

    const DebriefInput& m_input;
};

} // namespace

std::vector<NoteLine> noteLines(const DebriefInput& input) {
    std::vector<NoteLine> lines;
    if (input.notes == nullptr)
        return lines;
    std::vector<Note> notes = *input.notes;
    std::stable_sort(notes.begin(), notes.end(), [&](const Note& a, const Note& b) {
        if (a.kind == NoteKind::Note && b.kind == NoteKind::Note)
            return timeOf(a.anchor, input.flow, input.results) < timeOf(b.anchor, input.flow, input.results);
        return rank(a.kind) < rank(b.kind);
    });
    const LineWriter writer(input);
    for (const Note& note : notes)
        lines.push_back(writer.line(note));
    return lines;
}

} // namespace flowhand
