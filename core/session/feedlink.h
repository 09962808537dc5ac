#pragma once

#include <deque>
#include <string>
#include <vector>

#include "base/sample.h"
#include "feed/feed.h"
#include "session/motionsources.h"

namespace flowhand {

/// A run's motion from outside and from the practice aircraft: which of them a signal is taken from, and what is to be
/// done when the feed falls silent or speaks again. Session thread; times are the run's.
class FeedLink {
public:
    /// Without a feed only the sources count. The feed must outlive it.
    FeedLink(Feed* feed, const Aircraft& aircraft, MotionSources sources)
        : m_feed(feed), m_aircraft(aircraft), m_sources(std::move(sources)) {}

    [[nodiscard]] bool hasFeed() const { return m_feed != nullptr; }
    [[nodiscard]] bool isHeard() const { return m_isHeard; }
    [[nodiscard]] bool usesPractice() const { return m_sources.usesPractice(); }
    [[nodiscard]] bool isPractised(SignalId signal) const { return m_sources.takesPractice(signal); }
    [[nodiscard]] std::string title() const { return hasFeed() ? m_feed->title() : std::string(); }
    [[nodiscard]] FeedStatus status() const { return m_feed->status(); }

    /// Fetches what has come; the feed counts its times from `origin` of the run's time.
    void drain(Time origin);
    /// When the first of what has come is due; kForever: nothing has.
    [[nodiscard]] Time next() const;
    /// The first news due at `time`, with the changes before it appended to `samples`; none: all due changes are.
    [[nodiscard]] std::optional<FeedNews> take(Time time, std::vector<Sample>& samples);
    /// Appends that nobody knows any more what the feed said last.
    void forget(const std::vector<Value>& values, std::vector<Sample>& samples) const;
    /// Removes from `samples`, from `first` on, what another source than the practice aircraft says.
    void keepPractised(std::vector<Sample>& samples, std::size_t first) const;
    /// The run's time begins anew: what waits is `earlier` by so much.
    void rebase(Duration earlier);
    [[nodiscard]] bool isFed(SignalId signal) const {
        return hasFeed() && !m_aircraft.isControl(signal) && !m_sources.takesPractice(signal);
    }

private:
    Feed* m_feed;
    const Aircraft& m_aircraft;
    MotionSources m_sources;
    bool m_isHeard = false;
    std::vector<FeedChange> m_fresh;
    std::vector<FeedNotice> m_freshNews;
    std::deque<FeedChange> m_changes;
    std::deque<FeedNotice> m_news;
};

} // namespace flowhand
