#include "presenter/benchtrace.h"

#include <utility>

namespace flowhand {

void BenchTrace::begin(double lowest, double highest, std::vector<Stretch> bands, std::vector<Mark> marks) {
    m_lowest = lowest;
    m_highest = highest > lowest ? highest : lowest + 1.0;
    m_bands = std::move(bands);
    m_marks = std::move(marks);
    m_points.clear();
    Q_EMIT changed();
}

void BenchTrace::add(const std::vector<BenchPoint>& points, Time now) {
    m_points.insert(m_points.end(), points.begin(), points.end());
    m_now = now;
    // The point before the stretch shown says where the line comes in.
    while (m_points.size() > 1 && m_points[1].time <= now - kShown)
        m_points.pop_front();
    Q_EMIT changed();
}

} // namespace flowhand
