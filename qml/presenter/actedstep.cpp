#include "presenter/actedstep.h"

#include <filesystem>

#include <QPointer>

#include "procedure/stepwriter.h"

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

ActedStep::ActedStep(LibraryDesk& desk, QObject* parent)
    : QObject(parent), m_desk(desk), m_panel(
                                         [this](SignalId control, Value value) {
                                             move(control, value);
                                         },
                                         this) {}

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
    m_panel.setAircraft(aircraft.get());
    m_aircraft = std::move(aircraft);
    m_control = kNoSignal;
    m_values.clear();
    if (m_aircraft) {
        for (const Signal& signal : m_aircraft->signals.all())
            m_values.push_back(restOf(signal));
        m_panel.setValues(m_values);
    }
    Q_EMIT changed();
}

void ActedStep::move(SignalId control, Value value) {
    m_values[indexOf(control)] = value;
    m_control = control;
    m_panel.setValues(m_values);
    Q_EMIT changed();
}

QString ActedStep::title() const {
    if (!m_aircraft || m_control == kNoSignal)
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
