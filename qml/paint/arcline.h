#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace flowhand {

/// A stretch of a circle round the item's middle, as wide as fits. Angles in degrees clockwise from the top.
class ArcLine : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(double from MEMBER m_from NOTIFY fromChanged)
    Q_PROPERTY(double to MEMBER m_to NOTIFY toChanged)
    Q_PROPERTY(QColor color MEMBER m_color NOTIFY colorChanged)
    Q_PROPERTY(double thickness MEMBER m_thickness NOTIFY thicknessChanged)
    Q_PROPERTY(double radius MEMBER m_radius NOTIFY radiusChanged)

public:
    explicit ArcLine(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

Q_SIGNALS:
    void fromChanged();
    void toChanged();
    void colorChanged();
    void thicknessChanged();
    void radiusChanged();

private:
    double m_from = 0.0;
    double m_to = 0.0;
    QColor m_color = Qt::gray;
    double m_thickness = 4.0;
    double m_radius = 10.0;
};

} // namespace flowhand
