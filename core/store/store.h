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
    std::vector<std::string> damage; ///< what could not be read, in words
};

/// The runs in one SQLite file. One object a thread; several processes may open the same file.
class Store {
public:
    ~Store();
    Store(Store&&) noexcept;

    /// Creates file and folders where there are none. Errors: `store-unreadable`, `store-locked`, `store-read-only`,
    /// `store-newer` (made by a newer program: untouched), `store-damaged`; each says the way out.
    [[nodiscard]] static Result<Store> open(const std::string& file);

    /// The recorder writes through this store, which must outlive it. One run at a time.
    [[nodiscard]] std::unique_ptr<Recorder> recorder();

    /// Newest first.
    [[nodiscard]] Result<std::vector<RunSummary>> runs();
    /// Error `no-such-run`.
    [[nodiscard]] Result<StoredRun> load(std::int64_t id);

private:
    struct Database;
    explicit Store(std::unique_ptr<Database> database);
    std::unique_ptr<Database> m_database;
};

/// `$XDG_DATA_HOME/flowhand/runs.sqlite`, or below ~/.local/share.
[[nodiscard]] std::string defaultStoreFile();

} // namespace flowhand
