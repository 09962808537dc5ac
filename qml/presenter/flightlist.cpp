#include "presenter/flightlist.h"

#include <algorithm>

#include <QObject>

#include "command/owncopy.h"
#include "presenter/ribbon.h"

namespace flowhand {

namespace {

/// What stands under a flow's title: of an abnormal one its condition and its objective.
QString summaryOf(const Flow& flow) {
    if (!flow.abnormal)
        return QString::fromStdString(flow.summary);
    return QObject::tr("When: %1\nAim: %2")
        .arg(QString::fromStdString(flow.abnormal->condition), QString::fromStdString(flow.abnormal->objective));
}

} // namespace

std::vector<FlightGroup> flightGroups(const std::vector<AircraftFolder>& library) {
    std::vector<FlightGroup> groups;
    for (const AircraftFolder& folder : library) {
        if (!folder.flows.empty())
            groups.push_back({&folder, false});
        if (!folder.scenarios.empty())
            groups.push_back({&folder, true});
    }
    return groups;
}

std::vector<GroupRow> groupRows(const std::vector<FlightGroup>& groups) {
    std::vector<GroupRow> rows;
    for (const FlightGroup& group : groups) {
        const QString title = QString::fromStdString(group.folder->aircraft->title);
        const bool isOwn = group.folder->aircraft->file.rfind(ownProcedures(), 0) == 0;
        const QString aircraft = isOwn ? QObject::tr("%1 (yours)").arg(title) : title;
        GroupRow row;
        row.rowId = static_cast<int>(rows.size());
        row.title = group.isScenarios ? QObject::tr("%1: scenarios").arg(aircraft) : aircraft;
        rows.push_back(row);
    }
    return rows;
}

std::vector<FlightChoice> flightsOf(const FlightGroup& group) {
    std::vector<FlightChoice> choices;
    const auto add = [&](const Flow* flow, const Scenario* scenario) {
        FlightChoice choice;
        choice.folder = group.folder;
        choice.flow = flow;
        choice.scenario = scenario;
        choices.push_back(choice);
    };
    if (group.isScenarios)
        for (const Scenario& scenario : group.folder->scenarios)
            add(group.folder->flow(scenario.flows.front()), &scenario);
    else
        for (const Flow& flow : group.folder->flows)
            add(&flow, nullptr);
    return choices;
}

std::vector<const Flow*> flowsOf(const FlightChoice& choice) {
    std::vector<const Flow*> flows;
    if (choice.scenario != nullptr)
        for (const std::string& name : choice.scenario->flows)
            flows.push_back(choice.folder->flow(name));
    else
        flows.push_back(choice.flow);
    std::erase(flows, nullptr);
    return flows;
}

std::vector<FlowRow> flowRows(const std::vector<FlightChoice>& choices) {
    std::vector<FlowRow> rows;
    for (const FlightChoice& choice : choices) {
        FlowRow row;
        for (const Flow* flow : flowsOf(choice)) {
            const RibbonStretch stretch = stretchOf(*flow);
            row.from = row.steps == 0 ? stretch.from : std::min(row.from, stretch.from);
            row.to = std::max(row.to, stretch.to);
            row.steps += static_cast<int>(flow->steps.size());
        }
        row.rowId = static_cast<int>(rows.size());
        row.height = ribbonHeight((row.from + row.to) / 2);
        row.aircraft = QString::fromStdString(choice.folder->aircraft->title);
        if (choice.flow != nullptr)
            row.target = QString::number(choice.flow->target);
        if (choice.scenario != nullptr) {
            row.title = QString::fromStdString(choice.scenario->title);
            row.summary = QString::fromStdString(choice.scenario->summary);
            row.stretch = QObject::tr("Scenario");
        } else if (choice.flow != nullptr) {
            row.title = QString::fromStdString(choice.flow->title);
            row.summary = summaryOf(*choice.flow);
            row.stretch = stretchOf(*choice.flow).title;
        }
        rows.push_back(row);
    }
    return rows;
}

} // namespace flowhand
