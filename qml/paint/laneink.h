#pragma once

#include <QColor>
#include <QFont>
#include <QObject>
#include <QtQml/qqmlregistration.h>

namespace flowhand {

/// The colours and the type that a timeline's lanes are painted with; made once by the view, from the tokens.
class LaneInk : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QColor ground MEMBER ground NOTIFY changed)
    Q_PROPERTY(QColor text MEMBER text NOTIFY changed)
    Q_PROPERTY(QColor quiet MEMBER quiet NOTIFY changed)
    Q_PROPERTY(QColor line MEMBER line NOTIFY changed)
    Q_PROPERTY(QColor accent MEMBER accent NOTIFY changed)
    Q_PROPERTY(QColor done MEMBER done NOTIFY changed)
    Q_PROPERTY(QColor late MEMBER late NOTIFY changed)
    Q_PROPERTY(QColor wrong MEMBER wrong NOTIFY changed)
    Q_PROPERTY(QColor unsure MEMBER unsure NOTIFY changed)
    Q_PROPERTY(QColor info MEMBER info NOTIFY changed)
    Q_PROPERTY(QString family MEMBER family NOTIFY changed)
    Q_PROPERTY(int size MEMBER size NOTIFY changed)

public:
    using QObject::QObject;

    /// Of a Verdict::Kind, as the tokens have them.
    [[nodiscard]] QColor ofVerdict(int verdict) const;
    [[nodiscard]] QFont font() const;

    QColor ground = Qt::black;
    QColor text = Qt::white;
    QColor quiet = Qt::gray;
    QColor line = Qt::gray;
    QColor accent = Qt::yellow;
    QColor done = Qt::green;
    QColor late = Qt::yellow;
    QColor wrong = Qt::red;
    QColor unsure = Qt::magenta;
    QColor info = Qt::cyan;
    QString family;
    int size = 13; ///< pixels

Q_SIGNALS:
    void changed();
};

} // namespace flowhand
