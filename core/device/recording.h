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
///     port: usb-0000:00:14.0-2/input0
///     serial: A17
///     started: 1790000000.250
///     descriptor: 05 01 09 04 ...
///     0.001234: 01 7F 00
///     01 7F 01 // another comment
///
/// A report is bytes in hexadecimal, id byte first where there are ids; before it may stand its time in seconds, to
/// the microsecond, with a colon. `started` is when the times count from, in seconds since 1970, so that recordings
/// made side by side can be flown together. All but reports may be missing.
struct Recording {
    std::string device; ///< id and name
    std::string port;
    std::string serial;
    std::optional<Time> started;
    std::vector<std::uint8_t> descriptor;
    std::vector<RecordedReport> reports;
};

/// "05 01 09 04".
[[nodiscard]] std::string hexText(std::span<const std::uint8_t> bytes);
/// Bytes in hexadecimal: "05 01", "0501", "0x05, 0x01", in lines or not. Nothing where it is not that.
[[nodiscard]] std::optional<std::vector<std::uint8_t>> parseHex(std::string_view text);

/// `name` stands in messages as the file. Error `bad-recording` with the line.
[[nodiscard]] Result<Recording> parseRecording(std::string_view text, const std::string& name);
/// The same from a file of at most kLargestRecorded bytes; errors also those of readFile().
[[nodiscard]] Result<Recording> loadRecording(const std::string& file);

/// The lines that parseRecording() reads, each with its line end.
[[nodiscard]] std::string recordingHead(const Recording& recording);
[[nodiscard]] std::string recordingLine(const RecordedReport& report);

} // namespace flowhand
