// Calibrating controls that are more than one axis of one device: split and switched axes, the parking-brake latch, and
// controls over two devices. What is found is written into the rig file and read by the control.

#include <QtTest>

#include <cmath>

#include "bench/guidance.h"
#include "bench/repeatcheck.h"
#include "desk.h"
#include "generated.h"
#include "rig/rigedit.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

const std::string kTwoDevices = R"(format = 1
title = "Two"
[[device]]
name = "pedals"
id = "1209:F102"
[[device]]
name = "desk"
id = "1209:F101"
)";

GeneratedAxis axisOf(double low, double high, unsigned seed, double backlash = 0.0) {
    AxisTruth truth;
    truth.low = low;
    truth.high = high;
    truth.backlash = backlash;
    return GeneratedAxis(truth, seed);
}

DeviceSeries named(DeviceSeries device, const std::string& input) {
    device.inputs.front().input.name = input;
    return device;
}

/// One device with the inputs of several that report at the same times.
DeviceSeries together(DeviceSeries device, const DeviceSeries& other) {
    device.inputs.insert(device.inputs.end(), other.inputs.begin(), other.inputs.end());
    return device;
}

/// A switch that reports beside an axis; operated from `from` on.
DeviceSeries switchOf(const DeviceSeries& beside, Time from) {
    Series contact;
    contact.input.name = "button 1";
    contact.input.kind = InputKind::Button;
    contact.input.highest = 1;
    for (const Time time : beside.reports)
        contact.points.push_back({time, time >= from ? 1 : 0, false});
    contact.end = beside.reports.back();
    DeviceSeries device = beside;
    device.inputs = {contact};
    return device;
}

struct Calibrated {
    std::string source; ///< of the rig file, with what was found
    ControlCalibration calibration;
};

Calibrated calibrated(const std::string& rigText, const Measurement& measurement) {
    const RigFile rig = rigOf(rigText);
    const std::vector<BenchControl> controls = *benchControlsOf(rig, twinJetFolder().aircraft->signals);
    const Guidance guidance = guideCalibration(controls.front(), measurement);
    if (!guidance.isComplete)
        qWarning("still asked for: %s", guidance.text.english().c_str());
    Result<ControlCalibration> calibration = calibrateControl(controls.front(), measurement);
    if (!calibration)
        qFatal("%s", describe(calibration.error()).c_str());
    const Result<std::string> source = withControlKeys(rig.source, 0, calibration->keys);
    if (!source)
        qFatal("%s", source.error().message.c_str());
    return {*source, std::move(*calibration)};
}

/// What the first control's signals say when its inputs do.
std::vector<double> said(const std::string& source, const std::vector<std::int64_t>& inputs) {
    RigFile rig = rigOf(source);
    std::vector<double> values(rig.controls.front()->signals().size(), NAN);
    Outputs outputs;
    for (std::size_t slot = 0; slot < inputs.size(); ++slot)
        rig.controls.front()->take(slot, inputs[slot], Time{std::chrono::seconds(slot)}, outputs);
    for (const Output& output : outputs)
        values[output.signal] = output.value.number();
    return values;
}

bool isNear(double value, double wanted, double tolerance) {
    if (std::fabs(value - wanted) <= tolerance)
        return true;
    qWarning("is %g, wanted %g +- %g", value, wanted, tolerance);
    return false;
}

const std::string kSplit = R"([[control]]
signal = ["thrust_lever_1", "reverse_lever_1"]
wiring = "split_axis"
input = "X"
ranges = [[1100, 3900], [1040, 200]] # guessed
split = 1085
)";

} // namespace

class TestCombined : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void idleAndReverseOnOneAxis_data();
    void idleAndReverseOnOneAxis();
    void aSplitThatHasSlippedIsFound();
    void idleThatWasNotHeld();
    void aSwitchThatChangesTheAxis_data();
    void aSwitchThatChangesTheAxis();
    void twoAxesOverTwoDevices_data();
    void twoAxesOverTwoDevices();
    void parkingLatch();
    void everyWiringIsAskedForSomething();
};

void TestCombined::idleAndReverseOnOneAxis_data() {
    QTest::addColumn<bool>("isInverted");
    QTest::addColumn<double>("noise");
    QTest::newRow("as it is") << false << 1.2;
    QTest::newRow("the other way round") << true << 1.2;
    QTest::newRow("noisy") << false << 12.0;
}

void TestCombined::idleAndReverseOnOneAxis() {
    QFETCH(bool, isInverted);
    QFETCH(double, noise);
    AxisTruth truth; // counts 380 to 3720
    truth.noise = noise;
    truth.backlash = 8;
    const double idle = isInverted ? 0.75 : 0.25;
    const DeviceSeries device = GeneratedAxis(truth, 3).hold(1).visit({0.0, idle, 1.0}, 3).device();
    std::string rig = kSplit;
    if (isInverted)
        rig = edited(edited(rig, "[[1100, 3900], [1040, 200]]", "[[2900, 200], [2950, 3900]]"), "1085", "2925");
    const Calibrated found = calibrated(rig, {{0, device}});
    QVERIFY(worstOf(found.calibration.findings) < Soundness::Bad);
    const auto at = [&](double share) {
        return std::llround(truth.low + (truth.high - truth.low) * share);
    };
    const std::int64_t full = at(isInverted ? 0 : 1), reverse = at(isInverted ? 1 : 0), rests = at(idle);
    QVERIFY(isNear(said(found.source, {full})[0], 100, 0) && isNear(said(found.source, {full})[1], 0, 0));
    QVERIFY(isNear(said(found.source, {reverse})[0], 0, 0) && isNear(said(found.source, {reverse})[1], 100, 0));
    QVERIFY(isNear(said(found.source, {at((idle + (isInverted ? 0 : 1)) / 2)})[0], 50, 0.6));
    // At idle neither is meant to be off its low end, whatever noise and play add to it; nor after a visit to reverse.
    for (const double off : {-2.5 * noise - 4, 0.0, 2.5 * noise + 4}) {
        RigFile file = rigOf(found.source);
        Outputs outputs;
        file.controls.front()->take(0, reverse, 0s, outputs);
        file.controls.front()->take(0, rests + std::llround(off), 1s, outputs);
        QVERIFY(isNear(outputs[outputs.size() - 2].value.number(), 0, 0.3));
        QCOMPARE(outputs.back().value.number(), 0.0);
    }
    QVERIFY(found.source.find("# guessed") != std::string::npos);
}

void TestCombined::aSplitThatHasSlippedIsFound() {
    const DeviceSeries before = axisOf(380, 3720, 3, 8).hold(1).visit({0.0, 0.25, 1.0}, 3).device();
    const Calibrated found = calibrated(kSplit, {{0, before}});
    const RigFile rig = rigOf(found.source);
    const std::vector<BenchControl> controls = *benchControlsOf(rig, twinJetFolder().aircraft->signals);
    const auto check = [&](double idle) {
        const DeviceSeries now = axisOf(380, 3720, 9, 8).hold(1).visit({0.0, idle, 1.0}, 3).device();
        return worstOf(checkControl(controls.front(), {{0, now}})->findings);
    };
    QCOMPARE(check(0.25), Soundness::Good);
    QCOMPARE(check(0.22), Soundness::Bad); // beyond the split: idle would be reverse
}

void TestCombined::idleThatWasNotHeld() {
    const DeviceSeries device = axisOf(380, 3720, 3).hold(1).visit({0.0, 1.0}, 3).device();
    const RigFile rig = rigOf(kSplit);
    const std::vector<BenchControl> controls = *benchControlsOf(rig, twinJetFolder().aircraft->signals);
    const Result<ControlCalibration> found = calibrateControl(controls.front(), {{0, device}});
    QVERIFY(!found);
    QVERIFY2(found.error().message.find("idle and both ends") != std::string::npos, found.error().message.c_str());
}

void TestCombined::aSwitchThatChangesTheAxis_data() {
    QTest::addColumn<bool>("isApart");
    QTest::addColumn<bool>("isNormallyClosed");
    QTest::newRow("of one device") << false << false;
    QTest::newRow("a switch that opens") << false << true;
    QTest::newRow("its switch on another device") << true << false;
}

void TestCombined::aSwitchThatChangesTheAxis() {
    QFETCH(bool, isApart);
    QFETCH(bool, isNormallyClosed);
    // Forward the lever goes over all of it, in reverse over a third.
    GeneratedAxis lever = axisOf(380, 3720, 3).hold(1).visit({0.0, 1.0}, 3);
    const Time over = lever.device().reports.back();
    const DeviceSeries axis = lever.hold(1).visit({0.0, 0.33}, 3).device();
    DeviceSeries contact = switchOf(axis, over + 500ms);
    for (RawChange& point : contact.inputs.front().points)
        point.raw = isNormallyClosed ? 1 - point.raw : point.raw;
    const std::string control = std::string("[[control]]\nsignal = [\"thrust_lever_1\", \"reverse_lever_1\"]\n") +
                                (isApart ? "device = \"desk\"\n" : "") +
                                "wiring = \"switched_axis\"\ninput = \"X\"\nranges = [[120, 3900], [120, 3900]]\n"
                                "switch = \"" +
                                (isApart ? "pedals: " : "") + "button 1\"\n" +
                                (isNormallyClosed ? "normally_closed = true\n" : "");
    const Measurement measurement =
        isApart ? Measurement{{0, contact}, {1, axis}} : Measurement{{0, together(axis, contact)}};
    const Calibrated found = calibrated(isApart ? kTwoDevices + control : control, measurement);
    QCOMPARE(found.calibration.axes.size(), std::size_t(2));
    QVERIFY(isNear(double(found.calibration.axes[0].high.at), 3720, 2));
    QVERIFY(isNear(double(found.calibration.axes[1].high.at), 380 + 0.33 * 3340, 2));
    QVERIFY(isNear(said(found.source, {2050, 0})[0], 50, 0.3));
    QVERIFY(isNear(said(found.source, {931, 1})[1], 50, 0.6));
}

void TestCombined::twoAxesOverTwoDevices_data() {
    QTest::addColumn<QString>("combine");
    QTest::addColumn<QString>("signal");
    QTest::newRow("difference") << "difference"
                                << "rudder_pedals";
    QTest::newRow("max") << "max"
                         << "toe_brake_left";
    QTest::newRow("split") << "split"
                           << "rudder_pedals";
}

void TestCombined::twoAxesOverTwoDevices() {
    QFETCH(QString, combine);
    QFETCH(QString, signal);
    const DeviceSeries first = axisOf(400, 3000, 5).hold(1).visit({0.0, 1.0}, 3).device();
    const DeviceSeries second = axisOf(500, 3500, 6).moveTo(1.0, 0.5).hold(1).visit({0.0, 1.0}, 3).device();
    const std::string rig = kTwoDevices + "[[control]]\nsignal = \"" + signal.toStdString() +
                            "\"\nwiring = \"two_axes\"\ncombine = \"" + combine.toStdString() +
                            "\"\ninput = [\"pedals: X\", \"desk: X\"]\nranges = [[0, 4000], [4000, 0]]\n";
    const Calibrated found = calibrated(rig, {{0, first}, {1, second}});
    QVERIFY2(found.source.find("ranges = [[400, 3000], [3500, 500]]") != std::string::npos ||
                 isNear(double(found.calibration.axes[1].low.at), 3500, 2),
             found.source.c_str());
    const Signal& of = twinJetFolder().aircraft->signals[twinJetSignal(signal.toStdString())];
    const std::int64_t half = 2000; // of the second, which is the other way round
    const double wanted = combine == "max" ? (of.lowest + of.highest) / 2 : of.highest / 2;
    QVERIFY(isNear(said(found.source, {400, half})[0], wanted, 0.01 * (of.highest - of.lowest)));
    QVERIFY(isNear(said(found.source, {3000, 3500})[0], combine == "max" ? of.highest : of.lowest,
                   0.002 * (of.highest - of.lowest)));
    const RigFile file = rigOf(rig);
    const std::vector<BenchControl> controls = *benchControlsOf(file, twinJetFolder().aircraft->signals);
    const ControlHealth health = *measureControl(controls.front(), {{0, first}, {1, second}}, true);
    QCOMPARE(health.axes.size(), std::size_t(2));
}

void TestCombined::parkingLatch() {
    const GeneratedAxis left = axisOf(400, 3000, 5).hold(1).visit({0.0, 1.0}, 3);
    const GeneratedAxis right = axisOf(300, 3500, 6).hold(1).visit({0.0, 1.0}, 3);
    DeviceSeries device = together(left.device(), named(right.device(), "Y"));
    device = together(device, switchOf(device, 4s));
    const Calibrated found = calibrated("[[control]]\nsignal = \"parking_brake\"\nwiring = \"parking_latch\"\n"
                                        "pedals = [\"X\", \"Y\"]\nranges = [[0, 4000], [0, 4000]]\n"
                                        "pull = \"button 1\"\nstart = \"off\"\n",
                                        {{0, device}});
    QCOMPARE(found.calibration.keys.size(), std::size_t(1));
    QVERIFY(isNear(double(found.calibration.axes[1].high.at), 3500, 2));
    // Pressed beyond 60 % of what was found, 2,220 of the second, not of 4,000.
    for (const std::int64_t pressed : {std::int64_t(2100), std::int64_t(2400)}) {
        RigFile rig = rigOf(found.source);
        Outputs outputs;
        std::size_t slot = 0;
        for (const std::int64_t meaning : {std::int64_t(400), std::int64_t(300), std::int64_t(0)})
            rig.controls.front()->take(slot++, meaning, 0s, outputs);
        rig.controls.front()->take(0, 2990, 1s, outputs);
        rig.controls.front()->take(1, pressed, 1s, outputs);
        rig.controls.front()->take(2, 1, 2s, outputs);
        QCOMPARE(outputs.back().value, Value::onOff(pressed > 2220));
    }
}

void TestCombined::everyWiringIsAskedForSomething() {
    std::set<std::string> seen;
    for (const char* name : {"quadrant_two_units.toml", "twist_tiller.toml", "microswitch_reverser.toml",
                             "flap_gates.toml", "rotary_selector.toml", "full_cockpit.toml"}) {
        const RigFile rig = rigOf(shippedRig(name));
        const std::vector<BenchControl> controls = *benchControlsOf(rig, twinJetFolder().aircraft->signals);
        for (const BenchControl& control : controls) {
            const std::vector<InputRef>& inputs = control.control->inputs();
            const bool hasAxis = std::any_of(inputs.begin(), inputs.end(), [](const InputRef& input) {
                return input.use == InputUse::Axis;
            });
            QCOMPARE(control.canBeCalibrated(), hasAxis);
            if (!hasAxis)
                continue;
            seen.insert(control.wiring);
            QVERIFY(!calibrationAsk(control).isEmpty());
        }
    }
    QVERIFY(seen.count("axis") == 1 && seen.count("gates") == 1 && seen.count("split_axis") == 1);
}

QTEST_APPLESS_MAIN(TestCombined)
#include "test_combined.moc"
