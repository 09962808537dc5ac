#include "feed/feed.h"

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <utility>

#include "base/newestqueue.h"
#include "base/quietthread.h"

namespace flowhand {

namespace {

struct SignalOfChange {
    std::uint32_t operator()(const FeedChange& change) const { return static_cast<std::uint32_t>(change.signal); }
};

} // namespace

struct Feed::State {
    State(std::unique_ptr<FeedTransport> way, FeedFormat format, std::string name, FeedSignals signals,
          RunClock runClock, std::function<void()> news, std::size_t queueLength)
        : transport(std::move(way)), title(std::move(name)), clock(runClock), onNews(std::move(news)),
          queue(queueLength), parser(makeParser(format, signals)), intake(signals) {}

    ~State() {
        {
            const std::lock_guard lock(mutex);
            isStopping = true;
        }
        stop.notify_one();
        thread.join();
    }

    void work() {
        std::vector<std::uint8_t> buffer(FeedTransport::kBufferBytes);
        while (!isStoppingNow()) {
            if (!isOpen && !tryToOpen()) {
                take({}, {});
                continue;
            }
            const Result<FeedRead> read = transport->read(buffer, kReadWait);
            if (!read)
                broken(read.error());
            take(read.value_or(FeedRead{}), buffer);
        }
    }

    [[nodiscard]] bool isStoppingNow() const {
        const std::lock_guard lock(mutex);
        return isStopping;
    }

    /// Once in kRetryPeriod; the waits between are short because time goes on for the intake.
    bool tryToOpen() {
        if (waits > 0) {
            --waits;
            std::unique_lock lock(mutex);
            stop.wait_for(lock, kReadWait, [this] {
                return isStopping;
            });
            return false;
        }
        const Status opened = transport->open();
        if (!opened) {
            broken(opened.error());
            return false;
        }
        isOpen = true;
        const std::lock_guard lock(mutex);
        problem.clear();
        return true;
    }

    void broken(const Error& error) {
        isOpen = false;
        waits = static_cast<int>(kRetryPeriod / kReadWait);
        const std::lock_guard lock(mutex);
        problem = error.message;
        parser->finish(tally, sink());
    }

    void take(const FeedRead& read, std::span<const std::uint8_t> buffer) {
        bool hasNews = false;
        {
            const std::lock_guard lock(mutex);
            now = std::max(now, clock.now());
            if (read.isForeign) {
                ++tally.foreign;
            } else if (read.size > 0) {
                tally.bytes += read.size;
                parser->take(buffer.first(read.size), tally, sink());
                if (read.isWhole)
                    parser->finish(tally, sink());
            }
            intake.pass(now, changes, notices);
            hasNews = !changes.empty() || !notices.empty();
            queue.push(changes);
            for (const FeedNotice& notice : notices)
                queue.push(notice);
            changes.clear();
            notices.clear();
        }
        if (hasNews && onNews)
            onNews();
    }

    [[nodiscard]] FeedSink sink() {
        return [this](const FeedMessage& message) {
            intake.take(now, message, tally, changes, notices);
        };
    }

    // Of the feed's thread alone.
    const std::unique_ptr<FeedTransport> transport;
    bool isOpen = false;
    int waits = 0; ///< before it is opened again

    const std::string title;
    const RunClock clock;
    const std::function<void()> onNews;
    NewestQueue<FeedChange, FeedNotice, SignalOfChange> queue;

    mutable std::mutex mutex; ///< guards what follows
    std::condition_variable stop;
    bool isStopping = false;
    std::string problem;
    Time now{};
    const std::unique_ptr<FeedParser> parser;
    FeedIntake intake;
    FeedTally tally;
    std::vector<FeedChange> changes;
    std::vector<FeedNotice> notices;

    std::thread thread; ///< started last
};

Result<std::unique_ptr<Feed>> Feed::open(const FeedSpec& spec, FeedSignals signals, RunClock clock,
                                         std::function<void()> onNews) {
    std::unique_ptr<FeedTransport> transport = makeTransport(spec);
    if (spec.way == FeedWay::Udp)
        if (const Status opened = transport->open(); !opened)
            return tl::unexpected(opened.error());
    auto feed =
        std::make_unique<Feed>(std::move(transport), spec.format, spec.title(), signals, clock, std::move(onNews));
    return feed;
}

Feed::Feed(std::unique_ptr<FeedTransport> transport, FeedFormat format, std::string title, FeedSignals signals,
           RunClock clock, std::function<void()> onNews, std::size_t queueLength)
    : m_state(std::make_unique<State>(std::move(transport), format, std::move(title), signals, clock, std::move(onNews),
                                      queueLength)) {
    m_state->thread = quietThread([state = m_state.get()] {
        state->work();
    });
}

Feed::~Feed() = default;

const std::string& Feed::title() const {
    return m_state->title;
}

void Feed::drain(std::vector<FeedChange>& changes, std::vector<FeedNotice>& notices) {
    m_state->queue.drain(changes, notices);
}

FeedStatus Feed::status() const {
    const std::lock_guard lock(m_state->mutex);
    const Time now = std::max(m_state->now, m_state->clock.now());
    const FeedIntake& intake = m_state->intake;
    FeedStatus status;
    status.tally = m_state->tally;
    status.tally.dropped = m_state->queue.drops();
    status.isHeard = intake.isHeard();
    status.rate = intake.rate(now);
    status.own = intake.clock().own();
    status.delay = intake.clock().delay();
    if (intake.lastMessage() != kForever)
        status.silent = now - intake.lastMessage();
    status.values = intake.values();
    status.problem = m_state->problem;
    return status;
}

} // namespace flowhand
