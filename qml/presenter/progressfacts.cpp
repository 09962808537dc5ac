#include "presenter/progressfacts.h"

#include <algorithm>
#include <cmath>

#include <QDateTime>

#include "presenter/phrasetext.h"
#include "presenter/ribbon.h"
#include "presenter/stepfacts.h"
#include "report/findings.h"
#include "report/progresstext.h"

namespace flowhand {

namespace {

QString words(const std::string& text) {
    return QString::fromStdString(text);
}

/// Three letters at most; 1 is Monday.
QString dayName(int day) {
    const QStringList names{QObject::tr("Mon"), QObject::tr("Tue"), QObject::tr("Wed"), QObject::tr("Thu"),
                            QObject::tr("Fri"), QObject::tr("Sat"), QObject::tr("Sun")};
    return names.at(day - 1);
}

const Flow* flowIn(const std::vector<AircraftFolder>& library, const FlowName& name) {
    for (const AircraftFolder& folder : library)
        if (folder.aircraft->folder == name.aircraftFolder)
            return folder.flow(name.flowId);
    return nullptr;
}

QString lastText(const FlowProgress& flow) {
    const ProgressPoint& last = flow.points.back();
    const QString when = words(wallTime(last.startedUnixMillis)).left(10);
    const int runs = static_cast<int>(flow.points.size());
    return runs == 1
               ? QObject::tr("1 run, on %1: %2 points").arg(when, shownPoints(last.milliPoints))
               : QObject::tr("%1 runs, the last on %2: %3 points").arg(runs).arg(when, shownPoints(last.milliPoints));
}

QString knownText(const FlowProgress& flow, double strength) {
    if (!flow.memory.isLastPassed)
        return QObject::tr("not passed");
    const int inTen = static_cast<int>(std::lround(10.0 * strength));
    return inTen == 0 ? QObject::tr("hardly 1 of 10 right") : QObject::tr("about %1 of 10 right").arg(inTen);
}

QString insteadText(const StepRate& step) {
    QStringList parts;
    for (const Instead& instead : step.instead)
        parts << (step.wrong == 1 ? textOf(instead.words)
                                  : QObject::tr("%1 (%2)").arg(textOf(instead.words)).arg(instead.runs));
    return parts.join(QStringLiteral("; "));
}

} // namespace

std::vector<PlannedRow> plannedRows(const Plan& plan) {
    std::vector<PlannedRow> rows;
    for (const PlannedFlow& flow : plan.today) {
        PlannedRow row;
        row.rowId = static_cast<int>(rows.size());
        row.title = words(flow.title);
        row.reason = textOf(flow.reason);
        rows.push_back(row);
    }
    return rows;
}

std::vector<AheadRow> aheadRows(const Plan& plan, const Moment& now) {
    const int most = std::max(*std::max_element(plan.ahead.begin(), plan.ahead.end()), 1);
    std::vector<AheadRow> rows;
    for (const int flows : plan.ahead) {
        AheadRow row;
        row.rowId = static_cast<int>(rows.size());
        const QDateTime day =
            QDateTime::fromMSecsSinceEpoch(now.unixMillis + now.aheadMillis, Qt::UTC).addDays(row.rowId);
        row.day = row.rowId == 0 ? QObject::tr("Today") : dayName(day.date().dayOfWeek());
        row.flows = flows;
        row.share = static_cast<double>(flows) / most;
        rows.push_back(row);
    }
    return rows;
}

std::vector<FlownFlowRow> flownFlowRows(const Progress& progress, const std::vector<AircraftFolder>& library,
                                        const Moment& now) {
    std::vector<FlownFlowRow> rows;
    for (const FlowProgress& flow : progress.flows) {
        FlownFlowRow row;
        row.rowId = static_cast<int>(rows.size());
        row.title = words(flow.title);
        row.last = lastText(flow);
        row.strength = flow.memory.isLastPassed ? flow.memory.strengthAt(now.unixMillis) : 0.0;
        row.known = knownText(flow, row.strength);
        if (const Flow* there = flowIn(library, flow.flow)) {
            const RibbonStretch stretch = stretchOf(*there);
            row.from = stretch.from;
            row.to = stretch.to;
        }
        rows.push_back(row);
    }
    return rows;
}

std::vector<StepRateRow> stepRateRows(const FlowProgress& flow) {
    std::vector<StepRateRow> rows;
    for (const StepRate& step : flow.steps) {
        StepRateRow row;
        row.rowId = static_cast<int>(rows.size());
        row.title = words(step.title);
        row.rate = textOf(rateText(step.wrong, step.runs));
        row.share = static_cast<double>(step.wrong) / step.runs;
        row.instead = insteadText(step);
        rows.push_back(row);
    }
    return rows;
}

QList<QPointF> scorePoints(const FlowProgress& flow) {
    QList<QPointF> points;
    for (const ProgressPoint& point : flow.points)
        points << QPointF(points.size() + 1, static_cast<double>(point.milliPoints) / 1000.0);
    return points;
}

QList<QPointF> pacePoints(const FlowProgress& flow) {
    QList<QPointF> points;
    int number = 0;
    for (const ProgressPoint& point : flow.points) {
        ++number;
        if (point.isComplete && point.pace > Duration{})
            points << QPointF(number, seconds(point.pace));
    }
    return points;
}

QList<QPointF> curvePoints(const FlowProgress& flow) {
    QList<QPointF> points;
    if (flow.curve)
        for (std::size_t number = 1; number <= flow.points.size() + 1; ++number)
            points << QPointF(static_cast<double>(number), flow.curve->secondsAt(static_cast<double>(number)));
    return points;
}

QList<int> passedRuns(const FlowProgress& flow) {
    QList<int> runs;
    for (std::size_t i = 0; i < flow.points.size(); ++i)
        if (flow.points[i].isPassed)
            runs << static_cast<int>(i) + 1;
    return runs;
}

} // namespace flowhand
