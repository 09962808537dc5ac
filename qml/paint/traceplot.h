#pragma once

#include <QColor>
#include <QFont>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

#include "presenter/benchtrace.h"

namespace flowhand {

/// A control's last seconds as a line, newest at the right, and beside it how often it stood where. Every value of a
/// thousand a second is in the line: a column of pixels spans from the least to the greatest of its time.
class TracePlot : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(flowhand::BenchTrace* trace READ trace WRITE setTrace NOTIFY traceChanged)
    Q_PROPERTY(QColor ink MEMBER m_ink NOTIFY inkChanged)
    Q_PROPERTY(QColor axis MEMBER m_axis NOTIFY axisChanged)
    Q_PROPERTY(QColor band MEMBER m_band NOTIFY bandChanged)
    Q_PROPERTY(QFont font MEMBER m_font NOTIFY fontChanged)

public:
    explicit TracePlot(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

    [[nodiscard]] BenchTrace* trace() const { return m_trace; }
    void setTrace(BenchTrace* trace);

Q_SIGNALS:
    void traceChanged();
    void inkChanged();
    void axisChanged();
    void bandChanged();
    void fontChanged();

private:
    [[nodiscard]] double yOf(double value) const;
    void paintBands(QPainter& painter) const;
    void paintMarks(QPainter& painter, double plotWidth) const;
    void paintLine(QPainter& painter, double plotWidth) const;
    void paintShares(QPainter& painter, double from) const;

    BenchTrace* m_trace = nullptr;
    QColor m_ink = Qt::white;
    QColor m_axis = Qt::gray;
    QColor m_band = Qt::yellow;
    QFont m_font; ///< of the names of the marks
};

} // namespace flowhand
