#pragma once

#include <QObject>
#include <QString>

/// The rows of the Library place's lists. Each `rowId` tells which row is the same one after a change.
namespace flowhand {

/// A flow, checklist, scenario or aircraft.
struct LibraryRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)
    Q_PROPERTY(QString detail MEMBER detail)
    Q_PROPERTY(bool own MEMBER own)
    Q_PROPERTY(bool broken MEMBER broken)
    Q_PROPERTY(double from MEMBER from)
    Q_PROPERTY(double to MEMBER to)

public:
    int rowId = 0;
    QString title;
    QString detail;      ///< "Twin jet, taxi out to line-up"
    bool own = false;    ///< the person's, to be changed
    bool broken = false; ///< cannot be read: `detail` says why
    double from = -1.0;  ///< on the phase ribbon; negative: nowhere
    double to = -1.0;

    bool operator==(const LibraryRow&) const = default;
};

/// Something that a text has wrong, or that the rules of checklist design advise.
struct TextFindingRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(int line MEMBER line)
    Q_PROPERTY(int column MEMBER column)
    Q_PROPERTY(int kindOf MEMBER kindOf)
    Q_PROPERTY(QString kind MEMBER kind)
    Q_PROPERTY(QString code MEMBER code)
    Q_PROPERTY(QString words MEMBER words)

public:
    int rowId = 0;
    int line = 0; ///< from 1; 0: the whole file
    int column = 0;
    int kindOf = 0; ///< Verdict::Kind
    QString kind;   ///< "error", "warning", "advice"
    QString code;   ///< what a file waives it by
    QString words;

    bool operator==(const TextFindingRow&) const = default;
};

} // namespace flowhand
