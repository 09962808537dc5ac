#include "presenter/librarypresenter.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include <QDir>
#include <QPointer>
#include <QStandardPaths>

#include "command/owncopy.h"
#include "presenter/ribbon.h"

namespace flowhand {

namespace {

bool says(const LibraryFile& file, const QString& text) {
    return text.isEmpty() || file.row.title.contains(text, Qt::CaseInsensitive) ||
           file.row.detail.contains(text, Qt::CaseInsensitive) ||
           QString::fromStdString(file.file).contains(text, Qt::CaseInsensitive);
}

} // namespace

LibraryPresenter::LibraryPresenter(LibraryDesk& desk, CurrentLibrary& library, BenchMaker& rigs, QObject* parent)
    : QObject(parent), m_library(library), m_editor(desk, this), m_acted(desk, rigs, this),
      m_phases(PhaseRow::staticMetaObject, this), m_rows(LibraryRow::staticMetaObject, this) {
    m_phases.setRows(phaseRows());
    connect(&m_library, &CurrentLibrary::changed, this, &LibraryPresenter::enter);
    connect(&m_editor, &FileEditor::checked, this, &LibraryPresenter::showCard);
    connect(&m_editor, &FileEditor::saved, this, [this] {
        say(tr("Saved: %1").arg(m_editor.file()));
        m_library.reload();
    });
}

void LibraryPresenter::enter() {
    const LibraryFile* const before = chosenFile();
    std::string chosen = m_isEditing ? m_editor.file().toStdString() : before != nullptr ? before->file : std::string();
    m_files = libraryFiles(*m_library.now(), m_library.folders().own);
    showRows();
    if (rowOf(m_wanted))
        chosen = std::exchange(m_wanted, {});
    const std::optional<int> row = rowOf(chosen);
    // What is being written stays open, though it is listed elsewhere now, or gone.
    if (row || !m_isEditing)
        choose(row.value_or(0));
    else
        m_chosen = m_rows.count();
}

void LibraryPresenter::showRows() {
    std::vector<LibraryRow> rows;
    m_shown.clear();
    for (std::size_t i = 0; i < m_files.size(); ++i) {
        if (static_cast<int>(m_files[i].kind) != m_kind || !says(m_files[i], m_search.trimmed()))
            continue;
        LibraryRow row = m_files[i].row;
        row.rowId = static_cast<int>(m_shown.size());
        rows.push_back(row);
        m_shown.push_back(i);
    }
    m_rows.setRows(rows);
    Q_EMIT listChanged();
}

const LibraryFile* LibraryPresenter::chosenFile() const {
    return m_chosen < static_cast<int>(m_shown.size()) ? &m_files[m_shown[static_cast<std::size_t>(m_chosen)]]
                                                       : nullptr;
}

std::optional<int> LibraryPresenter::rowOf(const std::string& file) const {
    for (std::size_t i = 0; i < m_shown.size(); ++i)
        if (m_files[m_shown[i]].file == file)
            return static_cast<int>(i);
    return std::nullopt;
}

void LibraryPresenter::choose(int row) {
    const int before = std::exchange(m_chosen, std::clamp(row, 0, std::max(m_rows.count() - 1, 0)));
    const LibraryFile* const file = chosenFile();
    if (m_editor.isUnsaved() && (file == nullptr || file->file != m_editor.file().toStdString())) {
        m_chosen = before;
        return sayUnsaved();
    }
    Q_EMIT chosenChanged();
    openChosen();
}

/// The editor reads and checks the file, whether its text is shown or its card alone.
void LibraryPresenter::openChosen() {
    const LibraryFile* const file = chosenFile();
    if (file == nullptr) {
        m_editor.close();
        m_html.clear();
        m_page = {};
        m_title.clear();
        Q_EMIT cardChanged();
        return;
    }
    if (m_editor.file().toStdString() != file->file)
        m_editor.open(file->file, !file->isOwn);
}

void LibraryPresenter::showCard() {
    m_html = QString::fromStdString(m_editor.lastCheck().card);
    m_page = cardPage(m_html);
    const LibraryFile* const file = chosenFile();
    m_title = QString::fromStdString(m_editor.lastCheck().title);
    if (m_title.isEmpty() && file != nullptr)
        m_title = file->row.title; // as it was before the text had an error
    Q_EMIT cardChanged();
}

bool LibraryPresenter::isOwn() const {
    const LibraryFile* const file = chosenFile();
    return file != nullptr && file->isOwn;
}

void LibraryPresenter::setKind(int kind) {
    if (kind == m_kind || kind < Flows || kind > Aircraft || m_editor.isUnsaved())
        return;
    m_kind = kind;
    showRows();
    choose(0);
}

void LibraryPresenter::setSearch(const QString& text) {
    if (text == m_search || m_editor.isUnsaved())
        return;
    m_search = text;
    showRows();
    choose(0);
}

void LibraryPresenter::edit() {
    if (!m_editor.isOpen())
        return;
    m_isEditing = true;
    say({});
    Q_EMIT editingChanged();
}

void LibraryPresenter::leaveEditor() {
    if (m_editor.isUnsaved())
        return sayUnsaved();
    m_isEditing = false;
    m_acted.close();
    if (chosenFile() == nullptr)
        choose(0);
    say({});
    Q_EMIT editingChanged();
}

void LibraryPresenter::toggleActing() {
    if (m_acted.isOpen())
        return m_acted.close();
    const LibraryFile* const file = chosenFile();
    if (m_isEditing && file != nullptr && file->isOwn && file->kind <= ProcedureKind::Checklist)
        m_acted.open(file->file);
}

void LibraryPresenter::copyToOwn() {
    const LibraryFile* const file = chosenFile();
    if (file == nullptr || file->isOwn)
        return;
    const Result<std::string> copy =
        flowhand::copyToOwn(m_library.folders().shipped, m_library.folders().own, file->file);
    if (!copy)
        return say(QString::fromStdString(describe(copy.error())), true);
    m_wanted = *copy;
    m_isEditing = true;
    say(tr("Your copy: %1").arg(QString::fromStdString(*copy)));
    Q_EMIT editingChanged();
    m_library.reload();
}

void LibraryPresenter::print() {
    const LibraryFile* const file = chosenFile();
    if (file == nullptr || m_page.words.isEmpty())
        return;
    const QString folder =
        m_printFolder.isEmpty()
            ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation) + QStringLiteral("/Flowhand")
            : m_printFolder;
    const std::filesystem::path path(file->file);
    const std::string name = isAircraftFile(file->file) ? path.parent_path().filename().string() : path.stem().string();
    const QString target = folder + QStringLiteral("/card-%1.pdf").arg(QString::fromStdString(name));
    QDir().mkpath(folder);
    const Status done = writeCardPdf(m_html, m_title, target);
    say(done ? tr("Written: %1").arg(target) : QString::fromStdString(describe(done.error())), !done);
}

void LibraryPresenter::sayUnsaved() {
    say(tr("There are unsaved changes: save them, or take the file as it is."), true);
}

void LibraryPresenter::say(const QString& message, bool isFailed) {
    m_message = message;
    m_isFailed = isFailed;
    Q_EMIT messageChanged();
}

} // namespace flowhand
