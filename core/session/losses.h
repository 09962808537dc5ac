#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/phrase.h"
#include "base/time.h"

namespace flowhand {

struct DeviceLosses {
    std::string device;          ///< as the rig names it
    std::uint64_t suspected = 0; ///< reports that may have been lost before the program could read them
    std::uint64_t replaced = 0;  ///< changes that a newer one of the same input replaced before they were taken

    bool operator==(const DeviceLosses&) const = default;
};

/// What of the hands' movements may be missing in a run, or stands later than it was made. No verdict changes by it;
/// whoever reads one should know.
struct RunLosses {
    std::uint64_t lateChanges = 0;     ///< came in behind session time and were moved to it
    Duration latest{};                 ///< by how much at the most
    std::vector<DeviceLosses> devices; ///< those that lost something

    bool operator==(const RunLosses&) const = default;
};

/// In whole sentences; none when nothing was lost.
[[nodiscard]] std::vector<Phrase> lossRemarks(const RunLosses& losses);

} // namespace flowhand
