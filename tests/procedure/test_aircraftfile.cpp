#include <QtTest>

#include "problemtext.h"
#include "procedure/aircraftfile.h"
#include "procedure/motion.h"
#include "procedure/phase.h"

using namespace flowhand;

namespace {

/// A small aircraft file that loads; the rows below break one thing in it.
constexpr const char* kSmall = R"(format = 1
title = "Test bench"
engines = 1
seats = ["pilot", "helper"]

[values]
limit = "80 kt"
share = 0.5
planned = "12"

[[control]]
name = "lever"
label = "Lever"
area = "pedestal"
kind = "lever"
unit = "%"
range = [0, 100]

[[control]]
name = "flap"
label = "Flap"
area = "pedestal"
kind = "gated lever"
positions = ["up", "12"]
seats = ["pilot"]
)";

} // namespace

class TestAircraftFile : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void smallAircraftLoads();
    void brokenAircraftIsRefusedWithItsPlace_data();
    void brokenAircraftIsRefusedWithItsPlace();
    void missingFileIsAnError();
    void twinJetHasItsControls();
    void phasesGoFromGateToGate();
};

void TestAircraftFile::smallAircraftLoads() {
    Problems problems;
    const std::optional<Aircraft> aircraft = parseAircraft(kSmall, "bench/aircraft.toml", problems);
    QVERIFY2(aircraft, qPrintable(problemText(problems)));
    QVERIFY(problems.all().empty());
    QCOMPARE(aircraft->folder, std::string("bench"));
    QCOMPARE(aircraft->controls.size(), std::size_t(2));
    QCOMPARE(aircraft->signals.size(), 2 + motionSignals(1).size());
    const Signal& lever = aircraft->signals[SignalId{0}];
    QCOMPARE(lever.highest, 100.0);
    QCOMPARE(lever.scale, 100.0);
    QVERIFY(aircraft->isControl(SignalId{1}));
    QVERIFY(!aircraft->isControl(SignalId{2}));
    QCOMPARE(aircraft->control(SignalId{0}).panelLabel, std::string("Lever"));
    QCOMPARE(aircraft->control(SignalId{1}).seats, std::vector<std::string>{"pilot"});
    QCOMPARE(aircraft->values.at("limit").number, 80.0);
    QCOMPARE(aircraft->values.at("limit").unit.symbol, std::string("kt"));
    QCOMPARE(aircraft->values.at("share").number, 0.5);
    QVERIFY(aircraft->values.at("share").unit.dimension.isNone());
    QVERIFY(aircraft->values.at("planned").isWord);
    QCOMPARE(aircraft->values.at("planned").word, std::string("12"));
    QCOMPARE(aircraft->toml.source(), std::string(kSmall));
}

void TestAircraftFile::brokenAircraftIsRefusedWithItsPlace_data() {
    QTest::addColumn<QString>("old");
    QTest::addColumn<QString>("broken");
    QTest::addColumn<QString>("code");
    QTest::addColumn<int>("line");
    QTest::addColumn<int>("column");
    QTest::newRow("not TOML") << "format = 1"
                              << "format = = 1"
                              << "bad-toml" << 1 << 10;
    QTest::newRow("no format") << "format = 1"
                               << ""
                               << "missing-key" << 1 << 1;
    QTest::newRow("newer format") << "format = 1"
                                  << "format = 2"
                                  << "newer-format" << 1 << 10;
    QTest::newRow("no such format") << "format = 1"
                                    << "format = 0"
                                    << "bad-format" << 1 << 10;
    QTest::newRow("unknown key") << "engines = 1"
                                 << "engines = 1\nengine = 1"
                                 << "unknown-key" << 4 << 10;
    QTest::newRow("no engines") << "engines = 1"
                                << ""
                                << "missing-key" << 1 << 1;
    QTest::newRow("too many engines") << "engines = 1"
                                      << "engines = 99"
                                      << "bad-value" << 3 << 11;
    QTest::newRow("no seats") << "seats = [\"pilot\", \"helper\"]"
                              << ""
                              << "missing-key" << 1 << 1;
    QTest::newRow("bad seat name") << "\"helper\"]"
                                   << "\"Helper\"]"
                                   << "bad-name" << 4 << 9;
    QTest::newRow("unknown seat") << "seats = [\"pilot\"]"
                                  << "seats = [\"pilto\"]"
                                  << "unknown-seat" << 25 << 9;
    QTest::newRow("unknown unit of a value") << "80 kt"
                                             << "80 kn"
                                             << "bad-value" << 7 << 9;
    QTest::newRow("unknown word") << "planned = \"12\""
                                  << "planned = \"13\""
                                  << "bad-value" << 9 << 11;
    QTest::newRow("value of a wrong type") << "\"80 kt\""
                                           << "true"
                                           << "wrong-type" << 7 << 9;
    QTest::newRow("infinite value") << "share = 0.5"
                                    << "share = inf"
                                    << "bad-value" << 8 << 9;
    QTest::newRow("reserved name") << "name = \"flap\""
                                   << "name = \"held\""
                                   << "bad-name" << 20 << 8;
    QTest::newRow("same name twice") << "name = \"flap\""
                                     << "name = \"lever\""
                                     << "duplicate-signal" << 19 << 1;
    QTest::newRow("name of a motion signal") << "name = \"flap\""
                                             << "name = \"airspeed\""
                                             << "duplicate-signal" << 11 << 1;
    QTest::newRow("unknown kind") << "\"gated lever\""
                                  << "\"gated levr\""
                                  << "unknown-kind" << 23 << 8;
    QTest::newRow("unknown unit") << "unit = \"%\""
                                  << "unit = \"percent\""
                                  << "unknown-unit" << 16 << 8;
    QTest::newRow("range the wrong way") << "range = [0, 100]"
                                         << "range = [100, 0]"
                                         << "bad-range" << 17 << 9;
    QTest::newRow("scale of nothing") << "range = [0, 100]"
                                      << "range = [0, 100]\nscale = 0"
                                      << "bad-value" << 18 << 9;
    QTest::newRow("one position") << "[\"up\", \"12\"]"
                                  << "[\"12\"]"
                                  << "missing-key" << 24 << 13;
    QTest::newRow("same position twice") << "[\"up\", \"12\"]"
                                         << "[\"12\", \"12\"]"
                                         << "duplicate-name" << 24 << 13;
    QTest::newRow("reserved position") << "[\"up\", \"12\"]"
                                       << "[\"12\", \"between\"]"
                                       << "bad-name" << 24 << 13;
    QTest::newRow("key of another kind") << "positions ="
                                         << "range = [0, 1]\npositions ="
                                         << "unknown-key" << 24 << 9;
}

void TestAircraftFile::brokenAircraftIsRefusedWithItsPlace() {
    QFETCH(QString, old);
    QFETCH(QString, broken);
    QFETCH(QString, code);
    QFETCH(int, line);
    QFETCH(int, column);
    QString source = kSmall;
    QVERIFY(source.contains(old));
    source.replace(old, broken);
    Problems problems;
    QVERIFY(!parseAircraft(source.toStdString(), "bench/aircraft.toml", problems));
    QVERIFY(problems.hasErrors());
    const Error& error = problems.firstError();
    QVERIFY2(QString::fromStdString(error.code) == code, qPrintable(problemText(problems)));
    QCOMPARE(error.place, (SourcePlace{"bench/aircraft.toml", line, column}));
}

void TestAircraftFile::missingFileIsAnError() {
    Problems problems;
    QVERIFY(!loadAircraft(TEST_DATA "/procedure/no_such_folder/aircraft.toml", problems));
    QCOMPARE(problems.firstError().code, std::string("unreadable-file"));
}

void TestAircraftFile::twinJetHasItsControls() {
    Problems problems;
    const std::optional<Aircraft> aircraft = loadAircraft(PROCEDURES "/twin_jet/aircraft.toml", problems);
    QVERIFY2(aircraft, qPrintable(problemText(problems)));
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
    QCOMPARE(aircraft->folder, std::string("twin_jet"));
    const std::optional<SignalId> tiller = aircraft->signals.find("tiller");
    QVERIFY(tiller && aircraft->isControl(*tiller));
    QCOMPARE(aircraft->control(*tiller).seats, std::vector<std::string>{"captain"});
    QVERIFY(aircraft->control(*tiller).isContinuous);
    QVERIFY(aircraft->signals.find("engine_power_2"));
    QCOMPARE(aircraft->values.at("tiller_limit").number, 80.0);
}

void TestAircraftFile::phasesGoFromGateToGate() {
    QCOMPARE(phases().front().id, std::string("gate"));
    QCOMPARE(phases().back().id, std::string("gate_in"));
    QVERIFY(*findPhase("taxi_out") < *findPhase("take_off"));
    QVERIFY(!findPhase("nowhere"));
    for (const Phase& phase : phases())
        QVERIFY(phase.height >= 0.0 && phase.height <= 1.0);
}

QTEST_APPLESS_MAIN(TestAircraftFile)
#include "test_aircraftfile.moc"
