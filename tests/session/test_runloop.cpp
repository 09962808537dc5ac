// The run loop over devices in memory and a clock that the test sets: what happens to a run when levers are put right,
// pulled out and plugged in again.

#include <QtTest>

#include "device/fakehid.h"
#include "device/hub.h"
#include "procedure/library.h"
#include "session/keepingrecorder.h"
#include "session/onscreenfacts.h"
#include "session/replay.h"
#include "session/runloop.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

constexpr const char* kFlow = R"(
format = 1
title = "Lights"
phases = ["taxi_out"]
[start]
place = "stand"
[[step]]
id = "light"
title = "Taxi light on"
seat = "captain"
within = "60 s"
done = "taxi_light"
)";

constexpr const char* kRig = R"(
format = 1
title = "One switch"
[[device]]
name = "box"
id = "1209:0001"
[[control]]
name = "Light switch"
signal = "taxi_light"
wiring = "contact"
input = "button 1"
)";

constexpr const char* kGearFlow = R"(
format = 1
title = "Gear"
phases = ["climb"]
[start]
place = "stand"
[start.controls]
gear_lever = "down"
taxi_light = "off"
[[step]]
id = "gear"
title = "Gear lever up"
seat = "first_officer"
done = "gear_lever == up"
[[step]]
id = "light"
title = "Taxi light on, the gear up"
seat = "captain"
within = "60 s"
done = "taxi_light and gear_lever == up"
controls = ["taxi_light"]
)";

/// With the gear lever down the second button is open.
constexpr const char* kGearRig = R"(
[[control]]
name = "Gear lever"
signal = "gear_lever"
wiring = "contact"
input = "button 2"
open = "down"
closed = "up"
)";

constexpr const char* kThrustFlow = R"(
format = 1
title = "Thrust"
phases = ["take_off"]
[start]
place = "line_up"
[[step]]
id = "thrust"
title = "Thrust lever up"
seat = "first_officer"
done = "thrust_lever_1 > 60 %"
[[step]]
id = "light"
title = "Taxi light on"
seat = "captain"
within = "60 s"
done = "taxi_light"
)";

constexpr const char* kThrustRig = R"(
[[control]]
name = "Thrust lever"
signal = "thrust_lever_1"
wiring = "contact"
input = "button 2"
open = "0 %"
closed = "100 %"
)";

/// Eight buttons in one byte.
const std::vector<std::uint8_t> kBox = {0x05, 0x01, 0x09, 0x04, 0xA1, 0x01, 0x05, 0x09, 0x19, 0x01, 0x29, 0x08,
                                        0x15, 0x00, 0x25, 0x01, 0x75, 0x01, 0x95, 0x08, 0x81, 0x02, 0xC0};

constexpr const char* kThree = R"(
format = 1
title = "Three"
phases = ["taxi_out"]
seat = "captain"
[start]
place = "stand"
[start.controls]
taxi_light = "off"
flap_lever = "up"
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "flap"
title = "Flap lever to 4"
done = "flap_lever == 4"
[[step]]
id = "more_flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
[[step]]
id = "gear"
title = "Gear lever down"
done = "gear_lever == down"
)";

/// One switch box, and a run that it flies; with a place to start from the practice aircraft flies too.
struct Box {
    Box(const Aircraft& aircraft, const Flow& flow, const std::string& rig = kRig, const std::string& place = {}) {
        plug();
        Problems problems;
        RunParts parts;
        parts.aircraft = &aircraft;
        parts.flow = &flow;
        parts.rig = Rig::parse(rig, "rig.toml", aircraft.signals, aircraft.controls.size(), problems);
        if (!parts.rig)
            qFatal("%s", describe(problems.firstError()).c_str());
        auto opened = DeviceHub::open(hid, clock, Time{}, parts.rig->devices());
        hub = std::move(*opened);
        parts.devices = hub.get();
        parts.recorder = &memory;
        setup.controls = parts.rig->facts();
        parts.header.setup = setup;
        if (!place.empty())
            parts.practice.emplace(*PracticeAircraft::create(aircraft, place));
        loop.emplace(std::move(parts));
    }
    void plug() { hid.plug(readableUnit("box", "p1", "box"), kBox); }
    void send(std::uint8_t buttons) {
        hid.send("box", {buttons});
        hid.waitUntilRead("box");
    }
    /// Time goes on, a little at a turn, until it is so; false when it is not in the end.
    template <class Wanted>
    bool goOnUntil(Wanted isSo) {
        for (int turn = 0; turn < 2000 && !isSo(); ++turn) {
            clock.set(clock.now() + 20ms);
            hid.pass();
            hub->waitUntil(hub->now() + 5ms); // until the reader rings; a busy machine gives it no turn sooner
            loop->advance(clock.now());
        }
        return isSo();
    }
    /// Until the pilot may move the box, all its buttons open, and the run goes on.
    bool start() {
        if (!goOnUntil([&] {
                return hub->connected(0).has_value();
            }))
            return false;
        send(0);
        loop->command(CommandKind::Start);
        return goOnTo(SessionPhase::Running);
    }
    /// Pulled out, and plugged in again with all its buttons open.
    bool replug() {
        hid.unplug("box");
        if (!goOnTo(SessionPhase::Held))
            return false;
        plug();
        send(0);
        return goOnTo(SessionPhase::Running);
    }
    /// What was sent has been read; nothing else comes meanwhile.
    void goOnFor(Duration duration) {
        clock.set(clock.now() + duration);
        loop->advance(clock.now());
    }
    Value now(SignalId signal) const { return loop->snapshot().values[indexOf(signal)]; }
    bool goOnTo(SessionPhase phase) {
        return goOnUntil([&] {
            return loop->phase() == phase;
        });
    }
    bool isTold(const std::string& words) const {
        for (const Phrase& notice : loop->snapshot().notices)
            if (notice.english().find(words) != std::string::npos)
                return true;
        return false;
    }

    FakeHid hid;
    FakeClock clock;
    KeepingRecorder memory;
    SessionSetup setup;
    std::unique_ptr<DeviceHub> hub;
    std::optional<RunLoop> loop;
};

} // namespace

class TestRunLoop : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void theAircraftStandsUntilTheSetUpIsRight();
    void aLostDeviceHoldsTheRun();
    void whatIsFoundIsNoHandsMovement();
    void theAircraftFollowsTheSignalNotTheLever();
    void thePilotsHoldStays();
    void controlsNotHeardOfAreNamed();
    void aReadingFromThePastComesNow();
    void handsJumpAndSimulatedControlsFollow();
    void suspectedLossesAreTold();

private:
    std::vector<AircraftFolder> m_library;
    std::optional<Flow> m_flow;
    const Aircraft& aircraft() const { return *m_library.front().aircraft; }
};

void TestRunLoop::initTestCase() {
    Problems problems;
    m_library = loadLibrary(PROCEDURES, problems);
    QVERIFY(!m_library.empty());
    m_flow = parseFlow(kFlow, "flow.toml", aircraft(), problems);
    QVERIFY2(m_flow, problems.all().empty() ? "" : describe(problems.all().front().error).c_str());
}

/// Seen: a minute spent on putting levers right was flown by the practice aircraft in one go.
void TestRunLoop::theAircraftStandsUntilTheSetUpIsRight() {
    const auto landing =
        std::find_if(m_library.front().flows.begin(), m_library.front().flows.end(), [](const Flow& flow) {
            return flow.id == "landing_roll";
        });
    QVERIFY(landing != m_library.front().flows.end());
    RunParts parts;
    parts.aircraft = &aircraft();
    parts.flow = &*landing;
    parts.header.setup.controls = onScreenFacts(aircraft());
    Result<PracticeAircraft> practice = PracticeAircraft::create(aircraft(), landing->startPlace);
    QVERIFY(practice);
    parts.practice.emplace(std::move(*practice));
    RunLoop loop(std::move(parts));
    const SignalId flap = *aircraft().signals.find("flap_lever");
    const std::size_t height = indexOf(*aircraft().signals.find("height"));
    const double before = loop.snapshot().values[height].number();
    loop.moveOnScreen(flap, Value::position(0));
    loop.advance(1s);
    loop.command(CommandKind::Start);
    loop.advance(60s);
    QVERIFY(loop.phase() == SessionPhase::SetUp);
    loop.moveOnScreen(flap, *parseValue(aircraft().signals[flap], "34"));
    for (Time time = 60s; loop.phase() == SessionPhase::SetUp && time < 70s; time += 10ms)
        loop.advance(time);
    QVERIFY(loop.phase() == SessionPhase::Running);
    QVERIFY(before - loop.snapshot().values[height].number() < 2.0);
}

void TestRunLoop::aLostDeviceHoldsTheRun() {
    Box box(aircraft(), *m_flow);
    QVERIFY(box.goOnUntil([&] {
        return box.hub->connected(0).has_value();
    }));
    box.send(0);
    box.loop->command(CommandKind::Start);
    QVERIFY(box.goOnTo(SessionPhase::Running));
    box.hid.unplug("box");
    QVERIFY(box.goOnTo(SessionPhase::Held));
    QVERIFY(box.isTold("'box' (1209:0001) was unplugged"));
    QVERIFY(!box.loop->snapshot().values[indexOf(*aircraft().signals.find("taxi_light"))].isKnown());
    box.plug();
    QVERIFY(box.goOnUntil([&] {
        return box.isTold("box is back");
    }));
    box.send(0);
    QVERIFY(box.goOnTo(SessionPhase::Running));
    box.send(1);
    QVERIFY(box.goOnTo(SessionPhase::Ended));
    QVERIFY(box.loop->snapshot().results[0].state == StepState::Done);
}

/// Seen: a lever that the partner had moved up, and that was found down when its device came back, put the gear down.
void TestRunLoop::whatIsFoundIsNoHandsMovement() {
    Problems problems;
    const std::optional<Flow> flow = parseFlow(kGearFlow, "gear.toml", aircraft(), problems);
    QVERIFY2(flow, problems.all().empty() ? "" : describe(problems.firstError()).c_str());
    const SignalId gear = *aircraft().signals.find("gear_lever");
    const Value up = *parseValue(aircraft().signals[gear], "up");
    Box box(aircraft(), *flow, std::string(kRig) + kGearRig);
    QVERIFY(box.start());
    QVERIFY(box.goOnUntil([&] {
        return box.now(gear) == up;
    }));
    QVERIFY(box.replug());
    box.goOnFor(2s);
    QVERIFY(box.now(gear) == up);
    QCOMPARE(box.loop->snapshot().session.toMatch.size(), std::size_t(1));
    QVERIFY(box.loop->snapshot().session.toMatch[0].found == *parseValue(aircraft().signals[gear], "down"));
    box.send(1);
    QVERIFY(box.goOnTo(SessionPhase::Ended));
    QVERIFY(box.loop->snapshot().results[1].state == StepState::Done);
    const JudgedRun again =
        judgeAgain(aircraft(), *flow, box.setup, box.memory.allSamples, box.memory.commands, box.memory.end);
    QVERIFY(again.events == box.memory.allEvents);
}

/// It does not hear a lever while the partner owns its signal, and hears the signal when a hand regains it.
void TestRunLoop::theAircraftFollowsTheSignalNotTheLever() {
    Problems problems;
    const std::optional<Flow> flow = parseFlow(kThrustFlow, "thrust.toml", aircraft(), problems);
    QVERIFY2(flow, problems.all().empty() ? "" : describe(problems.firstError()).c_str());
    const SignalId lever = *aircraft().signals.find("thrust_lever_1");
    const SignalId power = *aircraft().signals.find("engine_power_1");
    Box box(aircraft(), *flow, std::string(kRig) + kThrustRig, "line_up");
    QVERIFY(box.start());
    QVERIFY(box.goOnUntil([&] {
        return box.now(lever).number() > 50.0;
    }));
    QVERIFY(box.replug());
    box.goOnFor(10s);
    const double driven = box.now(power).number();
    QVERIFY2(driven > 50.0, qPrintable(QString::number(driven)));
    box.send(2); // away, and back before it settles
    box.goOnFor(100ms);
    box.send(0);
    box.goOnFor(10s);
    QCOMPARE(box.now(lever).number(), 0.0);
    QVERIFY2(box.now(power).number() < driven - 20.0, qPrintable(QString::number(box.now(power).number())));
}

/// Seen: a device that came back resumed a run that the pilot had held.
void TestRunLoop::thePilotsHoldStays() {
    Box box(aircraft(), *m_flow);
    QVERIFY(box.goOnUntil([&] {
        return box.hub->connected(0).has_value();
    }));
    box.send(0);
    box.loop->command(CommandKind::Start);
    QVERIFY(box.goOnTo(SessionPhase::Running));
    box.loop->command(CommandKind::Hold, "telephone");
    QVERIFY(box.goOnTo(SessionPhase::Held));
    box.hid.unplug("box");
    QVERIFY(box.goOnUntil([&] {
        return box.isTold("'box' (1209:0001) was unplugged");
    }));
    box.plug();
    QVERIFY(box.goOnUntil([&] {
        return box.isTold("box is back");
    }));
    box.send(0);
    const Time until = box.clock.now() + 5s;
    (void)box.goOnUntil([&] {
        return box.clock.now() > until;
    });
    QVERIFY(box.loop->phase() == SessionPhase::Held);
}

void TestRunLoop::controlsNotHeardOfAreNamed() {
    for (const bool hasReported : {false, true}) {
        Box box(aircraft(), *m_flow);
        QVERIFY(box.goOnUntil([&] {
            return box.hub->connected(0).has_value();
        }));
        if (hasReported)
            box.send(0);
        box.clock.set(box.clock.now() + 20ms); // the box's connection, and what it sent, reach the run
        box.loop->advance(box.clock.now());
        box.loop->command(CommandKind::Start);
        QVERIFY(box.goOnTo(SessionPhase::Running));
        QCOMPARE(box.isTold("Not heard of yet: Taxi light. Move each once"), !hasReported);
    }
}

/// A report that is behind what was judged already counts from now, and is counted.
void TestRunLoop::aReadingFromThePastComesNow() {
    Box box(aircraft(), *m_flow);
    QVERIFY(box.goOnUntil([&] {
        return box.hub->connected(0).has_value();
    }));
    box.send(0);
    box.loop->command(CommandKind::Start);
    QVERIFY(box.goOnTo(SessionPhase::Running));
    const Time now = box.clock.now() + 1s;
    box.clock.set(now);
    box.loop->advance(now);
    box.loop->moveOnScreen(*aircraft().signals.find("flap_lever"), Value::position(1));
    box.loop->advance(now + 10ms);
    const std::uint64_t before = box.loop->snapshot().losses.lateChanges;
    box.clock.set(now - 900ms);
    box.send(1);
    box.clock.set(now + 20ms);
    QVERIFY(box.goOnTo(SessionPhase::Ended));
    QCOMPARE(box.loop->snapshot().losses.lateChanges, before + 1);
    QVERIFY(box.loop->snapshot().results[0].done >= now);
}

/// On, over a step whose control the jump puts right by itself, and back again; and all of it is in the record.
void TestRunLoop::handsJumpAndSimulatedControlsFollow() {
    Problems problems;
    const std::optional<Flow> three = parseFlow(kThree, "three.toml", aircraft(), problems);
    QVERIFY(three);
    KeepingRecorder memory;
    RunParts parts;
    parts.aircraft = &aircraft();
    parts.flow = &*three;
    parts.recorder = &memory;
    parts.header.setup.controls = onScreenFacts(aircraft());
    const SessionSetup setup = parts.header.setup;
    parts.hands = Hands::parse("at 2 s: jump to more_flap\ndue more_flap, 1 s later: flap_lever 12\n"
                               "at 8 s: jump to light\ndue light, 1 s later: taxi_light on\n"
                               "due flap, 1 s later: flap_lever 4\ndue more_flap, 1 s later: flap_lever 12\n",
                               "test.hands", aircraft(), *three, problems);
    QVERIFY2(parts.hands, problems.all().empty() ? "" : describe(problems.firstError()).c_str());
    RunLoop loop(std::move(parts));
    loop.command(CommandKind::Start);
    for (Time time{}; time < 20s; time += 10ms)
        loop.advance(time);
    loop.command(CommandKind::Stop);
    loop.advance(21s);
    QVERIFY(loop.isEnded());
    std::string told;
    for (const Event& event : memory.allEvents)
        if (event.kind == EventKind::Jumped || event.kind == EventKind::StepDone || event.kind == EventKind::StepVoid)
            told +=
                std::string(nameOf(event.kind)) + " " + three->steps[static_cast<std::size_t>(event.step)].id + ", ";
    QCOMPARE(QString::fromStdString(told),
             QString("jumped more_flap, step-void light, step-void flap, step-done more_flap, "
                     "jumped light, step-done light, step-done flap, step-done more_flap, "));
    const JudgedRun again = judgeAgain(aircraft(), *three, setup, memory.allSamples, memory.commands, memory.end);
    QCOMPARE(again.events.size(), memory.allEvents.size());
    QVERIFY(again.events == memory.allEvents);
}

/// The kernel keeps 63 reports while nobody reads and drops the rest; the run says how many.
void TestRunLoop::suspectedLossesAreTold() {
    Box box(aircraft(), *m_flow);
    QVERIFY(box.goOnUntil([&] {
        return box.hub->connected(0).has_value();
    }));
    const auto sendAfter = [&](Duration pause, std::size_t count) {
        box.clock.set(box.clock.now() + pause);
        box.hid.sendAll("box", std::vector<std::vector<std::uint8_t>>(count, {0}));
        box.hid.waitUntilRead("box");
    };
    for (int report = 0; report < 600; ++report)
        sendAfter(1ms, 1);
    QVERIFY(box.loop->snapshot().losses == RunLosses());
    sendAfter(100ms, 63);
    sendAfter(1ms, 1);
    QVERIFY(box.goOnUntil([&] {
        return box.isTold("may have lost reports");
    }));
    QVERIFY(box.loop->snapshot().losses.devices == (std::vector<DeviceLosses>{{"box", 37, 0}}));
}

QTEST_GUILESS_MAIN(TestRunLoop)
#include "test_runloop.moc"
