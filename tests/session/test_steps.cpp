#include <QtTest>

#include "session/cases.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

const char* const kList = R"toml(
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
within = "4 s"
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
within = "4 s"
[[step]]
id = "brake"
title = "Parking brake on"
done = "parking_brake"
within = "4 s"
)toml";

/// The states of steps, in the order in which the rules name them.
const std::vector<Case> kCases{
    {"a perfect list", kList, "", "1 flap_lever = 12\n2 taxi_light = on\n3 parking_brake = on\n9 wait",
     "0 due flap, 1.5 done flap, 1.5 due light, 2.3 done light, 2.3 due brake, 3.3 done brake, "
     "3.3 run-ended completed"},
    {"a gate passed in less than half a second is not selected", kList, "",
     "1 flap_lever = 4\n1.3 flap_lever = between\n1.4 flap_lever = 12\n1.89 flap_lever = between\n"
     "2 flap_lever = 22\n2.6 wait",
     "0 due flap, 2.5 wrong-value flap flap_lever 22"},
    {"a contact that bounces settles after its last change", kList, "",
     "1 flap_lever = 12\n2 taxi_light = on\n2.1 taxi_light = off\n2.2 taxi_light = on\n2.6 wait",
     "0 due flap, 1.5 done flap, 1.5 due light, 2.5 done light, 2.5 due brake"},
    {"made true and taken back before it settles is not done", kList, "",
     "1 flap_lever = 12\n2 taxi_light = on\n2.2 taxi_light = off\n3 wait", "0 due flap, 1.5 done flap, 1.5 due light"},
    {"a later step first leaves the skipped one open and makes the next due", kList, "",
     "1 flap_lever = 12\n3 parking_brake = on\n5 taxi_light = on\n9 wait",
     "0 due flap, 1.5 done flap, 1.5 due light, 3.3 done brake, 5.3 done light, 5.3 run-ended completed"},
    {"omitted three times late after it was due, then the next is due", kList, "", "80 wait",
     "0 due flap, 30 omitted flap, 30 due light, 60 omitted light, 60 due brake"},
    {"found set leaves it to nobody", kList, "taxi_light = on", "1 flap_lever = 12\n3 wait",
     "0 due flap, 1.5 done flap, 1.5 due light, 1.5 found-set light, 1.5 due brake"},
    {"the hand is quicker than the verdict on the step before: no found set", kList, "",
     "1 flap_lever = 12\n1.3 taxi_light = on\n3 wait",
     "0 due flap, 1.5 done flap, 1.5 due light, 1.6 done light, 1.6 due brake"},
    {"settled before the step before it has", kList, "", "1 flap_lever = 12\n1.1 taxi_light = on\n3 wait",
     "0 due flap, 1.4 done light, 1.4 due brake, 1.5 done flap"},
    {"the machine's doing is not the hand's", R"toml(
[[step]]
id = "idle"
title = "Thrust levers closed"
done = "thrust_lever_1 < 5 % and ground_speed > 3 kt"
)toml",
     "thrust_lever_1 = 50 %; ground_speed = 0 kt", "1 thrust_lever_1 = 0 %\n2 ground_speed = 5 kt\n3 wait",
     "0 due idle, 2 done idle, 2 run-ended completed"},
    {"motion alone does no step of a control", R"toml(
[[step]]
id = "idle"
title = "Thrust levers closed"
done = "thrust_lever_1 < 5 % and ground_speed > 3 kt"
)toml",
     "ground_speed = 0 kt", "2 ground_speed = 5 kt\n3 wait", "0 due idle"},
    {"instants are done at once", R"toml(
[[step]]
id = "press"
title = "Press the take-off button"
done = "rise(takeoff_button)"
)toml",
     "", "1 takeoff_button = on\n1.1 takeoff_button = off\n3 wait", "0 due press, 1 done press, 1 run-ended completed"},
    {"a button's press needs no settling", R"toml(
[[step]]
id = "press"
title = "Press the take-off button"
done = "takeoff_button"
)toml",
     "", "1 takeoff_button = on\n1.1 takeoff_button = off\n3 wait", "0 due press, 1 done press, 1 run-ended completed"},
    {"held counts from when the step was due", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "brakes"
title = "Hold the brakes"
done = "held(toe_brake > 20 %, 2 s)"
)toml",
     "", "1 toe_brake = 50 %\n1.5 toe_brake = 10 %\n5 taxi_light = on\n5.1 toe_brake = 60 %\n9 wait",
     "0 due light, 5.3 done light, 5.3 due brakes, 7.3 done brakes, 7.3 run-ended completed"},
    {"found set is judged without held", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "idle"
title = "Thrust closed for 5 s"
done = "held(thrust_lever_1 < 5 %, 5 s)"
compare_only = true
)toml",
     "", "1 taxi_light = on\n2 wait",
     "0 due light, 1.3 done light, 1.3 due idle, 1.3 found-set idle, 1.3 run-ended completed"},
    {"moved counts from when the step was due", R"toml(
[[step]]
id = "turn"
title = "Turn the tiller"
done = "moved(tiller, 20 deg)"
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
)toml",
     "tiller = 30 deg", "1 tiller = 40 deg\n2 tiller = 15 deg\n2.1 tiller = 5 deg\n3 wait",
     "0 due turn, 2.4 done turn, 2.4 due light"},
    {"moved, ahead of its turn, counts the movement itself", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "trim"
title = "Run the trim"
done = "moved(pitch_trim, 3 deg)"
)toml",
     "", "1 pitch_trim = 4 deg\n3 wait", "0 due light, 1.3 done trim"},
    {"within a group any order", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
group = "prepare"
done = "taxi_light"
[[step]]
id = "brake"
title = "Parking brake on"
group = "prepare"
done = "parking_brake"
[[step]]
id = "flap"
title = "Flap lever to 4"
done = "flap_lever == 4"
)toml",
     "", "1 parking_brake = on\n2 taxi_light = on\n3 flap_lever = 4\n9 wait",
     "0 due light, 0 due brake, 1.3 done brake, 2.3 done light, 2.3 due flap, 3.5 done flap, 3.5 run-ended completed"},
    {"after names what a step waits for", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "brake"
title = "Parking brake on"
after = []
done = "parking_brake"
[[step]]
id = "flap"
title = "Flap lever to 4"
after = ["light"]
done = "flap_lever == 4"
)toml",
     "", "1 taxi_light = on\n2 flap_lever = 4\n3 parking_brake = on\n9 wait",
     "0 due light, 0 due brake, 1.3 done light, 1.3 due flap, 2.5 done flap, 3.3 done brake, 3.3 run-ended completed"},
};

} // namespace

class TestSteps : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void cases_data();
    void cases();
};

void TestSteps::cases_data() {
    addRows(kCases);
}

void TestSteps::cases() {
    QFETCH(int, index);
    const Case& given = kCases[static_cast<std::size_t>(index)];
    QCOMPARE(eventsOf(given), QString(given.events));
}

QTEST_APPLESS_MAIN(TestSteps)
#include "test_steps.moc"
