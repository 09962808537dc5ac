#include "presenter/reviewtimeline.h"

#include <algorithm>

#include "presenter/controlstate.h"
#include "presenter/signaltext.h"
#include "report/timelinesvg.h"

namespace flowhand {

namespace {

/// As many as a window of middling height has room for.
constexpr std::size_t kFirstSignals = 5;
/// Of the view: what one press of an arrow key moves by.
constexpr double kNudge = 0.005;

QString clock(Time time) {
    return QString::fromStdString(clockText(time));
}

QString secondsText(Duration duration) {
    return QObject::tr("%1 s").arg(seconds(duration), 0, 'f', 2);
}

} // namespace

ReviewTimeline::ReviewTimeline(QObject* parent)
    : QObject(parent), m_bars(SignalLane), m_lanes(LaneRow::staticMetaObject, this),
      m_choices(SignalChoiceRow::staticMetaObject, this) {}

void ReviewTimeline::show(const Timeline& timeline, const std::vector<Note>& notes) {
    m_timeline = &timeline;
    m_bars[Steps] = stepBars(timeline);
    m_bars[Guards] = guardBars(timeline);
    m_bars[Calls] = callBars(timeline);
    m_bars[Holds] = holdBars(timeline);
    m_bars[Notes] = noteBars(timeline, notes);
    m_limits = laneLimits(timeline);
    m_shown = signalsToPlot(timeline, kFirstSignals);
    m_window.begin(timeline.length());
    m_player = {};
    m_loop.reset();
    m_a.reset();
    m_b.reset();
    m_now = {};
    m_chosenStep = -1;
    showLanes();
    showChoices();
    Q_EMIT runChanged();
    Q_EMIT barsChanged();
    Q_EMIT viewChanged();
    Q_EMIT nowChanged();
    Q_EMIT marksChanged();
    Q_EMIT playChanged();
    Q_EMIT chosenStepChanged();
}

void ReviewTimeline::setNotes(const std::vector<Note>& notes) {
    m_bars[Notes] = noteBars(*m_timeline, notes);
    showLanes();
    Q_EMIT barsChanged();
}

void ReviewTimeline::tellAnew() {
    m_bars[Holds] = holdBars(*m_timeline);
    showLanes();
    Q_EMIT barsChanged();
}

void ReviewTimeline::setChosenStep(int step) {
    if (step == m_chosenStep)
        return;
    m_chosenStep = step;
    // What the step judged is looked at beside it.
    if (step >= 0)
        for (std::size_t signal = 0; signal < m_limits.size(); ++signal) {
            const SignalId id{static_cast<std::uint32_t>(signal)};
            const bool isJudged =
                std::any_of(m_limits[signal].begin(), m_limits[signal].end(), [step](const LaneLimit& limit) {
                    return limit.step == step;
                });
            if (isJudged && std::find(m_shown.begin(), m_shown.end(), id) == m_shown.end())
                toggleSignal(static_cast<int>(id));
        }
    Q_EMIT chosenStepChanged();
}

void ReviewTimeline::setNow(Time now) {
    now = std::clamp<Time>(now, Time{}, m_timeline->length());
    if (now == m_now)
        return;
    m_now = now;
    showLanes();
    Q_EMIT nowChanged();
}

void ReviewTimeline::jump(const std::optional<Time>& time) {
    if (!time)
        return;
    setNow(*time);
    m_window.reveal(m_now);
    Q_EMIT viewChanged();
}

void ReviewTimeline::hold(double time) {
    jump(fromSeconds(time));
}

void ReviewTimeline::scrub(double share) {
    setNow(m_window.at(share));
}

void ReviewTimeline::zoom(double factor, double share) {
    m_window.zoom(factor, share);
    Q_EMIT viewChanged();
}

void ReviewTimeline::zoomHeld(double factor) {
    const double share = m_window.shareOf(m_now);
    zoom(factor, share < 0.0 || share > 1.0 ? 0.5 : share);
}

void ReviewTimeline::pan(double share) {
    m_window.pan(share);
    Q_EMIT viewChanged();
}

void ReviewTimeline::fit() {
    m_window.fit();
    Q_EMIT viewChanged();
}

void ReviewTimeline::centre(double time) {
    const Duration half = (m_window.to() - m_window.from()) / 2;
    m_window.show(fromSeconds(time) - half, fromSeconds(time) + half);
    Q_EMIT viewChanged();
}

void ReviewTimeline::nudge(int steps) {
    jump(m_window.at(m_window.shareOf(m_now) + kNudge * steps));
}

void ReviewTimeline::setA() {
    m_a = m_now;
    showLanes();
    Q_EMIT marksChanged();
}

void ReviewTimeline::setB() {
    m_b = m_now;
    showLanes();
    Q_EMIT marksChanged();
}

void ReviewTimeline::clearMarks() {
    m_a.reset();
    m_b.reset();
    showLanes();
    Q_EMIT marksChanged();
}

void ReviewTimeline::togglePlay() {
    if (!m_player.isPlaying() && m_now >= m_timeline->length())
        setNow({});
    m_player.setPlaying(!m_player.isPlaying());
    Q_EMIT playChanged();
}

void ReviewTimeline::toggleLoop() {
    if (m_loop)
        m_loop.reset();
    else if (m_a && m_b && *m_a != *m_b)
        m_loop = LoopStretch{std::min(*m_a, *m_b), std::max(*m_a, *m_b)};
    else
        m_loop = LoopStretch{m_window.from(), m_window.to()};
    Q_EMIT playChanged();
}

void ReviewTimeline::slower() {
    m_player.slower();
    Q_EMIT playChanged();
}

void ReviewTimeline::faster() {
    m_player.faster();
    Q_EMIT playChanged();
}

void ReviewTimeline::advance(double passed) {
    if (!m_player.isPlaying())
        return;
    const Time before = m_now;
    setNow(m_player.advance(m_now, fromSeconds(passed), m_timeline->length(), m_loop));
    const Time from = m_window.from();
    m_window.follow(m_now);
    if (m_window.from() != from)
        Q_EMIT viewChanged();
    if (!m_player.isPlaying())
        Q_EMIT playChanged();
    Q_EMIT played(seconds(before), seconds(m_now));
}

void ReviewTimeline::toggleSignal(int signal) {
    const SignalId id{static_cast<std::uint32_t>(signal)};
    if (std::erase(m_shown, id) == 0)
        m_shown.push_back(id);
    showLanes();
    showChoices();
}

QString ReviewTimeline::nowText() const {
    return clock(m_now);
}

QString ReviewTimeline::marksText() const {
    QStringList parts;
    if (m_a && m_b)
        parts << tr("Δ %1").arg(secondsText(*m_b - *m_a));
    if (m_a)
        parts << tr("A %1").arg(clock(*m_a));
    if (m_b)
        parts << tr("B %1").arg(clock(*m_b));
    return parts.join(QStringLiteral(" · ")).replace(QLatin1Char('-'), QChar(0x2212));
}

QString ReviewTimeline::paceText() const {
    return tr("%1 ×").arg(m_player.pace());
}

QString ReviewTimeline::heldBars(Lane lane) const {
    QStringList held;
    for (const LaneBar& bar : m_bars[lane].bars)
        if (bar.from <= m_now && (m_now < bar.to || m_now == bar.from)) // a note is a moment
            held << bar.text;
    return held.join(QStringLiteral(", "));
}

LaneRow ReviewTimeline::barRow(Lane lane, const QString& label) const {
    LaneRow row;
    row.rowId = -1 - lane;
    row.kind = lane;
    row.label = label;
    row.value = heldBars(lane);
    row.lines = m_bars[lane].lines;
    return row;
}

LaneRow ReviewTimeline::signalRow(SignalId id) const {
    const Signal& signal = m_timeline->run().aircraft.signals[id];
    const SignalTrack& track = m_timeline->signal(id);
    LaneRow row;
    row.rowId = static_cast<int>(id);
    row.kind = SignalLane;
    row.label = labelOf(signal);
    const Value held = track.at(m_now);
    row.value = held.isKnown() ? shownValue(signal, held) : tr("not known");
    QStringList marked;
    if (m_a)
        marked << tr("A %1").arg(shownValue(signal, track.at(*m_a)));
    if (m_b)
        marked << tr("B %1").arg(shownValue(signal, track.at(*m_b)));
    if (m_a && m_b && signal.kind == SignalKind::Number && track.at(*m_a).isKnown() && track.at(*m_b).isKnown())
        marked << tr("Δ %1").arg(shownValue(signal, Value::number(track.at(*m_b).number() - track.at(*m_a).number())));
    row.marked = marked.join(QStringLiteral(" · "));
    return row;
}

void ReviewTimeline::showLanes() {
    std::vector<LaneRow> rows = {barRow(Steps, tr("Steps"))};
    const auto add = [&](Lane lane, const QString& label) {
        if (!m_bars[lane].bars.empty())
            rows.push_back(barRow(lane, label));
    };
    add(Guards, tr("Guards broken"));
    add(Calls, tr("Words"));
    add(Holds, tr("Held, or input lost"));
    add(Notes, tr("Notes"));
    for (const SignalId signal : m_shown)
        rows.push_back(signalRow(signal));
    m_lanes.setRows(rows);
}

void ReviewTimeline::showChoices() {
    std::vector<SignalChoiceRow> rows;
    std::vector<SignalId> offered = m_timeline->movingSignals();
    for (const SignalId signal : m_shown)
        if (std::find(offered.begin(), offered.end(), signal) == offered.end())
            offered.push_back(signal);
    for (const SignalId signal : offered)
        rows.push_back({static_cast<int>(signal), labelOf(m_timeline->run().aircraft.signals[signal]),
                        std::find(m_shown.begin(), m_shown.end(), signal) != m_shown.end()});
    m_choices.setRows(rows);
}

} // namespace flowhand
