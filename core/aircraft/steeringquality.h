#pragma once

namespace flowhand {

/// How well the line on the ground has been followed since the aircraft last began to roll. What has been measured
/// stays while it stands.
class SteeringQuality {
public:
    /// `offset` m from the line, `speed` m/s over the ground.
    void step(double offset, double speed, bool isInBend, double seconds);

    [[nodiscard]] double rms() const;                              ///< m, over the way made
    [[nodiscard]] double largest() const { return m_largest; }     ///< m
    [[nodiscard]] double turnSpeed() const { return m_turnSpeed; } ///< m/s, the largest in bends

private:
    double m_way = 0.0;     ///< m
    double m_squares = 0.0; ///< m3: offset squared over the way
    double m_largest = 0.0;
    double m_turnSpeed = 0.0;
    bool m_isRolling = false;
};

} // namespace flowhand
