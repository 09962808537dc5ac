#pragma once

#include <QList>
#include <QObject>
#include <QString>

#include "presenter/controlstate.h"

/// The rows of the views' lists. Each `rowId` tells which row is the same one after a change.
namespace flowhand {

/// A step, waiting, due or over.
struct StepRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString who MEMBER who)
    Q_PROPERTY(bool own MEMBER own)
    Q_PROPERTY(int verdict MEMBER verdict)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(QString why MEMBER why)
    Q_PROPERTY(QString dueAt MEMBER dueAt)
    Q_PROPERTY(QString doneAt MEMBER doneAt)
    Q_PROPERTY(int weight MEMBER weight)

public:
    int rowId = 0; ///< index in the flow
    QString title;
    QString who; ///< whose hand: "you", "partner"
    bool own = false;
    int verdict = 0; ///< Verdict::Kind
    QString word;
    QString detail; ///< the verdict in words, with units
    QString why;    ///< one line for the learner
    QString dueAt;
    QString doneAt;
    int weight = 0;

    bool operator==(const StepRow&) const = default;
};

/// Where a control has to go.
struct TargetRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(flowhand::ControlState* control MEMBER control)
    Q_PROPERTY(bool wanted MEMBER wanted)
    Q_PROPERTY(double low MEMBER low)
    Q_PROPERTY(double high MEMBER high)
    Q_PROPERTY(QList<int> places MEMBER places)
    Q_PROPERTY(QString wantedText MEMBER wantedText)
    Q_PROPERTY(bool there MEMBER there)

public:
    int rowId = 0; ///< signal
    ControlState* control = nullptr;
    bool wanted = false; ///< false: only its movement counts
    double low = 0.0;    ///< of numbers, in the control's unit
    double high = 0.0;
    QList<int> places; ///< of positions and on/off: all that will do
    QString wantedText;
    bool there = false;

    bool operator==(const TargetRow&) const = default;
};

/// A loss of the score.
struct LedgerRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString points MEMBER points)
    Q_PROPERTY(QString what MEMBER what)
    Q_PROPERTY(QString sentence MEMBER sentence)
    Q_PROPERTY(int verdict MEMBER verdict)

public:
    int rowId = 0;
    QString points; ///< "−20"
    QString what;
    QString sentence;
    int verdict = 0; ///< Verdict::Kind

    bool operator==(const LedgerRow&) const = default;
};

/// A flow to choose.
struct FlowRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString summary MEMBER summary)
    Q_PROPERTY(QString aircraft MEMBER aircraft)
    Q_PROPERTY(QString stretch MEMBER stretch)
    Q_PROPERTY(double from MEMBER from)
    Q_PROPERTY(double to MEMBER to)
    Q_PROPERTY(double height MEMBER height)
    Q_PROPERTY(int steps MEMBER steps)
    Q_PROPERTY(QString target MEMBER target)
    Q_PROPERTY(bool demonstrated MEMBER demonstrated)

public:
    int rowId = 0; ///< index among the flows of all aircraft
    QString title;
    QString summary;
    QString aircraft;
    QString stretch;   ///< "Taxi out to Line up"
    double from = 0.0; ///< 0..1 along the ribbon
    double to = 0.0;
    double height = 0.0; ///< 0..1, of the ribbon at its middle
    int steps = 0;
    QString target;
    bool demonstrated = false; ///< scripted hands can fly it

    bool operator==(const FlowRow&) const = default;
};

/// A phase of the flight on the ribbon.
struct PhaseRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(double from MEMBER from)
    Q_PROPERTY(double to MEMBER to)
    Q_PROPERTY(double height MEMBER height)

public:
    int rowId = 0;
    QString title;
    double from = 0.0; ///< 0..1 along the ribbon
    double to = 0.0;
    double height = 0.0; ///< 0..1, at its end

    bool operator==(const PhaseRow&) const = default;
};

/// What must never be, and was.
struct GuardRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(bool open MEMBER open)

public:
    int rowId = 0; ///< index in the flow
    QString title;
    bool open = false; ///< broken now

    bool operator==(const GuardRow&) const = default;
};

/// A motion quantity.
struct MotionRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(QString value MEMBER value)
    Q_PROPERTY(QString unit MEMBER unit)

public:
    int rowId = 0; ///< signal
    QString label;
    QString value; ///< "82"
    QString unit;

    bool operator==(const MotionRow&) const = default;
};

/// Words the pilot should know of.
struct NoticeRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString words MEMBER words)

public:
    int rowId = 0;
    QString words;

    bool operator==(const NoticeRow&) const = default;
};

/// A word and what stands for it: "Wind", "calm".
struct FactRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(QString value MEMBER value)

public:
    int rowId = 0;
    QString label;
    QString value;

    bool operator==(const FactRow&) const = default;
};

/// One of several, of which one is picked.
struct PickRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(bool chosen MEMBER chosen)

public:
    int rowId = 0;
    QString title;
    QString detail; ///< what comes with it; often empty
    bool chosen = false;

    bool operator==(const PickRow&) const = default;
};

/// The flows or the scenarios of an aircraft, to choose among.
struct GroupRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)

public:
    int rowId = 0;
    QString title;

    bool operator==(const GroupRow&) const = default;
};

/// A flow of a flight that is over.
struct PartRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString score MEMBER score)
    Q_PROPERTY(int verdict MEMBER verdict)
    Q_PROPERTY(bool chosen MEMBER chosen)

public:
    int rowId = 0;
    QString title;
    QString score;   ///< "92"; empty: not scored
    int verdict = 0; ///< Verdict::Kind
    bool chosen = false;

    bool operator==(const PartRow&) const = default;
};

/// A key and what it does.
struct KeyRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString key MEMBER key)
    Q_PROPERTY(QString action MEMBER action)

public:
    int rowId = 0;
    QString key;
    QString action;

    bool operator==(const KeyRow&) const = default;
};

} // namespace flowhand
