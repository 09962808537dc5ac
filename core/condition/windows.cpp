#include "condition/windows.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

void TruthWindow::open(const KeyWindow& window, Key now) {
    const Key from = window.entry(now);
    m_openedAt = now;
    m_hasMerged = !m_spans.isEmpty() && from <= m_spans.back().to + 1;
    if (m_hasMerged) {
        m_mergedEnd = m_spans.back().to;
        m_spans.back().to = kNever - 1;
    } else {
        m_spans.pushBack({from, kNever - 1});
    }
}

void TruthWindow::close(const KeyWindow& window, Key now) {
    Span& last = m_spans.back();
    if (now == m_openedAt) { // replaced before it lasted
        if (m_hasMerged)
            last.to = m_mergedEnd;
        else
            m_spans.popBack();
        return;
    }
    last.to = std::min(window.exit(now - 1), kNever - 1);
    if (last.from > last.to)
        m_spans.popBack();
}

bool TruthWindow::step(const KeyWindow& window, Key now, bool operand, bool isAlive) {
    if (isAlive) {
        if (m_deadSince < now)
            m_spans.clear();
        m_deadSince = kNever;
    } else if (m_deadSince == kNever) {
        m_deadSince = now;
    }
    m_now = now;
    const bool isTrue = operand && isAlive;
    if (isTrue != m_operand) {
        m_operand = isTrue;
        if (isTrue)
            open(window, now);
        else
            close(window, now);
    }
    while (!m_spans.isEmpty() && m_spans.front().to < now)
        m_spans.popFront();
    return isAlive && !m_spans.isEmpty() && m_spans.front().from <= now;
}

Key TruthWindow::next() const {
    if (m_deadSince != kNever || m_spans.isEmpty())
        return kNever;
    const Span& first = m_spans.front();
    if (first.from > m_now)
        return first.from;
    return first.to >= kNever - 1 ? kNever : first.to + 1;
}

bool TruthHeld::step(Key length, Key reference, Key now, bool operand) {
    if (operand && !m_operand && m_endedAt != now)
        m_since = now;
    if (!operand && m_operand)
        m_endedAt = now;
    m_operand = operand;
    const Key due = std::max(m_since, reference) + length;
    m_due = operand && now < due ? due : kNever;
    return operand && now >= due;
}

Kleene TruthRise::step(Key now, Kleene operand) {
    if (now != m_now) {
        m_before = m_operand;
        m_now = now;
    }
    m_operand = operand;
    const Kleene is = operand && !(isMoment(now) ? m_before : operand);
    const Kleene after = operand && !operand;
    m_next = is == after ? kNever : now + 1;
    return is;
}

void Range::add(double number) {
    if (std::isnan(number)) {
        m_hasUnknown = true;
        return;
    }
    m_lowest = std::min(m_lowest, number);
    m_highest = std::max(m_highest, number);
}

void StretchRange::step(Key now, double number, bool isInside) {
    if (m_endedAt < now)
        m_range.clear();
    if (isInside)
        m_endedAt = kNever;
    else if (m_endedAt == kNever)
        m_endedAt = now;
    if (isInside)
        m_range.add(number);
}

} // namespace flowhand
