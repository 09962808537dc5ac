#pragma once

#include <cstdint>
#include <optional>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/runshelf.h"
#include "session/run.h"
#include "store/note.h"

namespace flowhand {

/// A note that the pilot, or who sits beside, writes while the run goes on, at the moment at which it was begun. The
/// run does not wait for it. GUI thread.
class RunNote : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Fly place's presenter")
    Q_PROPERTY(bool writing READ isWriting NOTIFY changed)
    Q_PROPERTY(QString title READ title NOTIFY changed)
    Q_PROPERTY(QString draft READ draft CONSTANT)
    Q_PROPERTY(QString failure READ failure NOTIFY changed)
    Q_PROPERTY(int kept READ kept NOTIFY changed)

public:
    explicit RunNote(QObject* parent) : QObject(parent) {}

    /// Where the run is kept; it must outlive this. Without one no note can be written.
    void setShelf(RunShelf* shelf) { m_shelf = shelf; }
    /// Another run, or none: what was being written is left.
    void forget();
    /// Now, as the snapshot has it.
    void begin(const RunSnapshot& snapshot);
    Q_INVOKABLE void keep(const QString& words);
    Q_INVOKABLE void cancel();

    [[nodiscard]] bool isWriting() const { return m_draft.has_value(); }
    /// "Note at 1:23".
    [[nodiscard]] QString title() const { return m_title; }
    /// Words to begin with: a note that says nothing yet still says where to look.
    [[nodiscard]] QString draft() const { return tr("Look here"); }
    /// Why it cannot be written, or was not kept; the words are still there.
    [[nodiscard]] QString failure() const { return m_failure; }
    /// How many of this run were kept.
    [[nodiscard]] int kept() const { return m_kept; }

Q_SIGNALS:
    void changed();

private:
    void answer(const Result<std::int64_t>& id);

    RunShelf* m_shelf = nullptr;
    std::optional<Note> m_draft;
    std::int64_t m_run = 0; ///< that the draft is of
    bool m_isSaving = false;
    QString m_title, m_failure;
    int m_kept = 0;
};

} // namespace flowhand
