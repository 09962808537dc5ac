#pragma once

#include <string>
#include <vector>

#include "base/error.h"

namespace flowhand {

/// Metres; x to the east, y to the north.
struct PlanPoint {
    double x = 0.0;
    double y = 0.0;
};

/// A place on a line. Heading in rad clockwise from north, curvature in 1/m, to the right positive.
struct LinePoint {
    PlanPoint at;
    double heading = 0.0;
    double curvature = 0.0;
};

/// A painted line: straights joined by arcs. Runs on straight before its start (negative distance) and past its end.
class GuideLine {
public:
    /// Corners at all points but the first and last, rounded with `radii`. Error `bad-line` when an arc does not fit.
    [[nodiscard]] static Result<GuideLine> build(const std::vector<PlanPoint>& points,
                                                 const std::vector<double>& radii);

    [[nodiscard]] double length() const { return m_length; }
    [[nodiscard]] LinePoint pointAt(double distance) const;
    /// The distance along the line nearest to `point`, looked for close to `near`.
    [[nodiscard]] double nearest(PlanPoint point, double near) const;
    /// The same, looked for along the whole line.
    [[nodiscard]] double nearest(PlanPoint point) const;
    /// Whether the line bends anywhere between the two distances.
    [[nodiscard]] bool bends(double from, double to) const;

private:
    struct Piece {
        double start = 0.0;
        double length = 0.0;
        LinePoint begin;
        double sine = 0.0; ///< of the heading where it begins
        double cosine = 1.0;
    };
    void add(double length, const LinePoint& begin);
    [[nodiscard]] double nearestOn(std::size_t piece, PlanPoint point) const;
    [[nodiscard]] double nearestBetween(PlanPoint point, double from, double to) const;

    std::vector<Piece> m_pieces;
    double m_length = 0.0;
};

/// A named place on a route. At a stop (holding point, stand) the nosewheel comes to stand on it.
struct RouteMark {
    std::string name;
    double distance = 0.0; ///< m along the route
    bool isStop = false;
};

/// The way an aircraft goes: one line from start to end.
struct Route {
    std::string name;
    GuideLine line;
    std::vector<RouteMark> marks; ///< by rising distance

    [[nodiscard]] const RouteMark* mark(const std::string& markName) const;
    /// The next stop not more than `passed` metres behind `distance`; the end of the line when there is none.
    [[nodiscard]] double nextStop(double distance, double passed) const;
};

struct Runway {
    std::string name;
    PlanPoint from;
    PlanPoint to;
    double width = 0.0;
    double clearDistance = 0.0; ///< m from the centreline: behind it an aircraft is clear of the runway

    /// m from the centreline, or past its ends.
    [[nodiscard]] double distanceTo(PlanPoint point) const;
};

/// An airport's ground, from its ground.toml. Immutable.
struct GroundPlan {
    std::string title;
    double elevation = 0.0;  ///< m
    double turnNotice = 0.0; ///< m before a bend at which it counts as ahead
    double stopPassed = 0.0; ///< m past a stop after which the next one counts
    Runway runway;
    std::vector<Route> routes;

    [[nodiscard]] const Route* route(const std::string& routeName) const;
};

[[nodiscard]] Result<GroundPlan> loadGroundPlan(const std::string& file);

} // namespace flowhand
