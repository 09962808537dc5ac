#include "presenter/benchpresenter.h"

#include <algorithm>
#include <utility>

#include <QFileInfo>

#include "presenter/benchfacts.h"
#include "presenter/rows.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

/// `name` in place of the rig file's `.toml`.
QString beside(const QString& rigFile, const char* name) {
    const QFileInfo file(rigFile);
    return file.path() + QLatin1Char('/') + file.completeBaseName() + QLatin1String(name);
}

std::vector<double> gatesOf(const Signal& signal) {
    std::vector<double> gates;
    for (std::size_t i = 0; signal.kind == SignalKind::Position && i < signal.positions.size(); ++i)
        gates.push_back(double(i));
    return gates;
}

} // namespace

BenchPresenter::BenchPresenter(BenchMaker& maker, Sound& sound, QObject* parent)
    : QObject(parent), m_maker(maker), m_states(this), m_controls(BenchControlRow::staticMetaObject, this),
      m_findings(FindingRow::staticMetaObject, this), m_coverage(CoverageRow::staticMetaObject, this),
      m_notices(NoticeRow::staticMetaObject, this), m_trace(this), m_voice(sound) {}

BenchPresenter::~BenchPresenter() = default;

void BenchPresenter::enter() {
    if (m_bench)
        return;
    Result<std::unique_ptr<BenchHandle>> bench = m_maker.open([this] {
        if (!m_isRefreshQueued.exchange(true))
            QMetaObject::invokeMethod(this, &BenchPresenter::refresh, Qt::QueuedConnection);
    });
    m_failure = bench ? QString() : QString::fromStdString(describe(bench.error()));
    if (bench) {
        m_bench = std::move(*bench);
        m_states.setAircraft(&m_bench->aircraft());
        for (ControlState* state : m_states.all())
            state->setMovable(false);
        m_chosen = 0;
        m_snapshot = m_bench->snapshot();
        m_bench->watch(chosenSignal());
        beginTrace();
        showFindings();
        showCoverage();
        refresh();
    }
    Q_EMIT openChanged();
    Q_EMIT chosenChanged();
}

void BenchPresenter::leave() {
    if (!m_bench)
        return;
    // What was shown stays until the place is opened anew: the views that show it may still be there.
    m_voice.stop();
    m_bench.reset();
    m_written.clear();
    Q_EMIT openChanged();
}

void BenchPresenter::refresh() {
    m_isRefreshQueued = false;
    if (!m_bench)
        return;
    const BenchSnapshot before = std::exchange(m_snapshot, m_bench->snapshot());
    m_states.setValues(m_snapshot.values);
    m_voice.show(m_snapshot.task, m_snapshot.now);
    // A task that goes from control to control takes the choice along.
    const BenchTaskView& task = m_snapshot.task;
    if (task.task != BenchTask::None && !task.isOver && task.signal != chosenSignal() &&
        indexOf(task.signal) < m_snapshot.coverage->controls.size())
        choose(static_cast<int>(indexOf(task.signal)));
    m_trace.add(m_bench->takeTrace(), m_snapshot.now);
    showControls();
    if (m_snapshot.measured != before.measured)
        showFindings();
    if (m_snapshot.coverage != before.coverage)
        showCoverage();
    std::vector<NoticeRow> notices;
    for (const std::string& words : m_snapshot.notices)
        notices.push_back({static_cast<int>(notices.size()), QString::fromStdString(words)});
    m_notices.setRows(notices);
    Q_EMIT changed();
}

void BenchPresenter::choose(int row) {
    if (!m_bench || row == m_chosen || row < 0 || row >= static_cast<int>(m_snapshot.coverage->controls.size()))
        return;
    m_chosen = row;
    m_bench->watch(chosenSignal());
    beginTrace();
    showFindings();
    Q_EMIT chosenChanged();
    Q_EMIT changed();
}

void BenchPresenter::begin(int task) {
    if (m_bench && task > None && task <= Walk)
        m_bench->begin(static_cast<BenchTask>(task), chosenSignal());
}

void BenchPresenter::next() {
    if (m_bench)
        m_bench->next();
}

void BenchPresenter::cancel() {
    if (m_bench)
        m_bench->cancel();
}

void BenchPresenter::writeSheet() {
    const QString file = beside(rigFile(), ".html");
    if (m_bench)
        say(m_bench->writeSheet(file.toStdString()), file);
}

void BenchPresenter::writeCoverage() {
    const QString file = beside(rigFile(), ".coverage.csv");
    if (m_bench)
        say(m_bench->writeCoverage(file.toStdString()), file);
}

void BenchPresenter::say(const Status& status, const QString& file) {
    m_written = status ? tr("Written: %1").arg(file) : QString::fromStdString(describe(status.error()));
    Q_EMIT writtenChanged();
}

QString BenchPresenter::rigTitle() const {
    return m_bench ? QString::fromStdString(m_snapshot.rigTitle) : m_maker.rigTitle();
}

QString BenchPresenter::aircraftTitle() const {
    return m_bench ? QString::fromStdString(m_bench->aircraft().title) : QString();
}

QString BenchPresenter::deviceWords() const {
    QStringList words;
    for (const BenchDevice& device : m_snapshot.devices) {
        const QString name = QString::fromStdString(device.name);
        words << (device.message.empty()
                      ? device.isConnected ? tr("%1 is connected").arg(name) : tr("%1 is not connected").arg(name)
                      : QString::fromStdString(device.message));
    }
    return words.isEmpty()
               ? tr("No lever, pedal or switch unit is connected. Plug one in: it is found within a second.")
               : words.join(QStringLiteral(" · "));
}

SignalId BenchPresenter::chosenSignal() const {
    return m_snapshot.coverage && m_chosen < static_cast<int>(m_snapshot.coverage->controls.size())
               ? m_snapshot.coverage->controls[static_cast<std::size_t>(m_chosen)].signal
               : kNoSignal;
}

const CoveredControl* BenchPresenter::coveredControl(SignalId signal) const {
    if (!m_snapshot.coverage)
        return nullptr;
    const auto& all = m_snapshot.coverage->controls;
    const auto found = std::find_if(all.begin(), all.end(), [signal](const CoveredControl& control) {
        return control.signal == signal;
    });
    return found == all.end() ? nullptr : &*found;
}

const MeasuredControl* BenchPresenter::measuredControl() const {
    if (!m_snapshot.measured)
        return nullptr;
    for (const MeasuredControl& measured : *m_snapshot.measured)
        if (measured.signal == chosenSignal())
            return &measured;
    return nullptr;
}

QString BenchPresenter::chosenLabel() const {
    const ControlState* state = control();
    return state != nullptr ? state->label() : QString();
}

QString BenchPresenter::valueText() const {
    const ControlState* state = control();
    return state != nullptr && isWired() ? state->valueText() : QString();
}

bool BenchPresenter::isWired() const {
    const CoveredControl* covered = coveredControl(chosenSignal());
    return covered != nullptr && covered->proof != Proof::Unwired;
}

bool BenchPresenter::isCalibratable() const {
    const CoveredControl* covered = coveredControl(chosenSignal());
    return covered != nullptr && covered->proof != Proof::Unwired && covered->isCalibratable;
}

int BenchPresenter::advice() const {
    const CoveredControl* covered = coveredControl(chosenSignal());
    if (covered == nullptr)
        return None;
    if (covered->proof == Proof::Unwired)
        return Wire;
    if (covered->isCalibratable && covered->proof == Proof::Wired)
        return Calibrate;
    const MeasuredControl* measured = measuredControl();
    return measured == nullptr || measured->isStale ? Measure : Walk;
}

QString BenchPresenter::measuredWords() const {
    const MeasuredControl* measured = measuredControl();
    if (measured == nullptr)
        return isWired() ? tr("It has not been measured yet.") : tr("Once it is wired, its signal can be measured.");
    const QString day = QString::fromStdString(measured->date.substr(0, 10));
    return measured->isStale ? tr("Measured on %1; wired or calibrated anew since.").arg(day)
                             : tr("Measured on %1.").arg(day);
}

QString BenchPresenter::taskTitle() const {
    const QString label = [this] {
        const ControlState* state = m_states.find(m_snapshot.task.signal);
        return state != nullptr ? state->label() : QString();
    }();
    switch (m_snapshot.task.task) {
    case BenchTask::Wire:
        return tr("Wiring: %1").arg(label);
    case BenchTask::Calibrate:
        return tr("Calibration: %1").arg(label);
    case BenchTask::Measure:
        return tr("Measurement: %1").arg(label);
    case BenchTask::Walk:
        return tr("Check walk: %1").arg(label);
    case BenchTask::None:
        break;
    }
    return {};
}

QString BenchPresenter::stageWords() const {
    const BenchTaskView& task = m_snapshot.task;
    if (task.isOver || task.stageCount < 2)
        return {};
    return tr("%1 of %2").arg(task.stage + 1).arg(task.stageCount);
}

QString BenchPresenter::outcome() const {
    QStringList sentences;
    for (const std::string& sentence : m_snapshot.task.outcome)
        sentences << QString::fromStdString(sentence);
    return sentences.join(QLatin1Char('\n'));
}

QStringList BenchPresenter::flowTitles() const {
    QStringList titles;
    if (m_bench)
        for (const Flow* flow : m_bench->flows())
            titles << QString::fromStdString(flow->title);
    return titles;
}

void BenchPresenter::setFlowFilter(int row) {
    if (row == m_flowFilter)
        return;
    m_flowFilter = row;
    showCoverage();
    Q_EMIT flowFilterChanged();
    Q_EMIT changed();
}

QString BenchPresenter::coverageWords() const {
    const int steps = m_coverage.count();
    int confirmable = 0;
    int seen = 0;
    for (int i = 0; i < steps; ++i) {
        const auto row = m_coverage.row<CoverageRow>(i);
        confirmable += row.why.isEmpty() ? 1 : 0;
        seen += row.verdict == Verdict::Done ? 1 : 0;
    }
    return tr("%1 of %2 steps can be confirmed by this rig; the controls of %3 were seen working.")
        .arg(confirmable)
        .arg(steps)
        .arg(seen);
}

QString BenchPresenter::orphanWords() const {
    if (!m_bench || m_snapshot.coverage->orphans.empty())
        return {};
    QStringList labels;
    for (const SignalId signal : m_snapshot.coverage->orphans)
        labels << QString::fromStdString(m_bench->aircraft().signals[signal].label);
    return tr("Wired, but no step needs: %1").arg(labels.join(QStringLiteral(", ")));
}

void BenchPresenter::showControls() {
    m_controls.setRows(benchControlRows(m_bench->aircraft(), m_snapshot));
}

void BenchPresenter::showFindings() {
    const MeasuredControl* measured = measuredControl();
    m_findings.setRows(measured != nullptr ? findingRows(measured->findings) : std::vector<FindingRow>());
}

void BenchPresenter::showCoverage() {
    if (m_bench)
        m_coverage.setRows(coverageRows(m_bench->aircraft(), m_bench->flows(), *m_snapshot.coverage, m_flowFilter));
}

void BenchPresenter::beginTrace() {
    const SignalId chosen = chosenSignal();
    if (chosen == kNoSignal)
        return;
    const Signal& signal = m_bench->aircraft().signals[chosen];
    const bool isNumber = signal.kind == SignalKind::Number;
    const double highest = signal.kind == SignalKind::Position ? double(signal.positions.size()) - 1.0 : 1.0;
    m_trace.begin(isNumber ? signal.lowest : 0.0, isNumber ? signal.highest : highest,
                  bandsOf(chosen, m_bench->flows()), gatesOf(signal));
}

} // namespace flowhand
