#include <algorithm>
#include <array>
#include <filesystem>
#include <utility>

#include "base/names.h"
#include "procedure/fileformat.h"
#include "procedure/flowcontext.h"
#include "procedure/scenario.h"

namespace flowhand {

namespace {

/// Drives stop by themselves when the flaps of both sides are a few degrees apart (common practice); a file may say
/// how many.
constexpr double kUsualApart = 3.0; // deg
/// A dragging brake that says no more: enough to feel, not enough to stop. Our own choice.
constexpr double kUsualDrag = 30.0; // %

struct FailureName {
    std::string_view name;
    FailureKind kind;
    bool hasEngine;
    bool hasSide;
};

constexpr std::array<FailureName, 7> kFailures{{{"engine_out", FailureKind::EngineOut, true, false},
                                                {"reverser_locked", FailureKind::ReverserLocked, true, false},
                                                {"reverser_unlocked", FailureKind::ReverserUnlocked, true, false},
                                                {"steering_lost", FailureKind::SteeringLost, false, false},
                                                {"flap_asymmetry", FailureKind::FlapAsymmetry, false, true},
                                                {"brake_lost", FailureKind::BrakeLost, false, true},
                                                {"brake_drags", FailureKind::BrakeDrags, false, true}}};

class ScenarioReader {
public:
    ScenarioReader(const TomlFile& file, const Aircraft& aircraft, Scenario& scenario, Problems& problems)
        : m_context(file, aircraft, problems), m_reader(file, file.root(), "the scenario file", problems),
          m_scenario(scenario), m_problems(problems) {}

    void read() {
        readFormat(m_reader);
        m_scenario.title = m_reader.requiredText("title");
        m_scenario.summary = m_reader.text("summary").value_or("");
        m_scenario.flows = m_reader.texts("flows");
        m_scenario.flowsWhere = m_reader.placeOf("flows");
        if (m_scenario.flows.empty())
            m_problems.error("missing-key", "a scenario needs its flows in their order, as in flows = [\"take_off\"]",
                             m_scenario.flowsWhere);
        readStart();
        for (const TomlNode* table : m_reader.tables("event"))
            readEvent(*table);
        m_reader.finish();
    }

private:
    void readStart() {
        const TomlNode* table = m_reader.table("start");
        if (table == nullptr)
            return;
        TomlReader start(m_context.file(), *table, "[start]", m_problems);
        m_scenario.startPlace = start.text("place").value_or("");
        m_scenario.startWhere = start.placeOf("place");
        m_scenario.surroundings.surface = start.text("surface").value_or("");
        m_scenario.surroundings.mass = quantity(start, "mass", "kg");
        const std::optional<double> from = quantity(start, "wind_from", "deg");
        const std::optional<double> speed = quantity(start, "wind_speed", "m/s");
        if (from.has_value() != speed.has_value())
            m_problems.error("missing-key", "a wind needs both wind_from and wind_speed", table->place);
        if (from && speed)
            m_scenario.surroundings.wind = Wind{*from, *speed};
        start.finish();
    }

    /// A number with a unit, in `unit`; nothing when it is left out or wrong.
    std::optional<double> quantity(TomlReader& reader, std::string_view key, std::string_view unit) {
        const std::optional<std::string> text = reader.text(key);
        if (!text)
            return std::nullopt;
        Signal signal;
        signal.name = std::string(key);
        signal.unit = *findUnit(unit);
        const Result<Value> value = parseValue(signal, *text);
        if (value)
            return value->number();
        m_problems.error(value.error().code, value.error().message, reader.placeOf(key));
        return std::nullopt;
    }

    void readEvent(const TomlNode& table) {
        TomlReader reader(m_context.file(), table, "an event", m_problems);
        const std::string id = reader.requiredText("id");
        checkId(id, reader.placeOf("id"));
        const std::string title = reader.requiredText("title");
        std::optional<PlacedCondition> when = m_context.requiredCondition(reader, "when");
        if (when && when->condition.hasOpenMoved())
            m_problems.error("open-moved", "in an event 'moved' needs the stretch it is watched in", when->place);
        const double chance = quantity(reader, "chance", "%").value_or(100.0) / 100.0;
        if (!(chance >= 0.0 && chance <= 1.0))
            m_problems.error("bad-value", "a chance is from 0 % to 100 %", reader.placeOf("chance"));
        const std::string group = reader.text("group").value_or("");
        const std::optional<Failure> failure = readFailure(reader);
        const std::string route = reader.text("route").value_or("");
        const std::optional<Words> words = readWords(reader);
        if (!failure && route.empty() && !words && reader.node("failure") == nullptr)
            m_problems.error("missing-key",
                             "event '" + id + "' does nothing; give it a 'failure', a 'route' or 'words'", table.place);
        reader.finish();
        if (when)
            m_scenario.events.push_back(
                {id, title, std::move(*when), chance, group, failure, route, words, table.place});
    }

    std::optional<Failure> readFailure(TomlReader& reader) {
        const std::optional<std::string> name = reader.text("failure");
        const std::optional<std::int64_t> engine = reader.integer("engine");
        const std::optional<std::string> side = reader.text("side");
        const std::optional<double> apart = quantity(reader, "apart", "deg");
        const std::optional<double> drag = quantity(reader, "drag", "%");
        if (!name)
            return std::nullopt;
        std::vector<std::string> known;
        const FailureName* found = nullptr;
        for (const FailureName& each : kFailures) {
            known.emplace_back(each.name);
            found = each.name == *name ? &each : found;
        }
        if (found == nullptr) {
            m_problems.error("unknown-word",
                             "there is no failure '" + *name + "'; it is one of " + joined(known, ", ") +
                                 nearestHint(*name, known),
                             reader.placeOf("failure"));
            return std::nullopt;
        }
        Failure failure;
        failure.kind = found->kind;
        if (found->hasEngine)
            failure.engine = engineOf(reader, engine);
        if (found->hasSide)
            failure.side = sideOf(reader, side);
        if (found->kind == FailureKind::FlapAsymmetry)
            failure.amount = apart.value_or(kUsualApart);
        if (found->kind == FailureKind::BrakeDrags)
            failure.amount = drag.value_or(kUsualDrag) / 100.0;
        if ((engine && !found->hasEngine) || (side && !found->hasSide) ||
            (apart && found->kind != FailureKind::FlapAsymmetry) || (drag && found->kind != FailureKind::BrakeDrags))
            m_problems.error(
                "unknown-key",
                "'" + *name +
                    "' has no such detail; engine is of engine_out and the reversers, side of flaps and brakes, "
                    "apart of flap_asymmetry, drag of brake_drags",
                reader.tableNode().place);
        checkAmount(failure, reader);
        return failure;
    }

    void checkAmount(const Failure& failure, TomlReader& reader) {
        const bool isFlap = failure.kind == FailureKind::FlapAsymmetry;
        if (isFlap && !(failure.amount > 0.0))
            m_problems.error("bad-value", "'apart' must be above 0 deg", reader.placeOf("apart"));
        if (!isFlap && !(failure.amount >= 0.0 && failure.amount <= 1.0))
            m_problems.error("bad-value", "'drag' is from 0 % to 100 %", reader.placeOf("drag"));
    }

    std::size_t engineOf(TomlReader& reader, std::optional<std::int64_t> engine) {
        const std::int64_t count = engineCount();
        if (engine && *engine >= 1 && *engine <= count)
            return static_cast<std::size_t>(*engine - 1);
        m_problems.error("bad-value",
                         "say which engine fails, as in engine = 1; this aircraft has " + std::to_string(count),
                         reader.placeOf("engine"));
        return 0;
    }

    [[nodiscard]] std::int64_t engineCount() const {
        std::int64_t count = 0;
        while (m_context.aircraft().signals.find("engine_power_" + std::to_string(count + 1)))
            ++count;
        return count;
    }

    Side sideOf(TomlReader& reader, const std::optional<std::string>& side) {
        if (!side || (*side != "left" && *side != "right"))
            m_problems.error("bad-value", "say which side it is: side = \"left\" or side = \"right\"",
                             reader.placeOf("side"));
        return side && *side == "right" ? Side::Right : Side::Left;
    }

    std::optional<Words> readWords(TomlReader& reader) {
        const TomlNode* table = reader.table("words");
        if (table == nullptr)
            return std::nullopt;
        TomlReader words(m_context.file(), *table, "the words of an event", m_problems);
        Words said{words.requiredText("text"), words.requiredText("by")};
        std::vector<std::string> speakers = m_context.aircraft().seats;
        speakers.insert(speakers.end(), {"cockpit", "ground"});
        if (!said.by.empty() && std::find(speakers.begin(), speakers.end(), said.by) == speakers.end())
            m_problems.error("unknown-speaker",
                             "nobody called '" + said.by + "' speaks; words are by " + joined(speakers, ", ") +
                                 nearestHint(said.by, speakers),
                             words.placeOf("by"));
        words.finish();
        return said;
    }

    void checkId(const std::string& id, const SourcePlace& place) {
        if (!id.empty() && !isPlainName(id))
            m_problems.error("bad-name",
                             "event '" + id + "' must be named with lower case letters, digits and '_', a letter first",
                             place);
        for (const ScenarioEvent& event : m_scenario.events)
            if (event.id == id)
                m_problems.error("duplicate-name", "two events are called '" + id + "'", place);
    }

    FlowContext m_context;
    TomlReader m_reader;
    Scenario& m_scenario;
    Problems& m_problems;
};

std::optional<Scenario> readScenario(Result<TomlFile> toml, const std::string& file, const Aircraft& aircraft,
                                     Problems& problems) {
    if (!toml) {
        problems.add(Severity::Error, toml.error());
        return std::nullopt;
    }
    Scenario scenario;
    scenario.file = file;
    scenario.id = std::filesystem::path(file).stem().string();
    Problems own;
    ScenarioReader(*toml, aircraft, scenario, own).read();
    for (const Problem& problem : own.all())
        problems.add(problem.severity, problem.error);
    if (own.hasErrors())
        return std::nullopt;
    scenario.source = toml->source();
    return scenario;
}

} // namespace

std::optional<Scenario> loadScenario(const std::string& file, const Aircraft& aircraft, Problems& problems) {
    return readScenario(TomlFile::load(file), file, aircraft, problems);
}

std::optional<Scenario> parseScenario(std::string source, const std::string& file, const Aircraft& aircraft,
                                      Problems& problems) {
    return readScenario(TomlFile::parse(std::move(source), file), file, aircraft, problems);
}

std::string FlowOrder::after(const Flow& ended, const std::string& outcome) {
    for (const Outcome& each : ended.outcomes)
        if (each.name == outcome) {
            m_hasLeft = true;
            return each.next;
        }
    if (m_hasLeft || m_at + 1 >= m_flows.size())
        return {};
    return m_flows[++m_at];
}

} // namespace flowhand
