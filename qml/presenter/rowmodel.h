#pragma once

#include <vector>

#include <QAbstractListModel>
#include <QtQml/qqmlregistration.h>

namespace flowhand {

/// A list of rows for a view. A row is a gadget; each of its properties is a role of the same name, and its first
/// property, `rowId`, says which rows are the same ones after a change. GUI thread.
class RowModel : public QAbstractListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Filled by a presenter")
    Q_PROPERTY(int count READ count NOTIFY countChanged)

public:
    RowModel(const QMetaObject& row, QObject* parent);

    /// Views see only what differs: rows that came or went in one place, and rows whose properties changed.
    template <class Row>
    void setRows(const std::vector<Row>& rows) {
        std::vector<QVariant> variants;
        variants.reserve(rows.size());
        for (const Row& row : rows)
            variants.push_back(QVariant::fromValue(row));
        set(std::move(variants));
    }

    [[nodiscard]] int count() const { return static_cast<int>(m_rows.size()); }
    /// The row itself; only for 0 <= row < count.
    template <class Row>
    [[nodiscard]] Row row(int row) const {
        return m_rows[static_cast<std::size_t>(row)].template value<Row>();
    }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

Q_SIGNALS:
    void countChanged();

private:
    void set(std::vector<QVariant> rows);
    [[nodiscard]] int idOf(const QVariant& row) const;

    const QMetaObject& m_meta;
    std::vector<QVariant> m_rows;
};

} // namespace flowhand
