#include "procedure/aircraftfile.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <system_error>
#include <utility>

#include "base/names.h"
#include "procedure/fileformat.h"
#include "procedure/floworder.h"
#include "procedure/motion.h"
#include "procedure/panelareas.h"

namespace flowhand {

namespace {

constexpr std::size_t kMostControls = 1000;
constexpr std::int64_t kMostEngines = 8;

struct KindName {
    std::string_view name;
    ControlKind kind;
    SignalKind signal;
};

constexpr std::array<KindName, 8> kKinds{{{"lever", ControlKind::Lever, SignalKind::Number},
                                          {"gated lever", ControlKind::GatedLever, SignalKind::Position},
                                          {"switch", ControlKind::Switch, SignalKind::OnOff},
                                          {"selector", ControlKind::Selector, SignalKind::Position},
                                          {"button", ControlKind::Button, SignalKind::OnOff},
                                          {"wheel", ControlKind::Wheel, SignalKind::Number},
                                          {"pedal", ControlKind::Pedal, SignalKind::Number},
                                          {"yoke", ControlKind::Yoke, SignalKind::Number}}};

/// Words of the condition language; a control or position of that name could not be written in a condition.
bool isReserved(std::string_view name) {
    static constexpr std::array<std::string_view, 18> kWords = {
        "true", "false", "and",  "or",    "not",      "once", "historically", "since",   "rise",
        "fall", "abs",   "held", "moved", "sequence", "min",  "max",          "between", "aircraft"};
    return std::find(kWords.begin(), kWords.end(), name) != kWords.end();
}

class AircraftReader {
public:
    AircraftReader(Aircraft& aircraft, Problems& problems)
        : m_aircraft(aircraft), m_problems(problems),
          m_reader(aircraft.toml, aircraft.toml.root(), "the aircraft file", problems) {}

    void read() {
        readFormat(m_reader);
        m_aircraft.title = m_reader.requiredText("title");
        readSeats();
        for (const TomlNode* table : m_reader.tables("control"))
            readControl(*table);
        if (m_aircraft.controls.empty() && !m_problems.hasErrors())
            m_problems.error("missing-key", "the aircraft has no controls; add at least one [[control]]",
                             m_reader.placeOf("control"));
        readMotion();
        if (const TomlNode* values = m_reader.table("values"))
            for (const auto& [name, node] : values->members)
                readValue(name, node);
        (void)readPanelAreas(m_reader, m_aircraft.controls, m_problems);
        (void)m_reader.texts(kFlowOrderKey);
        m_reader.finish();
    }

private:
    void readSeats() {
        m_aircraft.seats = m_reader.texts("seats");
        const SourcePlace place = m_reader.placeOf("seats");
        if (m_aircraft.seats.empty() && m_reader.node("seats") == nullptr)
            m_problems.error("missing-key", "the aircraft file needs 'seats', as in seats = [\"pilot\"]", place);
        for (const std::string& seat : m_aircraft.seats)
            checkName("seat", seat, place);
    }

    void checkName(const char* what, const std::string& name, const SourcePlace& place) {
        if (!isPlainName(name))
            m_problems.error("bad-name",
                             std::string(what) + " '" + name +
                                 "' must be named with lower case letters, digits and '_', a letter first",
                             place);
        else if (isReserved(name))
            m_problems.error("bad-name",
                             std::string(what) + " '" + name + "' has the name of a word of the condition language",
                             place);
    }

    void readMotion() {
        const std::optional<std::int64_t> engines = m_reader.integer("engines");
        if (!engines && m_reader.node("engines") == nullptr)
            m_problems.error("missing-key", "the aircraft file needs 'engines', the number of its engines",
                             m_reader.placeOf("engines"));
        if (engines && (*engines < 0 || *engines > kMostEngines)) {
            m_problems.error("bad-value",
                             "'engines' is " + std::to_string(*engines) + "; it must lie between 0 and " +
                                 std::to_string(kMostEngines),
                             m_reader.placeOf("engines"));
            return;
        }
        const bool hasPropellers = m_reader.boolean("propellers").value_or(false);
        for (Signal& signal : motionSignals(static_cast<int>(engines.value_or(0)), hasPropellers))
            if (Result<SignalId> id = m_aircraft.signals.add(std::move(signal)); !id)
                m_problems.error(id.error().code, id.error().message + "; a control cannot have a motion signal's name",
                                 m_reader.placeOf("control"));
    }

    void readControl(const TomlNode& table) {
        const TomlNode* nameNode = table.find("name");
        const std::string shown = nameNode != nullptr ? " '" + nameNode->text + "'" : "";
        TomlReader reader(m_aircraft.toml, table, "control" + shown, m_problems);
        Signal signal;
        CockpitControl control;
        signal.name = reader.requiredText("name");
        signal.label = reader.requiredText("label");
        control.panelLabel = reader.text("panel").value_or(signal.label);
        control.area = reader.requiredText("area");
        control.isContinuous = reader.boolean("continuous").value_or(false);
        if (nameNode != nullptr)
            checkName("control", signal.name, nameNode->place);
        readControlSeats(reader, control);
        const KindName* kind = readKind(reader);
        if (kind != nullptr) {
            control.kind = kind->kind;
            signal.kind = kind->signal;
            if (kind->signal == SignalKind::Number)
                readNumber(reader, signal);
            if (kind->signal == SignalKind::Position)
                readPositions(reader, signal);
            reader.finish();
        }
        if (m_aircraft.controls.size() == kMostControls) {
            m_problems.error("too-many", "an aircraft can have at most 1000 controls", table.place);
            return;
        }
        add(std::move(signal), std::move(control), table.place);
    }

    void add(Signal signal, CockpitControl control, const SourcePlace& place) {
        if (signal.name.empty() || m_aircraft.controls.size() > kMostControls)
            return;
        Result<SignalId> id = m_aircraft.signals.add(std::move(signal));
        if (!id) {
            m_problems.error(id.error().code, id.error().message, place);
            return;
        }
        control.signal = *id;
        m_aircraft.controls.push_back(std::move(control));
    }

    void readControlSeats(TomlReader& reader, CockpitControl& control) {
        control.seats = reader.texts("seats");
        for (const std::string& seat : control.seats)
            if (std::find(m_aircraft.seats.begin(), m_aircraft.seats.end(), seat) == m_aircraft.seats.end())
                m_problems.error("unknown-seat",
                                 "the aircraft has no seat '" + seat + "'; it has " + joined(m_aircraft.seats, ", "),
                                 reader.placeOf("seats"));
    }

    const KindName* readKind(TomlReader& reader) {
        const std::string name = reader.requiredText("kind");
        std::vector<std::string> known;
        for (const KindName& kind : kKinds) {
            if (kind.name == name)
                return &kind;
            known.emplace_back(kind.name);
        }
        if (!name.empty())
            m_problems.error("unknown-kind",
                             "there is no kind of control '" + name + "'; the kinds are " + joined(known, ", ") +
                                 nearestHint(name, known),
                             reader.placeOf("kind"));
        return nullptr;
    }

    void readNumber(TomlReader& reader, Signal& signal) {
        const std::string symbol = reader.requiredText("unit");
        const std::optional<Unit> unit = findUnit(symbol);
        if (unit)
            signal.unit = *unit;
        else
            m_problems.error("unknown-unit",
                             "there is no unit '" + symbol + "'; the units are " + joined(unitSymbols(), ", ") +
                                 nearestHint(symbol, unitSymbols()),
                             reader.placeOf("unit"));
        const std::vector<double> range = reader.numbers("range");
        if (range.size() != 2 || range[0] >= range[1]) {
            m_problems.error("bad-range",
                             "control '" + signal.name +
                                 "' needs range = [lowest, highest], the lowest first and the two different",
                             reader.placeOf("range"));
            return;
        }
        signal.lowest = range[0];
        signal.highest = range[1];
        signal.scale = reader.number("scale").value_or(signal.highest - signal.lowest);
        if (signal.scale <= 0.0)
            m_problems.error("bad-value", "the scale of control '" + signal.name + "' must be above 0",
                             reader.placeOf("scale"));
    }

    void readPositions(TomlReader& reader, Signal& signal) {
        signal.positions = reader.texts("positions");
        const SourcePlace place = reader.placeOf("positions");
        if (signal.positions.size() < 2)
            m_problems.error("missing-key",
                             "control '" + signal.name + "' needs its positions in order, at least two of them", place);
        for (auto at = signal.positions.begin(); at != signal.positions.end(); ++at) {
            if (at->empty() || isReserved(*at))
                m_problems.error("bad-name",
                                 "a position of control '" + signal.name + "' cannot be called '" + *at + "'", place);
            if (std::find(signal.positions.begin(), at, *at) != at)
                m_problems.error("duplicate-name", "control '" + signal.name + "' has two positions '" + *at + "'",
                                 place);
        }
    }

    void readValue(const std::string& name, const TomlNode& node) {
        checkName("value", name, node.place);
        if (m_aircraft.signals.find("aircraft." + name))
            m_problems.error("duplicate-name",
                             "value '" + name +
                                 "' is computed from mass, flap, wind and surface while flying; leave it out here",
                             node.place);
        AircraftValue value;
        if (node.kind == TomlNode::Kind::Integer || node.kind == TomlNode::Kind::Float) {
            value.number = node.real;
            value.unit = *findUnit("");
        } else if (node.kind != TomlNode::Kind::Text) {
            m_problems.error("wrong-type",
                             "value '" + name +
                                 "' must be a number with its unit in quotes, as in \"80 kt\", a bare "
                                 "number, or the name of a position in quotes",
                             node.place);
            return;
        } else if (!readQuantity(node.text, value) && !readWord(node.text, value)) {
            std::vector<std::string> positions = allPositions();
            m_problems.error("bad-value",
                             "value '" + name + "' is \"" + node.text +
                                 "\", which is neither a number with a unit nor a position of a control" +
                                 nearestHint(node.text, positions),
                             node.place);
            return;
        }
        if (!std::isfinite(value.number)) {
            m_problems.error("bad-value", "value '" + name + "' must be a finite number", node.place);
            return;
        }
        m_aircraft.values.emplace(name, std::move(value));
    }

    /// A number and a unit. A number alone in quotes is a word: a gate may be called "12".
    static bool readQuantity(std::string_view text, AircraftValue& value) {
        const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), value.number);
        std::string_view symbol = text.substr(static_cast<std::size_t>(end - text.data()));
        while (!symbol.empty() && symbol.front() == ' ')
            symbol.remove_prefix(1);
        const std::optional<Unit> unit = findUnit(symbol);
        if (problem != std::errc() || symbol.empty() || !unit)
            return false;
        value.unit = *unit;
        return true;
    }

    bool readWord(const std::string& text, AircraftValue& value) const {
        const std::vector<std::string> positions = allPositions();
        if (std::find(positions.begin(), positions.end(), text) == positions.end())
            return false;
        value = AircraftValue{true, text, 0.0, {}};
        return true;
    }

    [[nodiscard]] std::vector<std::string> allPositions() const {
        std::vector<std::string> positions;
        for (const CockpitControl& control : m_aircraft.controls)
            for (const std::string& position : m_aircraft.signals[control.signal].positions)
                positions.push_back(position);
        return positions;
    }

    Aircraft& m_aircraft;
    Problems& m_problems;
    TomlReader m_reader;
};

std::optional<Aircraft> readAircraft(Result<TomlFile> toml, const std::string& file, Problems& problems) {
    if (!toml) {
        problems.add(Severity::Error, toml.error());
        return std::nullopt;
    }
    Aircraft aircraft;
    aircraft.file = file;
    std::error_code ignored;
    aircraft.folder = std::filesystem::absolute(file, ignored).lexically_normal().parent_path().filename().string();
    aircraft.toml = std::move(*toml);
    Problems own;
    AircraftReader(aircraft, own).read();
    for (const Problem& problem : own.all())
        problems.add(problem.severity, problem.error);
    return own.hasErrors() ? std::nullopt : std::optional(std::move(aircraft));
}

} // namespace

std::optional<Aircraft> loadAircraft(const std::string& file, Problems& problems) {
    return readAircraft(TomlFile::load(file), file, problems);
}

std::optional<Aircraft> parseAircraft(std::string source, const std::string& file, Problems& problems) {
    return readAircraft(TomlFile::parse(std::move(source), file), file, problems);
}

} // namespace flowhand
