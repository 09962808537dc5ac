#include "presenter/fileeditor.h"

#include <filesystem>

#include <QFileInfo>
#include <QPointer>

#include "base/replacefile.h"
#include "base/textfile.h"
#include "presenter/libraryrows.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

TextFindingRow textFindingRow(const Problem& problem, int number) {
    TextFindingRow row;
    row.rowId = number;
    row.line = problem.error.place.line;
    row.column = problem.error.place.column;
    row.kindOf = problem.severity == Severity::Error     ? Verdict::Wrong
                 : problem.severity == Severity::Warning ? Verdict::Late
                                                         : Verdict::Info;
    row.kind = problem.severity == Severity::Error     ? QObject::tr("error")
               : problem.severity == Severity::Warning ? QObject::tr("warning")
                                                       : QObject::tr("advice");
    row.code = QString::fromStdString(problem.error.code);
    row.words = QString::fromStdString(problem.error.message);
    return row;
}

/// "2 errors", "1 error".
QString counted(int count, const QString& one, const QString& many) {
    return count == 1 ? one : many.arg(count);
}

} // namespace

FileEditor::FileEditor(LibraryDesk& desk, QObject* parent)
    : QObject(parent), m_desk(desk), m_findings(TextFindingRow::staticMetaObject, this) {
    connect(&m_watcher, &QFileSystemWatcher::fileChanged, this, &FileEditor::look);
    connect(&m_watcher, &QFileSystemWatcher::directoryChanged, this, &FileEditor::look);
}

FileEditor::~FileEditor() {
    if (isOpen() && !m_isReadOnly && isUnsaved())
        (void)replaceFile(besideFile(), m_text.toStdString());
}

void FileEditor::open(const std::string& file, bool isReadOnly) {
    const Result<std::string> text = readFile(file);
    m_failure = text ? QString() : QString::fromStdString(describe(text.error()));
    if (!text) {
        Q_EMIT stateChanged();
        return;
    }
    m_file = file;
    m_isReadOnly = isReadOnly;
    m_saved = QString::fromStdString(*text);
    m_isChangedOutside = false;
    m_notice.clear();
    watch();
    Q_EMIT opened();
    const Result<std::string> beside = isReadOnly ? text : readFile(besideFile());
    const bool isBeside = beside && *beside != *text;
    if (isBeside)
        m_notice = tr("Changes that were not saved the last time are shown; save them, or take the file as it is.");
    take(isBeside ? QString::fromStdString(*beside) : m_saved);
}

void FileEditor::close() {
    m_file.clear();
    m_text.clear();
    m_saved.clear();
    m_notice.clear();
    m_failure.clear();
    m_isChangedOutside = false;
    if (!m_watcher.files().isEmpty() || !m_watcher.directories().isEmpty())
        m_watcher.removePaths(m_watcher.files() + m_watcher.directories());
    Q_EMIT opened();
    Q_EMIT stateChanged();
}

/// The folder too: many editors put a new file in the place of the old one.
void FileEditor::watch() {
    const QString folder = QFileInfo(file()).path();
    const QStringList before = m_watcher.files() + m_watcher.directories();
    if (!before.isEmpty() && !m_watcher.directories().contains(folder))
        m_watcher.removePaths(before);
    if (!m_watcher.directories().contains(folder))
        m_watcher.addPath(folder);
    if (!m_watcher.files().contains(file())) {
        if (!m_watcher.files().isEmpty())
            m_watcher.removePaths(m_watcher.files());
        m_watcher.addPath(file());
    }
}

/// The file may have changed on the disk.
void FileEditor::look() {
    if (!isOpen())
        return;
    const Result<std::string> now = readFile(m_file);
    if (!now) {
        m_notice = tr("The file is not there any more; saving writes it again.");
        Q_EMIT stateChanged();
        return;
    }
    watch();
    const QString text = QString::fromStdString(*now);
    if (text == m_saved)
        return;
    const bool isUntouched = !isUnsaved();
    m_saved = text;
    m_isChangedOutside = !isUntouched && isUnsaved();
    m_notice.clear();
    if (isUntouched)
        return take(text);
    Q_EMIT stateChanged();
}

void FileEditor::take(const QString& text) {
    m_text = text;
    Q_EMIT reloaded();
    Q_EMIT stateChanged();
    check();
}

void FileEditor::edit(const QString& text) {
    if (text == m_text || m_isReadOnly)
        return;
    m_text = text;
    Q_EMIT stateChanged();
    check();
}

QString FileEditor::lineNumbers(int lines) {
    QString numbers;
    for (int line = 1; line <= lines; ++line)
        numbers += QString::number(line) + QLatin1Char('\n');
    return numbers;
}

int FileEditor::positionOf(int line, int column) const {
    qsizetype at = 0;
    for (int n = 1; n < line && at >= 0; ++n)
        at = m_text.indexOf(QLatin1Char('\n'), at) + 1;
    const qsizetype end = m_text.indexOf(QLatin1Char('\n'), at);
    return static_cast<int>(qMin(at + qMax(column - 1, 0), end < 0 ? m_text.size() : end));
}

bool FileEditor::save() {
    if (m_isReadOnly || !isOpen())
        return false;
    look(); // the watcher may not have told yet
    if (m_isChangedOutside)
        return false;
    const Status done = replaceFile(m_file, m_text.toStdString());
    m_failure = done ? QString() : QString::fromStdString(describe(done.error()));
    if (done) {
        m_saved = m_text;
        m_notice.clear();
        forgetBeside();
        watch();
        check(); // the folder knows the file as it is now
        Q_EMIT saved();
    }
    Q_EMIT stateChanged();
    return done.has_value();
}

void FileEditor::revert() {
    m_isChangedOutside = false;
    m_notice.clear();
    forgetBeside();
    take(m_saved);
}

void FileEditor::keepMine() {
    m_isChangedOutside = false;
    Q_EMIT stateChanged();
}

void FileEditor::forgetBeside() const {
    std::error_code ignored;
    std::filesystem::remove(besideFile(), ignored);
}

/// One question at a time: what is typed while it is answered is asked in one piece after it.
void FileEditor::check() {
    m_isStale = m_isChecking;
    if (m_isChecking)
        return;
    m_isChecking = true;
    m_desk.ask<CheckedText>(
        [file = m_file, text = m_text.toStdString()](TextCheck& check) {
            return check.check(file, text);
        },
        [this, self = QPointer(this), file = m_file](CheckedText checked) {
            if (!self)
                return;
            m_isChecking = false;
            if (file == m_file && !m_isStale)
                show(std::move(checked));
            else if (isOpen())
                check();
        });
}

void FileEditor::show(CheckedText checkedText) {
    m_checked = std::move(checkedText);
    std::vector<TextFindingRow> rows;
    int errors = 0;
    int others = 0;
    for (const Problem& problem : m_checked.problems) {
        rows.push_back(textFindingRow(problem, static_cast<int>(rows.size())));
        ++(problem.severity == Severity::Error ? errors : others);
    }
    m_findings.setRows(rows);
    const QString advice = counted(others, tr("1 piece of advice"), tr("%1 pieces of advice"));
    m_verdict = errors > 0    ? counted(errors, tr("1 error"), tr("%1 errors"))
                : others == 0 ? tr("No errors, and every rule is kept")
                              : tr("No errors; %1").arg(advice);
    m_verdictKind = errors > 0 ? Verdict::Wrong : others > 0 ? Verdict::Info : Verdict::Done;
    Q_EMIT checked();
}

} // namespace flowhand
