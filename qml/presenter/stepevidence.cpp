// The evidence of one step or guard: reviewfacts.h.

#include <algorithm>

#include "presenter/phrasetext.h"
#include "presenter/reviewfacts.h"
#include "presenter/signaltext.h"
#include "presenter/stepfacts.h"
#include "session/headerwords.h"

namespace flowhand {

namespace {

QString secondsAfter(Time time, const std::optional<Time>& due) {
    if (!due || time < *due)
        return due ? QObject::tr("%1 s before due").arg(seconds(*due - time), 0, 'f', 1) : QString();
    return QObject::tr("%1 s after due").arg(seconds(time - *due), 0, 'f', 1);
}

class EvidenceWriter {
public:
    EvidenceWriter(const Timeline& timeline, std::size_t step)
        : m_timeline(timeline), m_run(timeline.run()), m_step(step), m_times(timeline.steps()[step]) {}

    std::vector<EvidenceRow> write() {
        writeTimes();
        writeLimits();
        writeContext();
        return std::move(m_rows);
    }

private:
    void add(const QString& label, const QString& value, const QString& detail = {}, double time = -1.0) {
        EvidenceRow row;
        row.rowId = static_cast<int>(m_rows.size());
        row.label = label;
        row.value = value;
        row.detail = detail;
        row.time = time;
        m_rows.push_back(row);
    }

    void addTime(const QString& label, const std::optional<Time>& time, const QString& detail = {}) {
        if (time)
            add(label, QString::fromStdString(clockText(*time)), detail, seconds(*time));
    }

    [[nodiscard]] const Signal& signal(SignalId id) const { return m_run.aircraft.signals[id]; }

    void writeTimes() {
        addTime(QObject::tr("Cue sounded"), m_times.cueBegan);
        addTime(QObject::tr("Cue ended"), m_times.cueEnded);
        addTime(QObject::tr("Due"), m_times.due);
        if (m_times.wrongReach)
            addTime(QObject::tr("Wrong reach"), m_times.wrongReach->time,
                    QObject::tr("%1 first").arg(labelOf(signal(m_times.wrongReach->signal))));
        if (m_times.firstMovement)
            addTime(QObject::tr("First movement"), m_times.firstMovement,
                    secondsAfter(*m_times.firstMovement, m_times.due));
        if (m_times.hesitation)
            addTime(QObject::tr("Hesitation"), m_times.hesitation->from,
                    QObject::tr("stood still for %1 s").arg(seconds(m_times.hesitation->length), 0, 'f', 1));
        if (m_times.overshoot)
            addTime(QObject::tr("Overshoot"), m_times.overshoot->time, overshootText(*m_times.overshoot));
        if (m_times.done)
            addTime(QObject::tr("Done"), m_times.done, secondsAfter(*m_times.done, m_times.due));
        if (!m_times.done)
            addTime(QObject::tr("Given up"), m_times.ended);
    }

    [[nodiscard]] QString overshootText(const Overshoot& overshoot) const {
        const Signal& moved = signal(overshoot.signal);
        if (moved.kind == SignalKind::Position)
            return overshoot.amount > 1.5 ? QObject::tr("%1 gates too far").arg(overshoot.amount)
                                          : QObject::tr("a gate too far");
        return QObject::tr("%1 too far").arg(shownValue(moved, Value::number(overshoot.amount)));
    }

    void writeLimits() {
        const std::vector<Value> values =
            m_timeline.valuesAt(m_times.done ? *m_times.done : m_times.ended.value_or(m_timeline.length()));
        for (const SignalLimits& limits : m_timeline.limits(m_step)) {
            const Signal& judged = signal(limits.signal);
            const bool isBand = !limits.band.empty();
            const QString wanted = rangesText(judged, isBand ? limits.band : limits.allowed);
            add(labelOf(judged), shownValue(judged, values[indexOf(limits.signal)]),
                isBand ? QObject::tr("best in the middle of %1").arg(wanted) : QObject::tr("wanted: %1").arg(wanted));
        }
    }

    [[nodiscard]] static QString rangesText(const Signal& judged, const std::vector<ValueRange>& ranges) {
        QStringList texts;
        for (const ValueRange& range : ranges)
            texts << (judged.kind == SignalKind::Number ? stretchText(judged, range.lowest, range.highest)
                                                        : shownValue(judged, Value::number(range.lowest)));
        return texts.join(QObject::tr(" or "));
    }

    void writeContext() {
        QStringList context;
        if (const Phrase at = contextText(m_times.context); !at.isEmpty())
            context << textOf(at);
        if (!m_run.header.help.empty())
            context << QObject::tr("help: %1").arg(textOf(helpWords(m_run.header.help)));
        if (m_run.header.setup.timeScale != 1.0)
            context << QObject::tr("at %1 of the pace").arg(m_run.header.setup.timeScale);
        if (!context.isEmpty())
            add(QObject::tr("Meanwhile"), context.join(QStringLiteral(", ")));
    }

    const Timeline& m_timeline;
    const ReviewedRun& m_run;
    std::size_t m_step;
    const StepTimes& m_times;
    std::vector<EvidenceRow> m_rows;
};

} // namespace

std::vector<EvidenceRow> guardEvidenceRows(const Timeline& timeline, std::size_t guard) {
    std::vector<EvidenceRow> rows;
    for (const Episode& episode : timeline.guards()[guard]) {
        EvidenceRow row;
        row.rowId = static_cast<int>(rows.size());
        row.label = QObject::tr("Broken");
        row.value = QString::fromStdString(clockText(episode.from));
        row.detail = episode.to ? QObject::tr("for %1 s").arg(seconds(*episode.to - episode.from), 0, 'f', 1)
                                : QObject::tr("to the end");
        row.time = seconds(episode.from);
        rows.push_back(row);
    }
    const ReviewedRun& run = timeline.run();
    for (const SignalId signal : run.flow.guards[guard].never.condition.signals()) {
        if (timeline.guards()[guard].empty())
            break;
        EvidenceRow row;
        row.rowId = static_cast<int>(rows.size());
        row.label = labelOf(run.aircraft.signals[signal]);
        row.value =
            shownValue(run.aircraft.signals[signal], timeline.signal(signal).at(timeline.guards()[guard].front().from));
        row.detail = QObject::tr("when it was broken first");
        rows.push_back(row);
    }
    return rows;
}

std::vector<EvidenceRow> evidenceRows(const Timeline& timeline, std::size_t step) {
    return EvidenceWriter(timeline, step).write();
}

} // namespace flowhand
