#include <QtTest>

#include "twinjet.h"

using namespace flowhand;

class TestRigSwitches : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void contactHasNamedMeanings();
    void contactBounceIsOneChange();
    void aShortPulseIsNotLost();
    void contactsCombine_data();
    void contactsCombine();
    void aMaintainedSwitchMakesAPulse();
    void hatDirectionIsAContact();
    void selectorKeepsBetweenInTransit();
    void selectorGoesToTheUnwiredPosition();
    void selectorWithTwoClosedIsAFault();
    void selectorInOneReportHasNoBetween();
    void selectorIsUnknownUntilAllAreReported();
    void onOffOn();
    void codedSwitchReads_data();
    void codedSwitchReads();
    void binaryCodeIgnoresTransients();
    void grayCodeNeedsNoWait();
    void codeWithoutAPosition();
    void zonesOfALever();
    void zonesOverlapForAWhile();
    void hatAsASwitch();
};

namespace {

const std::string kLight = "[[control]]\nsignal = \"taxi_light\"\nwiring = \"contact\"\n";
const std::string kSelector =
    "[[control]]\nsignal = \"autobrake\"\nwiring = \"selector\"\ntransit = \"300 ms\"\n"
    "contacts = [\n{ input = \"button 1\", value = \"off\" },\n"
    "{ input = \"button 2\", value = \"low\" },\n{ input = \"button 3\", value = \"medium\" },\n"
    "{ input = \"button 4\", value = \"high\" },\n]\n";

std::string coded(const std::string& code) {
    return "[[control]]\nsignal = \"autobrake\"\nwiring = \"coded_switch\"\ncode = \"" + code +
           "\"\ninput = [\"button 1\", \"button 2\", \"button 3\"]\n"
           "positions = [\"off\", \"low\", \"medium\", \"high\", \"rejected\"]\nsettle = \"20 ms\"\n"
           "transit = \"300 ms\"\n";
}

} // namespace

void TestRigSwitches::contactHasNamedMeanings() {
    Bench bench(
        "[[control]]\nsignal = \"reverse_lever_1\"\nwiring = \"contact\"\ninput = \"button 1\"\nopen = \"0 %\"\n"
        "closed = \"100 %\"\n[[control]]\nsignal = \"gear_lever\"\nwiring = \"contact\"\ninput = \"button 2\"\n"
        "open = \"down\"\nclosed = \"up\"\n");
    QCOMPARE(bench.problems(), std::string());
    bench.openAll();
    QCOMPARE(bench.text("reverse_lever_1"), std::string("0 %"));
    QCOMPARE(bench.text("gear_lever"), std::string("down"));
    bench.send(100, "button 1", 1);
    bench.send(100, "button 2", 1);
    QCOMPARE(bench.text("reverse_lever_1"), std::string("100 %"));
    QCOMPARE(bench.text("gear_lever"), std::string("up"));
    QVERIFY(bench.lastActor() == Actor::Hand);
    QCOMPARE(bench.rig().facts()[indexOf(twinJet().id("reverse_lever_1"))].range, 0.0);
}

void TestRigSwitches::contactBounceIsOneChange() {
    Bench bench(kLight + "input = \"button 1\"\n");
    bench.send(0, "button 1", 0);
    std::vector<Sample> samples;
    bench.add(samples, 100, "button 1", 1); // closes, and bounces for 6.2 ms
    bench.add(samples, 101, "button 1", 0);
    bench.add(samples, 102, "button 1", 1);
    bench.add(samples, 106, "button 1", 0);
    bench.add(samples, 106.2, "button 1", 1);
    QCOMPARE(samples.size(), std::size_t(1));
    QVERIFY(samples[0].time == Bench::at(100)); // told without delay
    QVERIFY(bench.wait(200).empty());
    QVERIFY(bench.rig().nextTimer() == kForever);
}

void TestRigSwitches::aShortPulseIsNotLost() {
    Bench bench(kLight + "input = \"button 1\"\n");
    bench.send(0, "button 1", 0);
    bench.send(100, "button 1", 1);
    QVERIFY(bench.send(103, "button 1", 0).empty());
    QVERIFY(bench.rig().nextTimer() == Bench::at(110));
    QCOMPARE(bench.wait(150).size(), std::size_t(1));
    QCOMPARE(bench.text("taxi_light"), std::string("off"));
    QCOMPARE(bench.lastTime(), 110.0);
}

void TestRigSwitches::contactsCombine_data() {
    QTest::addColumn<QString>("combine");
    QTest::addColumn<QString>("one");
    QTest::addColumn<QString>("both");
    QTest::newRow("any") << "any"
                         << "on"
                         << "on";
    QTest::newRow("all") << "all"
                         << "off"
                         << "on";
}

void TestRigSwitches::contactsCombine() {
    QFETCH(QString, combine);
    QFETCH(QString, one);
    QFETCH(QString, both);
    Bench bench(kLight + "input = [\"button 1\", \"button 2\"]\ncombine = \"" + combine.toStdString() + "\"\n");
    bench.openAll();
    bench.send(100, "button 1", 1);
    QCOMPARE(QString::fromStdString(bench.text("taxi_light")), one);
    bench.send(200, "button 2", 1);
    QCOMPARE(QString::fromStdString(bench.text("taxi_light")), both);
}

void TestRigSwitches::aMaintainedSwitchMakesAPulse() {
    Bench bench("[[control]]\nsignal = \"takeoff_button\"\nwiring = \"contact\"\ninput = \"button 1\"\n"
                "pulse = \"200 ms\"\n");
    bench.send(0, "button 1", 1); // found closed: nobody presses it now
    QCOMPARE(bench.text("takeoff_button"), std::string("off"));
    bench.send(100, "button 1", 0);
    bench.send(200, "button 1", 1);
    QCOMPARE(bench.text("takeoff_button"), std::string("on"));
    bench.wait(399);
    QCOMPARE(bench.text("takeoff_button"), std::string("on"));
    bench.wait(500);
    QCOMPARE(bench.text("takeoff_button"), std::string("off"));
    QCOMPARE(bench.lastTime(), 400.0);
    QVERIFY(bench.rig().facts()[indexOf(twinJet().id("takeoff_button"))].isMomentary);
}

void TestRigSwitches::hatDirectionIsAContact() {
    Bench bench(kLight + "input = \"hat 1 up\"\n[[control]]\nsignal = \"landing_lights\"\nwiring = \"contact\"\n"
                         "input = \"hat 1 right\"\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "hat 1", 8, true);
    QCOMPARE(bench.text("taxi_light"), std::string("off"));
    bench.send(100, "hat 1", 0);
    QCOMPARE(bench.text("taxi_light"), std::string("on"));
    QCOMPARE(bench.text("landing_lights"), std::string("off"));
    bench.send(200, "hat 1", 1); // the diagonal is both
    QCOMPARE(bench.text("taxi_light"), std::string("on"));
    QCOMPARE(bench.text("landing_lights"), std::string("on"));
    bench.send(300, "hat 1", 2);
    QCOMPARE(bench.text("taxi_light"), std::string("off"));
}

void TestRigSwitches::selectorKeepsBetweenInTransit() {
    Bench bench(kSelector);
    QCOMPARE(bench.problems(), std::string());
    std::vector<Sample> samples;
    for (int i = 1; i <= 4; ++i)
        bench.add(samples, 0, "button " + std::to_string(i), i == 2);
    QCOMPARE(bench.text("autobrake"), std::string("low"));
    QVERIFY(bench.lastActor() == Actor::Machine);
    bench.send(100, "button 2", 0); // breaks before it makes
    QCOMPARE(bench.text("autobrake"), std::string("between"));
    bench.send(350, "button 3", 1);
    QCOMPARE(bench.text("autobrake"), std::string("medium"));
    QVERIFY(bench.lastActor() == Actor::Hand);
    QVERIFY(bench.wait(2000).empty());
    bench.send(2100, "button 3", 0);
    bench.wait(3000);
    QCOMPARE(bench.text("autobrake"), std::string("between")); // nothing is unwired: that is no 'off'
    QVERIFY(bench.fault().find("Automatic brake: no contact is closed") == 0);
    bench.send(3100, "button 4", 1);
    QCOMPARE(bench.fault(), std::string());
}

void TestRigSwitches::selectorGoesToTheUnwiredPosition() {
    Bench bench(kSelector + "unwired = \"rejected\"\n");
    bench.openAll();
    QCOMPARE(bench.text("autobrake"), std::string("rejected")); // found so: no transit to wait for
    QVERIFY(bench.lastActor() == Actor::Machine);
    bench.send(100, "button 1", 1);
    bench.send(200, "button 1", 0);
    QCOMPARE(bench.text("autobrake"), std::string("between"));
    bench.wait(499);
    QCOMPARE(bench.text("autobrake"), std::string("between"));
    bench.wait(600);
    QCOMPARE(bench.text("autobrake"), std::string("rejected"));
    QCOMPARE(bench.lastTime(), 500.0);
    QVERIFY(bench.lastActor() == Actor::Hand);
}

void TestRigSwitches::selectorWithTwoClosedIsAFault() {
    Bench bench(kSelector);
    bench.openAll();
    bench.send(100, "button 2", 1);
    bench.send(200, "button 3", 1); // makes before it breaks
    QCOMPARE(bench.text("autobrake"), std::string("between"));
    bench.send(300, "button 2", 0);
    QCOMPARE(bench.text("autobrake"), std::string("medium"));
    bench.send(400, "button 1", 1);
    bench.wait(1000);
    QCOMPARE(bench.text("autobrake"), std::string("not known yet"));
    QVERIFY(bench.fault().find("button 1, button 3") != std::string::npos);
    QVERIFY(bench.lastActor() == Actor::Machine);
}

void TestRigSwitches::selectorInOneReportHasNoBetween() {
    Bench bench(kSelector);
    bench.openAll();
    bench.send(100, "button 2", 1);
    std::vector<Sample> samples;
    bench.add(samples, 500, "button 2", 0);
    bench.add(samples, 500, "button 3", 1);
    QCOMPARE(samples.size(), std::size_t(1));
    QVERIFY(samples[0].value == twinJet().value("autobrake", "medium"));
}

void TestRigSwitches::selectorIsUnknownUntilAllAreReported() {
    Bench bench(kSelector);
    QVERIFY(bench.send(0, "button 1", 1).empty());
    QVERIFY(bench.send(0, "button 2", 0).empty());
    QVERIFY(bench.send(0, "button 3", 0).empty());
    QCOMPARE(bench.rig().unheard().size(), std::size_t(1));
    QCOMPARE(bench.send(0, "button 4", 0).size(), std::size_t(1));
    QVERIFY(bench.rig().unheard().empty());
}

void TestRigSwitches::onOffOn() {
    Bench bench(
        "[[control]]\nsignal = \"spoiler_lever\"\nwiring = \"on_off_on\"\ninput = [\"button 1\", \"button 2\"]\n"
        "first = \"down\"\ncentre = \"armed\"\nsecond = \"up\"\ntransit = \"50 ms\"\n");
    QCOMPARE(bench.problems(), std::string());
    bench.openAll();
    QCOMPARE(bench.text("spoiler_lever"), std::string("armed"));
    bench.send(100, "button 1", 1);
    QCOMPARE(bench.text("spoiler_lever"), std::string("down"));
    QVERIFY(bench.send(200, "button 2", 1).empty()); // for a moment that may be
    bench.send(230, "button 1", 0);
    QCOMPARE(bench.text("spoiler_lever"), std::string("up"));
    QVERIFY(bench.wait(400).empty());
    bench.send(500, "button 1", 1);
    bench.wait(600);
    QCOMPARE(bench.text("spoiler_lever"), std::string("not known yet"));
    QVERIFY(bench.fault().find("button 1, button 2") != std::string::npos);
    QCOMPARE(bench.lastTime(), 550.0);
}

void TestRigSwitches::codedSwitchReads_data() {
    QTest::addColumn<QString>("code");
    QTest::addColumn<int>("bits");
    QTest::addColumn<QString>("text");
    const char* positions[] = {"off", "low", "medium", "high", "rejected"};
    // n ^ (n >> 1): 000 001 011 010 110
    const int gray[] = {0b000, 0b001, 0b011, 0b010, 0b110};
    for (int i = 0; i < 5; ++i) {
        QTest::addRow("binary %d", i) << "binary" << i << positions[i];
        QTest::addRow("gray %d", i) << "gray" << gray[i] << positions[i];
    }
}

void TestRigSwitches::codedSwitchReads() {
    QFETCH(QString, code);
    QFETCH(int, bits);
    QFETCH(QString, text);
    Bench bench(coded(code.toStdString()));
    QCOMPARE(bench.problems(), std::string());
    for (int bit = 0; bit < 3; ++bit)
        bench.send(0, "button " + std::to_string(bit + 1), (bits >> bit) & 1);
    QCOMPARE(QString::fromStdString(bench.text("autobrake")), text);
}

void TestRigSwitches::binaryCodeIgnoresTransients() {
    Bench bench(coded("binary"));
    bench.openAll();
    bench.send(100, "button 1", 1);
    bench.send(100, "button 2", 1); // 3: high
    bench.wait(200);
    QCOMPARE(bench.text("autobrake"), std::string("high"));
    QCOMPARE(bench.lastTime(), 120.0);
    std::vector<Sample> samples; // 3 to 4, one bit after the other: 2, then 0, then 4
    bench.add(samples, 300, "button 1", 0);
    bench.add(samples, 304, "button 2", 0);
    bench.add(samples, 308, "button 3", 1);
    QVERIFY(samples.empty());
    QCOMPARE(bench.wait(400).size(), std::size_t(1));
    QCOMPARE(bench.text("autobrake"), std::string("rejected"));
    QCOMPARE(bench.lastTime(), 328.0);
}

void TestRigSwitches::grayCodeNeedsNoWait() {
    Bench bench(coded("gray"));
    bench.openAll();
    bench.send(100, "button 1", 1);
    QCOMPARE(bench.text("autobrake"), std::string("low"));
    QCOMPARE(bench.lastTime(), 100.0);
    bench.send(200, "button 2", 1);
    QCOMPARE(bench.text("autobrake"), std::string("medium"));
    bench.send(300, "button 1", 0);
    QCOMPARE(bench.text("autobrake"), std::string("high"));
    QVERIFY(bench.wait(1000).empty());
}

void TestRigSwitches::codeWithoutAPosition() {
    Bench bench(coded("binary"));
    bench.openAll();
    for (int bit = 1; bit <= 3; ++bit)
        bench.send(100, "button " + std::to_string(bit), 1);
    bench.wait(119);
    QCOMPARE(bench.text("autobrake"), std::string("off"));
    bench.wait(200);
    QCOMPARE(bench.text("autobrake"), std::string("between"));
    bench.wait(500);
    QCOMPARE(bench.text("autobrake"), std::string("not known yet"));
    QVERIFY(bench.fault().find("its code 7 stands for no position") != std::string::npos);
    QCOMPARE(bench.lastTime(), 420.0);
    bench.send(600, "button 1", 0);
    bench.send(600, "button 2", 0);
    bench.wait(700);
    QCOMPARE(bench.text("autobrake"), std::string("rejected"));
    QCOMPARE(bench.fault(), std::string());
}

void TestRigSwitches::zonesOfALever() {
    Bench bench("[[control]]\nsignal = \"spoiler_lever\"\nwiring = \"zones\"\ninput = [\"button 1\", \"button 2\"]\n"
                "zones = [\n{ closed = [\"button 1\"], value = \"down\" },\n"
                "{ closed = [\"button 1\", \"button 2\"], value = \"armed\" },\n"
                "{ closed = [\"button 2\"], value = \"up\" },\n]\n");
    QCOMPARE(bench.problems(), std::string());
    bench.openAll();
    QCOMPARE(bench.text("spoiler_lever"), std::string("between"));
    bench.send(100, "button 1", 1);
    QCOMPARE(bench.text("spoiler_lever"), std::string("down"));
    bench.send(200, "button 2", 1);
    QCOMPARE(bench.text("spoiler_lever"), std::string("armed"));
    bench.send(300, "button 1", 0);
    QCOMPARE(bench.text("spoiler_lever"), std::string("up"));
}

void TestRigSwitches::zonesOverlapForAWhile() {
    Bench bench("[[control]]\nsignal = \"thrust_lever_1\"\nwiring = \"zones\"\ninput = [\"button 1\", \"button 2\"]\n"
                "zones = [\n{ closed = [], value = \"0 %\" },\n{ closed = [\"button 1\"], value = \"50 %\" },\n"
                "{ closed = [\"button 2\"], value = \"100 %\" },\n]\n");
    QCOMPARE(bench.problems(), std::string());
    bench.openAll();
    QCOMPARE(bench.number("thrust_lever_1"), 0.0);
    bench.send(100, "button 1", 1);
    QVERIFY(bench.send(200, "button 2", 1).empty()); // a number keeps its value in transit
    QCOMPARE(bench.number("thrust_lever_1"), 50.0);
    bench.send(300, "button 1", 0);
    QCOMPARE(bench.number("thrust_lever_1"), 100.0);
    bench.send(400, "button 1", 1);
    bench.wait(1000);
    QVERIFY(bench.fault().find("button 1, button 2") != std::string::npos);
    QCOMPARE(bench.text("thrust_lever_1"), std::string("not known yet"));
}

void TestRigSwitches::hatAsASwitch() {
    Bench bench("[[control]]\nsignal = \"autobrake\"\nwiring = \"hat\"\ninput = \"hat 1\"\nup = \"off\"\n"
                "right = \"low\"\ndown = \"medium\"\nleft = \"high\"\n");
    QCOMPARE(bench.problems(), std::string());
    QVERIFY(bench.send(0, "hat 1", 8, true).empty());
    bench.send(100, "hat 1", 4);
    QCOMPARE(bench.text("autobrake"), std::string("medium"));
    QVERIFY(bench.send(200, "hat 1", 8, true).empty()); // stays
    QVERIFY(bench.send(300, "hat 1", 5).empty());       // no value is named for the diagonal
    bench.send(400, "hat 1", 6);
    QCOMPARE(bench.text("autobrake"), std::string("high"));
}

QTEST_APPLESS_MAIN(TestRigSwitches)
#include "test_rig_switches.moc"
