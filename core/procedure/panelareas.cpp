#include "procedure/panelareas.h"

#include <algorithm>

#include "base/names.h"

namespace flowhand {

namespace {

constexpr double kWhole = 100.0;

bool isNamed(const std::vector<PanelArea>& areas, const std::string& name) {
    return std::any_of(areas.begin(), areas.end(), [&](const PanelArea& area) {
        return area.name == name;
    });
}

void readArea(const TomlFile& file, const TomlNode& table, std::vector<PanelArea>& areas, Problems& problems) {
    TomlReader reader(file, table, "an area", problems);
    PanelArea area;
    area.name = reader.requiredText("name");
    const std::vector<double> at = reader.numbers("at");
    const SourcePlace place = reader.placeOf("at");
    reader.finish();
    if (isNamed(areas, area.name))
        problems.error("duplicate-name", "two areas are called '" + area.name + "'", table.place);
    const bool isInside = at.size() == 4 && at[0] >= 0.0 && at[1] >= 0.0 && at[2] > 0.0 && at[3] > 0.0 &&
                          at[0] + at[2] <= kWhole && at[1] + at[3] <= kWhole;
    if (!isInside) {
        problems.error("bad-value",
                       "area '" + area.name +
                           "' needs at = [left, top, width, height], all within 0 to 100, as in at = [20, 0, 60, 25]",
                       place);
        return;
    }
    areas.push_back({area.name, at[0], at[1], at[2], at[3]});
}

} // namespace

std::vector<PanelArea> readPanelAreas(TomlReader& reader, const std::vector<CockpitControl>& controls,
                                      Problems& problems) {
    std::vector<PanelArea> areas;
    for (const TomlNode* table : reader.tables("area"))
        readArea(reader.file(), *table, areas, problems);
    std::vector<std::string> known;
    for (const PanelArea& area : areas)
        known.push_back(area.name);
    if (areas.empty())
        return areas;
    std::vector<std::string> missing;
    for (const CockpitControl& control : controls)
        if (!isNamed(areas, control.area) && std::find(missing.begin(), missing.end(), control.area) == missing.end()) {
            missing.push_back(control.area);
            problems.error("unknown-area",
                           "controls lie in the area '" + control.area + "', which has no [[area]]" +
                               nearestHint(control.area, known),
                           reader.placeOf("area"));
        }
    return areas;
}

std::vector<PanelArea> panelAreas(const Aircraft& aircraft) {
    Problems problems;
    TomlReader reader(aircraft.toml, aircraft.toml.root(), "the aircraft file", problems);
    std::vector<PanelArea> areas = readPanelAreas(reader, aircraft.controls, problems);
    if (!areas.empty())
        return areas;
    for (const CockpitControl& control : aircraft.controls)
        if (!isNamed(areas, control.area))
            areas.push_back({control.area, 0.0, 0.0, kWhole, 0.0});
    for (std::size_t i = 0; i < areas.size(); ++i) {
        areas[i].height = kWhole / static_cast<double>(areas.size());
        areas[i].top = areas[i].height * static_cast<double>(i);
    }
    return areas;
}

} // namespace flowhand
