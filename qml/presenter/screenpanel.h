#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>
#include <QtQml/qqmlregistration.h>

#include "presenter/controlmodel.h"
#include "presenter/rowmodel.h"
#include "presenter/screenhands.h"

namespace flowhand {

/// The cockpit's controls on screen: drawn from the run's values, moved by drags and keys. GUI thread.
class ScreenPanel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Fly place's presenter")
    Q_PROPERTY(flowhand::ControlModel* controls READ controls CONSTANT)
    Q_PROPERTY(flowhand::RowModel* keys READ keys CONSTANT)

public:
    /// `move` is called for each change a hand makes.
    ScreenPanel(ScreenHands::Move move, QObject* parent);

    /// The aircraft must outlive what is shown.
    void setAircraft(const Aircraft* aircraft, const Flow* flow = nullptr);
    void setValues(const std::vector<Value>& values);

    [[nodiscard]] ControlModel* controls() { return &m_controls; }
    [[nodiscard]] RowModel* keys() { return &m_keys; }

    /// False when the key means nothing here.
    Q_INVOKABLE bool pressKey(int key);
    Q_INVOKABLE bool releaseKey(int key);
    Q_INVOKABLE void put(flowhand::ControlState* control, double value);
    Q_INVOKABLE void letGo(flowhand::ControlState* control);
    /// One step, for the arrow keys on a focused control.
    Q_INVOKABLE void nudge(flowhand::ControlState* control, int direction);

private:
    void listKeys();
    void keepMoving();

    ControlModel m_controls;
    RowModel m_keys;
    ScreenHands m_hands;
    QTimer m_timer;
    QElapsedTimer m_clock;
};

} // namespace flowhand
