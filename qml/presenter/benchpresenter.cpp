#include "presenter/benchpresenter.h"

#include <algorithm>
#include <array>
#include <utility>

#include <QFileInfo>

#include "presenter/benchfacts.h"
#include "presenter/phrasetext.h"
#include "presenter/rows.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

/// `name` in place of the rig file's `.toml`.
QString beside(const QString& rigFile, const char* name) {
    const QFileInfo file(rigFile);
    return file.path() + QLatin1Char('/') + file.completeBaseName() + QLatin1String(name);
}

/// What an aircraft is begun with, by the names that mean it in every aircraft file (the practice aircraft is moved by
/// the same); those of levers that there is one of for each engine end before its number.
constexpr std::array<QLatin1String, 11> kBasics = {
    QLatin1String("tiller"),          QLatin1String("rudder_pedals"), QLatin1String("toe_brake_left"),
    QLatin1String("toe_brake_right"), QLatin1String("parking_brake"), QLatin1String("thrust_lever_"),
    QLatin1String("power_lever_"),    QLatin1String("throttle"),      QLatin1String("reverse_lever_"),
    QLatin1String("flap_lever"),      QLatin1String("gear_lever")};

bool isCalled(const std::string& name, QLatin1String basic) {
    const QLatin1String whole(name.c_str(), static_cast<qsizetype>(name.size()));
    return basic.endsWith(QLatin1Char('_')) ? whole.startsWith(basic) : whole == basic;
}

} // namespace

BenchPresenter::BenchPresenter(BenchMaker& maker, Sound& sound, QObject* parent)
    : QObject(parent), m_maker(maker), m_states(this), m_controls(BenchControlRow::staticMetaObject, this),
      m_findings(FindingRow::staticMetaObject, this), m_coverage(CoverageRow::staticMetaObject, this),
      m_notices(NoticeRow::staticMetaObject, this), m_trace(this), m_voice(sound), m_wiring(this),
      m_delay(maker, sound, m_clock, this) {}

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
        m_wiring.begin(chosenSignal(), m_bench->aircraft());
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
    m_isGuided = false;
    m_isGuideWished = false;
    m_leftOut.clear();
    m_written.clear();
    m_sheet.clear();
    Q_EMIT openChanged();
}

void BenchPresenter::lookAgain() {
    const bool isAtWork = m_snapshot.task.task != BenchTask::None && !m_snapshot.task.isOver;
    m_isStale = m_bench && (isAtWork || m_isGuided || m_isGuideWished);
    if (!m_bench || m_isStale)
        return;
    const std::string chosen = m_bench->aircraft().signals[chosenSignal()].name;
    leave();
    enter();
    if (const auto there = m_bench ? m_bench->aircraft().signals.find(chosen) : std::nullopt)
        choose(static_cast<int>(indexOf(*there)));
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
    const bool hasEnded = task.isOver || task.task == BenchTask::None; // none: it was cancelled
    if (m_isGuided && hasEnded && before.task.task == BenchTask::Wire && !before.task.isOver)
        goOnGuiding();
    else if (m_isGuideWished && task.task == BenchTask::None)
        guide();
    m_trace.add(m_bench->takeTrace(), m_snapshot.now);
    showControls();
    if (m_snapshot.measured != before.measured || m_snapshot.filters != before.filters)
        showFindings();
    if (m_snapshot.travels != before.travels) {
        m_bench->watch(chosenSignal()); // from where it stands
        beginTrace();
    }
    if (m_snapshot.coverage != before.coverage)
        showCoverage();
    if (task.task == BenchTask::Walk && task.isOver && before.task.task == BenchTask::Walk && !before.task.isOver)
        writeSheet(); // what a walk ends in
    showNotices();
    Q_EMIT changed();
    if (m_isStale)
        lookAgain();
}

void BenchPresenter::tellAnew() {
    if (!m_bench)
        return;
    for (ControlState* state : m_states.all())
        Q_EMIT state->changed();
    showControls();
    showFindings();
    showCoverage();
    showNotices();
    m_bench->watch(chosenSignal()); // from where it stands
    beginTrace();
    m_wiring.tellAnew();
    Q_EMIT changed();
}

void BenchPresenter::choose(int row) {
    if (!m_bench || row == m_chosen || row < 0 || row >= static_cast<int>(m_snapshot.coverage->controls.size()))
        return;
    m_chosen = row;
    m_bench->watch(chosenSignal());
    beginTrace();
    m_wiring.begin(chosenSignal(), m_bench->aircraft());
    showFindings();
    Q_EMIT chosenChanged();
    Q_EMIT changed();
}

void BenchPresenter::begin(int task) {
    if (canBegin(task))
        m_bench->begin({static_cast<BenchTask>(task), chosenSignal()});
}

bool BenchPresenter::canBegin(int task) const {
    if (!m_bench)
        return false;
    switch (task) {
    case Wire:
    case Walk:
        return true;
    case Measure:
        return isWired();
    case Calibrate:
        return isCalibratable();
    case Check: {
        const CoveredControl* covered = coveredControl(chosenSignal());
        return isCalibratable() && covered->proof >= Proof::Calibrated;
    }
    case ApplyFilters:
        return !filterChange().isEmpty();
    case UndoFilters:
        return canUndoFilter();
    default:
        return false;
    }
}

void BenchPresenter::beginWiring() {
    if (m_bench)
        m_bench->begin({BenchTask::Wire, chosenSignal(), m_wiring.wish()});
}

std::vector<int> BenchPresenter::basics() const {
    std::vector<int> rows;
    if (!m_bench || !m_snapshot.coverage)
        return rows;
    const std::vector<CoveredControl>& all = m_snapshot.coverage->controls;
    for (const QLatin1String basic : kBasics)
        for (std::size_t row = 0; row < all.size(); ++row)
            if (isCalled(m_bench->aircraft().signals[all[row].signal].name, basic) &&
                all[row].proof == Proof::Unwired && m_leftOut.count(all[row].signal) == 0)
                rows.push_back(static_cast<int>(row));
    return rows;
}

void BenchPresenter::guide() {
    const std::vector<int> rows = basics();
    const bool isConnected =
        std::any_of(m_snapshot.devices.begin(), m_snapshot.devices.end(), [](const BenchDevice& device) {
            return device.isConnected;
        });
    m_isGuided = !rows.empty() && isConnected;
    m_isGuideWished = !isConnected;
    if (!m_isGuided)
        return;
    choose(rows.front());
    begin(Wire);
}

void BenchPresenter::leaveOut() {
    if (!m_isGuided)
        return;
    m_leftOut.insert(chosenSignal());
    m_isLeavingOut = true;
    cancel();
}

void BenchPresenter::goOnGuiding() {
    if (std::exchange(m_isLeavingOut, false) || m_snapshot.task.isGood)
        guide();
    else
        m_isGuided = false; // stopped, or it says what went wrong
}

void BenchPresenter::calibrateTo(const QString& values) {
    if (canBegin(Calibrate))
        m_bench->begin({BenchTask::Calibrate, chosenSignal(), values.toStdString()});
}

void BenchPresenter::setTolerances(const QString& words) {
    if (m_bench)
        m_bench->begin({BenchTask::SetTolerances, chosenSignal(), words.toStdString()});
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
    if (!m_bench)
        return;
    const QString file = beside(rigFile(), ".html");
    const Status written = m_bench->writeSheet(file.toStdString());
    m_sheet = written ? file : QString();
    say(written, file);
}

void BenchPresenter::writeCoverage() {
    const QString file = beside(rigFile(), ".coverage.csv");
    if (m_bench)
        say(m_bench->writeCoverage(file.toStdString(), m_hasBothSeats), file);
}

void BenchPresenter::showSheet() {
    if (!m_bench || m_sheet.isEmpty())
        return;
    if (const Status shown = m_bench->showPage(m_sheet.toStdString()); !shown)
        say(shown, m_sheet);
}

void BenchPresenter::say(const Status& status, const QString& file) {
    m_written = status ? tr("Written: %1").arg(file) : QString::fromStdString(describe(status.error()));
    Q_EMIT writtenChanged();
}

QString BenchPresenter::rigTitle() const {
    return m_bench ? textOf(m_snapshot.rigTitle) : m_maker.rigTitle();
}

QString BenchPresenter::aircraftTitle() const {
    return m_bench ? QString::fromStdString(m_bench->aircraft().title) : QString();
}

QString BenchPresenter::deviceWords() const {
    return deviceSentence(m_snapshot.devices);
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

const MeasuredControl* BenchPresenter::measuredControl(BenchTask task) const {
    if (!m_snapshot.measured)
        return nullptr;
    for (const MeasuredControl& measured : *m_snapshot.measured)
        if (measured.signal == chosenSignal() && measured.task == task)
            return &measured;
    return nullptr;
}

const ControlFilters* BenchPresenter::filters() const {
    if (!m_snapshot.filters)
        return nullptr;
    for (const ControlFilters& filters : *m_snapshot.filters)
        if (filters.signal == chosenSignal())
            return &filters;
    return nullptr;
}

QString BenchPresenter::filterWords() const {
    return filters() != nullptr ? filterSentence(*filters()) : QString();
}

QString BenchPresenter::filterChange() const {
    return filters() != nullptr ? filterChangeSentence(*filters()) : QString();
}

bool BenchPresenter::canUndoFilter() const {
    return filters() != nullptr && filters()->canUndo;
}

QStringList BenchPresenter::tolerances() const {
    const WalkTolerances& of = m_snapshot.tolerances;
    return {tr("%1 deg").arg(of.steeringDegrees), tr("%1 deg").arg(of.leverDegrees),
            tr("%1 %").arg(of.leverShare * 100)};
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
    const MeasuredControl* measured = measuredControl(BenchTask::Measure);
    return measured == nullptr || measured->isStale ? Measure : Walk;
}

QString BenchPresenter::measuredWords() const {
    const auto told = [](const MeasuredControl& of, const QString& now, const QString& before) {
        return (of.isStale ? before : now).arg(QString::fromStdString(of.date.substr(0, 10)));
    };
    QStringList sentences;
    if (const MeasuredControl* measured = measuredControl(BenchTask::Measure))
        sentences << told(*measured, tr("Measured on %1."), tr("Measured on %1; wired or calibrated anew since."));
    else
        sentences << (isWired() ? tr("It has not been measured yet.")
                                : tr("Once it is wired, its signal can be measured."));
    if (const MeasuredControl* checked = measuredControl(BenchTask::Check))
        sentences << told(*checked, tr("Its calibration was checked again on %1."),
                          tr("Checked again on %1; wired or calibrated anew since."));
    return sentences.join(QLatin1Char(' '));
}

QString BenchPresenter::valuesExample() const {
    return canBegin(Calibrate) ? flowhand::valuesExample(m_bench->aircraft().signals[chosenSignal()]) : QString();
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
    case BenchTask::Check:
        return tr("Repeat check: %1").arg(label);
    case BenchTask::Measure:
        return tr("Measurement: %1").arg(label);
    case BenchTask::Walk:
        return tr("Check walk: %1").arg(label);
    case BenchTask::None:
    case BenchTask::ApplyFilters:
    case BenchTask::UndoFilters:
    case BenchTask::SetTolerances: // done at once
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

QString BenchPresenter::ask() const {
    return sentenceOf(m_snapshot.task.ask);
}

QString BenchPresenter::outcome() const {
    QStringList sentences;
    for (const Phrase& words : m_snapshot.task.outcome)
        sentences << sentenceOf(words);
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

bool BenchPresenter::areSeatsChoosable() const {
    return m_bench && m_bench->aircraft().seats.size() > 1;
}

void BenchPresenter::setBothSeats(bool hasBoth) {
    if (hasBoth == m_hasBothSeats)
        return;
    m_hasBothSeats = hasBoth;
    showCoverage();
    Q_EMIT flowFilterChanged();
    Q_EMIT changed();
}

const Coverage& BenchPresenter::shownCoverage() const {
    return m_hasBothSeats ? *m_snapshot.bothSeats : *m_snapshot.coverage;
}

void BenchPresenter::turnFlowFilter() {
    setFlowFilter(m_flowFilter + 1 < flowTitles().size() ? m_flowFilter + 1 : -1);
}

QString BenchPresenter::orphanWords() const {
    return m_bench ? orphanSentence(m_bench->aircraft(), shownCoverage()) : QString();
}

void BenchPresenter::showControls() {
    m_controls.setRows(benchControlRows(m_bench->aircraft(), m_snapshot));
}

void BenchPresenter::showFindings() {
    std::vector<Finding> findings;
    for (const BenchTask task : {BenchTask::Check, BenchTask::Measure})
        if (const MeasuredControl* measured = measuredControl(task))
            findings.insert(findings.end(), measured->findings.begin(), measured->findings.end());
    if (const ControlFilters* asked = filters())
        findings.insert(findings.end(), asked->findings.begin(), asked->findings.end());
    m_findings.setRows(findingRows(findings));
}

void BenchPresenter::showCoverage() {
    if (!m_bench)
        return;
    const std::vector<CoverageRow> rows =
        coverageRows(m_bench->aircraft(), m_bench->flows(), shownCoverage(), m_flowFilter);
    m_coverage.setRows(rows);
    m_coverageWords = coverageSentence(rows);
}

void BenchPresenter::showNotices() {
    std::vector<NoticeRow> notices;
    for (const Phrase& words : m_snapshot.notices)
        notices.push_back({static_cast<int>(notices.size()), textOf(words)});
    m_notices.setRows(notices);
}

void BenchPresenter::beginTrace() {
    const SignalId chosen = chosenSignal();
    if (chosen == kNoSignal)
        return;
    PlotScale scale = plotScaleOf(chosen, m_bench->aircraft(), m_bench->flows(), *m_snapshot.travels);
    m_trace.begin(scale.lowest, scale.highest, std::move(scale.bands), std::move(scale.marks));
}

} // namespace flowhand
