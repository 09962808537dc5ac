#pragma once

#include <cstdint>

#include "aircraft/friction.h"

namespace flowhand {

/// Wheels, brakes and steering. Angles in rad.
struct GroundFigures {
    double wheelbase = 0.0;           ///< m, main wheels to nosewheel
    double track = 0.0;               ///< m, between the main wheels' middles
    double centreOfGravity = 0.0;     ///< m ahead of the main wheels
    double yawInertia = 0.0;          ///< kg m2 about the main wheels
    double rolling = 0.0;             ///< friction of a free wheel, once rolling
    double breakaway = 0.0;           ///< the same, standing
    double friction = 0.0;            ///< the most a braked or cornering tyre can hold, by surface
    Braking braking = Braking::Share; ///< how the surface brakes
    double braked = 0.0;              ///< braking coefficient where it is known as a whole
    double antiSkid = 0.0;            ///< share of it that braking reaches
    double antiSkidWet = 0.0;         ///< the same on a wet runway; 14 CFR 25.109(c)(2): 0.30, 0.50 or 0.80 by its kind
    double tyrePressure = 0.0;        ///< Pa
    double brakeForce = 0.0;          ///< N, one side at full pedal
    double brakeLag = 0.0;            ///< s
    double parkingBrake = 0.0;        ///< share of full pedal
    double corneringForce = 0.0;      ///< N per rad of the nosewheel's slip
    double tillerSlow = 0.0;          ///< m/s, full authority up to here
    double tillerFast = 1.0;          ///< m/s, least authority from here
    double tillerLeast = 1.0;         ///< share
    double pedalAngle = 0.0;          ///< nosewheel angle at full pedal, slow
    double pedalSlow = 0.0;           ///< m/s
    double pedalFast = 0.0;           ///< m/s
    double pedalLeast = 0.0;          ///< share
    double steeringLimit = 0.0;       ///< nosewheel, either side
    double steeringRate = 0.0;        ///< rad/s
    double rudderMoment = 0.0;        ///< m3: yawing moment = dynamic pressure x this at full pedal
    double finMoment = 0.0;           ///< m3 per rad of sideslip, turning into the wind
};

/// What the hands and feet ask. Shares are 0..1, pedals -1..1, right positive; angles in rad.
struct SteeringDemand {
    double tiller = 0.0;
    double pedals = 0.0;
    double brakeLeft = 0.0;
    double brakeRight = 0.0;
    double automaticBrake = 0.0; ///< both sides
    double assist = 0.0;         ///< nosewheel angle that the pilot-assist adds
    bool isParked = false;
    bool isSteeringLost = false; ///< the nosewheel goes where it is rolled
    double dragLeft = 0.0;       ///< failed: what the brake presses at the least, share of full pedal
    double dragRight = 0.0;
    bool isLeftBrakeLost = false;
    bool isRightBrakeLost = false;
};

/// What acts on the aircraft from elsewhere while it rolls. N, N m, m/s, Pa.
struct RollingState {
    double mass = 0.0;
    double speed = 0.0; ///< along the heading, 0 or more
    double weightOnWheels = 0.0;
    double forward = 0.0;      ///< thrust less drag
    double thrustMoment = 0.0; ///< to the right positive
    double dynamicPressure = 0.0;
    double sideslip = 0.0; ///< rad, wind from the right positive
    bool isNoseDown = true;
};

/// Nosewheel, brakes and yaw on the ground: two axles. The main wheels do not slip sideways below the side-force limit;
/// the nosewheel's side force grows with its slip up to the friction it can hold (bicycle model with that limit).
class GroundHandling {
public:
    /// Moves on by `seconds`; returns the acceleration along the heading, m/s2.
    double step(const GroundFigures& figures, const SteeringDemand& demand, const RollingState& state, double seconds);
    /// No yaw, nosewheel straight: in the air, or put in place.
    void centre();

    [[nodiscard]] double yawRate() const { return m_yawRate; }     ///< rad/s, right positive
    [[nodiscard]] double nosewheel() const { return m_nosewheel; } ///< rad
    [[nodiscard]] double brakeLeft() const { return m_brakeLeft; } ///< N
    [[nodiscard]] double brakeRight() const { return m_brakeRight; }

private:
    void turnNosewheel(const GroundFigures& figures, const SteeringDemand& demand, double speed, double seconds);
    void pressBrakes(const GroundFigures& figures, const SteeringDemand& demand, const RollingState& state,
                     double seconds);
    /// Returns the side force of the nosewheel, N.
    double turn(const GroundFigures& figures, const SteeringDemand& demand, const RollingState& state, double seconds);

    double m_yawRate = 0.0;
    double m_nosewheel = 0.0;
    double m_pressureLeft = 0.0; ///< 0..1
    double m_pressureRight = 0.0;
    double m_brakeLeft = 0.0;
    double m_brakeRight = 0.0;
};

/// Authority that falls from 1 at `slow` to `least` at `fast`.
[[nodiscard]] double authority(double speed, double slow, double fast, double least);

/// Steady turns of the bicycle model without slip: radii of the main gear's middle and of the nosewheel (m), yaw rate
/// (rad/s).
[[nodiscard]] double turnRadiusMain(double wheelbase, double nosewheel);
[[nodiscard]] double turnRadiusNose(double wheelbase, double nosewheel);
[[nodiscard]] double turnRate(double wheelbase, double nosewheel, double speed);
/// Width of pavement (m) that a turn by 180 degrees at the greatest steering angle needs, to the outer main wheel's
/// middle: b tan(90 deg - angle) + t/2 (Horonjeff, Planning and Design of Airports, eq. 2-1).
[[nodiscard]] double turnRadiusOuterWheel(double wheelbase, double track, double nosewheel);

} // namespace flowhand
