#include "presenter/reviewcomparison.h"

#include <QPointer>

#include "command/loadrun.h"
#include "presenter/phrasetext.h"
#include "presenter/reviewrows.h"
#include "report/findings.h"

namespace flowhand {

namespace {

QString signedSeconds(const std::optional<Duration>& duration) {
    if (!duration)
        return {};
    QString text = QString::number(seconds(*duration), 'f', 1);
    if (text == QStringLiteral("-0.0"))
        text = QStringLiteral("0.0");
    return text.startsWith(QLatin1Char('-')) ? text.replace(0, 1, QChar(0x2212)) : QLatin1Char('+') + text;
}

QString timeText(const std::optional<Duration>& time) {
    return time ? QString::fromStdString(clockText(*time)) : QString();
}

QString labelOf(const RunSummary& run) {
    QStringList parts = {QObject::tr("Run %1").arg(run.id), QString::fromStdString(wallTime(run.startedUnixMillis)),
                         QString::fromStdString(run.pilot)};
    if (run.isScored)
        parts << QObject::tr("%1 points").arg(QString::fromStdString(pointsText(run.milliPoints)));
    if (run.isReference)
        parts << QObject::tr("the reference");
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

ComparedStepRow rowOf(const StepComparison& step, int row) {
    ComparedStepRow compared;
    compared.rowId = row;
    compared.title = QString::fromStdString(step.title);
    compared.done = timeText(step.elapsed);
    compared.other = timeText(step.otherElapsed);
    compared.behind = signedSeconds(step.cumulative);
    compared.ofIt = signedSeconds(step.delta);
    compared.difference = textOf(joined(step.differences, "; "));
    compared.step = step.step;
    return compared;
}

} // namespace

ReviewComparison::ReviewComparison(RunShelf& shelf, QObject* parent)
    : QObject(parent), m_shelf(shelf), m_steps(ComparedStepRow::staticMetaObject, this),
      m_others(OtherRunRow::staticMetaObject, this) {}

void ReviewComparison::show(std::shared_ptr<const StoredDebrief> debrief) {
    m_debrief = std::move(debrief);
    m_other = 0;
    m_hasLooked = false;
    m_title.clear();
    m_remarks.clear();
    m_failure.clear();
    m_offered.clear();
    m_comparison.reset();
    m_steps.setRows(std::vector<ComparedStepRow>());
    m_others.setRows(std::vector<OtherRunRow>());
    Q_EMIT changed();
}

void ReviewComparison::enter() {
    m_shelf.ask<std::vector<RunSummary>>(
        [](Store& store) {
            return store.runs();
        },
        [this, self = QPointer(this), debrief = m_debrief](Result<std::vector<RunSummary>> runs) {
            if (!self || debrief != m_debrief)
                return;
            if (runs)
                return offer(std::move(*runs));
            m_failure = QString::fromStdString(describe(runs.error()));
            Q_EMIT changed();
        });
}

void ReviewComparison::offer(std::vector<RunSummary> runs) {
    const RunSummary& own = m_debrief->run().summary;
    std::erase_if(runs, [&own](const RunSummary& run) {
        return run.isDamaged || run.id == own.id || run.flowId != own.flowId ||
               run.aircraftFolder != own.aircraftFolder;
    });
    m_offered = std::move(runs);
    std::int64_t likeliest = 0;
    bool isReference = false;
    for (const RunSummary& run : m_offered) {
        // The reference; else the last one before this; else any.
        const bool isBefore = run.startedUnixMillis <= own.startedUnixMillis;
        if (run.isReference || (!isReference && isBefore && likeliest == 0))
            likeliest = run.id;
        isReference |= run.isReference;
    }
    if (likeliest == 0 && !m_offered.empty())
        likeliest = m_offered.front().id;
    showOthers();
    m_hasLooked = true;
    Q_EMIT changed();
    if (m_other == 0 && likeliest != 0)
        compareWith(static_cast<int>(likeliest));
}

void ReviewComparison::showOthers() {
    std::vector<OtherRunRow> rows;
    for (const RunSummary& run : m_offered)
        rows.push_back({static_cast<int>(run.id), labelOf(run)});
    m_others.setRows(rows);
}

void ReviewComparison::tellAnew() {
    showOthers();
    showComparison();
    Q_EMIT changed();
}

void ReviewComparison::compareWith(int run) {
    using Loaded = std::shared_ptr<const StoredDebrief>;
    m_other = run;
    m_failure.clear();
    Q_EMIT changed();
    m_shelf.ask<Loaded>(
        [run](Store& store) -> Result<Loaded> {
            Result<StoredDebrief> debrief = loadDebrief(store, run);
            if (!debrief)
                return tl::unexpected(debrief.error());
            return std::make_shared<const StoredDebrief>(std::move(*debrief));
        },
        [this, self = QPointer(this), debrief = m_debrief, run](Result<Loaded> other) {
            if (!self || debrief != m_debrief || m_other != run)
                return;
            if (other) {
                m_comparison = compareRuns(m_debrief->timeline(), (*other)->timeline());
                return showComparison();
            }
            m_failure = QString::fromStdString(describe(other.error()));
            Q_EMIT changed();
        });
}

void ReviewComparison::next() {
    for (int row = 0; row < m_others.count(); ++row)
        if (m_others.row<OtherRunRow>(row).rowId == m_other)
            return compareWith(m_others.row<OtherRunRow>((row + 1) % m_others.count()).rowId);
}

void ReviewComparison::showComparison() {
    if (!m_comparison)
        return;
    std::vector<ComparedStepRow> rows;
    for (const StepComparison& step : m_comparison->steps)
        rows.push_back(rowOf(step, static_cast<int>(rows.size())));
    m_steps.setRows(rows);
    for (int row = 0; row < m_others.count(); ++row)
        if (m_others.row<OtherRunRow>(row).rowId == m_other)
            m_title = m_others.row<OtherRunRow>(row).label;
    m_remarks = textOf(joined(m_comparison->differences, "; "));
    Q_EMIT changed();
}

} // namespace flowhand
