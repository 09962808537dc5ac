#pragma once

#include <memory>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/controlmodel.h"
#include "presenter/groundpresenter.h"
#include "presenter/reviewtimeline.h"
#include "presenter/rowmodel.h"
#include "report/storeddebrief.h"

namespace flowhand {

/// A stored run that is gone through: what went well and what did not, its steps and their evidence, its timeline, and
/// the cockpit as it stood at the held time. GUI thread.
class RunReview : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Review place's presenter")
    Q_PROPERTY(QString title READ title NOTIFY runChanged)
    Q_PROPERTY(QString subtitle READ subtitle NOTIFY runChanged)
    Q_PROPERTY(QString scoreText READ scoreText NOTIFY runChanged)
    Q_PROPERTY(QString verdictText READ verdictText NOTIFY runChanged)
    Q_PROPERTY(int verdict READ verdict NOTIFY runChanged)
    Q_PROPERTY(QString wentWell READ wentWell NOTIFY runChanged)
    Q_PROPERTY(QString damage READ damage NOTIFY runChanged)
    Q_PROPERTY(flowhand::ReviewTimeline* timeline READ timeline CONSTANT)
    Q_PROPERTY(flowhand::ControlModel* controls READ controls CONSTANT)
    Q_PROPERTY(flowhand::GroundPresenter* ground READ ground CONSTANT)
    Q_PROPERTY(flowhand::RowModel* motion READ motion CONSTANT)
    Q_PROPERTY(flowhand::RowModel* deviations READ deviations CONSTANT)
    Q_PROPERTY(flowhand::RowModel* steps READ steps CONSTANT)
    Q_PROPERTY(flowhand::RowModel* evidence READ evidence CONSTANT)
    Q_PROPERTY(flowhand::RowModel* remarks READ remarks CONSTANT)
    Q_PROPERTY(flowhand::RowModel* repairs READ repairs CONSTANT)
    Q_PROPERTY(int chosenDeviation READ chosenDeviation NOTIFY chosenChanged)
    Q_PROPERTY(int chosenStep READ chosenStep NOTIFY chosenChanged)
    Q_PROPERTY(QString chosenTitle READ chosenTitle NOTIFY chosenChanged)
    Q_PROPERTY(QString chosenWord READ chosenWord NOTIFY chosenChanged)
    Q_PROPERTY(int chosenVerdict READ chosenVerdict NOTIFY chosenChanged)

public:
    explicit RunReview(QObject* parent);
    ~RunReview() override;

    /// `scene`: the ground on which it was flown; null: there is none.
    void show(std::shared_ptr<const StoredDebrief> debrief, std::shared_ptr<const GroundScene> scene = nullptr);
    void setNotes(const std::vector<Note>& notes);
    /// Everything that is shown, in the language of now.
    void tellAnew();

    /// Holds its time, and shows the step or guard.
    Q_INVOKABLE void chooseDeviation(int row);
    /// Holds when it was due.
    Q_INVOKABLE void chooseStep(int step);
    /// A figure key; the figures of a deviation lead to it. False when no deviation has such figures.
    Q_INVOKABLE bool pressFigure(int figure);

    /// Only once a run is shown.
    [[nodiscard]] const StoredDebrief& debrief() const { return *m_debrief; }
    [[nodiscard]] const std::shared_ptr<const StoredDebrief>& shared() const { return m_debrief; }
    [[nodiscard]] bool isEmpty() const { return m_debrief == nullptr; }

    [[nodiscard]] QString title() const;
    [[nodiscard]] QString subtitle() const;
    [[nodiscard]] QString scoreText() const;
    [[nodiscard]] QString verdictText() const;
    [[nodiscard]] int verdict() const;
    [[nodiscard]] QString wentWell() const;
    /// What of it could not be read back, in words; empty: nothing.
    [[nodiscard]] QString damage() const;
    [[nodiscard]] ReviewTimeline* timeline() { return &m_timeline; }
    /// Where the cockpit stood at the held time.
    [[nodiscard]] ControlModel* controls() { return &m_controls; }
    /// Where it was on the ground at the held time.
    [[nodiscard]] GroundPresenter* ground() { return &m_ground; }
    [[nodiscard]] RowModel* motion() { return &m_motion; }
    [[nodiscard]] RowModel* deviations() { return &m_deviations; }
    [[nodiscard]] RowModel* steps() { return &m_steps; }
    /// Of the chosen step.
    [[nodiscard]] RowModel* evidence() { return &m_evidence; }
    [[nodiscard]] RowModel* remarks() { return &m_remarks; }
    [[nodiscard]] RowModel* repairs() { return &m_repairs; }
    [[nodiscard]] int chosenDeviation() const { return m_chosenDeviation; }
    [[nodiscard]] int chosenStep() const { return m_chosenStep; }
    /// Of the chosen deviation; -1: it is a step's.
    [[nodiscard]] int chosenGuard() const;
    [[nodiscard]] QString chosenTitle() const;
    [[nodiscard]] QString chosenWord() const;
    [[nodiscard]] int chosenVerdict() const;

Q_SIGNALS:
    void runChanged();
    void chosenChanged();

private:
    [[nodiscard]] const ReviewedRun& reviewed() const { return m_debrief->timeline().run(); }
    [[nodiscard]] const Deviation* deviation() const;
    void showWords();
    void showHeld();
    void showEvidence();

    std::shared_ptr<const StoredDebrief> m_debrief;
    ReviewTimeline m_timeline;
    ControlModel m_controls;
    GroundPresenter m_ground;
    RowModel m_motion, m_deviations, m_steps, m_evidence, m_remarks, m_repairs;
    int m_chosenDeviation = -1;
    int m_chosenStep = -1;
    QString m_figures; ///< typed so far
};

} // namespace flowhand
