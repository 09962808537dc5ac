#pragma once

#include <QObject>
#include <QTimer>
#include <QtQml/qqmlregistration.h>

#include "presenter/controlmodel.h"
#include "presenter/help.h"
#include "presenter/phrasetext.h"
#include "presenter/rowmodel.h"
#include "presenter/rows.h"
#include "presenter/runmaker.h"

namespace flowhand {

/// A run as it goes: the due step, what comes, what is over, the set-up check. Shows snapshots; sends no commands.
/// GUI thread.
class RunPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Fly place's presenter")
    Q_PROPERTY(flowhand::RowModel* targets READ targets CONSTANT)
    Q_PROPERTY(flowhand::RowModel* setUp READ setUp CONSTANT)
    Q_PROPERTY(flowhand::RowModel* toMatch READ toMatch CONSTANT)
    Q_PROPERTY(flowhand::RowModel* coming READ coming CONSTANT)
    Q_PROPERTY(flowhand::RowModel* over READ over CONSTANT)
    Q_PROPERTY(flowhand::RowModel* guards READ guards CONSTANT)
    Q_PROPERTY(flowhand::RowModel* motion READ motion CONSTANT)
    Q_PROPERTY(flowhand::RowModel* notices READ notices CONSTANT)
    /// The last few, for some seconds or while the run is held.
    Q_PROPERTY(flowhand::RowModel* freshNotices READ freshNotices CONSTANT)
    Q_PROPERTY(bool hasDue READ hasDue NOTIFY changed)
    Q_PROPERTY(QString dueTitle READ dueTitle NOTIFY changed)
    Q_PROPERTY(QString comingText READ comingText NOTIFY changed)
    Q_PROPERTY(QString dueWho READ dueWho NOTIFY changed)
    Q_PROPERTY(bool dueOwn READ isDueOwn NOTIFY changed)
    Q_PROPERTY(bool dueSeen READ isDueSeen NOTIFY changed)
    Q_PROPERTY(QString dueWhy READ dueWhy NOTIFY changed)
    Q_PROPERTY(QString dueReply READ dueReply NOTIFY changed)
    Q_PROPERTY(double dueShare READ dueShare NOTIFY changed)
    Q_PROPERTY(double timelyShare READ timelyShare NOTIFY changed)
    Q_PROPERTY(QString nextTitle READ nextTitle NOTIFY changed)
    Q_PROPERTY(int verdict READ verdict NOTIFY verdictChanged)
    Q_PROPERTY(QString verdictWord READ verdictWord NOTIFY verdictChanged)
    Q_PROPERTY(QString verdictTitle READ verdictTitle NOTIFY verdictChanged)
    Q_PROPERTY(QString saying READ saying NOTIFY changed)
    Q_PROPERTY(QString sayingBy READ sayingBy NOTIFY changed)
    Q_PROPERTY(QString holdReason READ holdReason NOTIFY changed)
    Q_PROPERTY(QString clock READ clock NOTIFY changed)
    Q_PROPERTY(QString feedText READ feedText NOTIFY changed)
    Q_PROPERTY(int stepsOver READ stepsOver NOTIFY changed)
    Q_PROPERTY(int stepsAll READ stepsAll NOTIFY changed)
    Q_PROPERTY(QString scoreText READ scoreText NOTIFY changed)
    Q_PROPERTY(bool hasLine READ hasLine NOTIFY changed)
    Q_PROPERTY(double offLine READ offLine NOTIFY changed)
    Q_PROPERTY(double lineAngle READ lineAngle NOTIFY changed)
    Q_PROPERTY(QString lineText READ lineText NOTIFY changed)
    Q_PROPERTY(QString aheadText READ aheadText NOTIFY changed)

public:
    /// `controls` must outlive it.
    RunPresenter(const ControlModel& controls, QObject* parent);

    /// Another run, or none. Aircraft and flow must outlive what is shown.
    void begin(const Aircraft* aircraft, const Flow* flow, const SessionSetup& setup);
    void show(const RunSnapshot& snapshot);
    /// From the next begin() on.
    void setHelp(Help help) { m_help = help; }
    /// Of distances on the ground: "m" or "ft".
    void setLength(const QString& unit);
    /// What is noticed from now on is of another flight.
    void forgetNotices();

    [[nodiscard]] RowModel* targets() { return &m_targets; }
    [[nodiscard]] RowModel* setUp() { return &m_setUp; }
    [[nodiscard]] RowModel* toMatch() { return &m_toMatch; }
    [[nodiscard]] RowModel* coming() { return &m_coming; }
    [[nodiscard]] RowModel* over() { return &m_over; }
    [[nodiscard]] RowModel* guards() { return &m_guards; }
    [[nodiscard]] RowModel* motion() { return &m_motion; }
    [[nodiscard]] RowModel* notices() { return &m_notices; }
    [[nodiscard]] RowModel* freshNotices() { return &m_freshNotices; }
    [[nodiscard]] bool hasDue() const { return dueStep() != nullptr; }
    /// With hyphens that keep their word on one line; a question where the pilot flies from memory.
    [[nodiscard]] QString dueTitle() const;
    /// What stands in place of the steps to come: none are left, or they are not shown.
    [[nodiscard]] QString comingText() const;
    [[nodiscard]] QString dueWho() const { return m_due.who; }
    /// In the flow; the first step when none is due.
    [[nodiscard]] int dueIndex() const { return hasDue() ? m_snapshot.session.due.front() : 0; }
    [[nodiscard]] bool isDueOwn() const { return m_due.own; }
    [[nodiscard]] bool isDueSeen() const;
    [[nodiscard]] QString dueWhy() const { return m_help == Help::Guided ? m_due.why : QString(); }
    /// The words to answer with, of a reply that is due.
    [[nodiscard]] QString dueReply() const;
    /// 0..1 of the time after which the due step is late by all means.
    [[nodiscard]] double dueShare() const;
    [[nodiscard]] double timelyShare() const;
    /// The step to come when none is due; empty where it is not shown.
    [[nodiscard]] QString nextTitle() const;
    [[nodiscard]] int verdict() const { return m_verdict.verdict; }
    [[nodiscard]] QString verdictWord() const { return m_verdict.word; }
    [[nodiscard]] QString verdictTitle() const { return m_verdict.title; }
    [[nodiscard]] QString saying() const { return QString::fromStdString(m_snapshot.session.saying); }
    [[nodiscard]] QString sayingBy() const;
    [[nodiscard]] QString holdReason() const { return textOf(m_snapshot.session.holdReason); }
    [[nodiscard]] QString clock() const { return QString::fromStdString(clockText(m_snapshot.session.time)); }
    /// How the feed does: its rate, clock and delay; empty: there is none.
    [[nodiscard]] QString feedText() const;
    [[nodiscard]] int stepsOver() const { return m_over.count(); }
    [[nodiscard]] int stepsAll() const;
    /// What the score will be at the least and at the most: "64 to 98"; empty where nothing is scored.
    [[nodiscard]] QString scoreText() const;
    /// Rolling, with a line on the ground to follow.
    [[nodiscard]] bool hasLine() const;
    /// Metres right of the line.
    [[nodiscard]] double offLine() const;
    /// Degrees by which the nose points to the right of the line.
    [[nodiscard]] double lineAngle() const;
    /// "on the line", "1.4 m left of the line"; empty without one.
    [[nodiscard]] QString lineText() const;
    /// What the line does next: "turn ahead", "stop in 84 m".
    [[nodiscard]] QString aheadText() const;

Q_SIGNALS:
    void changed();
    void verdictChanged();

private:
    void showSteps();
    void showTargets();
    [[nodiscard]] bool isDueNamed() const { return m_help != Help::FromMemory || !m_due.own; }
    [[nodiscard]] QString metresText(double metres, int digits) const;
    void showGuards();
    void showNotices();
    void noteVerdicts(const std::vector<StepView>& before);
    [[nodiscard]] const Step* dueStep() const;
    [[nodiscard]] const StepView* dueView() const;
    [[nodiscard]] Value motionValue(const char* name) const;

    const ControlModel& m_controls;
    const Aircraft* m_aircraft = nullptr;
    const Flow* m_flow = nullptr;
    SessionSetup m_setup;
    Help m_help = Help::Guided;
    bool m_isInFeet = false;
    int m_hidden = 0; ///< steps to come that are not shown
    RunSnapshot m_snapshot;
    StepRow m_due;
    StepRow m_verdict;
    QTimer m_verdictTimer;
    QTimer m_noticeTimer;
    int m_noticesRead = 0; ///< those that have been shown for long enough
    int m_noticesSeen = 0;
    RowModel m_targets, m_setUp, m_toMatch, m_coming, m_over, m_guards, m_motion, m_notices, m_freshNotices;
};

} // namespace flowhand
