#include "store/connection.h"

#include <cerrno>
#include <sqlite3.h>
#include <utility>

namespace flowhand {

namespace {

constexpr char kLocked[] = "store-locked";

Error errorOf(int code, int systemError, const std::string& text, const std::string& file) {
    const SourcePlace place{file, 0, 0};
    if (systemError == ENOSPC || systemError == EDQUOT)
        code = SQLITE_FULL;
    switch (code & 0xFF) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return {kLocked, "another program keeps the runs locked; close it, or choose another file with --db", place};
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return {"store-read-only",
                "the file cannot be written; allow writing to it and its folder, or choose another file with --db",
                place};
    case SQLITE_FULL:
        return {
            "store-full",
            "the disk is full, nothing more is recorded; free some space, or choose a file on another disk with --db",
            place};
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
        return {"store-damaged",
                "the file is damaged (" + text + "); keep a copy of it and choose another file with --db", place};
    default:
        return {"store-unreadable",
                "the runs cannot be read or written (" + text +
                    "); check the path and the disk, or choose another file with --db",
                place};
    }
}

int flagsOf(OpenMode mode) {
    constexpr int kCommon = SQLITE_OPEN_EXRESCODE | SQLITE_OPEN_URI;
    switch (mode) {
    case OpenMode::Create:
        return kCommon | SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
    case OpenMode::ReadWrite:
        return kCommon | SQLITE_OPEN_READWRITE;
    case OpenMode::ReadOnly:
    case OpenMode::Immutable:
        break;
    }
    return kCommon | SQLITE_OPEN_READONLY;
}

/// A path as a file: URI, so that '?' and '#' in it are not taken for more.
std::string uriOf(const std::string& file, bool isImmutable) {
    constexpr char kDigits[] = "0123456789ABCDEF";
    std::string uri = "file:";
    for (const char c : file) {
        if (c == '?' || c == '#' || c == '%') {
            uri += '%';
            uri += kDigits[static_cast<unsigned char>(c) >> 4];
            uri += kDigits[c & 0xF];
        } else {
            uri += c;
        }
    }
    return isImmutable ? uri + "?immutable=1" : uri;
}

} // namespace

void Connection::Close::operator()(sqlite3* handle) const {
    sqlite3_close_v2(handle);
}

Connection::Connection(std::string file, std::unique_ptr<sqlite3, Close> handle)
    : m_file(std::move(file)), m_handle(std::move(handle)) {}

Result<Connection> Connection::open(const std::string& file, OpenMode mode, Duration patience) {
    sqlite3* raw = nullptr;
    const int code = sqlite3_open_v2(uriOf(file, mode == OpenMode::Immutable).c_str(), &raw, flagsOf(mode), nullptr);
    Connection connection(file, std::unique_ptr<sqlite3, Close>(raw));
    if (raw == nullptr)
        return failure("store-unreadable", "there is no memory left to open the runs; close other programs",
                       {file, 0, 0});
    if (code != SQLITE_OK)
        return tl::unexpected(connection.lastError());
    sqlite3_busy_timeout(raw,
                         static_cast<int>(std::chrono::duration_cast<std::chrono::milliseconds>(patience).count()));
    return connection;
}

Status Connection::execute(const std::string& sql) {
    if (sqlite3_exec(m_handle.get(), sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK)
        return tl::unexpected(lastError());
    return {};
}

Result<Statement> Connection::prepare(std::string_view sql) {
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(m_handle.get(), sql.data(), static_cast<int>(sql.size()), &statement, nullptr) != SQLITE_OK)
        return tl::unexpected(lastError());
    return Statement(*this, statement);
}

Result<std::int64_t> Connection::number(std::string_view sql) {
    Result<Statement> statement = prepare(sql);
    if (!statement)
        return tl::unexpected(statement.error());
    const Result<bool> row = statement->step();
    if (!row)
        return tl::unexpected(row.error());
    return *row ? statement->integer(0) : 0;
}

std::int64_t Connection::lastId() const {
    return sqlite3_last_insert_rowid(m_handle.get());
}

int Connection::changes() const {
    return sqlite3_changes(m_handle.get());
}

Result<Connection> Connection::copyInMemory() {
    sqlite3* raw = nullptr;
    const int code = sqlite3_open_v2(":memory:", &raw, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr);
    Connection copy(m_file, std::unique_ptr<sqlite3, Close>(raw));
    if (code != SQLITE_OK)
        return failure("store-unreadable", "there is no memory left to open the runs; close other programs",
                       {m_file, 0, 0});
    copy.m_isCopy = true;
    sqlite3_backup* const backup = sqlite3_backup_init(raw, "main", m_handle.get(), "main");
    if (backup == nullptr)
        return tl::unexpected(copy.lastError());
    (void)sqlite3_backup_step(backup, -1);
    if (sqlite3_backup_finish(backup) != SQLITE_OK)
        return tl::unexpected(copy.lastError());
    return copy;
}

bool Connection::isReadOnly() const {
    return m_isCopy || sqlite3_db_readonly(m_handle.get(), "main") == 1;
}

void Connection::leaveUntouched() {
    sqlite3_db_config(m_handle.get(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, nullptr);
}

Error Connection::lastError() const {
    return errorOf(sqlite3_extended_errcode(m_handle.get()), sqlite3_system_errno(m_handle.get()),
                   sqlite3_errmsg(m_handle.get()), m_file);
}

Result<Transaction> Transaction::begin(Connection& connection) {
    if (const Status begun = connection.execute("BEGIN IMMEDIATE"); !begun)
        return tl::unexpected(begun.error());
    return Transaction(connection);
}

Transaction::~Transaction() {
    // An error may have rolled back already; a second time only says so.
    if (m_connection != nullptr)
        (void)m_connection->execute("ROLLBACK");
}

Transaction::Transaction(Transaction&& other) noexcept : m_connection(std::exchange(other.m_connection, nullptr)) {}

Status Transaction::commit() {
    Status committed = m_connection->execute("COMMIT");
    if (committed)
        m_connection = nullptr;
    return committed;
}

} // namespace flowhand
