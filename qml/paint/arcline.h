#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace flowhand {

/// A stretch of a circle round the item's middle, as wide as fits. Angles in degrees clockwise from the top.
class ArcLine : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(double from MEMBER m_from NOTIFY changed)
    Q_PROPERTY(double to MEMBER m_to NOTIFY changed)
    Q_PROPERTY(QColor color MEMBER m_color NOTIFY changed)
    Q_PROPERTY(double thickness MEMBER m_thickness NOTIFY changed)
    Q_PROPERTY(double radius MEMBER m_radius NOTIFY changed)

public:
    explicit ArcLine(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

Q_SIGNALS:
    void changed();

private:
    double m_from = 0.0;
    double m_to = 0.0;
    QColor m_color = Qt::gray;
    double m_thickness = 4.0;
    double m_radius = 10.0;
};

} // namespace flowhand
