#include "presenter/reviewpresenter.h"

#include <algorithm>

#include <QPointer>

#include "command/loadrun.h"
#include "command/takein.h"
#include "presenter/reviewfacts.h"

namespace flowhand {

ReviewPresenter::ReviewPresenter(RunShelf& shelf, FindGround findGround, QObject* parent)
    : QObject(parent), m_shelf(shelf), m_findGround(std::move(findGround)),
      m_runs(StoredRunRow::staticMetaObject, this), m_run(this), m_notes(shelf, this), m_comparison(shelf, this) {
    connect(&m_notes, &ReviewNotes::changed, this, [this] {
        m_run.setNotes(m_notes.notes());
    });
}

ReviewPresenter::~ReviewPresenter() = default;

void ReviewPresenter::enter() {
    list();
}

void ReviewPresenter::tellAnew() {
    m_runs.setRows(storedRunRows(m_summaries));
    m_run.tellAnew();
    m_notes.tellAnew(); // with them the deviations
    m_comparison.tellAnew();
    Q_EMIT listChanged();
}

void ReviewPresenter::list() {
    RunQuery query;
    query.text = m_search.trimmed().toStdString();
    query.isDeleted = m_isDeletedShown;
    m_shelf.ask<std::vector<RunSummary>>(
        [query](Store& store) {
            return store.runs(query);
        },
        [this, self = QPointer(this), query](Result<std::vector<RunSummary>> runs) {
            // What was asked for since has an answer of its own.
            if (!self || query.text != m_search.trimmed().toStdString() || query.isDeleted != m_isDeletedShown)
                return;
            if (!runs)
                return setStage(m_stage, m_listFailure = QString::fromStdString(describe(runs.error())));
            if (!m_listFailure.isEmpty() && m_failure == std::exchange(m_listFailure, {}))
                setStage(m_stage);
            take(*runs);
        });
}

void ReviewPresenter::take(const std::vector<RunSummary>& runs) {
    const std::int64_t before = chosenRun() != nullptr ? chosenRun()->id : 0;
    const bool isFlownSince = m_isListed && !runs.empty() && runs.front().id > m_newest;
    m_summaries = runs;
    m_runs.setRows(storedRunRows(m_summaries));
    const auto same = std::find_if(m_summaries.begin(), m_summaries.end(), [before](const RunSummary& run) {
        return run.id == before;
    });
    if (isFlownSince)
        m_chosen = 0;
    else if (same != m_summaries.end())
        m_chosen = static_cast<int>(same - m_summaries.begin());
    m_chosen = std::clamp(m_chosen, 0, std::max(m_runs.count() - 1, 0));
    for (const RunSummary& run : m_summaries)
        m_newest = std::max(m_newest, run.id);
    m_isListed = true;
    Q_EMIT listChanged();
}

const RunSummary* ReviewPresenter::chosenRun() const {
    return m_chosen < static_cast<int>(m_summaries.size()) ? &m_summaries[static_cast<std::size_t>(m_chosen)] : nullptr;
}

void ReviewPresenter::choose(int row) {
    m_chosen = std::clamp(row, 0, std::max(m_runs.count() - 1, 0));
    Q_EMIT listChanged();
}

void ReviewPresenter::open(int row) {
    choose(row);
    if (const RunSummary* run = chosenRun())
        openRun(static_cast<int>(run->id));
}

void ReviewPresenter::openRun(int run) {
    struct Opened {
        std::shared_ptr<const StoredDebrief> debrief;
        std::shared_ptr<const GroundScene> scene;
    };
    setStage(Opening);
    m_shelf.ask<Opened>(
        [run, findGround = m_findGround](Store& store) -> Result<Opened> {
            Result<StoredDebrief> debrief = loadDebrief(store, run);
            if (!debrief)
                return tl::unexpected(debrief.error());
            Opened opened{std::make_shared<const StoredDebrief>(std::move(*debrief)), nullptr};
            if (findGround)
                opened.scene = findGround(opened.debrief->timeline().run().header.aircraftFolder);
            return opened;
        },
        [this, self = QPointer(this), asked = ++m_asked](Result<Opened> opened) {
            if (!self || asked != m_asked || m_stage != Opening)
                return;
            if (!opened)
                return setStage(Listing, QString::fromStdString(describe(opened.error())));
            m_run.show(opened->debrief, opened->scene);
            m_notes.show(opened->debrief);
            m_comparison.show(opened->debrief);
            setWritten({});
            setStage(Reviewing);
        });
}

void ReviewPresenter::leave() {
    if (m_stage == Reviewing && m_run.timeline()->isPlaying())
        m_run.timeline()->togglePlay();
}

void ReviewPresenter::close() {
    leave();
    setStage(Listing);
    list();
}

void ReviewPresenter::change(std::function<Status(Store&)> change, std::function<void()> whenDone) {
    m_shelf.ask<void>(std::move(change), [this, self = QPointer(this), whenDone = std::move(whenDone)](Status changed) {
        if (!self)
            return;
        if (changed && whenDone)
            whenDone();
        setStage(m_stage, changed ? QString() : QString::fromStdString(describe(changed.error())));
        list();
    });
}

void ReviewPresenter::toggleReference() {
    const RunSummary* const run = chosenRun();
    if (run == nullptr)
        return;
    change([id = run->id, isReference = run->isReference](Store& store) {
        return isReference ? store.clearReference(id) : store.setReference(id);
    });
}

void ReviewPresenter::toggleTag(const QString& name) {
    const RunSummary* const run = chosenRun();
    if (run == nullptr)
        return;
    const std::string tag = name.trimmed().toStdString();
    const bool hasTag = std::find(run->tags.begin(), run->tags.end(), tag) != run->tags.end();
    change([id = run->id, tag, hasTag](Store& store) {
        return hasTag ? store.untag(id, tag) : store.tag(id, tag);
    });
}

void ReviewPresenter::remove() {
    const RunSummary* const run = chosenRun();
    if (run == nullptr)
        return;
    const bool isDeleted = run->isDeleted;
    change(
        [id = run->id, isDeleted](Store& store) {
            return isDeleted ? store.restore(id) : store.remove(id);
        },
        [this, id = run->id, isDeleted] {
            m_deleted = isDeleted ? std::nullopt : std::optional(id);
        });
}

void ReviewPresenter::undo() {
    if (!m_deleted)
        return;
    change(
        [id = *m_deleted](Store& store) {
            return store.restore(id);
        },
        [this] {
            m_deleted.reset();
        });
}

void ReviewPresenter::toggleDeleted() {
    m_isDeletedShown = !m_isDeletedShown;
    Q_EMIT listChanged();
    list();
}

void ReviewPresenter::takeInSamples() {
    if (!m_sampleFolder.empty())
        change([folder = m_sampleFolder](Store& store) {
            return flowhand::takeInSamples(store, folder);
        });
}

bool ReviewPresenter::areSamplesOffered() const {
    return !m_sampleFolder.empty() && m_isListed && !m_isDeletedShown && m_search.isEmpty() &&
           std::none_of(m_summaries.begin(), m_summaries.end(), [](const RunSummary& run) {
               return std::find(run.tags.begin(), run.tags.end(), kSampleTag) != run.tags.end();
           });
}

void ReviewPresenter::setSearch(const QString& text) {
    if (text == m_search)
        return;
    m_search = text;
    Q_EMIT listChanged();
    list();
}

void ReviewPresenter::noteHere() {
    m_notes.beginAt(m_run.timeline()->heldTime());
}

void ReviewPresenter::ruleOnChosen() {
    m_notes.beginOn(ReviewNotes::Ruling, m_run.chosenStep(), m_run.chosenGuard());
}

void ReviewPresenter::causeOfChosen() {
    m_notes.beginOn(ReviewNotes::Cause, m_run.chosenStep(), m_run.chosenGuard());
}

void ReviewPresenter::setWritten(const QString& written) {
    m_written = written;
    Q_EMIT writtenChanged();
}

QString ReviewPresenter::undoText() const {
    return m_deleted ? tr("Run %1 was deleted.").arg(*m_deleted) : QString();
}

void ReviewPresenter::setStage(Stage stage, const QString& failure) {
    m_stage = stage;
    m_failure = failure;
    Q_EMIT stageChanged();
}

} // namespace flowhand
