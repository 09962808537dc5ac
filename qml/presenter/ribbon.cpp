#include "presenter/ribbon.h"

#include <algorithm>
#include <cmath>

#include "procedure/phase.h"

namespace flowhand {

namespace {

double phaseStart(const std::string& id) {
    const auto index = static_cast<double>(findPhase(id).value_or(0));
    return index / static_cast<double>(phases().size());
}

QString phaseTitle(const std::string& id) {
    const std::optional<std::size_t> index = findPhase(id);
    return index ? QString::fromStdString(phases()[*index].title) : QString();
}

QString stretchTitle(const Flow& flow) {
    if (flow.phaseTo == flow.phaseFrom || flow.phaseTo.empty())
        return phaseTitle(flow.phaseFrom);
    return QObject::tr("%1 to %2").arg(phaseTitle(flow.phaseFrom), phaseTitle(flow.phaseTo).toLower());
}

} // namespace

std::vector<PhaseRow> phaseRows() {
    std::vector<PhaseRow> rows;
    const double share = 1.0 / static_cast<double>(phases().size());
    for (const Phase& phase : phases()) {
        PhaseRow row;
        row.rowId = static_cast<int>(rows.size());
        row.title = QString::fromStdString(phase.title);
        row.from = share * row.rowId;
        row.to = share * (row.rowId + 1);
        row.height = phase.height;
        rows.push_back(row);
    }
    return rows;
}

double ribbonHeight(double across) {
    const auto count = static_cast<double>(phases().size());
    const double at = std::clamp(across, 0.0, 1.0) * count;
    const auto index = static_cast<std::size_t>(std::min(std::floor(at), count - 1.0));
    const double begin = index == 0 ? 0.0 : phases()[index - 1].height;
    const double share = at - static_cast<double>(index);
    const double eased = share * share * (3.0 - 2.0 * share);
    return begin + (phases()[index].height - begin) * eased;
}

namespace {

FlowRow rowOf(const Flow& flow, const AircraftFolder& folder, int id) {
    const double share = 1.0 / static_cast<double>(phases().size());
    FlowRow row;
    row.rowId = id;
    row.title = QString::fromStdString(flow.title);
    row.summary = QString::fromStdString(flow.summary);
    row.aircraft = QString::fromStdString(folder.aircraft->title);
    row.stretch = stretchTitle(flow);
    row.from = phaseStart(flow.phaseFrom);
    row.to = (flow.phaseTo.empty() ? row.from : phaseStart(flow.phaseTo)) + share;
    row.height = ribbonHeight((row.from + row.to) / 2);
    row.steps = static_cast<int>(flow.steps.size());
    row.target = QString::number(flow.target);
    return row;
}

/// From the first flow's phase to the last one's.
FlowRow rowOf(const Scenario& scenario, const AircraftFolder& folder, int id) {
    const Flow* first = folder.flow(scenario.flows.front());
    FlowRow row = first != nullptr ? rowOf(*first, folder, id) : FlowRow();
    row.rowId = id;
    row.steps = 0;
    for (const std::string& name : scenario.flows)
        if (const Flow* flow = folder.flow(name)) {
            const FlowRow part = rowOf(*flow, folder, id);
            row.to = std::max(row.to, part.to);
            row.steps += part.steps;
        }
    row.height = ribbonHeight((row.from + row.to) / 2);
    row.title = QString::fromStdString(scenario.title);
    row.summary = QString::fromStdString(scenario.summary);
    row.aircraft = QString::fromStdString(folder.aircraft->title);
    row.stretch = QObject::tr("Scenario");
    return row;
}

} // namespace

std::vector<FlowRow> flowRows(const std::vector<AircraftFolder>& library) {
    std::vector<FlowRow> rows;
    for (const AircraftFolder& folder : library) {
        for (const Flow& flow : folder.flows)
            rows.push_back(rowOf(flow, folder, static_cast<int>(rows.size())));
        for (const Scenario& scenario : folder.scenarios)
            rows.push_back(rowOf(scenario, folder, static_cast<int>(rows.size())));
    }
    return rows;
}

} // namespace flowhand
