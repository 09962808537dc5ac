#include "presenter/debriefpresenter.h"

#include <algorithm>

#include "presenter/stepfacts.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

PartRow partRow(const Flow& flow, const Score& score, std::size_t at, std::size_t chosen) {
    PartRow row;
    row.rowId = static_cast<int>(at);
    row.title = QString::fromStdString(flow.title);
    row.score = score.isScored ? shownPoints(score.milliPoints) : QString();
    row.verdict = score.isPassed ? Verdict::Done : score.isScored ? Verdict::Wrong : Verdict::LeftOut;
    row.chosen = at == chosen;
    return row;
}

} // namespace

DebriefPresenter::DebriefPresenter(QObject* parent)
    : QObject(parent), m_parts(PartRow::staticMetaObject, this), m_happened(FactRow::staticMetaObject, this),
      m_ledger(LedgerRow::staticMetaObject, this), m_steps(StepRow::staticMetaObject, this) {}

void DebriefPresenter::show(const Flow& flow, const SessionSetup& setup, const RunSnapshot& snapshot,
                            bool isDemonstration) {
    m_setup = setup;
    m_isDemonstration = isDemonstration;
    m_flight.clear();
    for (const std::shared_ptr<const RunSnapshot>& end : snapshot.before)
        m_flight.push_back({end->flow, end});
    m_flight.push_back({&flow, std::make_shared<const RunSnapshot>(snapshot)});
    const auto failed = std::find_if(m_flight.begin(), m_flight.end(), [](const Part& part) {
        return part.end->score.isScored && !part.end->score.isPassed;
    });
    m_happened.setRows(happenedRows());
    m_chosen = failed != m_flight.end() ? static_cast<std::size_t>(failed - m_flight.begin()) : m_flight.size() - 1;
    showPart();
}

/// Of the whole flight; the times are those of each flow.
std::vector<FactRow> DebriefPresenter::happenedRows() const {
    std::vector<FactRow> rows;
    for (const Part& part : m_flight)
        for (const Happening& each : part.end->happened) {
            FactRow row;
            row.rowId = static_cast<int>(rows.size());
            row.label = QString::fromStdString(clockText(each.time));
            row.value = QString::fromStdString(each.title);
            if (m_flight.size() > 1)
                row.value = tr("%1, in “%2”").arg(row.value, QString::fromStdString(part.flow->title));
            rows.push_back(row);
        }
    return rows;
}

void DebriefPresenter::choose(int part) {
    if (part < 0 || part >= static_cast<int>(m_flight.size()))
        return;
    m_chosen = static_cast<std::size_t>(part);
    showPart();
}

void DebriefPresenter::showPart() {
    const Flow& flow = *m_flight[m_chosen].flow;
    const RunSnapshot& end = *m_flight[m_chosen].end;
    std::vector<PartRow> parts;
    for (std::size_t part = 0; part < m_flight.size(); ++part)
        parts.push_back(partRow(*m_flight[part].flow, m_flight[part].end->score, part, m_chosen));
    m_parts.setRows(parts);
    m_title = QString::fromStdString(flow.title);
    m_score = end.score;
    m_target = QString::number(flow.target);
    m_runId = end.runId;
    m_ledger.setRows(ledgerRows(m_score));
    std::vector<StepRow> rows;
    for (std::size_t step = 0; step < end.session.steps.size(); ++step) {
        StepRow row = stepRow(flow, end, m_setup, static_cast<int>(step));
        if (m_isDemonstration && row.own)
            row.who = tr("script");
        rows.push_back(row);
    }
    m_steps.setRows(rows);
    Q_EMIT changed();
}

QString DebriefPresenter::scoreText() const {
    const QString lowest = shownPoints(m_score.milliPoints);
    if (m_score.upperMilliPoints <= m_score.milliPoints)
        return lowest;
    return tr("%1 to %2").arg(lowest, shownPoints(m_score.upperMilliPoints));
}

QString DebriefPresenter::storedText() const {
    return m_runId > 0 ? tr("Kept as run %1").arg(m_runId) : tr("This run was not kept");
}

} // namespace flowhand
