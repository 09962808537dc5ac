#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "aircraft/practice.h"
#include "twinjet.h"

namespace flowhand::test {

/// Sits in the shipped aircraft: moves controls by name, sees motion by name, lets time run.
class Pilot {
public:
    explicit Pilot(const std::string& place, const Surroundings& surroundings = {},
                   const std::string& folder = "twin_jet")
        : m_aircraft(shippedAircraft(folder)) {
        Result<PracticeAircraft> practice = PracticeAircraft::create(m_aircraft, place, surroundings);
        if (!practice)
            qFatal("%s", describe(practice.error()).c_str());
        m_practice.emplace(std::move(*practice));
        m_practice->begin(m_record);
        see(0);
    }

    void set(const std::string& control, double number) { take(control, Value::number(number)); }
    void put(const std::string& control, const std::string& text) {
        take(control, *parseValue(m_aircraft.signals[*m_aircraft.signals.find(control)], text));
    }
    /// Thrust levers, power levers or the throttle.
    void levers(double percent) {
        for (const char* name : {"thrust_lever_1", "thrust_lever_2", "power_lever_1", "power_lever_2", "throttle"})
            if (m_aircraft.signals.find(name))
                set(name, percent);
    }
    void reverse(double percent) {
        set("reverse_lever_1", percent);
        set("reverse_lever_2", percent);
    }
    void brakes(double percent) {
        set("toe_brake_left", percent);
        set("toe_brake_right", percent);
    }

    void fail(const Failure& failure) { m_practice->fail(failure); }
    [[nodiscard]] PracticeAircraft& practice() { return *m_practice; }

    [[nodiscard]] double operator[](const std::string& signal) const { return m_seen.at(signal); }
    [[nodiscard]] double time() const { return seconds(m_time); }
    [[nodiscard]] const std::vector<Sample>& record() const { return m_record; }
    [[nodiscard]] const Aircraft& aircraft() const { return m_aircraft; }

    /// One motion period.
    void wait() {
        for (int i = 0; i < 5; ++i) {
            m_time = m_practice->nextStep();
            const std::size_t before = m_record.size();
            m_practice->step(m_record);
            see(before);
        }
    }
    void wait(double duration) {
        for (int i = 0; i < static_cast<int>(duration / 0.05); ++i)
            wait();
    }
    /// False when it has not come true within `limit` seconds.
    [[nodiscard]] bool waitUntil(const std::function<bool()>& isTrue, double limit) {
        for (double end = time() + limit; time() < end && !isTrue();)
            wait();
        return isTrue();
    }

private:
    void take(const std::string& control, Value value) {
        m_practice->take({m_time, *m_aircraft.signals.find(control), value, Actor::Hand, Origin::Script, kNoControl});
    }
    void see(std::size_t from) {
        for (std::size_t i = from; i < m_record.size(); ++i)
            m_seen[m_aircraft.signals[m_record[i].signal].name] = m_record[i].value.number();
    }

    Aircraft m_aircraft;
    std::optional<PracticeAircraft> m_practice;
    std::vector<Sample> m_record;
    std::map<std::string, double> m_seen;
    Time m_time{};
};

} // namespace flowhand::test
