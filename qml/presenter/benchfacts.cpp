#include "presenter/benchfacts.h"

#include <algorithm>

#include <QCoreApplication>

#include "presenter/controlstate.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("benchfacts", text);
}

struct Shown {
    int verdict;
    QString word;
};

Shown shownProof(Proof proof, bool isStale) {
    if (isStale)
        return {Verdict::Late, tr("out of date")};
    switch (proof) {
    case Proof::Unwired:
        return {Verdict::Waiting, tr("not wired")};
    case Proof::Wired:
        return {Verdict::Unsure, tr("wired")};
    case Proof::Calibrated:
        return {Verdict::Info, tr("calibrated")};
    case Proof::SeenWorking:
        break;
    }
    return {Verdict::Done, tr("seen working")};
}

/// The day alone; the sheet has the time.
QString dayOf(const std::string& date) {
    return QString::fromStdString(date.substr(0, 10));
}

QString detailOf(const CoveredControl& control) {
    if (!control.failedDate.empty())
        return tr("the check walk of %1 did not confirm it").arg(dayOf(control.failedDate));
    if (control.isStale)
        return tr("changed since %1").arg(dayOf(control.staleDate));
    return dayOf(control.date);
}

double shareOf(const Signal& signal, Value value) {
    if (!value.isKnown())
        return -1.0;
    const double lowest = signal.kind == SignalKind::Number ? signal.lowest : 0.0;
    const double highest = signal.kind == SignalKind::Number     ? signal.highest
                           : signal.kind == SignalKind::Position ? double(signal.positions.size()) - 1.0
                                                                 : 1.0;
    return highest > lowest ? std::clamp((value.number() - lowest) / (highest - lowest), 0.0, 1.0) : -1.0;
}

Shown shownSoundness(Soundness soundness) {
    switch (soundness) {
    case Soundness::Unmeasured:
        return {Verdict::Waiting, tr("not measured")};
    case Soundness::Caution:
        return {Verdict::Late, tr("caution")};
    case Soundness::Bad:
        return {Verdict::Wrong, tr("bad")};
    case Soundness::Good:
        break;
    }
    return {Verdict::Done, tr("good")};
}

} // namespace

std::vector<BenchControlRow> benchControlRows(const Aircraft& aircraft, const BenchSnapshot& snapshot) {
    std::vector<BenchControlRow> rows;
    for (const CoveredControl& control : snapshot.coverage->controls) {
        const Signal& signal = aircraft.signals[control.signal];
        const std::size_t at = indexOf(control.signal);
        const Value value = at < snapshot.values.size() ? snapshot.values[at] : Value::unknown();
        const Shown shown = shownProof(control.proof, control.isStale);
        BenchControlRow row;
        row.rowId = static_cast<int>(at);
        row.label = QString::fromStdString(signal.label);
        row.inputs = QString::fromStdString(control.inputs);
        row.valueText = control.proof == Proof::Unwired ? QString() : shownValue(signal, value);
        row.share = control.proof == Proof::Unwired ? -1.0 : shareOf(signal, value);
        row.stirring = at < snapshot.stirring.size() && snapshot.stirring[at];
        row.verdict = control.failedDate.empty() ? shown.verdict : int(Verdict::Wrong);
        row.word = shown.word;
        row.detail = detailOf(control);
        rows.push_back(row);
    }
    return rows;
}

std::vector<FindingRow> findingRows(const std::vector<Finding>& findings) {
    std::vector<FindingRow> rows;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const Finding& finding = findings[i];
        const Shown shown = shownSoundness(finding.verdict);
        rows.push_back({static_cast<int>(i), shown.verdict, shown.word, QString::fromStdString(finding.text),
                        QString::fromStdString(finding.reason), QString::fromStdString(finding.remedy)});
    }
    std::stable_sort(rows.begin(), rows.end(), [](const FindingRow& a, const FindingRow& b) {
        const auto rank = [](const FindingRow& row) {
            return row.verdict == Verdict::Wrong ? 0 : row.verdict == Verdict::Late ? 1 : 2;
        };
        return rank(a) < rank(b);
    });
    return rows;
}

std::vector<CoverageRow> coverageRows(const Aircraft& aircraft, const std::vector<const Flow*>& flows,
                                      const Coverage& coverage, int flow) {
    std::vector<CoverageRow> rows;
    for (std::size_t i = 0; i < coverage.steps.size(); ++i) {
        const CoveredStep& step = coverage.steps[i];
        if (step.needed.empty() || (flow >= 0 && step.flow != static_cast<std::size_t>(flow)))
            continue;
        QStringList needs;
        for (const SignalId signal : step.needed)
            needs << QString::fromStdString(aircraft.signals[signal].label);
        QStringList why;
        for (const Obstacle& obstacle : step.obstacles)
            why << QString::fromStdString(obstacle.text);
        const Shown shown = step.isConfirmable() ? shownProof(step.proof, step.isStale)
                                                 : Shown{Verdict::Wrong, tr("cannot be confirmed")};
        rows.push_back({static_cast<int>(i), QString::fromStdString(flows[step.flow]->title),
                        QString::fromStdString(flows[step.flow]->steps[step.step].title), needs.join(", "),
                        shown.verdict, shown.word, why.join("; ")});
    }
    std::stable_partition(rows.begin(), rows.end(), [](const CoverageRow& row) {
        return row.verdict == Verdict::Wrong;
    });
    return rows;
}

std::vector<BenchTrace::Stretch> bandsOf(SignalId signal, const std::vector<const Flow*>& flows) {
    std::vector<BenchTrace::Stretch> bands;
    for (const Flow* flow : flows)
        for (const Step& step : flow->steps) {
            if (!step.band || step.band->signal != signal)
                continue;
            const BenchTrace::Stretch band{step.band->lowest, step.band->highest};
            const bool isThere = std::any_of(bands.begin(), bands.end(), [&](const BenchTrace::Stretch& other) {
                return other.low == band.low && other.high == band.high;
            });
            if (!isThere)
                bands.push_back(band);
        }
    return bands;
}

} // namespace flowhand
