#include <QtTest>

#include <filesystem>
#include <set>

#include "base/textfile.h"
#include "problemtext.h"
#include "procedure/library.h"
#include "session/mistakes.h"
#include "session/onscreenfacts.h"
#include "session/runloop.h"

using namespace flowhand;
using namespace std::chrono_literals;

/// Every shipped flow is flown by its own hands on the practice aircraft, from each seat and alone, well and wrongly.
class TestFlown : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void handsPass_data();
    void handsPass();
    void everyFlowHasMistakes_data();
    void everyFlowHasMistakes();
    void mistakesAreFound_data();
    void mistakesAreFound();
    void aSwitchServesAsReverser();
    void jumpsTakeTheAircraftToTheStep_data();
    void jumpsTakeTheAircraftToTheStep();

private:
    void flowRows() const;
    [[nodiscard]] const AircraftFolder& folder(const QString& name) const;
    [[nodiscard]] const Flow& flow(const QString& name) const;

    std::vector<AircraftFolder> m_library;
};

namespace {

/// No shipped flow takes longer.
constexpr Duration kLongestFlow = 15min;
/// What a selection a little off the middle of its band costs: the flap lever is moved when a person would move it.
constexpr std::int64_t kBandAllowance = 1'000;

struct Crew {
    std::string seat;
    bool isSolo = false;
    std::uint64_t seed = 1;
};

std::string besideHands(const Flow& flow, const char* ending) {
    return (std::filesystem::path(flow.file).parent_path() / "hands" / (flow.id + ending)).string();
}

QString nameOf(const AircraftFolder& folder, const Flow& flow) {
    return QString::fromStdString(folder.aircraft->folder + "/" + flow.id);
}

/// Of the flow's good hands; none when it has no hands or they have an error.
std::vector<HandLine> linesOf(const AircraftFolder& folder, const Flow& flow) {
    Problems problems;
    const Result<std::string> source = readFile(besideHands(flow, ".hands"));
    if (!source)
        return {};
    std::vector<HandLine> lines =
        parseHandScript(*source, besideHands(flow, ".hands"), *folder.aircraft, flow, problems);
    if (problems.hasErrors())
        qFatal("%s", qPrintable(problemText(problems)));
    return lines;
}

std::vector<Mistake> mistakesOf(const AircraftFolder& folder, const Flow& flow) {
    Problems problems;
    std::vector<Mistake> mistakes =
        loadMistakes(besideHands(flow, ".mistakes.toml"), linesOf(folder, flow), *folder.aircraft, flow, problems);
    if (problems.hasErrors())
        qWarning("%s", qPrintable(problemText(problems)));
    return mistakes;
}

/// The partner steers and flies as the good hands do, whatever the pilot's hands are.
RunSnapshot flown(const AircraftFolder& folder, const Flow& flow, std::vector<HandLine> hands, const Crew& crew) {
    RunParts parts;
    parts.aircraft = folder.aircraft.get();
    parts.flow = &flow;
    parts.hands.emplace(*folder.aircraft, std::move(hands));
    if (!crew.isSolo)
        parts.partnerHands.emplace(*folder.aircraft, linesOf(folder, flow));
    Result<PracticeAircraft> practice = PracticeAircraft::create(*folder.aircraft, flow.startPlace);
    if (!practice)
        qFatal("%s", describe(practice.error()).c_str());
    parts.practice.emplace(std::move(*practice));
    parts.header.setup.ownSeat = crew.seat;
    parts.header.setup.seed = crew.seed;
    parts.header.setup.isSolo = crew.isSolo;
    parts.header.setup.hasPartnerHands = !crew.isSolo;
    parts.header.setup.controls = onScreenFacts(*folder.aircraft);
    RunLoop loop(std::move(parts));
    loop.command(CommandKind::Start);
    Time time{};
    while (!loop.isEnded() && time < kLongestFlow)
        loop.advance(time += PracticeAircraft::kMotionPeriod);
    if (!loop.isEnded()) {
        loop.command(CommandKind::Stop);
        loop.advance(time + PracticeAircraft::kMotionPeriod);
    }
    return loop.snapshot();
}

/// What was lost, but for margins in bands, in the order of the ledger.
QStringList lossesOf(const Score& score) {
    QStringList losses;
    for (const LedgerLine& line : score.ledger)
        if (line.what != LossKind::SmallMargin)
            losses << QString::fromStdString(line.text.english());
    return losses;
}

/// The kinds of slips that `mistakes` hold: by what the hands do, or by what the run finds.
QStringList kindsOf(const std::vector<Mistake>& mistakes) {
    QStringList kinds;
    for (const Mistake& mistake : mistakes) {
        if (mistake.edit == "leave_out")
            kinds << "left out";
        if (mistake.edit == "swap")
            kinds << "swapped";
        for (const std::string& found : mistake.finds) {
            if (found.find(" s late (") != std::string::npos)
                kinds << "too late";
            if (found.find(" instead of: ") != std::string::npos || found.find(", wanted ") != std::string::npos)
                kinds << "wrong control";
            if (found.starts_with("guard broken: "))
                kinds << "guard broken";
        }
    }
    return kinds;
}

/// Whoever works one control all along, as the reply button through a checklist, does nothing else in its place when he
/// swaps two steps.
bool canBeSwapped(const Flow& flow, const std::string& seat) {
    std::set<std::vector<SignalId>> worked;
    for (const Step& step : flow.steps)
        if (step.kind == StepKind::Act && step.movedBy == seat)
            worked.insert(step.controls);
    return worked.size() > 1;
}

/// Steps that nobody has done, of either seat.
QStringList undoneOf(const Flow& flow, const RunSnapshot& run) {
    QStringList undone;
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const StepState state = run.results[i].state;
        if (state != StepState::Done && !(state == StepState::FoundSet && flow.steps[i].compareOnly))
            undone << QString::fromStdString(flow.steps[i].id);
    }
    return undone;
}

} // namespace

void TestFlown::initTestCase() {
    Problems problems;
    m_library = loadLibrary(PROCEDURES, problems);
    QVERIFY2(!problems.hasErrors(), qPrintable(problemText(problems)));
}

const AircraftFolder& TestFlown::folder(const QString& name) const {
    for (const AircraftFolder& each : m_library)
        if (name.section('/', 0, 0) == QString::fromStdString(each.aircraft->folder))
            return each;
    qFatal("there is no aircraft for '%s'", qPrintable(name));
}

const Flow& TestFlown::flow(const QString& name) const {
    for (const Flow& candidate : folder(name).flows)
        if (nameOf(folder(name), candidate) == name)
            return candidate;
    qFatal("there is no flow '%s'", qPrintable(name));
}

void TestFlown::flowRows() const {
    QTest::addColumn<QString>("name");
    for (const AircraftFolder& each : m_library)
        for (const Flow& candidate : each.flows)
            QTest::newRow(qPrintable(nameOf(each, candidate))) << nameOf(each, candidate);
}

void TestFlown::handsPass_data() {
    QTest::addColumn<QString>("name");
    QTest::addColumn<QString>("seat");
    QTest::addColumn<bool>("isSolo");
    QTest::addColumn<quint64>("seed");
    for (const AircraftFolder& each : m_library)
        for (const Flow& candidate : each.flows) {
            const QString name = nameOf(each, candidate);
            const std::vector<std::string>& seats = each.aircraft->seats;
            const auto row = [&](const std::string& seat, bool isSolo, quint64 seed) {
                QTest::addRow("%s, %s%s, partner %llu", qPrintable(name), seat.c_str(), isSolo ? " alone" : "", seed)
                    << name << QString::fromStdString(seat) << isSolo << seed;
            };
            for (const std::string& seat : seats)
                row(seat, seats.size() == 1, 1);
            if (seats.size() == 1)
                continue;
            row(seats.front(), true, 1);
            row(seats.front(), false, 2);
            row(seats.front(), false, 3);
        }
}

void TestFlown::handsPass() {
    QFETCH(QString, name);
    QFETCH(QString, seat);
    QFETCH(bool, isSolo);
    QFETCH(quint64, seed);
    const Flow& shipped = flow(name);
    const std::vector<HandLine> lines = linesOf(folder(name), shipped);
    QVERIFY2(!lines.empty(), "every shipped flow has hands that fly it");
    const RunSnapshot run = flown(folder(name), shipped, lines, {seat.toStdString(), isSolo, seed});
    QCOMPARE(lossesOf(run.score).join('\n'), QString());
    QCOMPARE(undoneOf(shipped, run).join('\n'), QString());
    if (!run.score.isScored)
        return; // this seat has nothing to do in it but to look
    QVERIFY2(run.score.isPassed, run.score.whyNotPassed.english().c_str());
    QVERIFY(run.score.milliPoints >= 100'000 - kBandAllowance); // in sight of the middle of each band
}

void TestFlown::everyFlowHasMistakes_data() {
    flowRows();
}

void TestFlown::everyFlowHasMistakes() {
    QFETCH(QString, name);
    const QStringList kinds = kindsOf(mistakesOf(folder(name), flow(name)));
    for (const char* kind : {"left out", "too late", "wrong control", "guard broken"})
        QVERIFY2(kinds.contains(kind), kind);
    if (canBeSwapped(flow(name), folder(name).aircraft->seats.front()))
        QVERIFY2(kinds.contains("swapped"), "swapped");
}

void TestFlown::mistakesAreFound_data() {
    QTest::addColumn<QString>("name");
    QTest::addColumn<int>("index");
    for (const AircraftFolder& each : m_library)
        for (const Flow& candidate : each.flows) {
            const std::vector<Mistake> mistakes = mistakesOf(each, candidate);
            for (std::size_t i = 0; i < mistakes.size(); ++i)
                QTest::addRow("%s: %s", qPrintable(nameOf(each, candidate)), mistakes[i].title.c_str())
                    << nameOf(each, candidate) << static_cast<int>(i);
        }
}

void TestFlown::mistakesAreFound() {
    QFETCH(QString, name);
    QFETCH(int, index);
    const Flow& shipped = flow(name);
    const AircraftFolder& its = folder(name);
    const Mistake mistake = mistakesOf(its, shipped)[static_cast<std::size_t>(index)];
    const std::vector<std::string>& seats = its.aircraft->seats;
    const RunSnapshot run = flown(its, shipped, mistake.lines, {seats.front(), seats.size() == 1, 1});
    QStringList finds;
    for (const std::string& text : mistake.finds)
        finds << QString::fromStdString(text);
    QCOMPARE(lossesOf(run.score).join('\n'), finds.join('\n'));
    QCOMPARE(run.score.isPassed, mistake.doesPass);
}

void TestFlown::jumpsTakeTheAircraftToTheStep_data() {
    QTest::addColumn<QString>("name");
    QTest::addColumn<int>("index");
    for (const AircraftFolder& each : m_library)
        for (const Flow& candidate : each.flows)
            for (std::size_t i = 0; i < candidate.steps.size(); ++i)
                if (!candidate.steps[i].jumpPlace.empty())
                    QTest::addRow("%s, %s", qPrintable(nameOf(each, candidate)), candidate.steps[i].id.c_str())
                        << nameOf(each, candidate) << static_cast<int>(i);
}

/// The step's own place is a good one: its turn comes soon after.
void TestFlown::jumpsTakeTheAircraftToTheStep() {
    QFETCH(QString, name);
    QFETCH(int, index);
    const Flow& shipped = flow(name);
    const AircraftFolder& its = folder(name);
    const auto step = static_cast<std::size_t>(index);
    RunParts parts;
    parts.aircraft = its.aircraft.get();
    parts.flow = &shipped;
    parts.practice.emplace(*PracticeAircraft::create(*its.aircraft, shipped.startPlace));
    parts.header.setup.ownSeat = its.aircraft->seats.front();
    parts.header.setup.isSolo = true;
    parts.header.setup.controls = onScreenFacts(*its.aircraft);
    RunLoop loop(std::move(parts));
    loop.jump(shipped.steps[step].id);
    for (Time time{}; time < 60s; time += PracticeAircraft::kMotionPeriod)
        loop.advance(time);
    QVERIFY(loop.phase() == SessionPhase::Running || loop.phase() == SessionPhase::Ended);
    QVERIFY(loop.snapshot().results[step].due < kForever);
}

void TestFlown::aSwitchServesAsReverser() {
    const Flow& landing = flow("twin_jet/landing_roll");
    QStringList lines;
    const Result<std::string> hands = readFile(besideHands(landing, ".hands"));
    QVERIFY(hands);
    for (QString line : QString::fromStdString(*hands).split('\n')) {
        if (line.contains(" 80 % over") || line.startsWith("due reverse_stowed"))
            continue;
        line.replace(" 15 % over 0.4 s", " 100 % over 0 s").replace(" 10 % over 0.6 s", " 0 % over 0 s");
        lines << line;
    }
    Problems problems;
    const AircraftFolder& jet = folder("twin_jet/");
    const std::vector<HandLine> switched =
        parseHandScript(lines.join('\n').toStdString(), "switched.hands", *jet.aircraft, landing, problems);
    const Score score = flown(jet, landing, switched, {"captain"}).score;
    QVERIFY2(score.isPassed, score.whyNotPassed.english().c_str());
    QCOMPARE(lossesOf(score), QStringList());
}

QTEST_APPLESS_MAIN(TestFlown)
#include "test_flown.moc"
