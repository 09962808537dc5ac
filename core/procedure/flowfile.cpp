#include <algorithm>
#include <array>
#include <filesystem>
#include <utility>

#include "base/names.h"
#include "procedure/fileformat.h"
#include "procedure/flow.h"
#include "procedure/flowcontext.h"
#include "procedure/phase.h"
#include "procedure/steporder.h"
#include "procedure/stepreader.h"

namespace flowhand {

namespace {

constexpr std::size_t kMostSteps = 10000;
constexpr std::size_t kMostGuards = 1000;
/// Reading stops here: whoever has a hundred mistakes to mend does not want the rest yet.
constexpr std::size_t kMostProblems = 100;
/// Of numbers, as a share of the control's range: a lever at rest on a home-built quadrant is this near. Our own
/// choice.
constexpr double kUsualTolerance = 0.05;

constexpr std::array<std::pair<std::string_view, FlowStyle>, 3> kStyles{
    {{"flow", FlowStyle::Flow}, {"do-then-verify", FlowStyle::DoThenVerify}, {"read-and-do", FlowStyle::ReadAndDo}}};

class FlowReader {
public:
    FlowReader(const TomlFile& file, const Aircraft& aircraft, Flow& flow, Problems& problems)
        : m_context(file, aircraft, problems), m_reader(file, file.root(), "the flow file", problems), m_flow(flow),
          m_problems(problems) {}

    void read() {
        readFormat(m_reader);
        m_flow.title = m_reader.requiredText("title");
        m_flow.summary = m_reader.text("summary").value_or("");
        m_seat = m_context.seat(m_reader, "seat", "");
        readStyle();
        readAbnormal();
        readPhases();
        readTarget();
        readStart();
        readSteps();
        for (const TomlNode* table : limited("guard"))
            readGuard(*table);
        for (const TomlNode* table : limited("outcome"))
            readOutcome(*table);
        for (const TomlNode* table : limited("waive"))
            readWaiver(*table);
        m_reader.finish();
    }

private:
    bool isTooMuch() {
        if (m_problems.all().size() < kMostProblems)
            return false;
        if (!m_hasStopped)
            m_problems.error("too-many-problems", "more than 100 problems; the rest of the file was not read",
                             m_reader.tableNode().place);
        m_hasStopped = true;
        return true;
    }

    std::vector<const TomlNode*> limited(std::string_view key) {
        std::vector<const TomlNode*> tables = m_reader.tables(key);
        if (tables.size() > kMostGuards) {
            m_problems.error("too-many", "a flow can have at most 1000 of '" + std::string(key) + "'",
                             m_reader.placeOf(key));
            tables.clear();
        }
        if (isTooMuch())
            tables.clear();
        return tables;
    }

    void readStyle() {
        const std::optional<std::string> text = m_reader.text("style");
        std::vector<std::string> known;
        for (const auto& [name, style] : kStyles) {
            if (!text || name == *text) {
                m_flow.style = style;
                return;
            }
            known.emplace_back(name);
        }
        m_problems.error("unknown-word",
                         "there is no style '" + *text + "'; it is one of " + joined(known, ", ") +
                             nearestHint(*text, known),
                         m_reader.placeOf("style"));
    }

    void readAbnormal() {
        const TomlNode* table = m_reader.table("abnormal");
        if (table == nullptr)
            return;
        TomlReader reader(m_context.file(), *table, "[abnormal]", m_problems);
        Abnormal abnormal;
        abnormal.condition = reader.requiredText("condition");
        abnormal.objective = reader.requiredText("objective");
        reader.finish();
        m_flow.abnormal = std::move(abnormal);
    }

    void readPhases() {
        const std::vector<std::string> names = m_reader.texts("phases");
        const SourcePlace place = m_reader.placeOf("phases");
        if (names.empty() || names.size() > 2) {
            m_problems.error("bad-phases",
                             "the flow needs its phases, one or the first and the last, as in phases = [\"taxi_out\"]",
                             place);
            return;
        }
        std::vector<std::string> known;
        for (const Phase& phase : phases())
            known.push_back(phase.id);
        for (const std::string& name : names)
            if (!findPhase(name))
                m_problems.error("unknown-phase",
                                 "there is no phase '" + name + "'; the phases are " + joined(known, ", ") +
                                     nearestHint(name, known),
                                 place);
        m_flow.phaseFrom = names.front();
        m_flow.phaseTo = names.back();
        if (findPhase(m_flow.phaseTo) < findPhase(m_flow.phaseFrom))
            m_problems.error("bad-phases", "the flow's last phase comes before its first", place);
    }

    void readTarget() {
        m_flow.target = m_reader.number("target").value_or(m_flow.target);
        if (!(m_flow.target >= 0.0 && m_flow.target <= 100.0))
            m_problems.error("bad-value", "the target is a score from 0 to 100", m_reader.placeOf("target"));
    }

    void readStart() {
        const TomlNode* table = m_reader.table("start");
        if (table == nullptr)
            return;
        TomlReader start(m_context.file(), *table, "[start]", m_problems);
        m_flow.startPlace = start.requiredText("place");
        m_flow.startWhere = start.placeOf("place");
        if (const TomlNode* controls = start.table("controls"))
            for (const auto& [name, node] : controls->members)
                readStartValue(name, node);
        start.finish();
    }

    void readStartValue(const std::string& name, const TomlNode& node) {
        const std::optional<SignalId> id = m_context.control(name, node.place);
        if (!id || isTooMuch())
            return;
        const Signal& signal = m_context.aircraft().signals[*id];
        StartValue start{*id, Value::unknown(), kUsualTolerance * (signal.highest - signal.lowest)};
        const TomlNode* text = &node;
        if (node.kind == TomlNode::Kind::Table) {
            TomlReader reader(m_context.file(), node, "the start of '" + name + "'", m_problems);
            (void)reader.requiredText("value");
            text = reader.node("value");
            const TomlNode* tolerance = reader.node("tolerance");
            if (tolerance != nullptr && signal.kind == SignalKind::Number)
                start.tolerance = m_context.value(signal, *tolerance).value_or(Value::number(0.0)).number();
            else if (tolerance != nullptr)
                m_problems.error("bad-value", "'" + name + "' is no number and has no tolerance", tolerance->place);
            reader.finish();
        }
        const std::optional<Value> value = text != nullptr ? m_context.value(signal, *text) : std::nullopt;
        if (!value)
            return;
        start.value = *value;
        checkStart(signal, start, node.place);
        m_flow.start.push_back(start);
    }

    void checkStart(const Signal& signal, const StartValue& start, const SourcePlace& place) {
        if (signal.kind == SignalKind::Position && start.value == Value::between())
            m_problems.error("bad-value", "'" + signal.name + "' cannot start between its positions", place);
        if (signal.kind != SignalKind::Number)
            return;
        if (start.value.number() < signal.lowest || start.value.number() > signal.highest)
            m_problems.error("out-of-range",
                             "'" + signal.name + "' goes from " + numberText(signal.lowest) + " to " +
                                 valueText(signal, Value::number(signal.highest)),
                             place);
        if (!(start.tolerance > 0.0))
            m_problems.error("bad-value", "the tolerance of '" + signal.name + "' must be above 0", place);
    }

    void readSteps() {
        const std::vector<const TomlNode*> tables = m_reader.tables("step");
        if (tables.empty() && m_reader.node("step") == nullptr)
            m_problems.error("missing-key", "the flow has no steps; add at least one [[step]]",
                             m_reader.placeOf("step"));
        if (tables.size() > kMostSteps) {
            m_problems.error("too-many", "a flow can have at most 10000 steps", m_reader.placeOf("step"));
            return;
        }
        for (const TomlNode* table : tables) {
            if (isTooMuch())
                return;
            TomlReader reader(m_context.file(), *table, nameOf("step", *table), m_problems);
            Step step = readStep(m_context, reader, m_seat);
            m_order.place(reader, step, m_flow.steps.size());
            reader.finish();
            m_flow.steps.push_back(std::move(step));
        }
    }

    static std::string nameOf(const char* what, const TomlNode& table) {
        const TomlNode* id = table.find("id");
        return id != nullptr && !id->text.empty() ? std::string(what) + " '" + id->text + "'"
                                                  : std::string("a ") + what;
    }

    std::optional<std::size_t> stepNamed(TomlReader& reader, std::string_view key, bool isLast) {
        const std::optional<std::string> name = reader.text(key);
        if (!name)
            return std::nullopt;
        if (const std::vector<std::size_t>* found = m_order.find(*name))
            return isLast ? found->back() : found->front();
        m_problems.error("unknown-step", "the flow has no step '" + *name + "'" + m_order.hint(*name),
                         reader.placeOf(key));
        return std::nullopt;
    }

    void readGuard(const TomlNode& table) {
        TomlReader reader(m_context.file(), table, nameOf("guard", table), m_problems);
        const std::string id = reader.requiredText("id");
        checkId(m_guardIds, "guard", id, reader.placeOf("id"));
        const std::string title = reader.requiredText("title");
        std::optional<PlacedCondition> never = m_context.requiredCondition(reader, "never");
        if (never && never->condition.hasOpenMoved())
            m_problems.error("open-moved",
                             "in a guard 'moved' needs the stretch it is watched in, as in moved(tiller, 10 deg, "
                             "ground_speed > 80 kt): a guard has no movement to count from",
                             never->place);
        const std::optional<std::size_t> from = stepNamed(reader, "from", false);
        const std::optional<std::size_t> to = stepNamed(reader, "to", true);
        if (from && to && *to < *from)
            m_problems.error("bad-stretch", "guard '" + id + "' ends with a step that comes before its first",
                             reader.placeOf("to"));
        const int weight = m_context.weight(reader);
        reader.finish();
        if (never)
            m_flow.guards.push_back(Guard{id, title, std::move(*never), from, to, weight, weight == 3, table.place});
    }

    void readOutcome(const TomlNode& table) {
        TomlReader reader(m_context.file(), table, nameOf("outcome", table), m_problems);
        const std::string id = reader.requiredText("id");
        checkId(m_outcomeIds, "outcome", id, reader.placeOf("id"));
        const std::string title = reader.requiredText("title");
        std::optional<PlacedCondition> when = m_context.requiredCondition(reader, "when");
        const std::string next = reader.text("next").value_or("");
        reader.finish();
        if (when)
            m_flow.outcomes.push_back(Outcome{id, title, std::move(*when), next, table.place});
    }

    void readWaiver(const TomlNode& table) {
        TomlReader reader(m_context.file(), table, "a waived rule", m_problems);
        Waiver waiver;
        waiver.rule = reader.requiredText("rule");
        waiver.reason = reader.requiredText("reason");
        waiver.step = reader.text("step").value_or("");
        waiver.place = table.place;
        if (!waiver.step.empty() && m_order.find(waiver.step) == nullptr)
            m_problems.error("unknown-step", "the flow has no step '" + waiver.step + "'" + m_order.hint(waiver.step),
                             reader.placeOf("step"));
        reader.finish();
        m_flow.waivers.push_back(std::move(waiver));
    }

    void checkId(std::vector<std::string>& known, const char* what, const std::string& id, const SourcePlace& place) {
        if (!id.empty() && !isPlainName(id))
            m_problems.error("bad-name",
                             std::string(what) + " '" + id +
                                 "' must be named with lower case letters, digits and '_', a letter first",
                             place);
        if (std::find(known.begin(), known.end(), id) != known.end())
            m_problems.error("duplicate-name", "two of kind " + std::string(what) + " are called '" + id + "'", place);
        known.push_back(id);
    }

    FlowContext m_context;
    TomlReader m_reader;
    Flow& m_flow;
    Problems& m_problems;
    StepOrder m_order;
    std::string m_seat;
    std::vector<std::string> m_guardIds;
    std::vector<std::string> m_outcomeIds;
    bool m_hasStopped = false;
};

std::optional<Flow> readFlow(Result<TomlFile> toml, const std::string& file, const Aircraft& aircraft,
                             Problems& problems) {
    if (!toml) {
        problems.add(Severity::Error, toml.error());
        return std::nullopt;
    }
    Flow flow;
    flow.file = file;
    flow.id = std::filesystem::path(file).stem().string();
    Problems own;
    FlowReader(*toml, aircraft, flow, own).read();
    for (const Problem& problem : own.all())
        problems.add(problem.severity, problem.error);
    if (own.hasErrors())
        return std::nullopt;
    flow.source = toml->source();
    return flow;
}

} // namespace

std::optional<Flow> loadFlow(const std::string& file, const Aircraft& aircraft, Problems& problems) {
    return readFlow(TomlFile::load(file), file, aircraft, problems);
}

std::optional<Flow> parseFlow(std::string source, const std::string& file, const Aircraft& aircraft,
                              Problems& problems) {
    return readFlow(TomlFile::parse(std::move(source), file), file, aircraft, problems);
}

} // namespace flowhand
