#include <QTest>
#include <rapidcheck.h>

#include "aircraft/engine.h"
#include "twinjet.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

constexpr double kStep = 0.01;

double timeTo(const EngineFigures& figures, Engine& engine, const EngineDemand& demand, double power) {
    double time = 0.0;
    while (engine.power() < power && time < 60.0) {
        engine.step(figures, demand, kStep);
        time += kStep;
    }
    return time;
}

void run(const EngineFigures& figures, Engine& engine, const EngineDemand& demand, double time) {
    for (int i = 0; i < static_cast<int>(time / kStep); ++i)
        engine.step(figures, demand, kStep);
}

} // namespace

class TestEngine : public QObject {
    Q_OBJECT

    const EngineFigures m_figures = twinJetFigures().engine;

private Q_SLOTS:
    // 14 CFR 33.73(b), quoted: from at most 15 % to 95 % of rated thrust in 5 s or less.
    void spoolsUpWithinFiveSeconds() {
        Engine engine;
        EngineDemand demand;
        demand.lever = (15.0 - m_figures.idlePower) / (100.0 - m_figures.idlePower) * 100.0;
        engine.settle(m_figures, demand);
        QVERIFY(isNear(engine.power(), 15.0, 1e-9));
        demand.lever = 100.0;
        const double time = timeTo(m_figures, engine, demand, 95.0);
        QVERIFY2(time <= 5.0, qPrintable(QString::number(time)));
    }

    void isSlowerFromIdle() {
        Engine engine;
        engine.settle(m_figures, {});
        EngineDemand full;
        full.lever = 100.0;
        Engine warm;
        warm.settle(m_figures, {20.0, 0.0, 0.0, true, true});
        QVERIFY(timeTo(m_figures, engine, full, 95.0) > timeTo(m_figures, warm, full, 95.0) + 0.5);
    }

    void lessThrustFastAndHighAndHot() {
        Engine engine;
        engine.settle(m_figures, {100.0, 0.0, 0.0, true, true});
        const double still = engine.thrust(m_figures, standardAir(0.0), 0.0);
        QVERIFY(isNear(still, m_figures.ratedThrust, 1e-6));
        QVERIFY(engine.thrust(m_figures, standardAir(0.0), 70.0) < still);
        QVERIFY(engine.thrust(m_figures, standardAir(1500.0), 0.0) < still);
        QVERIFY(engine.thrust(m_figures, standardAir(0.0, 20.0), 0.0) < still);
    }

    void reversesOnlyWhenDeployed() {
        Engine engine;
        engine.settle(m_figures, {});
        const EngineDemand reverse{0.0, 100.0, 0.0, true, true};
        engine.step(m_figures, reverse, kStep);
        QCOMPARE(engine.reverser(), ReverserState::Transit);
        run(m_figures, engine, reverse, m_figures.reverserTransit - 0.1);
        QCOMPARE(engine.reverser(), ReverserState::Transit);
        QVERIFY(isNear(engine.power(), m_figures.idlePower, 1e-6));
        run(m_figures, engine, reverse, 10.0);
        QCOMPARE(engine.reverser(), ReverserState::Deployed);
        QVERIFY(isNear(engine.power(), m_figures.reversePower, 0.1));
        const double thrust = engine.thrust(m_figures, standardAir(0.0), 0.0);
        QVERIFY(isNear(thrust, -m_figures.reverseShare * m_figures.ratedThrust * engine.power() / 100.0, 1.0));
        run(m_figures, engine, {}, m_figures.reverserTransit + 0.1);
        QCOMPARE(engine.reverser(), ReverserState::Stowed);
    }

    void staysStowedInTheAirAndUnderThrust() {
        Engine engine;
        engine.settle(m_figures, {});
        run(m_figures, engine, {0.0, 100.0, 0.0, true, false}, 5.0);
        QCOMPARE(engine.reverser(), ReverserState::Stowed);
        run(m_figures, engine, {50.0, 100.0, 0.0, true, true}, 5.0);
        QCOMPARE(engine.reverser(), ReverserState::Stowed);
        QVERIFY(engine.thrust(m_figures, standardAir(0.0), 0.0) > 0.0);
    }

    void runsDownWithoutFuel() {
        Engine engine;
        engine.settle(m_figures, {});
        run(m_figures, engine, {0.0, 0.0, 0.0, false, true}, 30.0);
        QCOMPARE(engine.power(), 0.0);
        run(m_figures, engine, {}, 60.0);
        QVERIFY(isNear(engine.power(), m_figures.idlePower, 0.1));
    }

    void powerStaysInItsRange() {
        QVERIFY(rc::check("0 <= power <= 100 whatever the levers do", [this] {
            Engine engine;
            engine.settle(m_figures, {});
            const auto levers = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 101));
            for (const int lever : levers) {
                const EngineDemand demand{static_cast<double>(lever), lever % 3 == 0 ? 100.0 : 0.0, 0.0, lever % 7 != 0,
                                          lever % 2 == 0};
                run(m_figures, engine, demand, 1.0);
                RC_ASSERT(engine.power() >= 0.0);
                RC_ASSERT(engine.power() <= 100.0);
            }
        }));
    }
};

QTEST_APPLESS_MAIN(TestEngine)
#include "test_aircraft_engine.moc"
