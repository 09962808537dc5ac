#pragma once

#include <string>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/rowmodel.h"
#include "report/manual.h"

namespace flowhand {

/// A page of the manual in the list of its contents.
struct ManualPageRow {
    Q_GADGET
    Q_PROPERTY(int rowId MEMBER rowId)
    Q_PROPERTY(QString title MEMBER title)

public:
    int rowId = 0;
    QString title;

    bool operator==(const ManualPageRow&) const = default;
};

/// The manual inside the program: its pages, and the one that is read. GUI thread.
class ManualPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(flowhand::RowModel* pages READ pages CONSTANT)
    Q_PROPERTY(int chosen READ chosen NOTIFY chosenChanged)
    Q_PROPERTY(QString title READ title NOTIFY chosenChanged)
    Q_PROPERTY(QString text READ text NOTIFY chosenChanged)
    Q_PROPERTY(QString failure READ failure NOTIFY chosenChanged)

public:
    /// `folder` holds the pages, and their pictures where they are there.
    explicit ManualPresenter(std::string folder, QObject* parent = nullptr);

    /// Reads the pages, once.
    Q_INVOKABLE void enter();
    /// A row of `pages`.
    Q_INVOKABLE void choose(int row);

    [[nodiscard]] RowModel* pages() { return &m_rows; }
    [[nodiscard]] int chosen() const { return m_chosen; }
    [[nodiscard]] QString title() const;
    /// Rich text.
    [[nodiscard]] QString text() const { return m_text; }
    [[nodiscard]] QString failure() const { return m_failure; }

Q_SIGNALS:
    void chosenChanged();

private:
    const std::string m_folder;
    std::vector<ManualPage> m_pages;
    RowModel m_rows;
    int m_chosen = 0;
    QString m_text;
    QString m_failure;
};

} // namespace flowhand
