#include "presenter/controlmodel.h"

#include <algorithm>

#include "presenter/keymap.h"

namespace flowhand {

void ControlModel::setAircraft(const Aircraft* aircraft) {
    beginResetModel();
    for (ControlState* control : m_controls)
        control->deleteLater();
    m_controls.clear();
    if (aircraft != nullptr)
        for (const CockpitControl& control : aircraft->controls)
            m_controls.push_back(
                new ControlState(*aircraft, control.signal, keysOf(aircraft->signals[control.signal].name), this));
    m_rows = m_controls;
    std::stable_partition(m_rows.begin(), m_rows.end(), [](const ControlState* control) {
        return !control->isFlat();
    });
    endResetModel();
    Q_EMIT countChanged();
}

void ControlModel::setValues(const std::vector<Value>& values) {
    for (ControlState* control : m_controls)
        if (indexOf(control->id()) < values.size())
            control->setValue(values[indexOf(control->id())]);
}

ControlState* ControlModel::find(SignalId id) const {
    return indexOf(id) < m_controls.size() ? m_controls[indexOf(id)] : nullptr;
}

int ControlModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : count();
}

QVariant ControlModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || role != ControlRole)
        return {};
    return QVariant::fromValue(m_rows[static_cast<std::size_t>(index.row())]);
}

QHash<int, QByteArray> ControlModel::roleNames() const {
    return {{ControlRole, "control"}};
}

} // namespace flowhand
