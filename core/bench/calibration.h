#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "bench/bencherror.h"
#include "bench/dwells.h"
#include "bench/finding.h"

namespace flowhand {

/// Per cent of the travel. The narrowest training-device tolerance of a lever is +-3 % (14 CFR Part 60, A2A 2.a.8): a
/// control that does not come back to a third of it uses most of it up.
inline constexpr double kRepeatCaution = 1.0;
inline constexpr double kRepeatBad = 3.0;

/// What is looked for in one axis. The ends of its travel always are.
struct AxisAsk {
    bool isInverted = false;        ///< its low end is at the higher count
    bool hasCentre = false;         ///< it springs back to a centre
    bool hasIdle = false;           ///< its two ends are those of two signals, and it rests at idle between them
    std::vector<std::string> gates; ///< positions from the lowest count up; empty: no gates
    std::vector<double> values;     ///< true values (angles) of places that are held, from its low end up, with both
                                    ///< ends and the centre, if it has one; empty: none
};

/// A place that was held several times.
struct Place {
    std::int64_t at = 0; ///< the middle of all visits
    std::size_t visits = 0;
    double spread = 0.0; ///< of all visits, in counts
    double repeat = 0.0; ///< how far one visit was from the middle of the others at worst; 0 with one visit
    std::size_t fromBelow = 0;
    std::size_t fromAbove = 0;
    std::optional<double> backlash; ///< between those from above and those from below, in counts; needs both
};

struct GatePlace {
    std::string position;
    Place place;
    std::int64_t band = 0;
};

struct ValuePlace {
    double value = 0.0;
    Place place;
};

struct CentrePlace {
    Place place;
    std::int64_t deadBand = 0;
};

/// What an axis's calibration came to. In counts unless said.
struct AxisCalibration {
    double noise = 0.0;
    Place low; ///< at the low end of the control, whichever count that is
    Place high;
    std::int64_t endBand = 0;
    double share = 0.0; ///< of the converter's range that the travel uses, 0 .. 1
    std::optional<CentrePlace> centre;
    std::optional<Place> idle;
    std::vector<GatePlace> gates; ///< by rising count
    std::int64_t hysteresis = 0;  ///< of the gates
    std::vector<ValuePlace> values;
    std::optional<double> linearity; ///< independent linearity of the values, % of the converter's range
    std::optional<double> backlash;  ///< the middle of all places that have one
    double repeatPercent = 0.0;      ///< the worst repeat error of all places, % of the travel
    std::vector<Finding> findings;
};

/// From a recording in which the control was held at both ends, at its gates or given values from both sides, and let
/// go from both sides, several times, in any order. Errors, each with what to do again: `did-not-move`,
/// `end-not-held`, `centre-not-found`, `places-not-found`.
[[nodiscard]] BenchResult<AxisCalibration> calibrateAxis(const Series& series, const AxisAsk& ask);

} // namespace flowhand
