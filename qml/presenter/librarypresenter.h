#pragma once

#include <optional>
#include <string>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/actedstep.h"
#include "presenter/cardpage.h"
#include "presenter/fileeditor.h"
#include "presenter/libraryfiles.h"
#include "presenter/rowmodel.h"

namespace flowhand {

/// The Library place: the flows, checklists, scenarios and aircraft that there are, the card of the chosen one, and its
/// text to change. What is shipped is only read; the person's own copies are changed. GUI thread.
class LibraryPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(int kind READ kind WRITE setKind NOTIFY listChanged)
    Q_PROPERTY(QString search READ search WRITE setSearch NOTIFY listChanged)
    Q_PROPERTY(flowhand::RowModel* phases READ phases CONSTANT)
    Q_PROPERTY(flowhand::RowModel* rows READ rows CONSTANT)
    Q_PROPERTY(int chosen READ chosen NOTIFY chosenChanged)
    Q_PROPERTY(bool own READ isOwn NOTIFY chosenChanged)
    Q_PROPERTY(QString title READ title NOTIFY cardChanged)
    Q_PROPERTY(QString card READ card NOTIFY cardChanged)
    Q_PROPERTY(QString panel READ panel NOTIFY cardChanged)
    Q_PROPERTY(flowhand::FileEditor* editor READ editor CONSTANT)
    Q_PROPERTY(flowhand::ActedStep* acted READ acted CONSTANT)
    Q_PROPERTY(bool editing READ isEditing NOTIFY editingChanged)
    Q_PROPERTY(QString message READ message NOTIFY messageChanged)
    Q_PROPERTY(bool failed READ isFailed NOTIFY messageChanged)
    Q_PROPERTY(QString ownFolder READ ownFolder NOTIFY listChanged)

public:
    /// As ProcedureKind.
    enum Kind { Flows, Checklists, Scenarios, Aircraft };
    Q_ENUM(Kind)

    /// All must outlive it. Steps are acted out on one of the `rigs`.
    LibraryPresenter(LibraryDesk& desk, CurrentLibrary& library, BenchMaker& rigs, QObject* parent = nullptr);

    /// Lists the files anew.
    Q_INVOKABLE void enter();
    /// The place is not shown any more.
    Q_INVOKABLE void leave() { m_acted.close(); }
    /// A row of `rows`.
    Q_INVOKABLE void choose(int row);
    /// Opens the text of the chosen file beside its card; what is shipped to be read alone.
    Q_INVOKABLE void edit();
    /// Back to the card; not while something is unsaved.
    Q_INVOKABLE void leaveEditor();
    /// Shows the aircraft's controls, to act a step out on them, or puts them away. For the person's own flows.
    Q_INVOKABLE void toggleActing();
    /// Copies the chosen file into the person's folder and opens the copy.
    Q_INVOKABLE void copyToOwn();
    /// Writes the card as PDF into the person's documents; `message` says where, or why not.
    Q_INVOKABLE void print();

    [[nodiscard]] int kind() const { return m_kind; }
    void setKind(int kind);
    [[nodiscard]] QString search() const { return m_search; }
    void setSearch(const QString& text);
    [[nodiscard]] RowModel* phases() { return &m_phases; }
    [[nodiscard]] RowModel* rows() { return &m_rows; }
    [[nodiscard]] int chosen() const { return m_chosen; }
    [[nodiscard]] bool isOwn() const;
    [[nodiscard]] QString title() const { return m_title; }
    /// Rich text; empty: the file cannot be read, or none is chosen.
    [[nodiscard]] QString card() const { return m_page.words; }
    [[nodiscard]] QString panel() const { return m_page.panel; }
    [[nodiscard]] FileEditor* editor() { return &m_editor; }
    [[nodiscard]] ActedStep* acted() { return &m_acted; }
    [[nodiscard]] bool isEditing() const { return m_isEditing; }
    [[nodiscard]] QString message() const { return m_message; }
    [[nodiscard]] bool isFailed() const { return m_isFailed; }
    [[nodiscard]] QString ownFolder() const { return QString::fromStdString(m_library.folders().own); }
    /// For what is printed; the person's documents unless it is set.
    void setPrintFolder(const QString& folder) { m_printFolder = folder; }

Q_SIGNALS:
    void listChanged();
    void chosenChanged();
    void cardChanged();
    void editingChanged();
    void messageChanged();

private:
    [[nodiscard]] const LibraryFile* chosenFile() const;
    void showRows();
    /// Of those that are listed.
    [[nodiscard]] std::optional<int> rowOf(const std::string& file) const;
    void openChosen();
    void showCard();
    void sayUnsaved();
    void say(const QString& message, bool isFailed = false);

    CurrentLibrary& m_library;
    std::vector<LibraryFile> m_files;
    std::vector<std::size_t> m_shown; ///< of m_files, by row
    int m_kind = Flows;
    QString m_search;
    int m_chosen = 0;
    std::string m_wanted; ///< to be chosen once the list has come
    CardPage m_page;
    QString m_html;
    QString m_title;
    FileEditor m_editor;
    ActedStep m_acted;
    bool m_isEditing = false;
    QString m_message;
    bool m_isFailed = false;
    QString m_printFolder;
    RowModel m_phases, m_rows;
};

} // namespace flowhand
