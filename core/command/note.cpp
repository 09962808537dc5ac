#include <memory>

#include "base/names.h"
#include "command/command.h"
#include "command/loadrun.h"
#include "report/notelines.h"
#include "session/anchor.h"

namespace flowhand {

namespace {

struct NoteOptions {
    std::string run;
    std::string text;
    std::string kind = "note";
    std::string step;
    std::string guard;
    std::string phase;
    std::string choice;
    std::string at;
    std::string author;
    std::string store = defaultStoreFile();
    std::int64_t removed = 0;
};

class NoteTaker {
public:
    NoteTaker(const NoteOptions& options, CommandLine& line) : m_options(options), m_line(line) {}

    int run() {
        Result<Store> store = Store::open(m_options.store, {false, true});
        if (!store)
            return complain(m_line, store.error());
        const Result<std::int64_t> id = findRun(*store, m_options.run);
        if (!id)
            return complain(m_line, id.error());
        if (m_options.removed != 0) {
            const Status removed = store->removeNote(m_options.removed);
            return removed ? kExitDone : complain(m_line, removed.error());
        }
        const Result<StoredDebrief> debrief = loadDebrief(*store, *id);
        if (!debrief)
            return complain(m_line, debrief.error());
        const bool isWriting = !m_options.text.empty() || !m_options.choice.empty();
        return isWriting ? write(*store, *id, debrief->input()) : list(debrief->input());
    }

private:
    int list(const DebriefInput& input) {
        const std::vector<NoteLine> lines = noteLines(input);
        if (lines.empty())
            m_line.out << "This run has no notes yet; 'flowhand note RUN TEXT' writes one.\n";
        for (const NoteLine& line : lines) {
            m_line.out << line.id << "  " << line.what.english();
            if (!line.where.isEmpty())
                m_line.out << " at " << line.where.english();
            if (!line.text.empty())
                m_line.out << ": " << line.text;
            m_line.out << (line.author.empty() ? "" : " (" + line.author + ")") << '\n';
        }
        return kExitDone;
    }

    int write(Store& store, std::int64_t id, const DebriefInput& input) {
        const Result<Note> note = noteFor(input);
        if (!note)
            return complain(m_line, note.error());
        const Result<std::int64_t> written = store.writeNote(id, *note);
        if (!written)
            return complain(m_line, written.error());
        m_line.out << "Note " << *written << " is written.\n";
        return kExitDone;
    }

    [[nodiscard]] Result<Note> noteFor(const DebriefInput& input) const {
        Note note;
        const std::optional<NoteKind> kind = findNoteKind(m_options.kind);
        if (!kind)
            return failure("bad-note", "'" + m_options.kind +
                                           "' is no kind of note; there are note, account, "
                                           "objective, ruling, cause, practice, mark");
        note.kind = *kind;
        note.text = m_options.text;
        note.author = m_options.author;
        note.guard = m_options.guard;
        note.phase = m_options.phase;
        note.choice = m_options.choice;
        const Result<Anchor> anchor = anchorFor(input);
        if (!anchor)
            return tl::unexpected(anchor.error());
        note.anchor = *anchor;
        return note;
    }

    /// `--at` counts from the step, where one is named, else from the start of the run.
    [[nodiscard]] Result<Anchor> anchorFor(const DebriefInput& input) const {
        Duration offset{};
        if (!m_options.at.empty()) {
            const Result<Duration> given = parseDuration(m_options.at);
            if (!given)
                return tl::unexpected(given.error());
            offset = *given;
        }
        if (!m_options.step.empty()) {
            const Anchor anchor{m_options.step, offset, {}};
            return Anchor{m_options.step, offset, timeOf(anchor, input.flow, input.results)};
        }
        const bool isPlaced = m_options.kind == "note" && !m_options.at.empty();
        return isPlaced ? anchorAt(input.flow, input.results, offset) : Anchor{};
    }

    const NoteOptions& m_options;
    CommandLine& m_line;
};

} // namespace

void addNoteCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<NoteOptions>();
    CLI::App* command = app.add_subcommand("note", "Write a note beside a stored run, or list its notes");
    command->add_option("RUN", options->run, "Its number, as 'flowhand runs' lists it, or last")->required();
    CLI::Option* text = command->add_option("TEXT", options->text, "The words; without any, the notes are listed");
    command
        ->add_option("--kind", options->kind,
                     "note; the pilot's own account; objective of the run; then, by the instructor: ruling or cause "
                     "(of a finding), mark (of a phase), practice (what is agreed to come next)")
        ->capture_default_str();
    command->add_option("--step", options->step, "The step it is about, by its id")->type_name("STEP");
    command->add_option("--guard", options->guard, "The guard that a ruling or cause is about")->type_name("GUARD");
    command->add_option("--phase", options->phase, "The phase that is marked, as in taxi_out")->type_name("PHASE");
    std::string marks;
    for (int mark = 1; mark <= 5; ++mark)
        marks += (mark > 1 ? "; " : "") + std::to_string(mark) + ", " + markWords(mark).english();
    command
        ->add_option("--choice", options->choice,
                     "Of a ruling: " + joined(rulings(), ", ") + ". Of a cause: " + joined(causes(), ", ") +
                         ". Of a mark: " + marks)
        ->type_name("WORD");
    command
        ->add_option("--at", options->at,
                     "Where in the run, as in '12.5 s': from when the step was due, or else from the start")
        ->type_name("TIME");
    command->add_option("--author", options->author, "Whose words they are")->type_name("NAME");
    command->add_option("--remove", options->removed, "Remove the note of this number")
        ->type_name("NUMBER")
        ->excludes(text);
    command->add_option("--db", options->store, "Where the runs are stored")->type_name("FILE");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return NoteTaker(*options, line).run();
        };
    });
}

} // namespace flowhand
