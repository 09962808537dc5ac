#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/error.h"
#include "device/device.h"
#include "device/hidsystem.h"
#include "device/recording.h"
#include "device/report.h"

namespace flowhand {

// How recordings are read, whoever wants to know: which unit, when, and what each report said.

/// The unit that a recording was made of, as the system would have listed it; its path is `file`. Errors there:
/// `bad-recording` (no id, no descriptor).
[[nodiscard]] Result<DeviceInfo> recordedUnit(const Recording& recording, const std::string& file);

/// Whether this unit may be the one that is wished for: the same id, and the same serial and port where both say them.
[[nodiscard]] bool mayBe(const DeviceInfo& unit, const DeviceWish& wish);

/// How much later than the first of them each was started; 0 for all where one does not say when.
[[nodiscard]] std::vector<Duration> recordingLeads(const std::vector<const Recording*>& recordings);

/// What is done with reports that have no time.
enum class Untimed : std::uint8_t {
    Refused,
    Spaced ///< by kUntimedPeriod
};
/// The period of most full-speed devices (common practice).
inline constexpr Duration kUntimedPeriod = std::chrono::milliseconds(8);

/// `changes` as ReportDecoder::decode() appends them; borrowed for the call.
using TakeReport = std::function<void(Time time, const RecordedReport& report, ReportFit fit,
                                      const std::vector<InputChange>& changes)>;
/// Decodes its reports in turn. Error at `file`: `bad-recording` (a report without time, or behind an earlier one).
[[nodiscard]] Status decodeReports(const Recording& recording, const std::string& file, ReportDecoder& decoder,
                                   Untimed untimed, const TakeReport& take);

} // namespace flowhand
