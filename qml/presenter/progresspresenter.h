#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include <QList>
#include <QObject>
#include <QPointF>
#include <QtQml/qqmlregistration.h>

#include "presenter/currentlibrary.h"
#include "presenter/phrasetext.h"
#include "presenter/rowmodel.h"
#include "presenter/runshelf.h"
#include "progress/progress.h"

namespace flowhand {

/// The Progress place: what to practise today and why, and how each flow has gone, by one pilot on one rig unless it is
/// asked to mix them. GUI thread.
class ProgressPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(bool listed READ isListed NOTIFY changed)
    Q_PROPERTY(QString failure READ failure NOTIFY changed)
    Q_PROPERTY(QString remarks READ remarks NOTIFY changed)
    Q_PROPERTY(QString whose READ whose NOTIFY changed)
    Q_PROPERTY(int lines READ lines NOTIFY changed)
    Q_PROPERTY(bool mixed READ isMixed NOTIFY changed)
    Q_PROPERTY(flowhand::RowModel* phases READ phases CONSTANT)
    Q_PROPERTY(flowhand::RowModel* planned READ planned CONSTANT)
    Q_PROPERTY(QString later READ later NOTIFY changed)
    Q_PROPERTY(flowhand::RowModel* ahead READ ahead CONSTANT)
    Q_PROPERTY(QString modelNote READ modelNote NOTIFY changed)
    Q_PROPERTY(flowhand::RowModel* flows READ flows CONSTANT)
    Q_PROPERTY(int chosen READ chosen NOTIFY chosenChanged)
    Q_PROPERTY(QString title READ title NOTIFY chosenChanged)
    Q_PROPERTY(QString scoreTrend READ scoreTrend NOTIFY chosenChanged)
    Q_PROPERTY(QString paceTrend READ paceTrend NOTIFY chosenChanged)
    Q_PROPERTY(QString curve READ curve NOTIFY chosenChanged)
    Q_PROPERTY(QList<QPointF> scorePoints READ scores NOTIFY chosenChanged)
    Q_PROPERTY(QList<QPointF> pacePoints READ paces NOTIFY chosenChanged)
    Q_PROPERTY(QList<QPointF> curvePoints READ curveLine NOTIFY chosenChanged)
    Q_PROPERTY(QList<int> passedRuns READ passed NOTIFY chosenChanged)
    Q_PROPERTY(int runs READ runs NOTIFY chosenChanged)
    Q_PROPERTY(int rateRuns READ rateRuns NOTIFY chosenChanged)
    Q_PROPERTY(flowhand::RowModel* steps READ steps CONSTANT)

public:
    /// Unix time in ms.
    using WallClock = std::function<std::int64_t()>;

    /// `shelf`, of the runs in `storeFile`, must outlive it.
    ProgressPresenter(RunShelf& shelf, std::string storeFile, LibraryPtr library, WallClock clock,
                      QObject* parent = nullptr);

    /// Plans with these flows from now on.
    void offer(LibraryPtr library);

    /// Everything that is shown, in the language of now.
    void tellAnew();

    /// Reads from another file from now on, which the shelf then opens, too.
    void useStore(const std::string& storeFile) { m_storeFile = storeFile; }

    /// Reads the runs anew: one may have been flown since.
    Q_INVOKABLE void enter();
    /// A row of `flows`.
    Q_INVOKABLE void choose(int row);
    /// The next pilot and rig of those that there are.
    Q_INVOKABLE void nextLine();
    /// Mixes the runs of all pilots on all rigs, or takes that back.
    Q_INVOKABLE void toggleMixed();
    /// Asks for a flow of the plan, or the chosen one, to be flown.
    Q_INVOKABLE void flyPlanned(int row);
    Q_INVOKABLE void flyChosen();

    /// False until the runs have come for the first time.
    [[nodiscard]] bool isListed() const { return m_isListed; }
    [[nodiscard]] QString failure() const { return m_failure; }
    /// What could not be read; empty: all could.
    [[nodiscard]] QString remarks() const;
    /// "Kim, on Desk quadrant: 12 runs, 2 of them with simulated input"; empty: nobody has flown yet.
    [[nodiscard]] QString whose() const;
    /// How many pilots and rigs there are.
    [[nodiscard]] int lines() const { return static_cast<int>(m_record.lines.size()); }
    [[nodiscard]] bool isMixed() const { return m_record.isEveryPilot; }
    [[nodiscard]] RowModel* phases() { return &m_phases; }
    [[nodiscard]] RowModel* planned() { return &m_planned; }
    [[nodiscard]] QString later() const { return textOf(m_progress.plan.later); }
    [[nodiscard]] RowModel* ahead() { return &m_ahead; }
    [[nodiscard]] QString modelNote() const { return textOf(forgettingNote()); }
    [[nodiscard]] RowModel* flows() { return &m_flows; }
    [[nodiscard]] int chosen() const { return m_chosen; }
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString scoreTrend() const;
    [[nodiscard]] QString paceTrend() const;
    [[nodiscard]] QString curve() const;
    [[nodiscard]] QList<QPointF> scores() const;
    [[nodiscard]] QList<QPointF> paces() const;
    [[nodiscard]] QList<QPointF> curveLine() const;
    [[nodiscard]] QList<int> passed() const;
    [[nodiscard]] int runs() const;
    /// Of how many of them the rates tell.
    [[nodiscard]] int rateRuns() const;
    [[nodiscard]] RowModel* steps() { return &m_steps; }

Q_SIGNALS:
    void changed();
    void chosenChanged();
    void flyAsked(const QString& aircraft, const QString& flow);

private:
    [[nodiscard]] const FlowProgress* chosenFlow() const;
    void take(PracticeRecord record);
    void ask(const FlowName& flow);

    RunShelf& m_shelf; ///< opens the store, and reads of it away from the window
    std::string m_storeFile;
    LibraryPtr m_library;
    WallClock m_clock;
    PracticeWish m_wish;
    PracticeRecord m_record;
    Progress m_progress;
    bool m_isListed = false;
    QString m_failure;
    int m_chosen = 0;
    int m_asked = 0; ///< counts questions: an answer to an earlier one is dropped
    RowModel m_phases, m_planned, m_ahead, m_flows, m_steps;
};

} // namespace flowhand
