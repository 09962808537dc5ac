#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "store/connection.h"
#include "store/store.h"

namespace flowhand {

/// Keeps the runs of one file in order. Borrows the connection, which must be able to write (but for check()).
class Housekeeping {
public:
    explicit Housekeeping(Connection& connection) : m_connection(connection) {}

    /// Error `bad-tag`: a tag is 1 to 40 characters, without a comma. `no-such-run`.
    [[nodiscard]] Status tag(std::int64_t run, const std::string& name);
    /// Error `no-such-tag`.
    [[nodiscard]] Status untag(std::int64_t run, const std::string& name);
    /// The run that others of its flow are compared with, in place of the one before.
    [[nodiscard]] Status setReference(std::int64_t run);
    [[nodiscard]] Status clearReference(std::int64_t run);
    /// Of the flow that `run` flew; 0: none.
    [[nodiscard]] Result<std::int64_t> referenceFor(std::int64_t run);
    /// Deleted runs are not listed, and kept until the room is wanted; restore() takes the deletion back.
    [[nodiscard]] Status remove(std::int64_t run, std::int64_t nowUnixMillis);
    [[nodiscard]] Status restore(std::int64_t run);
    [[nodiscard]] Result<Trimmed> trim(std::int64_t mostBytes, std::int64_t nowUnixMillis);
    [[nodiscard]] Status backup(const std::string& file);
    /// Of the file as a whole, not of the single runs.
    [[nodiscard]] Result<std::vector<std::string>> check();

private:
    [[nodiscard]] Status change(const char* sql, std::int64_t first, std::optional<std::int64_t> second = {});
    [[nodiscard]] Status wantRun(std::int64_t run);
    [[nodiscard]] Result<std::int64_t> usedBytes();
    [[nodiscard]] Result<std::int64_t> nextToGo(std::int64_t nowUnixMillis);
    [[nodiscard]] Status erase(std::int64_t run);

    Connection& m_connection;
};

} // namespace flowhand
