#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace flowhand {

/// The phase ribbon's line, or a stretch of it: from 0 (gate) to 1 (gate) across the item, rising where the aircraft
/// flies.
class RibbonLine : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(double from MEMBER m_from NOTIFY fromChanged)
    Q_PROPERTY(double to MEMBER m_to NOTIFY toChanged)
    Q_PROPERTY(QColor color MEMBER m_color NOTIFY colorChanged)
    Q_PROPERTY(double thickness MEMBER m_thickness NOTIFY thicknessChanged)

public:
    explicit RibbonLine(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

    /// The y of the line at `across` 0..1 in an item `height` high that keeps `inset` free above and below.
    Q_INVOKABLE static double yAt(double across, double height, double inset);

Q_SIGNALS:
    void fromChanged();
    void toChanged();
    void colorChanged();
    void thicknessChanged();

private:
    double m_from = 0.0;
    double m_to = 1.0;
    QColor m_color = Qt::gray;
    double m_thickness = 2.0;
};

} // namespace flowhand
