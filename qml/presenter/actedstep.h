#pragma once

#include <atomic>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/benchmaker.h"
#include "presenter/librarydesk.h"
#include "presenter/screenpanel.h"
#include "session/movement.h"

namespace flowhand {

/// A step that is acted out instead of being written, on the on-screen controls or on the pilot's rig: the control that
/// was moved last, and where it stands. The rig is read while the controls are shown. GUI thread.
class ActedStep : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(bool open READ isOpen NOTIFY changed)
    Q_PROPERTY(flowhand::ScreenPanel* panel READ panel CONSTANT)
    Q_PROPERTY(QString title READ title NOTIFY changed)
    Q_PROPERTY(QString failure READ failure NOTIFY changed)
    Q_PROPERTY(QString rigTitle READ rigTitle NOTIFY changed)
    Q_PROPERTY(QString rigFailure READ rigFailure NOTIFY changed)

public:
    /// `desk` and `rigs` must outlive it.
    ActedStep(LibraryDesk& desk, BenchMaker& rigs, QObject* parent = nullptr);
    ~ActedStep() override;

    /// Shows the controls of the aircraft whose flow `file` is.
    void open(const std::string& file);
    Q_INVOKABLE void close();
    /// The step for the file whose text this is; empty: nothing was moved yet.
    Q_INVOKABLE QString stepFor(const QString& text) const;

    [[nodiscard]] bool isOpen() const { return m_aircraft != nullptr; }
    [[nodiscard]] ScreenPanel* panel() { return &m_panel; }
    /// "Flap lever to 12"; empty: nothing was moved yet, or it is between two gates.
    [[nodiscard]] QString title() const;
    /// Why the aircraft cannot be shown.
    [[nodiscard]] QString failure() const { return m_failure; }
    /// Of the rig that is read, once one of its devices is there; empty: the on-screen controls alone.
    [[nodiscard]] QString rigTitle() const;
    /// Why there is a rig, and it is not read; empty: it is, or there is none.
    [[nodiscard]] QString rigFailure() const { return m_rigFailure; }
    /// Takes what the rig says now. Comes by itself.
    void refresh();

Q_SIGNALS:
    void changed();

private:
    void show(std::shared_ptr<const Aircraft> aircraft);
    void move(SignalId control, Value value);
    void readRig();
    void takeRig(SignalId control, Value before, Value value);
    /// Of the control as the step wants it: a button pressed, though it springs back.
    [[nodiscard]] Value valueOf(SignalId control) const;

    LibraryDesk& m_desk;
    BenchMaker& m_rigs;
    std::shared_ptr<const Aircraft> m_aircraft;
    std::vector<Value> m_values; ///< by SignalId
    SignalId m_control = kNoSignal;
    QString m_failure;
    QString m_rigFailure;
    ScreenPanel m_panel;
    BenchSnapshot m_rig;                         ///< what it said last
    std::optional<MovementDetector> m_movements; ///< of the rig's controls
    std::atomic<bool> m_isRefreshQueued = false;
    std::unique_ptr<BenchHandle> m_bench; ///< last, so that its thread ends before what it calls back goes
};

} // namespace flowhand
