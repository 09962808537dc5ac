// The workbench as a window uses it: over devices in memory, in real time, without a window.

#include <chrono>
#include <functional>
#include <thread>

#include <QFile>
#include <QTemporaryDir>
#include <QtTest>

#include "base/valuewords.h"
#include "bench/filterchange.h"
#include "bench/stepdemand.h"
#include "bench/workbench.h"
#include "device/fakehid.h"
#include "device/hidtext.h"
#include "procedure/library.h"

using namespace flowhand;

namespace {

/// Two axes of 8 bits, without ids.
constexpr const char* kTwoAxes = "05 01 09 04 A1 01 09 30 09 31 15 00 26 FF 00 75 08 95 02 81 02 C0";

constexpr const char* kRig = R"(format = 1
title = "Desk"

[[device]]
name = "quadrant"
id = "1209:0001"

[[control]]
name = "left lever"
wiring = "axis"
signal = "thrust_lever_1"
input = "quadrant: X"
range = [0, 255]
)";

/// A lever with two gates on X.
constexpr const char* kGates = R"(format = 1
title = "Desk"

[[device]]
name = "quadrant"
id = "1209:0001"

[[control]]
wiring = "gates"
signal = "gear_lever"
input = "quadrant: X"
gates = [
    { position = "up", at = 200, band = 10 },
    { position = "down", at = 40, band = 12 },
]
hysteresis = 3
)";

/// One bench with its rig file; `wait` gives up after 20 s, then the test has failed.
class Bench {
public:
    explicit Bench(const char* rigText) : m_library(loadLibrary(PROCEDURES, m_problems)) {
        rigFile = m_folder.filePath("rig.toml").toStdString();
        if (rigText != nullptr) {
            QFile file(QString::fromStdString(rigFile));
            file.open(QIODevice::WriteOnly);
            file.write(rigText);
        }
        for (const Flow& flow : m_library.front().flows)
            m_flows.push_back(&flow);
    }

    Result<std::unique_ptr<Workbench>> open() {
        return Workbench::open({aircraft(), m_flows, rigFile, hid, m_clock}, [] {});
    }

    [[nodiscard]] const Aircraft& aircraft() const { return *m_library.front().aircraft; }
    [[nodiscard]] SignalId signal(const char* name) const { return *aircraft().signals.find(name); }

    static bool wait(const std::function<bool()>& isThere) {
        const auto giveUp = std::chrono::steady_clock::now() + std::chrono::seconds(20);
        while (!isThere()) {
            if (std::chrono::steady_clock::now() > giveUp)
                return false;
            std::this_thread::yield();
        }
        return true;
    }

    FakeHid hid;
    std::string rigFile;

private:
    QTemporaryDir m_folder;
    Problems m_problems;
    std::vector<AircraftFolder> m_library;
    std::vector<const Flow*> m_flows;
    SteadyClock m_clock;
};

} // namespace

class TestWorkbench : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void showsWhereControlsStand();
    void aMissingRigIsANewOne();
    void aBrokenRigIsRefused();
    void devicesMayComeLater();
    void aWalkConfirmsAndIsKept();
    void tasksNeedADevice();
    void aTaskIsGivenUp();
    void wishesAreChecked_data();
    void wishesAreChecked();
    void whatIsWiredTwiceIsAsked();
    void aLeverWithGatesShowsItsTravel();
    void tolerancesAreKeptInTheRigFile();
    void filtersAreShownAndTakenBack();
};

void TestWorkbench::showsWhereControlsStand() {
    Bench bench(kRig);
    bench.hid.plug(quadrantInfo(), bytesOf(kTwoAxes));
    const auto opened = bench.open();
    QVERIFY2(opened, opened ? "" : opened.error().message.c_str());
    Workbench& top = **opened;
    const SignalId lever = bench.signal("thrust_lever_1");
    top.watch(lever);
    QVERIFY(Bench::wait([&] {
        return !top.snapshot().devices.empty() && top.snapshot().devices.front().isConnected;
    }));
    bench.hid.send("q", {0, 0});
    bench.hid.send("q", {255, 0});
    QVERIFY(Bench::wait([&] {
        return top.snapshot().values[indexOf(lever)] == Value::number(100.0);
    }));
    QVERIFY(top.snapshot().stirring[indexOf(lever)]);
    const std::vector<BenchPoint> trace = top.takeTrace();
    QVERIFY(!trace.empty());
    QVERIFY(trace.back().value == 100.0);
    QVERIFY(top.takeTrace().empty());
    const CoveredControl& covered = top.snapshot().coverage->controls[indexOf(lever)];
    QCOMPARE(covered.inputs, std::string("quadrant: X"));
}

void TestWorkbench::aMissingRigIsANewOne() {
    Bench bench(nullptr);
    const auto opened = bench.open();
    QVERIFY2(opened, opened ? "" : opened.error().message.c_str());
    const BenchSnapshot snapshot = (*opened)->snapshot();
    QVERIFY(snapshot.rigTitle.english().find("New rig") == 0);
    for (const CoveredControl& control : snapshot.coverage->controls)
        QVERIFY(control.proof == Proof::Unwired);
    QVERIFY(!snapshot.coverage->isComplete());
}

void TestWorkbench::aBrokenRigIsRefused() {
    Bench bench("format = 1\ntitle = \"Desk\"\n[[control]]\nname = 3\n");
    const auto opened = bench.open();
    QVERIFY(!opened);
    QCOMPARE(opened.error().place.file, bench.rigFile);
    QVERIFY(opened.error().place.line > 0);
}

void TestWorkbench::devicesMayComeLater() {
    Bench bench(kRig);
    const auto opened = bench.open();
    QVERIFY(opened);
    QVERIFY((*opened)->snapshot().devices.empty());
    bench.hid.plug(quadrantInfo(), bytesOf(kTwoAxes));
    QVERIFY(Bench::wait([&] {
        const BenchSnapshot snapshot = (*opened)->snapshot();
        return !snapshot.devices.empty() && snapshot.devices.front().isConnected;
    }));
}

void TestWorkbench::aWalkConfirmsAndIsKept() {
    Bench bench(kRig);
    bench.hid.plug(quadrantInfo(), bytesOf(kTwoAxes));
    const auto opened = bench.open();
    QVERIFY(opened);
    Workbench& top = **opened;
    QVERIFY(Bench::wait([&] {
        return !top.snapshot().devices.empty() && top.snapshot().devices.front().isConnected;
    }));
    top.begin({BenchTask::Walk, kNoSignal});
    QVERIFY(Bench::wait([&] {
        return top.snapshot().task.task == BenchTask::Walk;
    }));
    QVERIFY(top.snapshot().task.ask.english().find("left lever") != std::string::npos ||
            top.snapshot().task.ask.english().find("Thrust") != std::string::npos);
    for (int at = 0; at <= 255; ++at)
        bench.hid.send("q", {static_cast<std::uint8_t>(at), 0});
    const auto heldSince = std::chrono::steady_clock::now();
    // Both ends are held for longer than it takes to count as standing still.
    QVERIFY(Bench::wait([&] {
        return std::chrono::steady_clock::now() - heldSince > std::chrono::milliseconds(700);
    }));
    bench.hid.send("q", {0, 0});
    QVERIFY(Bench::wait([&] {
        return top.snapshot().task.isOver;
    }));
    QVERIFY2(top.snapshot().task.isGood, top.snapshot().task.outcome.front().english().c_str());
    QVERIFY(QFile::exists(QString::fromStdString(evidenceFileOf(bench.rigFile))));
    QVERIFY(top.snapshot().coverage->controls[indexOf(bench.signal("thrust_lever_1"))].proof == Proof::SeenWorking);
}

void TestWorkbench::tasksNeedADevice() {
    Bench bench(kRig);
    const auto opened = bench.open();
    QVERIFY(opened);
    (*opened)->begin({BenchTask::Wire, bench.signal("thrust_lever_1")});
    QVERIFY(Bench::wait([&] {
        return (*opened)->snapshot().task.isOver;
    }));
    const BenchTaskView task = (*opened)->snapshot().task;
    QVERIFY(!task.isGood);
    QVERIFY(task.outcome.front().english().find("Plug one in") != std::string::npos);
}

void TestWorkbench::aTaskIsGivenUp() {
    Bench bench(kRig);
    bench.hid.plug(quadrantInfo(), bytesOf(kTwoAxes));
    const auto opened = bench.open();
    QVERIFY(opened);
    Workbench& top = **opened;
    QVERIFY(Bench::wait([&] {
        return !top.snapshot().devices.empty();
    }));
    for (const BenchTask task :
         {BenchTask::Wire, BenchTask::Calibrate, BenchTask::Check, BenchTask::Measure, BenchTask::Walk}) {
        top.begin({task, bench.signal("thrust_lever_1")});
        QVERIFY(Bench::wait([&] {
            return top.snapshot().task.task == task;
        }));
        QVERIFY2(!top.snapshot().task.isOver,
                 top.snapshot().task.outcome.empty() ? "" : top.snapshot().task.outcome.front().english().c_str());
        QVERIFY(!top.snapshot().task.ask.isEmpty());
        top.cancel();
        QVERIFY(Bench::wait([&] {
            return top.snapshot().task.task == BenchTask::None;
        }));
    }
}

void TestWorkbench::wishesAreChecked_data() {
    QTest::addColumn<int>("task");
    QTest::addColumn<QString>("words");
    QTest::addColumn<QString>("outcome");
    const auto add = [](const char* name, BenchTask task, const char* words, const char* outcome) {
        QTest::newRow(name) << static_cast<int>(task) << QString(words) << QString(outcome);
    };
    add("a way that there is not", BenchTask::Wire, "thrust_lever_1=splitaxis", "split_axis");
    add("a way with one control too few", BenchTask::Wire, "thrust_lever_1=split_axis", "2 signals");
    add("values that fall", BenchTask::Calibrate, "100 %, 0 %", "out of order");
    add("a single value", BenchTask::Calibrate, "50 %", "two places or more");
    add("no value", BenchTask::Calibrate, "0 %, much", "much");
}

void TestWorkbench::wishesAreChecked() {
    QFETCH(int, task);
    QFETCH(QString, words);
    QFETCH(QString, outcome);
    Bench bench(kRig);
    bench.hid.plug(quadrantInfo(), bytesOf(kTwoAxes));
    const auto opened = bench.open();
    QVERIFY(opened);
    Workbench& top = **opened;
    QVERIFY(Bench::wait([&] {
        return !top.snapshot().devices.empty() && top.snapshot().devices.front().isConnected;
    }));
    top.begin({static_cast<BenchTask>(task), bench.signal("thrust_lever_1"), words.toStdString()});
    QVERIFY(Bench::wait([&] {
        return top.snapshot().task.isOver;
    }));
    QVERIFY(!top.snapshot().task.isGood);
    const Phrase said = top.snapshot().task.outcome.front();
    QVERIFY2(said.english().find(outcome.toStdString()) != std::string::npos, said.english().c_str());
    QCOMPARE(said.isPattern(), BenchTask(task) == BenchTask::Calibrate); // what can be typed in the window
}

void TestWorkbench::whatIsWiredTwiceIsAsked() {
    Bench bench(kRig);
    bench.hid.plug(quadrantInfo(), bytesOf(kTwoAxes));
    const auto opened = bench.open();
    QVERIFY(opened);
    Workbench& top = **opened;
    QVERIFY(Bench::wait([&] {
        return !top.snapshot().devices.empty() && top.snapshot().devices.front().isConnected;
    }));
    QVERIFY(top.snapshot().shared->empty());
    bench.hid.send("q", {0, 0});
    top.begin({BenchTask::Wire, bench.signal("thrust_lever_2")});
    const auto reaches = [&](std::size_t stage) {
        return Bench::wait([&] {
            const BenchTaskView task = top.snapshot().task;
            return task.task == BenchTask::Wire && task.stage >= stage;
        });
    };
    QVERIFY(reaches(1));
    bench.hid.send("q", {255, 0});
    QVERIFY(reaches(2));
    bench.hid.send("q", {0, 0});
    QVERIFY(Bench::wait([&] {
        return top.snapshot().task.isQuestion || top.snapshot().task.isOver;
    }));
    const BenchTaskView asked = top.snapshot().task;
    QVERIFY2(asked.isQuestion, asked.outcome.empty() ? "" : asked.outcome.front().english().c_str());
    QVERIFY2(asked.ask.english().find("quadrant: X is wired to 'left lever' already") == 0,
             asked.ask.english().c_str());
    QVERIFY(top.snapshot().coverage->controls[indexOf(bench.signal("thrust_lever_2"))].proof == Proof::Unwired);
    top.next();
    QVERIFY(Bench::wait([&] {
        return top.snapshot().task.isOver;
    }));
    QVERIFY(top.snapshot().task.isGood);
    QVERIFY(Bench::wait([&] {
        return !top.snapshot().shared->empty();
    }));
    QCOMPARE(top.snapshot().shared->size(), std::size_t(2));
    QCOMPARE(top.snapshot().shared->front().input, std::string("quadrant: X"));
}

void TestWorkbench::aLeverWithGatesShowsItsTravel() {
    Bench bench(kGates);
    bench.hid.plug(quadrantInfo(), bytesOf(kTwoAxes));
    const auto opened = bench.open();
    QVERIFY2(opened, opened ? "" : opened.error().message.c_str());
    Workbench& top = **opened;
    QVERIFY(Bench::wait([&] {
        return !top.snapshot().devices.empty() && top.snapshot().devices.front().isConnected;
    }));
    const BenchSnapshot snapshot = top.snapshot();
    QCOMPARE(snapshot.travels->size(), std::size_t(1));
    const GateTravel& travel = snapshot.travels->front();
    QCOMPARE(travel.signal, bench.signal("gear_lever"));
    QVERIFY(travel.lowest < 40.0 && travel.highest > 200.0);
    QCOMPARE(travel.gates.front().position, std::string("down"));
    QCOMPARE(travel.gates.front().at, 40.0);
    QCOMPARE(travel.gates.front().band, 12.0);
    top.watch(travel.signal);
    bench.hid.send("q", {97, 0});
    bench.hid.send("q", {123, 0});
    std::vector<BenchPoint> trace;
    QVERIFY(Bench::wait([&] {
        for (const BenchPoint& point : top.takeTrace())
            trace.push_back(point);
        return !trace.empty() && trace.back().value == 123.0; // counts, also where no gate is
    }));
}

void TestWorkbench::tolerancesAreKeptInTheRigFile() {
    Bench bench(kRig);
    const auto opened = bench.open(); // no device is needed
    QVERIFY(opened);
    Workbench& top = **opened;
    QVERIFY(top.snapshot().tolerances == WalkTolerances{});
    const auto set = [&](const char* words) {
        top.begin({BenchTask::SetTolerances, kNoSignal, words});
        QVERIFY(Bench::wait([&] {
            const BenchTaskView task = top.snapshot().task;
            return task.task == BenchTask::SetTolerances && task.isOver && !task.outcome.empty();
        }));
    };
    set("2 deg, 4 deg, 4.5 %");
    QVERIFY2(top.snapshot().task.isGood, top.snapshot().task.outcome.front().english().c_str());
    QVERIFY((top.snapshot().tolerances == WalkTolerances{2.0, 4.0, 0.045}));
    QFile file(QString::fromStdString(bench.rigFile));
    QVERIFY(file.open(QIODevice::ReadOnly));
    QVERIFY(file.readAll().contains("lever = \"4 deg\"\ntravel = \"4.5 %\""));
    top.cancel();
    QVERIFY(Bench::wait([&] {
        return top.snapshot().task.task == BenchTask::None;
    }));
    set("2 deg, 4 deg");
    QVERIFY(!top.snapshot().task.isGood);
    QVERIFY2(top.snapshot().task.outcome.front().english().find("a number and its unit") != std::string::npos,
             top.snapshot().task.outcome.front().english().c_str());
}

void TestWorkbench::filtersAreShownAndTakenBack() {
    Bench bench(kRig);
    {
        Problems problems;
        std::optional<RigFile> rig =
            parseRigFile(kRig, bench.rigFile, bench.aircraft().signals, bench.aircraft().controls.size(), problems);
        QVERIFY(rig);
        QVERIFY(
            applyFilters(bench.rigFile, *rig, bench.aircraft(), {{0, {{"smooth", "\"12 ms\""}, {"noise", "1.5"}}}}));
    }
    const auto opened = bench.open();
    QVERIFY(opened);
    Workbench& top = **opened;
    const SignalId lever = bench.signal("thrust_lever_1");
    const auto filters = [&] {
        return top.snapshot().filters->front();
    };
    QCOMPARE(top.snapshot().filters->size(), std::size_t(1));
    QVERIFY(filters().signal == lever);
    QCOMPARE(englishOf(filters().words), std::vector<std::string>{"low-pass of 12 ms"});
    QVERIFY(filters().delay == std::chrono::milliseconds(12));
    QVERIFY(filters().allowed > Duration{} && filters().allowed <= kMostFilterDelay);
    QVERIFY(filters().change.empty() && filters().canUndo);
    top.begin({BenchTask::ApplyFilters, lever}); // nothing was measured
    QVERIFY(Bench::wait([&] {
        return top.snapshot().task.isOver;
    }));
    QVERIFY(!top.snapshot().task.isGood);
    top.begin({BenchTask::UndoFilters, lever});
    QVERIFY(Bench::wait([&] {
        return top.snapshot().task.task == BenchTask::UndoFilters;
    }));
    QVERIFY2(top.snapshot().task.isGood, top.snapshot().task.outcome.front().english().c_str());
    QVERIFY(!filters().canUndo && filters().delay == Duration{});
    QFile file(QString::fromStdString(bench.rigFile));
    QVERIFY(file.open(QIODevice::ReadOnly));
    QCOMPARE(file.readAll(), QByteArray(kRig));
}

QTEST_APPLESS_MAIN(TestWorkbench)
#include "test_workbench.moc"
