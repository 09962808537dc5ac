#include "presenter/controlstate.h"

#include <algorithm>

#include "base/valuewords.h"
#include "presenter/phrasetext.h"

namespace flowhand {

QString shownValue(const Signal& signal, Value value) {
    QString text = textOf(valueWords(signal, value));
    if (signal.kind == SignalKind::Number && signal.unit.symbol == "deg")
        text.replace(QStringLiteral(" deg"), QStringLiteral("°"));
    return text.replace(QLatin1Char('-'), QChar(0x2212));
}

ControlState::ControlState(const Aircraft& aircraft, SignalId signal, QString keys, QObject* parent)
    : QObject(parent), m_control(aircraft.control(signal)), m_signal(aircraft.signals[signal]), m_id(signal),
      m_keys(std::move(keys)) {}

QString ControlState::name() const {
    return QString::fromStdString(m_signal.name);
}

QString ControlState::label() const {
    return QString::fromStdString(m_signal.label.empty() ? m_signal.name : m_signal.label);
}

QString ControlState::shortLabel() const {
    QString text = QString::fromStdString(m_control.panelLabel).toLower();
    if (text.isEmpty() || label().size() <= text.size())
        return label();
    text[0] = text[0].toUpper();
    return text;
}

ControlState::Kind ControlState::kind() const {
    switch (m_control.kind) {
    case ControlKind::Lever:
        return Lever;
    case ControlKind::GatedLever:
        return GatedLever;
    case ControlKind::Switch:
        return Switch;
    case ControlKind::Selector:
        return Selector;
    case ControlKind::Button:
        return Button;
    case ControlKind::Wheel:
        return Wheel;
    case ControlKind::Pedal:
        return Pedal;
    case ControlKind::Yoke:
        return Yoke;
    }
    return Switch;
}

QString ControlState::unit() const {
    return QString::fromStdString(m_signal.unit.symbol);
}

QStringList ControlState::positions() const {
    QStringList words;
    for (const std::string& position : m_signal.positions)
        words.append(QString::fromStdString(position));
    return words;
}

QString ControlState::longestPosition() const {
    QString longest;
    for (const QString& word : positions())
        if (word.size() > longest.size())
            longest = word;
    return longest;
}

bool ControlState::springs() const {
    return m_control.isContinuous && (m_control.kind == ControlKind::Wheel || m_control.kind == ControlKind::Pedal ||
                                      m_control.kind == ControlKind::Yoke);
}

double ControlState::restValue() const {
    return std::clamp(0.0, m_signal.lowest, m_signal.highest);
}

bool ControlState::isUpright() const {
    if (m_control.kind == ControlKind::Pedal)
        return m_signal.lowest >= 0.0;
    if (m_control.kind == ControlKind::Yoke)
        return m_signal.name.find("pitch") != std::string::npos;
    return m_control.kind != ControlKind::Wheel;
}

bool ControlState::isFlat() const {
    return m_control.kind == ControlKind::Switch || m_control.kind == ControlKind::Button ||
           (m_control.kind != ControlKind::Wheel && !isUpright());
}

QString ControlState::valueText() const {
    return shownValue(m_signal, m_value);
}

void ControlState::setMovable(bool isMovable) {
    if (m_isMovable == isMovable)
        return;
    m_isMovable = isMovable;
    Q_EMIT changed();
}

void ControlState::setValue(Value value) {
    if (m_value == value)
        return;
    m_value = value;
    Q_EMIT changed();
}

} // namespace flowhand
