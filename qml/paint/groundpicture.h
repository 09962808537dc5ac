#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

#include "presenter/groundpresenter.h"

namespace flowhand {

/// The ground from above with the aircraft on it, to scale, its nose pointing up: the line to follow, the other lines,
/// the runway's edges, the holding points, and the paths of the nosewheel (one) and of the main wheels (two).
class GroundPicture : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(flowhand::GroundPresenter* ground READ ground WRITE setGround NOTIFY groundChanged)
    Q_PROPERTY(QColor pavement MEMBER m_pavement NOTIFY colorsChanged)
    Q_PROPERTY(QColor edge MEMBER m_edge NOTIFY colorsChanged)
    Q_PROPERTY(QColor line MEMBER m_line NOTIFY colorsChanged)
    Q_PROPERTY(QColor ink MEMBER m_ink NOTIFY colorsChanged)
    Q_PROPERTY(QColor trail MEMBER m_trail NOTIFY colorsChanged)
    Q_PROPERTY(QColor body MEMBER m_body NOTIFY colorsChanged)
    Q_PROPERTY(double corner MEMBER m_corner NOTIFY colorsChanged)

public:
    explicit GroundPicture(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

    [[nodiscard]] GroundPresenter* ground() const { return m_ground; }
    void setGround(GroundPresenter* ground);

Q_SIGNALS:
    void groundChanged();
    void colorsChanged();

private:
    class View;
    void paintRunway(QPainter& painter, const View& view) const;
    void paintLines(QPainter& painter, const View& view) const;
    void paintTrail(QPainter& painter, const View& view) const;
    void paintAircraft(QPainter& painter, const View& view) const;

    GroundPresenter* m_ground = nullptr;
    QColor m_pavement = Qt::darkGray;
    QColor m_edge = Qt::gray;
    QColor m_line = Qt::yellow;
    QColor m_ink = Qt::white;
    QColor m_trail = Qt::lightGray;
    QColor m_body = Qt::black;
    double m_corner = 0.0;
};

} // namespace flowhand
