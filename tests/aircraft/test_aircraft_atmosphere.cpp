#include <QTest>
#include <rapidcheck.h>

#include "aircraft/atmosphere.h"

using namespace flowhand;

namespace {

constexpr double kInHg = 3386.389;

bool isNear(double value, double wanted, double tolerance) {
    if (std::fabs(value - wanted) <= tolerance)
        return true;
    qWarning("%.6g is not %.6g within %.2g", value, wanted, tolerance);
    return false;
}

} // namespace

class TestAtmosphere : public QObject {
    Q_OBJECT

private Q_SLOTS:
    // US Standard Atmosphere 1976; the rows computed from its constants at geopotential heights.
    void standardAirHasTheTablesValues_data() {
        QTest::addColumn<double>("feet");
        QTest::addColumn<double>("celsius");
        QTest::addColumn<double>("pascal");
        QTest::addColumn<double>("inHg");
        QTest::addColumn<double>("density");
        QTest::addColumn<double>("soundKnots");
        QTest::newRow("sea level") << 0.0 << 15.00 << 101325.0 << 29.92 << 1.2250 << 661.48;
        QTest::newRow("1,000 ft") << 1000.0 << 13.02 << 97716.6 << 28.86 << 1.1896 << 659.20;
        QTest::newRow("5,000 ft") << 5000.0 << 5.09 << 84307.3 << 24.90 << 1.0555 << 650.01;
        QTest::newRow("10,000 ft") << 10000.0 << -4.81 << 69681.6 << 20.58 << 0.9046 << 638.33;
        QTest::newRow("20,000 ft") << 20000.0 << -24.62 << 46563.2 << 13.75 << 0.6527 << 614.32;
        QTest::newRow("36,089 ft") << 36089.0 << -56.50 << 22632.0 << 6.68 << 0.3639 << 573.57;
    }
    void standardAirHasTheTablesValues() {
        QFETCH(double, feet);
        QFETCH(double, celsius);
        QFETCH(double, pascal);
        QFETCH(double, inHg);
        QFETCH(double, density);
        QFETCH(double, soundKnots);
        const AirState air = standardAir(feet * kMetresPerFoot);
        QVERIFY(isNear(air.temperature - 273.15, celsius, 0.006));
        QVERIFY(isNear(air.pressure, pascal, 0.6));
        QVERIFY(isNear(air.pressure / kInHg, inHg, 0.006));
        QVERIFY(isNear(air.density, density, 0.00006));
        QVERIFY(isNear(air.soundSpeed / kMetresPerSecondPerKnot, soundKnots, 0.006));
    }

    // av8n.com, altimetry table: 36,089 ft: 216.65 K, 22632.1 Pa, 0.363918 kg/m3.
    void tropopauseAgreesWithAPublishedTable() {
        const AirState air = standardAir(11000.0);
        QVERIFY(isNear(air.temperature, 216.65, 1e-9));
        QVERIFY(isNear(air.pressure, 22632.1, 0.1));
        QVERIFY(isNear(air.density, 0.363918, 2e-6));
    }

    // engineersedge.com lists 10.108 and 6.758 psia, which are of geometric heights; geopotential ones are computed.
    void heightIsGeopotential_data() {
        QTest::addColumn<double>("feet");
        QTest::addColumn<double>("psi");
        QTest::addColumn<double>("geometric");
        QTest::newRow("10,000 ft") << 10000.0 << 10.1065 << 10.108;
        QTest::newRow("20,000 ft") << 20000.0 << 6.7534 << 6.758;
    }
    void heightIsGeopotential() {
        QFETCH(double, feet);
        QFETCH(double, psi);
        QFETCH(double, geometric);
        const double found = standardAir(feet * kMetresPerFoot).pressure / 6894.757;
        QVERIFY(isNear(found, psi, 0.0003));
        QVERIFY(std::fabs(found - geometric) > 0.001);
    }

    // Computed from M = sqrt(5 [(qc/p + 1)^(2/7) - 1]).
    void calibratedSpeedGivesMachAndTrueSpeed_data() {
        QTest::addColumn<double>("calibrated");
        QTest::addColumn<double>("feet");
        QTest::addColumn<double>("mach");
        QTest::addColumn<double>("trueSpeed");
        QTest::addColumn<double>("equivalent"); // true speed times the root of the density ratio
        QTest::newRow("140 kt, sea level") << 140.0 << 0.0 << 0.2116 << 140.0 << 140.0;
        QTest::newRow("140 kt, 5,000 ft") << 140.0 << 5000.0 << 0.2318 << 150.7 << 139.8;
        QTest::newRow("250 kt, 10,000 ft") << 250.0 << 10000.0 << 0.4523 << 288.7 << 248.1;
    }
    void calibratedSpeedGivesMachAndTrueSpeed() {
        QFETCH(double, calibrated);
        QFETCH(double, feet);
        QFETCH(double, mach);
        QFETCH(double, trueSpeed);
        QFETCH(double, equivalent);
        const AirState air = standardAir(feet * kMetresPerFoot);
        const double speed = calibrated * kMetresPerSecondPerKnot;
        QVERIFY(isNear(machFromCalibrated(speed, air.pressure), mach, 0.00006));
        const double knots = trueFromCalibrated(speed, air) / kMetresPerSecondPerKnot;
        QVERIFY(isNear(knots, trueSpeed, 0.06));
        QVERIFY(isNear(knots * std::sqrt(air.density / kSeaDensity), equivalent, 0.06));
    }

    // aerocalc documentation: qc = 15 inHg is 518.966 kt calibrated.
    void impactPressureGivesCalibratedSpeed() {
        QVERIFY(isNear(calibratedFromImpactPressure(15.0 * kInHg) / kMetresPerSecondPerKnot, 518.966, 0.003));
    }

    // Pilot's Handbook of Aeronautical Knowledge, Fig. 10-3 of an older edition: 29.70 adds 205 ft.
    void altimeterSettingShiftsPressureAltitude() {
        QVERIFY(isNear(pressureAltitudeOf(0.0, 29.70 * kInHg) / kMetresPerFoot, 205.0, 0.5));
        QVERIFY(isNear(pressureAltitudeOf(300.0, 101325.0), 300.0, 1e-6));
    }

    // Computed, dry air: 4,161 ft and 7,262 ft.
    void densityAltitudeOfHotAir() {
        const auto densityFeet = [](double feet, double celsius) {
            const double height = feet * kMetresPerFoot;
            const double warmer = celsius + 273.15 - standardAir(height).temperature;
            return densityAltitude(standardAir(height, warmer).density) / kMetresPerFoot;
        };
        QVERIFY(isNear(densityFeet(2000.0, 30.0), 4161.0, 2.0));
        QVERIFY(isNear(densityFeet(5000.0, 25.0), 7262.0, 2.0));
    }

    // FAA knowledge test, quoted: runway 18, wind 220 at 30 kt is 23 kt head and 19 kt cross; the rest computed.
    void windComponents_data() {
        QTest::addColumn<double>("angle");
        QTest::addColumn<double>("speed");
        QTest::addColumn<double>("head");
        QTest::addColumn<double>("cross");
        QTest::newRow("runway 18, 220 at 30 kt") << 40.0 << 30.0 << 22.98 << 19.28;
        QTest::newRow("10 deg") << 10.0 << 20.0 << 19.7 << 3.5;
        QTest::newRow("20 deg") << 20.0 << 20.0 << 18.8 << 6.8;
        QTest::newRow("30 deg") << 30.0 << 20.0 << 17.3 << 10.0;
        QTest::newRow("45 deg") << 45.0 << 20.0 << 14.1 << 14.1;
        QTest::newRow("60 deg") << 60.0 << 20.0 << 10.0 << 17.3;
        QTest::newRow("90 deg") << 90.0 << 20.0 << 0.0 << 20.0;
    }
    void windComponents() {
        QFETCH(double, angle);
        QFETCH(double, speed);
        QFETCH(double, head);
        QFETCH(double, cross);
        const WindComponents wind = flowhand::windComponents(180.0 + angle, speed, 180.0);
        QVERIFY(isNear(wind.head, head, 0.06));
        QVERIFY(isNear(wind.cross, cross, 0.06));
    }

    void conversionsUndoEachOther() {
        QVERIFY(rc::check("speeds and heights come back", [] {
            const double height = *rc::gen::inRange(-1500, 19500);
            const double speed = *rc::gen::inRange(1, 250);
            const AirState air = standardAir(height);
            RC_ASSERT(std::fabs(pressureAltitude(air.pressure) - height) < 1e-6 * 20000.0);
            const double there = trueFromCalibrated(speed, air);
            if (there < air.soundSpeed)
                RC_ASSERT(std::fabs(calibratedFromTrue(there, air) - speed) < 1e-6 * speed);
        }));
    }
};

QTEST_APPLESS_MAIN(TestAtmosphere)
#include "test_aircraft_atmosphere.moc"
