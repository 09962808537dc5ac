#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "session/record.h"

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
};

/// A whole run, read back.
struct StoredRun {
    RunSummary summary;
    RunHeader header;
    std::vector<Sample> samples;
    std::vector<RunCommand> commands;
    std::vector<std::string> eventLines; ///< canonical JSON, as derived when the run was flown
    Score score;
    std::vector<StepResult> results;
    RunLosses losses;
    std::vector<std::string> damage; ///< what could not be read, in words
};

struct StoreOptions {
    bool isReadOnly = false;
    bool mustExist = false;                      ///< else an empty file is made where there is none
    Duration patience = std::chrono::seconds(2); ///< how long another program's lock is waited for
};

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

    /// Newest first. A run that cannot be read is named as damaged.
    [[nodiscard]] Result<std::vector<RunSummary>> runs();
    /// Error `no-such-run`. Of a damaged run, what can be read, and in words what cannot.
    [[nodiscard]] Result<StoredRun> load(std::int64_t id);
    /// All values by SignalId at and after the samples of `time`, from the keyframe before it: fast anywhere in a run.
    [[nodiscard]] Result<std::vector<Value>> valuesAt(std::int64_t id, Time time);

private:
    struct Database;
    explicit Store(std::unique_ptr<Database> database);
    std::unique_ptr<Database> m_database;
};

/// `$XDG_DATA_HOME/flowhand/runs.sqlite`, or below ~/.local/share.
[[nodiscard]] std::string defaultStoreFile();

} // namespace flowhand
