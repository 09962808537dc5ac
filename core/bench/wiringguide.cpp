// One control after the other is moved; a stage ends by itself:
//
//   #  stage    what is seen                                             then
//   1  first    nothing moves for 2 s                                    the noise is learned, the next stage
//   2  first    something never rests (10 s)                             it is left out as restless; as 1
//   3  others   something moves                                          wait
//   4  others   all stand still for 1 s as they stood before             wait: a spike or a tremble
//   5  others   all stand still for 1 s, and an input stands elsewhere   the next stage
//   6  others   the same, and a contact has pulsed or a wheel turned     the next stage
//   7  last     as 5 or 6                                                done: solveWiring()
#include "bench/wiringguide.h"

#include <algorithm>
#include <utility>

namespace flowhand {

WiringGuide::WiringGuide(WiringWish wish, const Aircraft& aircraft, InputWatch& watch, Time begin)
    : m_wish(std::move(wish)), m_aircraft(aircraft), m_watch(watch), m_stages(stagesOf(m_wish, aircraft)),
      m_begin(begin) {}

const Phrase& WiringGuide::ask() const {
    static const Phrase kNothing;
    return isDone() ? kNothing : m_stages[m_results.size()].ask;
}

bool WiringGuide::hasChanged(const Snapshot& standing) const {
    const Snapshot& before = m_results.back().standing;
    return std::any_of(standing.begin(), standing.end(), [&](const auto& entry) {
        const auto other = before.find(entry.first);
        return other != before.end() && m_watch.isMoved(entry.first, other->second, entry.second);
    });
}

bool WiringGuide::advance(Time now) {
    if (isDone())
        return false;
    if (m_results.empty()) {
        if (!m_watch.learnRest(m_begin, now))
            return false;
        m_results.push_back({m_watch.standing(now), {}});
        m_begin = now;
        return true;
    }
    if (now < m_begin + InputWatch::kStill || !m_watch.isStill(now))
        return false;
    StageResult result{m_watch.standing(now), m_watch.eventsSince(m_begin)};
    if (result.events.empty() && !hasChanged(result.standing))
        return false;
    m_results.push_back(std::move(result));
    m_begin = now;
    return true;
}

BenchResult<WiringProposal> WiringGuide::solve(const InputNamer& nameOf) const {
    if (!isDone())
        return benchFailure("nothing-moved", phrase("nothing moved and stood still again after: {1}").with(ask()));
    return solveWiring(m_wish, m_aircraft, m_watch, m_results, nameOf);
}

} // namespace flowhand
