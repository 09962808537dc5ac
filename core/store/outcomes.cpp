#include "store/outcomes.h"

#include <filesystem>

#include "store/database.h"
#include "store/runreader.h"

namespace flowhand {

Result<Outcomes> Outcomes::open(const std::string& file) {
    std::error_code ignored;
    if (!std::filesystem::exists(file, ignored))
        return failure("store-missing", "there are no runs yet; 'flowhand practise FLOW' flies one", {file, 0, 0});
    Result<Connection> connection = openDatabase(file, true, StoreOptions().patience);
    if (!connection)
        return tl::unexpected(connection.error());
    return Outcomes(std::move(*connection));
}

Result<std::vector<RunSummary>> Outcomes::runs() {
    return RunReader(m_connection).summaries({});
}

Result<std::set<std::int64_t>> Outcomes::scripted() {
    // Streams are numbered as in README.md, 'Tables': 0 device, 2 screen.
    Result<Statement> rows = m_connection.prepare("SELECT id FROM run WHERE NOT EXISTS (SELECT 1 FROM chunk WHERE "
                                                  "chunk.run = run.id AND stream IN (0, 2))");
    if (!rows)
        return tl::unexpected(rows.error());
    std::set<std::int64_t> runs;
    for (;;) {
        const Result<bool> row = rows->step();
        if (!row)
            return tl::unexpected(row.error());
        if (!*row)
            return runs;
        runs.insert(rows->integer(0));
    }
}

Result<StoredRun> Outcomes::load(std::int64_t id) {
    return RunReader(m_connection).loadOutcome(id);
}

} // namespace flowhand
