// Steering quality as a part of the taxi flows' conditions: what the hands of a person still meet, and what they do
// not. Judged from the motion signals as they are recorded, by the condition that stands in the shipped flow.

#include <QTest>

#include <deque>
#include <random>

#include "aircraft/steering.h"
#include "pilot.h"
#include "procedure/flow.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

/// How hands steer and keep their speed.
struct Driver {
    double knots = 9.0;
    int lag = 0;         ///< motion periods, 50 ms each, by which what the eyes saw is old
    int jitter = 0;      ///< up to so many more, drawn anew for each look
    double wobble = 0.0; ///< share of the steering's travel, to and fro
    double swing = 4.0;  ///< s, of the wobble
};

struct Seen {
    double offset = 0.0, angle = 0.0, speed = 0.0, curvature = 0.0;
};

std::string steeringOf(const std::string& folder) {
    return folder == "light_single" ? "rudder_pedals" : "tiller";
}

/// One taxi along the shipped route from its first place to its stop.
class Taxi {
public:
    Taxi(const std::string& folder, const std::string& place, const Driver& driver)
        : m_folder(folder), m_pilot(place, {}, folder), m_driver(driver), m_random(7) {}

    /// Whether the flow's own condition holds once the aircraft stands at its stop.
    [[nodiscard]] bool isGood(const std::string& flow) {
        m_pilot.put("parking_brake", "off");
        m_pilot.brakes(0.0);
        const bool isThere = m_pilot.waitUntil(
            [&] {
                look();
                drive();
                return m_pilot["stop_distance"] < 6.0;
            },
            400.0);
        m_pilot.levers(m_folder == "twin_turboprop" ? -10.0 : 0.0);
        m_pilot.set(steeringOf(m_folder), 0.0);
        m_pilot.brakes(60.0);
        const bool stands = m_pilot.waitUntil(
            [&] {
                return m_pilot["ground_speed"] == 0.0;
            },
            20.0);
        return isThere && stands && holds(flow);
    }
    [[nodiscard]] QString told() const {
        return QString("rms %1 m, largest %2 m, in bends %3 kt")
            .arg(m_pilot["line_offset_rms"])
            .arg(m_pilot["line_offset_largest"])
            .arg(m_pilot["turn_speed_largest"]);
    }

private:
    void look() {
        m_seen.push_back({m_pilot["centreline_offset"], m_pilot["centreline_angle"], m_pilot["ground_speed"],
                          m_pilot["line_curvature"]});
    }

    void drive() {
        const int age =
            m_driver.lag + (m_driver.jitter > 0 ? std::uniform_int_distribution<int>(0, m_driver.jitter)(m_random) : 0);
        const std::size_t back = std::min<std::size_t>(static_cast<std::size_t>(age), m_seen.size() - 1);
        const Seen& seen = m_seen[m_seen.size() - 1 - back];
        const double slow = m_driver.knots - seen.speed;
        const double idle = m_folder == "twin_turboprop" ? -10.0 : 0.0;
        m_pilot.levers(std::clamp(idle + 12.0 * slow, idle, idle + 35.0));
        m_pilot.brakes(std::clamp(-8.0 * (slow + 1.5), 0.0, 60.0));
        double wheel = tillerFor(seen.offset, seen.angle, seen.speed, seen.curvature);
        if (m_folder == "light_single")
            wheel *= 100.0 / m_pilot.aircraft().values.at("pedal_steering").number;
        const Signal& control = m_pilot.aircraft().signals[*m_pilot.aircraft().signals.find(steeringOf(m_folder))];
        const double phase = 2.0 * 3.14159265358979 * m_pilot.time() / m_driver.swing;
        wheel += m_driver.wobble * control.highest * std::sin(phase);
        m_pilot.set(steeringOf(m_folder), std::clamp(wheel, control.lowest, control.highest));
    }

    [[nodiscard]] bool holds(const std::string& id) const {
        Problems problems;
        const std::optional<Flow> flow =
            loadFlow(std::string(PROCEDURES) + "/" + m_folder + "/" + id + ".toml", m_pilot.aircraft(), problems);
        if (!flow)
            qFatal("%s", describe(problems.firstError()).c_str());
        std::vector<Value> values(m_pilot.aircraft().signals.size());
        for (const Sample& sample : m_pilot.record())
            values[indexOf(sample.signal)] = sample.value;
        for (const Step& step : flow->steps)
            if (step.id == "on_the_line")
                return step.done->condition.holdsNow(values) == Truth::True;
        qFatal("%s of %s has no step 'on_the_line'", id.c_str(), m_folder.c_str());
    }

    std::string m_folder;
    Pilot m_pilot;
    Driver m_driver;
    std::mt19937 m_random;
    std::deque<Seen> m_seen;
};

void drivers(const std::vector<std::pair<const char*, Driver>>& all) {
    QTest::addColumn<QString>("folder");
    QTest::addColumn<QString>("flow");
    QTest::addColumn<Driver>("driver");
    for (const char* folder : {"twin_jet", "twin_turboprop", "light_single"})
        for (const char* flow : {"taxi_out", "taxi_in"})
            for (auto [name, driver] : all) {
                if (std::string(folder) == "light_single") { // slower, and its pedals turn the nosewheel little
                    driver.knots -= 2.0;
                    driver.wobble *= 2.0;
                    driver.swing *= 1.5;
                }
                QTest::addRow("%s, %s, %s", folder, flow, name) << folder << flow << driver;
            }
}

} // namespace

class TestTaxi : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void handsOfAPersonMeetTheCondition_data() {
        drivers({{"at once", {}},
                 {"0.1 s late", {9.0, 2}},
                 {"0 to 0.1 s late", {9.0, 0, 2}},
                 {"0.15 s late", {9.0, 3}},
                 {"a hand that trembles", {9.0, 2, 0, 0.03, 1.0}},
                 {"slowly", {6.0, 2}}});
    }
    void handsOfAPersonMeetTheCondition() {
        QFETCH(QString, folder);
        QFETCH(QString, flow);
        QFETCH(Driver, driver);
        Taxi taxi(folder.toStdString(), flow == "taxi_out" ? "stand" : "runway_vacated", driver);
        QVERIFY2(taxi.isGood(flow.toStdString()), qPrintable(taxi.told()));
    }

    void sloppyOnesDoNot_data() {
        drivers({{"to and fro", {9.0, 2, 0, 0.5, 8.0}}, {"too fast in the bends", {13.5, 2}}});
    }
    void sloppyOnesDoNot() {
        QFETCH(QString, folder);
        QFETCH(QString, flow);
        QFETCH(Driver, driver);
        Taxi taxi(folder.toStdString(), flow == "taxi_out" ? "stand" : "runway_vacated", driver);
        QVERIFY2(!taxi.isGood(flow.toStdString()), qPrintable(taxi.told()));
    }
};

QTEST_APPLESS_MAIN(TestTaxi)
#include "test_aircraft_taxi.moc"
