#pragma once

#include <QObject>
#include <QString>

/// The rows of the Bench place's lists. Each `rowId` tells which row is the same one after a change.
namespace flowhand {

/// A control of the cockpit: how it is wired, how far its proof has come, and where it stands now.
struct BenchControlRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString label MEMBER label)
    Q_PROPERTY(QString inputs MEMBER inputs)
    Q_PROPERTY(QString valueText MEMBER valueText)
    Q_PROPERTY(double share MEMBER share)
    Q_PROPERTY(bool stirring MEMBER stirring)
    Q_PROPERTY(int verdict MEMBER verdict)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString detail MEMBER detail)

public:
    int rowId = 0; ///< signal
    QString label;
    QString inputs; ///< "quadrant: X"; empty: not wired
    QString valueText;
    double share = -1.0; ///< 0..1 of its range; negative: it has none, or is unknown
    bool stirring = false;
    int verdict = 0; ///< Verdict::Kind
    QString word;    ///< "seen working"
    QString detail;  ///< its date, and what has become of it

    bool operator==(const BenchControlRow&) const = default;
};

/// A way of wiring that has to be asked for.
struct OfferRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString text MEMBER text)

public:
    int rowId = 0;
    QString text; ///< the hardware that it is for

    bool operator==(const OfferRow&) const = default;
};

/// One thing that was measured of a control.
struct FindingRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(int verdict MEMBER verdict)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString text MEMBER text)
    Q_PROPERTY(QString reason MEMBER reason)
    Q_PROPERTY(QString remedy MEMBER remedy)

public:
    int rowId = 0;
    int verdict = 0; ///< Verdict::Kind
    QString word;
    QString text;
    QString reason;
    QString remedy;

    bool operator==(const FindingRow&) const = default;
};

/// One step and the controls that it needs.
struct CoverageRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString flow MEMBER flow)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString needs MEMBER needs)
    Q_PROPERTY(int verdict MEMBER verdict)
    Q_PROPERTY(QString word MEMBER word)
    Q_PROPERTY(QString why MEMBER why)

public:
    int rowId = 0;
    QString flow;
    QString title;
    QString needs; ///< labels of its controls
    int verdict = 0;
    QString word;
    QString why; ///< why it cannot be confirmed; empty when it can

    bool operator==(const CoverageRow&) const = default;
};

} // namespace flowhand
