#include "aircraft/practice.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <optional>
#include <string>
#include <utility>

#include "aircraft/model.h"
#include "base/names.h"

namespace flowhand {

namespace {

/// What a control of a well-known name does in the model; other controls do nothing there.
enum class Role : std::uint8_t {
    None,
    Thrust,
    Reverse,
    Power,
    Condition,
    Fuel,
    StartSwitch,
    FireHandle,
    Mixture,
    CarburettorHeat,
    Magnetos,
    FuelSelector,
    Battery,
    Autofeather,
    AltimeterSetting,
    AltimeterReference,
    Flap,
    Gear,
    Spoilers,
    ParkingBrake,
    BrakeLeft,
    BrakeRight,
    Pedals,
    Tiller,
    YokePitch,
    YokeBank,
    PitchTrim,
    Autobrake,
    TakeOffButton
};

constexpr std::pair<const char*, Role> kRoles[] = {
    {"flap_lever", Role::Flap},
    {"gear_lever", Role::Gear},
    {"spoiler_lever", Role::Spoilers},
    {"parking_brake", Role::ParkingBrake},
    {"toe_brake_left", Role::BrakeLeft},
    {"toe_brake_right", Role::BrakeRight},
    {"rudder_pedals", Role::Pedals},
    {"tiller", Role::Tiller},
    {"yoke_pitch", Role::YokePitch},
    {"yoke_roll", Role::YokeBank},
    {"pitch_trim", Role::PitchTrim},
    {"autobrake", Role::Autobrake},
    {"takeoff_button", Role::TakeOffButton},
    {"throttle", Role::Thrust},
    {"mixture", Role::Mixture},
    {"magnetos", Role::Magnetos},
    {"carburettor_heat", Role::CarburettorHeat},
    {"battery", Role::Battery},
    {"fuel_selector", Role::FuelSelector},
    {"autofeather", Role::Autofeather},
    {"altimeter_setting", Role::AltimeterSetting},
    {"altimeter", Role::AltimeterReference},
};

constexpr std::pair<const char*, Role> kEngineRoles[] = {
    {"thrust_lever_", Role::Thrust},   {"reverse_lever_", Role::Reverse},     {"power_lever_", Role::Power},
    {"fuel_lever_", Role::Fuel},       {"condition_lever_", Role::Condition}, {"start_switch_", Role::StartSwitch},
    {"fire_handle_", Role::FireHandle}};

struct Binding {
    Role role = Role::None;
    std::size_t engine = 0;
};

/// Share of its travel below which a mixture lever cuts the fuel off.
constexpr double kMixtureCut = 0.05;
constexpr double kStandardPressure = 101325.0; // Pa

double share(const Signal& signal, double number) {
    return number / std::max(std::fabs(signal.lowest), std::fabs(signal.highest));
}

/// The name of the position; empty of other signals and between two gates.
std::string positionOf(const Signal& signal, Value value) {
    const int at = signal.kind == SignalKind::Position ? value.position() : -1;
    return at >= 0 && at < static_cast<int>(signal.positions.size()) ? signal.positions[static_cast<std::size_t>(at)]
                                                                     : std::string();
}

/// A number of the aircraft file in SI, or nothing when it is not there.
std::optional<double> aircraftValue(const Aircraft& aircraft, const char* name) {
    const auto at = aircraft.values.find(name);
    if (at == aircraft.values.end() || at->second.isWord)
        return std::nullopt;
    return at->second.number * at->second.unit.factor;
}

} // namespace

struct PracticeAircraft::Model {
    const Aircraft& aircraft;
    PracticeFigures figures;
    GroundPlan plan;
    std::vector<Binding> bindings; ///< by SignalId of the controls
    CockpitState cockpit;
    std::optional<AircraftModel> physics;
    std::optional<MotionWriter> writer;
    Time next = kStep;
    StartPlace start; ///< where it was put last, and what has happened to it there
    std::vector<Failure> failures;
    const Route* route = nullptr;
    std::optional<double> mass; ///< kg, whatever the place

    explicit Model(const Aircraft& of) : aircraft(of) {}

    void bind();
    void set(SignalId id, Value value);
    void setEngine(const Binding& binding, const Signal& signal, Value value);
    void setSystem(Role role, const Signal& signal, Value value);
    void setPosition(Role role, const std::string& position, std::size_t index);
    [[nodiscard]] Status find(const std::string& name);
    void put();
    Status meet(const Surroundings& surroundings);
    [[nodiscard]] FlightValues flightValues() const;
};

void PracticeAircraft::Model::bind() {
    for (std::size_t engine = 0;; ++engine)
        if (!aircraft.signals.find("engine_power_" + std::to_string(engine + 1))) {
            cockpit.engines.resize(engine);
            break;
        }
    bindings.resize(aircraft.signals.size());
    const auto bindTo = [&](const std::string& name, Binding binding) {
        if (const std::optional<SignalId> id = aircraft.signals.find(name))
            bindings[indexOf(*id)] = binding;
    };
    for (const auto& [name, role] : kRoles)
        bindTo(name, {role, 0});
    for (std::size_t engine = 0; engine < cockpit.engines.size(); ++engine)
        for (const auto& [name, role] : kEngineRoles)
            bindTo(name + std::to_string(engine + 1), {role, engine});
    for (const Binding& binding : bindings)
        for (std::size_t engine = 0; engine < cockpit.engines.size(); ++engine)
            cockpit.engines[engine].hasStarter |=
                binding.role == Role::Magnetos || (binding.role == Role::StartSwitch && binding.engine == engine);
}

void PracticeAircraft::Model::setEngine(const Binding& binding, const Signal& signal, Value value) {
    if (binding.engine >= cockpit.engines.size())
        return;
    EngineControls& engine = cockpit.engines[binding.engine];
    const bool isOn = signal.kind == SignalKind::OnOff && value.isOn();
    const std::string position = positionOf(signal, value);
    switch (binding.role) {
    case Role::Fuel:
        engine.hasFuel = signal.kind == SignalKind::OnOff ? isOn : value.position() != 0;
        break;
    case Role::Condition:
        engine.hasFuel = position != "off";
        engine.isFeathered = position == "off" || position == "feather";
        engine.isSpeedLow = position == "low";
        break;
    case Role::StartSwitch:
        engine.isCranked = isOn || position == "start";
        break;
    case Role::FireHandle:
        engine.isFireHandlePulled = isOn;
        break;
    case Role::Power: // forward of flight idle its power, behind it the blades and the power in reverse
        engine.lever = 100.0 * std::max(0.0, value.number()) / signal.highest;
        engine.reverseLever = signal.lowest < 0.0 ? 100.0 * std::min(0.0, value.number()) / signal.lowest : 0.0;
        break;
    case Role::Thrust:
        engine.lever = share(signal, value.number()) * 100.0;
        break;
    default:
        engine.reverseLever =
            signal.kind == SignalKind::OnOff ? (isOn ? 100.0 : 0.0) : share(signal, value.number()) * 100.0;
    }
}

/// What is the same for all engines.
void PracticeAircraft::Model::setSystem(Role role, const Signal& signal, Value value) {
    const std::string position = positionOf(signal, value);
    switch (role) {
    case Role::Mixture:
        cockpit.mixture = share(signal, value.number());
        for (EngineControls& engine : cockpit.engines)
            engine.hasFuel = cockpit.mixture > kMixtureCut;
        break;
    case Role::CarburettorHeat:
        cockpit.hasCarburettorHeat = value.isOn();
        break;
    case Role::Magnetos:
        cockpit.magnetos = position == "off"                           ? Magnetos::Off
                           : position == "left" || position == "right" ? Magnetos::One
                                                                       : Magnetos::Both;
        for (EngineControls& engine : cockpit.engines)
            engine.isCranked = position == "start";
        break;
    case Role::FuelSelector:
        cockpit.isFuelSelected = position != "off";
        break;
    case Role::Battery:
        cockpit.hasBattery = value.isOn();
        break;
    case Role::AltimeterSetting:
        cockpit.altimeterSetting = value.number() * signal.unit.factor;
        break;
    case Role::AltimeterReference: // local is the field's setting, as the model has it
        cockpit.altimeterSetting = position == "standard" ? kStandardPressure : 0.0;
        break;
    default:
        cockpit.isAutofeatherArmed = position == "armed";
    }
}

void PracticeAircraft::Model::setPosition(Role role, const std::string& position, std::size_t index) {
    if (role == Role::Flap)
        for (const FlapFigures& flap : figures.air.flaps)
            if (flap.position == position)
                cockpit.flapAngle = flap.angle;
    if (role == Role::Gear)
        cockpit.isGearDown = position == "down";
    if (role == Role::Spoilers)
        cockpit.spoilers = position == "up"      ? SpoilerLever::Up
                           : position == "armed" ? SpoilerLever::Armed
                                                 : SpoilerLever::Down;
    if (role != Role::Autobrake)
        return;
    cockpit.autobrake = index;
    for (std::size_t i = 0; i < figures.autobrake.settings.size(); ++i)
        if (figures.autobrake.settings[i].position == position)
            cockpit.autobrake = i;
}

void PracticeAircraft::Model::set(SignalId id, Value value) {
    if (!value.isKnown() || indexOf(id) >= bindings.size())
        return;
    const Binding& binding = bindings[indexOf(id)];
    const Signal& signal = aircraft.signals[id];
    switch (binding.role) {
    case Role::None:
        return;
    case Role::Thrust:
    case Role::Reverse:
    case Role::Power:
    case Role::Condition:
    case Role::Fuel:
    case Role::StartSwitch:
    case Role::FireHandle:
        if (signal.kind != SignalKind::Position || value.position() >= 0)
            setEngine(binding, signal, value);
        return;
    case Role::Mixture:
    case Role::CarburettorHeat:
    case Role::Magnetos:
    case Role::FuelSelector:
    case Role::Battery:
    case Role::Autofeather:
    case Role::AltimeterSetting:
    case Role::AltimeterReference:
        if (signal.kind != SignalKind::Position || value.position() >= 0)
            setSystem(binding.role, signal, value);
        return;
    case Role::ParkingBrake:
        cockpit.isParked = value.isOn();
        return;
    case Role::TakeOffButton:
        cockpit.isTakeOffPressed = value.isOn();
        return;
    case Role::BrakeLeft:
        cockpit.brakeLeft = share(signal, value.number());
        return;
    case Role::BrakeRight:
        cockpit.brakeRight = share(signal, value.number());
        return;
    case Role::Pedals:
        cockpit.pedals = share(signal, value.number());
        return;
    case Role::Tiller:
        cockpit.tiller = value.number() * kRadiansPerDegree;
        return;
    case Role::YokePitch:
        cockpit.yokePitch = share(signal, value.number());
        return;
    case Role::YokeBank:
        cockpit.yokeBank = share(signal, value.number());
        return;
    case Role::PitchTrim:
        cockpit.pitchTrim = value.number();
        return;
    case Role::Flap:
    case Role::Gear:
    case Role::Spoilers:
    case Role::Autobrake:
        break;
    }
    // Between two gates a lever keeps the one it came from.
    const int position = value.position();
    if (position >= 0 && position < static_cast<int>(signal.positions.size()))
        setPosition(binding.role, signal.positions[static_cast<std::size_t>(position)],
                    static_cast<std::size_t>(position));
}

FlightValues PracticeAircraft::Model::flightValues() const {
    const auto word = [&](const char* name, const std::string& otherwise) {
        const auto at = aircraft.values.find(name);
        return at != aircraft.values.end() && at->second.isWord ? at->second.word : otherwise;
    };
    const std::vector<FlapFigures>& flaps = figures.air.flaps;
    return {word("planned_flap", flaps.front().position), word("landing_flap", flaps.back().position),
            aircraftValue(aircraft, "takeoff_thrust").value_or(0.0)};
}

Status PracticeAircraft::Model::meet(const Surroundings& surroundings) {
    if (surroundings.wind) {
        figures.weather.windFrom = surroundings.wind->from;
        figures.weather.windSpeed = surroundings.wind->speed;
    }
    if (surroundings.mass)
        if (Status checked = figures.mass.check(*surroundings.mass); !checked)
            return checked;
    return surroundings.surface.empty() ? Status() : figures.setSurface(surroundings.surface);
}

Status PracticeAircraft::Model::find(const std::string& name) {
    const StartPlace* found = figures.place(name);
    if (found == nullptr) {
        std::vector<std::string> names;
        for (const StartPlace& each : figures.places)
            names.push_back(each.name);
        return failure("unknown-place", "there is no place '" + name + "' to start from; there are " +
                                            joined(names, ", ") + nearestHint(name, names));
    }
    const Route* line = plan.route(found->route);
    if (line == nullptr || line->mark(found->mark) == nullptr)
        return failure("unknown-place", "the ground plan of '" + figures.ground + "' has no mark '" + found->mark +
                                            "' on a route '" + found->route + "', where place '" + name + "' is");
    start = *found;
    start.mass = mass.value_or(start.mass);
    failures.clear();
    route = line;
    for (const PlaceControl& control : start.controls)
        set(control.signal, control.value);
    return {};
}

void PracticeAircraft::Model::put() {
    const Route& line = *plan.route(start.route);
    physics.emplace(figures, plan, line, start, flightValues(), cockpit);
    for (const Failure& failure : failures)
        physics->fail(failure);
    if (route != &line)
        physics->follow(*route);
}

PracticeAircraft::PracticeAircraft(std::unique_ptr<Model> model) : m_model(std::move(model)) {}
PracticeAircraft::~PracticeAircraft() = default;
PracticeAircraft::PracticeAircraft(PracticeAircraft&&) noexcept = default;

Result<PracticeAircraft> PracticeAircraft::create(const Aircraft& aircraft, const std::string& place,
                                                  const Surroundings& surroundings) {
    Result<PracticeFigures> figures = loadPracticeOf(aircraft);
    if (!figures)
        return tl::unexpected(figures.error());
    const std::filesystem::path folder = std::filesystem::path(aircraft.file).parent_path();
    Result<GroundPlan> plan =
        loadGroundPlan((folder / ".." / figures->ground / "ground.toml").lexically_normal().string());
    if (!plan)
        return tl::unexpected(plan.error());
    auto model = std::make_unique<Model>(aircraft);
    model->figures = std::move(*figures);
    model->plan = std::move(*plan);
    model->bind();
    model->mass = surroundings.mass;
    if (Status status = model->find(place); !status)
        return tl::unexpected(status.error());
    if (Status status = model->meet(surroundings); !status)
        return tl::unexpected(status.error());
    model->put();
    model->writer.emplace(aircraft.signals, model->cockpit.engines.size());
    return PracticeAircraft(std::move(model));
}

void PracticeAircraft::begin(std::vector<Sample>& motion) {
    m_model->writer->write(m_model->physics->motion(), Time{}, motion);
}

void PracticeAircraft::take(const Sample& sample) {
    if (m_model->aircraft.isControl(sample.signal))
        m_model->set(sample.signal, sample.value);
}

Time PracticeAircraft::nextStep() const {
    return m_model->next;
}

void PracticeAircraft::step(std::vector<Sample>& motion) {
    m_model->physics->step(m_model->cockpit, seconds(kStep));
    if (m_model->next % kMotionPeriod == Duration::zero())
        m_model->writer->write(m_model->physics->motion(), m_model->next, motion);
    m_model->next += kStep;
}

void PracticeAircraft::fail(const Failure& failure) {
    m_model->failures.push_back(failure);
    m_model->physics->fail(failure);
}

GroundScene PracticeAircraft::scene() const {
    const PracticeFigures& figures = m_model->figures;
    return {m_model->plan,          figures.wheels.wheelbase, figures.wheels.track,
            figures.body.noseAhead, figures.body.tailBehind,  figures.air.span};
}

Result<GroundScene> PracticeAircraft::sceneOf(const Aircraft& aircraft) {
    const Result<PracticeFigures> figures = loadPracticeOf(aircraft);
    if (!figures)
        return tl::unexpected(figures.error());
    const Result<PracticeAircraft> practice = create(aircraft, figures->places.front().name);
    if (!practice)
        return tl::unexpected(practice.error());
    return practice->scene();
}

GroundPosition PracticeAircraft::position() const {
    const AircraftModel& physics = *m_model->physics;
    return {physics.mainWheels(), physics.heading(), physics.nosewheelAngle(), physics.route().name,
            physics.isOnGround()};
}

bool PracticeAircraft::hasRoute(const std::string& route) const {
    return m_model->plan.route(route) != nullptr;
}

void PracticeAircraft::follow(const std::string& route) {
    const Route* other = m_model->plan.route(route);
    if (other == nullptr)
        return;
    m_model->route = other;
    m_model->physics->follow(*other);
}

Status PracticeAircraft::put(const std::string& place) {
    return m_model->find(place);
}

void PracticeAircraft::settle(std::vector<Sample>& motion) {
    m_model->put();
    m_model->writer->write(m_model->physics->motion(), m_model->next - kStep, motion);
}

void PracticeAircraft::restart() {
    m_model->next = kStep;
    m_model->writer.emplace(m_model->aircraft.signals, m_model->cockpit.engines.size());
}

} // namespace flowhand
