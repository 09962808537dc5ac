#include "aircraft/groundplan.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "aircraft/atmosphere.h"

namespace flowhand {

namespace {

/// How far along the line the nearest place may have moved since it was last looked for: more than the fastest aircraft
/// makes between two looks.
constexpr double kSearchReach = 40.0; // m

double headingOf(PlanPoint from, PlanPoint to) {
    return std::atan2(to.x - from.x, to.y - from.y);
}

double between(PlanPoint a, PlanPoint b) {
    return std::hypot(b.x - a.x, b.y - a.y);
}

double turned(double angle) {
    return std::remainder(angle, 2.0 * 180.0 * kRadiansPerDegree);
}

PlanPoint moved(PlanPoint from, double heading, double distance) {
    return {from.x + distance * std::sin(heading), from.y + distance * std::cos(heading)};
}

} // namespace

Result<GuideLine> GuideLine::build(const std::vector<PlanPoint>& points, const std::vector<double>& radii) {
    if (points.size() < 2 || radii.size() != points.size() - 2)
        return failure("bad-line", "a line needs at least two points and one radius for each corner between them");
    GuideLine line;
    PlanPoint at = points.front();
    for (std::size_t i = 1; i < points.size(); ++i) {
        const double heading = headingOf(points[i - 1], points[i]);
        double cut = 0.0;
        double turn = 0.0;
        if (i + 1 < points.size()) {
            turn = turned(headingOf(points[i], points[i + 1]) - heading);
            cut = radii[i - 1] * std::tan(std::fabs(turn) / 2.0);
        }
        const double straight = between(at, points[i]) - cut;
        const bool isStraightOn = std::fabs(turned(headingOf(at, points[i]) - heading)) < 1e-6;
        if (straight < 0.0 || !isStraightOn || !std::isfinite(cut))
            return failure("bad-line", "the arc at corner " + std::to_string(i) +
                                           " does not fit between its neighbours; make its radius smaller");
        line.add(straight, {at, heading, 0.0});
        at = moved(at, heading, straight);
        if (turn == 0.0)
            continue;
        const double curvature = std::copysign(1.0 / radii[i - 1], turn);
        line.add(std::fabs(turn) * radii[i - 1], {at, heading, curvature});
        at = moved(points[i], heading + turn, cut);
    }
    return line;
}

void GuideLine::add(double length, const LinePoint& begin) {
    m_pieces.push_back({m_length, length, begin, std::sin(begin.heading), std::cos(begin.heading)});
    m_length += length;
}

LinePoint GuideLine::pointAt(double distance) const {
    std::size_t index = 0;
    while (index + 1 < m_pieces.size() && distance >= m_pieces[index + 1].start)
        ++index;
    const Piece& piece = m_pieces[index];
    const double along = distance - piece.start;
    LinePoint result = piece.begin;
    if (piece.begin.curvature == 0.0) {
        result.at = {piece.begin.at.x + along * piece.sine, piece.begin.at.y + along * piece.cosine};
        return result;
    }
    const double turn = along * piece.begin.curvature;
    result.heading = piece.begin.heading + turn;
    const double chord = 2.0 / piece.begin.curvature * std::sin(turn / 2.0);
    result.at = moved(piece.begin.at, piece.begin.heading + turn / 2.0, chord);
    return result;
}

double GuideLine::nearestOn(std::size_t index, PlanPoint point) const {
    const Piece& piece = m_pieces[index];
    const double dx = point.x - piece.begin.at.x;
    const double dy = point.y - piece.begin.at.y;
    const double ahead = dx * piece.sine + dy * piece.cosine;
    double along = ahead;
    if (piece.begin.curvature != 0.0) {
        const double right = dx * piece.cosine - dy * piece.sine;
        const double radius = 1.0 / piece.begin.curvature;
        const double sign = radius > 0.0 ? 1.0 : -1.0;
        along = std::fabs(radius) * std::atan2(ahead, (radius - right) * sign);
    }
    const double lowest = index == 0 ? -std::numeric_limits<double>::infinity() : 0.0;
    const double highest = index + 1 == m_pieces.size() ? std::numeric_limits<double>::infinity() : piece.length;
    return piece.start + std::clamp(along, lowest, highest);
}

double GuideLine::nearestBetween(PlanPoint point, double from, double to) const {
    double best = std::clamp(from, 0.0, m_length);
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < m_pieces.size(); ++i) {
        const bool isBefore = i + 1 < m_pieces.size() && m_pieces[i + 1].start < from;
        const bool isAfter = i > 0 && m_pieces[i].start > to;
        if (isBefore || isAfter)
            continue;
        const double distance = nearestOn(i, point);
        const double away = between(pointAt(distance).at, point);
        if (away < least) {
            least = away;
            best = distance;
        }
    }
    return best;
}

double GuideLine::nearest(PlanPoint point, double near) const {
    return nearestBetween(point, near - kSearchReach, near + kSearchReach);
}

double GuideLine::nearest(PlanPoint point) const {
    return nearestBetween(point, 0.0, m_length);
}

bool GuideLine::bends(double from, double to) const {
    return std::any_of(m_pieces.begin(), m_pieces.end(), [&](const Piece& piece) {
        return piece.begin.curvature != 0.0 && piece.start < to && piece.start + piece.length > from;
    });
}

const RouteMark* Route::mark(const std::string& markName) const {
    for (const RouteMark& each : marks)
        if (each.name == markName)
            return &each;
    return nullptr;
}

double Route::nextStop(double distance, double passed) const {
    for (const RouteMark& each : marks)
        if (each.isStop && each.distance >= distance - passed)
            return each.distance;
    return line.length();
}

double Runway::distanceTo(PlanPoint point) const {
    const double length = between(from, to);
    const double heading = headingOf(from, to);
    const double dx = point.x - from.x;
    const double dy = point.y - from.y;
    const double along = dx * std::sin(heading) + dy * std::cos(heading);
    const double across = dx * std::cos(heading) - dy * std::sin(heading);
    return std::max({std::fabs(across), -along, along - length});
}

const Route* GroundPlan::route(const std::string& routeName) const {
    for (const Route& each : routes)
        if (each.name == routeName)
            return &each;
    return nullptr;
}

} // namespace flowhand
