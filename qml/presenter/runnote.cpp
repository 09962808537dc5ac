#include "presenter/runnote.h"

#include <QDateTime>
#include <QPointer>

#include "base/time.h"

namespace flowhand {

void RunNote::forget() {
    m_draft.reset();
    m_failure.clear();
    m_isSaving = false;
    m_kept = 0;
    Q_EMIT changed();
}

void RunNote::begin(const RunSnapshot& snapshot) {
    m_failure.clear();
    if (m_shelf == nullptr || snapshot.runId == 0 || snapshot.flow == nullptr) {
        m_failure = tr("This run is not stored, so no note can be kept with it.");
        Q_EMIT changed();
        return;
    }
    const Time now = snapshot.session.time;
    m_run = snapshot.runId;
    m_draft.emplace();
    m_draft->anchor = anchorAt(*snapshot.flow, snapshot.results, now);
    m_title = tr("Note at %1").arg(QString::fromStdString(clockText(now)));
    Q_EMIT changed();
}

void RunNote::keep(const QString& words) {
    if (!m_draft || m_isSaving)
        return;
    Note note = *m_draft;
    note.text = words.trimmed().toStdString();
    if (note.text.empty())
        note.text = draft().toStdString();
    note.writtenUnixMillis = QDateTime::currentMSecsSinceEpoch();
    m_isSaving = true;
    m_shelf->ask<std::int64_t>(
        [run = m_run, note](Store& store) {
            return store.writeNote(run, note);
        },
        [this, self = QPointer(this)](const Result<std::int64_t>& id) {
            if (self)
                answer(id);
        });
}

void RunNote::answer(const Result<std::int64_t>& id) {
    if (!std::exchange(m_isSaving, false))
        return; // another run goes on
    m_failure = id ? QString() : QString::fromStdString(describe(id.error()));
    if (id) {
        m_draft.reset();
        ++m_kept;
    }
    Q_EMIT changed();
}

void RunNote::cancel() {
    m_draft.reset();
    m_failure.clear();
    m_isSaving = false;
    Q_EMIT changed();
}

} // namespace flowhand
