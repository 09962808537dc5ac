#pragma once

#include <cstdint>

#include "aircraft/atmosphere.h"
#include "aircraft/propeller.h"

namespace flowhand {

enum class EngineKind : std::uint8_t { Jet, Turboprop, Piston };

/// Figures of one kind of engine. Power is in % of what is rated for the air it is in: thrust of a jet, power at the
/// shaft of an engine with a propeller.
struct EngineFigures {
    EngineKind kind = EngineKind::Jet;
    double ratedThrust = 0.0;     ///< N, standing still at sea level; jets
    double ratedPower = 0.0;      ///< W at sea level; with a propeller
    double machLapse = 0.0;       ///< share of thrust lost per unit of Mach number; jets
    double densityPower = 0.0;    ///< exponent of the density ratio; jets and turboprops
    double idlePower = 0.0;       ///< %
    double spoolStart = 0.0;      ///< %/s, how fast power may rise from nothing ...
    double spoolGain = 0.0;       ///< ... and by how much faster per % of power: 1/s
    double spoolDown = 0.0;       ///< %/s
    double spoolNear = 0.0;       ///< 1/s, how power closes in on what is asked
    double startRate = 0.0;       ///< %/s, from nothing to idle and back
    double crankPower = 0.0;      ///< %, what a starter reaches; 0: fuel alone starts it
    double leverIdle = 0.0;       ///< %, below this the thrust lever counts as closed
    bool hasReverser = false;     ///< the next five are read with one only
    double reverseRaised = 0.0;   ///< %, above this the reverse lever counts as raised
    double reverseIdle = 0.0;     ///< %, up to this the raised lever asks for idle only
    double reversePower = 0.0;    ///< %, with the reverse lever fully up
    double reverseShare = 0.0;    ///< of the thrust that is turned forward when deployed
    double reverserTransit = 1.0; ///< s; of a propeller, its blades from flight idle to full reverse
    PropellerFigures propeller;

    [[nodiscard]] bool hasPropeller() const { return kind != EngineKind::Jet; }
};

/// What the cockpit asks of one engine. Levers in %.
struct EngineDemand {
    double lever = 0.0;
    double reverseLever = 0.0;
    double leastPower = 0.0; ///< %, held by the take-off button
    bool hasFuel = true;     ///< and a spark, where it needs one
    bool isOnGround = true;
    bool hasStarter = false; ///< the cockpit has a switch for it; without one fuel alone starts the engine
    bool isCranked = false;  ///< the starter turns it
    bool isFeathered = false;
    bool isSpeedLow = false;         ///< the propeller is held at its low speed
    double strength = 1.0;           ///< share of the power that mixture, carburettor heat and magnetos leave
    bool isOut = false;              ///< failed: runs down at once, whatever is asked
    bool isReverserLocked = false;   ///< failed: the reverser stays where it is
    bool isReverserUnlocked = false; ///< failed: on the ground it begins to open, or the blades go flat, by itself
};

enum class ReverserState : std::uint8_t { Stowed, Transit, Deployed };

/// One engine with its reverser or its propeller. A propeller in reverse is a reverser deployed; its blades go flat
/// (transit) on the way.
class Engine {
public:
    /// At rest at the power that `demand` asks for, reverser and propeller where the demand has them.
    void settle(const EngineFigures& figures, const EngineDemand& demand);
    void step(const EngineFigures& figures, const EngineDemand& demand, double seconds);

    [[nodiscard]] double power() const { return m_power; }
    [[nodiscard]] ReverserState reverser() const { return m_reverser; }
    [[nodiscard]] double feathered() const { return m_feathered; } ///< 0 .. 1
    /// N, negative when reversed. `airspeed` true, m/s.
    [[nodiscard]] double thrust(const EngineFigures& figures, const AirState& air, double airspeed) const;
    /// rpm of the propeller; 0 without one.
    [[nodiscard]] double propellerSpeed(const EngineFigures& figures) const;

private:
    [[nodiscard]] bool isReverseAsked(const EngineFigures& figures, const EngineDemand& demand) const;
    [[nodiscard]] double askedPower(const EngineFigures& figures, const EngineDemand& demand) const;
    [[nodiscard]] double askedDeployment(const EngineFigures& figures, const EngineDemand& demand) const;
    void turnBlades(const EngineFigures& figures, const EngineDemand& demand, double seconds);

    double m_power = 0.0;     ///< %
    double m_deployed = 0.0;  ///< 0 stowed .. 1 deployed
    double m_feathered = 0.0; ///< 0 .. 1
    double m_mostSpeed = 1.0; ///< share of the rated speed that the governor allows
    ReverserState m_reverser = ReverserState::Stowed;
};

/// Power of an engine as a share of its power at sea level in air of density ratio `ratio`. A piston engine's is
/// 1.132 ratio - 0.132 (Gagg and Ferrar 1934, from memory), the others' ratio^figures.densityPower.
[[nodiscard]] double powerInAir(const EngineFigures& figures, double ratio);

} // namespace flowhand
