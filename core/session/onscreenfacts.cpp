#include "session/onscreenfacts.h"

namespace flowhand {

std::vector<ControlFacts> onScreenFacts(const Aircraft& aircraft) {
    std::vector<ControlFacts> facts(aircraft.controls.size());
    for (const CockpitControl& control : aircraft.controls) {
        const Signal& signal = aircraft.signals[control.signal];
        ControlFacts& fact = facts[indexOf(control.signal)];
        fact.isSimulated = true;
        fact.range = signal.highest - signal.lowest;
        fact.isMomentary = control.kind == ControlKind::Button;
        fact.controlName = signal.label;
    }
    return facts;
}

} // namespace flowhand
