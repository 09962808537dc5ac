#include "progress/learningcurve.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

double abscissa(CurveKind kind, double number) {
    return kind == CurveKind::PowerLaw ? std::log(number) : number;
}

} // namespace

double LearningCurve::secondsAt(double number) const {
    return scale * std::exp(-rate * abscissa(kind, number));
}

LearningCurve fittedCurve(CurveKind kind, const std::vector<TimedTry>& tries) {
    const auto count = static_cast<double>(tries.size());
    double meanX = 0.0;
    double meanY = 0.0;
    for (const TimedTry& each : tries) {
        meanX += abscissa(kind, each.number) / count;
        meanY += std::log(each.seconds) / count;
    }
    double xx = 0.0;
    double xy = 0.0;
    for (const TimedTry& each : tries) {
        const double x = abscissa(kind, each.number) - meanX;
        xx += x * x;
        xy += x * (std::log(each.seconds) - meanY);
    }
    LearningCurve curve;
    curve.kind = kind;
    curve.rate = -xy / xx;
    curve.scale = std::exp(meanY + curve.rate * meanX);
    curve.tries = tries.size();
    double squares = 0.0;
    for (const TimedTry& each : tries) {
        const double off = std::log(each.seconds) - std::log(curve.secondsAt(each.number));
        squares += off * off;
    }
    curve.residual = std::sqrt(squares / count);
    return curve;
}

std::optional<LearningCurve> learningCurve(const std::vector<TimedTry>& tries) {
    std::vector<TimedTry> timed;
    std::copy_if(tries.begin(), tries.end(), std::back_inserter(timed), [](const TimedTry& each) {
        return each.seconds > 0.0;
    });
    const bool isSpread = std::any_of(timed.begin(), timed.end(), [&](const TimedTry& each) {
        return each.number != timed.front().number;
    });
    if (timed.size() < kFewestForCurve || !isSpread)
        return std::nullopt;
    const LearningCurve power = fittedCurve(CurveKind::PowerLaw, timed);
    const LearningCurve exponential = fittedCurve(CurveKind::Exponential, timed);
    return exponential.residual < power.residual ? exponential : power;
}

Phrase nameOf(CurveKind kind) {
    return kind == CurveKind::PowerLaw ? phrase("power law of practice") : phrase("exponential");
}

} // namespace flowhand
