#include "presenter/rowmodel.h"

#include <algorithm>

#include <QMetaProperty>

namespace flowhand {

RowModel::RowModel(const QMetaObject& row, QObject* parent) : QAbstractListModel(parent), m_meta(row) {}

int RowModel::idOf(const QVariant& row) const {
    return m_meta.property(0).readOnGadget(row.constData()).toInt();
}

void RowModel::set(std::vector<QVariant> rows) {
    const auto same = [this](const QVariant& a, const QVariant& b) {
        return idOf(a) == idOf(b);
    };
    const std::size_t shorter = std::min(rows.size(), m_rows.size());
    std::size_t head = 0;
    while (head < shorter && same(rows[head], m_rows[head]))
        ++head;
    std::size_t tail = 0;
    while (tail < shorter - head && same(rows[rows.size() - 1 - tail], m_rows[m_rows.size() - 1 - tail]))
        ++tail;

    const int first = static_cast<int>(head);
    const int gone = static_cast<int>(m_rows.size() - head - tail);
    const int came = static_cast<int>(rows.size() - head - tail);
    if (gone > 0) {
        beginRemoveRows({}, first, first + gone - 1);
        m_rows.erase(m_rows.begin() + first, m_rows.begin() + first + gone);
        endRemoveRows();
    }
    if (came > 0) {
        beginInsertRows({}, first, first + came - 1);
        m_rows.insert(m_rows.begin() + first, rows.begin() + first, rows.begin() + first + came);
        endInsertRows();
    }
    for (std::size_t row = 0; row < rows.size(); ++row) {
        if (rows[row] == m_rows[row])
            continue;
        m_rows[row] = rows[row];
        const QModelIndex place = index(static_cast<int>(row));
        Q_EMIT dataChanged(place, place);
    }
    if (gone != came)
        Q_EMIT countChanged();
}

int RowModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : count();
}

QVariant RowModel::data(const QModelIndex& index, int role) const {
    const int property = role - Qt::UserRole;
    if (!index.isValid() || property < 0 || property >= m_meta.propertyCount())
        return {};
    return m_meta.property(property).readOnGadget(m_rows[static_cast<std::size_t>(index.row())].constData());
}

QHash<int, QByteArray> RowModel::roleNames() const {
    QHash<int, QByteArray> names;
    for (int property = 0; property < m_meta.propertyCount(); ++property)
        names.insert(Qt::UserRole + property, m_meta.property(property).name());
    return names;
}

} // namespace flowhand
