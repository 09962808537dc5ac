#include "store/notebook.h"

#include "store/window.h"

namespace flowhand {

namespace {

tl::unexpected<Error> noSuchNote(std::int64_t note, const std::string& file) {
    return failure("no-such-note",
                   "there is no note " + std::to_string(note) + "; 'flowhand note RUN' lists those of a run",
                   {file, 0, 0});
}

} // namespace

Result<std::vector<Note>> Notebook::notesOf(std::int64_t run) {
    Result<Statement> rows =
        m_connection.prepare("SELECT id, written_ms, kind, author, step, offset_us, time_us, guard, phase, choice, "
                             "text FROM note WHERE run = ? ORDER BY id");
    if (!rows)
        return tl::unexpected(rows.error());
    std::vector<Note> notes;
    rows->bind(1, run);
    for (;;) {
        const Result<bool> row = rows->step();
        if (!row)
            return tl::unexpected(row.error());
        if (!*row)
            return notes;
        const std::optional<NoteKind> kind = findNoteKind(rows->text(2));
        if (!kind)
            continue;
        Note note;
        note.id = rows->integer(0);
        note.writtenUnixMillis = rows->integer(1);
        note.kind = *kind;
        note.author = rows->text(3);
        note.anchor = {rows->text(4), std::chrono::microseconds(rows->integer(5)),
                       std::chrono::microseconds(rows->integer(6))};
        note.guard = rows->text(7);
        note.phase = rows->text(8);
        note.choice = rows->text(9);
        note.text = rows->text(10);
        notes.push_back(std::move(note));
    }
}

Result<std::int64_t> Notebook::write(std::int64_t run, const Note& note, const Flow& flow) {
    Result<Transaction> transaction = Transaction::begin(m_connection);
    if (!transaction)
        return tl::unexpected(transaction.error());
    const Result<std::vector<Note>> others = notesOf(run);
    if (!others)
        return tl::unexpected(others.error());
    if (const Status allowed = checkNote(note, flow, *others); !allowed)
        return tl::unexpected(allowed.error());
    if (const Note* const replaced = replacedBy(note, *others))
        if (const Status removed = remove(replaced->id); !removed)
            return tl::unexpected(removed.error());
    if (const Status inserted = insert(run, note); !inserted)
        return tl::unexpected(inserted.error());
    const std::int64_t id = m_connection.lastId();
    if (const Status committed = transaction->commit(); !committed)
        return tl::unexpected(committed.error());
    return id;
}

Status Notebook::insert(std::int64_t run, const Note& note) {
    Result<Statement> insert =
        m_connection.prepare("INSERT INTO note (run, written_ms, kind, author, step, offset_us, time_us, guard, "
                             "phase, choice, text) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    if (!insert)
        return tl::unexpected(insert.error());
    insert->bind(1, run).bind(2, note.writtenUnixMillis).bindText(3, nameOf(note.kind)).bindText(4, note.author);
    insert->bindText(5, note.anchor.step).bind(6, micros(note.anchor.offset)).bind(7, micros(note.anchor.time));
    insert->bindText(8, note.guard).bindText(9, note.phase).bindText(10, note.choice).bindText(11, note.text);
    return insert->run();
}

Status Notebook::remove(std::int64_t note) {
    Result<Statement> removal = m_connection.prepare("DELETE FROM note WHERE id = ?");
    if (!removal)
        return tl::unexpected(removal.error());
    if (const Status done = removal->bind(1, note).run(); !done)
        return done;
    return m_connection.changes() == 0 ? noSuchNote(note, m_connection.file()) : Status();
}

} // namespace flowhand
