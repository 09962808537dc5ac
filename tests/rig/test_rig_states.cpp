#include <QtTest>

#include "twinjet.h"

using namespace flowhand;

class TestRigStates : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void toggleWithAStart();
    void toggleAsksForItsState();
    void toggleResyncs();
    void toggleKeepsItsStateWhenUnplugged();
    void aPairThatSetsAndClears();
    void quadratureFollowsTheTable_data();
    void quadratureFollowsTheTable();
    void encoderCountsDetents();
    void encoderMissesACode();
    void encoderForPositionsStopsAtTheEnd();
    void relativeWheelCountsDifferences();
    void stepButtons();
    void parkingLatch();
    void splitAxis();
    void splitAxisNeedsItsHysteresis();
    void switchedAxis();
    void twoAxesDifference();
    void twoAxesMax();
    void twoAxesSplit();
};

namespace {

const std::string kToggle = "[[control]]\nsignal = \"taxi_light\"\nwiring = \"toggle\"\ninput = \"button 1\"\n";
const std::string kEncoder = "[[control]]\nsignal = \"pitch_trim\"\nwiring = \"encoder\"\n"
                             "input = [\"button 1\", \"button 2\"]\nstart = \"0 deg\"\nper_detent = \"0.1 deg\"\n";

void press(Bench& bench, double time, const std::string& button) {
    bench.send(time, button, 1);
    bench.send(time + 50, button, 0);
}

/// One quarter period of an encoder a millisecond, from code to code (A and B as two bits).
void turn(Bench& bench, double time, const std::vector<int>& codes) {
    for (std::size_t i = 0; i < codes.size(); ++i) {
        bench.send(time + double(i), "button 1", codes[i] >> 1);
        bench.send(time + double(i), "button 2", codes[i] & 1);
    }
}

} // namespace

void TestRigStates::toggleWithAStart() {
    Bench bench(kToggle + "start = \"off\"\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "button 1", 1); // found pressed: no press
    QCOMPARE(bench.text("taxi_light"), std::string("off"));
    bench.send(50, "button 1", 0);
    press(bench, 100, "button 1");
    QCOMPARE(bench.text("taxi_light"), std::string("on"));
    QVERIFY(bench.lastActor() == Actor::Hand);
    press(bench, 300, "button 1");
    QCOMPARE(bench.text("taxi_light"), std::string("off"));
    QVERIFY(!bench.rig().facts()[indexOf(twinJet().id("taxi_light"))].isMomentary);
}

void TestRigStates::toggleAsksForItsState() {
    Bench bench("[[control]]\nsignal = \"autobrake\"\nwiring = \"toggle\"\ninput = \"button 1\"\nstart = \"ask\"\n"
                "values = [\"off\", \"low\", \"high\"]\n");
    QCOMPARE(bench.problems(), std::string());
    bench.openAll();
    press(bench, 100, "button 1");
    QCOMPARE(bench.text("autobrake"), std::string("not known yet"));
    QCOMPARE(bench.rig().asked().size(), std::size_t(1));
    std::vector<Sample> samples;
    bench.rig().declare(twinJet().id("autobrake"), twinJet().value("autobrake", "low"), Bench::at(200), samples);
    QCOMPARE(samples.size(), std::size_t(1));
    QVERIFY(samples[0].actor == Actor::Machine);
    QVERIFY(bench.rig().asked().empty());
    press(bench, 300, "button 1");
    QCOMPARE(bench.text("autobrake"), std::string("high"));
    press(bench, 500, "button 1");
    QCOMPARE(bench.text("autobrake"), std::string("off")); // after the last the first
}

void TestRigStates::toggleResyncs() {
    Bench bench(kToggle + "start = \"off\"\nresync = \"button 2\"\n");
    bench.openAll();
    press(bench, 100, "button 1");
    QCOMPARE(bench.text("taxi_light"), std::string("on"));
    press(bench, 300, "button 2");
    QCOMPARE(bench.text("taxi_light"), std::string("off"));
    QVERIFY(bench.send(500, "button 2", 1).empty());
}

void TestRigStates::toggleKeepsItsStateWhenUnplugged() {
    Bench bench(kToggle + "start = \"off\"\n");
    bench.openAll();
    press(bench, 100, "button 1");
    std::vector<Sample> samples;
    bench.rig().lose(0, Bench::at(1000), samples);
    QCOMPARE(samples.size(), std::size_t(1));
    QVERIFY(!samples[0].value.isKnown());
    QVERIFY(samples[0].actor == Actor::Machine);
    QVERIFY(bench.send(1100, "button 1", 1).empty()); // nobody is there to send
    QVERIFY(bench.rig().connect(0, bench.inputs()));
    bench.openAll(2000);
    QCOMPARE(bench.text("taxi_light"), std::string("on"));
    QVERIFY(bench.lastActor() == Actor::Machine);
}

void TestRigStates::aPairThatSetsAndClears() {
    Bench bench("[[control]]\nsignal = \"landing_lights\"\nwiring = \"set_clear\"\nset = \"button 1\"\n"
                "clear = \"button 2\"\nstart = \"ask\"\n");
    QCOMPARE(bench.problems(), std::string());
    bench.openAll();
    QCOMPARE(bench.text("landing_lights"), std::string("not known yet"));
    QCOMPARE(bench.rig().asked().size(), std::size_t(1));
    press(bench, 100, "button 2"); // a press says how it stands
    QCOMPARE(bench.text("landing_lights"), std::string("off"));
    press(bench, 300, "button 1");
    QCOMPARE(bench.text("landing_lights"), std::string("on"));
    QVERIFY(bench.send(500, "button 1", 1).empty());
    bench.send(600, "button 2", 1); // with the other still closed
    QCOMPARE(bench.text("landing_lights"), std::string("off"));
    QVERIFY(bench.rig().asked().empty());
}

void TestRigStates::quadratureFollowsTheTable_data() {
    QTest::addColumn<int>("before");
    QTest::addColumn<int>("now");
    QTest::addColumn<int>("quarters");
    // By (before << 2) | now, with 00 -> 01 -> 11 -> 10 as +1; 2 stands for a missed code.
    const int table[16] = {0, 1, -1, 2, -1, 0, 2, 1, 1, 2, 0, -1, 2, -1, 1, 0};
    for (int before = 0; before < 4; ++before)
        for (int now = 0; now < 4; ++now)
            QTest::addRow("%d to %d", before, now) << before << now << table[before * 4 + now];
}

void TestRigStates::quadratureFollowsTheTable() {
    QFETCH(int, before);
    QFETCH(int, now);
    QFETCH(int, quarters);
    Bench bench(kEncoder + "transitions = 1\n"); // each change of a contact is a detent
    QCOMPARE(bench.problems(), std::string());
    turn(bench, 0, {before});
    QCOMPARE(bench.number("pitch_trim"), 0.0);
    turn(bench, 10, {now});
    QCOMPARE(bench.number("pitch_trim"), quarters == 2 ? 0.0 : quarters * 0.1);
    QCOMPARE(bench.fault().empty(), quarters != 2);
}

void TestRigStates::encoderCountsDetents() {
    Bench bench(kEncoder);
    turn(bench, 0, {0});
    turn(bench, 10, {1, 3, 2});
    QCOMPARE(bench.number("pitch_trim"), 0.0); // not in its detent yet
    turn(bench, 20, {0, 1, 3, 2, 0, 1, 3, 2, 0});
    QCOMPARE(bench.number("pitch_trim"), 0.3);
    turn(bench, 40, {2, 3, 1, 0});
    QCOMPARE(bench.number("pitch_trim"), 0.2);
    turn(bench, 60, {2, 0, 2, 0, 1, 0}); // bounces on the spot
    QCOMPARE(bench.number("pitch_trim"), 0.2);
    QCOMPARE(bench.fault(), std::string());
}

void TestRigStates::encoderMissesACode() {
    Bench bench(kEncoder);
    turn(bench, 0, {0});
    turn(bench, 10, {1, 2, 0}); // 3 came too fast: two of four quarters were seen
    QCOMPARE(bench.number("pitch_trim"), 0.1);
    QVERIFY(bench.fault().find("1 steps came too fast") != std::string::npos);
}

void TestRigStates::encoderForPositionsStopsAtTheEnd() {
    Bench bench("[[control]]\nsignal = \"autobrake\"\nwiring = \"encoder\"\ninput = [\"button 1\", \"button 2\"]\n"
                "start = \"high\"\ntransitions = 2\n");
    QCOMPARE(bench.problems(), std::string());
    turn(bench, 0, {0});
    turn(bench, 10, {1, 3});
    QCOMPARE(bench.text("autobrake"), std::string("rejected"));
    turn(bench, 20, {2, 0, 1, 3});
    QCOMPARE(bench.text("autobrake"), std::string("rejected"));
    turn(bench, 30, {1, 0});
    QCOMPARE(bench.text("autobrake"), std::string("high"));
}

void TestRigStates::relativeWheelCountsDifferences() {
    Bench bench("[[control]]\nsignal = \"pitch_trim\"\nwiring = \"relative_wheel\"\ninput = \"Wheel\"\n"
                "start = \"1 deg\"\nper_count = \"-0.5 deg\"\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "Wheel", 1);
    QCOMPARE(bench.number("pitch_trim"), 0.5);
    bench.send(10, "Wheel", -2);
    QCOMPARE(bench.number("pitch_trim"), 2.0);
    bench.send(20, "Wheel", -100);
    QCOMPARE(bench.number("pitch_trim"), 5.0);
    bench.send(30, "Wheel", -99);
    QCOMPARE(bench.number("pitch_trim"), 4.5);
}

void TestRigStates::stepButtons() {
    Bench bench("[[control]]\nsignal = \"autobrake\"\nwiring = \"step_buttons\"\nless = \"button 1\"\n"
                "more = \"button 2\"\nstart = \"off\"\nwraps = true\n");
    QCOMPARE(bench.problems(), std::string());
    bench.openAll();
    press(bench, 100, "button 2");
    QCOMPARE(bench.text("autobrake"), std::string("low"));
    press(bench, 300, "button 1");
    press(bench, 500, "button 1");
    QCOMPARE(bench.text("autobrake"), std::string("rejected")); // wraps
}

void TestRigStates::parkingLatch() {
    Bench bench("[[control]]\nsignal = \"parking_brake\"\nwiring = \"parking_latch\"\npedals = [\"X\", \"Y\"]\n"
                "ranges = [[0, 1000], [1000, 0]]\npull = \"button 1\"\nstart = \"off\"\n");
    QCOMPARE(bench.problems(), std::string());
    const auto pedals = [&](double time, int share) {
        bench.send(time, "X", share * 10);
        bench.send(time, "Y", 1000 - share * 10);
    };
    pedals(0, 0);
    bench.openAll();
    QCOMPARE(bench.text("parking_brake"), std::string("off"));
    bench.send(100, "button 1", 1); // a pull without pedals
    bench.send(150, "button 1", 0);
    pedals(200, 80); // pedals without a pull
    QCOMPARE(bench.text("parking_brake"), std::string("off"));
    bench.send(300, "button 1", 1);
    QCOMPARE(bench.text("parking_brake"), std::string("on"));
    bench.send(400, "button 1", 0);
    pedals(500, 90); // still held
    QCOMPARE(bench.text("parking_brake"), std::string("on"));
    pedals(600, 0);
    QCOMPARE(bench.text("parking_brake"), std::string("on"));
    bench.send(700, "X", 900); // one pedal does not let it off
    QCOMPARE(bench.text("parking_brake"), std::string("on"));
    pedals(800, 90);
    QCOMPARE(bench.text("parking_brake"), std::string("off"));
    pedals(900, 0);
    bench.send(1000, "button 1", 1); // pull first, then the pedals
    pedals(1100, 90);
    QCOMPARE(bench.text("parking_brake"), std::string("on"));
}

void TestRigStates::splitAxis() {
    Bench bench("[[control]]\nsignal = [\"thrust_lever_1\", \"reverse_lever_1\"]\nwiring = \"split_axis\"\n"
                "input = \"X\"\nranges = [[1100, 4000], [1000, 100]]\nsplit = 1050\nhysteresis = 20\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "X", 2550);
    QCOMPARE(bench.number("thrust_lever_1"), 50.0);
    QCOMPARE(bench.number("reverse_lever_1"), 0.0);
    bench.send(10, "X", 1050);
    QCOMPARE(bench.number("thrust_lever_1"), 0.0);
    bench.send(20, "X", 550);
    QCOMPARE(bench.number("reverse_lever_1"), 50.0);
    QCOMPARE(bench.number("thrust_lever_1"), 0.0);
    const ControlFacts& reverse = bench.rig().facts()[indexOf(twinJet().id("reverse_lever_1"))];
    QCOMPARE(reverse.range, 100.0);
    QCOMPARE(reverse.controlName, std::string("Thrust lever 1"));
}

void TestRigStates::splitAxisNeedsItsHysteresis() {
    Bench bench("[[control]]\nsignal = [\"thrust_lever_1\", \"reverse_lever_1\"]\nwiring = \"split_axis\"\n"
                "input = \"X\"\nranges = [[1000, 3000], [1000, 0]]\nsplit = 1000\nhysteresis = 30\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "X", 1010);
    QCOMPARE(bench.number("thrust_lever_1"), 0.5);
    bench.send(10, "X", 975); // not far enough for the reverser
    QCOMPARE(bench.number("thrust_lever_1"), 0.0);
    QCOMPARE(bench.number("reverse_lever_1"), 0.0);
    bench.send(20, "X", 969);
    QCOMPARE(bench.number("reverse_lever_1"), 3.1);
    bench.send(30, "X", 1029);
    QCOMPARE(bench.number("thrust_lever_1"), 0.0);
    bench.send(40, "X", 1040);
    QCOMPARE(bench.number("thrust_lever_1"), 2.0);
}

void TestRigStates::switchedAxis() {
    Bench bench("[[control]]\nsignal = [\"thrust_lever_1\", \"reverse_lever_1\"]\nwiring = \"switched_axis\"\n"
                "input = \"X\"\nranges = [[0, 4000], [0, 4000]]\nswitch = \"button 1\"\n");
    QCOMPARE(bench.problems(), std::string());
    QVERIFY(bench.send(0, "X", 2000).empty()); // the switch says what it means
    bench.send(0, "button 1", 0);
    QCOMPARE(bench.number("thrust_lever_1"), 50.0);
    QCOMPARE(bench.number("reverse_lever_1"), 0.0);
    bench.send(100, "X", 0);
    bench.send(200, "button 1", 1);
    bench.send(300, "X", 3000);
    QCOMPARE(bench.number("thrust_lever_1"), 0.0);
    QCOMPARE(bench.number("reverse_lever_1"), 75.0);
}

void TestRigStates::twoAxesDifference() {
    Bench bench("[[control]]\nsignal = \"rudder_pedals\"\nwiring = \"two_axes\"\ncombine = \"difference\"\n"
                "input = [\"X\", \"Y\"]\nranges = [[0, 1000], [2000, 1000]]\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "X", 0);
    bench.send(0, "Y", 2000);
    QCOMPARE(bench.number("rudder_pedals"), 0.0);
    bench.send(10, "X", 600);
    QCOMPARE(bench.number("rudder_pedals"), -60.0);
    bench.send(20, "Y", 1500);
    QCOMPARE(bench.number("rudder_pedals"), -10.0);
    const ControlFacts& facts = bench.rig().facts()[indexOf(twinJet().id("rudder_pedals"))];
    QCOMPARE(facts.sigma, 0.28867513459481287 * 0.1 * std::sqrt(2.0)); // 0.1 % a count on either axis
    QCOMPARE(facts.range, 200.0);
}

void TestRigStates::twoAxesMax() {
    Bench bench("[[control]]\nsignal = \"toe_brake_left\"\nwiring = \"two_axes\"\ncombine = \"max\"\n"
                "input = [\"X\", \"Y\"]\nranges = [[0, 1000], [0, 1000]]\nend_band = 10\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "X", 5);
    bench.send(0, "Y", 8);
    QCOMPARE(bench.number("toe_brake_left"), 0.0);
    bench.send(10, "X", 500);
    QCOMPARE(bench.number("toe_brake_left"), 50.0);
    bench.send(20, "Y", 995);
    QCOMPARE(bench.number("toe_brake_left"), 100.0);
}

void TestRigStates::twoAxesSplit() {
    Bench bench("[[control]]\nsignal = \"yoke_pitch\"\nwiring = \"two_axes\"\ncombine = \"split\"\n"
                "input = [\"X\", \"Y\"]\nranges = [[0, 1000], [0, 1000]]\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "X", 0);
    bench.send(0, "Y", 0);
    QCOMPARE(bench.number("yoke_pitch"), 0.0);
    bench.send(10, "Y", 400);
    QCOMPARE(bench.number("yoke_pitch"), 40.0);
    QVERIFY(bench.send(20, "X", 900).empty()); // Y leads
    bench.send(30, "Y", 0);
    QCOMPARE(bench.number("yoke_pitch"), -90.0);
    bench.send(40, "X", 0);
    QCOMPARE(bench.number("yoke_pitch"), 0.0);
}

QTEST_APPLESS_MAIN(TestRigStates)
#include "test_rig_states.moc"
