#include "presenter/briefing.h"

#include <cmath>

#include <QObject>
#include <QStringList>

#include "presenter/flightlist.h"
#include "presenter/stepfacts.h"

namespace flowhand {

namespace {

constexpr double kKnot = 1852.0 / 3600.0; // m/s
constexpr double kTonne = 1000.0;         // kg

QString windText(const Wind& wind) {
    const long knots = std::lround(wind.speed / kKnot);
    if (knots == 0)
        return QObject::tr("calm");
    return QObject::tr("from %1° at %2 kt").arg(std::lround(wind.from)).arg(knots);
}

/// Light ones are weighed in kilograms.
QString massText(double mass) {
    if (mass < 10 * kTonne)
        return QObject::tr("%1 kg").arg(std::lround(mass));
    return QObject::tr("%1 t").arg(QString::number(mass / kTonne, 'f', 1));
}

} // namespace

std::vector<FactRow> briefingRows(const FlightChoice& choice, const PracticeFigures* figures) {
    std::vector<FactRow> rows;
    if (choice.scenario == nullptr || choice.flow == nullptr)
        return rows;
    const auto add = [&](const QString& label, const QString& value) {
        FactRow row;
        row.rowId = static_cast<int>(rows.size());
        row.label = label;
        row.value = value;
        rows.push_back(row);
    };
    const Scenario& scenario = *choice.scenario;
    const Surroundings& met = scenario.surroundings;
    const std::string& place = scenario.startPlace.empty() ? choice.flow->startPlace : scenario.startPlace;
    const StartPlace* start = figures != nullptr ? figures->place(place) : nullptr;
    const double usual = start != nullptr && start->mass > 0 ? start->mass
                         : figures != nullptr                ? figures->mass.mass
                                                             : 0;
    const double mass = met.mass.value_or(usual);
    const QString aircraft = QString::fromStdString(choice.folder->aircraft->title);
    add(QObject::tr("Aircraft"), mass > 0 ? QObject::tr("%1, %2").arg(aircraft, massText(mass)) : aircraft);
    add(QObject::tr("Begins at"), titleOfName(place));
    if (met.wind || figures != nullptr)
        add(QObject::tr("Wind"),
            windText(met.wind.value_or(figures != nullptr ? Wind{figures->weather.windFrom, figures->weather.windSpeed}
                                                          : Wind{})));
    const std::string surface = !met.surface.empty() || figures == nullptr ? met.surface : figures->surface;
    if (!surface.empty())
        add(QObject::tr("Runway"), titleOfName(surface).toLower());
    QStringList titles;
    for (const Flow* flow : flowsOf(choice))
        titles << QString::fromStdString(flow->title);
    add(QObject::tr("Flows"), titles.join(QObject::tr(", then ")));
    add(QObject::tr("On the way"), scenario.events.empty() ? QObject::tr("Nothing unexpected is planned.")
                                                           : QObject::tr("Something unexpected may happen."));
    return rows;
}

} // namespace flowhand
