#pragma once

#include <vector>

#include "base/sample.h"
#include "procedure/aircraftfile.h"
#include "rig/controlfacts.h"

namespace flowhand {

/// From leaving rest to settling again, by one actor.
struct ControlMovement {
    SignalId control = kNoSignal;
    Actor actor = Actor::Hand;
    ControlId by = kNoControl;
    Value from; ///< at rest before; unknown when the control had not reported yet
    Value to;   ///< where it stands now, or settled
    Time began{};
    Time arrived{}; ///< when it came to where it has been since
};

/// Tells when each control of the cockpit is being moved and where it settles. Told the time. Not thread-safe.
///
/// | case | what comes                                 | what follows                                              |
/// | ---- | ------------------------------------------ | --------------------------------------------------------- |
/// | 1    | number within the threshold of its rest    | nothing                                                   |
/// | 2    | number further off                         | a movement begins, arrived now                            |
/// | 3    | moving number beyond the threshold of      | it goes on, arrived now                                   |
/// |      | where it arrived                           |                                                           |
/// | 4    | 300 ms without case 3                      | settles where it stands                                   |
/// | 5    | contact (on/off) changes                   | begins or goes on; settles 300 ms after its last change   |
/// | 6    | position: a gate is entered                | begins or goes on; selected after 0.5 s in that gate      |
/// | 7    | position: left for between two gates       | begins or goes on; does not settle there                  |
/// | 8    | button pressed                             | begins and settles at once: letting go belongs to it      |
/// | 9    | button let go                              | nothing                                                   |
/// | 10   | first report of a control, by hand         | a movement from nowhere: such a control reports when moved|
/// | 11   | the other actor moves it                   | what was going on ends unsettled, a new movement begins   |
/// | 12   | the machine moves it                       | what was going on ends unsettled, its rest is there       |
///
/// The threshold of numbers is max(6 sigma, 1 % of the range). The times are a person's (slowtime.h).
class MovementDetector {
public:
    /// `facts` by SignalId of the aircraft's controls; missing ones have no noise and the signal's own range.
    /// `timeScale` is the set-up's.
    MovementDetector(const Aircraft& aircraft, const std::vector<ControlFacts>& facts, double timeScale);

    /// Everything at rest where it is.
    void rest(const std::vector<Value>& values);
    void restAt(SignalId control, Value value);

    /// A change at `time`, not before any earlier one. True when a movement begins with it.
    bool take(Time time, SignalId control, Value value, Actor actor, ControlId by);
    /// Appends what settles at `time`, in the order of the controls. Changes at `time` must have been taken.
    void settle(Time time, std::vector<ControlMovement>& settled);
    /// When something settles next; kForever: nothing is moving, or only between gates.
    [[nodiscard]] Time nextTimer() const { return m_next; }

    /// The movement going on, or nullptr.
    [[nodiscard]] const ControlMovement* moving(SignalId control) const;
    /// Within the threshold of each other.
    [[nodiscard]] bool isSamePlace(SignalId control, Value a, Value b) const;
    [[nodiscard]] bool isButton(SignalId control) const { return m_tracks[indexOf(control)].isButton; }

private:
    struct Track {
        ControlMovement movement;
        Value rest;
        Value stayed;           ///< where the moving control arrived last
        double threshold = 0.0; ///< of a number
        Duration stay{};        ///< at one place, to settle
        bool isNumber = false;
        bool isPosition = false;
        bool isButton = false;
        bool isMoving = false;
    };

    [[nodiscard]] static Time settlesAt(const Track& track);
    [[nodiscard]] static bool isSamePlace(const Track& track, Value a, Value b);
    void begin(Track& track, Time time, Value value, Actor actor);
    void stop(SignalId control);
    [[nodiscard]] Time soonest() const;

    std::vector<Track> m_tracks;    ///< by SignalId
    std::vector<SignalId> m_moving; ///< in the order of the controls
    Time m_next = kForever;         ///< of nextTimer(), which is asked for at every sample
};

} // namespace flowhand
