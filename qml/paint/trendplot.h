#pragma once

#include <QColor>
#include <QList>
#include <QPointF>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace flowhand {

/// Runs from the first to the newest as dots, filled where the run passed, with a curve through them. From 0 at the
/// foot to `highest` at the top.
class TrendPlot : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QList<QPointF> points MEMBER m_points NOTIFY changed)
    Q_PROPERTY(QList<QPointF> curve MEMBER m_curve NOTIFY changed)
    Q_PROPERTY(QList<int> passed MEMBER m_passed NOTIFY changed)
    Q_PROPERTY(int runs MEMBER m_runs NOTIFY changed)
    Q_PROPERTY(double highest MEMBER m_highest NOTIFY changed)
    Q_PROPERTY(QColor ink MEMBER m_ink NOTIFY changed)
    Q_PROPERTY(QColor axis MEMBER m_axis NOTIFY changed)
    Q_PROPERTY(QColor ground MEMBER m_ground NOTIFY changed)

public:
    explicit TrendPlot(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

    /// A round number at or above all of them: 1, 2 or 5 times a power of ten.
    Q_INVOKABLE static double topOf(const QList<QPointF>& points);

Q_SIGNALS:
    void changed();

private:
    [[nodiscard]] QPointF placeOf(const QPointF& point) const;

    QList<QPointF> m_points, m_curve;
    QList<int> m_passed;
    int m_runs = 0;
    double m_highest = 100.0;
    QColor m_ink = Qt::black;
    QColor m_axis = Qt::gray;
    QColor m_ground = Qt::white;
};

} // namespace flowhand
