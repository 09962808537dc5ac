#include "presenter/heldground.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace flowhand {

namespace {

/// Places looked back at: the way shown, at the slowest taxi speed, in grains of the recorded position.
constexpr std::size_t kMostPlaces = 1000;
constexpr double kRadiansPerDegree = 0.017453292519943295;

class RecordedGround {
public:
    explicit RecordedGround(const Timeline& timeline)
        : m_east(track(timeline, "position_east")), m_north(track(timeline, "position_north")),
          m_heading(track(timeline, "heading")), m_nosewheel(track(timeline, "nosewheel_angle")),
          m_onGround(track(timeline, "on_ground")), m_offset(track(timeline, "centreline_offset")) {}

    [[nodiscard]] bool isRecorded() const { return m_east != nullptr && m_north != nullptr && m_heading != nullptr; }

    [[nodiscard]] std::optional<GroundPosition> at(Time time) const {
        const Value east = m_east->at(time);
        const Value north = m_north->at(time);
        if (!east.isKnown() || !north.isKnown())
            return std::nullopt;
        GroundPosition position;
        position.mainWheels = {east.number(), north.number()};
        position.heading = number(m_heading, time) * kRadiansPerDegree;
        position.nosewheel = number(m_nosewheel, time) * kRadiansPerDegree;
        position.isOnGround = number(m_onGround, time) == 1.0;
        return position;
    }

    /// The last ones at which it came to be elsewhere, rising, `time` itself last.
    [[nodiscard]] std::vector<Time> timesUntil(Time time) const {
        std::vector<Time> times{time};
        for (const SignalTrack* track : {m_east, m_north}) {
            const std::size_t end = track->countUntil(time);
            for (std::size_t i = end - std::min(end, kMostPlaces); i < end; ++i)
                times.push_back(track->timeOf(i));
        }
        std::sort(times.begin(), times.end());
        times.erase(std::unique(times.begin(), times.end()), times.end());
        if (times.size() > kMostPlaces)
            times.erase(times.begin(), times.end() - static_cast<std::ptrdiff_t>(kMostPlaces));
        return times;
    }

    [[nodiscard]] double offset(Time time) const { return number(m_offset, time); }

private:
    static const SignalTrack* track(const Timeline& timeline, const char* name) {
        const std::optional<SignalId> signal = timeline.run().aircraft.signals.find(name);
        return signal ? &timeline.signal(*signal) : nullptr;
    }
    static double number(const SignalTrack* track, Time time) {
        const Value value = track != nullptr ? track->at(time) : Value::unknown();
        return value.isKnown() ? value.number() : 0.0;
    }

    const SignalTrack *m_east, *m_north, *m_heading, *m_nosewheel, *m_onGround, *m_offset;
};

/// m to the right of the line.
double offsetFrom(const GuideLine& line, PlanPoint nose) {
    const LinePoint near = line.pointAt(line.nearest(nose));
    return (nose.x - near.at.x) * std::cos(near.heading) - (nose.y - near.at.y) * std::sin(near.heading);
}

std::string followedRoute(const GroundPlan& plan, PlanPoint nose, double offset) {
    std::string best;
    double least = std::numeric_limits<double>::infinity();
    for (const Route& route : plan.routes) {
        const double apart = std::fabs(offsetFrom(route.line, nose) - offset);
        if (apart < least) {
            least = apart;
            best = route.name;
        }
    }
    return best;
}

} // namespace

std::vector<GroundPosition> groundWay(const Timeline& timeline, const GroundScene& scene, Time time) {
    const RecordedGround ground(timeline);
    std::vector<GroundPosition> way;
    if (!ground.isRecorded())
        return way;
    for (const Time at : ground.timesUntil(time)) {
        std::optional<GroundPosition> position = ground.at(at);
        if (position)
            way.push_back(std::move(*position));
        else
            way.clear(); // a gap: from where it came is not known
    }
    if (way.empty())
        return way;
    GroundPosition& now = way.back();
    const PlanPoint nose{now.mainWheels.x + scene.wheelbase * std::sin(now.heading),
                         now.mainWheels.y + scene.wheelbase * std::cos(now.heading)};
    now.route = followedRoute(scene.plan, nose, ground.offset(time));
    return way;
}

} // namespace flowhand
