#pragma once

#include <vector>

#include "base/phrase.h"
#include "bench/measure.h"

namespace flowhand {

/// What a builder shall do while a control is measured, after what has come so far.
struct Guidance {
    bool isComplete = false; ///< that is enough
    Phrase text;             ///< what is still missing, in words; may be empty
};

/// What to do first, in one or two sentences.
[[nodiscard]] Phrase calibrationAsk(const BenchControl& control);
[[nodiscard]] Phrase healthAsk(const std::vector<const BenchControl*>& controls);

[[nodiscard]] Guidance guideCalibration(const BenchControl& control, const Measurement& sofar);
[[nodiscard]] Guidance guideHealth(const std::vector<const BenchControl*>& controls, const Measurement& sofar);

} // namespace flowhand
