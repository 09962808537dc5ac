#include "store/samplereader.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "store/window.h"

namespace flowhand {

namespace {

constexpr std::array<std::string_view, kStreams> kStreamNames = {"devices", "script", "screen", "practice aircraft",
                                                                 "feed"};

class SampleReader {
public:
    SampleReader(Connection& connection, std::int64_t run, std::vector<std::string>& damage,
                 std::vector<Stretch>& missing)
        : m_connection(connection), m_run(run), m_damage(damage), m_missing(missing) {}

    void read(std::int64_t first, std::int64_t last) {
        reserve(first, last);
        std::int64_t window = first;
        for (;;) {
            const Status read = readOn(window, last);
            endWindow();
            if (read)
                return;
            // A page of the file is damaged: name what it hid, and go on behind it.
            window = std::max(window, m_window + 1);
            const std::int64_t next = nextReadable(window, last);
            m_missing.push_back({startOf(window), startOf(std::min(next, last + 1))});
            m_damage.push_back("the samples from " + clockText(startOf(window)) + " to " +
                               (next > last ? "the end" : clockText(startOf(next))) + " cannot be read");
            if (next > last)
                return;
            window = next;
        }
    }

    std::vector<Sample> take() { return std::move(m_samples); }

private:
    /// A sample takes about a byte: near enough to spare a long run from being moved in memory again and again.
    void reserve(std::int64_t first, std::int64_t last) {
        Result<Statement> row =
            m_connection.prepare("SELECT sum(length(samples)) FROM chunk WHERE run = ? AND window BETWEEN ? AND ?");
        if (row && row->bind(1, m_run).bind(2, first).bind(3, last).step().value_or(false))
            m_samples.reserve(static_cast<std::size_t>(row->integer(0)));
    }

    Status readOn(std::int64_t first, std::int64_t last) {
        Result<Statement> rows =
            m_connection.prepare("SELECT window, stream, samples FROM chunk WHERE run = ? AND window BETWEEN ? AND ? "
                                 "ORDER BY window, stream, part");
        if (!rows)
            return tl::unexpected(rows.error());
        rows->bind(1, m_run).bind(2, first).bind(3, last);
        m_window = first - 1;
        for (;;) {
            const Result<bool> row = rows->step();
            if (!row)
                return tl::unexpected(row.error());
            if (!*row)
                return {};
            if (rows->integer(0) != m_window)
                endWindow();
            m_window = rows->integer(0);
            addChunk(rows->integer(1), rows->text(2));
        }
    }

    void addChunk(std::int64_t stream, const Bytes& packed) {
        const bool isKnown = stream >= 0 && stream < static_cast<std::int64_t>(kStreams);
        if (isKnown && decodeChunk(packed, static_cast<Origin>(stream), m_placed))
            return;
        const std::string_view name = isKnown ? kStreamNames[static_cast<std::size_t>(stream)] : "an unknown stream";
        m_missing.push_back({startOf(m_window), startOf(m_window + 1)});
        m_damage.push_back("samples of the " + std::string(name) + " between " + clockText(startOf(m_window)) +
                           " and " + clockText(startOf(m_window + 1)) + " are damaged");
    }

    /// Merges the streams of a window.
    void endWindow() {
        const auto isBefore = [](const PlacedSample& a, const PlacedSample& b) {
            return a.sample.time != b.sample.time ? a.sample.time < b.sample.time : a.place < b.place;
        };
        if (!std::is_sorted(m_placed.begin(), m_placed.end(), isBefore))
            std::stable_sort(m_placed.begin(), m_placed.end(), isBefore);
        for (const PlacedSample& placed : m_placed)
            m_samples.push_back(placed.sample);
        m_placed.clear();
    }

    /// The next window that has a chunk which can be read; past `last` when there is none.
    std::int64_t nextReadable(std::int64_t window, std::int64_t last) {
        for (++window; window <= last; ++window) {
            Result<Statement> rows =
                m_connection.prepare("SELECT length(samples) FROM chunk WHERE run = ? AND window = ?");
            if (!rows)
                return last + 1;
            const Result<bool> row = rows->bind(1, m_run).bind(2, window).step();
            if (row && *row)
                return window;
        }
        return window;
    }

    Connection& m_connection;
    std::int64_t m_run;
    std::vector<std::string>& m_damage;
    std::vector<Stretch>& m_missing;
    std::int64_t m_window = 0;
    std::vector<PlacedSample> m_placed; ///< of m_window
    std::vector<Sample> m_samples;
};

} // namespace

std::vector<Sample> readSamples(Connection& connection, std::int64_t run, std::int64_t first, std::int64_t last,
                                std::vector<std::string>& damage, std::vector<Stretch>& missing) {
    SampleReader reader(connection, run, damage, missing);
    reader.read(first, last);
    return reader.take();
}

} // namespace flowhand
