#include "presenter/flypresenter.h"

#include <algorithm>
#include <utility>

#include <QRandomGenerator>

#include "presenter/briefing.h"
#include "presenter/ribbon.h"
#include "presenter/stepfacts.h"

namespace flowhand {

namespace {

FlyPresenter::Stage stageOf(SessionPhase phase) {
    switch (phase) {
    case SessionPhase::SetUp:
        return FlyPresenter::SetUp;
    case SessionPhase::Running:
        return FlyPresenter::Running;
    case SessionPhase::Held:
        return FlyPresenter::Held;
    case SessionPhase::Ended:
        return FlyPresenter::Ended;
    }
    return FlyPresenter::Choosing;
}

std::vector<NoticeRow> problemRows(const Problems& problems) {
    std::vector<NoticeRow> rows;
    for (const Problem& problem : problems.all()) {
        if (problem.severity != Severity::Error)
            continue;
        NoticeRow row;
        row.rowId = static_cast<int>(rows.size());
        row.words = QString::fromStdString(describe(problem.error));
        rows.push_back(row);
    }
    return rows;
}

} // namespace

FlyPresenter::FlyPresenter(LibraryPtr library, RunMaker& maker, Sound& sound, QObject* parent)
    : QObject(parent), m_maker(maker), m_library(std::move(library)), m_phases(PhaseRow::staticMetaObject, this),
      m_groupRows(GroupRow::staticMetaObject, this), m_flows(FlowRow::staticMetaObject, this),
      m_briefing(FactRow::staticMetaObject, this), m_preview(StepRow::staticMetaObject, this),
      m_problems(NoticeRow::staticMetaObject, this), m_remarks(NoticeRow::staticMetaObject, this),
      m_panel(
          [this](SignalId signal, Value value) {
              if (m_run)
                  m_run->moveOnScreen(signal, value);
          },
          this),
      m_feed(m_library, this), m_start(this), m_ground(this), m_jump(this), m_note(this),
      m_runView(*m_panel.controls(), this), m_debrief(this), m_voice(sound) {
    m_phases.setRows(phaseRows());
    connect(&m_feed, &FeedPresenter::chosenChanged, this, [this] {
        m_start.setFed(!m_feed.chosen().isEmpty());
    });
    listGroups();
    listFlights();
}

void FlyPresenter::tellAnew() {
    m_phases.setRows(phaseRows());
    m_groupRows.setRows(groupRows(m_groups));
    listFlights();
    refresh();
    Q_EMIT groupChanged();
    Q_EMIT handsChanged();
}

FlyPresenter::~FlyPresenter() {
    m_run.reset();
}

namespace {

/// The same flight of another library, or of the same one after a change.
bool isSame(const FlightChoice& a, const FlightChoice& b) {
    if (a.folder == nullptr || b.folder == nullptr || a.folder->aircraft->file != b.folder->aircraft->file)
        return false;
    if (a.scenario != nullptr || b.scenario != nullptr)
        return a.scenario != nullptr && b.scenario != nullptr && a.scenario->id == b.scenario->id;
    return a.flow != nullptr && b.flow != nullptr && a.flow->id == b.flow->id;
}

} // namespace

void FlyPresenter::offer(LibraryPtr library) {
    const LibraryPtr before = std::exchange(m_library, std::move(library));
    const std::vector<FlightGroup> groups = m_groups;
    const FlightChoice lookedAt = flightOf(m_lookedAt);
    const FlightChoice flown = flightOf(m_flowRow);
    m_feed.offer(m_library);
    listGroups();
    int group = 0;
    for (std::size_t i = 0; i < m_groups.size() && !groups.empty(); ++i) {
        const FlightGroup& last = groups[static_cast<std::size_t>(m_group)];
        if (m_groups[i].isScenarios == last.isScenarios &&
            m_groups[i].folder->aircraft->file == last.folder->aircraft->file)
            group = static_cast<int>(i);
    }
    m_group = group;
    listFlights();
    m_flowRow = rowOf(flown);
    Q_EMIT groupChanged();
    Q_EMIT flowChanged();
    const int row = std::max(rowOf(lookedAt), 0);
    look(row); // nothing is shown any more that only the library before has
    Q_EMIT offered(row);
}

int FlyPresenter::rowOf(const FlightChoice& choice) const {
    for (std::size_t row = 0; row < m_flights.size(); ++row)
        if (isSame(m_flights[row], choice))
            return static_cast<int>(row);
    return -1;
}

void FlyPresenter::askHands() {
    std::vector<NoticeRow> rows;
    const ConnectedDevices devices = m_maker.devices();
    m_areControlsConnected = devices.hasControls;
    for (const QString& remark : devices.remarks) {
        NoticeRow row;
        row.rowId = static_cast<int>(rows.size());
        row.words = remark;
        rows.push_back(row);
    }
    m_remarks.setRows(rows);
    Q_EMIT handsChanged();
    setStage(FirstStart);
}

void FlyPresenter::chooseHands(bool hasControls) {
    m_hands = hasControls ? HandsChoice::Rig : HandsChoice::Screen;
    m_isDemonstrationFirst = m_stage == FirstStart && !hasControls && !m_hasLaunched;
    Q_EMIT handsChanged();
    Q_EMIT handsChosen(hasControls);
    setStage(Choosing);
}

void FlyPresenter::chooseGroup(int group) {
    if (group == m_group || group < 0 || group >= m_groupRows.count())
        return;
    m_group = group;
    listFlights();
    Q_EMIT groupChanged();
}

int FlyPresenter::find(const QString& aircraft, const QString& flow) {
    for (std::size_t group = 0; group < m_groups.size(); ++group) {
        if (m_groups[group].isScenarios || m_groups[group].folder->aircraft->folder != aircraft.toStdString())
            continue;
        const std::vector<Flow>& flows = m_groups[group].folder->flows;
        for (std::size_t row = 0; row < flows.size(); ++row)
            if (flows[row].id == flow.toStdString()) {
                chooseGroup(static_cast<int>(group));
                return static_cast<int>(row);
            }
    }
    return -1;
}

void FlyPresenter::listGroups() {
    m_groups = flightGroups(m_library->aircraft);
    m_groupRows.setRows(groupRows(m_groups));
    m_problems.setRows(problemRows(m_library->problems));
}

void FlyPresenter::listFlights() {
    m_flights.clear();
    if (!m_groups.empty())
        m_flights = flightsOf(m_groups[static_cast<std::size_t>(m_group)]);
    std::vector<FlowRow> rows = flowRows(m_flights);
    for (FlowRow& row : rows) {
        const FlightChoice choice = flightOf(row.rowId);
        row.demonstrated = choice.flow != nullptr && m_maker.canDemonstrate(choice);
    }
    m_flows.setRows(rows);
}

FlightChoice FlyPresenter::flightOf(int row) const {
    return row >= 0 && row < static_cast<int>(m_flights.size()) ? m_flights[static_cast<std::size_t>(row)]
                                                                : FlightChoice();
}

void FlyPresenter::look(int row) {
    const FlightChoice choice = flightOf(row);
    m_lookedAt = row;
    if (choice.folder == nullptr) {
        m_start.show({}, {});
        m_briefing.setRows(std::vector<FactRow>());
        m_preview.setRows(std::vector<StepRow>());
        return;
    }
    const Result<PracticeFigures> figures = m_maker.practice(*choice.folder);
    m_start.show(choice, figures ? figures->places : std::vector<StartPlace>());
    m_briefing.setRows(briefingRows(choice, figures ? &*figures : nullptr));
    std::vector<StepRow> rows;
    for (const Flow* flow : flowsOf(choice))
        for (std::size_t step = 0; step < flow->steps.size(); ++step) {
            rows.push_back(stepRow(*flow, {}, {}, static_cast<int>(step)));
            rows.back().rowId = static_cast<int>(rows.size()) - 1;
        }
    m_preview.setRows(rows);
}

void FlyPresenter::startFlow(int row) {
    look(row);
    m_flowRow = row;
    launch(flightOf(row), m_hands);
}

void FlyPresenter::demonstrate(int row) {
    look(row);
    m_flowRow = row;
    launch(flightOf(row), HandsChoice::Demonstration);
}

void FlyPresenter::again() {
    launch(flightOf(m_flowRow), m_hands);
}

void FlyPresenter::launch(FlightChoice choice, HandsChoice hands) {
    if (choice.flow == nullptr)
        return choice.scenario != nullptr ? fail(tr("its first flow is missing or has an error")) : void();
    choice.hands = hands;
    choice.help = hands == HandsChoice::Demonstration ? "guided" : m_help;
    choice.pilot = hands == HandsChoice::Demonstration ? std::string() : m_pilot;
    if (m_delayOf && hands != HandsChoice::Demonstration)
        choice.delayMillis = m_delayOf(hands == HandsChoice::Rig ? m_maker.rigTitle() : QStringLiteral("screen"));
    choice.feed = m_feed.chosen().toStdString();
    m_start.apply(choice);
    // The shipped hands know the first draw; a pilot is to be surprised.
    if (choice.scenario != nullptr && hands != HandsChoice::Demonstration)
        choice.seed = QRandomGenerator::global()->bounded(1U, 1'000'000U);
    m_feed.stop(); // the run listens on the same port
    m_voice.stop();
    m_run.reset();
    auto run = m_maker.make(choice, [this] {
        if (!m_isRefreshQueued.exchange(true))
            QMetaObject::invokeMethod(this, &FlyPresenter::refresh, Qt::QueuedConnection);
    });
    if (!run)
        return fail(QString::fromStdString(describe(run.error())));
    m_failure.clear();
    m_choice = choice;
    const LibraryPtr before = std::exchange(m_flown, m_library); // until nothing is shown of it any more
    m_run = std::move(*run);
    m_hasLaunched = true;
    m_isDemonstrationFirst = false;
    Q_EMIT handsChanged();
    m_runView.forgetNotices();
    m_note.forget();
    showChosen();
    // Hands on hardware stay there: the run begins as soon as the set-up is right.
    if (hands == HandsChoice::Rig)
        begin();
    refresh();
}

void FlyPresenter::fail(const QString& why) {
    m_failure = why;
    m_stage = Choosing;
    Q_EMIT stageChanged();
}

void FlyPresenter::refresh() {
    m_isRefreshQueued = false;
    if (!m_run)
        return;
    const RunSnapshot snapshot = m_run->snapshot();
    showFlow(snapshot.flow);
    m_panel.setValues(snapshot.values);
    m_runView.show(snapshot);
    m_ground.show(snapshot);
    m_voice.show(snapshot);
    if (snapshot.session.phase == SessionPhase::Ended)
        m_debrief.show(*m_choice.flow, m_run->setup(), snapshot, isDemonstration());
    setStage(stageOf(snapshot.session.phase));
}

/// A flight that goes on with another flow shows that one from now on.
void FlyPresenter::showFlow(const Flow* flow) {
    if (flow == nullptr || flow == m_choice.flow)
        return;
    m_choice.flow = flow;
    m_choice.from.clear(); // of the flow before
    showChosen();
}

/// The flow, and the controls that it has to do with; those of a demonstration, or on hardware, are not moved here.
void FlyPresenter::showChosen() {
    const Aircraft* aircraft = m_choice.folder->aircraft.get();
    const SessionSetup setup = m_run->setup();
    m_runView.begin(nullptr, nullptr, {}); // it points to controls that go
    m_panel.setAircraft(aircraft, m_choice.flow);
    for (ControlState* control : m_panel.controls()->all()) {
        const std::size_t index = indexOf(control->id());
        const bool isWired = index < setup.controls.size() && setup.controls[index].isWired;
        control->setMovable(m_choice.hands != HandsChoice::Demonstration && !isWired);
    }
    m_runView.setHelp(helpNamed(m_choice.help));
    m_runView.begin(aircraft, m_choice.flow, setup);
    m_ground.begin(m_run->scene(), *m_choice.flow);
    m_jump.begin(m_choice.flow);
    m_voice.begin(*m_choice.flow, setup);
    Q_EMIT flowChanged();
}

void FlyPresenter::leave() {
    m_voice.stop();
    m_run.reset();
    m_note.forget();
    m_flowRow = -1;
    Q_EMIT flowChanged();
    setStage(Choosing);
}

void FlyPresenter::setStage(Stage stage) {
    if (m_stage == stage)
        return;
    m_stage = stage;
    Q_EMIT stageChanged();
}

QString FlyPresenter::flowTitle() const {
    return m_choice.flow != nullptr ? QString::fromStdString(m_choice.flow->title) : QString();
}

bool FlyPresenter::isWithScenarios() const {
    return !m_groups.empty() && m_groups[static_cast<std::size_t>(m_group)].isScenarios;
}

QString FlyPresenter::flightTitle(int row) const {
    return row >= 0 && row < m_flows.count() ? m_flows.row<FlowRow>(row).title : QString();
}

QString FlyPresenter::scenarioTitle() const {
    return m_choice.scenario != nullptr ? QString::fromStdString(m_choice.scenario->title) : QString();
}

void FlyPresenter::command(CommandKind kind) {
    if (m_run)
        m_run->command(kind, {});
}

void FlyPresenter::begin() {
    if (m_run && !m_choice.from.empty() && m_choice.place.empty())
        m_run->jump(m_choice.from);
    else if (m_run && !m_choice.from.empty())
        m_run->command(CommandKind::Jump, m_choice.from); // the aircraft stands where it was wished
    else
        command(CommandKind::Start);
}

void FlyPresenter::waive() {
    command(CommandKind::Waive);
}

void FlyPresenter::setAll() {
    if (!m_run)
        return;
    for (const SetUpItem& item : m_run->snapshot().session.setUp)
        m_run->moveOnScreen(item.signal, item.wanted);
}

void FlyPresenter::hold() {
    command(CommandKind::Hold);
}

void FlyPresenter::resume() {
    command(CommandKind::Resume);
}

void FlyPresenter::repeat() {
    command(CommandKind::Repeat);
}

void FlyPresenter::stop() {
    m_voice.stop();
    command(CommandKind::Stop);
}

void FlyPresenter::beginNote() {
    if (m_run)
        m_note.begin(m_run->snapshot());
}

void FlyPresenter::openJump() {
    if (m_stage == Running)
        hold();
    m_jump.pick(m_runView.dueIndex());
    m_jump.setOpen(m_stage == Running || m_stage == Held);
}

void FlyPresenter::jumpToPicked() {
    if (m_run && m_jump.isOpen())
        m_run->jump(m_jump.step());
    m_jump.setOpen(false);
}

void FlyPresenter::closeJump() {
    m_jump.setOpen(false);
}

} // namespace flowhand
