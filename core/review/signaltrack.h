#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "base/time.h"
#include "base/value.h"
#include "session/samplesbysignal.h"

namespace flowhand {

/// What of a signal falls into one column of a picture. A signal is constant between its changes, so `lowest` to
/// `highest` is all that it was in the column's time, the value held at its beginning too.
struct SignalColumn {
    bool isKnown = false; ///< it had a value at some moment
    bool hasGap = false;  ///< it was unknown at some moment: to be drawn as a gap
    double first = 0.0;   ///< the first and last known ones; lines go from one column's last to the next one's first
    double last = 0.0;
    double lowest = 0.0;
    double highest = 0.0;

    bool operator==(const SignalColumn&) const = default;
};

/// One signal over a run, with a pyramid of its lowest and highest values, so that any stretch is drawn in a time that
/// depends on the number of columns and hardly on the number of changes. Built once, then any thread may read it.
class SignalTrack {
public:
    /// Of a signal that never changed.
    SignalTrack() = default;
    /// Borrows the samples, and builds the pyramid.
    explicit SignalTrack(const SignalSamples& samples);

    [[nodiscard]] std::size_t size() const { return m_times.size(); }
    [[nodiscard]] Time timeOf(std::size_t change) const { return m_times[change]; }
    [[nodiscard]] Value valueOf(std::size_t change) const { return Value::number(m_values[change]); }
    /// The held value; unknown before the first.
    [[nodiscard]] Value at(Time time) const;
    /// How many changes lie at or before `time`.
    [[nodiscard]] std::size_t countUntil(Time time) const;

    /// [from, to) in `count` columns of equal width, the first beginning at `from`. O(count log size).
    [[nodiscard]] std::vector<SignalColumn> columns(Time from, Time to, std::size_t count) const;

    /// When after `time` the signal first differs from what it is then by at least `least` (> 0), or becomes known or
    /// unknown.
    [[nodiscard]] std::optional<Time> nextChange(Time time, double least) const;
    /// The same backwards: the last change before `time` that came from a value which differs so from what the signal
    /// was just before `time`.
    [[nodiscard]] std::optional<Time> previousChange(Time time, double least) const;

    /// Over the whole run; none when it was never known.
    struct Extent {
        double lowest = 0.0;
        double highest = 0.0;
    };
    [[nodiscard]] std::optional<Extent> extent() const;

private:
    struct Block {
        double lowest = 0.0; ///< of the known ones; lowest > highest: none
        double highest = 0.0;
        bool hasUnknown = false;
    };
    [[nodiscard]] static Block blockOf(double value);
    [[nodiscard]] static Block blockOf(std::span<const double> values);
    [[nodiscard]] static Block blockOf(std::span<const Block> blocks);
    static void add(Block& block, const Block& other);
    [[nodiscard]] Block over(std::size_t first, std::size_t end) const;
    [[nodiscard]] double heldBefore(std::size_t end) const;

    std::span<const Time> m_times;
    std::span<const double> m_values;         ///< NaN: unknown
    std::vector<std::vector<Block>> m_levels; ///< of 16, 256, ... changes
};

} // namespace flowhand
