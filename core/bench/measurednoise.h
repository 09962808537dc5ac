#pragma once

#include <optional>
#include <vector>

#include "bench/benchcontrol.h"
#include "bench/dwells.h"
#include "bench/evidence.h"
#include "bench/reach.h"

namespace flowhand {

/// Standard deviation at rest of what a median and a low-pass (AxisLimits) leave of a series, in counts: the filters of
/// the rig themselves are fed with it, and looked at wherever the series rests and they have settled. Nothing where it
/// never rests for long enough.
[[nodiscard]] std::optional<double> noiseBehind(const Series& series, const Resting& resting, Duration median,
                                                Duration smooth);

/// Of two standard deviations at rest: white noise of deviation 1, told every `interval`, behind a low-pass of time
/// constant `tau` > 0. Between two reports y goes on by a = exp(-interval / tau), so its variance is (1 - a) / (1 + a)
/// = tanh(interval / (2 tau)) of the input's. 0 .. 1.
[[nodiscard]] double lowPassShare(Duration interval, Duration tau);
/// The time constant that leaves `share` (0 < share < 1) of the noise: interval / (2 atanh(share^2)).
[[nodiscard]] Duration lowPassFor(Duration interval, double share);

/// Puts the measured noise of controls in place of what the rig file says, behind the file's filters, wherever a
/// calibration or a measurement of health holds for the control as it is wired now; the newer of the two counts.
void takeMeasuredNoise(std::vector<Reach>& reaches, const std::vector<BenchControl>& controls,
                       const std::vector<EvidenceRecord>& evidence);

} // namespace flowhand
