#include "stubcockpit.h"

#include <QtGlobal>

#include "procedure/motion.h"

namespace flowhand::test {

namespace {

using namespace std::chrono_literals;

SignalId addSignal(Aircraft& aircraft, Signal signal) {
    const Result<SignalId> id = aircraft.signals.add(std::move(signal));
    return id ? *id : kNoSignal;
}

void addNumber(Aircraft& aircraft, const char* name, const char* label, const char* panel, ControlKind kind,
               const char* unit, double lowest, double highest, bool isContinuous) {
    Signal signal{name, label, SignalKind::Number, *findUnit(unit), lowest, highest, highest - lowest, {}};
    CockpitControl control;
    control.signal = addSignal(aircraft, std::move(signal));
    control.kind = kind;
    control.isContinuous = isContinuous;
    control.panelLabel = panel;
    aircraft.controls.push_back(control);
}

void addPlaces(Aircraft& aircraft, const char* name, const char* label, const char* panel, ControlKind kind,
               std::vector<std::string> positions) {
    Signal signal;
    signal.name = name;
    signal.label = label;
    signal.kind = positions.empty() ? SignalKind::OnOff : SignalKind::Position;
    signal.positions = std::move(positions);
    CockpitControl control;
    control.signal = addSignal(aircraft, std::move(signal));
    control.kind = kind;
    control.panelLabel = panel;
    aircraft.controls.push_back(control);
}

std::unique_ptr<Aircraft> stubAircraft() {
    auto aircraft = std::make_unique<Aircraft>();
    aircraft->folder = "stub";
    aircraft->title = "Twin jet";
    aircraft->seats = {"captain", "first_officer"};
    using enum ControlKind;
    addNumber(*aircraft, "thrust_lever_1", "Thrust lever 1", "THRUST 1", Lever, "%", 0, 100, true);
    addNumber(*aircraft, "thrust_lever_2", "Thrust lever 2", "THRUST 2", Lever, "%", 0, 100, true);
    addNumber(*aircraft, "reverse_lever_1", "Reverse lever 1", "REVERSE 1", Lever, "%", 0, 100, false);
    addNumber(*aircraft, "reverse_lever_2", "Reverse lever 2", "REVERSE 2", Lever, "%", 0, 100, false);
    addPlaces(*aircraft, "flap_lever", "Flap lever", "FLAP", GatedLever, {"up", "4", "12", "22", "34"});
    addPlaces(*aircraft, "gear_lever", "Gear lever", "GEAR", GatedLever, {"up", "down"});
    addPlaces(*aircraft, "spoiler_lever", "Spoiler lever", "SPOILER", GatedLever, {"down", "armed", "up"});
    addPlaces(*aircraft, "parking_brake", "Parking brake", "PARK BRAKE", Switch, {});
    addNumber(*aircraft, "toe_brake_left", "Left toe brake", "BRAKE LEFT", Pedal, "%", 0, 100, true);
    addNumber(*aircraft, "toe_brake_right", "Right toe brake", "BRAKE RIGHT", Pedal, "%", 0, 100, true);
    addNumber(*aircraft, "rudder_pedals", "Rudder pedals", "RUDDER", Pedal, "%", -100, 100, true);
    addNumber(*aircraft, "tiller", "Tiller", "TILLER", Wheel, "deg", -70, 70, true);
    addNumber(*aircraft, "yoke_pitch", "Yoke, pitch", "YOKE PITCH", Yoke, "%", -100, 100, true);
    addNumber(*aircraft, "yoke_roll", "Yoke, roll", "YOKE ROLL", Yoke, "%", -100, 100, true);
    addPlaces(*aircraft, "taxi_light", "Taxi light", "TAXI LIGHT", Switch, {});
    addPlaces(*aircraft, "landing_lights", "Landing lights", "LANDING LIGHTS", Switch, {});
    addPlaces(*aircraft, "autobrake", "Automatic brake", "AUTOBRAKE", Selector,
              {"off", "low", "medium", "high", "rejected"});
    addNumber(*aircraft, "pitch_trim", "Pitch trim", "PITCH TRIM", Wheel, "deg", -4, 12, false);
    addPlaces(*aircraft, "fuel_lever_1", "Fuel lever 1", "FUEL 1", GatedLever, {"off", "run"});
    addPlaces(*aircraft, "fuel_lever_2", "Fuel lever 2", "FUEL 2", GatedLever, {"off", "run"});
    addPlaces(*aircraft, "takeoff_button", "Take-off button", "TAKE-OFF", Button, {});
    addPlaces(*aircraft, "reply_button", "Reply button", "REPLY", Button, {});
    for (Signal& signal : motionSignals(2))
        addSignal(*aircraft, std::move(signal));
    return aircraft;
}

PlacedCondition condition(const Aircraft& aircraft, const char* text) {
    std::vector<ConditionProblem> problems;
    const std::optional<Condition> compiled = Condition::compile(text, aircraft.scope(), problems);
    if (!compiled)
        qFatal("'%s' is no condition", text);
    return {*compiled, {}};
}

Guard guard(const Aircraft& aircraft, const char* title, const char* never) {
    return {title, title, condition(aircraft, never), {}, {}, 1, false, {}};
}

Step step(const Aircraft& aircraft, const char* id, const char* title, const char* done, const char* why,
          int weight = 1) {
    Step made;
    made.id = id;
    made.title = title;
    made.seat = "captain";
    made.movedBy = "captain";
    made.within = 4s;
    made.late = 10s;
    made.weight = weight;
    made.why = why;
    made.done = condition(aircraft, done);
    for (SignalId signal : made.done->condition.signals())
        if (aircraft.isControl(signal))
            made.controls.push_back(signal);
    return made;
}

Flow stubFlow(const Aircraft& aircraft, const char* id, const char* title, const char* from, const char* to,
              const char* summary) {
    Flow flow;
    flow.id = id;
    flow.title = title;
    flow.phaseFrom = from;
    flow.phaseTo = to;
    flow.summary = summary;
    flow.target = 80;
    const auto add = [&](const char* stepId, const char* stepTitle, const char* done, const char* why, int weight = 1) {
        flow.steps.push_back(step(aircraft, stepId, stepTitle, done, why, weight));
    };
    add("light", "Taxi light on", "taxi_light", "Lit while the aircraft moves under its own power.");
    add("flap", "Flap lever to 12", "flap_lever == 12", "The planned gate, before the runway.", 3);
    add("thrust", "Thrust levers to take-off thrust", "thrust_lever_1 >= 88 % and thrust_lever_2 >= 88 %",
        "Both together, and before the speed call.", 3);
    add("reply", "Answer the speed call", "reply_button", "", 1);
    flow.steps.back().kind = StepKind::Reply;
    flow.steps.back().reply = "Checked";
    add("brake", "Automatic brake to medium", "autobrake == medium", "Set before the descent.");
    add("tiller", "Tiller back to its centre", "tiller > -5 deg and tiller < 5 deg", "Pedals steer from here on.", 2);
    add("rudder", "Rudder pedals full right", "rudder_pedals > 90 %", "Full travel, with the tiller held.");
    add("gear", "Gear lever up", "gear_lever == up", "On the order, once the climb is positive.", 2);
    flow.steps.back().movedBy = "first_officer";
    flow.steps.back().jumpPlace = "holding_point";
    flow.guards = {guard(aircraft, "Tiller deflected above 80 kt", "ground_speed > 80 kt"),
                   guard(aircraft, "Taxi speed in a turn above 10 kt", "ground_speed > 10 kt and turn_ahead")};
    return flow;
}

AircraftFolder folderOf(std::unique_ptr<Aircraft> aircraft) {
    AircraftFolder folder;
    folder.flows.push_back(stubFlow(*aircraft, "taxi_out", "Taxi out", "taxi_out", "line_up",
                                    "From the stand to the runway: brakes, steering, the flap, and a check of the "
                                    "controls on the way."));
    folder.flows.push_back(stubFlow(*aircraft, "take_off", "Take-off to flap retraction", "take_off", "climb",
                                    "Thrust in two stages, the speed call, rotation, gear and flap in their speeds."));
    folder.flows.push_back(stubFlow(*aircraft, "landing", "Landing roll to taxi in", "landing", "taxi_in",
                                    "Spoilers and reversers on the ground, stowed in time, and clear of the runway."));
    folder.aircraft = std::move(aircraft);
    return folder;
}

} // namespace

AircraftFolder stubFolder() {
    return folderOf(stubAircraft());
}

AircraftFolder withScenarios(AircraftFolder folder) {
    for (const char* title : {"Engine failure before V1", "The runway changes while taxiing"}) {
        Scenario scenario;
        scenario.id = title;
        scenario.title = title;
        scenario.summary = "Out to the runway and into the air, with something on the way.";
        scenario.startPlace = "line_up";
        scenario.surroundings.surface = "standing_water";
        scenario.surroundings.wind = Wind{120.0, 4.2};
        scenario.events.push_back({"engine_2_fails",
                                   "Engine 2 fails, before V1",
                                   condition(*folder.aircraft, "airspeed > 95 kt"),
                                   1.0,
                                   {},
                                   {},
                                   {},
                                   {},
                                   {}});
        for (const Flow& flow : folder.flows)
            scenario.flows.push_back(flow.id);
        folder.scenarios.push_back(std::move(scenario));
    }
    return folder;
}

AircraftFolder stubFolderWithLongNames() {
    AircraftFolder folder = stubFolder();
    folder.aircraft->title = "An aircraft with quite a long and unwieldy name";
    for (Flow& flow : folder.flows) {
        flow.title += " with everything that belongs to it on an unusually long day";
        for (int copy = 0; copy < 2; ++copy)
            flow.summary += " " + flow.summary;
        for (Step& one : flow.steps) {
            one.title += " and leave it there until the ground crew has answered twice";
            one.why += " A longer explanation, as an author may write it who wants to be understood by everybody.";
        }
        for (Guard& guard : flow.guards)
            guard.title += ", counted from the place where the nosewheel leaves the line";
    }
    return folder;
}

PracticeFigures stubPractice() {
    PracticeFigures figures;
    figures.surface = "dry";
    figures.mass.mass = 62'000.0;
    figures.weather.windFrom = 60.0;
    figures.weather.windSpeed = 4.0;
    for (const char* name :
         {"stand", "holding_point", "line_up", "v1", "thousand_feet", "final", "fifty_feet", "rollout"}) {
        StartPlace place;
        place.name = name;
        figures.places.push_back(place);
    }
    return figures;
}

GroundScene stubGround() {
    const auto line = [](const std::vector<PlanPoint>& points) {
        const std::vector<double> radii(points.size() - 2, 30.0);
        Result<GuideLine> built = GuideLine::build(points, radii);
        if (!built)
            qFatal("%s", describe(built.error()).c_str());
        return std::move(*built);
    };
    GroundScene scene;
    scene.plan.runway = {"09/27", {0, 0}, {2000, 0}, 45, 75};
    scene.plan.routes.push_back(
        {"out", line({{300, 250}, {300, 120}, {100, 120}, {100, 0}, {900, 0}}), {{"holding_point", 355.0, true}}});
    scene.plan.routes.push_back({"in", line({{900, 0}, {360, 0}, {360, 250}}), {}});
    scene.wheelbase = 15.0;
    scene.track = 7.0;
    scene.noseAhead = 20.0;
    scene.tailBehind = 20.0;
    scene.wingspan = 34.0;
    return scene;
}

GroundPosition stubPosition() {
    return {{272.0, 122.5}, 4.62, 0.3, "out", true};
}

std::vector<Value> stubValues(const Aircraft& aircraft, double speed) {
    std::vector<Value> values(aircraft.signals.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
        const Signal& signal = aircraft.signals.all()[i];
        values[i] = signal.kind == SignalKind::Number     ? Value::number(0)
                    : signal.kind == SignalKind::Position ? Value::position(0)
                                                          : Value::onOff(false);
    }
    setValue(values, aircraft, "ground_speed", Value::number(speed));
    setValue(values, aircraft, "airspeed", Value::number(speed));
    setValue(values, aircraft, "engine_power_1", Value::number(21.4));
    setValue(values, aircraft, "engine_power_2", Value::number(21.2));
    setValue(values, aircraft, "on_ground", Value::onOff(true));
    setValue(values, aircraft, "centreline_offset", Value::number(-1.4));
    return values;
}

void setValue(std::vector<Value>& values, const Aircraft& aircraft, const char* signal, Value value) {
    if (const std::optional<SignalId> id = aircraft.signals.find(signal))
        values[indexOf(*id)] = value;
}

} // namespace flowhand::test
