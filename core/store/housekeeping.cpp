#include "store/housekeeping.h"

#include <cstdio>
#include <filesystem>

#include "session/partnerpace.h"
#include "store/runreader.h"

namespace flowhand {

namespace {

constexpr std::size_t kLongestTag = 40;

/// An unfinished run that began this long ago is not being flown any more.
constexpr std::int64_t kLongestRunMillis = 24LL * 3600 * 1000;

bool isTag(const std::string& name) {
    bool isPlain = !name.empty() && letterCount(name) <= kLongestTag;
    for (const char letter : name)
        isPlain &= letter != ',' && static_cast<unsigned char>(letter) >= 0x20;
    return isPlain && name.front() != ' ' && name.back() != ' ';
}

} // namespace

Status Housekeeping::change(const char* sql, std::int64_t first, std::optional<std::int64_t> second) {
    Result<Statement> statement = m_connection.prepare(sql);
    if (!statement)
        return tl::unexpected(statement.error());
    statement->bind(1, first);
    if (second)
        statement->bind(2, *second);
    return statement->run();
}

Status Housekeeping::wantRun(std::int64_t run) {
    Result<Statement> row = m_connection.prepare("SELECT 1 FROM run WHERE id = ?");
    if (!row)
        return tl::unexpected(row.error());
    const Result<bool> found = row->bind(1, run).step();
    if (!found)
        return tl::unexpected(found.error());
    return *found ? Status() : noSuchRun(run, m_connection.file());
}

Status Housekeeping::tag(std::int64_t run, const std::string& name) {
    if (!isTag(name))
        return failure("bad-tag", "'" + name +
                                      "' is no tag: write 1 to 40 characters without a comma, and no blank at its "
                                      "ends");
    if (const Status there = wantRun(run); !there)
        return there;
    Result<Statement> insert = m_connection.prepare("INSERT OR IGNORE INTO tag (run, name) VALUES (?, ?)");
    if (!insert)
        return tl::unexpected(insert.error());
    return insert->bind(1, run).bindText(2, name).run();
}

Status Housekeeping::untag(std::int64_t run, const std::string& name) {
    Result<Statement> removal = m_connection.prepare("DELETE FROM tag WHERE run = ? AND name = ?");
    if (!removal)
        return tl::unexpected(removal.error());
    if (const Status done = removal->bind(1, run).bindText(2, name).run(); !done)
        return done;
    if (m_connection.changes() == 0)
        return failure("no-such-tag", "run " + std::to_string(run) + " has no tag '" + name + "'",
                       {m_connection.file(), 0, 0});
    return {};
}

Status Housekeeping::setReference(std::int64_t run) {
    if (const Status there = wantRun(run); !there)
        return there;
    return change("INSERT OR REPLACE INTO reference (aircraft_folder, flow_id, run) SELECT aircraft_folder, flow_id, "
                  "id FROM run WHERE id = ?",
                  run);
}

Status Housekeeping::clearReference(std::int64_t run) {
    if (const Status there = wantRun(run); !there)
        return there;
    return change("DELETE FROM reference WHERE run = ?", run);
}

Result<std::int64_t> Housekeeping::referenceFor(std::int64_t run) {
    if (const Status there = wantRun(run); !there)
        return tl::unexpected(there.error());
    Result<Statement> row = m_connection.prepare(
        "SELECT reference.run FROM reference JOIN run ON run.aircraft_folder = reference.aircraft_folder AND "
        "run.flow_id = reference.flow_id WHERE run.id = ?");
    if (!row)
        return tl::unexpected(row.error());
    const Result<bool> found = row->bind(1, run).step();
    if (!found)
        return tl::unexpected(found.error());
    return *found ? row->integer(0) : 0;
}

Status Housekeeping::remove(std::int64_t run, std::int64_t nowUnixMillis) {
    if (const Status there = wantRun(run); !there)
        return there;
    return change("UPDATE run SET deleted_ms = ?2 WHERE id = ?1 AND deleted_ms = 0", run, nowUnixMillis);
}

Status Housekeeping::restore(std::int64_t run) {
    if (const Status there = wantRun(run); !there)
        return there;
    return change("UPDATE run SET deleted_ms = 0 WHERE id = ?", run);
}

Result<std::int64_t> Housekeeping::usedBytes() {
    const Result<std::int64_t> pages = m_connection.number("PRAGMA page_count");
    const Result<std::int64_t> unused = pages ? m_connection.number("PRAGMA freelist_count") : pages;
    const Result<std::int64_t> bytes = unused ? m_connection.number("PRAGMA page_size") : unused;
    if (!bytes)
        return bytes;
    return (*pages - *unused) * *bytes;
}

/// Deleted runs first, the longest deleted one before; then the oldest that nobody has tagged, noted anything in, or
/// made a reference. 0: none.
Result<std::int64_t> Housekeeping::nextToGo(std::int64_t nowUnixMillis) {
    Result<Statement> row = m_connection.prepare(
        "SELECT id FROM run WHERE deleted_ms > 0 OR (id NOT IN (SELECT run FROM tag) AND id NOT IN (SELECT run FROM "
        "note) AND id NOT IN (SELECT run FROM reference) AND (id IN (SELECT run FROM result) OR started_ms < ?)) "
        "ORDER BY deleted_ms = 0, deleted_ms, id LIMIT 1");
    if (!row)
        return tl::unexpected(row.error());
    const Result<bool> found = row->bind(1, nowUnixMillis - kLongestRunMillis).step();
    if (!found)
        return tl::unexpected(found.error());
    return *found ? row->integer(0) : 0;
}

Status Housekeeping::erase(std::int64_t run) {
    if (const Status erased = change("DELETE FROM run WHERE id = ?", run); !erased)
        return erased;
    return m_connection.execute("DELETE FROM source WHERE hash NOT IN (SELECT aircraft_hash FROM run UNION SELECT "
                                "flow_hash FROM run UNION SELECT rig_hash FROM run)");
}

Result<Trimmed> Housekeeping::trim(std::int64_t mostBytes, std::int64_t nowUnixMillis) {
    Result<Transaction> transaction = Transaction::begin(m_connection);
    if (!transaction)
        return tl::unexpected(transaction.error());
    Trimmed trimmed;
    for (;;) {
        const Result<std::int64_t> used = usedBytes();
        if (!used)
            return tl::unexpected(used.error());
        trimmed.bytes = *used;
        const Result<std::int64_t> next = *used > mostBytes ? nextToGo(nowUnixMillis) : 0;
        if (!next)
            return tl::unexpected(next.error());
        if (*next == 0)
            break;
        if (const Status erased = erase(*next); !erased)
            return tl::unexpected(erased.error());
        trimmed.runs.push_back(*next);
    }
    if (const Status committed = transaction->commit(); !committed)
        return tl::unexpected(committed.error());
    // Gives the room back to the disk. While another program records, that has to wait: the room is then used anew.
    if (!trimmed.runs.empty())
        (void)m_connection.execute("VACUUM");
    return trimmed;
}

Status Housekeeping::backup(const std::string& file) {
    namespace fs = std::filesystem;
    std::error_code problem;
    if (fs::exists(file, problem))
        return failure("backup-exists", "there is a file of this name already; choose another", {file, 0, 0});
    // Whole or not at all: it gets its name once it is complete.
    const std::string partial = file + ".part";
    fs::remove(partial, problem);
    Result<Statement> copy = m_connection.prepare("VACUUM INTO ?");
    if (!copy)
        return tl::unexpected(copy.error());
    if (const Status copied = copy->bindText(1, partial).run(); !copied) {
        fs::remove(partial, problem);
        return failure(copied.error().code == "store-damaged" ? "store-damaged" : "backup-failed",
                       "the backup cannot be written: " + copied.error().message, {file, 0, 0});
    }
    fs::rename(partial, file, problem);
    if (problem)
        return failure("backup-failed", "the backup cannot be given its name (" + problem.message() + ")",
                       {file, 0, 0});
    return {};
}

Result<std::vector<std::string>> Housekeeping::check() {
    std::vector<std::string> problems;
    static constexpr const char* kReferences = "PRAGMA foreign_key_check";
    for (const char* pragma : {"PRAGMA integrity_check", kReferences}) {
        Result<Statement> rows = m_connection.prepare(pragma);
        if (!rows)
            return tl::unexpected(rows.error());
        for (;;) {
            const Result<bool> row = rows->step();
            if (!row)
                return tl::unexpected(row.error());
            if (!*row)
                break;
            if (rows->text(0) == "ok")
                continue;
            const bool isReference = pragma == kReferences;
            problems.push_back(isReference ? "rows of '" + rows->text(0) + "' belong to no run" : rows->text(0));
        }
    }
    return problems;
}

} // namespace flowhand
