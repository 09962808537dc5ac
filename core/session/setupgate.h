#pragma once

#include <cstdint>
#include <vector>

#include "session/movement.h"
#include "session/session.h"

namespace flowhand {

/// What goes on once the set-up is right.
enum class GatePurpose : std::uint8_t { None, Start, Resume, Repeat, Jump };

/// The set-up check before a start, a resume, a repeat or a jump: which controls are not where they should be.
class SetUpGate {
public:
    SetUpGate(const Aircraft& aircraft, const MovementDetector& movements)
        : m_aircraft(aircraft), m_movements(movements) {}

    void close(GatePurpose purpose, std::vector<StartValue> wanted) {
        m_purpose = purpose;
        m_wanted = std::move(wanted);
    }
    void open() { m_purpose = GatePurpose::None; }
    [[nodiscard]] GatePurpose purpose() const { return m_purpose; }
    [[nodiscard]] bool isClosed() const { return m_purpose != GatePurpose::None; }
    /// What is wrong, in the order of the wanted list; a control that has not reported yet is.
    [[nodiscard]] std::vector<SetUpItem> wrong(const std::vector<Value>& values) const;

private:
    const Aircraft& m_aircraft;
    const MovementDetector& m_movements;
    GatePurpose m_purpose = GatePurpose::None;
    std::vector<StartValue> m_wanted;
};

} // namespace flowhand
