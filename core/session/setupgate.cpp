#include "session/setupgate.h"

#include <cmath>

namespace flowhand {

std::vector<SetUpItem> SetUpGate::wrong(const std::vector<Value>& values) const {
    std::vector<SetUpItem> items;
    for (const StartValue& wanted : m_wanted) {
        const Value found = values[indexOf(wanted.signal)];
        const bool isNumber = m_aircraft.signals[wanted.signal].kind == SignalKind::Number;
        const bool isNear = isNumber && found.isKnown() && wanted.value.isKnown() &&
                            std::fabs(found.number() - wanted.value.number()) <= wanted.tolerance;
        if (!isNear && !m_movements.isSamePlace(wanted.signal, found, wanted.value))
            items.push_back({wanted.signal, wanted.value, found});
    }
    return items;
}

} // namespace flowhand
