#pragma once

#include <QObject>
#include <QString>

/// The rows of the Progress place's lists. Each `rowId` tells which row is the same one after a change.
namespace flowhand {

/// A flow of today's plan.
struct PlannedRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString reason MEMBER reason)

public:
    int rowId = 0;
    QString title;
    QString reason; ///< one plain sentence

    bool operator==(const PlannedRow&) const = default;
};

/// A day of the week ahead.
struct AheadRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString day MEMBER day)
    Q_PROPERTY(int flows MEMBER flows)
    Q_PROPERTY(double share MEMBER share)

public:
    int rowId = 0;      ///< days from today
    QString day;        ///< "Today", "Tue"
    int flows = 0;      ///< that fall due
    double share = 0.0; ///< of the week's fullest day, 0..1

    bool operator==(const AheadRow&) const = default;
};

/// A flow that was flown.
struct FlownFlowRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString last MEMBER last)
    Q_PROPERTY(QString known MEMBER known)
    Q_PROPERTY(double strength MEMBER strength)
    Q_PROPERTY(double from MEMBER from)
    Q_PROPERTY(double to MEMBER to)

public:
    int rowId = 0;
    QString title;
    QString last;          ///< "8 runs, the last on 2024-06-07: 92.5 points"
    QString known;         ///< "about 4 of 10 would go right"
    double strength = 0.0; ///< 0..1
    double from = -1.0;    ///< on the phase ribbon; negative: it is no longer there
    double to = -1.0;

    bool operator==(const FlownFlowRow&) const = default;
};

/// A step that goes wrong.
struct StepRateRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString rate MEMBER rate)
    Q_PROPERTY(double share MEMBER share)
    Q_PROPERTY(QString instead MEMBER instead)

public:
    int rowId = 0;
    QString title;
    QString rate;       ///< "3 of 8"
    double share = 0.0; ///< 0..1
    QString instead;    ///< "late (2); Spoiler lever at 40 % instead of: Flap lever to 12"

    bool operator==(const StepRateRow&) const = default;
};

} // namespace flowhand
