#include <QtTest>

#include <filesystem>

#include "problemtext.h"
#include "procedure/library.h"
#include "procedure/lint.h"
#include "procedure/phase.h"

using namespace flowhand;

/// Every file in procedures/, one row each.
class TestShipped : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void aircraftLoads_data();
    void aircraftLoads();
    void flowLoads_data();
    void flowLoads();
    void libraryIsWhole();
    void nothingIsLeftUnexplained();
};

namespace {

void rows(bool wantsAircraft) {
    QTest::addColumn<QString>("file");
    for (const auto& entry : std::filesystem::recursive_directory_iterator(PROCEDURES)) {
        const bool isAircraft = entry.path().filename() == "aircraft.toml";
        if (wantsAircraft ? isAircraft : isFlowFile(entry.path().string()))
            QTest::newRow(entry.path().lexically_relative(PROCEDURES).c_str())
                << QString::fromStdString(entry.path().string());
    }
}

} // namespace

void TestShipped::aircraftLoads_data() {
    rows(true);
}

void TestShipped::aircraftLoads() {
    QFETCH(QString, file);
    Problems problems;
    QVERIFY2(loadAircraft(file.toStdString(), problems), qPrintable(problemText(problems)));
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
}

void TestShipped::flowLoads_data() {
    rows(false);
}

void TestShipped::flowLoads() {
    QFETCH(QString, file);
    const std::filesystem::path aircraftFile =
        std::filesystem::path(file.toStdString()).parent_path() / "aircraft.toml";
    Problems problems;
    const std::optional<Aircraft> aircraft = loadAircraft(aircraftFile.string(), problems);
    QVERIFY2(aircraft, qPrintable(problemText(problems)));
    const std::optional<Flow> flow = loadFlow(file.toStdString(), *aircraft, problems);
    QVERIFY2(flow, qPrintable(problemText(problems)));
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
}

void TestShipped::libraryIsWhole() {
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, problems);
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
    std::vector<std::string> folders;
    for (const AircraftFolder& folder : library) {
        folders.push_back(folder.aircraft->folder);
        QVERIFY2(!folder.flows.empty(), folders.back().c_str());
    }
    QCOMPARE(folders, (std::vector<std::string>{"twin_jet", "twin_turboprop", "light_single"}));
    std::vector<std::string> ids;
    for (const Flow& flow : library.front().flows)
        ids.push_back(flow.id);
    QCOMPARE(ids, (std::vector<std::string>{"taxi_out", "rejected_take_off", "take_off", "landing_roll"}));
}

void TestShipped::nothingIsLeftUnexplained() {
    Problems problems;
    for (const AircraftFolder& folder : loadLibrary(PROCEDURES, problems))
        lint(folder, problems);
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
}

QTEST_APPLESS_MAIN(TestShipped)
#include "test_shipped.moc"
