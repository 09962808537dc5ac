#include "presenter/feedpresenter.h"

#include "command/feedtext.h"
#include "presenter/phrasetext.h"
#include "presenter/signaltext.h"

namespace flowhand {

namespace {

constexpr int kLookMillis = 500; // faster than this nobody reads
/// What flows read most; a feed that does not say one of these leaves steps without a verdict.
constexpr const char* kAsked[] = {"airspeed", "ground_speed", "height", "altitude", "heading", "on_ground"};

std::vector<MotionRow> feedReadings(const FeedStatus& status) {
    std::vector<MotionRow> rows;
    const auto add = [&](const QString& label, const QString& value, const QString& unit) {
        MotionRow row;
        row.rowId = static_cast<int>(rows.size());
        row.label = label;
        row.value = value;
        row.unit = unit;
        rows.push_back(row);
    };
    const QString none = QStringLiteral("–");
    add(QObject::tr("Rate"), QString::number(status.rate, 'f', status.rate < 10 ? 1 : 0), QObject::tr("messages/s"));
    add(QObject::tr("Its clock"), status.own ? QString::number(seconds(*status.own), 'f', 1) : none,
        status.own ? QStringLiteral("s") : QObject::tr("says none"));
    add(QObject::tr("Delay"), status.delay ? QString::number(1000.0 * seconds(*status.delay), 'f', 0) : none,
        status.delay ? QStringLiteral("ms") : QString());
    add(QObject::tr("Messages"), QString::number(status.tally.messages), QString());
    return rows;
}

} // namespace

FeedPresenter::FeedPresenter(LibraryPtr library, QObject* parent)
    : QObject(parent), m_library(std::move(library)), m_readings(MotionRow::staticMetaObject, this) {
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
    if (const AircraftFolder* folder = talkativeAircraft(m_library->aircraft); spec && folder != nullptr) {
        m_aircraft = std::shared_ptr<const Aircraft>(m_library, folder->aircraft.get());
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
    for (QString* text : {&m_heard, &m_values, &m_missing, &m_counts})
        text->clear();
    m_readings.setRows(std::vector<MotionRow>());
    Q_EMIT changed();
}

void FeedPresenter::look() {
    std::vector<FeedChange> changes;
    std::vector<FeedNotice> notices;
    m_feed->drain(changes, notices); // only the status is shown
    show(m_feed->status());
}

void FeedPresenter::show(const FeedStatus& status) {
    m_heard = textOf(feedText(status));
    m_values = QString::fromStdString(feedValues(status, *m_aircraft));
    m_counts = textOf(feedCounts(status.tally));
    QStringList missing;
    for (const char* name : kAsked)
        if (const std::optional<SignalId> id = m_aircraft->signals.find(name);
            id && status.isHeard && !status.values[indexOf(*id)].isKnown())
            missing << labelOf(m_aircraft->signals[*id]).toLower();
    m_missing = missing.join(QStringLiteral(", "));
    m_readings.setRows(status.isHeard ? feedReadings(status) : std::vector<MotionRow>());
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
