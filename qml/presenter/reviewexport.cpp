// What the Review place writes for others: reviewpresenter.h.

#include <filesystem>

#include <QPointer>
#include <QStandardPaths>

#include "base/textfile.h"
#include "presenter/reviewpresenter.h"
#include "report/debriefhtml.h"
#include "report/runcsv.h"
#include "store/archive.h"

namespace flowhand {

namespace {

const char* endingOf(int what) {
    switch (what) {
    case ReviewPresenter::Events:
        return "-events.csv";
    case ReviewPresenter::Signals:
        return "-signals.csv";
    case ReviewPresenter::Archive:
        return ".flowrun";
    default:
        return ".html";
    }
}

Result<std::string> contentOf(int what, const StoredDebrief& debrief, const std::vector<Note>& notes, Store& store) {
    if (what == ReviewPresenter::Archive || what == ReviewPresenter::Signals) {
        const Result<StoredRun> run = store.load(debrief.run().summary.id);
        if (!run)
            return tl::unexpected(run.error());
        return what == ReviewPresenter::Archive ? archiveOf(*run) : signalsCsv(debrief.timeline().run(), run->samples);
    }
    if (what == ReviewPresenter::Events)
        return eventsCsv(debrief.timeline().run());
    DebriefInput input = debrief.input();
    input.notes = &notes;
    return debriefHtml(input);
}

Status writeInto(const std::string& file, const std::string& content) {
    std::error_code failed;
    std::filesystem::create_directories(std::filesystem::path(file).parent_path(), failed);
    if (failed)
        return failure("unwritable-file", "the folder cannot be made: " + failed.message(), {file});
    return writeFile(file, content);
}

} // namespace

void ReviewPresenter::exportAs(int what) {
    if (m_run.isEmpty())
        return;
    const QString folder =
        m_exportFolder.isEmpty()
            ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation) + QStringLiteral("/Flowhand")
            : m_exportFolder;
    const std::string file =
        folder.toStdString() + "/run-" + std::to_string(m_run.debrief().run().summary.id) + endingOf(what);
    m_shelf.ask<void>(
        [what, file, debrief = m_run.shared(), notes = m_notes.notes()](Store& store) -> Status {
            const Result<std::string> content = contentOf(what, *debrief, notes, store);
            return content ? writeInto(file, *content) : tl::unexpected(content.error());
        },
        [this, self = QPointer(this), file](Status done) {
            if (self)
                setWritten(done ? tr("Written: %1").arg(QString::fromStdString(file))
                                : QString::fromStdString(describe(done.error())));
        });
}

} // namespace flowhand
