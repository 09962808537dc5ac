#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/error.h"
#include "store/packed.h"

struct sqlite3_stmt;

namespace flowhand {

class Connection;

/// One SQL statement, with what is bound to it. The Connection must outlive it, on the same thread.
class Statement {
public:
    Statement(Connection& connection, sqlite3_stmt* statement) : m_connection(&connection), m_statement(statement) {}
    ~Statement();
    Statement(Statement&& other) noexcept;
    Statement& operator=(Statement&& other) noexcept;

    /// Parameters count from 1. Text and bytes are copied.
    Statement& bind(int parameter, std::int64_t number);
    Statement& bindText(int parameter, std::string_view text);
    Statement& bindBytes(int parameter, std::string_view bytes);

    /// On to the next row; false after the last one.
    [[nodiscard]] Result<bool> step();
    /// For statements without rows.
    [[nodiscard]] Status run();
    /// To be stepped from the start again; keeps what is bound.
    void reset();

    /// Columns of the row stepped to, from 0.
    [[nodiscard]] std::int64_t integer(int column) const;
    /// Text or bytes.
    [[nodiscard]] std::string text(int column) const;

private:
    Connection* m_connection;
    sqlite3_stmt* m_statement;
};

} // namespace flowhand
