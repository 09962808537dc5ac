#include "paint/lanepaint.h"

#include <algorithm>

namespace flowhand {

LanePaint::LanePaint(QQuickItem* parent) : QQuickPaintedItem(parent) {}

void LanePaint::setTimeline(ReviewTimeline* timeline) {
    if (timeline == m_timeline)
        return;
    if (m_timeline != nullptr)
        m_timeline->disconnect(this);
    m_timeline = timeline;
    if (m_timeline != nullptr)
        for (const auto signal : {&ReviewTimeline::runChanged, &ReviewTimeline::viewChanged,
                                  &ReviewTimeline::barsChanged, &ReviewTimeline::chosenStepChanged})
            connect(m_timeline, signal, this, [this] {
                update();
            });
    Q_EMIT timelineChanged();
    update();
}

void LanePaint::setInk(LaneInk* ink) {
    if (ink == m_ink)
        return;
    if (m_ink != nullptr)
        m_ink->disconnect(this);
    m_ink = ink;
    if (m_ink != nullptr)
        connect(m_ink, &LaneInk::changed, this, [this] {
            update();
        });
    Q_EMIT inkChanged();
    update();
}

void LanePaint::paint(QPainter* painter) {
    if (m_timeline != nullptr && !m_timeline->isEmpty() && m_ink != nullptr && width() >= 2 && height() >= 2)
        paintLane(*painter);
}

double LanePaint::xOf(Time time) const {
    // Far outside is as good as just outside, and keeps to what a painter can reckon with.
    return std::clamp(m_timeline->window().shareOf(time), -1.0, 2.0) * width();
}

bool LanePaint::isSeen(Time from, Time to) const {
    return to >= m_timeline->window().from() && from <= m_timeline->window().to();
}

} // namespace flowhand
