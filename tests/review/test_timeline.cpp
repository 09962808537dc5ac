#include <QtTest>
#include <algorithm>

#include "review/flown.h"
#include "review/timeline.h"
#include "session/anchor.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

/// A take-off with something of everything: another control first, a stop on the way, a gate too far, a wrong value
/// that is put right, a control that is left wrong.
const std::string kFaulty = R"(due brakes_off, 1 s later: landing_lights off
after 0.5 s: landing_lights on
after 1.5 s: parking_brake off
due first_stage, 0.8 s later: thrust_lever_1 20 % over 0.4 s
with: thrust_lever_2 20 % over 0.4 s
after 1.2 s: thrust_lever_1 45 % over 0.4 s
with: thrust_lever_2 45 % over 0.4 s
due second_stage, 0.8 s later: thrust_lever_1 90 % over 0.8 s
with: thrust_lever_2 90 % over 0.8 s
due speed_call_reply, 0.6 s later: press reply_button
due rotate, 0.4 s later: yoke_pitch 30 % over 0.6 s
when pitch > 9 deg: yoke_pitch 0 % over 0.8 s
due order_gear_up, 0.8 s later: press reply_button
due climb_thrust, 1 s later: thrust_lever_1 60 % over 0.5 s
with: thrust_lever_2 60 % over 0.5 s
after 0.1 s: thrust_lever_1 75 % over 0.5 s
with: thrust_lever_2 75 % over 0.5 s
due flap_to_4, 0.8 s later: flap_lever up over 0.3 s
after 0.2 s: flap_lever 4 over 0.3 s
due flap_up, 0.8 s later: flap_lever 12 over 0.3 s
after 1 s: flap_lever up over 0.5 s
due after_take_off_reply, 1 s later: press reply_button
)";

bool isAbout(std::optional<Time> time, Time expected) {
    constexpr auto kNear = 100ms; // the hands' own grain
    return time && *time > expected - kNear && *time < expected + kNear;
}

QString shown(const std::optional<Time>& time) {
    return time ? QString::fromStdString(clockText(*time)) : QString("none");
}

} // namespace

class TestTimeline : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void theCueHasABeginningAndAnEnd();
    void anotherControlFirstIsFound();
    void aStopOnTheWayIsFound();
    void aGateTooFarIsFound();
    void aLeverTooFarIsFound();
    void aStraightMovementHasNeither();
    void contextIsThatOfTheMoment();
    void errorsHaveTheirRepair();
    void deviationsLieWhereTheyHappened();
    void valuesAreThoseOfAScan();
    void everyWayLeadsForwardsAndBack();
    void limitsAreThoseOfTheCondition();
    void callsAndGuardsHaveTheirLanes();
    void anAnchorStaysWithItsStep();
    void whatWasLostIsAGap();

private:
    std::optional<FlownRecord> m_faulty;
    std::optional<FlownRecord> m_good;
    std::optional<Timeline> m_timeline; ///< of the faulty one
    const StepTimes& times(const char* step) const { return m_timeline->steps().at(m_faulty->step(step)); }
};

void TestTimeline::initTestCase() {
    m_faulty = flown("take_off", kFaulty);
    m_good = flown("take_off", demonstrationOf("take_off"));
    QVERIFY(m_faulty && m_good);
    m_timeline.emplace(m_faulty->reviewed());
}

void TestTimeline::theCueHasABeginningAndAnEnd() {
    const StepTimes& step = times("brakes_off");
    QVERIFY(step.cueBegan && step.cueEnded && step.due);
    QVERIFY(*step.cueBegan < *step.cueEnded);
    QVERIFY(*step.cueEnded == *step.due);
    QVERIFY(!times("first_stage").cueBegan); // it has no words
    QVERIFY(*step.done <= *step.settled);
}

void TestTimeline::anotherControlFirstIsFound() {
    const StepTimes& step = times("brakes_off");
    QVERIFY2(step.wrongReach && isAbout(step.wrongReach->time, *step.due + 1s),
             qPrintable(step.wrongReach ? shown(step.wrongReach->time) : "none"));
    QCOMPARE(m_faulty->aircraft->signals[step.wrongReach->signal].name, std::string("landing_lights"));
    QVERIFY(isAbout(step.firstMovement, *step.due + 3s));
    QVERIFY(!times("second_stage").wrongReach);
}

void TestTimeline::aStopOnTheWayIsFound() {
    const StepTimes& step = times("first_stage");
    // The hands wait for the step before to be settled; it was done, and this one due, a little earlier.
    const Time told = *times("brakes_off").settled;
    QVERIFY(*step.due < told);
    QVERIFY(isAbout(step.firstMovement, told + 800ms));
    QVERIFY(step.hesitation && isAbout(step.hesitation->from, told + 1200ms));
    QVERIFY(step.hesitation->length > 1100ms && step.hesitation->length < 1300ms);
    QVERIFY(!step.overshoot);
}

void TestTimeline::aGateTooFarIsFound() {
    const StepTimes& step = times("flap_to_4");
    QVERIFY(step.overshoot);
    QCOMPARE(step.overshoot->amount, 1.0);
    QVERIFY(step.overshoot->time > *step.firstMovement && step.overshoot->time < *step.settled);
}

void TestTimeline::aLeverTooFarIsFound() {
    const StepTimes& step = times("climb_thrust");
    QVERIFY(step.overshoot);
    QVERIFY2(step.overshoot->amount > 14.0 && step.overshoot->amount < 16.0,
             qPrintable(QString::number(step.overshoot->amount)));
}

void TestTimeline::aStraightMovementHasNeither() {
    const Timeline good(m_good->reviewed());
    const StepTimes& step = good.steps().at(m_good->step("climb_thrust"));
    QVERIFY(step.firstMovement && step.done);
    QVERIFY(!step.overshoot && !step.hesitation && !step.wrongReach);
}

void TestTimeline::contextIsThatOfTheMoment() {
    const StepContext& rotate = times("rotate").context;
    QVERIFY(rotate.airspeed && *rotate.airspeed > 100.0);
    QVERIFY(!rotate.isTurning && rotate.isSubstitute); // scripted hands
    QVERIFY(*times("brakes_off").context.groundSpeed < 1.0);
    QVERIFY(!times("gear_up").context.isSubstitute); // the partner's hand is no substitute of the pilot's
}

void TestTimeline::errorsHaveTheirRepair() {
    const std::vector<Repair>& repairs = m_timeline->repairs();
    const auto of = [&](const char* step) {
        return std::find_if(repairs.begin(), repairs.end(), [&](const Repair& repair) {
            return repair.step == static_cast<int>(m_faulty->step(step));
        });
    };
    const auto lights = of("brakes_off");
    QVERIFY(lights != repairs.end() && lights->repaired);
    QVERIFY(*lights->repaired - lights->time < 1s);
    const auto flap = of("flap_up"); // to 12 first
    QVERIFY(flap != repairs.end() && flap->repaired);
    QVERIFY(*flap->repaired == *times("flap_up").done);
    QVERIFY(std::is_sorted(repairs.begin(), repairs.end(), [](const Repair& a, const Repair& b) {
        return a.time < b.time;
    }));
}

void TestTimeline::deviationsLieWhereTheyHappened() {
    QVERIFY(!m_timeline->deviations().empty());
    std::int64_t sum = 0;
    for (const Deviation& deviation : m_timeline->deviations()) {
        sum += deviation.milliPoints;
        QVERIFY(deviation.time > 0s && deviation.time <= m_faulty->length);
        if (deviation.what == LossKind::WrongValue)
            QVERIFY(deviation.time >= *times("flap_up").due && deviation.time < *times("flap_up").settled);
    }
    QCOMPARE(100'000 - sum, m_faulty->judged.score.milliPoints);
    QVERIFY(Timeline(m_good->reviewed()).deviations().size() < m_timeline->deviations().size());
    QVERIFY(wentWell(m_good->reviewed()).english().find("All ") == 0);
}

void TestTimeline::valuesAreThoseOfAScan() {
    for (Time time = -1s; time < m_faulty->length + 1s; time += 1370ms) {
        std::vector<Value> values(m_faulty->aircraft->signals.size());
        for (const Sample& sample : m_faulty->samples)
            if (sample.time <= time)
                values[indexOf(sample.signal)] = sample.value;
        QVERIFY(m_timeline->valuesAt(time) == values);
    }
}

void TestTimeline::everyWayLeadsForwardsAndBack() {
    std::vector<Time> dues;
    for (const StepTimes& step : m_timeline->steps())
        if (step.due)
            dues.push_back(*step.due);
    std::sort(dues.begin(), dues.end());
    dues.erase(std::unique(dues.begin(), dues.end()), dues.end());
    std::vector<Time> walked;
    for (std::optional<Time> at = m_timeline->nextStep(-1s); at; at = m_timeline->nextStep(*at))
        walked.push_back(*at);
    QVERIFY(walked == dues);
    for (std::optional<Time> at = m_timeline->previousStep(m_faulty->length); at; at = m_timeline->previousStep(*at)) {
        QVERIFY(*at == walked.back());
        walked.pop_back();
    }
    QVERIFY(walked.empty());
    const std::optional<Time> worst = m_timeline->nextDeviation(-1s);
    QVERIFY(worst && m_timeline->previousDeviation(*worst + 1ns) == worst && !m_timeline->previousDeviation(*worst));
    const SignalId flap = *m_faulty->aircraft->signals.find("flap_lever");
    std::size_t changes = 0;
    for (std::optional<Time> at = m_timeline->nextChange({flap}, 0s); at; at = m_timeline->nextChange({flap}, *at))
        ++changes;
    QCOMPARE(changes, m_timeline->signal(flap).size() - m_timeline->signal(flap).countUntil(0s));
}

void TestTimeline::limitsAreThoseOfTheCondition() {
    const std::vector<SignalLimits> limits = m_timeline->limits(m_faulty->step("climb_thrust"));
    const SignalId lever = *m_faulty->aircraft->signals.find("thrust_lever_1");
    const auto of = std::find_if(limits.begin(), limits.end(), [&](const SignalLimits& one) {
        return one.signal == lever;
    });
    QVERIFY(of != limits.end() && of->allowed.size() == 1 && of->band.size() == 1);
    // abs(thrust_lever_1 - climb_thrust) < 6 %, and the band of the same width.
    QVERIFY(std::fabs(of->allowed[0].lowest - of->band[0].lowest) < 0.01);
    QVERIFY(std::fabs(of->allowed[0].highest - of->band[0].highest) < 0.01);
    const std::vector<SignalLimits> flap = m_timeline->limits(m_faulty->step("flap_to_4"));
    QCOMPARE(flap.size(), std::size_t(1));
    QCOMPARE(flap[0].allowed.at(0).lowest, 1.0); // the gate after "up"
    const std::optional<Episode> open = m_timeline->openStretch(m_faulty->step("flap_to_4"));
    QVERIFY(open && open->from == *times("flap_to_4").due && open->to == times("flap_to_4").done);
}

void TestTimeline::callsAndGuardsHaveTheirLanes() {
    QVERIFY(m_timeline->calls().size() > 4);
    for (const Call& call : m_timeline->calls())
        QVERIFY(call.to > call.from && !call.text.empty());
    QCOMPARE(m_timeline->guards().size(), m_faulty->flow->guards.size());
    QVERIFY(m_timeline->holds().empty());
}

void TestTimeline::anAnchorStaysWithItsStep() {
    const Time place = *times("flap_to_4").due + 300ms;
    const Anchor anchor = anchorAt(*m_faulty->flow, m_faulty->judged.results, place);
    QCOMPARE(anchor.step, std::string("flap_to_4"));
    QVERIFY(timeOf(anchor, *m_faulty->flow, m_faulty->judged.results) == place);
    const FlownRecord later = paused(*m_faulty, *times("rotate").due + 100ms, 5s);
    QVERIFY(timeOf(anchor, *later.flow, later.judged.results) == place + 5s);
    QVERIFY(timeOf({"no_such_step", 1s, 7s}, *later.flow, later.judged.results) == 7s);
}

void TestTimeline::whatWasLostIsAGap() {
    ReviewedRun run = m_faulty->reviewed();
    run.missing = {{10s, 15s}};
    std::vector<Sample> samples = m_faulty->samples;
    std::erase_if(samples, [](const Sample& sample) {
        return sample.time >= 10s && sample.time < 15s;
    });
    const SamplesBySignal left(samples);
    const ReviewedRun damaged{run.flow,    run.aircraft, run.header, left,        run.events,
                              run.results, run.score,    run.length, {{10s, 15s}}};
    const Timeline timeline(damaged);
    const SignalId speed = *m_faulty->aircraft->signals.find("airspeed");
    QVERIFY(timeline.signal(speed).at(9999ms).isKnown());
    QVERIFY(!timeline.signal(speed).at(12s).isKnown());
    QVERIFY(timeline.signal(speed).at(16s).isKnown());
    QVERIFY(timeline.signal(speed).columns(9s, 16s, 7).at(3).hasGap);
}

QTEST_APPLESS_MAIN(TestTimeline)
#include "test_timeline.moc"
