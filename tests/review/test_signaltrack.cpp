// The pyramid against plain scanning of the changes.

#include <QtTest>
#include <algorithm>
#include <cmath>
#include <random>
#include <rapidcheck.h>

#include "review/signaltrack.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

struct Change {
    Time time{};
    Value value;
};

/// Rising times, with gaps of every length, unknown values, and plateaus.
std::vector<Change> anyChanges() {
    std::vector<Change> changes;
    Time time = Time(*rc::gen::inRange(-50, 50));
    const int count = *rc::gen::element(0, 1, 2, 15, 16, 17, 40, 255, 256, 257, 700);
    std::mt19937 random(*rc::gen::arbitrary<unsigned>());
    for (int i = 0; i < count; ++i) {
        time += Time(1 + random() % (random() % 10 == 0 ? 5000 : 40));
        const bool isUnknown = random() % 40 == 0;
        changes.push_back({time, isUnknown ? Value::unknown() : Value::number(double(random() % 1000) / 10.0)});
    }
    return changes;
}

/// A track and what it borrows.
struct Laid {
    explicit Laid(const std::vector<Change>& changes) {
        for (const Change& change : changes)
            samples.append({change.time, SignalId{0}, change.value});
        track = SignalTrack(samples);
    }
    SignalSamples samples;
    SignalTrack track;
};

Value scanned(const std::vector<Change>& changes, Time time) {
    Value value;
    for (const Change& change : changes)
        if (change.time <= time)
            value = change.value;
    return value;
}

/// Every value that the signal had in [from, to): the one held at `from`, and the changes within.
std::vector<Value> valuesIn(const std::vector<Change>& changes, Time from, Time to) {
    std::vector<Value> values{scanned(changes, from)};
    for (const Change& change : changes)
        if (change.time > from && change.time < to)
            values.push_back(change.value);
    return values;
}

bool isFar(Value value, Value from, double least) {
    if (value.isKnown() != from.isKnown())
        return true;
    return value.isKnown() && std::fabs(value.number() - from.number()) >= least;
}

std::optional<Time> nextScanned(const std::vector<Change>& changes, Time time, double least) {
    const Value from = scanned(changes, time);
    for (const Change& change : changes)
        if (change.time > time && isFar(change.value, from, least))
            return change.time;
    return std::nullopt;
}

/// The last change before `time` that left a value far from what stood just before `time`.
std::optional<Time> previousScanned(const std::vector<Change>& changes, Time time, double least) {
    const Value from = scanned(changes, time - Time(1));
    std::optional<Time> found;
    for (const Change& change : changes)
        if (change.time < time && isFar(scanned(changes, change.time - Time(1)), from, least))
            found = change.time;
    return found;
}

Time anyTime(const std::vector<Change>& changes) {
    const Time last = changes.empty() ? Time(100) : changes.back().time;
    const auto time = Time(*rc::gen::inRange<std::int64_t>(-100, last.count() + 100));
    const bool isAtChange = !changes.empty() && *rc::gen::inRange(0, 3) == 0;
    return isAtChange ? changes[*rc::gen::inRange<std::size_t>(0, changes.size())].time : time;
}

} // namespace

class TestSignalTrack : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void valuesAreHeld();
    void columnsCoverEveryValue();
    void changesAreFound();
    void ofSeveralAtOneTimeTheLastCounts();
};

void TestSignalTrack::valuesAreHeld() {
    QVERIFY(rc::check("the held value at any time is the last one before", [] {
        const std::vector<Change> changes = anyChanges();
        const Laid laid(changes);
        const SignalTrack& track = laid.track;
        const Time time = anyTime(changes);
        RC_ASSERT(track.at(time) == scanned(changes, time));
    }));
}

void TestSignalTrack::columnsCoverEveryValue() {
    QVERIFY(rc::check("columns have the extremes, ends and gaps of their stretch", [] {
        const std::vector<Change> changes = anyChanges();
        const Laid laid(changes);
        const SignalTrack& track = laid.track;
        const Time from = anyTime(changes);
        const std::size_t count = *rc::gen::inRange<std::size_t>(1, 60);
        // A width that columns divide, so that a plain scan has the same bounds.
        const Time width = Time(*rc::gen::inRange<std::int64_t>(1, 400));
        const std::vector<SignalColumn> columns =
            track.columns(from, from + width * static_cast<std::int64_t>(count), count);
        RC_ASSERT(columns.size() == count);
        for (std::size_t i = 0; i < count; ++i) {
            const Time start = from + width * static_cast<std::int64_t>(i);
            const std::vector<Value> values = valuesIn(changes, start, start + width);
            std::vector<double> known;
            for (const Value value : values)
                if (value.isKnown())
                    known.push_back(value.number());
            RC_ASSERT(columns[i].hasGap == (known.size() < values.size()));
            RC_ASSERT(columns[i].isKnown == !known.empty());
            if (known.empty())
                continue;
            RC_ASSERT(columns[i].lowest == *std::min_element(known.begin(), known.end()));
            RC_ASSERT(columns[i].highest == *std::max_element(known.begin(), known.end()));
            if (values.front().isKnown())
                RC_ASSERT(columns[i].first == known.front());
            if (values.back().isKnown())
                RC_ASSERT(columns[i].last == known.back());
        }
    }));
}

void TestSignalTrack::changesAreFound() {
    QVERIFY(rc::check("the next and previous change of a size are those a scan finds", [] {
        const std::vector<Change> changes = anyChanges();
        const Laid laid(changes);
        const SignalTrack& track = laid.track;
        const Time time = anyTime(changes);
        const double least = *rc::gen::element(0.05, 1.0, 20.0, 90.0, 99.0);
        RC_ASSERT(track.nextChange(time, least) == nextScanned(changes, time, least));
        RC_ASSERT(track.previousChange(time, least) == previousScanned(changes, time, least));
    }));
}

void TestSignalTrack::ofSeveralAtOneTimeTheLastCounts() {
    const Laid laid({{1s, Value::number(1)}, {2s, Value::number(5)}, {2s, Value::number(3)}});
    const SignalTrack& track = laid.track;
    QCOMPARE(track.size(), std::size_t(2));
    QVERIFY(track.at(2s) == Value::number(3));
    QVERIFY(!track.at(999ms).isKnown());
    QCOMPARE(track.extent()->highest, 3.0);
}

QTEST_APPLESS_MAIN(TestSignalTrack)
#include "test_signaltrack.moc"
