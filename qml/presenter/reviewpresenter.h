#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/reviewcomparison.h"
#include "presenter/reviewnotes.h"
#include "presenter/rowmodel.h"
#include "presenter/runreview.h"
#include "presenter/runshelf.h"

namespace flowhand {

/// The Review place: the stored runs, kept in order, and the one that is gone through. GUI thread.
class ReviewPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(Stage stage READ stage NOTIFY stageChanged)
    Q_PROPERTY(QString failure READ failure NOTIFY stageChanged)
    Q_PROPERTY(flowhand::RowModel* runs READ runs CONSTANT)
    Q_PROPERTY(bool listed READ isListed NOTIFY listChanged)
    Q_PROPERTY(int chosen READ chosen NOTIFY listChanged)
    Q_PROPERTY(QString search READ search WRITE setSearch NOTIFY listChanged)
    Q_PROPERTY(bool deletedShown READ isDeletedShown NOTIFY listChanged)
    Q_PROPERTY(bool samplesOffered READ areSamplesOffered NOTIFY listChanged)
    Q_PROPERTY(QString undoText READ undoText NOTIFY listChanged)
    Q_PROPERTY(flowhand::RunReview* run READ run CONSTANT)
    Q_PROPERTY(flowhand::ReviewNotes* notes READ notes CONSTANT)
    Q_PROPERTY(flowhand::ReviewComparison* comparison READ comparison CONSTANT)
    Q_PROPERTY(QString written READ written NOTIFY writtenChanged)

public:
    enum Stage { Listing, Opening, Reviewing };
    Q_ENUM(Stage)
    /// What a run is written as, for others: the debrief as a page, what happened and every signal as tables, all of
    /// it.
    enum Export { Page, Events, Signals, Archive };
    Q_ENUM(Export)

    /// Finds the ground that an aircraft (its folder's name) is flown on, by today's files; null: there is none. Called
    /// on any thread.
    using FindGround = std::function<std::shared_ptr<const GroundScene>(const std::string& aircraft)>;

    /// `shelf` must outlive it. Without `findGround` no run has a ground.
    explicit ReviewPresenter(RunShelf& shelf, FindGround findGround = {}, QObject* parent = nullptr);
    ~ReviewPresenter() override;

    /// For the runs that are opened from now on.
    void useGround(FindGround findGround) { m_findGround = std::move(findGround); }

    /// Lists the runs anew: one may have been flown since.
    Q_INVOKABLE void enter();
    /// Everything that is shown, in the language of now.
    void tellAnew();
    /// Stops what plays.
    Q_INVOKABLE void leave();
    /// A row of `runs`.
    Q_INVOKABLE void choose(int row);
    Q_INVOKABLE void open(int row);
    /// By its number.
    Q_INVOKABLE void openRun(int run);
    /// Back to the list.
    Q_INVOKABLE void close();
    /// Of the chosen run: makes it the one that others of its flow are compared with, or takes that back.
    Q_INVOKABLE void toggleReference();
    /// Of the chosen run: adds a tag, or takes it away where the run has it.
    Q_INVOKABLE void toggleTag(const QString& name);
    /// Deletes the chosen run, or restores it where deleted ones are shown.
    Q_INVOKABLE void remove();
    /// Takes the last deletion back.
    Q_INVOKABLE void undo();
    Q_INVOKABLE void toggleDeleted();
    /// Adds the sample runs to the list.
    Q_INVOKABLE void takeInSamples();
    /// Begins a note at the held time.
    Q_INVOKABLE void noteHere();
    /// Begins a ruling on the chosen finding, or its cause.
    Q_INVOKABLE void ruleOnChosen();
    Q_INVOKABLE void causeOfChosen();
    /// Writes the run into the folder of the person's documents; `written` says where, or why not. An Export.
    Q_INVOKABLE void exportAs(int what);

    [[nodiscard]] Stage stage() const { return m_stage; }
    /// Why the runs cannot be listed, or this one not opened or changed; empty: nothing is wrong.
    [[nodiscard]] QString failure() const { return m_failure; }
    [[nodiscard]] RowModel* runs() { return &m_runs; }
    /// False until the list has come for the first time.
    [[nodiscard]] bool isListed() const { return m_isListed; }
    [[nodiscard]] int chosen() const { return m_chosen; }
    [[nodiscard]] QString search() const { return m_search; }
    void setSearch(const QString& text);
    [[nodiscard]] bool isDeletedShown() const { return m_isDeletedShown; }
    /// There are sample runs, and none of them is listed.
    [[nodiscard]] bool areSamplesOffered() const;
    /// Where their archives are; until it is set there are none.
    void setSampleFolder(const std::string& folder) { m_sampleFolder = folder; }
    /// "Run 12 was deleted."; empty: there is nothing to take back.
    [[nodiscard]] QString undoText() const;
    [[nodiscard]] RunReview* run() { return &m_run; }
    [[nodiscard]] ReviewNotes* notes() { return &m_notes; }
    [[nodiscard]] ReviewComparison* comparison() { return &m_comparison; }
    [[nodiscard]] QString written() const { return m_written; }
    /// For what is written; the person's documents unless it is set.
    void setExportFolder(const QString& folder) { m_exportFolder = folder; }
    [[nodiscard]] const std::vector<RunSummary>& summaries() const { return m_summaries; }

Q_SIGNALS:
    void stageChanged();
    void listChanged();
    void writtenChanged();

private:
    [[nodiscard]] const RunSummary* chosenRun() const;
    void list();
    void take(const std::vector<RunSummary>& runs);
    void change(std::function<Status(Store&)> change, std::function<void()> whenDone = {});
    void setWritten(const QString& written);
    void setStage(Stage stage, const QString& failure = {});

    RunShelf& m_shelf;
    FindGround m_findGround;
    Stage m_stage = Listing;
    QString m_failure;
    QString m_listFailure;               ///< what listing failed of; the next list that comes takes it away
    std::vector<RunSummary> m_summaries; ///< by row
    RowModel m_runs;
    bool m_isListed = false;
    bool m_isDeletedShown = false;
    int m_chosen = 0;
    std::int64_t m_newest = 0; ///< that was ever listed
    QString m_search;
    std::string m_sampleFolder;
    std::optional<std::int64_t> m_deleted; ///< the last one
    int m_asked = 0;                       ///< counts questions: an answer to an earlier one is dropped
    RunReview m_run;
    ReviewNotes m_notes;
    ReviewComparison m_comparison;
    QString m_exportFolder;
    QString m_written;
};

} // namespace flowhand
