#include "paint/groundpicture.h"

#include <algorithm>
#include <cmath>

#include <QPainter>
#include <QPainterPath>

namespace flowhand {

namespace {

/// Of the picture's height, from its top: more is seen of what comes than of what is over.
constexpr double kMainWheelsAt = 0.74;
/// As high as this many aircraft are long, and never less than so many metres: a turn ahead is seen before it begins.
constexpr double kLengthsShown = 2.5;
constexpr double kLeastShown = 50.0;
/// Metres from one point of a line to the next; an arc of 30 m looks round.
constexpr double kLineGrain = 3.0;
/// Half a holding point's bar, m.
constexpr double kHalfBar = 11.0;
/// Blocks: the fuselage's width as a share of the span, and the depth of wing and tail.
constexpr double kFuselage = 0.11;
constexpr double kWing = 0.13;
constexpr double kTail = 0.36;

} // namespace

/// From the plan to the picture: the main wheels in their place, the nose up.
class GroundPicture::View {
public:
    View(const GroundScene& scene, const GroundPosition& position, double width, double height)
        : m_at(position.mainWheels), m_sin(std::sin(position.heading)), m_cos(std::cos(position.heading)),
          m_scale(height / std::max(kLeastShown, kLengthsShown * (scene.noseAhead + scene.tailBehind))),
          m_middle(width / 2, height * kMainWheelsAt), m_reach(std::hypot(width, height) / m_scale) {}

    [[nodiscard]] double scale() const { return m_scale; }
    [[nodiscard]] QPointF operator()(PlanPoint point) const {
        const double east = point.x - m_at.x;
        const double north = point.y - m_at.y;
        return local(east * m_sin + north * m_cos, east * m_cos - north * m_sin);
    }
    /// Metres forward of the main wheels and to their right.
    [[nodiscard]] QPointF local(double forward, double right) const {
        return m_middle + QPointF(right, -forward) * m_scale;
    }
    [[nodiscard]] bool isNear(PlanPoint point) const {
        return std::hypot(point.x - m_at.x, point.y - m_at.y) < m_reach;
    }

private:
    PlanPoint m_at;
    double m_sin, m_cos, m_scale;
    QPointF m_middle;
    double m_reach; ///< m; what is farther away is out of the picture
};

GroundPicture::GroundPicture(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &GroundPicture::colorsChanged, this, [this] {
        update();
    });
}

void GroundPicture::setGround(GroundPresenter* ground) {
    if (ground == m_ground)
        return;
    if (m_ground != nullptr)
        m_ground->disconnect(this);
    m_ground = ground;
    if (m_ground != nullptr)
        connect(m_ground, &GroundPresenter::changed, this, [this] {
            update();
        });
    Q_EMIT groundChanged();
    update();
}

void GroundPicture::paint(QPainter* painter) {
    if (m_ground == nullptr || m_ground->scene() == nullptr || !m_ground->position() || height() < 1)
        return;
    const View view(*m_ground->scene(), *m_ground->position(), width(), height());
    QPainterPath card;
    card.addRoundedRect(QRectF(0, 0, width(), height()), m_corner, m_corner);
    painter->setClipPath(card);
    paintRunway(*painter, view);
    paintLines(*painter, view);
    paintTrail(*painter, view);
    paintAircraft(*painter, view);
}

void GroundPicture::paintRunway(QPainter& painter, const View& view) const {
    const Runway& runway = m_ground->scene()->plan.runway;
    const double length = std::hypot(runway.to.x - runway.from.x, runway.to.y - runway.from.y);
    const PlanPoint aside{-(runway.to.y - runway.from.y) / length * runway.width / 2,
                          (runway.to.x - runway.from.x) / length * runway.width / 2};
    const auto corner = [&](PlanPoint end, double side) {
        return view({end.x + side * aside.x, end.y + side * aside.y});
    };
    painter.setPen(QPen(m_edge, 1.5));
    painter.setBrush(m_pavement);
    painter.drawPolygon(
        QPolygonF({corner(runway.from, 1), corner(runway.to, 1), corner(runway.to, -1), corner(runway.from, -1)}));
    painter.setBrush(Qt::NoBrush);
}

/// The line to follow last, over the others.
void GroundPicture::paintLines(QPainter& painter, const View& view) const {
    const auto paintRoute = [&](const Route& route, bool isFollowed) {
        QPolygonF run;
        painter.setPen(QPen(isFollowed ? m_line : m_edge, isFollowed ? 3.0 : 1.0));
        for (double at = 0.0; at <= route.line.length() + kLineGrain; at += kLineGrain) {
            const PlanPoint point = route.line.pointAt(std::min(at, route.line.length())).at;
            if (view.isNear(point))
                run << view(point);
            if (run.isEmpty() || (view.isNear(point) && at < route.line.length()))
                continue;
            painter.drawPolyline(run);
            run.clear();
        }
        painter.setPen(QPen(isFollowed ? m_ink : m_edge, isFollowed ? 3.0 : 1.0, Qt::SolidLine, Qt::FlatCap));
        for (const RouteMark& mark : route.marks) {
            if (!mark.isStop)
                continue;
            const LinePoint place = route.line.pointAt(mark.distance);
            const double east = kHalfBar * std::cos(place.heading);
            const double north = -kHalfBar * std::sin(place.heading);
            painter.drawLine(view({place.at.x - east, place.at.y - north}),
                             view({place.at.x + east, place.at.y + north}));
        }
    };
    const std::string& followed = m_ground->position()->route;
    for (const Route& route : m_ground->scene()->plan.routes)
        if (route.name != followed)
            paintRoute(route, false);
    if (const Route* route = m_ground->scene()->plan.route(followed))
        paintRoute(*route, true);
}

void GroundPicture::paintTrail(QPainter& painter, const View& view) const {
    const auto paintPath = [&](const std::vector<PlanPoint>& points) {
        QPolygonF path;
        for (const PlanPoint point : points)
            path << view(point);
        painter.drawPolyline(path);
    };
    painter.setPen(QPen(m_trail, 1.5));
    paintPath(m_ground->trail().left);
    paintPath(m_ground->trail().right);
    painter.setPen(QPen(m_ink, 2.0));
    paintPath(m_ground->trail().nose);
}

/// Plain blocks; the wheels on top, where they touch the ground.
void GroundPicture::paintAircraft(QPainter& painter, const View& view) const {
    const GroundScene& scene = *m_ground->scene();
    const double half = scene.wingspan / 2;
    const double width = kFuselage * scene.wingspan / 2;
    const double depth = kWing * scene.wingspan;
    const auto block = [&](double ahead, double behind, double side) {
        return QRectF(view.local(ahead, -side), view.local(behind, side));
    };
    QPainterPath shape;
    shape.setFillRule(Qt::WindingFill);
    shape.addRoundedRect(block(scene.noseAhead, -scene.tailBehind, width), width * view.scale(), width * view.scale());
    QPainterPath wing;
    wing.addRoundedRect(block(depth / 2, -depth / 2, half), 3, 3);
    QPainterPath tail;
    tail.addRoundedRect(block(-scene.tailBehind + depth * 0.8, -scene.tailBehind, kTail * half), 2, 2);
    QColor fill = m_body;
    fill.setAlphaF(0.6F); // the line is seen below it
    painter.setPen(QPen(m_ink, 1.5));
    painter.setBrush(fill);
    painter.drawPath(shape.united(wing).united(tail).simplified());
    painter.setPen(Qt::NoPen);
    painter.setBrush(m_ink);
    const double wheel = std::max(2.0, scene.track / 14 * view.scale());
    const auto paintWheel = [&](double forward, double right, double angle) {
        painter.save();
        painter.translate(view.local(forward, right));
        painter.rotate(angle);
        painter.drawRoundedRect(QRectF(-wheel / 2, -wheel * 1.2, wheel, wheel * 2.4), 1, 1);
        painter.restore();
    };
    constexpr double kDegreesPerRadian = 57.29577951308232;
    paintWheel(0.0, -scene.track / 2, 0.0);
    paintWheel(0.0, scene.track / 2, 0.0);
    paintWheel(scene.wheelbase, 0.0, m_ground->position()->nosewheel * kDegreesPerRadian);
}

} // namespace flowhand
