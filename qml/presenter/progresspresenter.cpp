#include "presenter/progresspresenter.h"

#include <algorithm>
#include <utility>

#include <QPointer>

#include "presenter/progressfacts.h"
#include "presenter/ribbon.h"
#include "report/progresstext.h"

namespace flowhand {

ProgressPresenter::ProgressPresenter(RunShelf& shelf, std::string storeFile, LibraryPtr library, WallClock clock,
                                     QObject* parent)
    : QObject(parent), m_shelf(shelf), m_storeFile(std::move(storeFile)), m_library(std::move(library)),
      m_clock(std::move(clock)), m_phases(PhaseRow::staticMetaObject, this),
      m_planned(PlannedRow::staticMetaObject, this), m_ahead(AheadRow::staticMetaObject, this),
      m_flows(FlownFlowRow::staticMetaObject, this), m_steps(StepRateRow::staticMetaObject, this) {
    m_phases.setRows(phaseRows());
}

void ProgressPresenter::offer(LibraryPtr library) {
    m_library = std::move(library);
    tellAnew();
}

void ProgressPresenter::tellAnew() {
    m_phases.setRows(phaseRows());
    if (!m_isListed)
        return;
    take(std::move(m_record));
    Q_EMIT changed();
}

void ProgressPresenter::enter() {
    m_shelf.ask<PracticeRecord>(
        [wish = m_wish, file = m_storeFile](Store&) {
            return practiceRecord(file, wish);
        },
        [this, self = QPointer(this), asked = ++m_asked](Result<PracticeRecord> record) {
            if (!self || asked != m_asked)
                return;
            m_failure = record ? QString() : QString::fromStdString(describe(record.error()));
            if (record)
                take(std::move(*record));
            m_isListed = true;
            Q_EMIT changed();
            Q_EMIT chosenChanged();
        });
}

void ProgressPresenter::take(PracticeRecord record) {
    const FlowProgress* const before = chosenFlow();
    const FlowName chosen = before != nullptr ? before->flow : FlowName();
    const Moment now = localMoment(m_clock());
    m_record = std::move(record);
    m_progress = progressOf(m_record.runs, knownFlows(m_library->aircraft), now);
    m_planned.setRows(plannedRows(m_progress.plan));
    m_ahead.setRows(aheadRows(m_progress.plan, now));
    m_flows.setRows(flownFlowRows(m_progress, m_library->aircraft, now));
    m_chosen = 0;
    for (std::size_t i = 0; i < m_progress.flows.size(); ++i)
        if (m_progress.flows[i].flow == chosen)
            m_chosen = static_cast<int>(i);
    choose(m_chosen);
}

void ProgressPresenter::choose(int row) {
    m_chosen = std::clamp(row, 0, std::max(m_flows.count() - 1, 0));
    const FlowProgress* const flow = chosenFlow();
    m_steps.setRows(flow != nullptr ? stepRateRows(*flow) : std::vector<StepRateRow>());
    Q_EMIT chosenChanged();
}

void ProgressPresenter::nextLine() {
    const auto here = std::find_if(m_record.lines.begin(), m_record.lines.end(), [this](const PracticeLine& line) {
        return line.pilot == m_record.line.pilot && line.rig == m_record.line.rig;
    });
    if (m_record.lines.empty())
        return;
    const bool isLast = here == m_record.lines.end() || std::next(here) == m_record.lines.end();
    const PracticeLine& next = isLast ? m_record.lines.front() : *std::next(here);
    m_wish = {};
    m_wish.pilot = next.pilot;
    m_wish.rig = next.rig;
    enter();
}

void ProgressPresenter::toggleMixed() {
    const bool isMixed = !m_wish.isEveryPilot;
    m_wish = {};
    m_wish.isEveryPilot = isMixed;
    m_wish.isEveryRig = isMixed;
    enter();
}

void ProgressPresenter::flyPlanned(int row) {
    if (row >= 0 && row < static_cast<int>(m_progress.plan.today.size()))
        ask(m_progress.plan.today[static_cast<std::size_t>(row)].flow);
}

void ProgressPresenter::flyChosen() {
    if (const FlowProgress* flow = chosenFlow())
        ask(flow->flow);
}

void ProgressPresenter::ask(const FlowName& flow) {
    Q_EMIT flyAsked(QString::fromStdString(flow.aircraftFolder), QString::fromStdString(flow.flowId));
}

const FlowProgress* ProgressPresenter::chosenFlow() const {
    return m_chosen < static_cast<int>(m_progress.flows.size()) ? &m_progress.flows[static_cast<std::size_t>(m_chosen)]
                                                                : nullptr;
}

QString ProgressPresenter::remarks() const {
    return textOf(joined(m_record.remarks, " "));
}

QString ProgressPresenter::whose() const {
    if (m_record.lines.empty())
        return {};
    const QString whose = sentenceOf(describe(m_record));
    const QString runs =
        m_record.line.runs == 1 ? tr("%1: 1 run").arg(whose) : tr("%1: %2 runs").arg(whose).arg(m_record.line.runs);
    return m_record.simulatedRuns > 0 ? tr("%1, %2 of them with simulated input").arg(runs).arg(m_record.simulatedRuns)
                                      : runs;
}

QString ProgressPresenter::title() const {
    const FlowProgress* const flow = chosenFlow();
    return flow != nullptr ? QString::fromStdString(flow->title) : QString();
}

QString ProgressPresenter::scoreTrend() const {
    const FlowProgress* const flow = chosenFlow();
    return flow != nullptr && flow->pointsPerRun ? textOf(scoreTrendText(*flow->pointsPerRun)) : QString();
}

QString ProgressPresenter::paceTrend() const {
    const FlowProgress* const flow = chosenFlow();
    return flow != nullptr && flow->secondsPerRun ? textOf(paceTrendText(*flow->secondsPerRun)) : QString();
}

QString ProgressPresenter::curve() const {
    const FlowProgress* const flow = chosenFlow();
    return flow != nullptr && flow->curve ? textOf(curveText(*flow->curve, runs() + 1)) : QString();
}

QList<QPointF> ProgressPresenter::scores() const {
    const FlowProgress* const flow = chosenFlow();
    return flow != nullptr ? scorePoints(*flow) : QList<QPointF>();
}

QList<QPointF> ProgressPresenter::paces() const {
    const FlowProgress* const flow = chosenFlow();
    return flow != nullptr ? pacePoints(*flow) : QList<QPointF>();
}

QList<QPointF> ProgressPresenter::curveLine() const {
    const FlowProgress* const flow = chosenFlow();
    return flow != nullptr ? curvePoints(*flow) : QList<QPointF>();
}

QList<int> ProgressPresenter::passed() const {
    const FlowProgress* const flow = chosenFlow();
    return flow != nullptr ? passedRuns(*flow) : QList<int>();
}

int ProgressPresenter::runs() const {
    const FlowProgress* const flow = chosenFlow();
    return flow != nullptr ? static_cast<int>(flow->points.size()) : 0;
}

int ProgressPresenter::rateRuns() const {
    return std::min(runs(), static_cast<int>(kRunsForRates));
}

} // namespace flowhand
