#include "device/wiggle.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

/// A hand that wiggles moves a control farther than this share of its travel, whatever its noise.
constexpr double kLeastNoise = 0.02;
/// Of its noise: a movement must be so much larger, and so many times that of any other device, to be meant.
constexpr double kSureStrength = 10.0;
constexpr double kSureLead = 3.0;
/// A wheel has no travel: so many counts stand for it.
constexpr double kWheelTravel = 20.0;

} // namespace

void WiggleWatch::connect(DeviceIndex device, std::vector<InputInfo> inputs) {
    if (device >= m_devices.size())
        m_devices.resize(device + std::size_t(1));
    m_devices[device].clear();
    for (InputInfo& info : inputs)
        m_devices[device].push_back({std::move(info)});
}

void WiggleWatch::lose(DeviceIndex device) {
    if (device < m_devices.size())
        m_devices[device].clear();
}

/// A released hat stands one travel away from all its directions; the steps between these are shares of it too.
double WiggleWatch::shareOf(const Reading& reading, const InputInfo& info) {
    if (info.kind == InputKind::Relative)
        return static_cast<double>(reading.raw) / kWheelTravel;
    if (reading.isNull)
        return -1.0;
    const double travel = std::max(1.0, static_cast<double>(info.highest) - static_cast<double>(info.lowest));
    return (static_cast<double>(reading.raw) - static_cast<double>(info.lowest)) / travel;
}

void WiggleWatch::take(const Reading& reading) {
    if (reading.device >= m_devices.size() || reading.input >= m_devices[reading.device].size())
        return;
    Input& input = m_devices[reading.device][reading.input];
    input.last = shareOf(reading, input.info);
    if (!input.isKnown) { // a wheel's total begins at 0, so that its first turn counts
        input.isKnown = true;
        input.rest = input.info.kind == InputKind::Relative ? 0.0 : input.last;
    }
    double& farthest = m_isWatching ? input.change : input.noise;
    farthest = std::max(farthest, std::fabs(input.last - input.rest));
}

void WiggleWatch::watch() {
    m_isWatching = true;
    for (Inputs& inputs : m_devices) {
        for (Input& input : inputs) {
            input.rest = input.last;
            input.change = 0.0;
        }
    }
}

double WiggleWatch::strength(const Input& input) {
    return input.change / std::max(input.noise, kLeastNoise);
}

const WiggleWatch::Input* WiggleWatch::strongest(const Inputs& inputs) {
    const auto found = std::max_element(inputs.begin(), inputs.end(), [](const Input& a, const Input& b) {
        return strength(a) < strength(b);
    });
    return found == inputs.end() ? nullptr : &*found;
}

std::optional<WiggleWatch::Moved> WiggleWatch::moved() const {
    const Input* best = nullptr;
    double second = 0.0;
    Moved moved;
    for (std::size_t i = 0; i < m_devices.size(); ++i) {
        const Input* input = strongest(m_devices[i]);
        if (input == nullptr)
            continue;
        if (best != nullptr && strength(*input) <= strength(*best)) {
            second = std::max(second, strength(*input));
            continue;
        }
        if (best != nullptr)
            second = std::max(second, strength(*best));
        best = input;
        moved = {static_cast<DeviceIndex>(i), input->info.name};
    }
    const bool isSure = best != nullptr && strength(*best) >= kSureStrength && strength(*best) >= kSureLead * second;
    return isSure ? std::optional(moved) : std::nullopt;
}

} // namespace flowhand
