#include "presenter/timewindow.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

Duration scaled(Duration duration, double factor) {
    return Duration(std::llround(static_cast<double>(duration.count()) * factor));
}

} // namespace

void TimeWindow::begin(Time length) {
    m_length = std::max<Time>(length, kNarrowest);
    m_from = {};
    m_width = m_length;
}

Time TimeWindow::at(double share) const {
    return std::clamp<Time>(m_from + scaled(m_width, share), Time{}, m_length);
}

double TimeWindow::shareOf(Time time) const {
    return seconds(time - m_from) / seconds(m_width);
}

void TimeWindow::zoom(double factor, double share) {
    const Duration width = std::clamp<Duration>(scaled(m_width, 1.0 / factor), kNarrowest, m_length);
    place(m_from + scaled(m_width, share) - scaled(width, share), width);
}

void TimeWindow::pan(double share) {
    place(m_from + scaled(m_width, share), m_width);
}

void TimeWindow::show(Time from, Time to) {
    place(from, to - from);
}

void TimeWindow::reveal(Time time) {
    if (time < m_from || time > to())
        place(time - m_width / 2, m_width);
}

void TimeWindow::follow(Time time) {
    if (time < m_from || time > to())
        place(time - m_width / 10, m_width);
}

void TimeWindow::place(Time from, Duration width) {
    m_width = std::clamp<Duration>(width, kNarrowest, m_length);
    m_from = std::clamp<Time>(from, Time{}, m_length - m_width);
}

} // namespace flowhand
