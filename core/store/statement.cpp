#include "store/statement.h"

#include <sqlite3.h>
#include <utility>

#include "store/connection.h"

namespace flowhand {

Statement::~Statement() {
    sqlite3_finalize(m_statement);
}

Statement::Statement(Statement&& other) noexcept
    : m_connection(other.m_connection), m_statement(std::exchange(other.m_statement, nullptr)) {}

Statement& Statement::operator=(Statement&& other) noexcept {
    std::swap(m_connection, other.m_connection);
    std::swap(m_statement, other.m_statement);
    return *this;
}

Statement& Statement::bind(int parameter, std::int64_t number) {
    sqlite3_bind_int64(m_statement, parameter, number);
    return *this;
}

Statement& Statement::bindText(int parameter, std::string_view text) {
    sqlite3_bind_text64(m_statement, parameter, text.data() == nullptr ? "" : text.data(), text.size(),
                        SQLITE_TRANSIENT, SQLITE_UTF8);
    return *this;
}

Statement& Statement::bindBytes(int parameter, std::string_view bytes) {
    sqlite3_bind_blob64(m_statement, parameter, bytes.data() == nullptr ? "" : bytes.data(), bytes.size(),
                        SQLITE_TRANSIENT);
    return *this;
}

Result<bool> Statement::step() {
    switch (sqlite3_step(m_statement)) {
    case SQLITE_ROW:
        return true;
    case SQLITE_DONE:
        return false;
    default:
        return tl::unexpected(m_connection->lastError());
    }
}

Status Statement::run() {
    const Result<bool> row = step();
    reset();
    if (!row)
        return tl::unexpected(row.error());
    return {};
}

void Statement::reset() {
    sqlite3_reset(m_statement);
}

std::int64_t Statement::integer(int column) const {
    return sqlite3_column_int64(m_statement, column);
}

std::string Statement::text(int column) const {
    const void* bytes = sqlite3_column_blob(m_statement, column);
    const int size = sqlite3_column_bytes(m_statement, column);
    return bytes == nullptr ? std::string() : std::string(static_cast<const char*>(bytes), std::size_t(size));
}

} // namespace flowhand
