// Steps that were acted out: each one that a hand can make on a shipped aircraft is a good step.

#include <QtTest>

#include "procedure/library.h"
#include "procedure/stepwriter.h"

using namespace flowhand;

namespace {

/// A flow of this one step.
std::string flowWith(const Aircraft& aircraft, const std::string& step) {
    return "format = 1\ntitle = \"Acted out\"\nphases = [\"taxi_out\"]\nseat = \"" + aircraft.seats.front() + "\"\n\n" +
           step;
}

std::vector<Value> placesOf(const Signal& signal) {
    std::vector<Value> places;
    if (signal.kind == SignalKind::OnOff)
        places = {Value::onOff(true), Value::onOff(false)};
    for (std::size_t i = 0; signal.kind == SignalKind::Position && i < signal.positions.size(); ++i)
        places.push_back(Value::position(static_cast<int>(i)));
    for (const double share : {0.0, 0.03, 0.5, 1.0})
        if (signal.kind == SignalKind::Number)
            places.push_back(Value::number(signal.lowest + share * (signal.highest - signal.lowest)));
    return places;
}

} // namespace

class TestStepWriter : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyControlGivesAGoodStep_data();
    void everyControlGivesAGoodStep();
    void wordsByHand();
    void anIdIsTakenOnce();
};

void TestStepWriter::everyControlGivesAGoodStep_data() {
    QTest::addColumn<QString>("folder");
    for (const char* folder : {"twin_jet", "light_single", "twin_turboprop"})
        QTest::newRow(folder) << QString(folder);
}

void TestStepWriter::everyControlGivesAGoodStep() {
    QFETCH(QString, folder);
    Problems problems;
    const std::optional<Aircraft> aircraft =
        loadAircraft(PROCEDURES "/" + folder.toStdString() + "/aircraft.toml", problems);
    QVERIFY(aircraft.has_value());
    for (const CockpitControl& control : aircraft->controls)
        for (const Value value : placesOf(aircraft->signals[control.signal])) {
            const std::string text = flowWith(*aircraft, stepText(*aircraft, control.signal, value, ""));
            const std::optional<Flow> flow = parseFlow(text, "acted.toml", *aircraft, problems);
            QVERIFY2(flow.has_value(),
                     (text + describe(problems.hasErrors() ? problems.firstError() : Error())).c_str());
            QCOMPARE(flow->steps.size(), std::size_t(1));
            QVERIFY(flow->steps.front().done->condition.signals() == std::vector<SignalId>{control.signal});
        }
}

void TestStepWriter::wordsByHand() {
    Problems problems;
    const std::optional<Aircraft> jet = loadAircraft(PROCEDURES "/twin_jet/aircraft.toml", problems);
    QVERIFY(jet.has_value());
    const SignalId lever = *jet->signals.find("thrust_lever_1");
    const SignalId light = *jet->signals.find("taxi_light");
    QCOMPARE(stepText(*jet, light, Value::onOff(true), ""),
             std::string("[[step]]\nid = \"taxi_light_on\"\ntitle = \"Taxi light on\"\ndone = \"taxi_light\"\nwithin = "
                         "\"5 s\"\nwhy = \"Say in one line what it is for.\"\n"));
    const auto has = [&](double percent, const char* condition) {
        return stepText(*jet, lever, Value::number(percent), "").find(condition) != std::string::npos;
    };
    QVERIFY(has(0.0, "done = \"thrust_lever_1 < 5 %\""));
    QVERIFY(has(50.0, "done = \"thrust_lever_1 > 45 % and thrust_lever_1 < 55 %\""));
    QVERIFY(has(100.0, "done = \"thrust_lever_1 > 95 %\""));
}

void TestStepWriter::anIdIsTakenOnce() {
    Problems problems;
    const std::optional<Aircraft> jet = loadAircraft(PROCEDURES "/twin_jet/aircraft.toml", problems);
    const SignalId light = *jet->signals.find("taxi_light");
    std::string text;
    for (const char* id : {"\"taxi_light_on\"", "\"taxi_light_on_2\"", "\"taxi_light_on_3\""}) {
        const std::string step = stepText(*jet, light, Value::onOff(true), text);
        QVERIFY2(step.find(std::string("id = ") + id) != std::string::npos, step.c_str());
        text += step;
    }
}

QTEST_APPLESS_MAIN(TestStepWriter)
#include "test_stepwriter.moc"
