#include "presenter/runpresenter.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "command/feedtext.h"
#include "presenter/stepfacts.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

/// A verdict stays in place this long, so that an eye that was on the lever finds it.
constexpr int kVerdictMillis = 1200;
/// Long enough to be read beside the flow, in ms; after that a notice gives its room back to the due step.
constexpr int kNoticeMillis = 12'000;
/// No more at a time, so that they leave the due step its room; the debrief has all.
constexpr int kNoticesShown = 3;
/// Nearer than this, in m, is on the line.
constexpr double kOnLine = 0.5;
/// ISO 80000-3.
constexpr double kMetresOfFoot = 0.3048;
/// A stop this near, in m, is worth a word: half a minute at taxi speed.
constexpr double kStopInSight = 150.0;

std::vector<NoticeRow> noticeRows(const std::vector<Phrase>& notices, std::size_t from) {
    std::vector<NoticeRow> rows;
    for (std::size_t at = from; at < notices.size(); ++at) {
        NoticeRow row;
        row.rowId = static_cast<int>(at);
        row.words = textOf(notices[at]);
        rows.push_back(row);
    }
    return rows;
}

} // namespace

RunPresenter::RunPresenter(const ControlModel& controls, QObject* parent)
    : QObject(parent), m_controls(controls), m_noticeTimer(this), m_targets(TargetRow::staticMetaObject, this),
      m_setUp(TargetRow::staticMetaObject, this), m_toMatch(TargetRow::staticMetaObject, this),
      m_coming(StepRow::staticMetaObject, this), m_over(StepRow::staticMetaObject, this),
      m_guards(GuardRow::staticMetaObject, this), m_motion(MotionRow::staticMetaObject, this),
      m_notices(NoticeRow::staticMetaObject, this), m_freshNotices(NoticeRow::staticMetaObject, this) {
    m_verdictTimer.setSingleShot(true);
    m_verdictTimer.setInterval(kVerdictMillis);
    connect(&m_verdictTimer, &QTimer::timeout, this, [this] {
        m_verdict = StepRow();
        Q_EMIT verdictChanged();
    });
    m_noticeTimer.setObjectName(QStringLiteral("notices"));
    m_noticeTimer.setSingleShot(true);
    m_noticeTimer.setInterval(kNoticeMillis);
    connect(&m_noticeTimer, &QTimer::timeout, this, [this] {
        m_noticesRead = m_noticesSeen;
        showNotices();
    });
}

void RunPresenter::begin(const Aircraft* aircraft, const Flow* flow, const SessionSetup& setup) {
    m_aircraft = aircraft;
    m_flow = flow;
    m_setup = setup;
    m_verdict = StepRow();
    m_verdictTimer.stop();
    Q_EMIT verdictChanged();
    // Rows of the run before, and with them pointers to its aircraft's controls, go first.
    for (RowModel* rows : {&m_targets, &m_setUp, &m_toMatch})
        rows->setRows(std::vector<TargetRow>());
    const int read = m_noticesRead; // a flight that goes on has shown them
    const int seen = m_noticesSeen;
    show({});
    m_noticesRead = read;
    m_noticesSeen = seen;
}

void RunPresenter::forgetNotices() {
    m_noticesRead = m_noticesSeen = 0;
    m_noticeTimer.stop();
}

void RunPresenter::show(const RunSnapshot& snapshot) {
    const std::vector<StepView> before = std::move(m_snapshot.session.steps);
    m_snapshot = snapshot;
    if (m_flow == nullptr)
        return;
    showSteps();
    showGuards();
    showTargets();
    m_setUp.setRows(setUpRows(snapshot.session.setUp, snapshot, m_controls));
    m_toMatch.setRows(setUpRows(snapshot.session.toMatch, snapshot, m_controls));
    m_motion.setRows(motionRows(*m_aircraft, snapshot));
    showNotices();
    noteVerdicts(before);
    Q_EMIT changed();
}

/// Prompted, a control stands there as it is; from memory it would give the step away.
void RunPresenter::showTargets() {
    const Step* due = dueStep();
    std::vector<TargetRow> rows;
    if (due != nullptr && isDueNamed())
        rows = targetRows(*due, m_snapshot, m_controls);
    if (m_help != Help::Guided && m_due.own)
        for (TargetRow& row : rows)
            row.wanted = false;
    m_targets.setRows(rows);
}

void RunPresenter::showSteps() {
    const SessionView& session = m_snapshot.session;
    std::vector<StepRow> coming;
    std::vector<StepRow> over;
    m_due = session.due.empty() ? StepRow() : stepRow(*m_flow, m_snapshot, m_setup, session.due.front());
    for (std::size_t step = 0; step < session.steps.size(); ++step) {
        const auto index = static_cast<int>(step);
        if (isClosed(session.steps[step].state))
            over.push_back(stepRow(*m_flow, m_snapshot, m_setup, index));
        else if (session.due.empty() || index != session.due.front())
            coming.push_back(stepRow(*m_flow, m_snapshot, m_setup, index));
    }
    // The newest on top: by the time it was done, then by the flow's order.
    std::stable_sort(over.begin(), over.end(), [&session](const StepRow& a, const StepRow& b) {
        const StepView& left = session.steps[static_cast<std::size_t>(a.rowId)];
        const StepView& right = session.steps[static_cast<std::size_t>(b.rowId)];
        const Time leftTime = left.done != kForever ? left.done : left.due;
        const Time rightTime = right.done != kForever ? right.done : right.due;
        return leftTime != rightTime ? leftTime > rightTime : a.rowId > b.rowId;
    });
    m_hidden = m_help == Help::Guided ? 0 : static_cast<int>(coming.size());
    m_coming.setRows(m_help == Help::Guided ? coming : std::vector<StepRow>());
    m_over.setRows(over);
}

void RunPresenter::showGuards() {
    const SessionView& session = m_snapshot.session;
    std::vector<GuardRow> rows;
    for (int guard : session.brokenGuards) {
        GuardRow row;
        row.rowId = guard;
        row.title = QString::fromStdString(m_flow->guards[static_cast<std::size_t>(guard)].title);
        row.open = std::count(session.openGuards.begin(), session.openGuards.end(), guard) > 0;
        rows.push_back(row);
    }
    m_guards.setRows(rows);
}

void RunPresenter::showNotices() {
    std::vector<Phrase> notices = m_snapshot.notices;
    for (Phrase& remark : lossRemarks(m_snapshot.losses))
        notices.push_back(std::move(remark));
    const auto count = static_cast<int>(notices.size());
    m_noticesRead = std::min(m_noticesRead, count);
    if (count > std::exchange(m_noticesSeen, count))
        m_noticeTimer.start();
    const bool isHeld = m_snapshot.session.phase == SessionPhase::Held;
    const int last = std::max(0, count - kNoticesShown);
    const int from = isHeld ? last : std::max(m_noticesRead, last);
    m_notices.setRows(noticeRows(notices, 0));
    m_freshNotices.setRows(noticeRows(notices, static_cast<std::size_t>(from)));
}

void RunPresenter::noteVerdicts(const std::vector<StepView>& before) {
    const std::vector<StepView>& now = m_snapshot.session.steps;
    if (before.size() != now.size())
        return;
    for (std::size_t step = 0; step < now.size(); ++step) {
        if (!isClosed(now[step].state) || before[step].state == now[step].state)
            continue;
        m_verdict = stepRow(*m_flow, m_snapshot, m_setup, static_cast<int>(step));
        m_verdictTimer.start();
        Q_EMIT verdictChanged();
    }
}

const Step* RunPresenter::dueStep() const {
    if (m_flow == nullptr || m_snapshot.session.due.empty())
        return nullptr;
    return &m_flow->steps[static_cast<std::size_t>(m_snapshot.session.due.front())];
}

const StepView* RunPresenter::dueView() const {
    if (dueStep() == nullptr)
        return nullptr;
    return &m_snapshot.session.steps[static_cast<std::size_t>(m_snapshot.session.due.front())];
}

QString RunPresenter::comingText() const {
    return m_hidden > 0 ? tr("%1 more to come, not shown with this help").arg(m_hidden) : tr("Nothing more to come");
}

void RunPresenter::setLength(const QString& unit) {
    m_isInFeet = unit == QStringLiteral("ft");
    Q_EMIT changed();
}

QString RunPresenter::dueTitle() const {
    if (hasDue() && !isDueNamed())
        return tr("Which step is it?");
    return QString(m_due.title).replace(QLatin1Char('-'), QStringLiteral("-\u2060"));
}

bool RunPresenter::isDueSeen() const {
    return dueView() != nullptr && dueView()->state == StepState::Seen;
}

QString RunPresenter::dueReply() const {
    const Step* step = dueStep();
    return step != nullptr && m_help == Help::Guided ? QString::fromStdString(step->reply) : QString();
}

double RunPresenter::dueShare() const {
    if (dueView() == nullptr || dueView()->due == kForever || dueStep()->late.count() <= 0)
        return 0.0;
    const Duration open = m_snapshot.session.time - dueView()->due;
    return std::clamp(seconds(open) / seconds(dueStep()->late), 0.0, 1.0);
}

double RunPresenter::timelyShare() const {
    if (dueStep() == nullptr || dueStep()->late.count() <= 0)
        return 1.0;
    return std::clamp(seconds(dueStep()->within) / seconds(dueStep()->late), 0.0, 1.0);
}

QString RunPresenter::nextTitle() const {
    return m_coming.count() > 0 ? m_coming.row<StepRow>(0).title : QString();
}

QString RunPresenter::sayingBy() const {
    if (m_snapshot.session.saying.empty())
        return {};
    QString name = personName(m_snapshot.session.sayingBy, m_setup);
    name[0] = name[0].toUpper();
    return name;
}

QString RunPresenter::feedText() const {
    if (m_snapshot.feed.empty())
        return {};
    const Phrase counted = feedCounts(m_snapshot.feedStatus.tally);
    const Phrase heard = flowhand::feedText(m_snapshot.feedStatus);
    return textOf(counted.isEmpty() ? phrase("{1}: {2}").with(m_snapshot.feed, heard)
                                    : phrase("{1}: {2}; not taken: {3}").with(m_snapshot.feed, heard, counted));
}

int RunPresenter::stepsAll() const {
    return m_flow != nullptr ? static_cast<int>(m_flow->steps.size()) : 0;
}

QString RunPresenter::scoreText() const {
    if (!m_snapshot.score.isScored)
        return {};
    const auto points = [](std::int64_t milliPoints) {
        return QString::number(milliPoints / 1000);
    };
    const QString least = points(m_snapshot.session.scoreFloor);
    const QString most = points(m_snapshot.session.scoreCeiling);
    return least == most ? least : tr("%1 to %2").arg(least, most);
}

Value RunPresenter::motionValue(const char* name) const {
    if (m_aircraft == nullptr)
        return Value::unknown();
    const std::optional<SignalId> id = m_aircraft->signals.find(name);
    return id && indexOf(*id) < m_snapshot.values.size() ? m_snapshot.values[indexOf(*id)] : Value::unknown();
}

bool RunPresenter::hasLine() const {
    return motionValue("on_ground").isOn() && motionValue("centreline_offset").isKnown();
}

double RunPresenter::lineAngle() const {
    const Value angle = motionValue("centreline_angle");
    return angle.isKnown() ? angle.number() : 0.0;
}

QString RunPresenter::lineText() const {
    if (!hasLine())
        return {};
    const double offset = offLine();
    if (std::abs(offset) < kOnLine)
        return tr("on the line");
    const QString distance = metresText(std::abs(offset), 1);
    return offset > 0 ? tr("%1 right of the line").arg(distance) : tr("%1 left of the line").arg(distance);
}

QString RunPresenter::aheadText() const {
    if (motionValue("turn_ahead").isOn())
        return tr("turn ahead");
    const Value distance = motionValue("stop_distance");
    if (!distance.isKnown() || distance.number() > kStopInSight || distance.number() < 0)
        return {};
    if (distance.number() < 1)
        return tr("stop here");
    return tr("stop in %1").arg(metresText(distance.number(), 0));
}

QString RunPresenter::metresText(double metres, int digits) const {
    if (m_isInFeet)
        return tr("%1 ft").arg(std::lround(metres / kMetresOfFoot));
    return tr("%1 m").arg(metres, 0, 'f', digits);
}

double RunPresenter::offLine() const {
    const Value offset = motionValue("centreline_offset");
    return offset.isKnown() ? offset.number() : 0.0;
}

} // namespace flowhand
