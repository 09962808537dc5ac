#include <QtTest>

#include <algorithm>
#include <filesystem>

#include "problemtext.h"
#include "procedure/library.h"
#include "session/runloop.h"

using namespace flowhand;
using namespace std::chrono_literals;

/// Every shipped flow is flown by its own hands on the practice aircraft, well and wrongly.
class TestFlown : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void handsPass_data();
    void handsPass();
    void mistakesAreFound_data();
    void mistakesAreFound();
    void aSwitchServesAsReverser();
    void alonePilotDoesBothSeats_data();
    void alonePilotDoesBothSeats();

private:
    [[nodiscard]] const AircraftFolder& folderOf(const Flow& flow) const;
    [[nodiscard]] const Flow& flow(const std::string& id) const;
    [[nodiscard]] Score flown(const Flow& flow, const QString& hands, std::uint64_t seed, bool isSolo = false) const;

    std::vector<AircraftFolder> m_library;
};

namespace {

/// No shipped flow takes longer.
constexpr Duration kLongestFlow = 10min;
/// What a selection a little off the middle of its band costs: the flap lever is moved when a person would move it.
constexpr std::int64_t kBandAllowance = 1'000;

QString handsOf(const Flow& flow) {
    const std::filesystem::path path = std::filesystem::path(flow.file).parent_path() / "hands" / (flow.id + ".hands");
    QFile file(QString::fromStdString(path.string()));
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

/// Every control on screen: no noise, whole travel.
std::vector<ControlFacts> simulated(const Aircraft& aircraft) {
    std::vector<ControlFacts> facts;
    for (const CockpitControl& control : aircraft.controls) {
        const Signal& signal = aircraft.signals[control.signal];
        ControlFacts fact;
        fact.isSimulated = true;
        fact.range = signal.highest - signal.lowest;
        fact.isMomentary = control.kind == ControlKind::Button;
        fact.controlName = signal.label;
        facts.push_back(std::move(fact));
    }
    return facts;
}

/// What was lost, but for margins in bands, in the order of the ledger.
QStringList lossesOf(const Score& score) {
    QStringList losses;
    for (const LedgerLine& line : score.ledger)
        if (line.what != "small margin")
            losses << QString::fromStdString(line.text);
    return losses;
}

} // namespace

void TestFlown::initTestCase() {
    Problems problems;
    m_library = loadLibrary(PROCEDURES, problems);
    QVERIFY2(!problems.hasErrors(), qPrintable(problemText(problems)));
}

const AircraftFolder& TestFlown::folderOf(const Flow& flow) const {
    return *std::find_if(m_library.begin(), m_library.end(), [&](const AircraftFolder& folder) {
        return !folder.flows.empty() && &flow >= &folder.flows.front() && &flow <= &folder.flows.back();
    });
}

/// By its id, of the twin jet, or with another aircraft's folder before it.
const Flow& TestFlown::flow(const std::string& id) const {
    for (const AircraftFolder& folder : m_library)
        for (const Flow& candidate : folder.flows)
            if (folder.aircraft->folder + "/" + candidate.id == id || candidate.id == id)
                return candidate;
    qFatal("there is no flow '%s'", id.c_str());
}

Score TestFlown::flown(const Flow& flow, const QString& hands, std::uint64_t seed, bool isSolo) const {
    const Aircraft& aircraft = *folderOf(flow).aircraft;
    Problems problems;
    RunParts parts;
    parts.aircraft = &aircraft;
    parts.flow = &flow;
    parts.hands = Hands::parse(hands.toStdString(), flow.id + ".hands", aircraft, flow, problems);
    Result<PracticeAircraft> practice = PracticeAircraft::create(aircraft, flow.startPlace);
    if (!parts.hands || !practice)
        qFatal("%s", qPrintable(problemText(problems)));
    parts.practice.emplace(std::move(*practice));
    parts.header.setup.ownSeat = aircraft.seats.front();
    parts.header.setup.seed = seed;
    parts.header.setup.isSolo = isSolo;
    parts.header.setup.controls = simulated(aircraft);
    RunLoop loop(std::move(parts));
    loop.command(CommandKind::Start);
    Time time{};
    while (!loop.isEnded() && time < kLongestFlow)
        loop.advance(time += PracticeAircraft::kMotionPeriod);
    if (!loop.isEnded()) {
        loop.command(CommandKind::Stop);
        loop.advance(time + PracticeAircraft::kMotionPeriod);
    }
    return loop.snapshot().score;
}

void TestFlown::handsPass_data() {
    QTest::addColumn<QString>("id");
    QTest::addColumn<quint64>("seed");
    for (const AircraftFolder& folder : m_library)
        for (const Flow& flow : folder.flows)
            for (const quint64 seed : {1, 2, 3}) {
                const std::string name = folder.aircraft->folder + "/" + flow.id;
                QTest::addRow("%s, partner %llu", name.c_str(), seed) << QString::fromStdString(name) << seed;
            }
}

void TestFlown::handsPass() {
    QFETCH(QString, id);
    QFETCH(quint64, seed);
    const Flow& shipped = flow(id.toStdString());
    const QString hands = handsOf(shipped);
    QVERIFY2(!hands.isEmpty(), "every shipped flow has hands that fly it");
    const Score score = flown(shipped, hands, seed);
    QVERIFY2(lossesOf(score).empty(), qPrintable(lossesOf(score).join('\n')));
    QVERIFY2(score.isPassed, score.whyNotPassed.c_str());
    QVERIFY(score.milliPoints >= 100'000 - kBandAllowance); // in sight of the middle of each band
}

void TestFlown::mistakesAreFound_data() {
    QTest::addColumn<QString>("id");
    QTest::addColumn<QString>("old");
    QTest::addColumn<QString>("changed");
    QTest::addColumn<QStringList>("losses");
    QTest::addColumn<bool>("isPassed");
    const auto row = [](const char* name, const char* id, const char* old, const char* changed,
                        const QStringList& losses, bool isPassed) {
        QTest::newRow(name) << id << old << changed << losses << isPassed;
    };
    row("wrong gate, put right", "taxi_out", "due flap_for_take_off, 1 s later: flap_lever 12 over 0.8 s",
        "due flap_for_take_off, 1 s later: flap_lever 22 over 0.8 s\nafter 3 s: flap_lever 12 over 0.5 s",
        {"Flap lever at 22, wanted 12"}, true);
    row("light left out", "taxi_out", "due taxi_light_on, 1 s later: taxi_light on\n", "", {"Taxi light on: not done"},
        true);
    row("over the holding point", "taxi_out", "when stop_distance < 12 m: let go", "when stop_distance < -3 m: let go",
        {"guard broken: Rolled over the holding point without clearance",
         "At the holding point, stopped: parking brake on: not done"},
        false);
    row("all the thrust at once", "take_off", "thrust_lever_1 45 % over 0.8 s\nwith: thrust_lever_2 45 % over 0.8 s",
        "thrust_lever_1 90 % over 0.8 s\nwith: thrust_lever_2 90 % over 0.8 s",
        {"Thrust levers to the first stage, matched: not done"}, true);
    row("tiller deflected above its limit", "take_off", "due rotate",
        "when ground_speed > 100 kt: tiller 12 deg over 0.3 s\nafter 0.5 s: tiller 0 deg over 0.3 s\ndue rotate",
        {"guard broken: Tiller deflected above its speed limit"}, false);
    row("no pull at the call", "take_off", "due rotate, 0.4 s later: yoke_pitch 30 % over 0.6 s\n", "",
        {"Pull the yoke, smoothly: not done"}, false);
    row("reverse lever raised in the air", "take_off", "due climb_thrust",
        "when height > 500 ft: reverse_lever_1 40 %\nafter 1 s: reverse_lever_1 0 %\ndue climb_thrust",
        {"guard broken: Reverse lever raised in the air"}, false);
    row("flap straight to up", "take_off",
        "due flap_to_4, 0.8 s later: flap_lever 4 over 0.5 s\ndue flap_up, 0.8 s later: flap_lever up over 0.5 s",
        "due flap_to_4, 0.8 s later: flap_lever up over 0.5 s",
        {"guard broken: Flap raised below its speed", "Flap lever to 4: not done", "Flap lever up: done too early"},
        false);
    row("spoilers down on the runway", "landing_roll", "due spoilers_down, 1 s later: spoiler_lever down over 0.6 s",
        "after 1 s: spoiler_lever down over 0.6 s",
        {"guard broken: After-landing items before the runway was clear", "Spoiler lever down: done too early"}, true);
}

void TestFlown::mistakesAreFound() {
    QFETCH(QString, id);
    QFETCH(QString, old);
    QFETCH(QString, changed);
    QFETCH(QStringList, losses);
    QFETCH(bool, isPassed);
    const Flow& shipped = flow(id.toStdString());
    QString hands = handsOf(shipped);
    const qsizetype at = hands.indexOf(old);
    QVERIFY2(at >= 0, "the row's text is not in the hands");
    hands.replace(at, old.size(), changed);
    const Score score = flown(shipped, hands, 1);
    QCOMPARE(lossesOf(score), losses);
    QCOMPARE(score.isPassed, isPassed);
}

void TestFlown::aSwitchServesAsReverser() {
    const Flow& landing = flow("landing_roll");
    QStringList lines;
    for (QString line : handsOf(landing).split('\n')) {
        if (line.contains(" 80 % over") || line.startsWith("due reverse_stowed"))
            continue;
        line.replace(" 15 % over 0.4 s", " 100 % over 0 s").replace(" 10 % over 0.6 s", " 0 % over 0 s");
        lines << line;
    }
    const Score score = flown(landing, lines.join('\n'), 1);
    QVERIFY2(score.isPassed, score.whyNotPassed.c_str());
    QCOMPARE(lossesOf(score), QStringList());
}

void TestFlown::alonePilotDoesBothSeats_data() {
    QTest::addColumn<QString>("id");
    QTest::addColumn<QString>("before");
    QTest::addColumn<QString>("added");
    QTest::newRow("taxi out") << "taxi_out"
                              << "due flap_reply"
                              << "";
    QTest::newRow("take-off") << "take_off"
                              << "due climb_thrust"
                              << "due gear_up, 0.5 s later: gear_lever up\n";
    QTest::newRow("landing roll") << "landing_roll"
                                  << "when stop_distance"
                                  << "due flap_up, 1 s later: flap_lever up\nafter 1.5 s: landing_lights off\n"
                                     "after 1 s: autobrake off\n";
}

void TestFlown::alonePilotDoesBothSeats() {
    QFETCH(QString, id);
    QFETCH(QString, before);
    QFETCH(QString, added);
    const Flow& shipped = flow(id.toStdString());
    QString hands = handsOf(shipped);
    QVERIFY(hands.contains(before));
    hands.insert(hands.indexOf(before), added);
    const Score score = flown(shipped, hands, 1, true);
    QVERIFY2(score.isPassed, score.whyNotPassed.c_str());
    QCOMPARE(lossesOf(score), QStringList());
}

QTEST_APPLESS_MAIN(TestFlown)
#include "test_flown.moc"
