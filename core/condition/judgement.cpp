#include "condition/judgement.h"

#include <algorithm>

#include "condition/margins.h"

namespace flowhand {

namespace {

class Judge {
public:
    Judge(const Condition& condition, const Trace& trace, Time end)
        : m_condition(condition), m_trace(trace), m_end(end), m_values(trace.signals.size()), m_monitor(trace.signals),
          m_margins(condition, trace.rows.front().time) {
        m_monitor.add(condition);
    }

    Judgement run() {
        const Time start = m_trace.rows.front().time;
        std::size_t row = 0;
        for (Time now = start; now < m_end;) {
            if (row < m_trace.rows.size() && m_trace.rows[row].time == now)
                take(m_trace.rows[row++], now);
            look(now, now == start);
            const Time nextRow = row < m_trace.rows.size() ? m_trace.rows[row].time : kForever;
            const Time nextMargin = m_margins.next() == kNever ? kForever : timeOf(m_margins.next());
            now = std::min({nextRow, nextMargin, m_monitor.nextTimer()});
        }
        close();
        return std::move(m_result);
    }

private:
    void take(const Trace::Row& row, Time now) {
        for (const auto& [signal, value] : row.changes) {
            m_values[indexOf(signal)] = value;
            m_monitor.set(signal, value);
        }
        m_margins.step(keyAt(now), m_values);
    }

    /// At `now` and just after it.
    void look(Time now, bool isFirst) {
        m_changes.clear();
        m_monitor.settle(now, m_changes);
        Truth moment = m_truth;
        Truth after = m_truth;
        for (const TruthChange& change : m_changes) {
            if (!change.isAfter)
                moment = change.truth;
            if (!change.isPoint)
                after = change.truth;
        }
        if (isFirst || after != m_truth)
            m_result.segments.push_back({now, now, after});
        if (moment != after)
            m_result.points.push_back({now, moment});
        m_truth = after;
        lookAtMargin(now);
    }

    void lookAtMargin(Time now) {
        const RobustPair robust = m_margins.at(keyAt(now) + 1);
        const Kleene truth = m_truth == Truth::Unknown ? Kleene::Unknown : kleene(m_truth == Truth::True);
        const Margin margin = marginOf(m_condition.program(), robust, truth);
        std::vector<Judgement::MarginSegment>& segments = m_result.margins;
        const bool isSame = !segments.empty() && !m_hasGap && segments.back().margin.value == margin.value &&
                            segments.back().margin.signal == margin.signal;
        if (isSame && m_truth != Truth::Unknown)
            return;
        if (!segments.empty() && !m_hasGap)
            segments.back().to = now;
        m_hasGap = m_truth == Truth::Unknown;
        if (!m_hasGap)
            segments.push_back({now, now, margin});
    }

    void close() {
        for (std::size_t i = 0; i < m_result.segments.size(); ++i)
            m_result.segments[i].to = i + 1 < m_result.segments.size() ? m_result.segments[i + 1].from : m_end;
        if (!m_result.margins.empty() && !m_hasGap)
            m_result.margins.back().to = m_end;
    }

    const Condition& m_condition;
    const Trace& m_trace;
    Time m_end;
    std::vector<Value> m_values;
    Monitor m_monitor;
    Margins m_margins;
    std::vector<TruthChange> m_changes;
    Judgement m_result;
    Truth m_truth = Truth::Unknown;
    bool m_hasGap = true; // no margin just now
};

} // namespace

Judgement judge(const Condition& condition, const Trace& trace, Time end) {
    return Judge(condition, trace, end).run();
}

} // namespace flowhand
