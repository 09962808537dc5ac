#include "presenter/feedpresenter.h"

#include "command/feedtext.h"

namespace flowhand {

namespace {

constexpr int kLookMillis = 500; // faster than this nobody reads

} // namespace

FeedPresenter::FeedPresenter(const std::vector<AircraftFolder>& library, QObject* parent)
    : QObject(parent), m_library(library) {
    m_timer.setInterval(kLookMillis);
    connect(&m_timer, &QTimer::timeout, this, &FeedPresenter::look);
}

FeedPresenter::~FeedPresenter() = default;

Result<FeedSpec> FeedPresenter::read(const QString& text) {
    Result<FeedSpec> spec = FeedSpec::parse(text.trimmed().toStdString());
    m_problem = spec ? QString() : QString::fromStdString(spec.error().message);
    return spec;
}

void FeedPresenter::listen(const QString& text) {
    stop();
    const Result<FeedSpec> spec = read(text);
    if (const AircraftFolder* folder = talkativeAircraft(m_library); spec && folder != nullptr) {
        m_aircraft = folder->aircraft.get();
        const Aircraft& aircraft = *m_aircraft;
        Result<std::unique_ptr<Feed>> feed = Feed::open(*spec, {&aircraft.signals, aircraft.controls.size()},
                                                        {m_clock, wholeTick(m_clock.now())}, [] {});
        if (feed)
            m_feed = std::move(*feed);
        else
            m_problem = QString::fromStdString(feed.error().message);
    }
    if (m_feed) {
        m_timer.start();
        look();
    }
    Q_EMIT changed();
}

void FeedPresenter::stop() {
    m_timer.stop();
    m_feed.reset();
    m_heard.clear();
    Q_EMIT changed();
}

void FeedPresenter::look() {
    std::vector<FeedChange> changes;
    std::vector<FeedNotice> notices;
    m_feed->drain(changes, notices); // only the status is shown
    const FeedStatus status = m_feed->status();
    QStringList lines{QString::fromStdString(feedText(status))};
    for (const std::string& line : {feedValues(status, *m_aircraft), feedCounts(status.tally)})
        if (!line.empty())
            lines << QString::fromStdString(line);
    m_heard = lines.join(QLatin1Char('\n'));
    Q_EMIT changed();
}

void FeedPresenter::choose(const QString& text) {
    const QString wanted = text.trimmed();
    const Result<FeedSpec> spec = wanted.isEmpty() ? Result<FeedSpec>(FeedSpec{}) : read(wanted);
    if (wanted.isEmpty())
        m_problem.clear();
    if (spec) {
        stop();
        m_isEditing = false;
        m_chosen = wanted;
        m_title = wanted.isEmpty() ? QString() : QString::fromStdString(spec->title());
        Q_EMIT chosenChanged();
    }
    Q_EMIT changed();
}

void FeedPresenter::setEditing(bool isEditing) {
    if (m_isEditing == isEditing)
        return;
    m_isEditing = isEditing;
    if (!isEditing)
        stop();
    m_problem.clear();
    Q_EMIT changed();
}

} // namespace flowhand
