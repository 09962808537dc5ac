#include "presenter/runreview.h"

#include "presenter/heldground.h"
#include "presenter/lanebars.h"
#include "presenter/phrasetext.h"
#include "presenter/reviewfacts.h"
#include "presenter/stepfacts.h"
#include "report/findings.h"

namespace flowhand {

RunReview::RunReview(QObject* parent)
    : QObject(parent), m_timeline(this), m_controls(this), m_ground(this), m_motion(MotionRow::staticMetaObject, this),
      m_deviations(DeviationRow::staticMetaObject, this), m_steps(ReviewStepRow::staticMetaObject, this),
      m_evidence(EvidenceRow::staticMetaObject, this), m_remarks(RemarkRow::staticMetaObject, this),
      m_repairs(RemarkRow::staticMetaObject, this) {
    connect(&m_timeline, &ReviewTimeline::nowChanged, this, &RunReview::showHeld);
}

RunReview::~RunReview() = default;

void RunReview::show(std::shared_ptr<const StoredDebrief> debrief, std::shared_ptr<const GroundScene> scene) {
    const std::shared_ptr<const StoredDebrief> before =
        std::exchange(m_debrief, std::move(debrief)); // until all is shown
    const Timeline& timeline = m_debrief->timeline();
    const ReviewedRun& run = timeline.run();
    m_chosenDeviation = m_chosenStep = -1;
    m_figures.clear();
    m_controls.setAircraft(&run.aircraft, &run.flow);
    for (ControlState* control : m_controls.all())
        control->setMovable(false);
    m_ground.begin(std::move(scene), run.flow);
    m_timeline.show(timeline, m_debrief->run().notes);
    showWords();
    setNotes(m_debrief->run().notes);
    showHeld();
    showEvidence();
    Q_EMIT runChanged();
    if (m_deviations.count() > 0)
        chooseDeviation(0);
    else
        Q_EMIT chosenChanged();
}

void RunReview::showWords() {
    m_steps.setRows(reviewStepRows(m_debrief->timeline()));
    m_remarks.setRows(remarkRows(m_debrief->input()));
    m_repairs.setRows(repairRows(m_debrief->timeline()));
}

void RunReview::tellAnew() {
    if (!m_debrief)
        return;
    showWords();
    m_timeline.tellAnew();
    showHeld();
    showEvidence();
    Q_EMIT runChanged();
    Q_EMIT chosenChanged();
}

void RunReview::setNotes(const std::vector<Note>& notes) {
    m_deviations.setRows(deviationRows(m_debrief->timeline(), notes));
    m_timeline.setNotes(notes);
}

void RunReview::chooseDeviation(int row) {
    const std::vector<Deviation>& all = m_debrief->timeline().deviations();
    if (row < 0 || row >= static_cast<int>(all.size()))
        return;
    m_chosenDeviation = row;
    const Deviation& chosen = all[static_cast<std::size_t>(row)];
    m_chosenStep = chosen.step;
    m_timeline.setChosenStep(m_chosenStep);
    m_timeline.hold(seconds(chosen.time));
    showEvidence();
    Q_EMIT chosenChanged();
}

void RunReview::chooseStep(int step) {
    const std::vector<StepTimes>& all = m_debrief->timeline().steps();
    if (step < 0 || step >= static_cast<int>(all.size()))
        return;
    m_chosenStep = step;
    m_chosenDeviation = -1;
    const std::vector<Deviation>& deviations = m_debrief->timeline().deviations();
    for (std::size_t i = deviations.size(); i-- > 0;)
        if (deviations[i].step == step)
            m_chosenDeviation = static_cast<int>(i);
    m_timeline.setChosenStep(step);
    const StepTimes& times = all[static_cast<std::size_t>(step)];
    if (const std::optional<Time> time = times.due ? times.due : times.done ? times.done : times.ended)
        m_timeline.hold(seconds(*time));
    showEvidence();
    Q_EMIT chosenChanged();
}

bool RunReview::pressFigure(int figure) {
    const int digits = m_deviations.count() > 9 ? 2 : 1;
    m_figures += QString::number(figure);
    if (m_figures.size() < digits)
        return true;
    const int row = deviationOfKeys(std::exchange(m_figures, QString()), m_deviations.count());
    chooseDeviation(row);
    return row >= 0;
}

void RunReview::showHeld() {
    if (!m_debrief)
        return;
    RunSnapshot snapshot;
    snapshot.values = m_debrief->timeline().valuesAt(m_timeline.heldTime());
    m_controls.setValues(snapshot.values);
    m_motion.setRows(motionRows(reviewed().aircraft, snapshot));
    if (const GroundScene* const scene = m_ground.scene())
        m_ground.show(groundWay(m_debrief->timeline(), *scene, m_timeline.heldTime()));
}

void RunReview::showEvidence() {
    const Timeline& timeline = m_debrief->timeline();
    m_evidence.setRows(m_chosenStep >= 0    ? evidenceRows(timeline, static_cast<std::size_t>(m_chosenStep))
                       : chosenGuard() >= 0 ? guardEvidenceRows(timeline, static_cast<std::size_t>(chosenGuard()))
                                            : std::vector<EvidenceRow>());
}

const Deviation* RunReview::deviation() const {
    return m_chosenDeviation < 0 ? nullptr
                                 : &m_debrief->timeline().deviations()[static_cast<std::size_t>(m_chosenDeviation)];
}

int RunReview::chosenGuard() const {
    const Deviation* const chosen = m_debrief ? deviation() : nullptr;
    return chosen != nullptr && m_chosenStep < 0 ? chosen->guard : -1;
}

QString RunReview::title() const {
    return m_debrief ? QString::fromStdString(reviewed().flow.title) : QString();
}

QString RunReview::subtitle() const {
    if (!m_debrief)
        return {};
    const RunHeader& header = reviewed().header;
    QStringList parts = {tr("Run %1").arg(m_debrief->run().summary.id),
                         QString::fromStdString(wallTime(header.startedUnixMillis)),
                         QString::fromStdString(header.pilot),
                         QString::fromStdString(header.rigTitle),
                         QString::fromStdString(clockText(m_debrief->timeline().length())),
                         m_debrief->run().summary.isSimulated ? tr("simulated input") : QString()};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

QString RunReview::scoreText() const {
    if (!m_debrief || !reviewed().score.isScored)
        return {};
    const Score& score = reviewed().score;
    return score.upperMilliPoints > score.milliPoints
               ? tr("%1 to %2").arg(shownPoints(score.milliPoints), shownPoints(score.upperMilliPoints))
               : shownPoints(score.milliPoints);
}

QString RunReview::verdictText() const {
    if (!m_debrief)
        return {};
    if (!reviewed().score.isScored)
        return tr("Not scored");
    return reviewed().score.isPassed ? tr("Passed") : tr("Not passed");
}

int RunReview::verdict() const {
    if (!m_debrief || !reviewed().score.isScored)
        return Verdict::LeftOut;
    return reviewed().score.isPassed ? Verdict::Done : Verdict::Wrong;
}

QString RunReview::wentWell() const {
    return m_debrief ? textOf(flowhand::wentWell(reviewed())) : QString();
}

QString RunReview::damage() const {
    if (!m_debrief)
        return {};
    QStringList parts;
    if (!m_debrief->run().summary.isFinished)
        parts << tr("The program ended in mid-run; this is what was recovered of it.");
    const std::vector<std::string>& damage = m_debrief->run().damage;
    if (damage.size() == 1)
        parts << tr("Damaged in the store: %1.").arg(QString::fromStdString(damage.front()));
    else if (!damage.empty())
        parts << tr("%1 parts of it are damaged in the store: F8 tells which.").arg(damage.size());
    return parts.join(QLatin1Char(' '));
}

QString RunReview::chosenTitle() const {
    if (!m_debrief)
        return {};
    if (m_chosenStep >= 0)
        return QString::fromStdString(reviewed().flow.steps[static_cast<std::size_t>(m_chosenStep)].title);
    const Deviation* const chosen = deviation();
    return chosen != nullptr && chosen->guard >= 0
               ? QString::fromStdString(reviewed().flow.guards[static_cast<std::size_t>(chosen->guard)].title)
               : QString();
}

QString RunReview::chosenWord() const {
    if (!m_debrief)
        return {};
    if (m_chosenStep >= 0)
        return textOf(
            stepVerdict(reviewed().flow, reviewed().results, reviewed().score, static_cast<std::size_t>(m_chosenStep)));
    const Deviation* const chosen = deviation();
    if (chosen == nullptr)
        return {};
    if (chosen->guard < 0)
        return textOf(chosen->text);
    const std::size_t times = m_debrief->timeline().guards()[static_cast<std::size_t>(chosen->guard)].size();
    return times == 1 ? tr("broken once") : tr("broken %1 times").arg(times);
}

int RunReview::chosenVerdict() const {
    if (!m_debrief)
        return Verdict::Waiting;
    if (m_chosenStep >= 0)
        return verdictOfStep(reviewed(), static_cast<std::size_t>(m_chosenStep));
    const Deviation* const chosen = deviation();
    return chosen != nullptr ? lossKind(chosen->what) : Verdict::Waiting;
}

} // namespace flowhand
