#pragma once

#include <optional>
#include <string>
#include <vector>

#include "procedure/aircraftfile.h"
#include "procedure/flow.h"
#include "session/record.h"
#include "session/session.h"

namespace flowhand::test {

/// A small cockpit: gated flap_lever (up 4 12 22) and gear_lever (up down), taxi_light and parking_brake (switches),
/// thrust_lever_1, thrust_lever_2 and toe_brake (continuous, 0..100 %), tiller (continuous, -70..70 deg), pitch_trim
/// (-10..10 deg), takeoff_button and reply_button.
const Aircraft& cockpit();

/// All controls of the cockpit as on-screen ones.
SessionSetup onScreen();

/// A flow of the captain's from the text of its steps and other tables.
Flow flowOf(const std::string& text);

/// Runs a session by a script of lines `SECONDS WHAT`, WHAT being
///     start | waive | hold REASON | gap REASON | resume | repeat | jump STEP | stop | wait    a command, or just the
///     time SIGNAL = VALUE; SIGNAL = VALUE; ...                              simultaneous; a control is moved by a hand
///     found SIGNAL = VALUE; ...                                        where it stands, moved by nobody
/// The partner's movements are fed back by themselves.
class Bench {
public:
    Bench(const Flow& flow, SessionSetup setup);
    /// Where everything is before the run; then the run starts at 0 s.
    void begin(const std::string& values = {});
    void play(const std::string& script);
    /// Serves all timers up to `seconds`, and the partner's hands.
    void until(double seconds);

    /// What happened since the last call, one event after the other: "0 due flap, 1.5 done flap". Times in seconds.
    /// `leave` names kinds to leave out, with spaces.
    std::string events(const std::string& leave = "run-started step-moved step-seen");

    Session session;
    std::vector<Sample> samples;      ///< all that the session took
    std::vector<RunCommand> commands; ///< and was told
    std::vector<Event> all;

private:
    void command(Time time, const std::string& words);
    void take(Time time, std::vector<Sample> batch);
    void feedPartner(Time limit);
    void collect();
    [[nodiscard]] std::vector<Sample> changes(Time time, const std::string& text) const;
    [[nodiscard]] std::string told(const Event& event) const;

    const Flow& m_flow;
    std::vector<PartnerMove> m_partner;
    std::size_t m_shown = 0;
    Time m_last{-1};
};

std::string idOf(const Flow& flow, int step);

} // namespace flowhand::test
