#include <QtTest>
#include <bit>
#include <cmath>
#include <limits>
#include <rapidcheck.h>

#include "store/chunk.h"
#include "store/column.h"

using namespace flowhand;

namespace {

/// Values that are hard on a coding: tidy decimals, raw doubles, signed zero, unknown.
rc::Gen<double> anyNumber() {
    return rc::gen::oneOf(rc::gen::map(rc::gen::inRange(-100000, 100000),
                                       [](int n) {
                                           return n / 100.0;
                                       }),
                          rc::gen::map(rc::gen::inRange(-3, 60),
                                       [](int n) {
                                           return double(n);
                                       }),
                          rc::gen::map(rc::gen::arbitrary<std::uint64_t>(),
                                       [](std::uint64_t bits) {
                                           const double number = std::bit_cast<double>(bits);
                                           return std::isfinite(number) ? number : 0.1;
                                       }),
                          rc::gen::element(0.0, -0.0, 0.1, 1.0 / 3.0, 1e-300, 9007199254740992.0, 1e300,
                                           std::numeric_limits<double>::denorm_min()),
                          rc::gen::just(std::numeric_limits<double>::quiet_NaN()));
}

bool isSame(const PlacedSample& a, const PlacedSample& b) {
    // Value's == takes 0 and -0 for the same; the record must not.
    return a == b && (!a.sample.value.isKnown() ||
                      std::signbit(a.sample.value.number()) == std::signbit(b.sample.value.number()));
}

std::vector<PlacedSample> anyStream() {
    std::vector<PlacedSample> samples;
    std::int64_t micros = *rc::gen::inRange<std::int64_t>(-1'000'000, 10'000'000'000);
    std::uint32_t place = 0;
    for (int i = *rc::gen::inRange(1, 200); i > 0; --i) {
        const auto step = *rc::gen::weightedOneOf<std::int64_t>({{3, rc::gen::just<std::int64_t>(0)},
                                                                 {5, rc::gen::inRange<std::int64_t>(1, 20'000)},
                                                                 {1, rc::gen::inRange<std::int64_t>(0, 5'000'000)}});
        place = step == 0 && !samples.empty() ? place + 1 + *rc::gen::element(0U, 0U, 0U, 1U, 7U)
                                              : *rc::gen::element(0U, 0U, 0U, 2U);
        micros += step;
        samples.push_back(
            {{std::chrono::microseconds(micros), SignalId{*rc::gen::inRange(0U, 6U)}, Value::number(*anyNumber()),
              Actor(*rc::gen::inRange(0, 3)), Origin::Screen, ControlId{*rc::gen::inRange<std::uint16_t>(0, 300)}},
             place});
    }
    return samples;
}

} // namespace

class TestChunk : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyStreamComesBack();
    void columnsHoldTheSameSamples();
    void damagedBytesAreRefused();
    void hostileSizesAreRefused();
    void everyStateComesBack();
    void theLowestExactCodingIsTaken_data();
    void theLowestExactCodingIsTaken();
};

void TestChunk::everyStreamComesBack() {
    QVERIFY(rc::check("a stream of samples comes back to the bit", [] {
        const std::vector<PlacedSample> samples = anyStream();
        std::vector<PlacedSample> back;
        RC_ASSERT(decodeChunk(encodeChunk(samples), Origin::Screen, back));
        RC_ASSERT(back.size() == samples.size());
        for (std::size_t i = 0; i < samples.size(); ++i)
            RC_ASSERT(isSame(back[i], samples[i]));
    }));
}

void TestChunk::columnsHoldTheSameSamples() {
    QVERIFY(rc::check("each column has its samples in their order, and all together have all", [] {
        const std::vector<PlacedSample> samples = anyStream();
        std::vector<ChunkColumn> columns;
        RC_ASSERT(decodeColumns(encodeChunk(samples), columns));
        std::size_t count = 0;
        for (const ChunkColumn& column : columns) {
            RC_ASSERT(column.times.size() == column.values.size());
            count += column.times.size();
            std::size_t at = 0;
            for (const PlacedSample& placed : samples) {
                const Sample& sample = placed.sample;
                if (sample.signal != column.signal || sample.actor != column.actor || sample.control != column.control)
                    continue;
                RC_ASSERT(at < column.times.size());
                RC_ASSERT(column.times[at] == sample.time && column.values[at] == sample.value);
                ++at;
            }
            RC_ASSERT(at == column.times.size());
        }
        RC_ASSERT(count == samples.size());
    }));
}

void TestChunk::damagedBytesAreRefused() {
    QVERIFY(rc::check("a flipped bit or a cut is noticed", [] {
        const std::vector<PlacedSample> samples = anyStream();
        const Bytes whole = encodeChunk(samples);
        Bytes damaged = whole;
        const auto at = *rc::gen::inRange<std::size_t>(0, whole.size());
        if (*rc::gen::arbitrary<bool>())
            damaged[at] = static_cast<char>(damaged[at] ^ (1 << *rc::gen::inRange(0, 8)));
        else
            damaged.resize(at);
        std::vector<PlacedSample> back;
        if (!decodeChunk(damaged, Origin::Screen, back)) {
            RC_ASSERT(back.empty());
            return;
        }
        // The last byte of a deflate stream may hold bits that mean nothing.
        RC_ASSERT(back.size() == samples.size());
        for (std::size_t i = 0; i < samples.size(); ++i)
            RC_ASSERT(isSame(back[i], samples[i]));
    }));
}

void TestChunk::hostileSizesAreRefused() {
    // Well-formed packing of nonsense: the checksum is right, the numbers are not.
    QVERIFY(rc::check("nonsense is refused or decoded, never more", [] {
        const auto raw = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
        std::vector<PlacedSample> back;
        if (!decodeChunk(pack({"\x01" + raw}), Origin::Device, back))
            RC_ASSERT(back.empty());
        RC_ASSERT(back.size() <= raw.size());
        std::vector<ChunkColumn> columns;
        (void)decodeColumns(pack({"\x01" + raw}), columns);
        std::size_t count = 0;
        for (const ChunkColumn& column : columns)
            count += column.times.size();
        RC_ASSERT(count == back.size());
        (void)decodeState(pack({"\x01" + raw}));
    }));
    Bytes lie;
    putVarint(lie, std::uint64_t{1} << 40);
    QVERIFY(!unpack(lie + "x"));
}

void TestChunk::everyStateComesBack() {
    QVERIFY(rc::check("a keyframe comes back", [] {
        State state(*rc::gen::inRange<std::size_t>(0, 40));
        for (std::optional<Value>& value : state)
            if (*rc::gen::inRange(0, 4) != 0)
                value = Value::number(*anyNumber());
        while (!state.empty() && !state.back())
            state.pop_back();
        const std::optional<State> back = decodeState(encodeState(state));
        RC_ASSERT(back.has_value());
        RC_ASSERT(*back == state);
    }));
}

void TestChunk::theLowestExactCodingIsTaken_data() {
    QTest::addColumn<double>("number");
    QTest::addColumn<int>("coding");
    QTest::newRow("whole") << 12.0 << 0;
    QTest::newRow("between") << -1.0 << 0;
    QTest::newRow("tenths") << 0.3 << 1;
    QTest::newRow("hundredths") << 99.99 << 2;
    QTest::newRow("a sum that is not quite 0.3") << 0.1 + 0.2 << kBitsCoding;
    QTest::newRow("a third") << 1.0 / 3.0 << kBitsCoding;
    QTest::newRow("negative zero") << -0.0 << kBitsCoding;
    QTest::newRow("too large for whole numbers") << 1e17 << kBitsCoding;
    QTest::newRow("unknown") << std::numeric_limits<double>::quiet_NaN() << 0;
}

void TestChunk::theLowestExactCodingIsTaken() {
    QFETCH(double, number);
    QFETCH(int, coding);
    QCOMPARE(codingFor({Value::number(number)}), coding);
}

QTEST_APPLESS_MAIN(TestChunk)
#include "test_chunk.moc"
