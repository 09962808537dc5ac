#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "base/error.h"
#include "base/time.h"
#include "store/statement.h"

struct sqlite3;

namespace flowhand {

enum class OpenMode : std::uint8_t {
    Create,    ///< read and write, made when missing
    ReadWrite, ///< the file must be there
    ReadOnly,
    Immutable ///< read only, and nobody else changes it: nothing is written beside it either
};

/// An open SQLite file. One thread at a time; its statements with it.
class Connection {
public:
    /// Waits up to `patience` for a lock, here and in every statement.
    [[nodiscard]] static Result<Connection> open(const std::string& file, OpenMode mode, Duration patience);

    /// One or several statements without parameters or rows.
    [[nodiscard]] Status execute(const std::string& sql);
    [[nodiscard]] Result<Statement> prepare(std::string_view sql);
    /// The first column of the first row of a query, 0 without one.
    [[nodiscard]] Result<std::int64_t> number(std::string_view sql);

    [[nodiscard]] std::int64_t lastId() const;
    /// Rows that the last statement changed.
    [[nodiscard]] int changes() const;
    /// All of it as it is now, in memory; what is written there is lost. isReadOnly() says so.
    [[nodiscard]] Result<Connection> copyInMemory();
    [[nodiscard]] bool isReadOnly() const;
    [[nodiscard]] const std::string& file() const { return m_file; }
    /// Leaves the file as it is when closed, even where a write-ahead log is left from a crash.
    void leaveUntouched();

    /// What the last call that failed ran into, for a person. Codes: `store-locked`, `store-read-only`, `store-full`,
    /// `store-damaged`, `store-unreadable`.
    [[nodiscard]] Error lastError() const;

private:
    struct Close {
        void operator()(sqlite3* handle) const;
    };
    Connection(std::string file, std::unique_ptr<sqlite3, Close> handle);

    std::string m_file;
    bool m_isCopy = false;
    std::unique_ptr<sqlite3, Close> m_handle;
};

/// Rolls back what was begun and not committed.
class Transaction {
public:
    /// Waits for other writers at once, not at the first write.
    [[nodiscard]] static Result<Transaction> begin(Connection& connection);
    ~Transaction();
    Transaction(Transaction&& other) noexcept;
    Transaction& operator=(Transaction&&) = delete;
    [[nodiscard]] Status commit();

private:
    explicit Transaction(Connection& connection) : m_connection(&connection) {}
    Connection* m_connection;
};

} // namespace flowhand
