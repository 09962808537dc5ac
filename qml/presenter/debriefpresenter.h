#pragma once

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/rowmodel.h"
#include "procedure/flow.h"
#include "session/run.h"

namespace flowhand {

/// A run that is over: its score, what it lost and each step's times. GUI thread.
class DebriefPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Fly place's presenter")
    Q_PROPERTY(flowhand::RowModel* ledger READ ledger CONSTANT)
    Q_PROPERTY(flowhand::RowModel* steps READ steps CONSTANT)
    Q_PROPERTY(bool scored READ isScored NOTIFY changed)
    Q_PROPERTY(bool passed READ isPassed NOTIFY changed)
    Q_PROPERTY(QString scoreText READ scoreText NOTIFY changed)
    Q_PROPERTY(QString targetText READ targetText NOTIFY changed)
    Q_PROPERTY(QString whyNotPassed READ whyNotPassed NOTIFY changed)
    Q_PROPERTY(QString paceText READ paceText NOTIFY changed)
    Q_PROPERTY(QString storedText READ storedText NOTIFY changed)

public:
    explicit DebriefPresenter(QObject* parent);

    /// The flow must outlive what is shown.
    void show(const Flow& flow, const SessionSetup& setup, const RunSnapshot& snapshot);

    [[nodiscard]] RowModel* ledger() { return &m_ledger; }
    [[nodiscard]] RowModel* steps() { return &m_steps; }
    [[nodiscard]] bool isScored() const { return m_score.isScored; }
    [[nodiscard]] bool isPassed() const { return m_score.isPassed; }
    /// "92", or "88 to 92" of an uncertain run.
    [[nodiscard]] QString scoreText() const;
    [[nodiscard]] QString targetText() const { return m_target; }
    [[nodiscard]] QString whyNotPassed() const { return QString::fromStdString(m_score.whyNotPassed); }
    [[nodiscard]] QString paceText() const { return QString::fromStdString(clockText(m_score.pace)); }
    [[nodiscard]] QString storedText() const;

Q_SIGNALS:
    void changed();

private:
    Score m_score;
    QString m_target;
    std::int64_t m_runId = 0;
    RowModel m_ledger, m_steps;
};

} // namespace flowhand
