#include "store/samplereader.h"

#include <algorithm>
#include <array>
#include <functional>
#include <span>
#include <string_view>

#include "base/parallel.h"
#include "store/window.h"

namespace flowhand {

namespace {

constexpr std::array<std::string_view, kStreams> kStreamNames = {"devices", "script", "screen", "practice aircraft",
                                                                 "feed"};

/// Windows that one thread unpacks in one go: enough to be worth the change of work, few enough for all to share.
constexpr std::size_t kWindowsInTurn = 24;

/// A row of the table.
struct StoredChunk {
    std::int64_t window = 0;
    std::int64_t stream = 0;
    Bytes packed;
};

bool isKnownStream(std::int64_t stream) {
    return stream >= 0 && stream < static_cast<std::int64_t>(kStreams);
}

struct Damaged {
    std::int64_t window = 0;
    std::string words;
    Stretch missing;
};

/// Takes the rows out of the file, around pages that cannot be read.
class ChunkFetcher {
public:
    ChunkFetcher(Connection& connection, const WindowRange& range, std::vector<Damaged>& damage)
        : m_connection(connection), m_range(range), m_damage(damage) {}

    std::vector<StoredChunk> fetch() {
        std::int64_t window = m_range.first;
        for (;;) {
            if (readOn(window))
                return std::move(m_chunks);
            // A page of the file is damaged: name what it hid, and go on behind it.
            window = std::max(window, m_window + 1);
            const std::int64_t next = nextReadable(window);
            const bool isLast = next > m_range.last;
            m_damage.push_back({window,
                                "the samples from " + clockText(startOf(window)) + " to " +
                                    (isLast ? "the end" : clockText(startOf(next))) + " cannot be read",
                                {startOf(window), startOf(isLast ? m_range.last + 1 : next)}});
            if (isLast)
                return std::move(m_chunks);
            window = next;
        }
    }

private:
    Status readOn(std::int64_t first) {
        Result<Statement> rows =
            m_connection.prepare("SELECT window, stream, samples FROM chunk WHERE run = ? AND window BETWEEN ? AND ? "
                                 "ORDER BY window, stream, part");
        if (!rows)
            return tl::unexpected(rows.error());
        rows->bind(1, m_range.run).bind(2, first).bind(3, m_range.last);
        m_window = first - 1;
        for (;;) {
            const Result<bool> row = rows->step();
            if (!row)
                return tl::unexpected(row.error());
            if (!*row)
                return {};
            m_window = rows->integer(0);
            StoredChunk chunk{m_window, rows->integer(1), rows->text(2)};
            m_chunks.push_back(std::move(chunk));
        }
    }

    /// The next window that has a chunk which can be read; past the last when there is none.
    std::int64_t nextReadable(std::int64_t window) {
        for (++window; window <= m_range.last; ++window) {
            Result<Statement> rows =
                m_connection.prepare("SELECT length(samples) FROM chunk WHERE run = ? AND window = ?");
            if (!rows)
                return m_range.last + 1;
            const Result<bool> row = rows->bind(1, m_range.run).bind(2, window).step();
            if (row && *row)
                return window;
        }
        return window;
    }

    Connection& m_connection;
    const WindowRange& m_range;
    std::vector<Damaged>& m_damage;
    std::vector<StoredChunk> m_chunks;
    std::int64_t m_window = 0;
};

/// Some samples in the run's order.
struct SamplesInOrder {
    std::vector<Sample> all;

    void append(const Sample& sample) { all.push_back(sample); }
    /// Columns have lost the order across them.
    bool appendColumns(std::span<const StoredChunk> /*window*/) { return false; }
};

/// Some samples by signal.
struct SamplesByColumn {
    SamplesBySignal all;

    void append(const Sample& sample) { all.append(sample); }

    /// False, and nothing appended, where a chunk is damaged or a signal has several columns, which have to be merged.
    bool appendColumns(std::span<const StoredChunk> window) {
        m_columns.clear();
        m_origins.clear();
        for (const StoredChunk& chunk : window) {
            if (!isKnownStream(chunk.stream) || !decodeColumns(chunk.packed, m_columns))
                return false;
            m_origins.resize(m_columns.size(), static_cast<Origin>(chunk.stream));
        }
        if (!hasOneColumnEach())
            return false;
        for (std::size_t i = 0; i < m_columns.size(); ++i) {
            const ChunkColumn& column = m_columns[i];
            if (SignalSamples* const samples = all.find(column.signal))
                samples->append({0, column.actor, m_origins[i], column.control}, column.times, column.values);
        }
        return true;
    }

private:
    [[nodiscard]] bool hasOneColumnEach() {
        m_signals.clear();
        for (const ChunkColumn& column : m_columns) {
            m_signals.push_back(column.signal);
            const bool isRising = std::adjacent_find(column.times.begin(), column.times.end(),
                                                     std::greater_equal<>()) == column.times.end();
            if (!isRising || column.times.empty())
                return false;
        }
        std::sort(m_signals.begin(), m_signals.end());
        return std::adjacent_find(m_signals.begin(), m_signals.end()) == m_signals.end();
    }

    std::vector<ChunkColumn> m_columns;
    std::vector<Origin> m_origins; ///< of each column
    std::vector<SignalId> m_signals;
};

/// Unpacks whole windows, one after the other.
template <class Samples>
class WindowUnpacker {
public:
    Samples samples;
    std::vector<Damaged> damage;

    void unpack(std::span<const StoredChunk> chunks) {
        for (std::size_t i = 0; i < chunks.size();) {
            std::size_t end = i + 1;
            while (end < chunks.size() && chunks[end].window == chunks[i].window)
                ++end;
            const std::span<const StoredChunk> window = chunks.subspan(i, end - i);
            if (!samples.appendColumns(window))
                unpackWindow(window);
            i = end;
        }
    }

private:
    void unpackWindow(std::span<const StoredChunk> window) {
        for (const StoredChunk& chunk : window)
            addChunk(chunk);
        endWindow();
    }

    void addChunk(const StoredChunk& chunk) {
        const bool isKnown = isKnownStream(chunk.stream);
        if (isKnown && decodeChunk(chunk.packed, static_cast<Origin>(chunk.stream), m_placed))
            return;
        const std::string_view name =
            isKnown ? kStreamNames[static_cast<std::size_t>(chunk.stream)] : "an unknown stream";
        const Stretch missing{startOf(chunk.window), startOf(chunk.window + 1)};
        damage.push_back({chunk.window,
                          "samples of the " + std::string(name) + " between " + clockText(missing.from) + " and " +
                              clockText(missing.to) + " are damaged",
                          missing});
    }

    /// Merges the streams of a window.
    void endWindow() {
        const auto isBefore = [](const PlacedSample& a, const PlacedSample& b) {
            return a.sample.time != b.sample.time ? a.sample.time < b.sample.time : a.place < b.place;
        };
        if (!std::is_sorted(m_placed.begin(), m_placed.end(), isBefore))
            std::stable_sort(m_placed.begin(), m_placed.end(), isBefore);
        for (const PlacedSample& placed : m_placed)
            samples.append(placed.sample);
        m_placed.clear();
    }

    std::vector<PlacedSample> m_placed;
};

/// Each turn's first chunk, and the end: a window is never parted.
std::vector<std::size_t> turnsOf(const std::vector<StoredChunk>& chunks) {
    std::vector<std::size_t> begins{0};
    std::size_t windows = 0;
    for (std::size_t i = 1; i < chunks.size(); ++i)
        if (chunks[i].window != chunks[i - 1].window && ++windows % kWindowsInTurn == 0)
            begins.push_back(i);
    begins.push_back(chunks.size());
    return begins;
}

template <class Samples>
std::vector<Samples> readStretches(Connection& connection, const WindowRange& range, SampleDamage& damage) {
    std::vector<Damaged> found;
    const std::vector<StoredChunk> chunks = ChunkFetcher(connection, range, found).fetch();
    const std::vector<std::size_t> turns = turnsOf(chunks);
    std::vector<WindowUnpacker<Samples>> unpackers(turns.size() - 1);
    inParallel(unpackers.size(), [&](std::size_t i) {
        unpackers[i].unpack(std::span(chunks).subspan(turns[i], turns[i + 1] - turns[i]));
    });
    std::vector<Samples> stretches;
    for (WindowUnpacker<Samples>& unpacker : unpackers) {
        stretches.push_back(std::move(unpacker.samples));
        found.insert(found.end(), unpacker.damage.begin(), unpacker.damage.end());
    }
    std::stable_sort(found.begin(), found.end(), [](const Damaged& a, const Damaged& b) {
        return a.window < b.window;
    });
    for (const Damaged& one : found) {
        damage.words.push_back(one.words);
        damage.missing.push_back(one.missing);
    }
    return stretches;
}

} // namespace

std::vector<Sample> readSamples(Connection& connection, const WindowRange& range, SampleDamage& damage) {
    const std::vector<SamplesInOrder> stretches = readStretches<SamplesInOrder>(connection, range, damage);
    std::size_t count = 0;
    for (const SamplesInOrder& stretch : stretches)
        count += stretch.all.size();
    std::vector<Sample> samples;
    samples.reserve(count);
    for (const SamplesInOrder& stretch : stretches)
        samples.insert(samples.end(), stretch.all.begin(), stretch.all.end());
    return samples;
}

SamplesBySignal readBySignal(Connection& connection, const WindowRange& range, SampleDamage& damage) {
    std::vector<SamplesBySignal> stretches;
    for (SamplesByColumn& stretch : readStretches<SamplesByColumn>(connection, range, damage))
        stretches.push_back(std::move(stretch.all));
    return SamplesBySignal::joined(std::move(stretches));
}

} // namespace flowhand
