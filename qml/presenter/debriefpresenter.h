#pragma once

#include <memory>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/phrasetext.h"
#include "presenter/rowmodel.h"
#include "presenter/rows.h"
#include "procedure/flow.h"
#include "session/run.h"

namespace flowhand {

/// A flight that is over: of each of its flows the score, what it lost, each step's times, and what happened. Shows one
/// flow at a time. GUI thread.
class DebriefPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Fly place's presenter")
    /// The flight's flows, in their order.
    Q_PROPERTY(flowhand::RowModel* parts READ parts CONSTANT)
    /// What a scenario brought in the whole flight: when, and what.
    Q_PROPERTY(flowhand::RowModel* happened READ happened CONSTANT)
    Q_PROPERTY(QString title READ title NOTIFY changed)
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

    /// The flight's last run, with those before it in the snapshot; shown is the first that was not passed. The flows
    /// must outlive what is shown. In a demonstration a script did what else is yours.
    void show(const Flow& flow, const SessionSetup& setup, const RunSnapshot& snapshot, bool isDemonstration);
    Q_INVOKABLE void choose(int part);

    [[nodiscard]] RowModel* parts() { return &m_parts; }
    [[nodiscard]] RowModel* happened() { return &m_happened; }
    /// Of the flow that is shown.
    [[nodiscard]] QString title() const { return m_title; }
    [[nodiscard]] RowModel* ledger() { return &m_ledger; }
    [[nodiscard]] RowModel* steps() { return &m_steps; }
    [[nodiscard]] bool isScored() const { return m_score.isScored; }
    [[nodiscard]] bool isPassed() const { return m_score.isPassed; }
    /// "92", or "88 to 92" of an uncertain run.
    [[nodiscard]] QString scoreText() const;
    [[nodiscard]] QString targetText() const { return m_target; }
    [[nodiscard]] QString whyNotPassed() const { return sentenceOf(m_score.whyNotPassed); }
    [[nodiscard]] QString paceText() const { return QString::fromStdString(clockText(m_score.pace)); }
    [[nodiscard]] QString storedText() const;

Q_SIGNALS:
    void changed();

private:
    struct Part {
        const Flow* flow = nullptr;
        std::shared_ptr<const RunSnapshot> end;
    };
    void showPart();
    [[nodiscard]] std::vector<FactRow> happenedRows() const;

    std::vector<Part> m_flight;
    std::size_t m_chosen = 0;
    SessionSetup m_setup;
    bool m_isDemonstration = false;
    QString m_title;
    Score m_score;
    QString m_target;
    std::int64_t m_runId = 0;
    RowModel m_parts, m_happened, m_ledger, m_steps;
};

} // namespace flowhand
