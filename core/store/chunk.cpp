#include "store/chunk.h"

#include <map>
#include <tuple>

#include "store/column.h"
#include "store/window.h"

namespace flowhand {

namespace {

constexpr std::uint64_t kFormat = 1;

struct Column {
    SignalId signal{};
    Actor actor{};
    ControlId control{};
    std::vector<Value> values;
    std::int64_t last = 0; ///< when it last had a sample
};

using Shape = std::vector<std::size_t>;

/// Sorts a stream's samples into columns and instants.
class ChunkWriter {
public:
    explicit ChunkWriter(std::int64_t start) : m_start(start) {}

    void add(const PlacedSample& placed) {
        const std::int64_t time = micros(placed.sample.time);
        if (m_shape.empty() || time != m_time || placed.place != m_nextPlace)
            beginInstant(time, placed.place);
        const std::size_t column = columnOf(placed.sample);
        m_columns[column].values.push_back(placed.sample.value);
        m_shape.push_back(column);
        ++m_nextPlace;
    }

    [[nodiscard]] Bytes finish() {
        endInstant();
        Bytes head;
        putVarint(head, kFormat);
        putVarint(head, zigzag(m_start));
        putVarint(head, m_columns.size());
        Bytes values;
        for (const Column& column : m_columns) {
            const int coding = codingFor(column.values);
            putVarint(head, indexOf(column.signal));
            putVarint(head, static_cast<std::uint64_t>(column.actor));
            putVarint(head, static_cast<std::uint64_t>(column.control));
            putVarint(head, static_cast<std::uint64_t>(coding));
            putColumn(values, column.values, coding);
        }
        putVarint(head, m_shapes.size());
        for (const Shape* shape : m_shapes) {
            putVarint(head, shape->size());
            for (const std::size_t column : *shape)
                putVarint(head, column);
        }
        putVarint(head, m_low.size());
        return pack({head + m_shapeNumbers + m_skips, m_low, m_high, values});
    }

private:
    void beginInstant(std::int64_t time, std::uint32_t place) {
        const bool isSameTime = !m_shape.empty() && time == m_time;
        endInstant();
        putVarint(m_skips, place - (isSameTime ? m_nextPlace : 0));
        m_time = time;
        m_nextPlace = place;
    }

    void endInstant() {
        if (m_shape.empty())
            return;
        const std::int64_t since = m_time - m_columns[m_shape.front()].last;
        m_low.push_back(static_cast<char>(since & 0xFF));
        putVarint(m_high, static_cast<std::uint64_t>(since) >> 8);
        for (const std::size_t column : m_shape)
            m_columns[column].last = m_time;
        const auto [at, isNew] = m_shapeIndex.try_emplace(m_shape, m_shapes.size());
        if (isNew)
            m_shapes.push_back(&at->first);
        putVarint(m_shapeNumbers, at->second);
        m_shape.clear();
    }

    std::size_t columnOf(const Sample& sample) {
        const auto [at, isNew] =
            m_columnIndex.try_emplace(std::tuple(sample.signal, sample.actor, sample.control), m_columns.size());
        if (isNew)
            m_columns.push_back({sample.signal, sample.actor, sample.control, {}, m_start});
        return at->second;
    }

    std::int64_t m_start;
    std::int64_t m_time = 0;
    std::uint32_t m_nextPlace = 0;
    Shape m_shape; ///< of the open instant
    std::vector<Column> m_columns;
    std::map<std::tuple<SignalId, Actor, ControlId>, std::size_t> m_columnIndex;
    std::map<Shape, std::size_t> m_shapeIndex;
    std::vector<const Shape*> m_shapes; ///< into m_shapeIndex
    Bytes m_shapeNumbers;
    Bytes m_skips;
    Bytes m_low;
    Bytes m_high;
};

/// The same way back. Every number is checked: the bytes may come from a stranger's file.
class ChunkReader {
public:
    explicit ChunkReader(const Bytes& bytes) : m_reader(bytes) {}

    /// False: they are damaged.
    [[nodiscard]] bool read() { return readHead() && readInstants() && readValues() && m_reader.isAtEnd(); }

    void giveSamples(Origin origin, std::vector<PlacedSample>& samples) {
        std::vector<std::size_t> next(m_columns.size());
        std::uint32_t place = 0;
        Time before = Time::min();
        for (const Instant& instant : m_instants) {
            const Time time = timeOf(instant);
            place = (time == before ? place : 0) + instant.skip;
            before = time;
            for (const std::size_t index : *instant.shape) {
                const Column& column = m_columns[index];
                samples.push_back(
                    {{time, column.signal, column.values[next[index]++], column.actor, origin, column.control},
                     place++});
            }
        }
    }

    void giveColumns(std::vector<ChunkColumn>& columns) {
        std::vector<std::vector<Time>> times(m_columns.size());
        for (std::size_t i = 0; i < m_columns.size(); ++i)
            times[i].reserve(m_columns[i].values.size());
        for (const Instant& instant : m_instants) {
            const Time time = timeOf(instant);
            for (const std::size_t index : *instant.shape)
                times[index].push_back(time);
        }
        for (std::size_t i = 0; i < m_columns.size(); ++i) {
            ChunkColumn column{m_columns[i].signal, m_columns[i].actor, m_columns[i].control, std::move(times[i]),
                               std::move(m_columns[i].values)};
            columns.push_back(std::move(column));
        }
    }

private:
    struct Instant {
        const Shape* shape = nullptr;
        std::uint32_t skip = 0;
        std::uint64_t since = 0;
    };

    /// Of the instants one after the other.
    [[nodiscard]] Time timeOf(const Instant& instant) {
        // Times of damaged bytes may not fit; wrapping is harmless and not undefined.
        const std::int64_t time = static_cast<std::int64_t>(
            static_cast<std::uint64_t>(m_columns[instant.shape->front()].last) + instant.since);
        for (const std::size_t index : *instant.shape)
            m_columns[index].last = time;
        return Time(static_cast<std::int64_t>(static_cast<std::uint64_t>(time) * 1000U));
    }

    bool readHead() {
        if (m_reader.varint() != kFormat)
            return false;
        m_start = unzigzag(m_reader.varint());
        m_columns.resize(m_reader.count(4));
        for (Column& column : m_columns) {
            column.signal = SignalId{static_cast<std::uint32_t>(m_reader.varint())};
            const std::uint64_t actor = m_reader.varint();
            column.actor = static_cast<Actor>(actor);
            column.control = ControlId{static_cast<std::uint16_t>(m_reader.varint())};
            const std::uint64_t coding = m_reader.varint();
            m_codings.push_back(static_cast<int>(coding));
            column.last = m_start;
            if (actor > static_cast<std::uint64_t>(Actor::Machine) || coding > kBitsCoding)
                return false;
        }
        m_shapes.resize(m_reader.count(2));
        for (Shape& shape : m_shapes) {
            shape.resize(m_reader.count());
            for (std::size_t& column : shape)
                column = m_reader.varint();
            for (const std::size_t column : shape)
                if (column >= m_columns.size())
                    return false;
            if (shape.empty())
                return false;
        }
        return m_reader.isGood();
    }

    bool readInstants() {
        m_instants.resize(m_reader.count(5));
        for (Instant& instant : m_instants) {
            const std::uint64_t shape = m_reader.varint();
            if (shape >= m_shapes.size())
                return false;
            instant.shape = &m_shapes[shape];
        }
        for (Instant& instant : m_instants)
            instant.skip = static_cast<std::uint32_t>(m_reader.varint());
        for (Instant& instant : m_instants)
            instant.since = m_reader.byte();
        for (Instant& instant : m_instants)
            instant.since |= m_reader.varint() << 8;
        return m_reader.isGood();
    }

    bool readValues() {
        std::vector<std::size_t> counts(m_columns.size());
        std::size_t total = 0;
        for (const Instant& instant : m_instants) {
            total += instant.shape->size();
            if (total > m_reader.rest().size()) // a value takes a byte at the least
                return false;
            for (const std::size_t column : *instant.shape)
                ++counts[column];
        }
        for (std::size_t i = 0; i < m_columns.size(); ++i)
            m_columns[i].values = readColumn(m_reader, counts[i], m_codings[i]);
        return m_reader.isGood();
    }

    ByteReader m_reader;
    std::int64_t m_start = 0;
    std::vector<Column> m_columns;
    std::vector<int> m_codings;
    std::vector<Shape> m_shapes;
    std::vector<Instant> m_instants;
};

/// False, and `give` is not called: the bytes are damaged.
template <class Give>
bool decode(std::string_view packed, Give give) {
    const std::optional<Bytes> bytes = unpack(packed);
    if (!bytes)
        return false;
    ChunkReader reader(*bytes);
    if (!reader.read())
        return false;
    give(reader);
    return true;
}

} // namespace

Bytes encodeChunk(const std::vector<PlacedSample>& samples) {
    ChunkWriter writer(samples.empty() ? 0 : micros(samples.front().sample.time));
    for (const PlacedSample& placed : samples)
        writer.add(placed);
    return writer.finish();
}

bool decodeChunk(std::string_view packed, Origin origin, std::vector<PlacedSample>& samples) {
    return decode(packed, [&](ChunkReader& reader) {
        reader.giveSamples(origin, samples);
    });
}

bool decodeColumns(std::string_view packed, std::vector<ChunkColumn>& columns) {
    return decode(packed, [&](ChunkReader& reader) {
        reader.giveColumns(columns);
    });
}

Bytes encodeState(const State& state) {
    Bytes bytes;
    putVarint(bytes, kFormat);
    std::size_t before = 0;
    for (std::size_t i = 0; i < state.size(); ++i) {
        if (!state[i])
            continue;
        putVarint(bytes, i - before);
        before = i;
        const int coding = codingFor({*state[i]});
        putVarint(bytes, static_cast<std::uint64_t>(coding));
        putColumn(bytes, {*state[i]}, coding);
    }
    return pack({bytes});
}

std::optional<State> decodeState(std::string_view packed) {
    constexpr std::size_t kMostSignals = 1 << 20;
    const std::optional<Bytes> bytes = unpack(packed);
    if (!bytes)
        return std::nullopt;
    ByteReader reader(*bytes);
    if (reader.varint() != kFormat)
        return std::nullopt;
    State state;
    std::size_t signal = 0;
    while (!reader.isAtEnd()) {
        const std::uint64_t gap = reader.varint();
        const std::uint64_t coding = reader.varint();
        if (gap > kMostSignals - signal || coding > kBitsCoding)
            return std::nullopt;
        signal += gap;
        const std::vector<Value> values = readColumn(reader, 1, static_cast<int>(coding));
        if (!reader.isGood())
            return std::nullopt;
        state.resize(signal + 1);
        state[signal] = values.front();
    }
    return state;
}

} // namespace flowhand
