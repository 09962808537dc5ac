#include "session/startvalue.h"

#include <algorithm>

namespace flowhand {

Value startOf(const Flow& flow, const Aircraft& aircraft, SignalId control) {
    for (const StartValue& start : flow.start)
        if (start.signal == control)
            return start.value;
    const Signal& signal = aircraft.signals[control];
    switch (signal.kind) {
    case SignalKind::OnOff:
        return Value::onOff(false);
    case SignalKind::Position:
        return Value::position(0);
    case SignalKind::Number:
        break;
    }
    return Value::number(std::clamp(0.0, signal.lowest, std::max(signal.lowest, signal.highest)));
}

} // namespace flowhand
