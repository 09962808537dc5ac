#include "device/losswatch.h"

#include <algorithm>
#include <utility>

namespace flowhand {

namespace {

using namespace std::chrono_literals;

/// Reports that follow each other sooner than half the period, within these limits, were waiting. A high-speed device
/// sends every 125 us at the soonest (USB 2.0, 5.6.4: value from memory), a full-speed one every 1 ms.
constexpr Duration kSoonest = 60us;
constexpr Duration kLatest = 500us;
/// The rate is the mean over so many reports: good to half a percent.
constexpr std::uint64_t kRateReports = 256;
/// A device that says nothing for so long has no steady rate.
constexpr Duration kPause = 500ms;
/// So much more slowly than they were read did the reports of a full queue come.
constexpr int kSlower = 4;
/// The rate is good to a percent or so, the ends of a stretch to a report each.
constexpr std::uint64_t doubtOf(std::uint64_t reports) {
    return 2 + reports / 50;
}
/// A stretch without an end is counted whenever it is as long as this.
constexpr std::uint64_t kLongStretch = 4096;

} // namespace

void LossWatch::took(Time time) {
    const Duration gap = time - m_last;
    if (!m_isBehind && gap >= std::clamp(m_period / 2, kSoonest, kLatest)) {
        endStretch();
        m_emptySince = std::max(m_last, m_emptySeen);
        m_pause = gap;
        m_wait = time - m_emptySince;
    } else {
        m_isBehind = true;
    }
    ++m_read;
    if (m_read <= kKept)
        m_drain = m_read == 1 ? Duration{} : m_drain + gap;
    m_last = time;
    if (m_read < kLongStretch)
        return;
    endStretch();
    m_emptySince = time; // it is not, but what waits now is few against a stretch
    m_pause = m_wait = {};
}

void LossWatch::sawEmpty(Time time) {
    m_emptySeen = time;
    m_isBehind = false;
    endStretch();
}

void LossWatch::endStretch() {
    const std::uint64_t read = std::exchange(m_read, 0);
    if (read == 0)
        return;
    if (read < kKept) {
        m_rateReports += read;
        measureRate();
        return;
    }
    const auto promised = m_period > Duration{} ? static_cast<std::uint64_t>((m_last - m_emptySince) / m_period) : 0;
    const std::uint64_t doubt = doubtOf(read);
    if (promised > read + doubt) {
        m_unsure = promised - read;
        m_suspected += m_unsure;
    } else if (m_unsure > 0) {
        weigh(read, m_last - m_emptySince);
    } else if (promised + doubt < read && m_wait > kSlower * m_drain) {
        ++m_suspected;
    }
    m_rateSince = m_last;
    m_rateReports = 0;
}

void LossWatch::measureRate() {
    if (m_pause >= kPause) {
        m_period = {};
    } else if (m_rateReports >= kRateReports) {
        weigh(m_rateReports, m_last - m_rateSince);
        m_unsure = 0; // what is late comes sooner
        m_period = (m_last - m_rateSince) / static_cast<std::int64_t>(m_rateReports);
    } else {
        return;
    }
    m_rateSince = m_last;
    m_rateReports = 0;
}

void LossWatch::weigh(std::uint64_t reports, Duration time) {
    const auto promised = m_period > Duration{} ? static_cast<std::uint64_t>(time / m_period) : reports;
    const std::uint64_t doubt = doubtOf(reports);
    if (reports <= promised + doubt)
        return;
    const std::uint64_t surplus = reports - promised;
    const std::uint64_t refuted = surplus + doubt >= m_unsure ? m_unsure : surplus;
    m_suspected -= refuted;
    m_unsure -= refuted;
}

} // namespace flowhand
