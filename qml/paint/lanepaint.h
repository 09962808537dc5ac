#pragma once

#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

#include "paint/laneink.h"
#include "presenter/reviewtimeline.h"

namespace flowhand {

/// What the pictures of a timeline have in common: the run, the stretch of it that lies across the item, and the ink.
/// Paints anew when one of them changes; never for the held time, which is a line of its own above.
class LanePaint : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("What the pictures of a timeline have in common")
    Q_PROPERTY(flowhand::ReviewTimeline* timeline READ timeline WRITE setTimeline NOTIFY timelineChanged)
    Q_PROPERTY(flowhand::LaneInk* ink READ ink WRITE setInk NOTIFY inkChanged)

public:
    explicit LanePaint(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) final;

    [[nodiscard]] ReviewTimeline* timeline() const { return m_timeline; }
    void setTimeline(ReviewTimeline* timeline);
    [[nodiscard]] LaneInk* ink() const { return m_ink; }
    void setInk(LaneInk* ink);

Q_SIGNALS:
    void timelineChanged();
    void inkChanged();

protected:
    /// There are a run and ink, and room.
    virtual void paintLane(QPainter& painter) = 0;
    [[nodiscard]] double xOf(Time time) const;
    /// Whether anything of [from, to] lies in the view.
    [[nodiscard]] bool isSeen(Time from, Time to) const;

private:
    ReviewTimeline* m_timeline = nullptr;
    LaneInk* m_ink = nullptr;
};

} // namespace flowhand
