#pragma once

#include <QObject>
#include <QString>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

#include "base/signal.h"
#include "procedure/aircraftfile.h"

namespace flowhand {

/// One cockpit control as a view draws it: how it is built, and where it stands. `value` is a number in `unit`, the
/// index of a position (-1: between two), or 1 and 0 for on and off. GUI thread.
class ControlState : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the presenter of a run")
    Q_PROPERTY(int signalId READ signalId CONSTANT)
    Q_PROPERTY(QString name READ name CONSTANT)
    Q_PROPERTY(QString label READ label CONSTANT)
    Q_PROPERTY(QString shortLabel READ shortLabel CONSTANT)
    Q_PROPERTY(Kind kind READ kind CONSTANT)
    Q_PROPERTY(QString unit READ unit CONSTANT)
    Q_PROPERTY(double lowest READ lowest CONSTANT)
    Q_PROPERTY(double highest READ highest CONSTANT)
    Q_PROPERTY(QStringList positions READ positions CONSTANT)
    Q_PROPERTY(QString longestPosition READ longestPosition CONSTANT)
    Q_PROPERTY(bool springs READ springs CONSTANT)
    Q_PROPERTY(bool upright READ isUpright CONSTANT)
    Q_PROPERTY(bool flat READ isFlat CONSTANT)
    Q_PROPERTY(QString keys READ keys CONSTANT)
    Q_PROPERTY(bool movable READ isMovable NOTIFY changed)
    Q_PROPERTY(bool known READ isKnown NOTIFY changed)
    Q_PROPERTY(double value READ value NOTIFY changed)
    Q_PROPERTY(QString valueText READ valueText NOTIFY changed)

public:
    enum Kind { Lever, GatedLever, Switch, Selector, Button, Wheel, Pedal, Yoke };
    Q_ENUM(Kind)

    ControlState(const Aircraft& aircraft, SignalId signal, QString keys, QObject* parent);

    [[nodiscard]] int signalId() const { return static_cast<int>(m_id); }
    [[nodiscard]] QString name() const;
    [[nodiscard]] QString label() const;
    /// The label, or what is written on the panel where that is shorter.
    [[nodiscard]] QString shortLabel() const;
    [[nodiscard]] Kind kind() const;
    [[nodiscard]] QString unit() const;
    [[nodiscard]] double lowest() const { return m_signal.lowest; }
    [[nodiscard]] double highest() const { return m_signal.highest; }
    [[nodiscard]] QStringList positions() const;
    [[nodiscard]] QString longestPosition() const;
    /// Goes back to its middle (or to its rest end) when let go: on screen only.
    [[nodiscard]] bool springs() const;
    [[nodiscard]] double restValue() const;
    /// Moves up and down on screen, rather than from side to side.
    [[nodiscard]] bool isUpright() const;
    /// Drawn no higher than a line or two of text.
    [[nodiscard]] bool isFlat() const;
    [[nodiscard]] QString keys() const { return m_keys; }
    [[nodiscard]] bool isKnown() const { return m_value.isKnown(); }
    [[nodiscard]] double value() const { return m_value.isKnown() ? m_value.number() : 0.0; }
    [[nodiscard]] QString valueText() const;

    [[nodiscard]] const Signal& signal() const { return m_signal; }
    [[nodiscard]] SignalId id() const { return m_id; }
    [[nodiscard]] Value raw() const { return m_value; }
    void setValue(Value value);
    /// By mouse and keys: not what hardware or scripted hands move.
    [[nodiscard]] bool isMovable() const { return m_isMovable; }
    void setMovable(bool isMovable);

Q_SIGNALS:
    void changed();

private:
    // Of its own: a view may still show it when the aircraft is another one.
    const CockpitControl m_control;
    const Signal m_signal;
    SignalId m_id;
    QString m_keys;
    Value m_value;
    bool m_isMovable = true;
};

/// A value as a person reads it, with the signs a screen has room for: "4.9°", "82 kt".
[[nodiscard]] QString shownValue(const Signal& signal, Value value);

} // namespace flowhand
