#include "presenter/stepfacts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

#include "presenter/phrasetext.h"
#include "presenter/signaltext.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

/// Fine enough to find a gate of 1 % of the travel.
constexpr int kProbes = 200;
/// Halvings of one probe's width, to find the edge itself: 1 % of a hundredth.
constexpr int kHalvings = 14;

QString timeText(Time time) {
    return time == kForever ? QString() : QString::fromStdString(clockText(time));
}

bool fits(const Step& step, SignalId signal, Value value, const std::vector<Value>& values) {
    return step.done->condition.fits(signal, value, values);
}

/// The edge between a value that fits and one beside it that does not.
double edgeBetween(double fitting, double other, const Step& step, SignalId id, const std::vector<Value>& values) {
    for (int halving = 0; halving < kHalvings; ++halving) {
        const double middle = (fitting + other) / 2;
        (fits(step, id, Value::number(middle), values) ? fitting : other) = middle;
    }
    return (fitting + other) / 2;
}

/// The values of a number that will do, when they are one stretch and not the whole travel.
void findStretch(TargetRow& row, const Step& step, const Signal& signal, SignalId id,
                 const std::vector<Value>& values) {
    int first = -1;
    int last = -1;
    for (int probe = 0; probe <= kProbes; ++probe) {
        const double at = signal.lowest + (signal.highest - signal.lowest) * probe / kProbes;
        if (!fits(step, id, Value::number(at), values))
            continue;
        if (first < 0)
            first = probe;
        last = probe;
    }
    if (first < 0 || (first == 0 && last == kProbes))
        return;
    const double width = (signal.highest - signal.lowest) / kProbes;
    row.wanted = true;
    row.low = signal.lowest + width * first;
    row.high = signal.lowest + width * last;
    if (first > 0)
        row.low = edgeBetween(row.low, row.low - width, step, id, values);
    if (last < kProbes)
        row.high = edgeBetween(row.high, row.high + width, step, id, values);
}

void findPlaces(TargetRow& row, const Step& step, const Signal& signal, SignalId id, const std::vector<Value>& values) {
    const bool isOnOff = signal.kind == SignalKind::OnOff;
    const int count = isOnOff ? 2 : static_cast<int>(signal.positions.size());
    for (int place = 0; place < count; ++place)
        if (fits(step, id, isOnOff ? Value::onOff(place == 1) : Value::position(place), values))
            row.places.append(place);
    row.wanted = !row.places.isEmpty() && row.places.size() < count;
}

bool isThere(const TargetRow& row, const Signal& signal, Value value) {
    if (!row.wanted || !value.isKnown())
        return false;
    if (signal.kind == SignalKind::Number)
        return value.number() >= row.low && value.number() <= row.high;
    return row.places.contains(static_cast<int>(value.number()));
}

QString wantedText(const TargetRow& row, const Signal& signal) {
    if (!row.wanted)
        return {};
    if (signal.kind == SignalKind::Number)
        return stretchText(signal, row.low, row.high);
    QStringList words;
    for (int place : row.places)
        words.append(
            shownValue(signal, signal.kind == SignalKind::OnOff ? Value::onOff(place == 1) : Value::position(place)));
    return words.join(QObject::tr(" or "));
}

Value valueOf(const RunSnapshot& snapshot, SignalId id) {
    return indexOf(id) < snapshot.values.size() ? snapshot.values[indexOf(id)] : Value::unknown();
}

/// Whole units: a tenth that flickers tells nobody anything.
QString wholeText(Value value) {
    if (!value.isKnown())
        return QStringLiteral("–");
    return QString::number(std::lround(value.number())).replace(QLatin1Char('-'), QChar(0x2212));
}

} // namespace

QString stretchText(const Signal& signal, double low, double high) {
    if (high >= signal.highest)
        return QObject::tr("%1 or more").arg(shownValue(signal, Value::number(low)));
    if (low <= signal.lowest)
        return QObject::tr("%1 or less").arg(shownValue(signal, Value::number(high)));
    const QString lowText = QString::fromStdString(numberText(low)).replace(QLatin1Char('-'), QChar(0x2212));
    return QObject::tr("%1 to %2").arg(lowText, shownValue(signal, Value::number(high)));
}

Verdict::Kind lossKind(LossKind what) {
    switch (what) {
    case LossKind::Late:
        return Verdict::Late;
    case LossKind::OutOfOrder:
    case LossKind::TooEarly:
        return Verdict::OutOfOrder;
    case LossKind::Uncertain:
        return Verdict::Unsure;
    case LossKind::SmallMargin: // it was done, and in time
    case LossKind::Floor:
        return Verdict::Info;
    case LossKind::NotDone:
    case LossKind::UndoneAgain:
    case LossKind::WrongValue:
    case LossKind::WrongControl:
    case LossKind::GuardBroken:
        break;
    }
    return Verdict::Wrong;
}

QString titleOfName(const std::string& name) {
    QString title = QString::fromStdString(name).replace(QLatin1Char('_'), QLatin1Char(' '));
    if (!title.isEmpty())
        title[0] = title[0].toUpper();
    return title;
}

QString personName(const std::string& seat, const SessionSetup& setup) {
    if (seat.empty() || seat == setup.ownSeat || setup.isSolo)
        return QObject::tr("you");
    if (seat == "cockpit")
        return QObject::tr("Cockpit");
    return seat == "ground" ? QObject::tr("Ground") : QObject::tr("partner");
}

StepRow stepRow(const Flow& flow, const RunSnapshot& snapshot, const SessionSetup& setup, int step) {
    const auto index = static_cast<std::size_t>(step);
    const Step& plan = flow.steps[index];
    StepRow row;
    row.rowId = step;
    row.title = QString::fromStdString(plan.title);
    row.who = personName(plan.movedBy.empty() ? plan.seat : plan.movedBy, setup);
    row.own = row.who == QObject::tr("you");
    row.why = QString::fromStdString(plan.why);
    row.weight = plan.weight;
    if (index < snapshot.session.steps.size()) {
        const StepView& view = snapshot.session.steps[index];
        row.verdict = verdictOf(view);
        row.word = verdictWord(view);
        row.detail = textOf(view.verdict);
        row.dueAt = timeText(view.due);
        row.doneAt = timeText(view.done);
    }
    return row;
}

std::vector<TargetRow> targetRows(const Step& step, const RunSnapshot& snapshot, const ControlModel& controls) {
    std::vector<TargetRow> rows;
    for (SignalId id : step.controls) {
        ControlState* control = controls.find(id);
        if (control == nullptr)
            continue;
        const Signal& signal = control->signal();
        TargetRow row;
        row.rowId = control->signalId();
        row.control = control;
        if (step.done && signal.kind == SignalKind::Number)
            findStretch(row, step, signal, id, snapshot.values);
        else if (step.done)
            findPlaces(row, step, signal, id, snapshot.values);
        if (step.band && step.band->signal == id) {
            row.wanted = true;
            row.low = step.band->lowest;
            row.high = step.band->highest;
        }
        row.wantedText = wantedText(row, signal);
        row.there = isThere(row, signal, valueOf(snapshot, id));
        rows.push_back(row);
    }
    return rows;
}

std::vector<TargetRow> setUpRows(const std::vector<SetUpItem>& items, const RunSnapshot& snapshot,
                                 const ControlModel& controls) {
    std::vector<TargetRow> rows;
    for (const SetUpItem& item : items) {
        ControlState* control = controls.find(item.signal);
        if (control == nullptr)
            continue;
        const Signal& signal = control->signal();
        TargetRow row;
        row.rowId = control->signalId();
        row.control = control;
        row.wanted = true;
        if (signal.kind == SignalKind::Number)
            row.low = row.high = item.wanted.number();
        else
            row.places = {static_cast<int>(item.wanted.number())};
        row.wantedText = shownValue(signal, item.wanted);
        row.there = valueOf(snapshot, item.signal) == item.wanted;
        rows.push_back(row);
    }
    return rows;
}

std::vector<LedgerRow> ledgerRows(const Score& score) {
    std::vector<LedgerLine> lines = score.ledger;
    std::stable_sort(lines.begin(), lines.end(), [](const LedgerLine& a, const LedgerLine& b) {
        return a.milliPoints > b.milliPoints;
    });
    std::vector<LedgerRow> rows;
    for (const LedgerLine& line : lines) {
        LedgerRow row;
        row.rowId = static_cast<int>(rows.size());
        const QChar sign = line.milliPoints >= 0 ? QChar(0x2212) : QLatin1Char('+');
        row.points = sign + shownPoints(std::abs(line.milliPoints));
        row.what = textOf(lossWords(line.what));
        row.sentence = textOf(line.text);
        row.verdict = lossKind(line.what);
        rows.push_back(row);
    }
    return rows;
}

std::vector<MotionRow> motionRows(const Aircraft& aircraft, const RunSnapshot& snapshot) {
    static constexpr std::array kShown = {"ground_speed", "airspeed", "height"};
    std::vector<MotionRow> rows;
    for (const char* name : kShown)
        if (const std::optional<SignalId> id = aircraft.signals.find(name)) {
            const Signal& signal = aircraft.signals[*id];
            rows.push_back({static_cast<int>(*id), labelOf(signal), wholeText(valueOf(snapshot, *id)),
                            QString::fromStdString(signal.unit.symbol)});
        }
    QStringList powers;
    int lastEngine = 0;
    for (int engine = 1; const auto id = aircraft.signals.find("engine_power_" + std::to_string(engine)); ++engine) {
        powers.append(wholeText(valueOf(snapshot, *id)));
        lastEngine = static_cast<int>(*id);
    }
    if (!powers.isEmpty())
        rows.push_back(
            {lastEngine, QObject::tr("Engine power"), powers.join(QStringLiteral(" · ")), QStringLiteral("%")});
    return rows;
}

QString shownPoints(std::int64_t milliPoints) {
    const double points = static_cast<double>(milliPoints) / 1000.0;
    QString text = QString::number(points, 'f', 1);
    if (text.endsWith(QStringLiteral(".0")))
        text.chop(2);
    return text;
}

} // namespace flowhand
