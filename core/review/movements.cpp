#include "review/movements.h"

#include <algorithm>

namespace flowhand {

std::vector<ControlMovement> movementsOf(const ReviewedRun& run) {
    MovementDetector detector(run.aircraft, run.header.setup.controls, run.header.setup.timeScale);
    std::vector<ControlMovement> movements;
    const auto settleUntil = [&](Time time) {
        for (Time next = detector.nextTimer(); next < time; next = detector.nextTimer())
            detector.settle(next, movements);
    };
    for (const Sample& sample : run.samples) {
        if (!run.aircraft.isControl(sample.signal))
            continue;
        settleUntil(sample.time);
        // What the other actor interrupts ends unsettled; it was a movement all the same.
        const ControlMovement* moving = detector.moving(sample.signal);
        if (moving != nullptr && moving->actor != sample.actor)
            movements.push_back(*moving);
        (void)detector.take(sample.time, sample.signal, sample.value, sample.actor, sample.control);
    }
    settleUntil(run.length + kTick);
    for (const CockpitControl& control : run.aircraft.controls)
        if (const ControlMovement* moving = detector.moving(control.signal))
            movements.push_back(*moving);
    std::stable_sort(movements.begin(), movements.end(), [](const ControlMovement& a, const ControlMovement& b) {
        return a.began < b.began;
    });
    return movements;
}

} // namespace flowhand
