#include "stubrun.h"

#include <QQmlComponent>

#include "presenter/settingslinks.h"
#include "stubcockpit.h"

namespace flowhand::test {

namespace {

using namespace std::chrono_literals;

class StubHandle final : public RunHandle {
public:
    StubHandle(const RunSnapshot& snapshot, std::shared_ptr<Told> told)
        : m_snapshot(snapshot), m_told(std::move(told)) {}

    void command(CommandKind kind, const std::string& text) override {
        m_told->commands.push_back(kind);
        m_told->texts.push_back(text);
    }
    void jump(const std::string& step) override { command(CommandKind::Jump, step); }
    void moveOnScreen(SignalId signal, Value value) override { m_told->moves.emplace_back(signal, value); }
    RunSnapshot snapshot() const override { return m_snapshot; }
    SessionSetup setup() const override { return {}; }
    std::shared_ptr<const GroundScene> scene() const override {
        return std::make_shared<const GroundScene>(stubGround());
    }

private:
    const RunSnapshot& m_snapshot;
    std::shared_ptr<Told> m_told;
};

StepView closed(StepState state, Time due, Time done, Phrase verdict, bool isLate = false) {
    StepView view;
    view.state = state;
    view.due = due;
    view.done = done;
    view.isLate = isLate;
    view.verdict = std::move(verdict);
    return view;
}

/// A step that has been due for 2.4 s.
StepView dueView(Time now) {
    StepView view;
    view.state = StepState::Due;
    view.due = now - 2400ms;
    return view;
}

void tellDevices(Voice& voice) {
    SoundDevice speakers;
    speakers.id = "alsa_output.pci";
    speakers.name = "Built-in Audio Analog Stereo";
    SoundDevice headset;
    headset.id = "alsa_output.usb";
    headset.name = "USB Headset";
    Q_EMIT voice.devicesFound({speakers, headset});
}

} // namespace

QObject* tokensOf(QQmlEngine& engine) {
    QQmlComponent component(&engine);
    component.setData("import QtQml; import Flowhand; QtObject { property QtObject tokens: Tokens }", {});
    const std::unique_ptr<QObject> object(component.create());
    return object->property("tokens").value<QObject*>();
}

Result<std::unique_ptr<RunHandle>> StubMaker::make(const FlightChoice& choice, std::function<void()>) {
    last = choice;
    if (!refusal.empty())
        return failure("no-rig", refusal);
    return std::make_unique<StubHandle>(snapshot, told);
}

Result<PracticeFigures> StubMaker::practice(const AircraftFolder&) const {
    return stubPractice();
}

QStringList Stage::names() {
    return StubBenchMaker::names() + StubShelf::names() + StubShelf::progressNames() + StubDesk::names() +
           QStringList{"first-start",
                       "first-start-with-rig",
                       "first-start-without",
                       "first-choosing",
                       "choosing",
                       "no-flows",
                       "refused",
                       "set-up",
                       "set-up-rig",
                       "set-up-ready",
                       "due-switch",
                       "due-gate",
                       "due-levers",
                       "due-reply",
                       "due-dial",
                       "due-wheel",
                       "due-pedals",
                       "due-partner",
                       "unknown",
                       "between",
                       "verdict",
                       "nothing-due",
                       "guards",
                       "held",
                       "device-lost",
                       "long-names",
                       "passed",
                       "not-passed",
                       "not-scored",
                       "demonstration",
                       "ended-long-names",
                       "choosing-feed",
                       "due-feed",
                       "choosing-many",
                       "choosing-scenario",
                       "choosing-start",
                       "long-choosing-scenario",
                       "set-up-scenario",
                       "set-up-feed",
                       "feed-lost",
                       "taxiing",
                       "jumping",
                       "taxiing-with-rig",
                       "slow",
                       "noting",
                       "noting-unstored",
                       "flight-over",
                       "no-sound",
                       "due-prompted",
                       "due-memory",
                       "partner-memory",
                       "settings",
                       "settings-sound",
                       "settings-flying",
                       "settings-pilots",
                       "settings-keys",
                       "settings-data"};
}

void Stage::fill(QQuickView& view) {
    view.setResizeMode(QQuickView::SizeRootObjectToView);
    view.setInitialProperties({{"fly", QVariant::fromValue(&fly())},
                               {"bench", QVariant::fromValue(&bench())},
                               {"review", QVariant::fromValue(&review())},
                               {"progress", QVariant::fromValue(&progress())},
                               {"library", QVariant::fromValue(&library())},
                               {"manual", QVariant::fromValue(&manual())},
                               {"sound", QVariant::fromValue(&sound())},
                               {"settings", QVariant::fromValue(&settings())},
                               {"place", place()}});
    view.setSource(QUrl("qrc:/qt-project.org/imports/Flowhand/shell/Shell.qml"));
}

std::vector<int> Stage::keys() const {
    if (m_name.startsWith("review"))
        return StubShelf::keysFor(m_name);
    if (m_name.startsWith("noting"))
        return {Qt::Key_F10};
    static const QStringList sections = {"settings",        "settings-sound", "settings-flying",
                                         "settings-pilots", "settings-keys",  "settings-data"};
    if (sections.contains(m_name)) {
        std::vector<int> keys(static_cast<std::size_t>(sections.indexOf(m_name)) + 1, Qt::Key_PageDown);
        keys.front() = Qt::Key_F12;
        return keys;
    }
    if (m_name == "progress-mixed")
        return {Qt::Key_M};
    if (m_name == "progress-chosen")
        return {Qt::Key_Down};
    if (m_name == "bench-ways")
        return {Qt::Key_O, Qt::Key_Down};
    if (m_name == "bench-zones")
        return {Qt::Key_O, Qt::Key_Down, Qt::Key_Down, Qt::Key_Down, Qt::Key_Down};
    if (m_name == "bench-values")
        return {Qt::Key_V};
    if (m_name == "bench-tolerances")
        return {Qt::Key_T};
    if (m_name == "bench-keys")
        return {Qt::Key_F1};
    if (m_name == "bench-gates")
        return {Qt::Key_Down, Qt::Key_Down, Qt::Key_Down, Qt::Key_Down, Qt::Key_S};
    return {};
}

Stage::Stage(const QString& name) : m_name(name) {
    std::vector<AircraftFolder>& library = m_library->aircraft;
    if (name.startsWith("progress")) {
        // The sample runs are of the shipped aircraft.
        library.push_back(std::move(*loadAircraftFolder(PROCEDURES "/twin_jet", m_library->problems)));
    } else if (name == "choosing-many") {
        for (int count = 0; count < 3; ++count)
            library.push_back(withScenarios(stubFolder()));
        std::vector<Flow>& flows = library.front().flows;
        for (int copy = 0; copy < 12; ++copy)
            flows.push_back(Flow(flows[static_cast<std::size_t>(copy)]));
    } else if (name.contains("scenario") || name == "flight-over")
        library.push_back(withScenarios(name.contains("long") ? stubFolderWithLongNames() : stubFolder()));
    else if (name != "no-flows")
        library.push_back(name.contains("long") ? stubFolderWithLongNames() : stubFolder());
    if (name == "no-flows")
        m_library->problems.error("bad-toml", "the table is not closed; write ']' after its name",
                                  {"procedures/twin_jet/taxi_out.toml", 12, 4});
    if (name.contains("rig") || name == "device-lost")
        m_maker.rig = "Desk quadrant and pedals";
    if (name.startsWith("first"))
        m_maker.connected = {
            true,
            {"“USB quadrant” is connected and can be read.",
             "“USB pedals” is connected but may not be read: install the udev rule that Flowhand ships."}};
    if (name == "first-start-without")
        m_maker.connected = {false, {"No lever, pedal or switch unit is connected now."}};
    m_sound.start();
    m_fly = std::make_unique<FlyPresenter>(m_library, m_maker, m_sound);
    linkSettings(m_settings, *m_fly);
    m_fly->note()->setShelf(&m_shelf);
    m_review.setSampleFolder(ASSETS "/runs");
    m_place = name.startsWith("bench")      ? 1
              : name.startsWith("review")   ? 2
              : name.startsWith("progress") ? 3
              : name.startsWith("library")  ? 4
              : name.startsWith("manual")   ? 5
                                            : 0;
    if (m_place == 4)
        m_benchMaker.title.clear(); // steps are acted out on the screen
    m_libraryPlace = std::make_unique<LibraryPresenter>(m_desk, m_files, m_benchMaker);
    m_progress = std::make_unique<ProgressPresenter>(m_shelf, m_shelf.file(), m_library, [] {
        return StubShelf::kNow;
    });
    if (!library.empty())
        m_benchMaker.show(m_place == 1               ? name
                          : name.startsWith("first") ? QStringLiteral("bench-new-rig")
                                                     : QStringLiteral("bench"),
                          library.front());
    if (m_place == 0)
        build(name);
    if (m_place == 2)
        showReview();
    if (m_place == 4)
        m_desk.show(name, *m_libraryPlace);
    if (m_place == 3)
        m_shelf.fillProgress(name);
}

void Stage::showReview() {
    const std::int64_t shown = m_shelf.fill(m_name);
    m_review.enter();
    if (m_name == "review-deleted")
        return m_review.toggleDeleted();
    if (shown != 0)
        m_review.openRun(static_cast<int>(shown));
}

void Stage::build(const QString& name) {
    static const std::map<QString, int> due = {{"due-switch", 0}, {"due-gate", 1},    {"due-levers", 2},
                                               {"due-reply", 3},  {"due-dial", 4},    {"due-wheel", 5},
                                               {"due-pedals", 6}, {"due-partner", 7}, {"partner-memory", 7}};
    if (name.endsWith("prompted"))
        m_settings.setHelp("prompted");
    if (name.endsWith("memory"))
        m_settings.setHelp("from memory");
    if (name.startsWith("first"))
        m_fly->askHands();
    if (name == "first-choosing")
        m_fly->chooseHands(false);
    if (name.startsWith("first"))
        return;
    if (name == "no-sound")
        Q_EMIT m_sound.voice().unheard(QStringLiteral("Nothing is spoken: no sound server answers. What would be said "
                                                      "is on the screen. Once one runs, turn the sound off and on "
                                                      "again."));
    if (name == "settings-pilots") {
        m_settings.addPilot("Anna");
        m_settings.addPilot("Carl Friedrich von und zu Beispielhausen");
    }
    if (name == "settings-sound") {
        m_settings.setSoundDevice("alsa_output.bluez");
        tellDevices(m_sound.voice());
        Q_EMIT m_sound.voice().voicesFound({"English (Great Britain)", "English (Scotland)", "English (America)"});
    }
    if (name.startsWith("settings") || name == "choosing" || name == "choosing-many" || name == "no-flows")
        return;
    if (name.endsWith("scenario"))
        m_fly->chooseGroup(1);
    if (name.endsWith("choosing-scenario"))
        return m_fly->look(0);
    if (name == "choosing-start") {
        m_fly->look(0);
        m_fly->start()->pickPlace(4);
        m_fly->start()->pickStep(3);
        m_fly->start()->pickPace(1);
        return m_fly->start()->setEditing(true);
    }
    if (name == "set-up-feed" || name == "feed-lost")
        return fed(name);
    if (name == "flight-over")
        return flightOver();
    if (name == "choosing-feed") {
        m_fly->feed()->choose("json:49100");
        m_fly->feed()->setEditing(true);
        return m_fly->feed()->choose("jsn:49100");
    }
    if (name == "refused") {
        m_maker.refusal = "the control 'flap_lever' is wired twice; remove one of the two";
        return m_fly->startFlow(0);
    }
    if (name.endsWith("rig") || name == "device-lost")
        m_fly->chooseHands(true);
    if (name.startsWith("set-up"))
        return setUp(name == "set-up-ready" || name == "set-up-scenario");
    if (name == "held" || name == "device-lost" || name == "jumping")
        held();
    if (name == "jumping")
        m_fly->openJump();
    if (m_fly->stage() == FlyPresenter::Held)
        return;
    if (name.endsWith("passed") || name == "not-scored" || name.startsWith("ended") || name == "demonstration")
        ended(name == "passed" || name == "demonstration");
    else
        running(due.count(name) > 0 ? due.at(name) : 1);
    RunSnapshot& snapshot = m_maker.snapshot;
    if (name == "noting") {
        snapshot.runId = 12;
        snapshot.flow = &flow();
    }
    if (name == "taxiing" || name == "taxiing-with-rig" || name == "slow")
        snapshot.ground = stubPosition();
    if (name == "slow") {
        m_fly->look(0);
        m_fly->start()->pickPace(1);
    }
    if (name == "not-scored")
        snapshot.score = Score();
    if (name == "unknown")
        setValue(snapshot.values, aircraft(), "flap_lever", Value::unknown());
    if (name == "between")
        setValue(snapshot.values, aircraft(), "flap_lever", Value::between());
    if (name == "guards" || name == "long-names")
        snapshot.session.brokenGuards = {0, 1}, snapshot.session.openGuards = {1};
    if (name == "due-reply") {
        snapshot.session.saying = "Eighty knots";
        snapshot.session.sayingBy = "first_officer";
    }
    if (name == "due-feed") {
        snapshot.feed = "JSON lines on UDP 127.0.0.1:49100";
        snapshot.feedStatus.isHeard = true;
        snapshot.feedStatus.rate = 20.0;
        snapshot.feedStatus.own = 312s;
        snapshot.feedStatus.delay = 4ms;
        snapshot.feedStatus.silent = 50ms;
        snapshot.feedStatus.tally.malformed = 3;
    }
    if (name == "nothing-due") {
        snapshot.session.due.clear();
        snapshot.session.steps[1].state = StepState::Waiting;
    }
    if (name == "demonstration")
        return m_fly->demonstrate(0);
    m_fly->startFlow(0);
    if (name == "verdict") {
        snapshot.session.steps[1] = closed(StepState::Done, 60s, 64500ms, phrase("done, {1} late").with("0.5 s"), true);
        snapshot.session.steps[2] = dueView(snapshot.session.time);
        snapshot.session.due = {2};
        m_fly->refresh();
    }
}

/// By a feed that does not say all, before the start; or one that has fallen silent.
void Stage::fed(const QString& name) {
    RunSnapshot& snapshot = m_maker.snapshot;
    m_fly->feed()->choose("json:49100");
    if (name == "feed-lost")
        running(1);
    snapshot.feed = m_fly->feed()->title().toStdString();
    snapshot.notices = {phrase("{1} is heard.").with(snapshot.feed),
                        phrase("Nothing tells: {1}.").with("Airspeed, Height"),
                        phrase("{1} of {2} steps cannot be judged without that and are left out: {3}.")
                            .with("3", "8", "Thrust levers to take-off thrust; Answer the speed call; Gear lever up"),
                        phrase("Not watched without that: {1}.").with("Tiller deflected above 80 kt")};
    snapshot.feedStatus.isHeard = name == "set-up-feed";
    snapshot.feedStatus.rate = 20.0;
    snapshot.feedStatus.silent = name == "set-up-feed" ? Duration(50ms) : Duration(7s);
    if (name == "set-up-feed")
        return setUp(true);
    snapshot.session.phase = SessionPhase::Held;
    snapshot.session.holdReason =
        phrase("{1} is silent. The run goes on by itself when it speaks again").with(snapshot.feed);
    snapshot.notices.push_back(phrase("{1} has fallen silent.").with(snapshot.feed));
    m_fly->startFlow(0);
}

/// A scenario of two flows; the first was left by an outcome.
void Stage::flightOver() {
    m_fly->chooseGroup(1);
    ended(true);
    RunSnapshot& snapshot = m_maker.snapshot;
    auto before = std::make_shared<RunSnapshot>(snapshot);
    before->flow = &m_library->aircraft.front().flows[1];
    before->runId = 11;
    before->score.isPassed = false;
    before->score.milliPoints = before->score.upperMilliPoints = 71'500;
    before->score.whyNotPassed =
        phrase("a critical step was not surely done: {1}").with("Thrust levers to take-off thrust");
    before->happened = {{41'300ms, "Engine 2 fails, before V1"}};
    snapshot.before = {before};
    m_fly->startFlow(0);
}

void Stage::setUp(bool isReady) {
    RunSnapshot& snapshot = m_maker.snapshot;
    snapshot.session.phase = SessionPhase::SetUp;
    snapshot.session.steps.resize(flow().steps.size());
    snapshot.values = stubValues(aircraft(), 0);
    const auto want = [&](const char* name, Value wanted, Value found) {
        const std::optional<SignalId> id = aircraft().signals.find(name);
        snapshot.session.setUp.push_back({*id, wanted, found});
        snapshot.values[indexOf(*id)] = found;
    };
    if (!isReady) {
        want("flap_lever", Value::position(0), Value::position(2));
        want("parking_brake", Value::onOff(true), Value::onOff(false));
        want("thrust_lever_1", Value::number(0), Value::unknown());
        want("autobrake", Value::position(4), Value::position(0));
    }
    m_fly->startFlow(0);
}

void Stage::running(int due) {
    RunSnapshot& snapshot = m_maker.snapshot;
    snapshot.session.phase = SessionPhase::Running;
    snapshot.session.time = 67s;
    snapshot.values = stubValues(aircraft(), 17.6);
    setValue(snapshot.values, aircraft(), "flap_lever", Value::position(1));
    setValue(snapshot.values, aircraft(), "thrust_lever_1", Value::number(43));
    setValue(snapshot.values, aircraft(), "thrust_lever_2", Value::number(46));
    setValue(snapshot.values, aircraft(), "tiller", Value::number(-22));
    setValue(snapshot.values, aircraft(), "pitch_trim", Value::number(1.5));
    std::vector<StepView>& steps = snapshot.session.steps;
    steps.resize(flow().steps.size());
    const std::vector<StepView> over = {
        closed(StepState::Done, 5s, 6200ms, phrase("done")),
        closed(StepState::Done, 12s, 18500ms, phrase("done, {1} late").with("2.5 s"), true),
        closed(StepState::Omitted, 20s, kForever, phrase("not done")),
        closed(StepState::FoundSet, 31s, 31s, phrase("found set")),
        closed(StepState::TooEarly, 44s, 40s, phrase("too early")),
        closed(StepState::Uncertain, 50s, 52s, phrase("uncertain: too close to the noise of the control")),
        closed(StepState::LeftOut, kForever, kForever,
               phrase("left out: {1}").with(phrase("this rig has no {1}").with("Autobrake")))};
    for (int step = 0; step < due; ++step)
        steps[static_cast<std::size_t>(step)] = over[static_cast<std::size_t>(step)];
    steps[static_cast<std::size_t>(due)] = dueView(snapshot.session.time);
    snapshot.session.due = {due};
}

void Stage::held() {
    running(1);
    RunSnapshot& snapshot = m_maker.snapshot;
    snapshot.session.phase = SessionPhase::Held;
    if (m_fly->isWithRig()) {
        snapshot.session.holdReason =
            phrase("{1} is lost. Plug it in again; the run goes on by itself").with("USB quadrant");
        snapshot.notices = {phrase("{1} was unplugged: plug it in again").with("'USB quadrant' (1209:0001)")};
    }
    m_fly->startFlow(0);
}

void Stage::ended(bool isPassed) {
    running(7);
    RunSnapshot& snapshot = m_maker.snapshot;
    snapshot.session.phase = SessionPhase::Ended;
    snapshot.session.due.clear();
    snapshot.session.steps[7] = closed(StepState::Void, kForever, kForever, phrase("no longer called for"));
    snapshot.runId = 12;
    Score& score = snapshot.score;
    score.isScored = true;
    score.weight = 14;
    score.pace = 72400ms;
    score.isPassed = isPassed;
    score.milliPoints = isPassed ? 97'143 : 66'072;
    score.upperMilliPoints = isPassed ? 97'143 : 73'215;
    score.ledger = {{2'857, 1, -1, LossKind::Late,
                     phrase("{1}: {2} late ({3}, within {4})").with("Flap lever to 12", "2.5 s", "6.5 s", "4.0 s")}};
    if (!isPassed) {
        score.whyNotPassed =
            phrase("a critical step was not surely done: {1}").with("Thrust levers to take-off thrust");
        score.ledger.push_back(
            {21'428, 2, -1, LossKind::NotDone, phrase("{1}: not done").with("Thrust levers to take-off thrust")});
        score.ledger.push_back(
            {2'857, 4, -1, LossKind::TooEarly, phrase("{1}: done too early").with("Automatic brake to medium")});
        score.ledger.push_back(
            {6'786, -1, 0, LossKind::GuardBroken, phrase("guard broken: {1}").with("Tiller deflected above 80 kt")});
    }
}

} // namespace flowhand::test
