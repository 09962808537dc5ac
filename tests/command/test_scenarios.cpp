// Scenarios as a person flies them: by their hands, stored, gone through, judged again.

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QtTest>

#include <functional>

#include "command/printed.h"
#include "procedure/library.h"
#include "session/scenariowatch.h"
#include "store/store.h"

using namespace flowhand;

class TestScenarios : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void areFlownStoredAndJudgedAlike_data() {
        QTest::addColumn<QString>("scenario");
        QTest::addColumn<QStringList>("flows");
        QTest::addColumn<QString>("happened");
        QTest::newRow("rejected") << "engine_failure_before_v1" << QStringList{"take_off", "rejected_take_off"}
                                  << "Engine 2 fails, before V1";
        QTest::newRow("goes on") << "engine_failure_after_v1" << QStringList{"take_off"} << "Engine 2 fails, after V1";
        QTest::newRow("reverser") << "reverser_locked" << QStringList{"landing_roll"} << "Reverser 1 does not deploy";
        QTest::newRow("runway change") << "runway_change" << QStringList{"taxi_out"} << "Runway 27 in use";
    }
    void areFlownStoredAndJudgedAlike() {
        QFETCH(QString, scenario);
        QFETCH(QStringList, flows);
        QFETCH(QString, happened);
        const QTemporaryDir folder;
        const QString db = folder.filePath("runs.sqlite");
        const Printed flown = flowhandWith({"practise", "--scenario", scenario, "--demonstration", "--db", db});
        QVERIFY2(flown.status == 0, qPrintable(flown.out + flown.err)); // each flow passed
        QVERIFY2(flown.out.contains("happens"), qPrintable(flown.out));
        QVERIFY2(flown.out.contains(happened), qPrintable(flown.out));

        Result<Store> store = Store::open(db.toStdString());
        QVERIFY(store);
        for (int i = 0; i < flows.size(); ++i) {
            const Result<StoredRun> run = store->load(i + 1);
            QVERIFY2(run, run ? "" : describe(run.error()).c_str());
            QCOMPARE(QString::fromStdString(run->header.flowId), flows[i]);
            QVERIFY(run->header.scenario.find("part " + std::to_string(i + 1)) != std::string::npos);
            const Printed again = flowhandWith({"debrief", QString::number(i + 1), "--db", db, "--rejudge", "--json"});
            QVERIFY2(again.status == 0, qPrintable(again.err));
            const QJsonObject judged = QJsonDocument::fromJson(again.out.toUtf8()).object()["rejudged"].toObject();
            QVERIFY2(judged["same"].toBool(), qPrintable(again.out));
        }
        QVERIFY(!store->load(flows.size() + 1));
        QVERIFY(flowhandWith({"debrief", "1", "--db", db}).out.contains("The scenario at"));
    }

    void theSameSeedFliesTheSame() {
        const auto flown = [](const char* seed) {
            return flowhandWith({"practise", "--scenario", "take_off_surprises", "--demonstration", "--unstored",
                                 "--seed", seed})
                .out;
        };
        const auto events = [](const QString& out) {
            return out.split('\n').filter("happens");
        };
        QCOMPARE(events(flown("5")), events(flown("5")));
    }

    /// As nothing is drawn to happen, and as each event is alone.
    void handsFlyEachDraw_data() {
        QTest::addColumn<QString>("scenario");
        QTest::addColumn<quint64>("seed");
        QTest::addColumn<QStringList>("happens");
        forEachScenario([](const AircraftFolder& folder, const Scenario& scenario) {
            const std::size_t count = scenario.events.size();
            for (std::size_t chosen = 0; chosen <= count; ++chosen) {
                const std::optional<std::uint64_t> seed = seedThatDraws(scenario, chosen);
                if (!seed)
                    continue; // what is certain cannot stay away
                QStringList titles;
                const std::vector<bool> drawn = drawnEvents(scenario, *seed);
                for (std::size_t i = 0; i < count; ++i)
                    if (drawn[i])
                        titles << textOf(scenario.events[i].title);
                const QString name = nameOf(folder, scenario);
                const std::string event = chosen < count ? scenario.events[chosen].id : "nothing";
                QTest::addRow("%s, %s", qPrintable(name), event.c_str()) << name << quint64(*seed) << titles;
            }
        });
    }
    void handsFlyEachDraw() {
        QFETCH(QString, scenario);
        QFETCH(quint64, seed);
        QFETCH(QStringList, happens);
        const Printed flown = flowhandWith(
            {"practise", "--scenario", scenario, "--demonstration", "--unstored", "--seed", QString::number(seed)});
        QVERIFY2(flown.status == 0, qPrintable(flown.out + flown.err)); // each flow passed
        QStringList happened;
        for (const QString& line : flown.out.split('\n').filter("  happens  "))
            happened << line.section("happens", 1).trimmed();
        QCOMPARE(happened, happens);
    }

    void everyAbnormalFlowIsCalledFor_data() {
        QTest::addColumn<QString>("aircraft");
        QTest::addColumn<QString>("title");
        for (const AircraftFolder& folder : shipped())
            for (const Flow& flow : folder.flows)
                if (flow.abnormal)
                    QTest::addRow("%s/%s", folder.aircraft->folder.c_str(), flow.id.c_str())
                        << textOf(folder.aircraft->folder) << textOf(flow.title);
    }
    void everyAbnormalFlowIsCalledFor() {
        QFETCH(QString, aircraft);
        QFETCH(QString, title);
        bool isFlown = false;
        forEachScenario([&](const AircraftFolder& folder, const Scenario& scenario) {
            if (isFlown || textOf(folder.aircraft->folder) != aircraft)
                return;
            const QString seed = QString::number(seedThatDraws(scenario, 0).value_or(1));
            const Printed flown = flowhandWith(
                {"practise", "--scenario", nameOf(folder, scenario), "--demonstration", "--unstored", "--seed", seed});
            isFlown = flown.out.contains("happens") &&
                      flown.out.contains("\n" + title + ", " + textOf(folder.aircraft->title) + "\n");
        });
        QVERIFY(isFlown);
    }

    void wrongNamesAreSaid() {
        const Printed unknown = flowhandWith({"practise", "--scenario", "engine_failure", "--unstored"});
        QCOMPARE(unknown.status, std::optional(1));
        QVERIFY(unknown.err.contains("there is no scenario 'engine_failure'"));
        QVERIFY(unknown.err.contains("engine_failure_before_v1"));
        const Printed none = flowhandWith({"practise", "--unstored"});
        QCOMPARE(none.status, std::optional(1));
        QVERIFY(none.err.contains("name a flow, or a scenario"));
    }

    void areLinted_data() {
        QTest::addColumn<QString>("old");
        QTest::addColumn<QString>("changed");
        QTest::addColumn<QString>("code");
        QTest::newRow("sound") << ""
                               << ""
                               << "";
        QTest::newRow("flow") << "flows = [\"take_off\"]"
                              << "flows = [\"take_of\"]"
                              << "unknown-flow";
        QTest::newRow("place") << "place = \"line_up\""
                               << "place = \"lineup\""
                               << "unknown-place";
        QTest::newRow("surface") << "surface = \"dry\""
                                 << "surface = \"sand\""
                                 << "unknown-surface";
        QTest::newRow("route") << "failure = \"engine_out\"\nengine = 2"
                               << "route = \"out_18\""
                               << "unknown-route";
        QTest::newRow("condition") << "aircraft.v1 - 35 kt"
                                   << "35 deg"
                                   << "";
    }
    void areLinted() {
        QFETCH(QString, old);
        QFETCH(QString, changed);
        QFETCH(QString, code);
        const QTemporaryDir folder;
        QVERIFY(copyFolder(QStringLiteral(PROCEDURES), folder.filePath("procedures")));
        const QString file = folder.filePath("procedures/twin_jet/scenarios/engine_failure_before_v1.toml");
        QFile scenario(file);
        QVERIFY(scenario.open(QIODevice::ReadWrite));
        QString text = QString::fromUtf8(scenario.readAll());
        QVERIFY(text.contains(old));
        if (!old.isEmpty())
            text.replace(old, changed);
        scenario.resize(0);
        scenario.write(text.toUtf8());
        scenario.close();
        for (const QString& path : {file, folder.filePath("procedures")}) {
            const Printed linted = flowhandWith({"lint", path});
            QCOMPARE(linted.status == 0, old.isEmpty());
            QVERIFY2(code.isEmpty() || linted.out.contains("[error " + code + "]"), qPrintable(linted.out));
        }
    }

    void handsOfAScenarioAreLinted() {
        const QString folder = QStringLiteral(PROCEDURES "/twin_jet/scenarios/engine_failure_before_v1/take_off.hands");
        QCOMPARE(flowhandWith({"lint", folder}).status, std::optional(0));
    }

private:
    static bool copyFolder(const QString& from, const QString& to) {
        if (!QDir().mkpath(to))
            return false;
        for (const QFileInfo& entry : QDir(from).entryInfoList(QDir::AllEntries | QDir::NoDotAndDotDot)) {
            const QString target = to + "/" + entry.fileName();
            if (entry.isDir() ? !copyFolder(entry.filePath(), target) : !QFile::copy(entry.filePath(), target))
                return false;
            QFile::setPermissions(target, QFile::permissions(target) | QFile::WriteUser);
        }
        return true;
    }

    static QString textOf(const std::string& text) { return QString::fromStdString(text); }
    static QString nameOf(const AircraftFolder& folder, const Scenario& scenario) {
        return textOf(folder.aircraft->folder + "/" + scenario.id);
    }

    static const std::vector<AircraftFolder>& shipped() {
        static const std::vector<AircraftFolder> library = [] {
            Problems problems;
            return loadLibrary(PROCEDURES, problems);
        }();
        return library;
    }

    static void forEachScenario(const std::function<void(const AircraftFolder&, const Scenario&)>& look) {
        for (const AircraftFolder& folder : shipped())
            for (const Scenario& scenario : folder.scenarios)
                look(folder, scenario);
    }

    /// Draws that one event and no other but those that are certain; with the index behind the last, none at all.
    static std::optional<std::uint64_t> seedThatDraws(const Scenario& scenario, std::size_t chosen) {
        constexpr std::uint64_t kSeeds = 2000; // an event of 10 %, alone among ten, comes up within some dozens
        for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
            const std::vector<bool> drawn = drawnEvents(scenario, seed);
            bool isWanted = true;
            for (std::size_t i = 0; i < drawn.size(); ++i)
                isWanted &= drawn[i] == (i == chosen || (chosen < drawn.size() && scenario.events[i].chance >= 1.0));
            if (isWanted)
                return seed;
        }
        return std::nullopt;
    }
};

QTEST_APPLESS_MAIN(TestScenarios)
#include "test_scenarios.moc"
