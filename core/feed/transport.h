#pragma once

#include <cstdint>
#include <memory>
#include <span>

#include "base/error.h"
#include "base/time.h"
#include "feed/feedspec.h"

namespace flowhand {

struct FeedRead {
    std::size_t size = 0;   ///< bytes put into the buffer; 0: nothing came
    bool isWhole = false;   ///< the bytes are a datagram: no message goes on beyond them
    bool isForeign = false; ///< came from another computer than the one that is to be heard; not to be used
};

/// By what way a feed's bytes come. Feed thread; open() once also before there is one.
class FeedTransport {
public:
    /// Enough for every datagram: UDP carries at most 65,507 bytes over IPv4 and 65,527 over IPv6.
    static constexpr std::size_t kBufferBytes = 65536;

    virtual ~FeedTransport() = default;
    /// Nothing when it is open. Returns within a second or so.
    [[nodiscard]] virtual Status open() = 0;
    /// Waits at most `wait` for bytes. After an error it has to be opened again.
    [[nodiscard]] virtual Result<FeedRead> read(std::span<std::uint8_t> buffer, Duration wait) = 0;
};

[[nodiscard]] std::unique_ptr<FeedTransport> makeTransport(const FeedSpec& spec);

} // namespace flowhand
