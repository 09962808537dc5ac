#include <algorithm>
#include <cmath>

#include "aircraft/practicefile.h"
#include "base/names.h"

namespace flowhand {

namespace {

std::string rounded(double number, double grain) {
    return numberText(std::round(number / grain) * grain);
}

} // namespace

Loading MassFigures::loadingFor(double wanted) const {
    const double payload = std::max(0.0, wanted - empty - fuel);
    return {std::min(fuel, std::max(0.0, wanted - empty)), payload};
}

double MassFigures::centre(const Loading& loading) const {
    const double moment = empty * emptyArm + loading.payload * payloadArm + loading.fuel * fuelArm;
    return moment / (empty + loading.payload + loading.fuel);
}

Status MassFigures::check(double wanted) const {
    if (wanted < least || wanted > most)
        return failure("out-of-limits", "the mass is " + rounded(wanted, 1.0) + " kg; it must lie between " +
                                            rounded(least, 1.0) + " and " + rounded(most, 1.0) + " kg");
    if (fuel > fuelMost)
        return failure("out-of-limits",
                       "the fuel is " + rounded(fuel, 1.0) + " kg; the tanks hold " + rounded(fuelMost, 1.0) + " kg");
    const double at = centre(loadingFor(wanted));
    if (at > forwardLimit || at < aftLimit)
        return failure("out-of-limits", "with " + rounded(wanted, 1.0) + " kg the centre of gravity lies " +
                                            rounded(at, 0.001) + " m ahead of the main wheels; it must lie between " +
                                            rounded(aftLimit, 0.001) + " m and " + rounded(forwardLimit, 0.001) +
                                            " m: load less or elsewhere");
    return {};
}

} // namespace flowhand
