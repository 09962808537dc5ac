#include "condition/timers.h"

namespace flowhand {

void Timers::put(std::uint32_t at, Timer timer) {
    m_heap[at] = timer;
    m_places[timer.watch] = at;
}

/// Puts `timer` where it belongs, from the free place `at` up or down. Equal ones go by watch, so that the order in
/// which they are served does not depend on the past.
void Timers::settleAt(std::uint32_t at, Timer timer) {
    const auto isBefore = [](const Timer& a, const Timer& b) {
        return a.due < b.due || (a.due == b.due && a.watch < b.watch);
    };
    while (at > 0 && isBefore(timer, m_heap[(at - 1) / 2])) {
        put(at, m_heap[(at - 1) / 2]);
        at = (at - 1) / 2;
    }
    for (;;) {
        std::uint32_t child = 2 * at + 1;
        if (child >= m_heap.size())
            break;
        if (child + 1 < m_heap.size() && isBefore(m_heap[child + 1], m_heap[child]))
            ++child;
        if (!isBefore(m_heap[child], timer))
            break;
        put(at, m_heap[child]);
        at = child;
    }
    put(at, timer);
}

void Timers::erase(std::uint32_t at) {
    m_places[m_heap[at].watch] = kNowhere;
    const Timer last = m_heap.back();
    m_heap.pop_back();
    if (at < m_heap.size())
        settleAt(at, last);
}

void Timers::set(std::uint32_t watch, Key due) {
    if (watch >= m_places.size())
        m_places.resize(watch + 1, kNowhere);
    const std::uint32_t at = m_places[watch];
    if (at == kNowhere && due == kNever)
        return;
    if (due == kNever) {
        erase(at);
    } else if (at == kNowhere) {
        m_heap.emplace_back();
        settleAt(static_cast<std::uint32_t>(m_heap.size() - 1), {due, watch});
    } else if (m_heap[at].due != due) {
        settleAt(at, {due, watch});
    }
}

std::uint32_t Timers::take() {
    const std::uint32_t watch = m_heap.front().watch;
    erase(0);
    return watch;
}

} // namespace flowhand
