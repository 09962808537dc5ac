#include "review/movements.h"

#include <algorithm>

#include "base/parallel.h"

namespace flowhand {

namespace {

/// No control's movements depend on another's, so each is gone through by itself.
std::vector<ControlMovement> movementsOf(const ReviewedRun& run, SignalId control) {
    std::vector<ControlMovement> movements;
    const SignalSamples& samples = run.samples[control];
    if (samples.size() == 0)
        return movements;
    MovementDetector detector(run.aircraft, run.header.setup.controls, run.header.setup.timeScale);
    const auto settleUntil = [&](Time time) {
        for (Time next = detector.nextTimer(); next < time; next = detector.nextTimer())
            detector.settle(next, movements);
    };
    std::size_t at = 0;
    for (std::size_t made = 0; made < samples.makers.size(); ++made) {
        const SignalSamples::Maker& maker = samples.makers[made];
        const std::size_t end = made + 1 < samples.makers.size() ? samples.makers[made + 1].from : samples.size();
        for (; at < end; ++at) {
            settleUntil(samples.times[at]);
            // What the other actor interrupts ends unsettled; it was a movement all the same.
            const ControlMovement* moving = detector.moving(control);
            if (moving != nullptr && moving->actor != maker.actor)
                movements.push_back(*moving);
            (void)detector.take(samples.times[at], control, Value::number(samples.values[at]), maker.actor,
                                maker.control);
        }
    }
    settleUntil(run.length + kTick);
    if (const ControlMovement* moving = detector.moving(control))
        movements.push_back(*moving);
    return movements;
}

} // namespace

std::vector<ControlMovement> movementsOf(const ReviewedRun& run) {
    std::vector<std::vector<ControlMovement>> byControl(run.aircraft.controls.size());
    inParallel(byControl.size(), [&](std::size_t i) {
        byControl[i] = movementsOf(run, run.aircraft.controls[i].signal);
    });
    std::vector<ControlMovement> movements;
    for (const std::vector<ControlMovement>& each : byControl)
        movements.insert(movements.end(), each.begin(), each.end());
    std::stable_sort(movements.begin(), movements.end(), [](const ControlMovement& a, const ControlMovement& b) {
        return a.began < b.began;
    });
    return movements;
}

} // namespace flowhand
