#include "condition/highest.h"

#include <algorithm>

namespace flowhand {

Robust HighestInWindow::lowestLeftFrom(Key from) {
    while (!m_lefts.isEmpty() && m_lefts.front().last < from)
        m_lefts.popFront();
    return m_lefts.isEmpty() ? kSurely : m_lefts.front().value;
}

void HighestInWindow::enter(const KeyWindow& window, Key exit, const Robust& value) {
    if (window.isEndless) { // nothing leaves, so only the highest counts
        if (!m_candidates.isEmpty() && m_candidates.front().value.relative >= value.relative)
            return;
        m_candidates.clear();
    }
    while (!m_candidates.isEmpty() && m_candidates.back().value.relative <= value.relative)
        m_candidates.popBack();
    m_candidates.pushBack({exit, value});
}

void HighestInWindow::followLeft(const KeyWindow& window, Key now, const Robust& left) {
    if (left == m_left.value)
        return;
    if (m_left.from < now) {
        const Robust closed = m_left.value;
        while (m_candidates.size() > 1 && m_candidates[1].value.relative >= closed.relative)
            m_candidates.popFront();
        if (!m_candidates.isEmpty())
            m_candidates.front().value = least(m_candidates.front().value, closed);
        if (window.shortest > 0) {
            while (!m_lefts.isEmpty() && m_lefts.back().value.relative >= closed.relative)
                m_lefts.popBack();
            m_lefts.pushBack({m_left.from, now - 1, closed});
            static_cast<void>(lowestLeftFrom(m_coming.isEmpty() ? m_operand.from : m_coming.front().last));
        }
    }
    m_left = {now, left};
}

void HighestInWindow::follow(const KeyWindow& window, Key now, const Robust& operand) {
    if (!(operand == m_operand.value)) {
        if (m_operand.from < now && !(m_operand.value == kSurelyNot))
            m_coming.pushBack({m_operand.from, now - 1, m_operand.value});
        m_operand = {now, operand};
    }
    while (!m_coming.isEmpty() && window.entry(m_coming.front().from) <= now) {
        const Past& past = m_coming.front();
        enter(window, window.exit(past.last), least(past.value, lowestLeftFrom(past.last)));
        m_coming.popFront();
    }
}

Robust HighestInWindow::step(const KeyWindow& window, Key now, const Robust& operand, const Robust& left) {
    m_now = now;
    followLeft(window, now, left);
    follow(window, now, least(operand, left));
    while (!m_candidates.isEmpty() && m_candidates.front().exit < now)
        m_candidates.popFront();
    Robust highest = m_candidates.isEmpty() ? kSurelyNot : m_candidates.front().value;
    if (window.entry(m_operand.from) <= now)
        highest = greatest(highest, m_operand.value);
    return least(highest, left);
}

Key HighestInWindow::next(const KeyWindow& window) const {
    Key next = kNever;
    if (!m_candidates.isEmpty() && m_candidates.front().exit != kNever)
        next = m_candidates.front().exit + 1;
    if (!m_coming.isEmpty())
        next = std::min(next, window.entry(m_coming.front().from));
    const Key entry = window.entry(m_operand.from);
    return entry > m_now ? std::min(next, entry) : next;
}

RobustPair HighestPair::step(const KeyWindow& window, Key now, const RobustPair& operand, const RobustPair& left) {
    if (!m_isApart && !(operand.low == operand.high && left.low == left.high)) {
        m_high = m_low;
        m_isApart = true;
    }
    const Robust low = m_low.step(window, now, operand.low, left.low);
    return {low, m_isApart ? m_high.step(window, now, operand.high, left.high) : low};
}

Key HighestPair::next(const KeyWindow& window) const {
    return m_isApart ? std::min(m_low.next(window), m_high.next(window)) : m_low.next(window);
}

} // namespace flowhand
