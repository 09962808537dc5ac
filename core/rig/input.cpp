#include "rig/input.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

constexpr double kEighth = 360.0 / kHatEighths;

double degreesPerStep(const InputInfo& info) {
    return info.highest > info.lowest
               ? (info.lastAngle - info.firstAngle) / static_cast<double>(info.highest - info.lowest)
               : 0.0;
}

/// The eighth nearest to where a hat points; four-way, eight-way and fine hats alike.
int eighthOf(std::int64_t raw, const InputInfo& info) {
    const double angle = info.firstAngle + static_cast<double>(raw - info.lowest) * degreesPerStep(info);
    const auto eighth = static_cast<int>(std::lround(angle / kEighth) % kHatEighths);
    return (eighth + kHatEighths) % kHatEighths;
}

std::int64_t rawOfEighth(std::int64_t eighth, const InputInfo& info) {
    const double step = degreesPerStep(info);
    if (!(step > 0.0))
        return info.lowest;
    const double steps = (static_cast<double>(eighth) * kEighth - info.firstAngle) / step;
    return std::clamp<std::int64_t>(info.lowest + std::llround(steps), info.lowest, info.highest);
}

/// A diagonal closes both of its neighbours.
bool isTowards(int eighth, int direction) {
    const int apart = (eighth - direction + kHatEighths) % kHatEighths;
    return eighth != kHatReleased && (apart <= 1 || apart == kHatEighths - 1);
}

} // namespace

std::optional<std::int64_t> meaningOf(const Reading& reading, const InputRef& ref, const InputInfo& info) {
    if (info.kind == InputKind::Hat) {
        const int eighth = reading.isNull ? kHatReleased : eighthOf(reading.raw, info);
        if (ref.use == InputUse::Hat)
            return eighth;
        return isTowards(eighth, ref.hatDirection.value_or(0)) != ref.isNormallyClosed ? 1 : 0;
    }
    if (ref.use == InputUse::Contact)
        return (!reading.isNull && reading.raw != info.lowest) != ref.isNormallyClosed ? 1 : 0;
    if (reading.isNull)
        return std::nullopt;
    return reading.raw;
}

Reading readingOf(std::int64_t meaning, const InputRef& ref, const InputInfo& info) {
    Reading reading;
    reading.device = ref.device;
    const bool isClosed = (meaning != 0) != ref.isNormallyClosed;
    if (info.kind == InputKind::Hat) {
        const std::int64_t eighth = ref.use == InputUse::Hat ? meaning
                                    : isClosed               ? ref.hatDirection.value_or(0)
                                                             : kHatReleased;
        reading.isNull = eighth == kHatReleased;
        reading.raw = reading.isNull ? info.highest + 1 : rawOfEighth(eighth, info);
    } else if (ref.use == InputUse::Contact) {
        reading.raw = isClosed ? info.highest : info.lowest;
    } else {
        reading.raw = ref.use == InputUse::Axis ? std::clamp(meaning, info.lowest, info.highest) : meaning;
    }
    return reading;
}

} // namespace flowhand
