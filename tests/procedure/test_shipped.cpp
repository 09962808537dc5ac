#include <QtTest>

#include <algorithm>
#include <filesystem>
#include <set>

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
    std::set<std::string> phasesFlown;
    for (const AircraftFolder& folder : library) {
        const TomlNode* listed = folder.aircraft->toml.root().find("flows");
        QVERIFY2(listed != nullptr, folders.back().c_str());
        for (const TomlNode& name : listed->items)
            QVERIFY2(std::any_of(folder.flows.begin(), folder.flows.end(),
                                 [&](const Flow& flow) {
                                     return flow.id == name.text;
                                 }),
                     name.text.c_str());
        std::size_t last = 0;
        for (const Flow& flow : folder.flows) {
            const std::size_t phase = *findPhase(flow.phaseFrom);
            QVERIFY2(phase >= last, flow.id.c_str()); // in the order of the flight
            last = phase;
            phasesFlown.insert(flow.phaseFrom);
        }
    }
    QCOMPARE(phasesFlown.size(), phases().size()); // gate to gate
}

void TestShipped::nothingIsLeftUnexplained() {
    Problems problems;
    for (const AircraftFolder& folder : loadLibrary(PROCEDURES, problems))
        lint(folder, problems);
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
}

QTEST_APPLESS_MAIN(TestShipped)
#include "test_shipped.moc"
