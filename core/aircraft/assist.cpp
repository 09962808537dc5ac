#include "aircraft/assist.h"

#include <algorithm>
#include <cmath>

#include "aircraft/angle.h"
#include "aircraft/steering.h"

namespace flowhand {

namespace {

// Gains of the assist's loops, 1/s: how fast it closes in. A hand flies at about this pace; none belongs to an
// aircraft.
constexpr double kPitchGain = 2.0;
constexpr double kBankGain = 1.0;
constexpr double kSpeedGain = 0.12; // of speed error to wanted acceleration
constexpr double kPathGain = 0.25;  // of height error to wanted sink
constexpr double kPathLead = 1.5; // share of a path error that pitch leads by, because lift needs time to bend the path
constexpr double kSteepestClimb = 0.3;    // sine of the path, beyond anything these aircraft do
constexpr double kSteepestDescent = 0.15; // the same, for a path that is regained
constexpr double kCrossGain = 0.10;       // of offset from the line to wanted closing speed
constexpr double kTrackGain = 0.35;       // of track error to wanted turn rate
constexpr double kTrimInRotation = 3.0;   // about a third of full yoke rotates a trimmed aircraft

/// Path angle that turns the available acceleration into `acceleration` along the path and climbs with the rest.
double pathFor(double available, double acceleration) {
    return std::asin(std::clamp((available - acceleration) / kGravity, -kSteepestClimb, kSteepestClimb));
}

} // namespace

void PilotAssist::changePhase(const AssistFigures& figures, const ProfileSpeeds& speeds, const AssistView& view) {
    const double rotateAt = speeds.vr + (m_hasYokeMoved ? figures.rotateGrace : 0.0);
    switch (m_phase) {
    case Phase::Roll:
        if (!view.isOnGround)
            m_phase = Phase::Climb;
        else if (view.calibrated >= rotateAt && view.leastLever > figures.goAroundPower)
            m_phase = Phase::TakeOff;
        break;
    case Phase::TakeOff:
        if (!view.isOnGround)
            m_phase = Phase::Climb;
        else if (view.leastLever <= figures.goAroundPower)
            m_phase = Phase::Lower;
        break;
    case Phase::Climb:
        if (view.isOnGround)
            m_phase = Phase::Lower;
        break;
    case Phase::Approach:
        if (view.height <= figures.flareHeight)
            m_phase = Phase::Flare;
        [[fallthrough]];
    case Phase::Flare:
        if (view.isOnGround)
            m_phase = Phase::Lower;
        else if (view.leastLever > figures.goAroundPower)
            m_phase = Phase::Climb;
        break;
    case Phase::Lower:
        if (view.pitch <= 0.0 && view.calibrated < speeds.vr / 2.0)
            m_phase = Phase::Roll;
        break;
    }
}

double PilotAssist::climbPitch(const AssistFigures& figures, const ProfileSpeeds& speeds,
                               const AssistView& view) const {
    const bool isAccelerating = view.height >= figures.accelerateHeight;
    const double target = isAccelerating ? figures.accelerateTo : speeds.v2 + figures.climbMargin;
    const double spare = view.acceleration - kGravity * figures.accelerateGradient;
    double faster = kSpeedGain * (target - view.calibrated);
    if (isAccelerating)
        faster = std::min(faster, std::max(0.0, spare));
    double path = std::max(0.0, pathFor(view.acceleration, faster));
    const double rise = kPathGain * (figures.levelHeight - view.height) / std::max(view.trueSpeed, 1.0);
    const double levelling = std::asin(std::clamp(rise, -kSteepestDescent, kSteepestClimb));
    if (m_isClimbOut && levelling < path)
        path = levelling + kPathLead * (levelling - view.path);
    return std::min(path + view.trimAlpha, figures.pitchMost);
}

double PilotAssist::wantedPitch(const AssistFigures& figures, const ProfileSpeeds& speeds,
                                const AssistView& view) const {
    if (m_phase == Phase::Climb)
        return climbPitch(figures, speeds, view);
    const double aim = (view.thresholdDistance + figures.aimDistance) * std::tan(figures.glidePath);
    const double sink = m_phase == Phase::Approach
                            ? view.trueSpeed * std::sin(figures.glidePath) + kPathGain * (view.height - aim)
                            : view.height / figures.flareTime + figures.touchdownSink;
    const double path = -std::asin(std::clamp(sink / std::max(view.trueSpeed, 1.0), 0.0, kSteepestDescent));
    return std::min(path + kPathLead * (path - view.path) + view.trimAlpha, figures.pitchMost);
}

double PilotAssist::pitchRate(const AssistFigures& figures, const ProfileSpeeds& speeds, const AssistView& view) {
    if (std::fabs(view.yokePitch) > figures.yokeNeutral)
        return (view.yokePitch + view.trimOff) * figures.yokePitchRate;
    if (m_phase == Phase::Roll || m_phase == Phase::Lower)
        return -figures.lowerRate + std::max(0.0, view.trimOff) * figures.yokePitchRate;
    if (m_phase == Phase::TakeOff)
        return std::clamp(kPitchGain * (figures.rotatePitch - view.pitch), 0.0,
                          figures.rotateRate * std::clamp(1.0 + kTrimInRotation * view.trimOff, 0.0, 2.0));
    if (m_sinceYoke < figures.yokeHold)
        return 0.0;
    const double most =
        m_phase == Phase::Climb && view.pitch < figures.rotatePitch ? figures.rotateRate : figures.pitchRate;
    return std::clamp(kPitchGain * (wantedPitch(figures, speeds, view) - view.pitch), -figures.pitchRate, most);
}

double PilotAssist::bankRate(const AssistFigures& figures, const AssistView& view) const {
    if (view.isOnGround)
        return std::clamp(-kBankGain * view.bank, -figures.bankRate, figures.bankRate);
    if (std::fabs(view.yokeBank) > figures.yokeNeutral)
        return view.yokeBank * figures.yokeBankRate;
    const double speed = std::max(view.groundSpeed, 1.0);
    const double wantedTrack = m_hasTurned ? figures.turnBy : std::atan(-kCrossGain * view.runwayOffset / speed);
    const double turn = kTrackGain * wrapped(wantedTrack - view.runwayAngle);
    const double bank = std::clamp(std::atan(turn * speed / kGravity), -figures.bankMost, figures.bankMost);
    return std::clamp(kBankGain * (bank - view.bank), -figures.bankRate, figures.bankRate);
}

AssistCommand PilotAssist::fly(const AssistFigures& figures, const ProfileSpeeds& speeds, const AssistView& view,
                               double seconds) {
    const bool isYokeUsed =
        std::fabs(view.yokePitch) > figures.yokeNeutral || std::fabs(view.yokeBank) > figures.yokeNeutral;
    m_hasYokeMoved = m_hasYokeMoved || isYokeUsed;
    m_sinceYoke = isYokeUsed ? 0.0 : m_sinceYoke + seconds;
    changePhase(figures, speeds, view);
    m_isClimbOut = m_phase == Phase::Climb && (m_isClimbOut || view.height < figures.turnHeight);
    m_hasTurned = m_isClimbOut && (m_hasTurned || view.height >= figures.turnHeight);
    AssistCommand command;
    command.pitchRate = pitchRate(figures, speeds, view);
    command.elevator = 1.0 + view.trimOff;
    command.bankRate = bankRate(figures, view);
    const bool areFeetOff = std::fabs(view.pedals) <= figures.handsOffPedals;
    command.pedals = areFeetOff ? std::clamp(view.pedalsWanted, -1.0, 1.0) : view.pedals;
    const bool isTillerFree = std::fabs(view.tiller) <= figures.handsOffTiller;
    if (view.isOnGround && view.isOnRunwayLine && areFeetOff && isTillerFree)
        command.nosewheel = std::clamp(nosewheelFor(view.lineOffset, view.lineAngle, view.groundSpeed, 0.0),
                                       -figures.rollLineAngle, figures.rollLineAngle);
    return command;
}

} // namespace flowhand
