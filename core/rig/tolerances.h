#pragma once

#include <string>
#include <string_view>

#include "base/error.h"
#include "base/tomlfile.h"

namespace flowhand {

/// How near to its ends and its centre a control must come in the check walk. The defaults are the figures of 14 CFR
/// Part 60 (edition of January 2014), tables A2A 2.a.4 and 2.a.5 (tiller and pedal steering) and 2.a.8 (throttle
/// alignment), taken as goals: they are for training devices, which this is not.
struct WalkTolerances {
    double steeringDegrees = 2.0; ///< of a control that turns, in degrees
    double leverDegrees = 5.0;    ///< of any other, in degrees
    double leverShare = 0.03;     ///< of the travel, for what is not in degrees

    bool operator==(const WalkTolerances&) const = default;
};

/// What may be asked for.
inline constexpr double kLeastToleranceDegrees = 0.01;
inline constexpr double kMostToleranceDegrees = 90.0;
inline constexpr double kLeastTolerancePercent = 0.1;
inline constexpr double kMostTolerancePercent = 50.0;

/// The table [tolerances] of a rig file; what is left out is as above. Problems: those of the values.
[[nodiscard]] WalkTolerances readTolerances(TomlReader& rig);

/// "2 deg", "5 deg", "3 %" as a person writes them. Errors: `bad-value`, also outside of the least and the
/// most.
[[nodiscard]] Result<WalkTolerances> parseTolerances(std::string_view steering, std::string_view lever,
                                                     std::string_view travel);

/// The rig file `source` with these in its [tolerances], or without that table when they are the defaults; all else,
/// comments too, stays as it is. Errors: `bad-toml`; `cannot-edit` with what to write by hand.
[[nodiscard]] Result<std::string> withTolerances(std::string source, const WalkTolerances& tolerances);

} // namespace flowhand
