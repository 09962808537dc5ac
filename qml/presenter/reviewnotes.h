#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

#include "presenter/rowmodel.h"
#include "presenter/runshelf.h"
#include "report/storeddebrief.h"

namespace flowhand {

/// The notes of the run that is gone through, and the one that is being written: the pilot's own account first, then
/// the instructor's words. They change nothing of the run or its score. GUI thread.
class ReviewNotes : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Review place's presenter")
    Q_PROPERTY(flowhand::RowModel* lines READ lines CONSTANT)
    Q_PROPERTY(flowhand::RowModel* marks READ marks CONSTANT)
    Q_PROPERTY(bool hasAccount READ hasAccount NOTIFY changed)
    Q_PROPERTY(bool writing READ isWriting NOTIFY draftChanged)
    Q_PROPERTY(QString title READ title NOTIFY draftChanged)
    Q_PROPERTY(QString hint READ hint NOTIFY draftChanged)
    Q_PROPERTY(QString draft READ draft NOTIFY draftChanged)
    Q_PROPERTY(QStringList choices READ choices NOTIFY draftChanged)
    Q_PROPERTY(int choice READ choice NOTIFY draftChanged)
    Q_PROPERTY(QString failure READ failure NOTIFY failureChanged)

public:
    /// NoteKind, for views.
    enum Kind { Note, Account, Objective, Ruling, Cause, Practice, Mark };
    Q_ENUM(Kind)

    /// `shelf` must outlive it.
    ReviewNotes(RunShelf& shelf, QObject* parent);

    void show(std::shared_ptr<const StoredDebrief> debrief);
    /// Everything that is shown, in the language of now.
    void tellAnew();
    /// Begins a note at this time of the run.
    void beginAt(Time time);
    /// Begins a ruling or cause of a finding.
    void beginOn(Kind kind, int step, int guard);
    /// Begins an account, objective or practice, with the words that it has already.
    Q_INVOKABLE void begin(int kind);
    Q_INVOKABLE void choose(int choice);
    Q_INVOKABLE void save(const QString& words);
    Q_INVOKABLE void cancel();
    /// Marks a phase; a row of `marks`.
    Q_INVOKABLE void mark(int row, int mark);
    /// A row of `lines`.
    Q_INVOKABLE void remove(int row);
    /// Of 1 to 5, in the words of the grading scale.
    Q_INVOKABLE static QString meaningOf(int mark);

    [[nodiscard]] const std::vector<flowhand::Note>& notes() const { return m_notes; }
    [[nodiscard]] RowModel* lines() { return &m_lines; }
    [[nodiscard]] RowModel* marks() { return &m_marks; }
    [[nodiscard]] bool hasAccount() const { return find(NoteKind::Account) != nullptr; }
    [[nodiscard]] bool isWriting() const { return m_draft.has_value(); }
    [[nodiscard]] QString title() const { return m_title; }
    [[nodiscard]] QString hint() const;
    /// Words to begin with.
    [[nodiscard]] QString draft() const;
    [[nodiscard]] QStringList choices() const;
    [[nodiscard]] int choice() const;
    /// Why the last words were not kept.
    [[nodiscard]] QString failure() const { return m_failure; }

Q_SIGNALS:
    void changed();
    void draftChanged();
    void failureChanged();

private:
    [[nodiscard]] const Flow& flow() const { return m_debrief->timeline().run().flow; }
    [[nodiscard]] const flowhand::Note* find(NoteKind kind) const;
    void open(flowhand::Note note, const QString& title);
    void write(flowhand::Note note, bool isDraft);
    void kept(flowhand::Note note, std::int64_t id);
    void setFailure(const QString& failure);
    void showNotes();
    [[nodiscard]] double timeOfNote(std::int64_t id) const;

    RunShelf& m_shelf;
    std::shared_ptr<const StoredDebrief> m_debrief;
    std::vector<flowhand::Note> m_notes; ///< in the order in which they were written
    RowModel m_lines, m_marks;
    std::optional<flowhand::Note> m_draft;
    bool m_isSaving = false; ///< the draft is on its way to the store
    QString m_title;
    QString m_failure;
};

} // namespace flowhand
