#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace flowhand {

/// The symbol of a verdict: told apart by its shape alone.
class VerdictSymbol : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    /// A Verdict::Kind.
    Q_PROPERTY(int verdict MEMBER m_verdict NOTIFY verdictChanged)
    Q_PROPERTY(QColor color MEMBER m_color NOTIFY colorChanged)
    /// What it lies on, for what is cut out of filled shapes.
    Q_PROPERTY(QColor ground MEMBER m_ground NOTIFY groundChanged)

public:
    explicit VerdictSymbol(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

Q_SIGNALS:
    void verdictChanged();
    void colorChanged();
    void groundChanged();

private:
    int m_verdict = 0;
    QColor m_color = Qt::gray;
    QColor m_ground = Qt::white;
};

} // namespace flowhand
