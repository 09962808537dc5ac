#pragma once

#include <cstdint>

namespace flowhand {

/// How the pilot-assist flies. SI, rad.
struct AssistFigures {
    double rotateRate = 0.0;         ///< rad/s
    double rotatePitch = 0.0;        ///< attitude that the rotation ends at
    double pitchMost = 0.0;          ///< in the climb
    double pitchRate = 0.0;          ///< rad/s, the most in flight
    double rotateGrace = 0.0;        ///< m/s above VR that a person who has used the yoke is given
    double climbMargin = 0.0;        ///< m/s above V2, held until the acceleration height
    double accelerateHeight = 0.0;   ///< m
    double accelerateGradient = 0.0; ///< climb gradient kept while accelerating
    double accelerateTo = 0.0;       ///< m/s calibrated, then climbed at
    double turnHeight = 0.0;         ///< m, from here on the climb-out turns
    double turnBy = 0.0;             ///< track away from the runway's, right positive
    double levelHeight = 0.0;        ///< m, where the climb ends
    double glidePath = 0.0;          ///< rad below the horizon
    double aimDistance = 0.0;        ///< m past the threshold where the path meets the ground
    double flareHeight = 0.0;        ///< m
    double flareTime = 0.0;          ///< s, height / sink in the flare
    double touchdownSink = 0.0;      ///< m/s
    double lowerRate = 0.0;          ///< rad/s, the nose after touchdown
    double bankMost = 0.0;
    double bankRate = 0.0;       ///< rad/s
    double yokePitchRate = 0.0;  ///< rad/s at full yoke
    double yokeBankRate = 0.0;   ///< rad/s at full yoke
    double yokeNeutral = 0.0;    ///< share of full travel that counts as hands off
    double yokeHold = 0.0;       ///< s after the yoke's release in which the attitude is left as it is
    double rollLineAngle = 0.0;  ///< nosewheel angle that the assist uses at most to keep a roll straight
    double handsOffTiller = 0.0; ///< nosewheel is the assist's only within this tiller angle ...
    double handsOffPedals = 0.0; ///< ... and this share of pedal
    double goAroundPower = 0.0;  ///< %, thrust levers above it end an approach
};

/// The V speeds that the profile is flown by, m/s calibrated; from the aircraft file.
struct ProfileSpeeds {
    double vr = 0.0;
    double v2 = 0.0;
};

/// What the assist looks at.
struct AssistView {
    double calibrated = 0.0;   ///< m/s
    double trueSpeed = 0.0;    ///< m/s
    double acceleration = 0.0; ///< m/s2 that level flight would give now: (thrust - drag) / mass
    double height = 0.0;       ///< m
    double path = 0.0;         ///< flight path angle
    double pitch = 0.0;
    double bank = 0.0;
    double trimAlpha = 0.0;         ///< angle of attack that carries the weight now
    double thresholdDistance = 0.0; ///< m along the runway still to go to the threshold, negative past it
    double lineOffset = 0.0;        ///< m from the line on the ground, right positive
    double lineAngle = 0.0;         ///< rad, right positive
    double runwayOffset = 0.0;      ///< m from the runway's centreline, drawn out, right positive
    double runwayAngle = 0.0;       ///< rad of the track to it, right positive
    double groundSpeed = 0.0;       ///< m/s
    double leastLever = 0.0;        ///< %, the lower of the thrust levers
    double tiller = 0.0;            ///< rad
    double pedals = 0.0;            ///< -1 .. 1
    double pedalsWanted = 0.0;      ///< that would hold the engines' yaw in the air; beyond 1: cannot
    double trimOff = 0.0;           ///< share of full yoke that the elevator trim is worth, beyond what is wanted
    double yokePitch = 0.0;         ///< -1 .. 1, pull positive
    double yokeBank = 0.0;          ///< -1 .. 1, right positive
    bool isOnGround = true;
    bool isOnRunwayLine = false; ///< the line here is the runway's centreline
};

/// Rates to turn at, rad/s, the nosewheel angle added, the pedals in the air, -1 .. 1, and what the elevator can lift,
/// of what it can in trim.
struct AssistCommand {
    double pitchRate = 0.0;
    double bankRate = 0.0;
    double nosewheel = 0.0;
    double pedals = 0.0;
    double elevator = 1.0;
};

/// Flies pitch and bank wherever the person's yoke does not: rotates at VR, climbs straight ahead, accelerates, turns
/// and levels off at the file's heights, comes down a glide path, flares, lowers the nose, keeps the wings level, a
/// roll on the runway straight and, with the feet off the pedals, the nose straight in the air. Elevator trim that is
/// off is felt in what the yoke asks for, and in the rotation. Speed in level flight is the person's, by the thrust.
class PilotAssist {
public:
    enum class Phase : std::uint8_t { Roll, TakeOff, Climb, Approach, Flare, Lower };

    explicit PilotAssist(Phase phase) : m_phase(phase) {}
    [[nodiscard]] AssistCommand fly(const AssistFigures& figures, const ProfileSpeeds& speeds, const AssistView& view,
                                    double seconds);
    [[nodiscard]] Phase phase() const { return m_phase; }

private:
    void changePhase(const AssistFigures& figures, const ProfileSpeeds& speeds, const AssistView& view);
    [[nodiscard]] double climbPitch(const AssistFigures& figures, const ProfileSpeeds& speeds,
                                    const AssistView& view) const;
    [[nodiscard]] double wantedPitch(const AssistFigures& figures, const ProfileSpeeds& speeds,
                                     const AssistView& view) const;
    [[nodiscard]] double pitchRate(const AssistFigures& figures, const ProfileSpeeds& speeds, const AssistView& view);
    [[nodiscard]] double bankRate(const AssistFigures& figures, const AssistView& view) const;

    Phase m_phase;
    bool m_hasYokeMoved = false;
    bool m_isClimbOut = false; ///< climbs from below the height of the climb-out's turn
    bool m_hasTurned = false;  ///< and has reached it
    double m_sinceYoke = 1e9;  ///< s
};

} // namespace flowhand
