#pragma once

#include <memory>
#include <string>
#include <vector>

#include "feed/transport.h"

namespace flowhand {

/// A serial line, 8 data bits, no parity, one stop bit, no handshake; only ever read.
[[nodiscard]] std::unique_ptr<FeedTransport> makeSerialLine(const FeedSpec& spec);

struct SerialLineInfo {
    std::string path;
    std::string description; ///< as the system has it; may be empty
};

/// Those that are there, by path.
[[nodiscard]] std::vector<SerialLineInfo> serialLines();

} // namespace flowhand
