#pragma once

#include <vector>

#include <QObject>
#include <QPointer>
#include <QtQml/qqmlregistration.h>

#include "presenter/keytable.h"
#include "presenter/rowmodel.h"
#include "presenter/settings.h"

namespace flowhand {

/// A key as it is listed, and as it can be changed.
struct KeyChoiceRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString section MEMBER section)
    Q_PROPERTY(QString key MEMBER key)
    Q_PROPERTY(QString action MEMBER action)
    Q_PROPERTY(bool changed MEMBER changed)

public:
    int rowId = 0;   ///< in the key table
    QString section; ///< the heading above it; empty: the one before goes on
    QString key;
    QString action;
    bool changed = false;

    bool operator==(const KeyChoiceRow&) const = default;
};

/// Which key does what, as the pilot has chosen. The places are written for the usual keys; usual() tells them which
/// usual key the pressed one stands for, and shown() what a usual key is called now. GUI thread.
class KeyChoice : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(flowhand::Settings* settings READ settings WRITE setSettings NOTIFY changed REQUIRED)
    /// The place that is shown; -1: none.
    Q_PROPERTY(int place READ place WRITE setPlace NOTIFY changed)
    /// The keys of that place.
    Q_PROPERTY(flowhand::RowModel* sheet READ sheet CONSTANT)
    /// Those that can be changed, of all places.
    Q_PROPERTY(flowhand::RowModel* rows READ rows CONSTANT)
    Q_PROPERTY(int revision READ revision NOTIFY changed)
    Q_PROPERTY(bool anyChanged READ isAnyChanged NOTIFY changed)

public:
    explicit KeyChoice(QObject* parent = nullptr);

    [[nodiscard]] Settings* settings() const { return m_settings; }
    /// Follows them; they must outlive what is asked here.
    void setSettings(Settings* settings);
    [[nodiscard]] int place() const { return m_place; }
    void setPlace(int place);
    [[nodiscard]] RowModel* sheet() { return &m_sheet; }
    [[nodiscard]] RowModel* rows() { return &m_rows; }
    /// Another one whenever a key's name may have changed: for bindings.
    [[nodiscard]] int revision() const { return m_revision; }
    [[nodiscard]] bool isAnyChanged() const { return m_settings && !m_settings->keys().empty(); }

    /// The usual key that `key` stands for in the place that is shown; 0: it means nothing any more.
    [[nodiscard]] Q_INVOKABLE int usual(int key) const;
    /// How the keys with these usual names, "Q A", are called now.
    [[nodiscard]] Q_INVOKABLE QString shown(const QString& usualNames) const;
    /// Gives a row another key. Empty, or why that cannot be.
    Q_INVOKABLE QString bind(int row, int key);
    /// The usual key again. Empty, or why that cannot be.
    Q_INVOKABLE QString restore(int row);
    Q_INVOKABLE void restoreAll();

Q_SIGNALS:
    void changed();

private:
    void follow();
    [[nodiscard]] bool isHere(const KeyUse& use) const;
    [[nodiscard]] int keyOf(const KeyUse& use) const;
    [[nodiscard]] QString nameOf(const KeyUse& use) const;
    [[nodiscard]] QString problemOf(const KeyUse& use, int key) const;
    [[nodiscard]] KeyChoiceRow rowOf(int index) const;

    std::vector<KeyUse> m_table;
    QPointer<Settings> m_settings;
    int m_place = 0;
    int m_revision = 0;
    RowModel m_sheet, m_rows;
};

} // namespace flowhand
