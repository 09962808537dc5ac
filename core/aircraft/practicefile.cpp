#include "aircraft/practicefile.h"

#include <algorithm>
#include <filesystem>
#include <optional>

#include "aircraft/quantity.h"
#include "base/names.h"
#include "base/tomlfile.h"

namespace flowhand {

namespace {

class PracticeReader {
public:
    PracticeReader(const TomlFile& file, const Aircraft& aircraft, PracticeFigures& figures, Problems& problems)
        : m_file(file), m_aircraft(aircraft), m_figures(figures), m_problems(problems),
          m_root(file, file.root(), "the practice file", problems) {}

    void read() {
        if (m_root.integer("format") != 1)
            m_problems.error("bad-format", "write format = 1, the format this program reads", m_root.placeOf("format"));
        m_figures.ground = m_root.requiredText("ground");
        section("mass", [&](QuantityReader& q, TomlReader&) {
            readMass(q);
        });
        section("performance", [&](QuantityReader& q, TomlReader& reader) {
            readPerformance(q, reader);
        });
        section("body", [&](QuantityReader& q, TomlReader&) {
            readBody(q);
        });
        section("engine", [&](QuantityReader& q, TomlReader& reader) {
            readEngine(q, reader);
        });
        readPropeller();
        section("air", [&](QuantityReader& q, TomlReader& reader) {
            readAir(q, reader);
        });
        section("wheels", [&](QuantityReader& q, TomlReader&) {
            readWheels(q);
        });
        section("steering", [&](QuantityReader& q, TomlReader&) {
            readSteering(q);
        });
        readSurface();
        optionalSection("autobrake", [&](QuantityReader& q, TomlReader& reader) {
            readAutobrake(q, reader);
        });
        optionalSection("trim", [&](QuantityReader& q, TomlReader&) {
            readTrim(q);
        });
        section("assist", [&](QuantityReader& q, TomlReader&) {
            readAssist(q);
        });
        section("weather", [&](QuantityReader& q, TomlReader&) {
            readWeather(q);
        });
        for (const TomlNode* table : m_root.tables("place"))
            readPlace(*table);
        if (m_figures.places.empty())
            m_problems.error("missing-key", "add at least one [[place]] to start from", m_root.placeOf("place"));
        m_root.finish();
    }

private:
    template <class Read>
    void section(const char* name, Read read) {
        const TomlNode* table = m_root.table(name);
        if (table == nullptr) {
            m_problems.error("missing-key", "the practice file needs a table [" + std::string(name) + "]",
                             m_root.placeOf(name));
            return;
        }
        readSection(name, *table, read);
    }

    template <class Read>
    void optionalSection(const char* name, Read read) {
        if (const TomlNode* table = m_root.table(name))
            readSection(name, *table, read);
    }

    template <class Read>
    void readSection(const char* name, const TomlNode& table, Read read) {
        TomlReader reader(m_file, table, "[" + std::string(name) + "]", m_problems);
        QuantityReader quantities(reader);
        read(quantities, reader);
        reader.finish();
    }

    void readMass(QuantityReader& q) {
        MassFigures& mass = m_figures.mass;
        mass.empty = q.si("empty", "kg");
        mass.emptyArm = q.si("empty_arm", "m");
        const double payload = q.si("payload", "kg");
        mass.payloadArm = q.si("payload_arm", "m");
        mass.fuel = q.si("fuel", "kg");
        mass.fuelMost = q.si("fuel_most", "kg");
        mass.fuelArm = q.si("fuel_arm", "m");
        mass.least = q.si("least", "kg");
        mass.most = q.si("most", "kg");
        mass.forwardLimit = q.si("forward_limit", "m");
        mass.aftLimit = q.si("aft_limit", "m");
        mass.flowIdle = q.bare("fuel_flow_idle");
        mass.flowFull = q.bare("fuel_flow_full");
        mass.mass = mass.empty + payload + mass.fuel;
        mass.centreOfGravity = mass.centre({mass.fuel, payload});
        m_figures.wheels.centreOfGravity = mass.centreOfGravity;
        if (const Status checked = mass.check(mass.mass); !checked)
            m_problems.error(checked.error().code, checked.error().message, m_root.placeOf("mass"));
    }

    void readPerformance(QuantityReader& q, TomlReader& reader) {
        PerformanceFigures& performance = m_figures.performance;
        const std::string method = reader.requiredText("method");
        if (!method.empty() && method != "balanced" && method != "simple")
            m_problems.error("bad-value",
                             "'method' is \"balanced\" (V1 where stopping and going on take as much runway) "
                             "or \"simple\" (V1 = VR)",
                             reader.placeOf("method"));
        performance.method = method == "balanced" ? SpeedMethod::Balanced : SpeedMethod::Simple;
        performance.rotate = q.bare("rotate");
        performance.safety = q.bare("safety");
        performance.reference = q.bare("reference");
        performance.windShare = q.siOr("wind_share", "%", 0.0) / 100.0;
        performance.leastAddition = q.siOr("least_addition", "kt", 0.0);
        performance.mostAddition = q.siOr("most_addition", "kt", performance.leastAddition);
        if (performance.mostAddition < performance.leastAddition)
            m_problems.error("bad-value", "'most_addition' must not be less than 'least_addition'",
                             reader.placeOf("most_addition"));
    }

    void readBody(QuantityReader& q) {
        BodyFigures& body = m_figures.body;
        body.noseAhead = q.si("nose_ahead", "m");
        body.tailBehind = q.si("tail_behind", "m");
        body.engineArm = q.siOr("engine_arm", "m", 0.0);
        body.raisedNose = q.si("raised_nose", "deg");
        body.elevatorFrom = q.si("elevator_from", "kt");
    }

    void readEngine(QuantityReader& q, TomlReader& reader) {
        EngineFigures& engine = m_figures.engine;
        engine.kind = readKind(reader);
        if (engine.hasPropeller())
            engine.ratedPower = q.si("rated_power", "kW");
        else
            engine.ratedThrust = q.si("rated_thrust", "N");
        engine.machLapse = q.bareOr("mach_lapse", 0.0);
        engine.densityPower = q.bareOr("density_power", 0.0);
        engine.idlePower = q.si("idle_power", "%");
        engine.spoolStart = q.bare("spool_start");
        engine.spoolGain = q.bareOr("spool_gain", 0.0);
        engine.spoolDown = q.bare("spool_down");
        engine.spoolNear = q.bare("spool_near");
        engine.startRate = q.bare("start_rate");
        engine.crankPower = q.siOr("crank_power", "%", 0.0);
        engine.leverIdle = q.si("lever_idle", "%");
        PistonFigures& piston = m_figures.piston;
        piston.richLoss = q.bareOr("rich_loss", 0.0);
        piston.leanLoss = q.bareOr("lean_loss", 0.0);
        piston.heatLoss = q.siOr("carburettor_heat_loss", "%", 0.0) / 100.0;
        piston.magnetoLoss = q.siOr("magneto_loss", "%", 0.0) / 100.0;
        engine.hasReverser = reader.node("reverser_transit") != nullptr;
        if (!engine.hasReverser)
            return;
        engine.reverseRaised = q.si("reverse_raised", "%");
        engine.reverseIdle = q.si("reverse_idle", "%");
        engine.reversePower = q.si("reverse_power", "%");
        engine.reverseShare = q.si("reverse_share", "%") / 100.0;
        engine.reverserTransit = q.si("reverser_transit", "s");
        if (engine.reverseIdle <= engine.reverseRaised || engine.reverseIdle >= 100.0)
            m_problems.error("bad-value", "'reverse_idle' must lie between 'reverse_raised' and 100 %",
                             reader.placeOf("reverse_idle"));
    }

    EngineKind readKind(TomlReader& reader) {
        static constexpr std::pair<const char*, EngineKind> kKinds[] = {
            {"jet", EngineKind::Jet}, {"turboprop", EngineKind::Turboprop}, {"piston", EngineKind::Piston}};
        const std::string name = reader.requiredText("kind");
        std::vector<std::string> known;
        for (const auto& [kindName, kind] : kKinds) {
            if (name == kindName)
                return kind;
            known.emplace_back(kindName);
        }
        if (!name.empty())
            m_problems.error("unknown-kind",
                             "there is no kind of engine '" + name + "'; the kinds are " + joined(known, ", ") +
                                 nearestHint(name, known),
                             reader.placeOf("kind"));
        return EngineKind::Jet;
    }

    void readPropeller() {
        if (!m_figures.engine.hasPropeller())
            return;
        section("propeller", [&](QuantityReader& q, TomlReader&) {
            PropellerFigures& propeller = m_figures.engine.propeller;
            propeller.diameter = q.si("diameter", "m");
            propeller.efficiency = q.si("efficiency", "%") / 100.0;
            propeller.standingShare = q.si("standing_share", "%") / 100.0;
            propeller.fullFrom = q.si("full_from", "kt");
            propeller.windmillDrag = q.bareOr("windmill_drag", 0.0);
            propeller.featherTime = q.siOr("feather_time", "s", 0.0);
            propeller.ratedSpeed = q.bare("rated_speed");
            propeller.lowSpeed = q.siOr("low_speed", "%", 100.0) / 100.0;
            propeller.lowPower = q.siOr("low_power", "%", 100.0);
            propeller.autofeatherLever = q.siOr("autofeather_lever", "%", 100.0);
            propeller.autofeatherPower = q.siOr("autofeather_power", "%", 0.0);
        });
    }

    void readAir(QuantityReader& q, TomlReader& reader) {
        AerodynamicFigures& air = m_figures.air;
        air.wingArea = q.bare("wing_area");
        air.span = q.si("span", "m");
        air.wingHeight = q.si("wing_height", "m");
        air.liftSlope = q.bare("lift_slope");
        air.drag = q.bare("drag");
        air.inducedDrag = q.bare("induced_drag");
        air.gearDrag = q.bareOr("gear_drag", 0.0);
        air.spoilerDrag = q.bareOr("spoiler_drag", 0.0);
        air.spoilerLiftLoss = q.siOr("spoiler_lift_loss", "%", 0.0) / 100.0;
        air.slipRoll = q.bare("slip_roll");
        air.slipForce = q.bare("slip_force");
        air.flapRate = q.si("flap_rate", "deg/s") / kRadiansPerDegree;
        air.isFlapElectric = reader.boolean("flap_electric").value_or(false);
        if (m_aircraft.signals.find("gear_lever"))
            air.gearTransit = q.si("gear_transit", "s");
        if (m_aircraft.signals.find("spoiler_lever"))
            air.spoilerTransit = q.si("spoiler_transit", "s");
        for (const TomlNode* table : reader.tables("flap"))
            readFlap(*table);
        checkFlaps(reader.placeOf("flap"));
    }

    void readFlap(const TomlNode& table) {
        TomlReader reader(m_file, table, "[[air.flap]]", m_problems);
        QuantityReader q(reader);
        FlapFigures flap;
        flap.position = reader.requiredText("position");
        flap.angle = q.siOr("angle", "deg", 0.0) / kRadiansPerDegree;
        flap.lift = q.bareOr("lift", 0.0);
        flap.drag = q.bareOr("drag", 0.0);
        flap.liftMost = q.bare("lift_most");
        reader.finish();
        m_figures.air.flaps.push_back(std::move(flap));
    }

    void checkFlaps(const SourcePlace& place) {
        std::vector<FlapFigures>& flaps = m_figures.air.flaps;
        const auto isNotRising = [](const FlapFigures& a, const FlapFigures& b) {
            return a.angle >= b.angle;
        };
        if (flaps.empty() || std::adjacent_find(flaps.begin(), flaps.end(), isNotRising) != flaps.end())
            m_problems.error("bad-value", "[[air.flap]] must be there, with angles that rise from one to the next",
                             place);
        if (const std::optional<SignalId> lever = m_aircraft.signals.find("flap_lever"))
            for (const std::string& position : m_aircraft.signals[*lever].positions)
                if (std::none_of(flaps.begin(), flaps.end(), [&](const FlapFigures& flap) {
                        return flap.position == position;
                    }))
                    m_problems.error("missing-key", "position '" + position + "' of flap_lever has no [[air.flap]]",
                                     place);
    }

    void readWheels(QuantityReader& q) {
        GroundFigures& wheels = m_figures.wheels;
        wheels.wheelbase = q.si("wheelbase", "m");
        wheels.track = q.si("track", "m");
        wheels.yawInertia = q.bare("yaw_inertia");
        wheels.antiSkid = q.si("anti_skid", "%") / 100.0;
        wheels.antiSkidWet = q.si("anti_skid_wet", "%") / 100.0;
        wheels.tyrePressure = q.si("tyre_pressure", "hPa");
        wheels.brakeForce = q.si("brake_force", "N");
        wheels.brakeLag = q.si("brake_lag", "s");
        wheels.parkingBrake = q.si("parking_brake", "%") / 100.0;
        wheels.corneringForce = q.bare("cornering_force");
    }

    void readSteering(QuantityReader& q) {
        GroundFigures& wheels = m_figures.wheels;
        wheels.steeringLimit = q.si("limit", "deg");
        wheels.steeringRate = q.si("rate", "deg/s");
        if (m_aircraft.signals.find("tiller")) {
            wheels.tillerSlow = q.si("tiller_full_below", "kt");
            wheels.tillerFast = q.si("tiller_least_above", "kt");
            wheels.tillerLeast = q.si("tiller_least", "%") / 100.0;
        }
        wheels.pedalAngle = q.si("pedal_angle", "deg");
        wheels.pedalSlow = q.si("pedal_full_below", "kt");
        wheels.pedalFast = q.si("pedal_least_above", "kt");
        wheels.pedalLeast = q.si("pedal_least", "%") / 100.0;
        wheels.rudderMoment = q.bare("rudder_moment");
        wheels.finMoment = q.bare("fin_moment");
    }

    void readSurface() {
        const std::string wanted = m_root.requiredText("surface");
        for (const TomlNode* table : m_root.tables("surfaces")) {
            TomlReader reader(m_file, *table, "[[surfaces]]", m_problems);
            QuantityReader q(reader);
            SurfaceFigures surface{reader.requiredText("name"), q.bare("friction"), q.bare("rolling"),
                                   q.bare("breakaway")};
            surface.braked = q.bareOr("braked", 0.0);
            surface.braking = surface.braked > 0.0                               ? Braking::Whole
                              : reader.boolean("standing_water").value_or(false) ? Braking::Water
                              : reader.boolean("wet").value_or(false)            ? Braking::Wet
                                                                                 : Braking::Share;
            m_figures.surfaces.push_back(std::move(surface));
            reader.finish();
        }
        if (const Status set = m_figures.setSurface(wanted); !set)
            m_problems.error(set.error().code, set.error().message, m_root.placeOf("surface"));
    }

    void readAutobrake(QuantityReader& q, TomlReader& reader) {
        AutobrakeCommon& autobrake = m_figures.autobrake;
        autobrake.takeOffFrom = q.si("take_off_from", "kt");
        autobrake.pedalOff = q.si("pedal_off", "%") / 100.0;
        for (const TomlNode* table : reader.tables("setting")) {
            TomlReader setting(m_file, *table, "[[autobrake.setting]]", m_problems);
            QuantityReader quantities(setting);
            autobrake.settings.push_back({setting.requiredText("position"),
                                          quantities.siOr("deceleration", "m/s2", 0.0),
                                          setting.boolean("for_take_off").value_or(false)});
            setting.finish();
        }
    }

    void readTrim(QuantityReader& q) {
        m_figures.trim.takeOff = q.siOr("take_off", "deg", 0.0) / kRadiansPerDegree;
        m_figures.trim.bySpeed = q.bareOr("by_speed", 0.0) / kMetresPerSecondPerKnot;
        m_figures.trim.perDegree = q.si("per_degree", "%") / 100.0;
    }

    void readAssist(QuantityReader& q) {
        AssistFigures& assist = m_figures.assist;
        assist.rotateRate = q.si("rotate_rate", "deg/s");
        assist.rotatePitch = q.si("rotate_pitch", "deg");
        assist.rotateGrace = q.si("rotate_grace", "kt");
        assist.pitchMost = q.si("pitch_most", "deg");
        assist.pitchRate = q.si("pitch_rate", "deg/s");
        assist.climbMargin = q.si("climb_margin", "kt");
        assist.accelerateHeight = q.si("accelerate_height", "ft");
        assist.accelerateGradient = q.si("accelerate_gradient", "%") / 100.0;
        assist.accelerateTo = q.si("accelerate_to", "kt");
        assist.turnHeight = q.si("turn_height", "ft");
        assist.turnBy = q.siOr("turn_by", "deg", 0.0);
        assist.levelHeight = q.si("level_height", "ft");
        assist.glidePath = q.si("glide_path", "deg");
        assist.aimDistance = q.si("aim_distance", "m");
        assist.flareHeight = q.si("flare_height", "ft");
        assist.flareTime = q.si("flare_time", "s");
        assist.touchdownSink = q.si("touchdown_sink", "ft/min");
        assist.lowerRate = q.si("lower_rate", "deg/s");
        assist.bankMost = q.si("bank_most", "deg");
        assist.bankRate = q.si("bank_rate", "deg/s");
        assist.yokePitchRate = q.si("yoke_pitch_rate", "deg/s");
        assist.yokeBankRate = q.si("yoke_bank_rate", "deg/s");
        assist.yokeNeutral = q.si("yoke_neutral", "%") / 100.0;
        assist.yokeHold = q.si("yoke_hold", "s");
        assist.rollLineAngle = q.si("roll_line_angle", "deg");
        assist.handsOffTiller = q.si("hands_off_tiller", "deg");
        assist.handsOffPedals = q.si("hands_off_pedals", "%") / 100.0;
        assist.goAroundPower = q.si("go_around_power", "%");
    }

    void readWeather(QuantityReader& q) {
        Weather& weather = m_figures.weather;
        weather.windFrom = q.siOr("wind_from", "deg", 0.0) / kRadiansPerDegree;
        weather.windSpeed = q.siOr("wind_speed", "kt", 0.0);
        weather.setting = q.si("altimeter_setting", "hPa");
        weather.warmer = q.siOr("warmer", "K", 0.0);
    }

    void readPlace(const TomlNode& table) {
        TomlReader reader(m_file, table, "[[place]]", m_problems);
        QuantityReader q(reader);
        StartPlace place;
        place.name = reader.requiredText("name");
        place.route = reader.requiredText("route");
        place.mark = reader.requiredText("mark");
        place.beyond = q.siOr("beyond", "m", 0.0);
        place.height = q.siOr("height", "ft", 0.0);
        place.calibrated = q.siOr("airspeed", "kt", 0.0);
        place.sink = q.siOr("sink", "ft/min", 0.0);
        place.mass = q.siOr("mass", "kg", 0.0);
        place.isTakeOffRoll = reader.boolean("take_off_roll").value_or(false);
        if (place.mass > 0.0)
            if (const Status checked = m_figures.mass.check(place.mass); !checked)
                m_problems.error(checked.error().code, "place '" + place.name + "': " + checked.error().message,
                                 reader.placeOf("mass"));
        if (const TomlNode* controls = reader.table("controls"))
            for (const auto& [name, node] : controls->members)
                readPlaceControl(name, node, place);
        reader.finish();
        m_figures.places.push_back(std::move(place));
    }

    void readPlaceControl(const std::string& name, const TomlNode& node, StartPlace& place) {
        const std::optional<SignalId> id = m_aircraft.signals.find(name);
        if (!id || !m_aircraft.isControl(*id)) {
            m_problems.error("unknown-control", "the aircraft has no control '" + name + "'", node.place);
            return;
        }
        const Result<Value> value = parseValue(m_aircraft.signals[*id], node.text);
        if (value)
            place.controls.push_back({*id, *value});
        else
            m_problems.error(value.error().code, value.error().message, node.place);
    }

    const TomlFile& m_file;
    const Aircraft& m_aircraft;
    PracticeFigures& m_figures;
    Problems& m_problems;
    TomlReader m_root;
};

} // namespace

const StartPlace* PracticeFigures::place(const std::string& name) const {
    for (const StartPlace& each : places)
        if (each.name == name)
            return &each;
    return nullptr;
}

Status PracticeFigures::setSurface(const std::string& name) {
    std::vector<std::string> known;
    for (const SurfaceFigures& each : surfaces) {
        known.push_back(each.name);
        if (each.name != name)
            continue;
        wheels.friction = each.friction;
        wheels.rolling = each.rolling;
        wheels.breakaway = each.breakaway;
        wheels.braking = each.braking;
        wheels.braked = each.braked;
        surface = name;
        return {};
    }
    return failure("unknown-surface",
                   "there is no surface '" + name + "'; there are " + joined(known, ", ") + nearestHint(name, known));
}

Result<PracticeFigures> loadPractice(const std::string& file, const Aircraft& aircraft) {
    const Result<TomlFile> toml = TomlFile::load(file);
    if (!toml)
        return tl::unexpected(toml.error());
    Problems problems;
    PracticeFigures figures;
    while (aircraft.signals.find("engine_power_" + std::to_string(figures.engines + 1)))
        ++figures.engines;
    PracticeReader(*toml, aircraft, figures, problems).read();
    if (problems.hasErrors())
        return tl::unexpected(problems.firstError());
    return figures;
}

Result<PracticeFigures> loadPracticeOf(const Aircraft& aircraft) {
    const std::filesystem::path file = std::filesystem::path(aircraft.file).parent_path() / "practice.toml";
    return loadPractice(file.lexically_normal().string(), aircraft);
}

} // namespace flowhand
