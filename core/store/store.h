#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "session/record.h"
#include "session/samplesbysignal.h"
#include "session/stretch.h"
#include "store/note.h"

namespace flowhand {

struct RunSummary {
    std::int64_t id = 0;
    std::int64_t startedUnixMillis = 0;
    std::string aircraftFolder;
    std::string flowTitle;
    std::string rigTitle;
    std::string pilot;
    bool isFinished = false;  ///< false: recovered after the program ended in mid-run
    bool isSimulated = false; ///< some hand samples came from the screen or a script
    bool isScored = false;
    std::int64_t milliPoints = 0;
    bool isPassed = false;
    Time length{};
    bool isDamaged = false; ///< only the id could be read; what is left of it is in load()
    std::string flowId;
    std::vector<std::string> tags;
    bool isReference = false; ///< others of its flow are compared with it
    bool isDeleted = false;   ///< still there, and can be restored
    std::int64_t notes = 0;   ///< how many
};

/// How samples are read back: in the run's order, to judge or to pass on; or each signal by itself, to look at.
enum class SampleForm : std::uint8_t { InOrder, BySignal };

/// A whole run, read back.
struct StoredRun {
    RunSummary summary;
    RunHeader header;
    std::vector<Sample> samples; ///< empty where they were asked for by signal
    SamplesBySignal bySignal;    ///< empty where they were asked for in order
    std::vector<RunCommand> commands;
    std::vector<std::string> eventLines; ///< canonical JSON, as derived when the run was flown
    Score score;
    std::vector<StepResult> results;
    RunLosses losses;
    std::string judgedBy; ///< the version that made events, score and results
    std::vector<Note> notes;
    std::vector<std::string> damage; ///< what could not be read, in words
    std::vector<Stretch> missing;    ///< in which samples could not be read
};

struct StoreOptions {
    bool isReadOnly = false;
    bool mustExist = false;                      ///< else an empty file is made where there is none
    Duration patience = std::chrono::seconds(2); ///< how long another program's lock is waited for
};

/// Which runs to list.
struct RunQuery {
    std::string text;       ///< in flow, aircraft, rig, pilot, tags or notes, whatever the case; empty: any
    std::string tag;        ///< empty: any
    bool isDeleted = false; ///< those that were deleted, in place of the others
};

/// What trim() did.
struct Trimmed {
    std::vector<std::int64_t> runs; ///< gone for good
    std::int64_t bytes = 0;         ///< that the rest takes
};

struct ArchivedRun;

/// The runs in one SQLite file. One object a thread; several processes may open the same file. Format: README.md.
class Store {
public:
    ~Store();
    Store(Store&&) noexcept;

    /// Errors: `store-missing`, `store-unreadable`, `store-locked`, `store-read-only`,
    /// `store-newer` (made by a newer program: untouched), `store-damaged`; each says the way out. A file that can only
    /// be read is opened so; then recording fails with `store-read-only`.
    [[nodiscard]] static Result<Store> open(const std::string& file, const StoreOptions& options = {});

    /// Writes on a thread and through a connection of its own; may outlive the store. Any number at a time. Its begin()
    /// gives `store-read-only`, `store-locked` ...; a disk that fills up in mid-run comes as `store-full` with a later
    /// call.
    [[nodiscard]] std::unique_ptr<Recorder> recorder();

    /// Newest first. A run that cannot be read is named as damaged, and listed whatever is asked for.
    [[nodiscard]] Result<std::vector<RunSummary>> runs(const RunQuery& query = {});
    /// Error `no-such-run`. Of a damaged run, what can be read, and in words what cannot.
    [[nodiscard]] Result<StoredRun> load(std::int64_t id, SampleForm form = SampleForm::InOrder);
    /// All values by SignalId at and after the samples of `time`, from the keyframe before it: fast anywhere in a run.
    [[nodiscard]] Result<std::vector<Value>> valuesAt(std::int64_t id, Time time);

    /// Gives the note's id. Also while the run is being flown. Errors: those of checkNote() (store/note.h).
    [[nodiscard]] Result<std::int64_t> writeNote(std::int64_t run, const Note& note);
    /// Error `no-such-note`.
    [[nodiscard]] Status removeNote(std::int64_t note);

    /// Marks or unmarks a run with a word. Errors `bad-tag`, `no-such-tag`.
    [[nodiscard]] Status tag(std::int64_t run, const std::string& name);
    [[nodiscard]] Status untag(std::int64_t run, const std::string& name);

    /// The run with which others of its flow are compared, in place of the one before.
    [[nodiscard]] Status setReference(std::int64_t run);
    [[nodiscard]] Status clearReference(std::int64_t run);
    /// Of the flow that `run` flew; 0: none.
    [[nodiscard]] Result<std::int64_t> referenceFor(std::int64_t run);

    /// Deleted runs are kept until trim() wants their room; restore() takes it back.
    [[nodiscard]] Status remove(std::int64_t run);
    [[nodiscard]] Status restore(std::int64_t run);
    /// Erases runs for good until the file needs no more than `mostBytes`: deleted ones first, then the oldest that
    /// have no tag, no note and are no reference. Never one that is being flown.
    [[nodiscard]] Result<Trimmed> trim(std::int64_t mostBytes);
    /// What is wrong with the file, each in words; then with each run. None: all is well.
    [[nodiscard]] Result<std::vector<std::string>> check();
    /// A copy of everything as it is at this moment, also while runs are being recorded. Errors `backup-exists`,
    /// `backup-failed`.
    [[nodiscard]] Status backup(const std::string& file);

    /// Adds a run that was read from an archive (store/archive.h), and gives its new number. Error `already-imported`.
    [[nodiscard]] Result<std::int64_t> add(const ArchivedRun& run);

private:
    struct Database;
    explicit Store(std::unique_ptr<Database> database);
    [[nodiscard]] Status wantWritable() const;
    template <class Change>
    [[nodiscard]] Status change(Change change);
    std::unique_ptr<Database> m_database;
};

/// `runs.sqlite` in dataHome() (store/datahome.h).
[[nodiscard]] std::string defaultStoreFile();

} // namespace flowhand
