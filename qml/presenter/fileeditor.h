#pragma once

#include <QFileSystemWatcher>
#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/librarydesk.h"
#include "presenter/rowmodel.h"

namespace flowhand {

/// One text file of the library while it is looked at or changed. What is written is the text itself, so the author's
/// comments and order stay. Each change is checked at once, at the desk; a change of the file from outside is shown at
/// once, and where there are unsaved changes here, both are kept until the person chooses. GUI thread.
class FileEditor : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(QString file READ file NOTIFY opened)
    Q_PROPERTY(bool open READ isOpen NOTIFY opened)
    Q_PROPERTY(bool readOnly READ isReadOnly NOTIFY opened)
    Q_PROPERTY(QString text READ text NOTIFY reloaded)
    Q_PROPERTY(bool unsaved READ isUnsaved NOTIFY stateChanged)
    Q_PROPERTY(bool changedOutside READ isChangedOutside NOTIFY stateChanged)
    Q_PROPERTY(QString notice READ notice NOTIFY stateChanged)
    Q_PROPERTY(QString failure READ failure NOTIFY stateChanged)
    Q_PROPERTY(QString verdict READ verdict NOTIFY checked)
    Q_PROPERTY(int verdictKind READ verdictKind NOTIFY checked)
    Q_PROPERTY(flowhand::RowModel* findings READ findings CONSTANT)

public:
    /// `desk` must outlive it.
    explicit FileEditor(LibraryDesk& desk, QObject* parent = nullptr);
    /// Unsaved changes are put beside the file, and are there again when it is next opened.
    ~FileEditor() override;

    /// Error of reading the file in `failure`. Only when nothing is unsaved.
    void open(const std::string& file, bool isReadOnly);
    void close();

    /// The text as it is now in the view.
    Q_INVOKABLE void edit(const QString& text);
    /// "1", "2" ... below each other, for the margin beside the text.
    Q_INVOKABLE static QString lineNumbers(int lines);
    /// Where a line's column stands in the text, both from 1.
    Q_INVOKABLE int positionOf(int line, int column) const;
    /// False when it could not be saved, or the file was changed outside meanwhile.
    Q_INVOKABLE bool save();
    /// Takes the file as it is on the disk; unsaved changes are gone.
    Q_INVOKABLE void revert();
    /// Stays with the text here; saving it then replaces what was changed outside.
    Q_INVOKABLE void keepMine();

    [[nodiscard]] QString file() const { return QString::fromStdString(m_file); }
    [[nodiscard]] bool isOpen() const { return !m_file.empty(); }
    [[nodiscard]] bool isReadOnly() const { return m_isReadOnly; }
    [[nodiscard]] QString text() const { return m_text; }
    [[nodiscard]] bool isUnsaved() const { return m_text != m_saved; }
    [[nodiscard]] bool isChangedOutside() const { return m_isChangedOutside; }
    /// That unsaved changes of an earlier time are shown, or that the file is gone; empty: nothing is to be said.
    [[nodiscard]] QString notice() const { return m_notice; }
    [[nodiscard]] QString failure() const { return m_failure; }
    /// "No errors. 2 pieces of advice."
    [[nodiscard]] QString verdict() const { return m_verdict; }
    [[nodiscard]] int verdictKind() const { return m_verdictKind; }
    [[nodiscard]] RowModel* findings() { return &m_findings; }
    [[nodiscard]] const CheckedText& lastCheck() const { return m_checked; }

Q_SIGNALS:
    void opened();
    /// The text was taken from the disk: the view shows it anew.
    void reloaded();
    void stateChanged();
    void checked();
    void saved();

private:
    void watch();
    void look();
    void take(const QString& text);
    void check();
    void show(CheckedText checked);
    [[nodiscard]] std::string besideFile() const { return m_file + ".unsaved"; }
    void forgetBeside() const;

    LibraryDesk& m_desk;
    QFileSystemWatcher m_watcher;
    std::string m_file;
    bool m_isReadOnly = true;
    QString m_text;
    QString m_saved; ///< as it is on the disk, as far as is known here
    bool m_isChangedOutside = false;
    QString m_notice;
    QString m_failure;
    bool m_isChecking = false; ///< an answer is on its way
    bool m_isStale = false;    ///< and the text has changed since it was asked
    CheckedText m_checked;
    QString m_verdict;
    int m_verdictKind = 0;
    RowModel m_findings;
};

} // namespace flowhand
