#include "store/schema.h"

#include <string>

namespace flowhand {

namespace {

// Columns are described in README.md, 'Tables'.
constexpr char kSchema1[] = R"(
CREATE TABLE source (hash TEXT NOT NULL PRIMARY KEY, text BLOB NOT NULL);
CREATE TABLE run (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    started_ms INTEGER NOT NULL,
    pilot TEXT NOT NULL,
    program_version TEXT NOT NULL,
    aircraft_folder TEXT NOT NULL,
    flow_id TEXT NOT NULL,
    flow_title TEXT NOT NULL,
    flow_file TEXT NOT NULL,
    rig_title TEXT NOT NULL,
    motion_source TEXT NOT NULL,
    aircraft_hash TEXT NOT NULL REFERENCES source (hash),
    flow_hash TEXT NOT NULL REFERENCES source (hash),
    rig_hash TEXT NOT NULL REFERENCES source (hash),
    setup BLOB NOT NULL,
    length_us INTEGER NOT NULL DEFAULT 0,
    simulated INTEGER NOT NULL DEFAULT 0);
CREATE TABLE chunk (
    run INTEGER NOT NULL REFERENCES run (id) ON DELETE CASCADE,
    window INTEGER NOT NULL,
    stream INTEGER NOT NULL,
    part INTEGER NOT NULL,
    samples BLOB NOT NULL,
    UNIQUE (run, window, stream, part));
CREATE TABLE keyframe (
    run INTEGER NOT NULL REFERENCES run (id) ON DELETE CASCADE,
    window INTEGER NOT NULL,
    state BLOB NOT NULL,
    PRIMARY KEY (run, window)) WITHOUT ROWID;
CREATE TABLE command (
    run INTEGER NOT NULL REFERENCES run (id) ON DELETE CASCADE,
    number INTEGER NOT NULL,
    time_us INTEGER NOT NULL,
    kind TEXT NOT NULL,
    text TEXT NOT NULL,
    PRIMARY KEY (run, number)) WITHOUT ROWID;
CREATE TABLE event (
    run INTEGER NOT NULL REFERENCES run (id) ON DELETE CASCADE,
    number INTEGER NOT NULL,
    line TEXT NOT NULL,
    PRIMARY KEY (run, number)) WITHOUT ROWID;
CREATE TABLE result (
    run INTEGER NOT NULL PRIMARY KEY REFERENCES run (id) ON DELETE CASCADE,
    length_us INTEGER NOT NULL,
    version TEXT NOT NULL,
    scored INTEGER NOT NULL,
    milli_points INTEGER NOT NULL,
    passed INTEGER NOT NULL,
    events_hash TEXT NOT NULL,
    detail BLOB NOT NULL);
)";

constexpr char kSchema2[] = R"(
ALTER TABLE run ADD COLUMN deleted_ms INTEGER NOT NULL DEFAULT 0;
ALTER TABLE run ADD COLUMN archive_hash TEXT NOT NULL DEFAULT '';
CREATE TABLE note (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    run INTEGER NOT NULL REFERENCES run (id) ON DELETE CASCADE,
    written_ms INTEGER NOT NULL,
    kind TEXT NOT NULL,
    author TEXT NOT NULL,
    step TEXT NOT NULL,
    offset_us INTEGER NOT NULL,
    time_us INTEGER NOT NULL,
    guard TEXT NOT NULL,
    phase TEXT NOT NULL,
    choice TEXT NOT NULL,
    text TEXT NOT NULL);
CREATE INDEX note_of_run ON note (run);
CREATE TABLE tag (
    run INTEGER NOT NULL REFERENCES run (id) ON DELETE CASCADE,
    name TEXT NOT NULL,
    PRIMARY KEY (run, name)) WITHOUT ROWID;
CREATE TABLE reference (
    aircraft_folder TEXT NOT NULL,
    flow_id TEXT NOT NULL,
    run INTEGER NOT NULL REFERENCES run (id) ON DELETE CASCADE,
    PRIMARY KEY (aircraft_folder, flow_id)) WITHOUT ROWID;
)";

constexpr Migration kMigrations[] = {kSchema1, kSchema2};

} // namespace

std::span<const Migration> migrations() {
    return kMigrations;
}

Status migrate(Connection& connection, std::span<const Migration> steps) {
    const auto last = static_cast<std::int64_t>(steps.size());
    for (;;) {
        // First without a lock: mostly there is nothing to do, and another program may be recording.
        Result<std::int64_t> version = connection.number("PRAGMA user_version");
        if (!version || *version >= last)
            return version ? Status() : tl::unexpected(version.error());
        Result<Transaction> transaction = Transaction::begin(connection);
        if (!transaction)
            return tl::unexpected(transaction.error());
        // Asked inside the transaction: another program may have been faster.
        version = connection.number("PRAGMA user_version");
        if (!version || *version >= last)
            return version ? Status() : tl::unexpected(version.error());
        const std::string sql = std::string(steps[static_cast<std::size_t>(*version)]) +
                                "PRAGMA application_id = " + std::to_string(kApplicationId) +
                                "; PRAGMA user_version = " + std::to_string(*version + 1) + ";";
        if (const Status done = connection.execute(sql); !done)
            return done;
        if (const Status done = transaction->commit(); !done)
            return done;
    }
}

} // namespace flowhand
