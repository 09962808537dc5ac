#pragma once

#include <string>
#include <vector>

#include "bench/measure.h"

namespace flowhand {

/// What a builder shall do while a control is measured, after what has come so far.
struct Guidance {
    bool isComplete = false; ///< that is enough
    std::string text;        ///< what is still missing, in words; may be empty
};

/// What to do first, in one or two sentences.
[[nodiscard]] std::string calibrationAsk(const BenchControl& control);
[[nodiscard]] std::string healthAsk();

[[nodiscard]] Guidance guideCalibration(const BenchControl& control, const DeviceSeries& sofar);
/// Of controls of one device.
[[nodiscard]] Guidance guideHealth(const std::vector<const BenchControl*>& controls, const DeviceSeries& sofar);

/// The device of all of a control's inputs, and their names. Error `several-devices`.
struct MeasuredInputs {
    DeviceIndex device = 0;
    std::vector<std::string> names;
};
[[nodiscard]] Result<MeasuredInputs> measuredInputs(const BenchControl& control);

} // namespace flowhand
