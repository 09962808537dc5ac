#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/rowmodel.h"
#include "presenter/runshelf.h"
#include "report/storeddebrief.h"
#include "review/comparison.h"

namespace flowhand {

/// The run that is gone through, step by step beside another one of its flow: the flow's reference, or the one before
/// it, or any. GUI thread.
class ReviewComparison : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Review place's presenter")
    Q_PROPERTY(flowhand::RowModel* steps READ steps CONSTANT)
    Q_PROPERTY(flowhand::RowModel* others READ others CONSTANT)
    Q_PROPERTY(int other READ other NOTIFY changed)
    Q_PROPERTY(bool looked READ hasLooked NOTIFY changed)
    Q_PROPERTY(QString title READ title NOTIFY changed)
    Q_PROPERTY(QString remarks READ remarks NOTIFY changed)
    Q_PROPERTY(QString failure READ failure NOTIFY changed)

public:
    /// `shelf` must outlive it.
    ReviewComparison(RunShelf& shelf, QObject* parent);

    void show(std::shared_ptr<const StoredDebrief> debrief);
    /// Looks for runs to compare with, and takes the likeliest.
    Q_INVOKABLE void enter();
    /// By its number.
    Q_INVOKABLE void compareWith(int run);
    /// The next of `others`.
    Q_INVOKABLE void next();
    /// Everything that is shown, in the language of now.
    void tellAnew();

    [[nodiscard]] RowModel* steps() { return &m_steps; }
    [[nodiscard]] RowModel* others() { return &m_others; }
    /// The number of the run that is compared with; 0: none.
    [[nodiscard]] int other() const { return m_other; }
    [[nodiscard]] bool hasLooked() const { return m_hasLooked; }
    [[nodiscard]] QString title() const { return m_title; }
    /// What of the two runs is not the same as a whole.
    [[nodiscard]] QString remarks() const { return m_remarks; }
    [[nodiscard]] QString failure() const { return m_failure; }

Q_SIGNALS:
    void changed();

private:
    void offer(std::vector<RunSummary> runs);
    void showOthers();
    void showComparison();

    RunShelf& m_shelf;
    std::shared_ptr<const StoredDebrief> m_debrief;
    std::vector<RunSummary> m_offered;
    std::optional<RunComparison> m_comparison; ///< none: nothing is compared yet
    RowModel m_steps, m_others;
    int m_other = 0;
    bool m_hasLooked = false;
    QString m_title;
    QString m_remarks;
    QString m_failure;
};

} // namespace flowhand
