#pragma once

#include <cstdint>

#include "base/time.h"

namespace flowhand {

/// Suspects what a reader cannot see: the kernel keeps 63 reports that wait for a reader, and silently drops what comes
/// while they wait (Linux 6.1: 64 slots, of which one stays empty; measured). So reports may have been lost when at
/// least 63 were read without the queue being empty in between, and
///  - fewer were read in that stretch than the device's rate promises: what is missing is counted; or
///  - more were read than that rate, or none is known, and they came in far more slowly than they were read, so that
///    nearly all of them waited: then one is counted.
/// A device, or what forwards its reports, that was late itself and catches up looks the same at first; but what it
/// owes comes after. So when more reports than the rate promises follow, what was counted last is taken back. What
/// stays is still a suspicion, and is told as one.
///
/// One device's connection; its reader's thread. Told the times.
class LossWatch {
public:
    static constexpr std::uint64_t kKept = 63;

    /// A report was read at `time`. When that is long after the one before, the read is taken to have waited for it.
    void took(Time time);
    /// A read found nothing.
    void sawEmpty(Time time);

    /// More may be waiting: the next read should not wait, so that it is seen when the queue is empty.
    [[nodiscard]] bool isBehind() const { return m_isBehind; }
    /// Reports that may have been lost. Falls when a suspicion proves wrong.
    [[nodiscard]] std::uint64_t suspected() const { return m_suspected; }
    /// Mean time from one report to the next; 0: not known.
    [[nodiscard]] Duration period() const { return m_period; }

private:
    void endStretch();
    void measureRate();
    /// So many reports in such a time speak against what is suspected, or do not.
    void weigh(std::uint64_t reports, Duration time);

    Time m_last = Time::min() / 2;       ///< of the last report
    Time m_emptySeen = Time::min() / 2;  ///< when a read last found nothing
    Time m_emptySince = Time::min() / 2; ///< the last time before the stretch at which the queue was empty
    Duration m_pause{};                  ///< before the stretch's first report
    Duration m_wait{};                   ///< from m_emptySince to the stretch's first report
    Duration m_drain{};                  ///< from its first report to its 63rd
    std::uint64_t m_read = 0;            ///< reports of the stretch
    bool m_isBehind = false;

    Time m_rateSince{};
    std::uint64_t m_rateReports = 0;
    Duration m_period{};
    std::uint64_t m_suspected = 0;
    std::uint64_t m_unsure = 0; ///< of them, what the reports that follow may still refute
};

} // namespace flowhand
