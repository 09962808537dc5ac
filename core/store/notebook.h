#pragma once

#include <cstdint>
#include <vector>

#include "store/connection.h"
#include "store/note.h"

namespace flowhand {

/// The notes of the runs in one file. Borrows the connection.
class Notebook {
public:
    explicit Notebook(Connection& connection) : m_connection(connection) {}

    /// Of one run, in the order in which they were written. What cannot be read is left out.
    [[nodiscard]] Result<std::vector<Note>> notesOf(std::int64_t run);
    /// Checks it (store/note.h), writes it in place of the one it replaces, and gives its id; all in one transaction.
    [[nodiscard]] Result<std::int64_t> write(std::int64_t run, const Note& note, const Flow& flow);
    /// As it is, without a check.
    [[nodiscard]] Status insert(std::int64_t run, const Note& note);
    /// Error `no-such-note`.
    [[nodiscard]] Status remove(std::int64_t note);

private:
    Connection& m_connection;
};

} // namespace flowhand
