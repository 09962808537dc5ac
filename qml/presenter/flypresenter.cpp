#include "presenter/flypresenter.h"

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

/// By the row among all flows and scenarios of all aircraft: of each aircraft its flows, then its scenarios.
FlightChoice choiceFor(const std::vector<AircraftFolder>& library, int row) {
    for (const AircraftFolder& folder : library) {
        const auto count = static_cast<int>(folder.flows.size());
        if (row < count)
            return {&folder, &folder.flows[static_cast<std::size_t>(row)], nullptr, {}, HandsChoice::Screen};
        row -= count;
        const auto scenarios = static_cast<int>(folder.scenarios.size());
        if (row < scenarios) {
            const Scenario& scenario = folder.scenarios[static_cast<std::size_t>(row)];
            return {&folder, folder.flow(scenario.flows.front()), &scenario, {}, HandsChoice::Screen};
        }
        row -= scenarios;
    }
    return {};
}

/// All that are flown when nothing leads elsewhere, in their order.
std::vector<const Flow*> flowsOf(const FlightChoice& choice) {
    std::vector<const Flow*> flows;
    if (choice.scenario != nullptr)
        for (const std::string& name : choice.scenario->flows)
            flows.push_back(choice.folder->flow(name));
    else
        flows.push_back(choice.flow);
    std::erase(flows, nullptr);
    return flows;
}

} // namespace

FlyPresenter::FlyPresenter(const std::vector<AircraftFolder>& library, const Problems& problems, RunMaker& maker,
                           QObject* parent)
    : QObject(parent), m_library(library), m_maker(maker), m_phases(PhaseRow::staticMetaObject, this),
      m_flows(FlowRow::staticMetaObject, this), m_preview(StepRow::staticMetaObject, this),
      m_problems(NoticeRow::staticMetaObject, this), m_remarks(NoticeRow::staticMetaObject, this),
      m_panel(
          [this](SignalId signal, Value value) {
              if (m_run)
                  m_run->moveOnScreen(signal, value);
          },
          this),
      m_feed(library, this), m_runView(*m_panel.controls(), this), m_debrief(this) {
    m_phases.setRows(phaseRows());
    std::vector<FlowRow> rows = flowRows(library);
    for (FlowRow& row : rows) {
        const FlightChoice choice = choiceFor(library, row.rowId);
        row.demonstrated = choice.flow != nullptr && maker.canDemonstrate(choice);
    }
    m_flows.setRows(rows);
    m_problems.setRows(problemRows(problems));
}

FlyPresenter::~FlyPresenter() {
    m_run.reset();
}

void FlyPresenter::askHands() {
    std::vector<NoticeRow> rows;
    for (const QString& remark : m_maker.deviceRemarks()) {
        NoticeRow row;
        row.rowId = static_cast<int>(rows.size());
        row.words = remark;
        rows.push_back(row);
    }
    m_remarks.setRows(rows);
    setStage(FirstStart);
}

void FlyPresenter::chooseHands(bool hasControls) {
    m_hands = hasControls ? HandsChoice::Rig : HandsChoice::Screen;
    Q_EMIT handsChanged();
    Q_EMIT handsChosen(hasControls);
    setStage(Choosing);
}

void FlyPresenter::look(int row) {
    const FlightChoice choice = choiceFor(m_library, row);
    std::vector<StepRow> rows;
    for (const Flow* flow : flowsOf(choice))
        for (std::size_t step = 0; step < flow->steps.size(); ++step) {
            rows.push_back(stepRow(*flow, {}, {}, static_cast<int>(step)));
            rows.back().rowId = static_cast<int>(rows.size()) - 1;
        }
    m_preview.setRows(rows);
}

void FlyPresenter::startFlow(int row) {
    launch(row, m_hands);
}

void FlyPresenter::demonstrate(int row) {
    launch(row, HandsChoice::Demonstration);
}

void FlyPresenter::again() {
    launch(m_flowRow, m_hands);
}

void FlyPresenter::launch(int row, HandsChoice hands) {
    FlightChoice choice = choiceFor(m_library, row);
    if (choice.flow == nullptr)
        return;
    choice.hands = hands;
    choice.feed = m_feed.chosen().toStdString();
    m_feed.stop(); // the run listens on the same port
    m_run.reset();
    auto run = m_maker.make(choice, [this] {
        if (!m_isRefreshQueued.exchange(true))
            QMetaObject::invokeMethod(this, &FlyPresenter::refresh, Qt::QueuedConnection);
    });
    m_failure = run ? QString() : QString::fromStdString(describe(run.error()));
    if (!run) {
        m_stage = Choosing;
        Q_EMIT stageChanged();
        return;
    }
    m_choice = choice;
    m_flowRow = row;
    m_run = std::move(*run);
    showChosen();
    // Hands on hardware stay there: the run begins as soon as the set-up is right.
    if (hands == HandsChoice::Rig)
        command(CommandKind::Start);
    refresh();
}

void FlyPresenter::refresh() {
    m_isRefreshQueued = false;
    if (!m_run)
        return;
    const RunSnapshot snapshot = m_run->snapshot();
    showFlow(snapshot.flow);
    m_panel.setValues(snapshot.values);
    m_runView.show(snapshot);
    if (snapshot.session.phase == SessionPhase::Ended)
        m_debrief.show(*m_choice.flow, m_run->setup(), snapshot);
    setStage(stageOf(snapshot.session.phase));
}

/// A flight that goes on with another flow shows that one from now on.
void FlyPresenter::showFlow(const Flow* flow) {
    if (flow == nullptr || flow == m_choice.flow)
        return;
    m_choice.flow = flow;
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
    m_runView.begin(aircraft, m_choice.flow, setup);
    Q_EMIT flowChanged();
}

void FlyPresenter::leave() {
    m_run.reset();
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

void FlyPresenter::command(CommandKind kind) {
    if (m_run)
        m_run->command(kind, {});
}

void FlyPresenter::begin() {
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
    command(CommandKind::Stop);
}

} // namespace flowhand
