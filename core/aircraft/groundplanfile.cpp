#include <algorithm>
#include <cmath>

#include "aircraft/atmosphere.h"
#include "aircraft/groundplan.h"
#include "aircraft/quantity.h"
#include "base/tomlfile.h"

namespace flowhand {

namespace {

/// A mark must lie on its line: what a hand-written coordinate may be off.
constexpr double kMarkTolerance = 0.5; // m

class GroundPlanReader {
public:
    GroundPlanReader(const TomlFile& file, GroundPlan& plan, Problems& problems)
        : m_file(file), m_plan(plan), m_problems(problems), m_root(file, file.root(), "the ground plan", problems) {}

    void read() {
        if (m_root.integer("format") != 1)
            m_problems.error("bad-format", "write format = 1, the format this program reads", m_root.placeOf("format"));
        m_plan.title = m_root.requiredText("title");
        QuantityReader q(m_root);
        m_plan.elevation = q.siOr("elevation", "ft", 0.0);
        m_plan.turnNotice = q.si("turn_notice", "m");
        m_plan.stopPassed = q.si("stop_passed", "m");
        if (const TomlNode* runway = m_root.table("runway"))
            readRunway(*runway);
        else
            m_problems.error("missing-key", "the ground plan needs a [runway]", m_root.placeOf("runway"));
        for (const TomlNode* route : m_root.tables("route"))
            readRoute(*route);
        m_root.finish();
    }

private:
    void readRunway(const TomlNode& table) {
        TomlReader reader(m_file, table, "[runway]", m_problems);
        QuantityReader q(reader);
        m_plan.runway.name = reader.requiredText("name");
        m_plan.runway.from = readPoint(reader, "from");
        m_plan.runway.to = readPoint(reader, "to");
        m_plan.runway.width = q.si("width", "m");
        m_plan.runway.clearDistance = q.si("clear_distance", "m");
        reader.finish();
    }

    PlanPoint readPoint(TomlReader& reader, const char* key) {
        return pointFrom(reader.numbers(key), reader.placeOf(key));
    }

    PlanPoint pointFrom(const std::vector<double>& numbers, const SourcePlace& place) {
        if (numbers.size() == 2)
            return {numbers[0], numbers[1]};
        m_problems.error("bad-point", "a point is two numbers, metres east and north, as in [120, 45]", place);
        return {};
    }

    std::vector<PlanPoint> readPoints(TomlReader& reader) {
        std::vector<PlanPoint> points;
        const TomlNode* list = reader.node("points");
        if (list == nullptr)
            return points;
        for (const TomlNode& item : list->items) {
            std::vector<double> numbers;
            for (const TomlNode& number : item.items)
                numbers.push_back(number.real);
            points.push_back(pointFrom(numbers, item.place));
        }
        return points;
    }

    void readRoute(const TomlNode& table) {
        TomlReader reader(m_file, table, "[[route]]", m_problems);
        Route route;
        route.name = reader.requiredText("name");
        Result<GuideLine> line = GuideLine::build(readPoints(reader), reader.numbers("radii"));
        if (!line) {
            m_problems.error(line.error().code, line.error().message, reader.placeOf("points"));
            return;
        }
        route.line = std::move(*line);
        for (const TomlNode* mark : reader.tables("mark"))
            readMark(*mark, route);
        std::stable_sort(route.marks.begin(), route.marks.end(), [](const RouteMark& a, const RouteMark& b) {
            return a.distance < b.distance;
        });
        reader.finish();
        m_plan.routes.push_back(std::move(route));
    }

    void readMark(const TomlNode& table, Route& route) {
        TomlReader reader(m_file, table, "[[route.mark]]", m_problems);
        RouteMark mark;
        mark.name = reader.requiredText("name");
        mark.isStop = reader.boolean("stop").value_or(false);
        const PlanPoint at = readPoint(reader, "at");
        mark.distance = route.line.nearest(at);
        const PlanPoint on = route.line.pointAt(mark.distance).at;
        if (std::max(std::abs(on.x - at.x), std::abs(on.y - at.y)) > kMarkTolerance)
            m_problems.error("bad-point", "mark '" + mark.name + "' does not lie on its route", reader.placeOf("at"));
        reader.finish();
        route.marks.push_back(std::move(mark));
    }

    const TomlFile& m_file;
    GroundPlan& m_plan;
    Problems& m_problems;
    TomlReader m_root;
};

} // namespace

Result<GroundPlan> loadGroundPlan(const std::string& file) {
    const Result<TomlFile> toml = TomlFile::load(file);
    if (!toml)
        return tl::unexpected(toml.error());
    GroundPlan plan;
    Problems problems;
    GroundPlanReader(*toml, plan, problems).read();
    if (problems.hasErrors())
        return tl::unexpected(problems.firstError());
    return plan;
}

} // namespace flowhand
