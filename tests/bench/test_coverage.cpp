// Steps against controls: what a rig can confirm, what it cannot and why, and how far the proof has come.

#include <cmath>

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QtTest>

#include "bench/coverage.h"
#include "bench/measurednoise.h"
#include "bench/series.h"
#include "desk.h"
#include "generated.h"

using namespace flowhand;

namespace {

const std::string kFullCockpit = shippedRig("full_cockpit.toml");

/// What the full cockpit is wired for: the flows on wheels and off them. It has no overhead panel.
std::vector<const Flow*> wiredFlows() {
    std::vector<const Flow*> flows;
    for (const Flow& flow : twinJetFolder().flows)
        if (flow.id == "taxi_out" || flow.id == "take_off" || flow.id == "landing_roll")
            flows.push_back(&flow);
    return flows;
}

Coverage covered(const std::string& rigText, const std::vector<EvidenceRecord>& evidence = {},
                 const std::vector<std::string>& seats = {"captain"}) {
    RigFile rig = rigOf(rigText);
    const std::vector<const Flow*> flows = wiredFlows();
    Result<Coverage> coverage = coverageOf(rig, {*twinJetFolder().aircraft, flows, evidence, seats});
    if (!coverage)
        qFatal("%s", describe(coverage.error()).c_str());
    return std::move(*coverage);
}

/// "flow/step code signal" of each obstacle.
QStringList obstaclesIn(const Coverage& coverage) {
    QStringList all;
    const std::vector<const Flow*> flows = wiredFlows();
    for (const CoveredStep& step : coverage.steps)
        for (const Obstacle& obstacle : step.obstacles)
            all << QString::fromStdString(flows[step.flow]->id + "/" + flows[step.flow]->steps[step.step].id + " " +
                                          obstacle.code + " " +
                                          twinJetFolder().aircraft->signals[obstacle.signal].name);
    return all;
}

const CoveredControl& controlIn(const Coverage& coverage, const std::string& name) {
    return coverage.controls[indexOf(twinJetSignal(name))];
}

/// Of the control that makes `signal` in this rig, as it is wired now.
EvidenceRecord evidenceFor(const std::string& rigText, const std::string& signal, std::string_view kind, bool isGood,
                           std::int64_t when) {
    const RigFile rig = rigOf(rigText);
    const auto fingerprints = fingerprintsOf(rig, twinJetFolder().aircraft->signals);
    for (const ControlFingerprint& fingerprint : *fingerprints)
        if (fingerprint.signals.front() == signal)
            return {
                std::string(kind), when, fingerprint.control, fingerprint.signals, fingerprint.hash, isGood, "{}", {}};
    qFatal("no such control");
    return {};
}

constexpr std::int64_t kSpring = 1772388245; // 2026-03-01T18:04:05Z

/// One condition held against a rig that makes one signal.
std::vector<Obstacle> obstaclesOf(const std::string& condition, const std::string& rigText) {
    const Aircraft& aircraft = *twinJetFolder().aircraft;
    std::vector<ConditionProblem> problems;
    const std::optional<Condition> compiled = Condition::compile(condition, aircraft.scope(), problems);
    if (!compiled)
        qFatal("%s", problems.front().message.c_str());
    RigFile rig = rigOf(rigText);
    const std::vector<Reach> reaches = reachesOf(rig, aircraft.signals, aircraft.controls.size());
    std::vector<SignalId> controls;
    for (const SignalId id : compiled->signals())
        if (aircraft.isControl(id))
            controls.push_back(id);
    return obstaclesOf(*compiled, controls, reaches, aircraft.signals);
}

std::string lever(const std::string& keys, const std::string& signal = "thrust_lever_1",
                  const std::string& input = "X") {
    return "[[control]]\nsignal = \"" + signal + "\"\nwiring = \"axis\"\ninput = \"" + input + "\"\n" + keys + "\n";
}

} // namespace

class TestCoverage : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void shippedRigConfirmsEveryStep();
    void whatIsTakenAwayIsNamed_data();
    void whatIsTakenAwayIsNamed();
    void obstacles_data();
    void obstacles();
    void sixSigmasToTheDigit();
    void twoLeversThatMustAgree();
    void partnersStepsNeedNoControl();
    void proofGrowsWithEvidence();
    void changedWiringMakesEvidenceStale();
    void theMeasuredNoiseCounts();
    void orphans();
    void whatWiringsReach_data();
    void whatWiringsReach();
};

void TestCoverage::shippedRigConfirmsEveryStep() {
    const Coverage coverage = covered(kFullCockpit);
    QCOMPARE(obstaclesIn(coverage), QStringList());
    QVERIFY(coverage.isComplete());
    QVERIFY(!coverage.isProven());
    std::size_t count = 0;
    for (const Flow* flow : wiredFlows())
        count += flow->steps.size();
    QCOMPARE(coverage.steps.size(), count);
}

void TestCoverage::whatIsTakenAwayIsNamed_data() {
    QTest::addColumn<QString>("before");
    QTest::addColumn<QString>("after");
    QTest::addColumn<QStringList>("expected");
    QTest::newRow("a gate") << "    { position = \"12\", at = 1950 },\n"
                            << ""
                            << QStringList{"taxi_out/flap_for_take_off not-a-position flap_lever",
                                           "taxi_out/flap_reply not-a-position flap_lever"};
    QTest::newRow("yoke over part of its travel") << "signal = \"yoke_pitch\""
                                                  << "signal = \"yoke_pitch\"\nto = [-80, 80]"
                                                  << QStringList{"taxi_out/yoke_pitch_check out-of-reach yoke_pitch"};
}

void TestCoverage::whatIsTakenAwayIsNamed() {
    QFETCH(QString, before);
    QFETCH(QString, after);
    QFETCH(QStringList, expected);
    const Coverage coverage = covered(edited(kFullCockpit, before.toStdString(), after.toStdString()));
    QVERIFY(!coverage.isComplete());
    QCOMPARE(obstaclesIn(coverage), expected);
}

void TestCoverage::obstacles_data() {
    QTest::addColumn<QString>("condition");
    QTest::addColumn<QString>("rig");
    QTest::addColumn<QStringList>("codes");
    const auto row = [](const char* name, const char* condition, const std::string& rig, const QStringList& codes) {
        QTest::newRow(name) << condition << QString::fromStdString(rig) << codes;
    };
    const std::string whole = lever("range = [0, 1000]");
    const std::string part = lever("range = [0, 1000]\nto = [10, 80]");
    row("within", "thrust_lever_1 > 40 % and thrust_lever_1 < 50 %", whole, {});
    row("exactly", "thrust_lever_1 == 40 %", whole, {"too-narrow"});
    row("not wired", "thrust_lever_2 > 40 %", whole, {"not-wired"});
    row("above the calibrated range", "thrust_lever_1 > 90 %", part, {"out-of-reach"});
    row("below the calibrated range", "thrust_lever_1 < 5 %", part, {"out-of-reach"});
    row("what is not asked", "not thrust_lever_1 > 90 %", part, {});
    row("either side", "thrust_lever_1 > 90 % or thrust_lever_1 < 60 %", part, {});
    row("sum of a window", "held(thrust_lever_1 > 90 %, 1 s)", part, {"out-of-reach"});
    row("either lever", "thrust_lever_1 > 90 % or ground_speed > 10 kt", part, {});
    row("arithmetic", "abs(thrust_lever_1 - 45 %) < 0.05 %", whole, {"too-narrow"});
    row("a movement", "moved(thrust_lever_1, 60 %)", part, {});
    row("a long movement", "moved(thrust_lever_1, 75 %)", part, {"out-of-reach"});
    row("a movement within the noise", "moved(thrust_lever_1, 0.1 %)", whole, {"too-narrow"});
    const std::string twoStates =
        "[[control]]\nsignal = \"thrust_lever_1\"\nwiring = \"contact\"\ninput = \"button 1\"\nopen = \"0 %\"\n"
        "closed = \"100 %\"\n";
    row("contacts as a lever", "thrust_lever_1 > 90 %", twoStates, {});
    row("contacts between", "thrust_lever_1 > 40 % and thrust_lever_1 < 50 %", twoStates, {"not-a-position"});
    const std::string selector = "[[control]]\nsignal = \"autobrake\"\nwiring = \"selector\"\ncontacts = [\n"
                                 "{ input = \"button 1\", value = \"off\" },\n"
                                 "{ input = \"button 2\", value = \"low\" }]\n";
    row("a position", "autobrake == low", selector, {});
    row("a position that is not wired", "autobrake == high", selector, {"not-a-position"});
    row("any other position", "autobrake != off", selector, {});
    const std::string toggle = "[[control]]\nsignal = \"taxi_light\"\nwiring = \"toggle\"\ninput = \"button 1\"\n"
                               "start = \"ask\"\n";
    row("a state the program keeps", "taxi_light", toggle, {});
    row("a turn of an encoder", "pitch_trim == 1 deg",
        "[[control]]\nsignal = \"pitch_trim\"\nwiring = \"encoder\"\ninput = [\"button 1\", \"button 2\"]\n"
        "start = \"0 deg\"\nper_detent = \"0.1 deg\"\n",
        {});
    row("constant axis", "thrust_lever_1 > 50 %", lever("range = [0, 1]"), {"too-narrow"});
    row("all noise", "thrust_lever_1 > 50 %", lever("range = [0, 4095]\nnoise = 1000000"), {"too-narrow"});
    row("32 bits", "thrust_lever_1 > 50 %", lever("range = [0, 4294967295]\nnoise = 100000"), {});
}

void TestCoverage::obstacles() {
    QFETCH(QString, condition);
    QFETCH(QString, rig);
    QFETCH(QStringList, codes);
    QStringList found;
    for (const Obstacle& obstacle : ::obstaclesOf(condition.toStdString(), rig.toStdString()))
        found << QString::fromStdString(obstacle.code);
    QCOMPARE(found, codes);
}

/// 1000 counts are 100 %: a noise of n counts is n / 10 %, and a band of 6 n / 10 % is just wide enough.
void TestCoverage::sixSigmasToTheDigit() {
    const std::string noisy = lever("range = [0, 1000]\nnoise = 10\nleast_change = 1");
    QCOMPARE(::obstaclesOf("thrust_lever_1 > 40 % and thrust_lever_1 < 46.001 %", noisy).size(), std::size_t(0));
    QCOMPARE(::obstaclesOf("thrust_lever_1 > 40 % and thrust_lever_1 < 45.999 %", noisy).size(), std::size_t(1));
}

void TestCoverage::twoLeversThatMustAgree() {
    const std::string both = lever("range = [0, 1000]\nnoise = 5\nleast_change = 1") +
                             lever("range = [0, 1000]\nnoise = 5\nleast_change = 1", "thrust_lever_2", "Y");
    // Alone 3 % each, together 6 * 0.5 % * sqrt(2) = 4.24 %.
    QCOMPARE(::obstaclesOf("abs(thrust_lever_1 - thrust_lever_2) < 2.2 %", both).size(), std::size_t(0));
    const std::vector<Obstacle> found = ::obstaclesOf("abs(thrust_lever_1 - thrust_lever_2) < 2.1 %", both);
    QCOMPARE(found.size(), std::size_t(1));
    QCOMPARE(found.front().code, std::string("too-narrow"));
}

void TestCoverage::partnersStepsNeedNoControl() {
    const std::vector<const Flow*> flows = wiredFlows();
    const auto ofGear = [&](const Coverage& coverage) {
        std::size_t count = 0;
        for (const CoveredStep& step : coverage.steps)
            count += static_cast<std::size_t>(
                std::count(step.needed.begin(), step.needed.end(), twinJetSignal("gear_lever")));
        return count;
    };
    // The first officer raises the gear; the captain's reply that it is up needs no gear lever.
    QCOMPARE(ofGear(covered(kFullCockpit)), std::size_t(0));
    QVERIFY(ofGear(covered(kFullCockpit, {}, {"captain", "first_officer"})) >= 2);
    for (const CoveredStep& step : covered(kFullCockpit).steps)
        if (flows[step.flow]->steps[step.step].movedBy == "first_officer" &&
            flows[step.flow]->steps[step.step].kind == StepKind::Act)
            QVERIFY(step.needed.empty());
}

void TestCoverage::proofGrowsWithEvidence() {
    QCOMPARE(controlIn(covered(kFullCockpit), "thrust_lever_1").proof, Proof::Wired);
    std::vector<EvidenceRecord> evidence = {
        evidenceFor(kFullCockpit, "thrust_lever_1", kCalibrationEvidence, true, kSpring)};
    Coverage coverage = covered(kFullCockpit, evidence);
    QCOMPARE(controlIn(coverage, "thrust_lever_1").proof, Proof::Calibrated);
    evidence.push_back(evidenceFor(kFullCockpit, "thrust_lever_1", kWalkEvidence, false, kSpring + 60));
    coverage = covered(kFullCockpit, evidence);
    QCOMPARE(controlIn(coverage, "thrust_lever_1").proof, Proof::Calibrated);
    QCOMPARE(controlIn(coverage, "thrust_lever_1").failedDate, std::string("2026-03-01T18:05:05Z"));
    evidence.push_back(evidenceFor(kFullCockpit, "thrust_lever_1", kWalkEvidence, true, kSpring + 120));
    coverage = covered(kFullCockpit, evidence);
    QCOMPARE(controlIn(coverage, "thrust_lever_1").proof, Proof::SeenWorking);
    QCOMPARE(controlIn(coverage, "thrust_lever_1").date, std::string("2026-03-01T18:06:05Z"));
    QVERIFY(!coverage.isProven()); // the others were not seen

    evidence.clear();
    for (const CoveredControl& control : coverage.controls)
        if (control.proof != Proof::Unwired)
            evidence.push_back(evidenceFor(kFullCockpit, twinJetFolder().aircraft->signals[control.signal].name,
                                           kWalkEvidence, true, kSpring));
    QVERIFY(covered(kFullCockpit, evidence).isProven());
}

void TestCoverage::changedWiringMakesEvidenceStale() {
    const std::vector<EvidenceRecord> evidence = {
        evidenceFor(kFullCockpit, "thrust_lever_1", kWalkEvidence, true, kSpring)};
    const std::string recalibrated = edited(kFullCockpit, "range = [180, 3910]", "range = [190, 3910]");
    const Coverage coverage = covered(recalibrated, evidence);
    QCOMPARE(controlIn(coverage, "thrust_lever_1").proof, Proof::Wired);
    QVERIFY(controlIn(coverage, "thrust_lever_1").isStale);
    QCOMPARE(controlIn(coverage, "thrust_lever_1").staleDate, std::string("2026-03-01T18:04:05Z"));
    const bool isStepStale = std::any_of(coverage.steps.begin(), coverage.steps.end(), [](const CoveredStep& step) {
        return step.isStale;
    });
    QVERIFY(isStepStale);
    QCOMPARE(controlIn(covered(kFullCockpit, evidence), "thrust_lever_1").proof, Proof::SeenWorking); // changed back
}

void TestCoverage::theMeasuredNoiseCounts() {
    // A step's band is 16 % of the lever at most, some 600 counts of 12 bits: less than six sigma of 200.
    const auto rigWith = [](const std::string& keys) {
        return edited(kFullCockpit, "signal = \"thrust_lever_1\"\n", "signal = \"thrust_lever_1\"\n" + keys);
    };
    const auto measured = [](const std::string& rig, double noise, std::int64_t when) {
        test::AxisTruth truth;
        truth.noise = noise;
        truth.low = 2000; // far from the converter's ends
        const DeviceSeries device = test::GeneratedAxis(truth).hold(60).device();
        EvidenceRecord record = evidenceFor(rig, "thrust_lever_1", kHealthEvidence, true, when);
        const RigFile file = rigOf(rig);
        RawTrace trace = rawTraceOf(device.inputs.front(), "quadrant", device.reports.size());
        for (const auto& control : file.controls)
            if (control->signals().front() == twinJetSignal("thrust_lever_1"))
                trace.input = control->inputs().front().name;
        record.raw = {trace};
        return record;
    };
    const auto isNarrow = [](const Coverage& coverage) {
        return !obstaclesIn(coverage).filter("too-narrow thrust_lever_1").isEmpty();
    };
    const std::string rig = kFullCockpit;
    QVERIFY(!isNarrow(covered(rig)));
    QVERIFY(controlIn(covered(rig), "thrust_lever_1").noiseDate.empty());
    const Coverage noisy = covered(rig, {measured(rig, 200, kSpring)});
    QVERIFY(isNarrow(noisy));
    QCOMPARE(controlIn(noisy, "thrust_lever_1").noiseDate, std::string("2026-03-01T18:04:05Z"));
    for (const CoveredStep& step : noisy.steps)
        for (const Obstacle& obstacle : step.obstacles)
            QVERIFY2(obstacle.text.english().find("measured 2026-03-01") != std::string::npos,
                     obstacle.text.english().c_str());
    // The newer counts; one of another wiring does not; and the filters of the rig file are taken into account.
    QVERIFY(!isNarrow(covered(rig, {measured(rig, 200, kSpring), measured(rig, 1, kSpring + 60)})));
    const std::string filtered = rigWith("smooth = \"200 ms\"\n");
    const Coverage smooth = covered(filtered, {measured(filtered, 200, kSpring)});
    const double share = controlIn(smooth, "thrust_lever_1").sigma / controlIn(noisy, "thrust_lever_1").sigma;
    QVERIFY2(std::fabs(share / lowPassShare(std::chrono::milliseconds(8), std::chrono::milliseconds(200)) - 1) < 0.15,
             qPrintable(QString::number(share)));
}

void TestCoverage::orphans() {
    RigFile rig = rigOf(kFullCockpit);
    const std::vector<const Flow*> flows = {wiredFlows().back()};
    const std::vector<EvidenceRecord> none;
    const auto coverage = coverageOf(rig, {*twinJetFolder().aircraft, flows, none, {"captain"}});
    QVERIFY(coverage);
    for (const SignalId id : coverage->orphans)
        for (const CoveredStep& step : coverage->steps)
            QVERIFY(std::find(step.needed.begin(), step.needed.end(), id) == step.needed.end());
    // Trim is set before take-off and not needed in the landing roll.
    QVERIFY(std::find(coverage->orphans.begin(), coverage->orphans.end(), twinJetSignal("pitch_trim")) !=
            coverage->orphans.end());
}

void TestCoverage::whatWiringsReach_data() {
    QTest::addColumn<QString>("rig");
    QTest::addColumn<QString>("signal");
    QTest::addColumn<QString>("reach");
    const auto row = [](const char* name, const std::string& rig, const char* signal, const char* reach) {
        QTest::newRow(name) << QString::fromStdString(rig) << signal << reach;
    };
    row("axis", lever("range = [100, 900]"), "thrust_lever_1", "0 % to 100 %");
    row("axis that runs backwards", lever("range = [900, 100]\nto = [5, 60]"), "thrust_lever_1", "5 % to 60 %");
    row("axis that wants a sweep", lever("range = [900, 100]\nsweep = true"), "thrust_lever_1", "0 % to 100 %");
    row("two axes",
        "[[control]]\nsignal = \"rudder_pedals\"\nwiring = \"two_axes\"\ncombine = \"difference\"\n"
        "input = [\"X\", \"Y\"]\nranges = [[100, 3900], [3950, 140]]\n",
        "rudder_pedals", "-100 % to 100 %");
    const std::string split = "[[control]]\nsignal = [\"thrust_lever_1\", \"reverse_lever_1\"]\n"
                              "wiring = \"split_axis\"\ninput = \"X\"\nranges = [[1130, 3960], [1040, 150]]\n"
                              "split = 1085\nhysteresis = 15\n";
    row("split, first", split, "thrust_lever_1", "0 % to 100 %");
    row("split, second", split, "reverse_lever_1", "0 % to 100 %");
    row("zones",
        "[[control]]\nsignal = \"thrust_lever_1\"\nwiring = \"zones\"\ninput = [\"button 1\", \"button 2\"]\nzones = "
        "[\n"
        "{ closed = [\"button 1\"], value = \"0 %\" }, { closed = [], value = \"40 %\" },\n"
        "{ closed = [\"button 2\"], value = \"75 %\" }]\n",
        "thrust_lever_1", "40 %, 0 %, 75 %");
    row("gates", kFullCockpit, "flap_lever", "up, 4, 12, 22, 34");
    row("on-off-on",
        "[[control]]\nsignal = \"spoiler_lever\"\nwiring = \"on_off_on\"\ninput = [\"button 1\", \"button 2\"]\n"
        "first = \"down\"\ncentre = \"armed\"\nsecond = \"up\"\n",
        "spoiler_lever", "down, armed, up");
}

void TestCoverage::whatWiringsReach() {
    QFETCH(QString, rig);
    QFETCH(QString, signal);
    QFETCH(QString, reach);
    RigFile file = rigOf(rig.toStdString());
    const SignalTable& signals = twinJetFolder().aircraft->signals;
    const SignalId id = twinJetSignal(signal.toStdString());
    const std::vector<Reach> reaches = reachesOf(file, signals, twinJetFolder().aircraft->controls.size());
    QCOMPARE(QString::fromStdString(reachText(reaches[indexOf(id)], signals[id]).english()), reach);
}

QTEST_APPLESS_MAIN(TestCoverage)
#include "test_coverage.moc"
