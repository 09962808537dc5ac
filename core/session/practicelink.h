#pragma once

#include <optional>
#include <string>
#include <vector>

#include "aircraft/practice.h"
#include "procedure/flow.h"
#include "session/feedlink.h"
#include "session/session.h"

namespace flowhand {

/// A run's practice aircraft, if it has one: told of the controls as the session has them, stepped while the run goes
/// on, put elsewhere for a jump. Session thread; times are the practice aircraft's own, which stands while the run
/// does. The aircraft must outlive it.
class PracticeLink {
public:
    PracticeLink(std::optional<PracticeAircraft> practice, const Aircraft& aircraft)
        : m_practice(std::move(practice)), m_aircraft(aircraft), m_told(aircraft.controls.size()) {}

    /// kForever: there is none.
    [[nodiscard]] Time nextStep() const { return m_practice ? m_practice->nextStep() : kForever; }
    /// At the beginning of a run: all that it says, but for what `link` takes from elsewhere.
    void begin(const FeedLink& link, std::vector<Sample>& motion);
    /// Makes the step that is due at `time`, if `isFlying`, with the controls as the session and this instant's samples
    /// have them. Appends its motion to `made`.
    void fly(Time time, bool isFlying, const Session& session, const FeedLink& link, std::vector<Sample>& made);

    /// Where it goes in a jump to the step with this id; empty: it stays, or there is none.
    [[nodiscard]] std::string placeFor(const Flow& flow, const std::string& step) const;
    /// The next fly() tells its motion there; until goneOn() it rests there at whatever the controls ask for.
    [[nodiscard]] Status put(const std::string& place);
    void goneOn() { m_isPut = false; }
    /// Its motion in another place has not been told yet, and comes before all else.
    [[nodiscard]] bool hasToTell() const { return m_hasToTell; }

    /// None: something else moves on the ground.
    [[nodiscard]] std::optional<GroundPosition> ground(const FeedLink& link) const;
    void fail(const Failure& failure);
    void follow(const std::string& route);
    /// For another run of the flight.
    void restart();

private:
    bool tell(Time time, SignalId control, Value value);

    std::optional<PracticeAircraft> m_practice;
    const Aircraft& m_aircraft;
    std::vector<Value> m_told; ///< by SignalId of the controls
    bool m_isPut = false;
    bool m_hasToTell = false;
};

} // namespace flowhand
