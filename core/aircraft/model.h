#pragma once

#include <optional>
#include <vector>

#include "aircraft/assist.h"
#include "aircraft/autobrake.h"
#include "aircraft/groundplan.h"
#include "aircraft/motionwriter.h"
#include "aircraft/performance.h"
#include "aircraft/practicefile.h"
#include "aircraft/steeringquality.h"
#include "procedure/failure.h"

namespace flowhand {

struct EngineControls {
    double lever = 0.0;        ///< %
    double reverseLever = 0.0; ///< %
    bool hasFuel = true;
    bool isFireHandlePulled = false;
    bool hasStarter = false; ///< the cockpit has a switch for it
    bool isCranked = false;
    bool isFeathered = false;
    bool isSpeedLow = false; ///< the condition lever holds the propeller at its low speed
};

/// Which magnetos of piston engines spark.
enum class Magnetos : unsigned char { Off, One, Both };

enum class SpoilerLever : unsigned char { Down, Armed, Up };

/// The cockpit's controls as the model sees them. Shares 0..1, pedals and yoke -1..1, tiller in rad.
struct CockpitState {
    std::vector<EngineControls> engines;
    double flapAngle = 0.0; ///< deg, of the lever's gate
    bool isGearDown = true;
    SpoilerLever spoilers = SpoilerLever::Down;
    bool isParked = false;
    double brakeLeft = 0.0;
    double brakeRight = 0.0;
    double pedals = 0.0;
    double tiller = 0.0;
    double yokePitch = 0.0;
    double yokeBank = 0.0;
    std::size_t autobrake = 0; ///< index into the settings
    bool isTakeOffPressed = false;
    double mixture = 1.0; ///< of piston engines
    bool hasCarburettorHeat = false;
    Magnetos magnetos = Magnetos::Both;
    bool isFuelSelected = true;
    bool hasBattery = true;
    bool isAutofeatherArmed = false;
    double altimeterSetting = 0.0;   ///< Pa; 0: the field's
    std::optional<double> pitchTrim; ///< deg, nose up positive; none: as it should be
};

/// What take-off and landing are worked out for; from the aircraft file.
struct FlightValues {
    std::string plannedFlap; ///< position of the flap lever for the take-off
    std::string landingFlap;
    double takeOffLever = 0.0; ///< %, lever position that the take-off button stands for; 0: no such button
};

/// The physics: forces on a rigid aircraft, in the air along and across its path with pitch, bank and the slip that
/// uneven thrust and pedals give, on the ground along and about the vertical. State of the main wheels' middle; step by
/// step, no time of its own. Figures, plan and route must outlive it.
class AircraftModel {
public:
    AircraftModel(const PracticeFigures& figures, const GroundPlan& plan, const Route& route, const StartPlace& place,
                  const FlightValues& values, const CockpitState& cockpit);

    void step(const CockpitState& cockpit, double seconds);
    [[nodiscard]] MotionState motion() const;
    /// From the next step on.
    void fail(const Failure& failure);
    /// Another line on the ground to follow from here; it must outlive the model.
    void follow(const Route& route);

    [[nodiscard]] PlanPoint mainWheels() const { return m_at; }
    [[nodiscard]] PlanPoint nosewheel() const;
    [[nodiscard]] double nosewheelAngle() const { return m_wheels.nosewheel(); } ///< rad
    [[nodiscard]] const Route& route() const { return *m_route; }
    [[nodiscard]] double heading() const { return m_heading + m_slip; } ///< rad, of the nose
    [[nodiscard]] double speed() const { return m_speed; }   ///< m/s: over the ground on it, true airspeed in the air
    [[nodiscard]] double height() const { return m_height; } ///< m
    [[nodiscard]] double path() const { return m_path; }     ///< rad
    [[nodiscard]] double mass() const { return m_mass; }     ///< kg
    [[nodiscard]] double fuel() const { return m_fuel; }     ///< kg
    [[nodiscard]] const TakeOffSpeeds& takeOffSpeeds() const { return m_takeOff; }
    [[nodiscard]] bool isOnGround() const { return m_isOnGround; }
    [[nodiscard]] double routeDistance() const { return m_routeDistance; } ///< m, of the nosewheel

private:
    struct Forces {
        double thrust = 0.0;
        double thrustMoment = 0.0;
        AirForces air;
        double dynamicPressure = 0.0;
        double airspeed = 0.0;   ///< true
        double calibrated = 0.0; ///< 0 with the wind from behind
    };

    void putInPlace(const StartPlace& place, const CockpitState& cockpit);
    void moveParts(const CockpitState& cockpit, double seconds);
    void latchTakeOff(const CockpitState& cockpit);
    void latchSpoilers(const CockpitState& cockpit);
    [[nodiscard]] Forces forces() const;
    [[nodiscard]] const AirState& air() const { return m_air; }
    void setHeight(double height);
    void lookAtRoute();
    void findLine();
    [[nodiscard]] double headwind() const;
    [[nodiscard]] AssistView assistView(const CockpitState& cockpit, const Forces& forces) const;
    [[nodiscard]] AirframeDemand airframeDemand(const CockpitState& cockpit) const;
    [[nodiscard]] EngineDemand engineDemand(const CockpitState& cockpit, std::size_t engine) const;
    [[nodiscard]] double strength(const CockpitState& cockpit) const;
    [[nodiscard]] bool hasPower(const CockpitState& cockpit) const;
    void latchFeathers(const CockpitState& cockpit);
    [[nodiscard]] bool areLeversClosed(const CockpitState& cockpit) const;
    [[nodiscard]] double trimAlpha(const Forces& forces) const;
    [[nodiscard]] double groundSpeed() const;
    [[nodiscard]] double track() const;
    void stepOnGround(const CockpitState& cockpit, const AssistCommand& command, const Forces& forces, double seconds);
    void stepInAir(const CockpitState& cockpit, const AssistCommand& command, const Forces& forces, double seconds);
    void rotateOnGround(const AssistCommand& command, double calibrated, double seconds);
    void move(double alongNorth, double alongEast, double seconds);
    void slip(const AssistCommand& command, const Forces& forces, double seconds);
    [[nodiscard]] double sideForce(const Forces& forces) const;
    void touchDown();
    [[nodiscard]] double trimOff(const CockpitState& cockpit, double calibrated) const;
    [[nodiscard]] bool isRunwayClear() const;
    [[nodiscard]] double rollRate(const CockpitState& cockpit, const AssistCommand& command) const;
    [[nodiscard]] SteeringDemand steeringDemand(const CockpitState& cockpit, double automaticBrake,
                                                double assist) const;
    [[nodiscard]] LinePoint runwayLine() const;
    [[nodiscard]] double runwayHeadwind() const;
    void load(double mass);
    void burnFuel(double seconds);
    void workOutSpeeds();
    void tellLoading(MotionState& state) const;

    const PracticeFigures& m_figures;
    const GroundPlan& m_plan;
    const Route* m_route;
    FlightValues m_values;
    std::vector<Engine> m_engines;
    std::vector<bool> m_isFeatheredByItself; ///< by engine; stays so until automatic feathering is switched off
    std::vector<Failure> m_failures;
    FlapFault m_flapFault;
    Airframe m_airframe;
    GroundHandling m_wheels;
    Autobrake m_autobrake;
    PilotAssist m_assist;
    SteeringQuality m_quality;
    GroundFigures m_ground; ///< with the centre of gravity as it is now
    TakeOffSpeeds m_takeOff;
    double m_reference = 0.0; ///< VREF, m/s calibrated
    double m_approach = 0.0;
    double m_speedsFor = 0.0;        ///< kg that the speeds were worked out for
    double m_altimeterSetting = 0.0; ///< Pa, of the cockpit
    double m_mass = 0.0;
    double m_fuel = 0.0; ///< kg
    double m_payload = 0.0;
    PlanPoint m_at;
    PlanPoint m_lastGround; ///< where the wheels last were on it
    double m_heading = 0.0; ///< in the air of the way through it; the nose points m_slip beside it
    double m_slip = 0.0;    ///< rad, nose to the right positive; 0 on the ground
    double m_speed = 0.0;
    double m_path = 0.0;
    double m_pitch = 0.0;
    double m_bank = 0.0;
    double m_height = 0.0;
    AirState m_air;                    ///< there
    PlanPoint m_nose;                  ///< nosewheel
    LinePoint m_line;                  ///< where the nosewheel is nearest to the route
    std::optional<LinePoint> m_runway; ///< a point of its centreline as the route goes along it; none: not on the route
    std::optional<double> m_threshold; ///< m along the route
    double m_turnRate = 0.0;           ///< rad/s
    double m_routeDistance = 0.0;
    double m_latchedLever = 0.0; ///< % that the levers stood at when the take-off button was pressed
    bool m_isTakeOffLatched = false;
    bool m_areSpoilersOut = false; ///< armed ones that have gone up by themselves
    bool m_isOnGround = true;
    bool m_hasLanded = false;
};

} // namespace flowhand
