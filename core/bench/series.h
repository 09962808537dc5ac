#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/error.h"
#include "bench/rawtrace.h"
#include "device/device.h"
#include "device/recording.h"

namespace flowhand {

/// What one input said in every report that has it, changed or not: the bench measures before any filter.
struct Series {
    InputInfo input;
    std::vector<RawChange> points; ///< by rising time
    Time end{};                    ///< of the measurement; the last value holds until then

    [[nodiscard]] Duration length() const { return points.empty() ? Duration{} : end - points.front().time; }
};

/// All that one device sent in one measurement.
struct DeviceSeries {
    std::vector<Time> reports;
    std::size_t repeats = 0; ///< reports that say the same as the one before of their id
    std::vector<Series> inputs;

    [[nodiscard]] const Series* find(const std::string& input) const;
    /// Between the most frequent neighbours; 0 with fewer than two reports.
    [[nodiscard]] Duration medianInterval() const;
    /// Whether the device reports at its own pace, so that a gap means something, or only when something changes.
    [[nodiscard]] bool isPaced() const;
};

/// Decodes a recording; every report needs its time. `inputs` names those that are wanted; empty: all. Errors, with
/// `name` as the file: `no-descriptor`, `empty-recording`, those of the descriptor's parser and of
/// decodeReports().
[[nodiscard]] Result<DeviceSeries> seriesOf(const Recording& recording, const std::string& name,
                                            const std::vector<std::string>& inputs);

/// The same again from what evidence keeps: its reports at equal distances. The input's range is not known.
[[nodiscard]] Series seriesOf(const RawTrace& trace);

/// What evidence keeps of it.
[[nodiscard]] RawTrace rawTraceOf(const Series& series, const std::string& device, std::size_t reports);

} // namespace flowhand
