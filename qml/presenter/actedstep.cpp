#include "presenter/actedstep.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include <QPointer>

#include "presenter/phrasetext.h"
#include "procedure/stepwriter.h"
#include "session/onscreenfacts.h"

namespace flowhand {

namespace {

/// Where a control stands before it is touched: off, in its first place, in its middle or at its foot.
Value restOf(const Signal& signal) {
    switch (signal.kind) {
    case SignalKind::OnOff:
        return Value::onOff(false);
    case SignalKind::Position:
        return Value::position(0);
    case SignalKind::Number:
        break;
    }
    return Value::number(signal.lowest < 0.0 && signal.highest > 0.0 ? 0.0 : signal.lowest);
}

} // namespace

ActedStep::ActedStep(LibraryDesk& desk, BenchMaker& rigs, QObject* parent)
    : QObject(parent), m_desk(desk), m_rigs(rigs), m_panel(
                                                       [this](SignalId control, Value value) {
                                                           move(control, value);
                                                       },
                                                       this) {}

ActedStep::~ActedStep() = default;

void ActedStep::open(const std::string& file) {
    using Loaded = Result<std::shared_ptr<const Aircraft>>;
    const std::string aircraftFile = (std::filesystem::path(file).parent_path() / "aircraft.toml").string();
    m_desk.ask<Loaded>(
        [aircraftFile](TextCheck&) -> Loaded {
            Problems problems;
            std::optional<Aircraft> aircraft = loadAircraft(aircraftFile, problems);
            if (!aircraft)
                return tl::unexpected(problems.firstError());
            return std::make_shared<const Aircraft>(std::move(*aircraft));
        },
        [this, self = QPointer(this)](Loaded aircraft) {
            if (!self)
                return;
            m_failure = aircraft ? QString() : QString::fromStdString(describe(aircraft.error()));
            show(aircraft ? *aircraft : nullptr);
        });
}

void ActedStep::close() {
    m_failure.clear();
    show(nullptr);
}

void ActedStep::show(std::shared_ptr<const Aircraft> aircraft) {
    m_bench.reset();
    m_movements.reset();
    m_rigFailure.clear();
    m_rig = {};
    m_panel.setAircraft(aircraft.get());
    m_aircraft = std::move(aircraft);
    m_control = kNoSignal;
    m_values.clear();
    if (m_aircraft) {
        for (const Signal& signal : m_aircraft->signals.all())
            m_values.push_back(restOf(signal));
        m_panel.setValues(m_values);
        readRig();
    }
    Q_EMIT changed();
}

void ActedStep::readRig() {
    const QString title = m_rigs.rigTitle();
    if (title.isEmpty())
        return;
    Result<std::unique_ptr<BenchHandle>> bench = m_rigs.openFor(m_aircraft, [this] {
        if (!m_isRefreshQueued.exchange(true))
            QMetaObject::invokeMethod(this, &ActedStep::refresh, Qt::QueuedConnection);
    });
    if (!bench) {
        m_rigFailure = tr("%1 is not read: %2").arg(title, QString::fromStdString(describe(bench.error())));
        return;
    }
    m_bench = std::move(*bench);
    m_movements.emplace(*m_aircraft, onScreenFacts(*m_aircraft), 1.0);
    refresh();
}

void ActedStep::refresh() {
    m_isRefreshQueued = false;
    if (!m_bench)
        return;
    const BenchSnapshot before = std::exchange(m_rig, m_bench->snapshot());
    for (std::size_t i = 0; i < m_rig.values.size(); ++i) {
        const Value value = m_rig.values[i];
        const Value last = i < before.values.size() ? before.values[i] : Value::unknown();
        if (value != last)
            takeRig(static_cast<SignalId>(i), last, value);
    }
    std::vector<ControlMovement> settled; // only where one begins is asked for
    m_movements->settle(m_rig.now, settled);
    if (m_rig.values != before.values || m_rig.devices != before.devices) {
        m_panel.setValues(m_values);
        Q_EMIT changed();
    }
}

/// A control that the rig has is moved there alone. Where it was found is no movement.
void ActedStep::takeRig(SignalId control, Value before, Value value) {
    m_panel.controls()->find(control)->setMovable(!value.isKnown());
    if (value.isKnown())
        m_values[indexOf(control)] = value;
    if (!value.isKnown() || !before.isKnown())
        m_movements->restAt(control, value);
    else if (m_movements->take(m_rig.now, control, value, Actor::Hand, kNoControl))
        m_control = control;
}

void ActedStep::move(SignalId control, Value value) {
    m_values[indexOf(control)] = value;
    m_control = control;
    m_panel.setValues(m_values);
    Q_EMIT changed();
}

QString ActedStep::rigTitle() const {
    const bool isThere = std::any_of(m_rig.devices.begin(), m_rig.devices.end(), [](const BenchDevice& device) {
        return device.isConnected;
    });
    return isThere ? textOf(m_rig.rigTitle) : QString();
}

QString ActedStep::title() const {
    if (!m_aircraft || m_control == kNoSignal || m_values[indexOf(m_control)] == Value::between())
        return {};
    const Signal& signal = m_aircraft->signals[m_control];
    return QString::fromStdString(stepTitle(signal, valueOf(m_control)));
}

Value ActedStep::valueOf(SignalId control) const {
    const bool isButton = m_aircraft->control(control).kind == ControlKind::Button;
    return isButton ? Value::onOff(true) : m_values[indexOf(control)];
}

QString ActedStep::stepFor(const QString& text) const {
    if (!m_aircraft || m_control == kNoSignal || m_values[indexOf(m_control)] == Value::between())
        return {};
    return QString::fromStdString(stepText(*m_aircraft, m_control, valueOf(m_control), text.toStdString()));
}

} // namespace flowhand
