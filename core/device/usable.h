#pragma once

#include <cstdint>
#include <span>

#include "base/error.h"
#include "device/device.h"
#include "device/report.h"

namespace flowhand {

/// The decoder for a device that a rig wishes for, from its report descriptor. Errors at the wish's place that only
/// other hardware can mend: `bad-descriptor`, `keyboard-card`, `no-controls`.
[[nodiscard]] Result<ReportDecoder> decoderFor(std::span<const std::uint8_t> descriptor, const DeviceWish& wish);

/// What a pilot should know of a device that sends such reports. Not of Exact.
[[nodiscard]] Phrase fitRemark(const DeviceWish& wish, ReportFit fit);

} // namespace flowhand
