#pragma once

#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "store/chunk.h"
#include "store/connection.h"
#include "store/store.h"

namespace flowhand {

[[nodiscard]] tl::unexpected<Error> noSuchRun(std::int64_t id, const std::string& file);

/// Reads runs back, around whatever is damaged. Borrows the connection.
class RunReader {
public:
    explicit RunReader(Connection& connection) : m_connection(connection) {}

    [[nodiscard]] Result<std::vector<RunSummary>> summaries(const RunQuery& query);
    [[nodiscard]] Result<StoredRun> load(std::int64_t id, SampleForm form);
    /// Without samples, commands, events and notes.
    [[nodiscard]] Result<StoredRun> loadOutcome(std::int64_t id);
    /// The flow as it was flown. Error `unreadable-run`.
    [[nodiscard]] Result<Flow> flowOf(std::int64_t id);
    [[nodiscard]] Result<std::vector<Value>> valuesAt(std::int64_t id, Time time);

private:
    [[nodiscard]] Result<std::vector<RunSummary>> allSummaries();
    [[nodiscard]] Result<std::vector<RunSummary>> summariesOneByOne();
    [[nodiscard]] std::set<std::int64_t> withNotesSaying(const std::string& text);
    [[nodiscard]] Status loadHeader(StoredRun& run);
    [[nodiscard]] std::string source(const std::string& hash, const char* what, StoredRun& run);
    void loadSamples(StoredRun& run, SampleForm form);
    void nameMissing(StoredRun& run);
    void loadCommands(StoredRun& run);
    void loadEvents(StoredRun& run);
    void loadResult(StoredRun& run);
    void loadNotes(StoredRun& run);

    Connection& m_connection;
};

} // namespace flowhand
