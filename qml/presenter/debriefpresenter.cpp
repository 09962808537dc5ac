#include "presenter/debriefpresenter.h"

#include "presenter/stepfacts.h"

namespace flowhand {

DebriefPresenter::DebriefPresenter(QObject* parent)
    : QObject(parent), m_ledger(LedgerRow::staticMetaObject, this), m_steps(StepRow::staticMetaObject, this) {}

void DebriefPresenter::show(const Flow& flow, const SessionSetup& setup, const RunSnapshot& snapshot) {
    m_score = snapshot.score;
    m_target = QString::number(flow.target);
    m_runId = snapshot.runId;
    m_ledger.setRows(ledgerRows(m_score));
    std::vector<StepRow> rows;
    for (std::size_t step = 0; step < snapshot.session.steps.size(); ++step)
        rows.push_back(stepRow(flow, snapshot, setup, static_cast<int>(step)));
    m_steps.setRows(rows);
    Q_EMIT changed();
}

QString DebriefPresenter::scoreText() const {
    const QString lowest = pointsText(m_score.milliPoints);
    if (m_score.upperMilliPoints <= m_score.milliPoints)
        return lowest;
    return tr("%1 to %2").arg(lowest, pointsText(m_score.upperMilliPoints));
}

QString DebriefPresenter::storedText() const {
    return m_runId > 0 ? tr("Kept as run %1").arg(m_runId) : tr("This run was not kept");
}

} // namespace flowhand
