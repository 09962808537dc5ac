#include "presenter/benchfacts.h"

#include <algorithm>

#include <QCoreApplication>

#include "bench/filterchange.h"
#include "bench/millistext.h"
#include "presenter/controlstate.h"
#include "presenter/phrasetext.h"
#include "presenter/signaltext.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("flowhand", text); // the context under which lupdate lists these
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

QString detailOf(const CoveredControl& control, const std::vector<SharedInput>& shared) {
    for (const SharedInput& input : shared)
        if (input.signal == control.signal)
            return tr("shares its input with “%1”").arg(QString::fromStdString(input.control));
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
        row.detail = detailOf(control, *snapshot.shared);
        rows.push_back(row);
    }
    return rows;
}

std::vector<FindingRow> findingRows(const std::vector<Finding>& findings) {
    std::vector<FindingRow> rows;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const Finding& finding = findings[i];
        const Shown shown = shownSoundness(finding.verdict);
        rows.push_back({static_cast<int>(i), shown.verdict, shown.word, sentenceOf(finding.text),
                        sentenceOf(finding.reason), sentenceOf(finding.remedy)});
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
            needs << labelOf(aircraft.signals[signal]);
        QStringList why;
        for (const Obstacle& obstacle : step.obstacles)
            why << textOf(obstacle.text);
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

PlotScale plotScaleOf(SignalId id, const Aircraft& aircraft, const std::vector<const Flow*>& flows,
                      const std::vector<GateTravel>& travels) {
    const Signal& signal = aircraft.signals[id];
    PlotScale scale;
    for (const GateTravel& travel : travels) {
        if (travel.signal != id)
            continue;
        scale.lowest = travel.lowest;
        scale.highest = travel.highest;
        for (const GateTravel::Gate& gate : travel.gates) {
            scale.bands.push_back({gate.at - gate.band, gate.at + gate.band});
            scale.marks.push_back({gate.at, QString::fromStdString(gate.position)});
        }
        return scale;
    }
    scale.bands = bandsOf(id, flows);
    if (signal.kind == SignalKind::Number) {
        scale.lowest = signal.lowest;
        scale.highest = signal.highest;
        for (const double end : {signal.lowest, signal.highest})
            scale.marks.push_back({end, shownValue(signal, Value::number(end))});
        return scale;
    }
    const int places = signal.kind == SignalKind::Position ? static_cast<int>(signal.positions.size()) : 2;
    scale.highest = double(places) - 1.0;
    for (int place = 0; place < places; ++place)
        scale.marks.push_back(
            {double(place), shownValue(signal, signal.kind == SignalKind::Position ? Value::position(place)
                                                                                   : Value::onOff(place == 1))});
    return scale;
}

QString filterSentence(const ControlFilters& filters) {
    const QString words = textOf(joined(filters.words, ", "));
    const QString delay = QString::fromStdString(millisText(filters.delay));
    const QString allowed = QString::fromStdString(millisText(filters.allowed));
    const QString cost = filters.delay > Duration{} ? tr("late by %1").arg(delay) : tr("nothing makes it late");
    const QString limit =
        filters.allowedOf.empty()
            ? tr("%1 are allowed").arg(allowed)
            : tr("%1 are allowed, by the step “%2”").arg(allowed, QString::fromStdString(filters.allowedOf));
    return words.isEmpty() ? tr("No filter: %1; %2.").arg(cost, limit)
                           : tr("Filters: %1. Then %2; %3.").arg(words, cost, limit);
}

QString filterChangeSentence(const ControlFilters& filters) {
    if (filters.change.empty())
        return {};
    QStringList keys;
    for (const RigKey& key : filters.change)
        keys << textOf(keyText(key));
    return tr("Its measurement asks for %1. Late by %2 then.")
        .arg(keys.join(QStringLiteral(", ")), QString::fromStdString(millisText(filters.changedDelay)));
}

QString deviceSentence(const std::vector<BenchDevice>& devices) {
    QStringList words;
    for (const BenchDevice& device : devices) {
        const QString name = QString::fromStdString(device.name);
        words << (device.message.isEmpty()
                      ? device.isConnected ? tr("%1 is connected").arg(name) : tr("%1 is not connected").arg(name)
                      : textOf(device.message));
    }
    return words.isEmpty()
               ? tr("No lever, pedal or switch unit is connected. Plug one in: it is found within a second.")
               : words.join(QStringLiteral(" · "));
}

QString coverageSentence(const std::vector<CoverageRow>& rows) {
    const auto confirmable = std::count_if(rows.begin(), rows.end(), [](const CoverageRow& row) {
        return row.why.isEmpty();
    });
    const auto seen = std::count_if(rows.begin(), rows.end(), [](const CoverageRow& row) {
        return row.verdict == Verdict::Done;
    });
    return tr("%1 of %2 steps can be confirmed by this rig; the controls of %3 were seen working.")
        .arg(confirmable)
        .arg(rows.size())
        .arg(seen);
}

QString orphanSentence(const Aircraft& aircraft, const Coverage& coverage) {
    QStringList labels;
    for (const SignalId signal : coverage.orphans)
        labels << labelOf(aircraft.signals[signal]);
    return labels.isEmpty() ? QString() : tr("Wired, but no step needs: %1").arg(labels.join(QStringLiteral(", ")));
}

QString valuesExample(const Signal& signal) {
    if (signal.kind != SignalKind::Number)
        return {};
    QStringList values;
    for (const double share : {0.0, 0.5, 1.0})
        values << QString::fromStdString(
            valueText(signal, Value::number(signal.lowest + share * (signal.highest - signal.lowest))));
    return values.join(QStringLiteral(", "));
}

} // namespace flowhand
