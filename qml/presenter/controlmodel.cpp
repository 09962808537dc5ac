#include "presenter/controlmodel.h"

#include <algorithm>

#include "presenter/keymap.h"
#include "procedure/replybutton.h"

namespace flowhand {

namespace {

/// By SignalId of the controls: what the flow asks for or watches, and what is worked all the time from its start on.
/// The other controls of its start are put there by themselves.
std::vector<bool> usedBy(const Flow& flow, const Aircraft& aircraft) {
    std::vector<bool> used(aircraft.controls.size(), false);
    const auto use = [&](const std::vector<SignalId>& ids) {
        for (const SignalId id : ids)
            if (aircraft.isControl(id))
                used[indexOf(id)] = true;
    };
    for (const StartValue& start : flow.start)
        if (aircraft.isControl(start.signal) && aircraft.control(start.signal).isContinuous)
            use({start.signal});
    for (const Step& step : flow.steps) {
        use(step.controls);
        for (const std::optional<PlacedCondition>* placed : {&step.done, &step.when})
            if (*placed)
                use((*placed)->condition.signals());
        if (const std::optional<SignalId> button = replyButton(aircraft); button && step.kind == StepKind::Say)
            use({*button});
    }
    for (const Guard& guard : flow.guards)
        use(guard.never.condition.signals());
    return used;
}

} // namespace

void ControlModel::setAircraft(const Aircraft* aircraft, const Flow* flow) {
    beginResetModel();
    for (ControlState* control : m_controls)
        control->deleteLater();
    m_controls.clear();
    if (aircraft != nullptr)
        for (const CockpitControl& control : aircraft->controls)
            m_controls.push_back(
                new ControlState(*aircraft, control.signal, keysOf(aircraft->signals[control.signal].name), this));
    m_rows = m_controls;
    if (aircraft != nullptr && flow != nullptr)
        std::erase_if(m_rows, [used = usedBy(*flow, *aircraft)](const ControlState* control) {
            return !used[indexOf(control->id())];
        });
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
