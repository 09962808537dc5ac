#include "base/figuretext.h"

#include <cstdio>

namespace flowhand {

std::string toTenths(double number) {
    char text[32];
    std::snprintf(text, sizeof text, "%.1f", number);
    return text;
}

std::string secondsToTenths(Duration duration) {
    return toTenths(seconds(duration)) + " s";
}

} // namespace flowhand
