#pragma once

#include <atomic>
#include <functional>
#include <memory>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/currentlibrary.h"
#include "presenter/debriefpresenter.h"
#include "presenter/feedpresenter.h"
#include "presenter/flightlist.h"
#include "presenter/groundpresenter.h"
#include "presenter/jumppresenter.h"
#include "presenter/rowmodel.h"
#include "presenter/runmaker.h"
#include "presenter/runnote.h"
#include "presenter/runpresenter.h"
#include "presenter/runvoice.h"
#include "presenter/screenpanel.h"
#include "presenter/startpresenter.h"

namespace flowhand {

/// The Fly place: who flies, the flows to choose from, and the run that goes on. Holds the run and sends it what the
/// pilot wants. GUI thread.
class FlyPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(Stage stage READ stage NOTIFY stageChanged)
    Q_PROPERTY(flowhand::RowModel* phases READ phases CONSTANT)
    Q_PROPERTY(flowhand::RowModel* groups READ groups CONSTANT)
    Q_PROPERTY(int group READ group WRITE chooseGroup NOTIFY groupChanged)
    Q_PROPERTY(bool withScenarios READ isWithScenarios NOTIFY groupChanged)
    Q_PROPERTY(flowhand::RowModel* flows READ flows CONSTANT)
    Q_PROPERTY(flowhand::RowModel* briefing READ briefing CONSTANT)
    Q_PROPERTY(flowhand::RowModel* preview READ preview CONSTANT)
    Q_PROPERTY(flowhand::RowModel* problems READ problems CONSTANT)
    Q_PROPERTY(flowhand::RowModel* remarks READ remarks CONSTANT)
    Q_PROPERTY(flowhand::RunPresenter* run READ run CONSTANT)
    Q_PROPERTY(flowhand::DebriefPresenter* debrief READ debrief CONSTANT)
    Q_PROPERTY(flowhand::FeedPresenter* feed READ feed CONSTANT)
    Q_PROPERTY(flowhand::StartPresenter* start READ start CONSTANT)
    Q_PROPERTY(flowhand::GroundPresenter* ground READ ground CONSTANT)
    Q_PROPERTY(flowhand::JumpPresenter* jump READ jump CONSTANT)
    Q_PROPERTY(flowhand::RunNote* note READ note CONSTANT)
    Q_PROPERTY(flowhand::ScreenPanel* panel READ panel CONSTANT)
    Q_PROPERTY(int flowRow READ flowRow NOTIFY flowChanged)
    Q_PROPERTY(QString flowTitle READ flowTitle NOTIFY flowChanged)
    Q_PROPERTY(QString scenarioTitle READ scenarioTitle NOTIFY flowChanged)
    Q_PROPERTY(int slowness READ slowness NOTIFY flowChanged)
    Q_PROPERTY(bool withRig READ isWithRig NOTIFY handsChanged)
    Q_PROPERTY(QString rigTitle READ rigTitle NOTIFY handsChanged)
    /// As of the question of the first start.
    Q_PROPERTY(bool controlsConnected READ areControlsConnected NOTIFY handsChanged)
    Q_PROPERTY(bool demonstrationFirst READ isDemonstrationFirst NOTIFY handsChanged)
    Q_PROPERTY(bool demonstration READ isDemonstration NOTIFY flowChanged)
    Q_PROPERTY(QString failure READ failure NOTIFY stageChanged)

public:
    enum Stage { FirstStart, Choosing, SetUp, Running, Held, Ended };
    Q_ENUM(Stage)

    /// `maker` and `sound` must outlive it.
    FlyPresenter(LibraryPtr library, RunMaker& maker, Sound& sound, QObject* parent = nullptr);
    ~FlyPresenter() override;

    /// Offers these aircraft and flows from now on. What was begun goes on as it was.
    void offer(LibraryPtr library);

    /// Asks whether there are controls, instead of offering flows.
    Q_INVOKABLE void askHands();
    Q_INVOKABLE void chooseHands(bool hasControls);
    /// Offers the flows or scenarios of another aircraft.
    void chooseGroup(int group);
    /// Offers the flows of that aircraft and gives the row of this one; -1: it is not there.
    Q_INVOKABLE int find(const QString& aircraft, const QString& flow);
    /// Lists the steps of a flow in `preview`, and what is said of a scenario in `briefing`.
    Q_INVOKABLE void look(int row);
    Q_INVOKABLE void startFlow(int row);
    Q_INVOKABLE void demonstrate(int row);
    /// The same flow once more, by the pilot's own hands.
    Q_INVOKABLE void again();
    /// Back to the flows; ends a run that goes on.
    Q_INVOKABLE void leave();

    /// How much is shown while flying: from the next run on.
    void setHelp(const QString& help) { m_help = help.toStdString(); }
    /// Whose name stands in the runs from now on.
    void setPilot(const QString& pilot) { m_pilot = pilot.toStdString(); }

    /// Of sound and input, in ms, by the rig's title or "screen".
    void setDelays(std::function<int(const QString&)> delayOf) { m_delayOf = std::move(delayOf); }
    /// Everything that is shown, in the language of now.
    void tellAnew();
    /// The rigs are elsewhere now.
    void lookAgain() { Q_EMIT handsChanged(); }

    /// Begins the run, once every control is where the start wants it.
    Q_INVOKABLE void begin();
    /// Begins the run as the controls are.
    Q_INVOKABLE void waive();
    /// Puts every on-screen control where the start wants it.
    Q_INVOKABLE void setAll();
    Q_INVOKABLE void hold();
    Q_INVOKABLE void resume();
    Q_INVOKABLE void repeat();
    Q_INVOKABLE void stop();
    /// Begins a note at this moment; the run goes on.
    Q_INVOKABLE void beginNote();
    /// Holds the run and offers its steps to go on with.
    Q_INVOKABLE void openJump();
    /// Goes on with the step that is picked.
    Q_INVOKABLE void jumpToPicked();
    /// Stays; the run stands until it is resumed.
    Q_INVOKABLE void closeJump();

    /// Shows the run as it is now. Comes by itself after each change of the run.
    void refresh();

    [[nodiscard]] Stage stage() const { return m_stage; }
    [[nodiscard]] RowModel* phases() { return &m_phases; }
    [[nodiscard]] RowModel* groups() { return &m_groupRows; }
    [[nodiscard]] int group() const { return m_group; }
    /// The group is one of scenarios.
    [[nodiscard]] bool isWithScenarios() const;
    Q_INVOKABLE QString flightTitle(int row) const;
    [[nodiscard]] RowModel* flows() { return &m_flows; }
    [[nodiscard]] RowModel* briefing() { return &m_briefing; }
    /// The steps of the flow that is looked at.
    [[nodiscard]] RowModel* preview() { return &m_preview; }
    [[nodiscard]] RowModel* problems() { return &m_problems; }
    [[nodiscard]] RowModel* remarks() { return &m_remarks; }
    [[nodiscard]] RunPresenter* run() { return &m_runView; }
    [[nodiscard]] DebriefPresenter* debrief() { return &m_debrief; }
    [[nodiscard]] FeedPresenter* feed() { return &m_feed; }
    [[nodiscard]] StartPresenter* start() { return &m_start; }
    [[nodiscard]] GroundPresenter* ground() { return &m_ground; }
    [[nodiscard]] JumpPresenter* jump() { return &m_jump; }
    [[nodiscard]] RunNote* note() { return &m_note; }
    [[nodiscard]] ScreenPanel* panel() { return &m_panel; }
    /// Of the flow that is flown, or -1.
    [[nodiscard]] int flowRow() const { return m_flowRow; }
    [[nodiscard]] QString flowTitle() const;
    /// Of the run; empty: a flow alone.
    [[nodiscard]] QString scenarioTitle() const;
    /// How many times slower the aircraft moves.
    [[nodiscard]] int slowness() const { return m_choice.slowness; }
    [[nodiscard]] bool isWithRig() const { return m_hands == HandsChoice::Rig; }
    [[nodiscard]] QString rigTitle() const { return m_maker.rigTitle(); }
    [[nodiscard]] bool areControlsConnected() const { return m_areControlsConnected; }
    /// Somebody without controls has just come and flown nothing yet: to watch is what to do first.
    [[nodiscard]] bool isDemonstrationFirst() const { return m_isDemonstrationFirst; }
    [[nodiscard]] bool isDemonstration() const { return m_choice.hands == HandsChoice::Demonstration; }
    /// Why the flow could not be begun.
    [[nodiscard]] QString failure() const { return m_failure; }

Q_SIGNALS:
    void stageChanged();
    void groupChanged();
    void flowChanged();
    void handsChanged();
    /// The flows are others than before; the one that was looked at is in this row now, or else it is the first.
    void offered(int row);
    /// The pilot has said whether there are controls.
    void handsChosen(bool hasControls);

private:
    void listGroups();
    void listFlights();
    [[nodiscard]] int rowOf(const FlightChoice& choice) const;
    void launch(FlightChoice choice, HandsChoice hands);
    [[nodiscard]] FlightChoice flightOf(int row) const;
    void fail(const QString& why);
    void setStage(Stage stage);
    void showFlow(const Flow* flow);
    void showChosen();
    void command(CommandKind kind);

    RunMaker& m_maker;
    LibraryPtr m_library; ///< that is offered
    LibraryPtr m_flown;   ///< that m_choice and the run are of
    std::vector<FlightGroup> m_groups;
    int m_group = 0;
    std::vector<FlightChoice> m_flights; ///< by row of `flows`
    Stage m_stage = Choosing;
    HandsChoice m_hands = HandsChoice::Screen;
    std::string m_help = "guided";
    std::string m_pilot;
    std::function<int(const QString&)> m_delayOf; ///< none: nothing was measured
    FlightChoice m_choice;                        ///< with the flow that is flown now
    int m_flowRow = -1;
    int m_lookedAt = 0; ///< row of `flows`
    QString m_failure;
    bool m_isDemonstrationFirst = false;
    bool m_areControlsConnected = false;
    bool m_hasLaunched = false; ///< a run, since the program was started
    RowModel m_phases, m_groupRows, m_flows, m_briefing, m_preview, m_problems, m_remarks;
    ScreenPanel m_panel;
    FeedPresenter m_feed;
    StartPresenter m_start;
    GroundPresenter m_ground;
    JumpPresenter m_jump;
    RunNote m_note;
    RunPresenter m_runView;
    DebriefPresenter m_debrief;
    RunVoice m_voice;
    std::atomic<bool> m_isRefreshQueued = false;
    std::unique_ptr<RunHandle> m_run; ///< last, so that its thread ends before what it calls back goes
};

} // namespace flowhand
