#include "presenter/reviewfacts.h"

#include <algorithm>

#include "presenter/lanebars.h"
#include "presenter/phrasetext.h"
#include "presenter/stepfacts.h"
#include "presenter/verdict.h"
#include "report/findings.h"

namespace flowhand {

namespace {

QString words(const std::string& text) {
    return QString::fromStdString(text);
}

/// Figures alone as long as they are single ones; else two each.
QString keysOf(int row, int count) {
    return count <= 9 ? QString::number(row + 1) : QStringLiteral("%1").arg(row + 1, 2, 10, QLatin1Char('0'));
}

int verdictOfRun(const RunSummary& run) {
    if (run.isDamaged)
        return Verdict::Wrong;
    if (!run.isFinished)
        return Verdict::Unsure;
    if (!run.isScored)
        return Verdict::LeftOut;
    return run.isPassed ? Verdict::Done : Verdict::Wrong;
}

QString wordOfRun(const RunSummary& run) {
    if (run.isDamaged)
        return QObject::tr("damaged");
    if (!run.isFinished)
        return QObject::tr("recovered");
    if (!run.isScored)
        return QObject::tr("not scored");
    return run.isPassed ? QObject::tr("passed") : QObject::tr("not passed");
}

/// Those that say something.
QString joinedWords(QStringList parts) {
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

StoredRunRow rowOf(const RunSummary& run) {
    StoredRunRow row;
    row.rowId = static_cast<int>(run.id);
    row.flow = run.isDamaged ? QObject::tr("Run %1 cannot be read as a whole").arg(run.id) : words(run.flowTitle);
    row.verdict = verdictOfRun(run);
    row.word = wordOfRun(run);
    row.reference = run.isReference;
    QStringList tags;
    for (const std::string& tag : run.tags)
        tags << words(tag);
    row.tags = tags.join(QStringLiteral(", "));
    if (run.isDamaged)
        return row;
    row.date = words(wallTime(run.startedUnixMillis));
    row.detail = joinedWords(
        {words(run.pilot), words(run.rigTitle), words(run.aircraftFolder).replace(QLatin1Char('_'), QLatin1Char(' '))});
    row.length = words(clockText(run.length));
    if (run.isScored && run.isFinished)
        row.score = shownPoints(run.milliPoints);
    row.marks = joinedWords({run.isSimulated ? QObject::tr("simulated input") : QString(),
                             run.notes == 1  ? QObject::tr("1 note")
                             : run.notes > 1 ? QObject::tr("%1 notes").arg(run.notes)
                                             : QString()});
    return row;
}

const Repair* repairOf(const Timeline& timeline, const Deviation& deviation) {
    for (const Repair& repair : timeline.repairs())
        if (deviation.guard >= 0 ? repair.guard == deviation.guard
                                 : repair.guard < 0 && repair.step == deviation.step && repair.time == deviation.time)
            return &repair;
    return nullptr;
}

/// The instructor's ruling and cause of a finding.
QString rulingOn(const Deviation& deviation, const Flow& flow, const std::vector<Note>& notes) {
    QStringList parts;
    for (const Note& note : notes) {
        if (note.kind != NoteKind::Ruling && note.kind != NoteKind::Cause)
            continue;
        const bool isOfIt = deviation.guard >= 0
                                ? note.guard == flow.guards[static_cast<std::size_t>(deviation.guard)].id
                                : note.guard.empty() && deviation.step >= 0 &&
                                      note.anchor.step == flow.steps[static_cast<std::size_t>(deviation.step)].id;
        if (!isOfIt)
            continue;
        QString part = (note.kind == NoteKind::Ruling ? QObject::tr("Ruling: %1") : QObject::tr("Cause: %1"))
                           .arg(textOf(choiceWords(note.choice)));
        if (!note.text.empty())
            part += QStringLiteral(", ") + words(note.text);
        parts << part;
    }
    return parts.join(QStringLiteral(" · "));
}

/// A loss too small for a tenth is still told.
QString lostPoints(std::int64_t milliPoints) {
    return milliPoints < 100 ? words(pointsText(milliPoints)) : shownPoints(milliPoints);
}

QString tenths(Duration duration) {
    return QObject::tr("%1 s").arg(seconds(duration), 0, 'f', 1);
}

} // namespace

std::vector<StoredRunRow> storedRunRows(const std::vector<RunSummary>& runs) {
    std::vector<StoredRunRow> rows;
    for (const RunSummary& run : runs)
        rows.push_back(rowOf(run));
    return rows;
}

std::vector<DeviationRow> deviationRows(const Timeline& timeline, const std::vector<Note>& notes) {
    std::vector<DeviationRow> rows;
    const auto count = static_cast<int>(timeline.deviations().size());
    for (const Deviation& deviation : timeline.deviations()) {
        DeviationRow row;
        row.rowId = static_cast<int>(rows.size());
        row.keys = keysOf(row.rowId, count);
        row.points = QChar(0x2212) + lostPoints(deviation.milliPoints);
        row.time = words(clockText(deviation.time));
        row.sentence = sentenceOf(deviation.text);
        row.verdict = lossKind(deviation.what);
        if (const Repair* repair = repairOf(timeline, deviation))
            row.repair = textOf(repairText(*repair));
        row.ruling = rulingOn(deviation, timeline.run().flow, notes);
        rows.push_back(row);
    }
    return rows;
}

int deviationOfKeys(const QString& figures, int count) {
    for (int row = 0; row < count; ++row)
        if (keysOf(row, count) == figures)
            return row;
    return -1;
}

std::vector<ReviewStepRow> reviewStepRows(const Timeline& timeline) {
    const ReviewedRun& run = timeline.run();
    std::vector<ReviewStepRow> rows;
    for (std::size_t step = 0; step < timeline.steps().size(); ++step) {
        const StepTimes& times = timeline.steps()[step];
        ReviewStepRow row;
        row.rowId = static_cast<int>(step);
        row.title = words(run.flow.steps[step].title);
        row.who = run.results[step].isOwn ? QString() : QObject::tr("partner");
        row.verdict = verdictOfStep(run, step);
        row.word = textOf(stepVerdict(run.flow, run.results, run.score, step));
        if (times.due)
            row.due = words(clockText(*times.due));
        if (times.done && times.due)
            row.took = tenths(*times.done - *times.due).replace(QLatin1Char('-'), QChar(0x2212));
        rows.push_back(row);
    }
    return rows;
}

std::vector<RemarkRow> remarkRows(const DebriefInput& input) {
    std::vector<RemarkRow> rows;
    for (const Phrase& remark : findingsOf(input).remarks) {
        RemarkRow row;
        row.rowId = static_cast<int>(rows.size());
        row.sentence = textOf(remark);
        row.verdict = Verdict::Info;
        rows.push_back(row);
    }
    return rows;
}

std::vector<RemarkRow> repairRows(const Timeline& timeline) {
    std::vector<RemarkRow> rows;
    for (const Repair& repair : timeline.repairs()) {
        RemarkRow row;
        row.rowId = static_cast<int>(rows.size());
        row.sentence = sentenceOf(repair.text);
        row.detail = QObject::tr("%1, %2").arg(words(clockText(repair.time)), textOf(repairText(repair)));
        row.verdict = repair.repaired ? Verdict::Info : Verdict::Wrong;
        row.time = seconds(repair.time);
        rows.push_back(row);
    }
    return rows;
}

} // namespace flowhand
