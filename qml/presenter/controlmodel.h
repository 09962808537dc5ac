#pragma once

#include <vector>

#include <QAbstractListModel>
#include <QtQml/qqmlregistration.h>

#include "presenter/controlstate.h"
#include "procedure/flow.h"

namespace flowhand {

/// The controls of the cockpit; as rows those that a flow has to do with, in the aircraft file's order, but flat ones
/// last, so that they can be stacked. GUI thread.
class ControlModel : public QAbstractListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the presenter of a run")
    Q_PROPERTY(int count READ count NOTIFY countChanged)

public:
    enum Role { ControlRole = Qt::UserRole + 1 };
    using QAbstractListModel::QAbstractListModel;

    /// `aircraft` must outlive what is shown; nullptr empties the model. Without a flow every control is a row.
    void setAircraft(const Aircraft* aircraft, const Flow* flow = nullptr);
    void setValues(const std::vector<Value>& values);

    [[nodiscard]] int count() const { return static_cast<int>(m_rows.size()); }
    /// nullptr when `id` is no control.
    [[nodiscard]] ControlState* find(SignalId id) const;
    /// By SignalId.
    [[nodiscard]] const std::vector<ControlState*>& all() const { return m_controls; }

    /// The rows.
    [[nodiscard]] const std::vector<ControlState*>& shown() const { return m_rows; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

Q_SIGNALS:
    void countChanged();

private:
    std::vector<ControlState*> m_controls; ///< by SignalId
    std::vector<ControlState*> m_rows;     ///< as shown
};

} // namespace flowhand
