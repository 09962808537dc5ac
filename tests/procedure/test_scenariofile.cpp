#include <QtTest>

#include "bench.h"
#include "problemtext.h"
#include "procedure/library.h"
#include "procedure/scenario.h"

using namespace flowhand;

namespace {

constexpr const char* kHead = "format = 1\ntitle = 'T'\nflows = ['take_off']\n";

const Aircraft& aircraft() {
    static const std::optional<AircraftFolder> folder = [] {
        Problems problems;
        return loadAircraftFolder(PROCEDURES "/twin_jet", problems);
    }();
    return *folder->aircraft;
}

std::optional<Scenario> read(const std::string& text, Problems& problems) {
    return parseScenario(text, "t.toml", aircraft(), problems);
}

} // namespace

class TestScenarioFile : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void aWholeFileIsRead() {
        Problems problems;
        const std::optional<Scenario> scenario = read(std::string(kHead) + R"(
summary = "S"
[start]
place = "line_up"
surface = "wet"
wind_from = "270 deg"
wind_speed = "10 kt"
mass = "60 t"
[[event]]
id = "engine"
title = "Engine 2 fails"
when = "airspeed > aircraft.v1"
chance = "40 %"
group = "g"
failure = "engine_out"
engine = 2
words = { by = "first_officer", text = "Engine failure." }
[[event]]
id = "flaps"
title = "Flaps"
when = "flap_lever == 4"
failure = "flap_asymmetry"
side = "right"
apart = "2 deg"
[[event]]
id = "brake"
title = "Brake"
when = "on_ground"
failure = "brake_drags"
side = "left"
[[event]]
id = "line"
title = "Line"
when = "on_ground"
route = "out_27"
)",
                                                      problems);
        QVERIFY2(scenario, qPrintable(problemText(problems)));
        QCOMPARE(scenario->startPlace, std::string("line_up"));
        QCOMPARE(scenario->surroundings.surface, std::string("wet"));
        QCOMPARE(scenario->surroundings.mass, std::optional(60000.0));
        QCOMPARE(scenario->surroundings.wind->from, 270.0);
        QVERIFY(std::fabs(scenario->surroundings.wind->speed - 10.0 * 1852.0 / 3600.0) < 1e-9); // 1 kt = 1852 m/h
        QCOMPARE(scenario->events.size(), std::size_t(4));
        const ScenarioEvent& engine = scenario->events[0];
        QCOMPARE(engine.chance, 0.4);
        QVERIFY(engine.failure == (Failure{FailureKind::EngineOut, 1, Side::Left, 0.0}));
        QCOMPARE(engine.words->text, std::string("Engine failure."));
        QVERIFY(scenario->events[1].failure == (Failure{FailureKind::FlapAsymmetry, 0, Side::Right, 2.0}));
        QVERIFY(scenario->events[2].failure == (Failure{FailureKind::BrakeDrags, 0, Side::Left, 0.3}));
        QVERIFY(!scenario->events[3].failure);
        QCOMPARE(scenario->events[3].chance, 1.0);
        QCOMPARE(scenario->events[3].route, std::string("out_27"));
    }

    void mistakesAreSaid_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("code");
        const QString head = kHead;
        const QString event = head + "[[event]]\nid = 'e'\ntitle = 'E'\nwhen = 'on_ground'\n";
        QTest::newRow("no flows") << "format = 1\ntitle = 'T'\n"
                                  << "missing-key";
        QTest::newRow("newer") << "format = 9\ntitle = 'T'\nflows = ['a']\n"
                               << "newer-format";
        QTest::newRow("unknown key") << head + "flow = 'a'\n"
                                     << "unknown-key";
        QTest::newRow("half a wind") << head + "[start]\nwind_from = '10 deg'\n"
                                     << "missing-key";
        QTest::newRow("does nothing") << event << "missing-key";
        QTest::newRow("no such failure") << event + "failure = 'engine_fire'\n"
                                         << "unknown-word";
        QTest::newRow("which engine") << event + "failure = 'engine_out'\n"
                                      << "bad-value";
        QTest::newRow("third engine") << event + "failure = 'engine_out'\nengine = 3\n"
                                      << "bad-value";
        QTest::newRow("which side") << event + "failure = 'brake_lost'\n"
                                    << "bad-value";
        QTest::newRow("not of this failure") << event + "failure = 'steering_lost'\nengine = 1\n"
                                             << "unknown-key";
        QTest::newRow("chance") << event + "failure = 'steering_lost'\nchance = '140 %'\n"
                                << "bad-value";
        QTest::newRow("chance without unit") << event + "failure = 'steering_lost'\nchance = '0.5'\n"
                                             << "bad-value";
        QTest::newRow("speaker") << event + "words = { by = 'tower', text = 'Stop' }\n"
                                 << "unknown-speaker";
        QTest::newRow("condition") << head + "[[event]]\nid = 'e'\ntitle = 'E'\nwhen = 'airspeed > 3 deg'\n"
                                             "failure = 'steering_lost'\n"
                                   << "";
        QTest::newRow("twice") << event + "failure = 'steering_lost'\n[[event]]\nid = 'e'\ntitle = 'E'\n"
                                          "when = 'on_ground'\nfailure = 'steering_lost'\n"
                               << "duplicate-name";
    }
    void mistakesAreSaid() {
        QFETCH(QString, text);
        QFETCH(QString, code);
        Problems problems;
        QVERIFY(!read(text.toStdString(), problems));
        QVERIFY(problems.hasErrors());
        if (!code.isEmpty())
            QCOMPARE(QString::fromStdString(problems.firstError().code), code);
        QCOMPARE(problems.firstError().place.file, std::string("t.toml"));
    }

    void theShippedOnesLoad() {
        Problems problems;
        const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, problems);
        QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
        std::set<FailureKind> kinds;
        bool hasRunwayChange = false;
        for (const AircraftFolder& folder : library)
            for (const Scenario& scenario : folder.scenarios) {
                for (const std::string& flow : scenario.flows)
                    QVERIFY2(folder.flow(flow) != nullptr, scenario.file.c_str());
                for (const ScenarioEvent& event : scenario.events) {
                    hasRunwayChange = hasRunwayChange || !event.route.empty();
                    if (event.failure)
                        kinds.insert(event.failure->kind);
                }
            }
        QCOMPARE(kinds.size(), std::size_t(7)); // each failure is in one of them
        QVERIFY(hasRunwayChange);
    }
};

QTEST_APPLESS_MAIN(TestScenarioFile)
#include "test_scenariofile.moc"
