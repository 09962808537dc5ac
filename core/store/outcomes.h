#pragma once

#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "store/connection.h"
#include "store/store.h"

namespace flowhand {

/// What came of the runs of one file, without their samples, events and notes: quick, for reckoning over many. Reads
/// only. One object a thread.
class Outcomes {
public:
    /// Errors: `store-missing` and those of Store::open().
    [[nodiscard]] static Result<Outcomes> open(const std::string& file);

    /// As Store::runs().
    [[nodiscard]] Result<std::vector<RunSummary>> runs();
    /// Runs of which nothing came from a device or the screen: by the hands of a script, or a recording of devices.
    [[nodiscard]] Result<std::set<std::int64_t>> scripted();
    /// Header, score and results. Errors as Store::load().
    [[nodiscard]] Result<StoredRun> load(std::int64_t id);

private:
    explicit Outcomes(Connection connection) : m_connection(std::move(connection)) {}

    Connection m_connection;
};

} // namespace flowhand
