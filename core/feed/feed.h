#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/error.h"
#include "base/time.h"
#include "feed/feedspec.h"
#include "feed/intake.h"
#include "feed/transport.h"

namespace flowhand {

/// How a feed does, at one moment.
struct FeedStatus {
    FeedTally tally;
    bool isHeard = false;
    double rate = 0.0;              ///< messages a second
    std::optional<Duration> own;    ///< its own clock, at its last message
    std::optional<Duration> delay;  ///< of the last message over the quickest one
    std::optional<Duration> silent; ///< since its last message with motion; none: there was none
    std::vector<Value> values;      ///< by SignalId; unknown: it does not say it
    std::string problem;            ///< why nothing can come; empty: nothing is in the way
};

/// One feed of motion, read on a thread of its own: opened, and again every second while that fails.
///
/// Owned by whoever owns the run; drain() belongs to the session thread, the rest to any thread. The destructor stops
/// and joins the thread, mostly within kReadWait; a call that is being made over TCP takes up to a second.
class Feed {
public:
    static constexpr Duration kReadWait = std::chrono::milliseconds(100); ///< longest the thread waits for bytes
    static constexpr Duration kRetryPeriod = std::chrono::seconds(1);
    static constexpr std::size_t kQueueLength = 4096; ///< changes; 2 s of 40 signals that all change each 20 ms

    /// Listens at once, so that an address or port that will not do is an error here; a serial line or a program to
    /// call that is not there is waited for. `onNews` is called on the feed's thread when there is something to drain.
    [[nodiscard]] static Result<std::unique_ptr<Feed>> open(const FeedSpec& spec, FeedSignals signals, RunClock clock,
                                                            std::function<void()> onNews);
    /// From any transport; `title` names it in messages.
    Feed(std::unique_ptr<FeedTransport> transport, FeedFormat format, std::string title, FeedSignals signals,
         RunClock clock, std::function<void()> onNews, std::size_t queueLength = kQueueLength);
    ~Feed();
    Feed(const Feed&) = delete;
    Feed& operator=(const Feed&) = delete;

    [[nodiscard]] const std::string& title() const;
    /// Appends what came since the last call, each list in the order of its times.
    void drain(std::vector<FeedChange>& changes, std::vector<FeedNotice>& notices);
    [[nodiscard]] FeedStatus status() const;

private:
    struct State;
    std::unique_ptr<State> m_state;
};

} // namespace flowhand
