#pragma once

#include <string>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/rowmodel.h"
#include "procedure/flow.h"

namespace flowhand {

/// The steps that a run can jump to, each with the place that the practice aircraft is put at for it, and which one the
/// pilot picks. GUI thread.
class JumpPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Fly place's presenter")
    Q_PROPERTY(flowhand::RowModel* steps READ steps CONSTANT)
    /// The pilot is at it; the run stands.
    Q_PROPERTY(bool open READ isOpen NOTIFY openChanged)

public:
    explicit JumpPresenter(QObject* parent);

    /// The flow must outlive what is picked. Nothing is picked, and it closes.
    void begin(const Flow* flow);
    void setOpen(bool isOpen);
    Q_INVOKABLE void pick(int row);

    [[nodiscard]] RowModel* steps() { return &m_steps; }
    [[nodiscard]] bool isOpen() const { return m_isOpen; }
    /// The id of the step that is picked; empty: there is none.
    [[nodiscard]] std::string step() const;

Q_SIGNALS:
    void openChanged();

private:
    const Flow* m_flow = nullptr;
    int m_row = 0;
    bool m_isOpen = false;
    RowModel m_steps;
};

} // namespace flowhand
