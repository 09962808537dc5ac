#pragma once

#include <cstdint>

#include "aircraft/atmosphere.h"

namespace flowhand {

/// Figures of one kind of engine. Power is in % of the thrust rated for the air it is in.
struct EngineFigures {
    double ratedThrust = 0.0;     ///< N, standing still at sea level
    double machLapse = 0.0;       ///< share of thrust lost per unit of Mach number
    double densityPower = 0.0;    ///< exponent of the density ratio
    double idlePower = 0.0;       ///< %
    double spoolStart = 0.0;      ///< %/s, how fast power may rise from nothing ...
    double spoolGain = 0.0;       ///< ... and by how much faster per % of power: 1/s
    double spoolDown = 0.0;       ///< %/s
    double spoolNear = 0.0;       ///< 1/s, how power closes in on what is asked
    double startRate = 0.0;       ///< %/s, from nothing to idle and back
    double leverIdle = 0.0;       ///< %, below this the thrust lever counts as closed
    double reverseRaised = 0.0;   ///< %, above this the reverse lever counts as raised
    double reverseIdle = 0.0;     ///< %, up to this the raised lever asks for idle only
    double reversePower = 0.0;    ///< %, with the reverse lever fully up
    double reverseShare = 0.0;    ///< of the thrust that is turned forward when deployed
    double reverserTransit = 0.0; ///< s
};

/// What the cockpit asks of one engine. Levers in %.
struct EngineDemand {
    double lever = 0.0;
    double reverseLever = 0.0;
    double leastPower = 0.0; ///< %, held by the take-off button
    bool hasFuel = true;
    bool isOnGround = true;
};

enum class ReverserState : std::uint8_t { Stowed, Transit, Deployed };

/// One engine with its reverser.
class Engine {
public:
    /// At rest at the power that `demand` asks for, reverser where the demand has it.
    void settle(const EngineFigures& figures, const EngineDemand& demand);
    void step(const EngineFigures& figures, const EngineDemand& demand, double seconds);

    [[nodiscard]] double power() const { return m_power; }
    [[nodiscard]] ReverserState reverser() const;
    /// N, negative when reversed. `airspeed` true, m/s.
    [[nodiscard]] double thrust(const EngineFigures& figures, const AirState& air, double airspeed) const;

private:
    [[nodiscard]] bool isReverseAsked(const EngineFigures& figures, const EngineDemand& demand) const;
    [[nodiscard]] double askedPower(const EngineFigures& figures, const EngineDemand& demand) const;

    double m_power = 0.0;    ///< %
    double m_deployed = 0.0; ///< 0 stowed .. 1 deployed
};

} // namespace flowhand
