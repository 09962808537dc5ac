#include <QTest>

#include "aircraft/steering.h"
#include "pilot.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

/// Taxies along the line at `knots` until `isThere`; returns the largest offset, m.
double taxi(Pilot& pilot, double knots, const std::function<bool()>& isThere) {
    double worst = 0.0;
    const auto steer = [&] {
        const double error = knots - pilot["ground_speed"];
        pilot.levers(error > 0.0 ? std::min(40.0, 6.0 + 8.0 * error) : 0.0);
        pilot.brakes(error < -1.0 ? std::min(30.0, -5.0 * error) : 0.0);
        pilot.set("tiller", tillerFor(pilot["centreline_offset"], pilot["centreline_angle"], pilot["ground_speed"],
                                      pilot["line_curvature"]));
        worst = std::max(worst, std::fabs(pilot["centreline_offset"]));
        return isThere();
    };
    return pilot.waitUntil(steer, 300.0) ? worst : 1e9;
}

double taxiToStop(Pilot& pilot, double knots) {
    return taxi(pilot, knots, [&] {
        return pilot["stop_distance"] < 2.0;
    });
}

} // namespace

class TestSteering : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void steersTowardsTheLine() {
        QVERIFY(tillerFor(3.0, 0.0, 10.0, 0.0) < 0.0);
        QVERIFY(tillerFor(-3.0, 0.0, 10.0, 0.0) > 0.0);
        QVERIFY(tillerFor(0.0, 10.0, 10.0, 0.0) < 0.0);
        QCOMPARE(tillerFor(0.0, 0.0, 10.0, 0.0), 0.0);
        QCOMPARE(tillerFor(0.0, -90.0, 10.0, 0.0), 70.0);
    }

    void followsTheWayOut_data() {
        QTest::addColumn<double>("knots");
        QTest::newRow("8 kt") << 8.0;
        QTest::newRow("10 kt") << 10.0;
        QTest::newRow("13 kt") << 13.0;
    }
    void followsTheWayOut() {
        QFETCH(double, knots);
        Pilot pilot("stand");
        pilot.put("parking_brake", "off");
        const double worst = taxiToStop(pilot, knots);
        QVERIFY2(worst < 2.0, qPrintable(QString::number(worst)));
        QVERIFY2(pilot.time() > 70.0 && pilot.time() < 140.0, qPrintable(QString::number(pilot.time())));
        QCOMPARE(pilot["runway_clear"], 1.0);
    }

    void linesUpFromTheHoldingPoint() {
        Pilot pilot("holding_point");
        pilot.put("parking_brake", "off");
        QVERIFY(taxi(pilot, 10.0, [&] {
                    return pilot["stop_distance"] > 50.0;
                }) < 2.0);
        QVERIFY(taxiToStop(pilot, 10.0) < 2.0);
        QCOMPARE(pilot["runway_clear"], 0.0);
        QVERIFY(isNear(pilot["heading"], 90.0, 6.0));
    }

    void followsTheWayIn() {
        Pilot pilot("rollout");
        pilot.put("spoiler_lever", "up");
        pilot.brakes(35.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["ground_speed"] < 20.0;
            },
            60.0));
        QVERIFY(pilot["stop_distance"] > 470.0);
        QCOMPARE(pilot["runway_clear"], 0.0);
        const double worst = taxiToStop(pilot, 10.0);
        QVERIFY2(worst < 2.0, qPrintable(QString::number(worst)));
        QCOMPARE(pilot["runway_clear"], 1.0);
        QVERIFY(std::fabs(pilot["centreline_angle"]) < 5.0);
    }

    void comesBackToTheLine() {
        Pilot pilot("stand");
        pilot.put("parking_brake", "off");
        pilot.levers(30.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["ground_speed"] > 8.0;
            },
            20.0));
        pilot.levers(0.0);
        pilot.set("tiller", 25.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return std::fabs(pilot["centreline_offset"]) > 3.0;
            },
            20.0));
        const double there = pilot["stop_distance"] - 70.0;
        QVERIFY(taxi(pilot, 8.0, [&] {
                    return pilot["stop_distance"] < there;
                }) < 20.0);
        QVERIFY2(std::fabs(pilot["centreline_offset"]) < 0.5, qPrintable(QString::number(pilot["centreline_offset"])));
    }
};

QTEST_APPLESS_MAIN(TestSteering)
#include "test_aircraft_steering.moc"
