#include "session/feedlink.h"

#include <algorithm>

namespace flowhand {

void FeedLink::drain(Time origin) {
    if (!hasFeed())
        return;
    m_fresh.clear();
    m_freshNews.clear();
    m_feed->drain(m_fresh, m_freshNews);
    for (FeedChange& change : m_fresh) {
        change.time -= origin;
        m_changes.push_back(change);
    }
    for (FeedNotice& notice : m_freshNews) {
        notice.time -= origin;
        m_news.push_back(notice);
    }
}

Time FeedLink::next() const {
    Time next = m_changes.empty() ? kForever : m_changes.front().time;
    return m_news.empty() ? next : std::min(next, m_news.front().time);
}

/// Of one time, what was said comes before the news that it was: a feed counts as heard with all that it said.
std::optional<FeedNews> FeedLink::take(Time time, std::vector<Sample>& samples) {
    const bool hasNews = !m_news.empty() && m_news.front().time <= time;
    const Time until = hasNews ? std::min(time, m_news.front().time) : time;
    for (; !m_changes.empty() && m_changes.front().time <= until; m_changes.pop_front()) {
        const FeedChange& change = m_changes.front();
        if (!m_sources.takesFeed(change.signal))
            continue;
        if (change.value.isKnown())
            m_sources.noteFed(change.signal);
        if (isFed(change.signal))
            samples.push_back({time, change.signal, change.value, Actor::Machine, Origin::Feed, kNoControl});
    }
    if (!hasNews)
        return std::nullopt;
    const FeedNews news = m_news.front().news;
    m_news.pop_front();
    m_isHeard = news == FeedNews::Heard;
    return news;
}

void FeedLink::forget(const std::vector<Value>& values, std::vector<Sample>& samples) const {
    for (std::size_t i = m_aircraft.controls.size(); i < values.size(); ++i) {
        const SignalId id{static_cast<std::uint32_t>(i)};
        if (isFed(id) && values[i].isKnown())
            samples.push_back({Time{}, id, Value::unknown(), Actor::Machine, Origin::Feed, kNoControl});
    }
}

void FeedLink::keepPractised(std::vector<Sample>& samples, std::size_t first) const {
    const auto isOthers = [this](const Sample& sample) {
        return sample.origin == Origin::Practice && !m_sources.takesPractice(sample.signal);
    };
    samples.erase(std::remove_if(samples.begin() + static_cast<std::ptrdiff_t>(first), samples.end(), isOthers),
                  samples.end());
}

void FeedLink::rebase(Duration earlier) {
    for (FeedChange& change : m_changes)
        change.time -= earlier;
    for (FeedNotice& notice : m_news)
        notice.time -= earlier;
}

} // namespace flowhand
