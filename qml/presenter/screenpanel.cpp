#include "presenter/screenpanel.h"

#include "presenter/rows.h"

namespace flowhand {

namespace {

/// One move a frame of a 60 Hz screen.
constexpr int kMoveMillis = 16;

/// What raising a control is called.
QString raiseWord(const ControlState& control) {
    if (control.signal().kind != SignalKind::Number)
        return QObject::tr("next");
    if (control.kind() == ControlState::Yoke && control.isUpright())
        return QObject::tr("pull");
    return control.isUpright() ? QObject::tr("more") : QObject::tr("right");
}

QString lowerWord(const ControlState& control) {
    if (control.signal().kind != SignalKind::Number)
        return QObject::tr("back");
    if (control.kind() == ControlState::Yoke && control.isUpright())
        return QObject::tr("push");
    return control.isUpright() ? QObject::tr("less") : QObject::tr("left");
}

QString actionWord(KeyAction action, const ControlState& control) {
    switch (action) {
    case KeyAction::Raise:
        return raiseWord(control);
    case KeyAction::Lower:
        return lowerWord(control);
    case KeyAction::Toggle:
        return QObject::tr("to and fro");
    case KeyAction::Press:
        return QObject::tr("press");
    }
    return {};
}

} // namespace

ScreenPanel::ScreenPanel(ScreenHands::Move move, QObject* parent)
    : QObject(parent), m_controls(this), m_keys(KeyRow::staticMetaObject, this), m_hands(m_controls, std::move(move)) {
    m_timer.setInterval(kMoveMillis);
    connect(&m_timer, &QTimer::timeout, this, [this] {
        m_hands.advance(static_cast<double>(m_clock.restart()) / 1000.0);
        if (!m_hands.isMoving())
            m_timer.stop();
    });
}

void ScreenPanel::setAircraft(const Aircraft* aircraft, const Flow* flow) {
    m_timer.stop();
    m_hands.reset();
    m_controls.setAircraft(aircraft, flow);
    listKeys();
}

void ScreenPanel::setValues(const std::vector<Value>& values) {
    m_controls.setValues(values);
    m_hands.settle();
}

void ScreenPanel::listKeys() {
    std::vector<KeyRow> rows;
    for (const KeyBinding& binding : keyBindings()) {
        QStringList labels;
        const ControlState* first = nullptr;
        for (const ControlState* control : m_controls.shown())
            for (const std::string& name : binding.controls)
                if (control->signal().name == name) {
                    labels.append(control->label());
                    first = first != nullptr ? first : control;
                }
        if (first == nullptr)
            continue;
        KeyRow row;
        row.rowId = static_cast<int>(rows.size());
        row.key = binding.shown;
        row.action = tr("%1: %2").arg(labels.join(QStringLiteral(" + ")), actionWord(binding.action, *first));
        rows.push_back(row);
    }
    m_keys.setRows(rows);
}

bool ScreenPanel::pressKey(int key) {
    const bool isOurs = m_hands.press(key);
    keepMoving();
    return isOurs;
}

bool ScreenPanel::releaseKey(int key) {
    const bool isOurs = m_hands.release(key);
    keepMoving();
    return isOurs;
}

void ScreenPanel::put(ControlState* control, double value) {
    m_hands.put(*control, value);
}

void ScreenPanel::letGo(ControlState* control) {
    m_hands.letGo(*control);
    keepMoving();
}

void ScreenPanel::nudge(ControlState* control, int direction) {
    m_hands.nudge(*control, direction);
}

void ScreenPanel::keepMoving() {
    if (!m_hands.isMoving() || m_timer.isActive())
        return;
    m_clock.start();
    m_timer.start();
}

} // namespace flowhand
