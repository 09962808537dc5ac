#pragma once

#include <memory>
#include <utility>

#include <QObject>
#include <QTimer>
#include <QtQml/qqmlregistration.h>

#include "feed/feed.h"
#include "presenter/currentlibrary.h"
#include "presenter/rowmodel.h"
#include "presenter/rows.h"

namespace flowhand {

/// Where the motion of the runs comes from: the practice aircraft, or a feed that the pilot has written down; and what
/// that feed says, while it is being tried. GUI thread.
class FeedPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Fly place's presenter")
    /// As FeedSpec reads it; empty: the practice aircraft.
    Q_PROPERTY(QString chosen READ chosen NOTIFY chosenChanged)
    Q_PROPERTY(QString title READ title NOTIFY chosenChanged)
    /// The pilot is at it.
    Q_PROPERTY(bool editing READ isEditing WRITE setEditing NOTIFY changed)
    Q_PROPERTY(QString problem READ problem NOTIFY changed)
    Q_PROPERTY(bool listening READ isListening NOTIFY changed)
    /// In a line: how it does, or why nothing comes.
    Q_PROPERTY(QString heard READ heard NOTIFY changed)
    /// Rate, clock, delay, and how much could not be taken.
    Q_PROPERTY(flowhand::RowModel* readings READ readings CONSTANT)
    /// What it says now, and what it does not say.
    Q_PROPERTY(QString values READ values NOTIFY changed)
    Q_PROPERTY(QString missing READ missing NOTIFY changed)
    /// What could not be taken, by kind.
    Q_PROPERTY(QString counts READ counts NOTIFY changed)

public:
    /// The signals of the aircraft that has most are listened for.
    explicit FeedPresenter(LibraryPtr library, QObject* parent = nullptr);
    ~FeedPresenter() override;

    /// From the next listen() on.
    void offer(LibraryPtr library) { m_library = std::move(library); }
    /// Opens the feed and shows what it says, until stop(). What is wrong with it becomes `problem`.
    Q_INVOKABLE void listen(const QString& text);
    Q_INVOKABLE void stop();
    /// From the next run on; empty: the practice aircraft. Nothing changes when the text is no feed: `problem` says
    /// why.
    Q_INVOKABLE void choose(const QString& text);

    [[nodiscard]] QString chosen() const { return m_chosen; }
    [[nodiscard]] QString title() const { return m_title; }
    [[nodiscard]] bool isEditing() const { return m_isEditing; }
    void setEditing(bool isEditing);
    [[nodiscard]] QString problem() const { return m_problem; }
    [[nodiscard]] bool isListening() const { return m_feed != nullptr; }
    [[nodiscard]] QString heard() const { return m_heard; }
    [[nodiscard]] RowModel* readings() { return &m_readings; }
    [[nodiscard]] QString values() const { return m_values; }
    [[nodiscard]] QString missing() const { return m_missing; }
    [[nodiscard]] QString counts() const { return m_counts; }

Q_SIGNALS:
    void chosenChanged();
    void changed();

private:
    [[nodiscard]] Result<FeedSpec> read(const QString& text);
    void look();
    void show(const FeedStatus& status);

    LibraryPtr m_library;
    SteadyClock m_clock;
    std::shared_ptr<const Aircraft> m_aircraft; ///< that the feed is tried with
    std::unique_ptr<Feed> m_feed;
    QTimer m_timer;
    QString m_chosen;
    QString m_title;
    QString m_problem;
    QString m_heard, m_values, m_missing, m_counts;
    RowModel m_readings;
    bool m_isEditing = false;
};

} // namespace flowhand
