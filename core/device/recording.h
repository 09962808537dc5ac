#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "base/time.h"

namespace flowhand {

/// A report of a recording. Without a time where the line gave none.
struct RecordedReport {
    std::optional<Time> time;
    std::vector<std::uint8_t> bytes;
};

/// One device's descriptor and reports as plain text, a line each:
///
///     # a comment
///     device: 1209:0001 Quadrant
///     descriptor: 05 01 09 04 ...
///     0.001234: 01 7F 00
///     01 7F 01
///
/// A report is bytes in hexadecimal, id byte first where there are ids; before it may stand its time in seconds, to
/// the microsecond, with a colon. `device` and `descriptor` may be missing.
struct Recording {
    std::string device;
    std::vector<std::uint8_t> descriptor;
    std::vector<RecordedReport> reports;
};

/// "05 01 09 04".
[[nodiscard]] std::string hexText(std::span<const std::uint8_t> bytes);
/// Bytes in hexadecimal, spaces between them or not. Nothing where it is not that.
[[nodiscard]] std::optional<std::vector<std::uint8_t>> parseHex(std::string_view text);

/// `name` stands in messages as the file. Error `bad-recording` with the line.
[[nodiscard]] Result<Recording> parseRecording(std::string_view text, const std::string& name);

/// The lines that parseRecording() reads, each with its line end.
[[nodiscard]] std::string recordingHead(const std::string& device, std::span<const std::uint8_t> descriptor);
[[nodiscard]] std::string recordingLine(const RecordedReport& report);

} // namespace flowhand
