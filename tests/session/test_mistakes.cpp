#include <QtTest>

#include "session/bench.h"
#include "session/hands.h"
#include "session/mistakes.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

constexpr const char* kSteps = R"(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "thrust"
title = "Thrust lever 1 up"
seat = "first_officer"
done = "thrust_lever_1 > 30 %"
[[step]]
id = "brake"
title = "Parking brake on"
done = "parking_brake"
)";

constexpr const char* kHands = "due light, 1 s later: taxi_light on\n"
                               "due thrust, 1 s later: thrust_lever_1 40 % over 0 s\n"
                               "after 0.5 s: press reply_button\n"
                               "after 0.2 s: tiller 10 deg over 0 s\n"
                               "due brake, 1 s later: parking_brake on\n";

} // namespace

/// Hands derived from good ones: mistakes, and what is left of a script for one seat.
class TestMistakes : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void anEditChangesTheLines_data();
    void anEditChangesTheLines();
    void errorsNameTheirPlace_data();
    void errorsNameTheirPlace();
    void aMistakeSaysWhatIsFound();
    void aSeatDoesItsOwnLines_data();
    void aSeatDoesItsOwnLines();

private:
    [[nodiscard]] std::vector<HandLine> good() const;
    [[nodiscard]] std::vector<Mistake> mistakes(const QString& text, Problems& problems) const;
    [[nodiscard]] QStringList movesOf(Hands hands) const;

    const Flow m_flow = flowOf(kSteps);
};

std::vector<HandLine> TestMistakes::good() const {
    Problems problems;
    return parseHandScript(kHands, "test.hands", cockpit(), m_flow, problems);
}

std::vector<Mistake> TestMistakes::mistakes(const QString& text, Problems& problems) const {
    const QString head = "format = 1\n[[mistake]]\ntitle = \"a slip\"\n";
    return parseMistakes((head + text).toStdString(), "test.mistakes.toml", good(), cockpit(), m_flow, problems);
}

/// "1 taxi_light on", in seconds; each step becomes due 10 s after the one before, the first at 0 s.
QStringList TestMistakes::movesOf(Hands hands) const {
    QStringList moves;
    std::vector<Value> values(cockpit().signals.size());
    for (Time time{}; time <= 60s; time += 100ms) {
        std::vector<StepTurn> steps;
        for (std::size_t i = 0; i < m_flow.steps.size(); ++i)
            steps.push_back({time >= static_cast<int>(i) * Time(10s), false});
        hands.see(time, values, steps);
        while (hands.nextMove() <= time) {
            std::vector<Sample> samples;
            hands.move(time, samples);
            for (const Sample& sample : samples) {
                const Signal& moved = cockpit().signals[sample.signal];
                values[indexOf(sample.signal)] = sample.value;
                moves << QString("%1 %2 %3%4")
                             .arg(seconds(time))
                             .arg(moved.name.c_str(), valueText(moved, sample.value).c_str(),
                                  sample.actor == Actor::Partner ? " (partner)" : "");
            }
            hands.see(time, values, steps);
        }
    }
    return moves;
}

void TestMistakes::anEditChangesTheLines_data() {
    QTest::addColumn<QString>("edit");
    QTest::addColumn<QStringList>("moves");
    const QStringList thrust{"11 thrust_lever_1 40 %", "11.5 reply_button on", "11.7 reply_button off",
                             "11.9 tiller 10 deg"};
    QTest::newRow("leave out") << "leave_out = \"thrust\"" << QStringList{"1 taxi_light on", "21 parking_brake on"};
    QTest::newRow("late") << "late = \"light\"\nby = \"3 s\""
                          << QStringList{"4 taxi_light on"} + thrust + QStringList{"21 parking_brake on"};
    QTest::newRow("swap") << "swap = [\"light\", \"brake\"]"
                          << QStringList{"1 parking_brake on", "2 taxi_light on"} + thrust;
    QTest::newRow("before") << "before = \"brake\"\nhands = \"after 2 s: taxi_light off\""
                            << QStringList{"1 taxi_light on"} + thrust +
                                   QStringList{"13.9 taxi_light off", "21 parking_brake on"};
    QTest::newRow("instead of") << "instead_of = \"thrust\"\nhands = \"\"\"\ndue thrust: parking_brake on\nafter 1 s: "
                                   "parking_brake off\"\"\""
                                << QStringList{"1 taxi_light on", "10 parking_brake on", "11 parking_brake off",
                                               "21 parking_brake on"};
}

void TestMistakes::anEditChangesTheLines() {
    QFETCH(QString, edit);
    QFETCH(QStringList, moves);
    Problems problems;
    const std::vector<Mistake> read = mistakes(edit + "\nfinds = \"something\"", problems);
    QVERIFY2(read.size() == 1, problems.all().empty() ? "" : describe(problems.all().front().error).c_str());
    QCOMPARE(movesOf(Hands(cockpit(), read.front().lines)), moves);
}

void TestMistakes::errorsNameTheirPlace_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("message");
    QTest::newRow("no edit") << "finds = \"x\""
                             << "test.mistakes.toml:2:1: a mistake is one of leave_out";
    QTest::newRow("two edits") << "leave_out = \"light\"\nlate = \"light\"\nfinds = \"x\""
                               << "test.mistakes.toml:2:1: a mistake is one of leave_out, swap, late, before and "
                                  "instead_of, not leave_out with late";
    QTest::newRow("step") << "leave_out = \"lihgt\"\nfinds = \"x\""
                          << "test.mistakes.toml:4:13: the flow has no step 'lihgt'; did you mean 'light'?";
    QTest::newRow("one to swap") << "swap = [\"light\"]\nfinds = \"x\""
                                 << "test.mistakes.toml:4:8: 'swap' takes two steps";
    QTest::newRow("swapped backwards") << "swap = [\"brake\", \"light\"]\nfinds = \"x\""
                                       << "test.mistakes.toml:4:8: 'swap' names the steps in the order";
    QTest::newRow("late by what") << "late = \"light\"\nfinds = \"x\""
                                  << "test.mistakes.toml:4:8: 'late' needs how long";
    QTest::newRow("no finds") << "leave_out = \"light\""
                              << "test.mistakes.toml:2:1: a mistake needs 'finds'";
    QTest::newRow("a line") << "before = \"light\"\nhands = \"\"\"\nafter 1 s: taxi_light on\nafter 1 s: taxi_ligt "
                               "on\"\"\"\nfinds = \"x\""
                            << "test.mistakes.toml:7:12: there is no control 'taxi_ligt'";
    QTest::newRow("key") << "leave_out = \"light\"\nfind = \"x\"\nfinds = \"x\""
                         << "test.mistakes.toml:5:8: a mistake has no 'find'";
}

void TestMistakes::errorsNameTheirPlace() {
    QFETCH(QString, text);
    QFETCH(QString, message);
    Problems problems;
    QVERIFY(mistakes(text, problems).empty());
    QVERIFY(problems.hasErrors());
    const QString told = QString::fromStdString(describe(problems.firstError()));
    QVERIFY2(told.startsWith(message), qPrintable(told));
}

void TestMistakes::aMistakeSaysWhatIsFound() {
    Problems problems;
    const std::vector<Mistake> read =
        mistakes("leave_out = \"light\"\nfinds = [\"Taxi light on: not done\", \"more\"]\npasses = false", problems);
    QCOMPARE(read.size(), std::size_t(1));
    QCOMPARE(read.front().title, std::string("a slip"));
    QCOMPARE(read.front().finds, (std::vector<std::string>{"Taxi light on: not done", "more"}));
    QVERIFY(!read.front().doesPass);
}

void TestMistakes::aSeatDoesItsOwnLines_data() {
    QTest::addColumn<QString>("seat");
    QTest::addColumn<bool>("isSolo");
    QTest::addColumn<bool>("isPartners");
    QTest::addColumn<QStringList>("moves");
    QTest::newRow("captain") << "captain" << false << false << QStringList{"1 taxi_light on", "21 parking_brake on"};
    QTest::newRow("first officer") << "first_officer" << false << false
                                   << QStringList{"11 thrust_lever_1 40 %", "11.5 reply_button on",
                                                  "11.7 reply_button off", "11.9 tiller 10 deg"};
    QTest::newRow("alone") << "captain" << true << false
                           << QStringList{"1 taxi_light on",       "11 thrust_lever_1 40 %", "11.5 reply_button on",
                                          "11.7 reply_button off", "11.9 tiller 10 deg",     "21 parking_brake on"};
    QTest::newRow("the captain's partner")
        << "captain" << false << true
        << QStringList{"11 thrust_lever_1 40 % (partner)", "11.9 tiller 10 deg (partner)"};
    QTest::newRow("the first officer's partner") << "first_officer" << false << true << QStringList{};
}

void TestMistakes::aSeatDoesItsOwnLines() {
    QFETCH(QString, seat);
    QFETCH(bool, isSolo);
    QFETCH(bool, isPartners);
    QFETCH(QStringList, moves);
    SessionSetup setup = onScreen();
    setup.ownSeat = seat.toStdString();
    setup.isSolo = isSolo;
    Hands hands(cockpit(), good());
    if (isPartners)
        hands.standInForPartner(m_flow, setup);
    else
        hands.leaveToPartner(m_flow, setup);
    QCOMPARE(movesOf(std::move(hands)), moves);
}

QTEST_APPLESS_MAIN(TestMistakes)
#include "test_mistakes.moc"
