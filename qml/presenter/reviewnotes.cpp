#include "presenter/reviewnotes.h"

#include <algorithm>

#include <QDateTime>
#include <QPointer>

#include "presenter/phrasetext.h"
#include "presenter/reviewrows.h"
#include "procedure/phase.h"
#include "report/notelines.h"

namespace flowhand {

namespace {

const std::vector<std::string>& choicesOf(NoteKind kind) {
    static const std::vector<std::string> none;
    return kind == NoteKind::Ruling ? rulings() : kind == NoteKind::Cause ? causes() : none;
}

} // namespace

ReviewNotes::ReviewNotes(RunShelf& shelf, QObject* parent)
    : QObject(parent), m_shelf(shelf), m_lines(ReviewNoteRow::staticMetaObject, this),
      m_marks(PhaseMarkRow::staticMetaObject, this) {}

void ReviewNotes::show(std::shared_ptr<const StoredDebrief> debrief) {
    m_debrief = std::move(debrief);
    m_notes = m_debrief->run().notes;
    cancel();
    setFailure({});
    showNotes();
}

void ReviewNotes::tellAnew() {
    if (m_debrief)
        showNotes();
}

void ReviewNotes::beginAt(Time time) {
    flowhand::Note note;
    note.anchor = anchorAt(flow(), m_debrief->timeline().run().results, time);
    open(std::move(note), tr("Note at %1").arg(QString::fromStdString(clockText(time))));
}

void ReviewNotes::beginOn(Kind kind, int step, int guard) {
    flowhand::Note note;
    note.kind = static_cast<NoteKind>(kind);
    std::string what;
    if (guard >= 0) {
        note.guard = flow().guards[static_cast<std::size_t>(guard)].id;
        what = flow().guards[static_cast<std::size_t>(guard)].title;
    } else if (step >= 0) {
        note.anchor.step = flow().steps[static_cast<std::size_t>(step)].id;
        what = flow().steps[static_cast<std::size_t>(step)].title;
    } else {
        return;
    }
    if (const flowhand::Note* before = replacedBy(note, m_notes))
        note = *before;
    else
        note.choice = choicesOf(note.kind).front();
    open(std::move(note),
         (kind == Ruling ? tr("Ruling on “%1”") : tr("Cause of “%1”")).arg(QString::fromStdString(what)));
}

void ReviewNotes::begin(int kind) {
    flowhand::Note note;
    note.kind = static_cast<NoteKind>(kind);
    if (const flowhand::Note* before = find(note.kind))
        note = *before;
    else if (note.kind == NoteKind::Account)
        note.author = m_debrief->run().header.pilot;
    open(std::move(note), kind == Account     ? tr("The pilot's own account")
                          : kind == Objective ? tr("What this run was flown for")
                                              : tr("What is practised next, as agreed"));
}

void ReviewNotes::open(flowhand::Note note, const QString& title) {
    m_draft = std::move(note);
    m_isSaving = false;
    m_title = title;
    setFailure({});
    Q_EMIT draftChanged();
}

void ReviewNotes::choose(int choice) {
    const std::vector<std::string>& all = m_draft ? choicesOf(m_draft->kind) : choicesOf(NoteKind::Note);
    if (choice < 0 || choice >= static_cast<int>(all.size()))
        return;
    m_draft->choice = all[static_cast<std::size_t>(choice)];
    Q_EMIT draftChanged();
}

void ReviewNotes::save(const QString& words) {
    if (!m_draft || m_isSaving)
        return;
    flowhand::Note note = *m_draft;
    note.text = words.trimmed().toStdString();
    write(std::move(note), true);
}

void ReviewNotes::cancel() {
    m_draft.reset();
    Q_EMIT draftChanged();
}

void ReviewNotes::mark(int row, int mark) {
    const std::vector<std::string> phases = phasesOf(flow());
    if (row < 0 || row >= static_cast<int>(phases.size()))
        return;
    flowhand::Note note;
    note.kind = NoteKind::Mark;
    note.phase = phases[static_cast<std::size_t>(row)];
    note.choice = std::to_string(mark);
    write(std::move(note), false);
}

void ReviewNotes::write(flowhand::Note note, bool isDraft) {
    if (const Status checked = checkNote(note, flow(), m_notes); !checked)
        return setFailure(QString::fromStdString(describe(checked.error())));
    m_isSaving |= isDraft;
    note.writtenUnixMillis = QDateTime::currentMSecsSinceEpoch();
    const std::int64_t run = m_debrief->run().summary.id;
    m_shelf.ask<std::int64_t>(
        [run, note](Store& store) {
            return store.writeNote(run, note);
        },
        [this, self = QPointer(this), debrief = m_debrief, note, isDraft](Result<std::int64_t> id) {
            if (!self || debrief != m_debrief)
                return;
            if (isDraft && std::exchange(m_isSaving, false) && id)
                cancel();
            if (id)
                kept(note, *id);
            else
                setFailure(QString::fromStdString(describe(id.error())));
        });
}

void ReviewNotes::kept(flowhand::Note note, std::int64_t id) {
    if (const flowhand::Note* before = replacedBy(note, m_notes))
        m_notes.erase(m_notes.begin() + (before - m_notes.data()));
    note.id = id;
    m_notes.push_back(std::move(note));
    setFailure({});
    showNotes();
}

void ReviewNotes::remove(int row) {
    if (row < 0 || row >= m_lines.count())
        return;
    const std::int64_t id = m_lines.row<ReviewNoteRow>(row).rowId;
    m_shelf.ask<void>(
        [id](Store& store) {
            return store.removeNote(id);
        },
        [this, self = QPointer(this), debrief = m_debrief, id](Status removed) {
            if (!self || debrief != m_debrief)
                return;
            if (!removed)
                return setFailure(QString::fromStdString(describe(removed.error())));
            std::erase_if(m_notes, [id](const flowhand::Note& note) {
                return note.id == id;
            });
            setFailure({});
            showNotes();
        });
}

void ReviewNotes::showNotes() {
    DebriefInput input = m_debrief->input();
    input.notes = &m_notes;
    std::vector<ReviewNoteRow> rows;
    for (const NoteLine& line : noteLines(input))
        rows.push_back({static_cast<int>(line.id), sentenceOf(line.what), textOf(line.where),
                        QString::fromStdString(line.text), timeOfNote(line.id)});
    m_lines.setRows(rows);
    std::vector<PhaseMarkRow> marks;
    for (const std::string& phase : phasesOf(flow())) {
        PhaseMarkRow row;
        row.rowId = static_cast<int>(marks.size());
        const std::optional<std::size_t> index = findPhase(phase);
        row.title = textOf(index ? phases()[*index].title : Phrase(phase));
        for (const flowhand::Note& note : m_notes)
            if (note.kind == NoteKind::Mark && note.phase == phase)
                row.mark = QString::fromStdString(note.choice).toInt();
        row.meaning = meaningOf(row.mark);
        marks.push_back(row);
    }
    m_marks.setRows(marks);
    Q_EMIT changed();
}

double ReviewNotes::timeOfNote(std::int64_t id) const {
    for (const flowhand::Note& note : m_notes)
        if (note.id == id && note.kind == NoteKind::Note)
            return seconds(timeOf(note.anchor, flow(), m_debrief->timeline().run().results));
    return -1.0;
}

const flowhand::Note* ReviewNotes::find(NoteKind kind) const {
    const auto found = std::find_if(m_notes.begin(), m_notes.end(), [kind](const flowhand::Note& note) {
        return note.kind == kind;
    });
    return found == m_notes.end() ? nullptr : &*found;
}

void ReviewNotes::setFailure(const QString& failure) {
    m_failure = failure;
    Q_EMIT failureChanged();
}

QString ReviewNotes::meaningOf(int mark) {
    return textOf(markWords(mark));
}

QString ReviewNotes::hint() const {
    if (!m_draft)
        return {};
    switch (m_draft->kind) {
    case NoteKind::Ruling:
        return tr("The reason; the score stays as it is");
    case NoteKind::Cause:
        return tr("Words to it, if any are needed");
    default:
        return {};
    }
}

QString ReviewNotes::draft() const {
    if (!m_draft)
        return {};
    // A note that says nothing yet still says where to look.
    return m_draft->kind == NoteKind::Note && m_draft->text.empty() ? tr("Look here")
                                                                    : QString::fromStdString(m_draft->text);
}

QStringList ReviewNotes::choices() const {
    QStringList words;
    if (m_draft)
        for (const std::string& choice : choicesOf(m_draft->kind))
            words << textOf(choiceWords(choice));
    return words;
}

int ReviewNotes::choice() const {
    const std::vector<std::string>& all = choicesOf(m_draft ? m_draft->kind : NoteKind::Note);
    const auto at = m_draft ? std::find(all.begin(), all.end(), m_draft->choice) : all.end();
    return at != all.end() ? static_cast<int>(at - all.begin()) : -1;
}

} // namespace flowhand
