#pragma once

#include <QObject>
#include <QString>

/// The rows of the Review place's lists. Each `rowId` tells which row is the same one after a change.
namespace flowhand {

/// A stored run.
struct StoredRunRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString date MEMBER date)
    Q_PROPERTY(QString flow MEMBER flow)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(QString score MEMBER score)
    Q_PROPERTY(QString length MEMBER length)
    Q_PROPERTY(int verdict MEMBER verdict)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString marks MEMBER marks)
    Q_PROPERTY(QString tags MEMBER tags)
    Q_PROPERTY(bool reference MEMBER reference)

public:
    int rowId = 0; ///< the run's number
    QString date;
    QString flow;
    QString detail; ///< who, on what, in which aircraft
    QString score;  ///< "92.5"; empty: none
    QString length; ///< "2:14.0"
    int verdict = 0;
    QString word;  ///< "passed", "recovered", "damaged"
    QString marks; ///< "simulated input · 2 notes"
    QString tags;
    bool reference = false;

    bool operator==(const StoredRunRow&) const = default;
};

/// Something that cost points.
struct DeviationRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString keys MEMBER keys)
    Q_PROPERTY(QString points MEMBER points)
    Q_PROPERTY(QString time MEMBER time)
    Q_PROPERTY(QString sentence MEMBER sentence)
    Q_PROPERTY(int verdict MEMBER verdict)
    Q_PROPERTY(QString repair MEMBER repair)
    Q_PROPERTY(QString ruling MEMBER ruling)

public:
    int rowId = 0;
    QString keys; ///< one or two figures that lead to it
    QString points;
    QString time;
    QString sentence;
    int verdict = 0;
    QString repair; ///< "put right after 1.2 s"; empty: that cannot be said of it
    QString ruling; ///< the instructor's, and the cause

    bool operator==(const DeviationRow&) const = default;
};

/// A step of the run.
struct ReviewStepRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString who MEMBER who)
    Q_PROPERTY(int verdict MEMBER verdict)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString due MEMBER due)
    Q_PROPERTY(QString took MEMBER took)

public:
    int rowId = 0; ///< index in the flow
    QString title;
    QString who;
    int verdict = 0;
    QString word;
    QString due;
    QString took; ///< "2.3 s" from due to done; empty: not done

    bool operator==(const ReviewStepRow&) const = default;
};

/// One fact of a step: a time, what was asked of a signal and what it was, what was going on.
struct EvidenceRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(QString value MEMBER value)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(double time MEMBER time)

public:
    int rowId = 0;
    QString label;      ///< "First movement"
    QString value;      ///< "0:13.4", "84 %"
    QString detail;     ///< "1.4 s after due"
    double time = -1.0; ///< s; where it leads to; negative: nowhere

    bool operator==(const EvidenceRow&) const = default;
};

/// A lane of the timeline beside its picture: its name and what it says at the held time, at A and at B.
struct LaneRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(int kind MEMBER kind)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(QString value MEMBER value)
    Q_PROPERTY(QString marked MEMBER marked)
    Q_PROPERTY(int lines MEMBER lines)

public:
    int rowId = 0; ///< the signal, or less than 0
    int kind = 0;  ///< ReviewTimeline::Lane
    QString label;
    QString value;
    QString marked; ///< "A 12 · B 84 · Δ 72 %"
    int lines = 1;  ///< rows of bars

    bool operator==(const LaneRow&) const = default;
};

/// A signal that may have a lane.
struct SignalChoiceRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(bool shown MEMBER shown)

public:
    int rowId = 0; ///< signal
    QString label;
    bool shown = false;

    bool operator==(const SignalChoiceRow&) const = default;
};

/// Words kept beside a run.
struct ReviewNoteRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString what MEMBER what)
    Q_PROPERTY(QString where MEMBER where)
    Q_PROPERTY(QString words MEMBER words)
    Q_PROPERTY(double time MEMBER time)

public:
    int rowId = 0; ///< the note's number
    QString what;  ///< "The pilot's own account", "Ruling on 'Flap lever to 12': excused"
    QString where; ///< "0:12.3, 1.2 s into 'Flap lever to 12'"
    QString words;
    double time = -1.0; ///< s; where it leads to; negative: nowhere

    bool operator==(const ReviewNoteRow&) const = default;
};

/// A phase that the instructor may mark.
struct PhaseMarkRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(int mark MEMBER mark)
    Q_PROPERTY(QString meaning MEMBER meaning)

public:
    int rowId = 0; ///< index among the flow's phases
    QString title;
    int mark = 0; ///< 1..5; 0: none yet
    QString meaning;

    bool operator==(const PhaseMarkRow&) const = default;
};

/// A step beside the same step of another run.
struct ComparedStepRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString done MEMBER done)
    Q_PROPERTY(QString other MEMBER other)
    Q_PROPERTY(QString behind MEMBER behind)
    Q_PROPERTY(QString ofIt MEMBER ofIt)
    Q_PROPERTY(QString difference MEMBER difference)
    Q_PROPERTY(int step MEMBER step)

public:
    int rowId = 0;
    QString title;
    QString done;       ///< from the start, in this run
    QString other;      ///< in the other one
    QString behind;     ///< "+2.1"
    QString ofIt;       ///< what of it came with this step
    QString difference; ///< in words
    int step = -1;      ///< in this run

    bool operator==(const ComparedStepRow&) const = default;
};

/// A run that this one may be set beside.
struct OtherRunRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString label MEMBER label)

public:
    int rowId = 0; ///< the run's number
    QString label;

    bool operator==(const OtherRunRow&) const = default;
};

/// A sentence about the run as a whole.
struct RemarkRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString sentence MEMBER sentence)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(int verdict MEMBER verdict)
    Q_PROPERTY(double time MEMBER time)

public:
    int rowId = 0;
    QString sentence;
    QString detail;
    int verdict = 0;
    double time = -1.0; ///< s; where it leads to; negative: nowhere

    bool operator==(const RemarkRow&) const = default;
};

} // namespace flowhand
