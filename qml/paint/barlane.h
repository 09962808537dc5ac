#pragma once

#include "paint/lanepaint.h"

namespace flowhand {

/// A lane of bars with their names: steps, words, broken guards, holds; moments as dots: notes.
class BarLane : public flowhand::LanePaint { // its whole name, by which the QML tools find it
    Q_OBJECT
    QML_ELEMENT
    /// A ReviewTimeline::Lane other than SignalLane.
    Q_PROPERTY(int kind MEMBER m_kind NOTIFY kindChanged)

public:
    explicit BarLane(QQuickItem* parent = nullptr);

    /// The step whose bar lies there; -1: none.
    Q_INVOKABLE int stepAt(double x, double y) const;

Q_SIGNALS:
    void kindChanged();

protected:
    void paintLane(QPainter& painter) override;

private:
    [[nodiscard]] double lineHeight() const;
    [[nodiscard]] QRectF rectOf(const LaneBar& bar) const;
    void paintBar(QPainter& painter, const LaneBar& bar) const;
    void paintName(QPainter& painter, const LaneBar& bar, double until) const;

    int m_kind = 0;
};

} // namespace flowhand
