#include <QtTest>

#include <set>

#include "session/cases.h"
#include "session/partnerpace.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

/// A call and its reply, an order to the partner, and a step after it.
const char* const kCrew = R"toml(
[[step]]
id = "call"
title = "80 kt call"
kind = "say"
seat = "first_officer"
cue = { by = "first_officer", text = "Eighty" }
when = "airspeed > 80 kt"
[[step]]
id = "reply"
title = "Reply"
kind = "reply"
within = "2 s"
[[step]]
id = "gear"
title = "Gear lever up"
seat = "first_officer"
ordered_by = "captain"
reply = "Gear up"
done = "gear_lever == up"
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
)toml";

const char* const kCued = R"toml(
[[step]]
id = "light"
title = "Taxi light on"
cue = { by = "first_officer", text = "Light on" }
done = "taxi_light"
)toml";

const char* const kPartnerFlap = R"toml(
[[step]]
id = "flap"
title = "Flap lever to 12"
seat = "first_officer"
done = "flap_lever == 12"
within = "4 s"
[[step]]
id = "more"
title = "Flap lever to 22"
done = "flap_lever == 22"
)toml";

std::string partnerless(Bench& bench) {
    return bench.events("run-started step-moved step-seen partner-moved words-began");
}

SessionSetup wiredFlap() {
    SessionSetup setup = onScreen();
    ControlFacts& facts = setup.controls[indexOf(*cockpit().signals.find("flap_lever"))];
    facts = {};
    facts.isWired = true;
    facts.controlName = "flap lever";
    return setup;
}

/// When the partner's flap lever got to 12.
double partnerSeconds(const Bench& bench) {
    for (const Event& event : bench.all)
        if (event.kind == EventKind::PartnerMoved)
            return seconds(event.time);
    return -1.0;
}

} // namespace

class TestCrew : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void partnerCallsAndMoves();
    void aSpokenCueIsDueWhenItsWordsEnd();
    void doneBeforeTheWordsEndIsNoFault();
    void wordsWaitForEachOther();
    void pilotSaysHisOwnWords();
    void aReplyNeedsItsQuestion();
    void theOtherSeatIsTheOtherWayRound();
    void soloDoesBothSeats();
    void paceIsHumanAndSeeded();
    void partnerFindsItSet();
    void pilotMayDoThePartnersStep();
    void partnerFindsPlacesForAllKindsOfControls();
    void partnerErrsAtAGivenRate();
    void partnerWhoForgetsComesLate();
    void realLeverHasToBeMatched();
    void handRegainsTheLeverWhenItSettles();
    void nextStepOfTheLeverMatchesToo();
    void leverThatStandsThereNeedsNoMatch();
    void leverMatchedInAHold();
    void foundLeverIsNotRegained();
    void leverFoundInPlaceIsMatched();
};

void TestCrew::partnerCallsAndMoves() {
    const Flow flow = flowOf(kCrew);
    Bench bench(flow, onScreen());
    bench.begin("airspeed = 0 kt");
    // "Eighty" takes 0.63 s.
    bench.play("5 airspeed = 81 kt\n6.5 reply_button = on\n6.6 reply_button = off\n20 wait");
    const double moved = partnerSeconds(bench);
    QVERIFY(moved >= 7.2 && moved <= 8.41);
    const QString events = QString::fromStdString(bench.events());
    QVERIFY2(events.startsWith("5 words-began first_officer: Eighty, 5.63 due call, 5.63 done call, 5.63 due reply, "
                               "6.5 done reply, 6.5 due gear, "),
             qPrintable(events));
    QVERIFY(events.contains("partner-moved gear_lever up"));
    QVERIFY(events.contains("words-began first_officer: Gear up"));
    QVERIFY(events.contains("due light"));
    const Score score = bench.session.score();
    QCOMPARE(score.weight, std::int64_t(2)); // the captain's own
}

void TestCrew::aSpokenCueIsDueWhenItsWordsEnd() {
    const Flow flow = flowOf(kCued);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("3 wait"); // 8 letters: 0.74 s
    QCOMPARE(bench.events(), std::string("0 words-began first_officer: Light on, 0.74 due light"));
    QCOMPARE(bench.session.results()[0].due, Time(740ms));
}

void TestCrew::doneBeforeTheWordsEndIsNoFault() {
    const Flow flow = flowOf(kCued);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("0.2 taxi_light = on\n3 wait");
    QCOMPARE(bench.events(), std::string("0 words-began first_officer: Light on, 0.5 done light, "
                                         "0.74 run-ended completed"));
    QCOMPARE(bench.session.score().milliPoints, std::int64_t(100'000));
}

void TestCrew::wordsWaitForEachOther() {
    const Flow flow = flowOf(std::string(kCued) + R"toml(
[[step]]
id = "brake"
title = "Parking brake on"
after = []
cue = { by = "ground", text = "Park" }
done = "parking_brake"
)toml");
    Bench bench(flow, onScreen());
    bench.begin();
    QCOMPARE(bench.session.view().saying, std::string("Light on"));
    QCOMPARE(bench.session.view().sayingBy, std::string("first_officer"));
    QCOMPARE(bench.session.view().wordsBegun, std::uint64_t(1));
    bench.play("3 wait");
    QCOMPARE(bench.session.view().wordsBegun, std::uint64_t(2));
    QCOMPARE(bench.events(), std::string("0 words-began first_officer: Light on, 0.74 words-began ground: Park, "
                                         "0.74 due light, 1.26 due brake"));
    QCOMPARE(bench.session.view().saying, std::string());
}

void TestCrew::pilotSaysHisOwnWords() {
    const Flow flow = flowOf("[[step]]\nid = \"say\"\ntitle = \"Call\"\nkind = \"say\"\n"
                             "cue = { by = \"captain\", text = \"Set thrust\" }\n");
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("2 reply_button = on\n3 wait");
    QCOMPARE(bench.events(), std::string("0 due say, 2 done say, 2 run-ended completed"));
    QCOMPARE(bench.session.score().weight, std::int64_t(1));
}

void TestCrew::aReplyNeedsItsQuestion() {
    const Flow flow = flowOf(kCrew);
    Bench bench(flow, onScreen());
    bench.begin("airspeed = 0 kt");
    bench.play("1 reply_button = on\n1.2 reply_button = off\n5 airspeed = 81 kt\n"
               "5.2 reply_button = on\n5.4 reply_button = off\n6 reply_button = on\n6.1 wait");
    QCOMPARE(partnerless(bench),
             std::string("5.63 due call, 5.63 done call, 5.63 due reply, 6 done reply, 6 due gear"));
}

void TestCrew::theOtherSeatIsTheOtherWayRound() {
    const Flow flow = flowOf(kCrew);
    SessionSetup setup = onScreen();
    setup.ownSeat = "first_officer";
    Bench bench(flow, setup);
    bench.begin("airspeed = 81 kt");
    // Now the call is the pilot's, on the reply button; the captain replies by himself and orders aloud.
    bench.play("1 reply_button = on\n6 gear_lever = up\n20 wait");
    const QString events = QString::fromStdString(bench.events("run-started step-moved step-seen"));
    QVERIFY2(events.startsWith("0 due call, 1 done call, 1 due reply, "), qPrintable(events));
    QVERIFY(events.contains("words-began captain: Gear lever up"));
    QVERIFY(events.contains("done gear"));
    QVERIFY(events.contains("partner-moved taxi_light on"));
    QVERIFY(events.endsWith("run-ended completed"));
    QCOMPARE(bench.session.score().weight, std::int64_t(2));
}

void TestCrew::soloDoesBothSeats() {
    const Flow flow = flowOf(kCrew);
    SessionSetup setup = onScreen();
    setup.isSolo = true;
    Bench bench(flow, setup);
    bench.begin("airspeed = 81 kt");
    bench.play("2 reply_button = on\n3 gear_lever = up\n4 taxi_light = on\n9 wait");
    QCOMPARE(bench.events(),
             std::string("0 words-began cockpit: Eighty, 0.63 due call, 0.63 done call, 0.63 due reply, 2 done reply, "
                         "2 due gear, 3.5 done gear, 3.5 due light, 4.3 done light, 4.3 run-ended completed"));
    QCOMPARE(bench.session.score().weight, std::int64_t(3));
}

void TestCrew::paceIsHumanAndSeeded() {
    std::set<double> moments;
    for (std::uint64_t seed = 1; seed <= 50; ++seed) {
        const PartnerPace pace(seed, 0.0);
        for (std::size_t step = 0; step < 20; ++step) {
            const Duration delay = pace.delay(step);
            QVERIFY(delay >= 700ms && delay <= 1900ms);
            QVERIFY(delay % kTick == Duration(0));
            QVERIFY(pace.error(step) == PartnerError::None);
            moments.insert(seconds(delay));
        }
    }
    QVERIFY(moments.size() > 900);
    // The same on every machine.
    QCOMPARE(PartnerPace(1, 0.0).delay(0), PartnerPace(1, 0.5).delay(0));
    QCOMPARE(speakingTime(10), Duration(850ms));
}

void TestCrew::partnerFindsItSet() {
    const Flow flow = flowOf(kPartnerFlap);
    Bench bench(flow, onScreen());
    bench.begin("flap_lever = 12");
    bench.play("1 flap_lever = 22\n3 wait");
    QCOMPARE(bench.events(),
             std::string("0 due flap, 0 found-set flap, 0 due more, 1.5 done more, 1.5 run-ended completed"));
}

void TestCrew::pilotMayDoThePartnersStep() {
    const Flow flow = flowOf(kPartnerFlap);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("0.1 flap_lever = 12\n3 wait");
    QCOMPARE(bench.events(), std::string("0 due flap, 0.6 found-set flap, 0.6 due more"));
    QVERIFY(bench.session.score().ledger.back().what == LossKind::NotDone); // no extra
    QCOMPARE(bench.session.score().ledger.size(), std::size_t(1));
}

void TestCrew::partnerFindsPlacesForAllKindsOfControls() {
    std::string text;
    for (const char* done : {"rise(takeoff_button)", "flap_lever >= 4", "taxi_light",
                             "thrust_lever_1 > 40 % and thrust_lever_1 < 50 %", "not parking_brake"})
        text += std::string("[[step]]\nid = \"s") + std::to_string(text.size()) +
                "\"\ntitle = \"Step\"\nseat = \"first_officer\"\ndone = \"" + done + "\"\n";
    const Flow flow = flowOf(text);
    Bench bench(flow, onScreen());
    bench.begin("parking_brake = on; thrust_lever_1 = 0 %");
    bench.until(40.0);
    QVERIFY(bench.session.phase() == SessionPhase::Ended);
    for (const StepResult& result : bench.session.results())
        QVERIFY(result.state == StepState::Done);
    std::string moves;
    for (const Event& event : bench.all)
        if (event.kind == EventKind::PartnerMoved)
            moves += cockpit().signals[event.signal].name + " " +
                     valueText(cockpit().signals[event.signal], event.value) + ", ";
    QCOMPARE(moves, std::string("takeoff_button on, takeoff_button off, flap_lever 4, taxi_light on, "
                                "thrust_lever_1 45 %, parking_brake off, "));
    QVERIFY(!bench.session.score().isScored);
}

void TestCrew::partnerErrsAtAGivenRate() {
    int errors = 0;
    for (std::uint64_t seed = 0; seed < 1000; ++seed)
        errors += PartnerPace(seed, 0.2).error(3) == PartnerError::None ? 0 : 1;
    QVERIFY(errors > 150 && errors < 250);
    const Flow flow = flowOf(kPartnerFlap);
    SessionSetup setup = onScreen();
    setup.partnerErrorRate = 1.0;
    while (PartnerPace(setup.seed, 1.0).error(0) != PartnerError::WrongValue)
        ++setup.seed;
    Bench bench(flow, setup);
    bench.begin();
    // The wrong gate; the pilot sees it and puts it right.
    bench.play("5 flap_lever = 12\n6 wait");
    const QString events = QString::fromStdString(bench.events());
    QVERIFY2(events.contains("partner-moved flap_lever 4"), qPrintable(events));
    QVERIFY2(events.endsWith("5.5 found-set flap, 5.5 due more"), qPrintable(events));
}

void TestCrew::partnerWhoForgetsComesLate() {
    const Flow flow = flowOf(kPartnerFlap);
    SessionSetup setup = onScreen();
    setup.partnerErrorRate = 1.0;
    while (PartnerPace(setup.seed, 1.0).error(0) != PartnerError::Late)
        ++setup.seed;
    Bench bench(flow, setup);
    bench.begin();
    bench.until(29.0);
    QVERIFY(partnerSeconds(bench) > 20.0); // late is 10 s
    QVERIFY(bench.session.results()[0].state == StepState::Done);
}

void TestCrew::realLeverHasToBeMatched() {
    const Flow flow = flowOf(kPartnerFlap);
    Bench bench(flow, wiredFlap());
    bench.begin();
    bench.until(5.0);
    const QString moved = QString::number(partnerSeconds(bench));
    QVERIFY(QString::fromStdString(bench.events()).contains("match-wanted flap_lever 12"));
    QCOMPARE(bench.session.view().toMatch.size(), std::size_t(1));
    QCOMPARE(bench.session.view().toMatch[0].wanted, Value::position(2));
    QCOMPARE(bench.session.view().toMatch[0].found, Value::position(0));
    // On its way the lever changes nothing; the partner's gate counts.
    bench.play("6 flap_lever = between\n6.2 flap_lever = 4\n6.4 flap_lever = 12");
    const SignalId flap = *cockpit().signals.find("flap_lever");
    QCOMPARE(bench.session.values()[indexOf(flap)], Value::position(2));
    bench.play("8 wait");
    QCOMPARE(bench.events(), std::string("6.9 matched flap_lever 12"));
    QVERIFY(bench.session.view().toMatch.empty());
    bench.play("9 flap_lever = 22\n10 wait");
    QCOMPARE(bench.events(), std::string("9.5 done more, 9.5 run-ended completed"));
}

void TestCrew::handRegainsTheLeverWhenItSettles() {
    const Flow flow = flowOf(kPartnerFlap);
    Bench bench(flow, wiredFlap());
    bench.begin();
    bench.until(5.0);
    (void)bench.events();
    bench.play("6 flap_lever = 4\n6.4 wait");
    const SignalId flap = *cockpit().signals.find("flap_lever");
    QCOMPARE(bench.session.values()[indexOf(flap)], Value::position(2));
    bench.play("7 wait");
    QCOMPARE(bench.session.values()[indexOf(flap)], Value::position(1));
    QCOMPARE(bench.session.view().toMatch.size(), std::size_t(1));
    bench.play("8 flap_lever = 12\n9 wait");
    QCOMPARE(bench.events(), std::string("8.5 matched flap_lever 12")); // and no extra on the way
}

void TestCrew::nextStepOfTheLeverMatchesToo() {
    const Flow flow = flowOf(kPartnerFlap);
    Bench bench(flow, wiredFlap());
    bench.begin();
    bench.until(5.0);
    (void)bench.events();
    bench.play("6 flap_lever = 22\n7 wait");
    QCOMPARE(bench.events(), std::string("6.5 matched flap_lever 22, 6.5 done more, 6.5 run-ended completed"));
    QCOMPARE(bench.session.results()[1].done, Time(6500ms)); // when the signal was the hand's again
}

void TestCrew::leverThatStandsThereNeedsNoMatch() {
    const Flow flow = flowOf(std::string(kPartnerFlap));
    Bench bench(flow, wiredFlap());
    bench.begin();
    bench.play("0.1 flap_lever = 12\n0.3 wait"); // not settled when the partner would reach for it
    bench.until(5.0);
    QVERIFY(!QString::fromStdString(bench.events()).contains("match-wanted"));
}

void TestCrew::leverMatchedInAHold() {
    const Flow flow = flowOf(kPartnerFlap);
    Bench bench(flow, wiredFlap());
    bench.begin();
    bench.until(5.0);
    (void)bench.events();
    bench.play("6 hold\n7 flap_lever = 12\n8 resume\n9 flap_lever = 22\n10 wait");
    QCOMPARE(bench.events("step-moved step-seen words-began"),
             std::string("6 held , 8 resumed flap, 8 matched flap_lever 12, 9.5 done more"));
}

/// Its device was lost and came back; the run goes on before the lever is heard of, or after.
void TestCrew::foundLeverIsNotRegained() {
    const Flow flow = flowOf(kPartnerFlap);
    for (const char* const script :
         {"6 found flap_lever = unknown\n6.1 hold\n7 resume\n7.1 found flap_lever = up\n9 wait",
          "6 found flap_lever = unknown\n6.1 hold\n6.9 found flap_lever = up\n7 resume\n9 wait"}) {
        Bench bench(flow, wiredFlap());
        bench.begin();
        bench.until(5.0);
        (void)bench.events();
        bench.play(script);
        QCOMPARE(bench.events("step-moved step-seen words-began"), std::string("6.1 held , 7 resumed flap"));
        const SignalId flap = *cockpit().signals.find("flap_lever");
        QCOMPARE(bench.session.values()[indexOf(flap)], Value::position(2));
        QCOMPARE(bench.session.view().toMatch.size(), std::size_t(1));
        QCOMPARE(bench.session.view().toMatch[0].found, Value::position(0));
        bench.play("10 flap_lever = 4\n11 wait");
        QCOMPARE(bench.session.values()[indexOf(flap)], Value::position(1));
    }
}

void TestCrew::leverFoundInPlaceIsMatched() {
    const Flow flow = flowOf(kPartnerFlap);
    Bench bench(flow, wiredFlap());
    bench.begin();
    bench.until(5.0);
    (void)bench.events();
    bench.play(
        "6 found flap_lever = unknown\n6.1 hold\n7 resume\n7.1 found flap_lever = 12\n8 flap_lever = 22\n9 wait");
    QCOMPARE(bench.events("step-moved step-seen words-began"),
             std::string("6.1 held , 7 resumed flap, 7.1 matched flap_lever 12, 8.5 done more"));
    QVERIFY(bench.session.view().toMatch.empty());
}

QTEST_APPLESS_MAIN(TestCrew)
#include "test_crew.moc"
