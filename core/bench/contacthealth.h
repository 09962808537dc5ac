#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "bench/finding.h"
#include "bench/series.h"

namespace flowhand {

/// One contact over time: when it changed, by the reports.
struct ContactEdges {
    std::string name;
    bool isClosedFirst = false;
    std::vector<Time> times; ///< of its changes, in turn
    Time begin{};
    Time end{};
};
/// Closed is whatever is not the input's lowest value.
[[nodiscard]] ContactEdges edgesOf(const Series& series);

/// Upper ends of the bins of bounce times; the last bin has none.
inline constexpr std::array<std::int64_t, 8> kBounceBinsMicros = {500, 1000, 2000, 3000, 5000, 7000, 10000, 20000};

struct ContactHealth {
    std::size_t changes = 0; ///< from open to closed or back, each with its bounce
    Duration meanBounce{};
    Duration longestBounce{};
    std::array<std::size_t, kBounceBinsMicros.size() + 1> histogram{}; ///< changes by bounce time
    std::size_t chatter = 0;                                           ///< times it changed for a moment and back
    Duration shortestState{}; ///< the shortest time it then stayed open or closed; 0 with fewer than three changes
    std::vector<Finding> findings;
};

struct ContactHealthAsk {
    bool isOperated = true;    ///< somebody worked it while it was measured: no change at all is a fault
    bool hasFastEdges = false; ///< an encoder's: short states are no chatter
    Duration interval{};       ///< between two reports: shorter bounces are not seen
};

[[nodiscard]] ContactHealth measureContact(const ContactEdges& edges, const ContactHealthAsk& ask);

/// Of switches of which one contact is closed at a time.
struct SwitchHealthAsk {
    Duration transit = std::chrono::milliseconds(300); ///< as the rig file has it
    bool hasOpenPosition = false;                      ///< a position in which none is closed
    bool isOperated = true;
};

struct SwitchHealth {
    Duration longestNone{}; ///< none closed, between two positions
    Duration longestBoth{}; ///< two or more closed
    Duration usualNone{};   ///< the middle one of a change from position to position
    Duration usualBoth{};
    std::size_t changes = 0;
    std::vector<std::string> neverClosed;
    std::vector<Finding> findings;
};

[[nodiscard]] SwitchHealth measureSwitch(const std::vector<ContactEdges>& contacts, const SwitchHealthAsk& ask);

} // namespace flowhand
