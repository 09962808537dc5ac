#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/phrase.h"
#include "base/signal.h"
#include "bench/reach.h"
#include "procedure/flow.h"

namespace flowhand {

/// Why a rig cannot confirm a step by one of its controls.
struct Obstacle {
    std::string code; ///< `not-wired`, `out-of-reach`, `too-narrow`, `not-a-position`, `unknown-reach`
    SignalId signal = kNoSignal;
    Phrase text; ///< in words, with the control's label
};

/// A band narrower than so many standard deviations of the control's noise cannot be told from its neighbours: three
/// on each side, beyond which a normal distribution has 0.3 % of its values (common practice).
inline constexpr double kLeastSigmas = 6.0;

/// What stands in the way of `condition` being made true by the controls in `needed` with these reaches, and of the
/// step's `band`. Each control alone first; then, of two that are compared with each other, both together.
///
///   1  not wired                                                       not-wired
///   2  wired, but in no known way to a value                           unknown-reach
///   3  no position or state that the rig can say is one that it asks   not-a-position
///   4  a number outside the calibrated range, or a movement longer     out-of-reach
///   5  a stretch narrower than kLeastSigmas, or a shorter movement     too-narrow
[[nodiscard]] std::vector<Obstacle> obstaclesOf(const Condition& condition, const std::vector<SignalId>& needed,
                                                const std::vector<Reach>& reaches, const SignalTable& signals);
[[nodiscard]] std::vector<Obstacle> obstaclesOf(const Band& band, const std::vector<Reach>& reaches,
                                                const SignalTable& signals);

/// The narrowest stretch in which `condition` wants control `id`, or the shortest movement, in its unit; nothing where
/// any number of its reach will do. Of two levers that must agree each has its part: their noise adds by squares, so
/// that of two equal ones is the stretch by the square root of 2.
[[nodiscard]] std::optional<double> narrowestJudged(const Condition& condition, SignalId id,
                                                    const std::vector<Reach>& reaches, const SignalTable& signals);

} // namespace flowhand
