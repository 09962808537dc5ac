#pragma once

#include <optional>
#include <string>
#include <vector>

#include "procedure/failure.h"
#include "procedure/flow.h"
#include "procedure/surroundings.h"

namespace flowhand {

/// Something that happens to the crew, once, when its condition comes true, or not at all. It happens on its own: no
/// hand does it.
struct ScenarioEvent {
    std::string id;
    std::string title;
    PlacedCondition when;
    double chance = 1.0;            ///< 0..1, drawn once a flight from its seed
    std::string group;              ///< of the events of one group at most one happens; empty: of none
    std::optional<Failure> failure; ///< of the practice aircraft
    std::string route;              ///< the line on the ground that is to be followed from then on; empty: as before
    std::optional<Words> words;     ///< spoken as it happens
    SourcePlace place;
};

/// A flight put together: where and in what it begins, the flows that are flown one after the other, and what happens
/// on the way. A file in an aircraft's scenarios/ folder. Refers to its Aircraft's signals by id.
struct Scenario {
    std::string id; ///< file name without .toml
    std::string file;
    std::string title;
    std::string summary;
    std::string startPlace; ///< empty: the first flow's
    SourcePlace startWhere;
    Surroundings surroundings;
    std::vector<std::string> flows; ///< ids
    SourcePlace flowsWhere;
    std::vector<ScenarioEvent> events;
    std::string source; ///< the whole file
};

/// Reads one scenario file for its aircraft. Nothing when `problems` got an error. That its flows, its place, its
/// surface and its routes exist is for whoever knows those.
[[nodiscard]] std::optional<Scenario> loadScenario(const std::string& file, const Aircraft& aircraft,
                                                   Problems& problems);
/// The same from memory; `file` stands in messages.
[[nodiscard]] std::optional<Scenario> parseScenario(std::string source, const std::string& file,
                                                    const Aircraft& aircraft, Problems& problems);

/// Which flow comes after one that has ended: what its outcome names, or else, when it was completed, the next of the
/// scenario's list. A flow that was reached by an outcome is the last, unless an outcome of its own leads on.
class FlowOrder {
public:
    /// `flows` are ids in their order; the first is flown first.
    explicit FlowOrder(std::vector<std::string> flows) : m_flows(std::move(flows)) {}

    /// `outcome` is the id of the one that was reached; empty: the flow was completed. Empty when nothing follows.
    [[nodiscard]] std::string after(const Flow& ended, const std::string& outcome);

private:
    std::vector<std::string> m_flows;
    std::size_t m_at = 0;
    bool m_hasLeft = false; ///< by an outcome
};

} // namespace flowhand
