#pragma once

#include <memory>
#include <string>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/librarydesk.h"
#include "presenter/screenpanel.h"

namespace flowhand {

/// A step that is acted out on the on-screen controls instead of being written: the control that was moved last, and
/// where it stands. GUI thread.
class ActedStep : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(bool open READ isOpen NOTIFY changed)
    Q_PROPERTY(flowhand::ScreenPanel* panel READ panel CONSTANT)
    Q_PROPERTY(QString title READ title NOTIFY changed)
    Q_PROPERTY(QString failure READ failure NOTIFY changed)

public:
    /// `desk` must outlive it.
    explicit ActedStep(LibraryDesk& desk, QObject* parent = nullptr);

    /// Shows the controls of the aircraft whose flow `file` is.
    void open(const std::string& file);
    Q_INVOKABLE void close();
    /// The step for the file whose text this is; empty: nothing was moved yet.
    Q_INVOKABLE QString stepFor(const QString& text) const;

    [[nodiscard]] bool isOpen() const { return m_aircraft != nullptr; }
    [[nodiscard]] ScreenPanel* panel() { return &m_panel; }
    /// "Flap lever to 12"; empty: nothing was moved yet.
    [[nodiscard]] QString title() const;
    /// Why the aircraft cannot be shown.
    [[nodiscard]] QString failure() const { return m_failure; }

Q_SIGNALS:
    void changed();

private:
    void show(std::shared_ptr<const Aircraft> aircraft);
    void move(SignalId control, Value value);
    /// Of the control as the step wants it: a button pressed, though it springs back.
    [[nodiscard]] Value valueOf(SignalId control) const;

    LibraryDesk& m_desk;
    std::shared_ptr<const Aircraft> m_aircraft;
    std::vector<Value> m_values; ///< by SignalId
    SignalId m_control = kNoSignal;
    QString m_failure;
    ScreenPanel m_panel;
};

} // namespace flowhand
