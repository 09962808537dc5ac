#include "bench/devicehealth.h"

#include <algorithm>
#include <cmath>

#include "bench/millistext.h"
#include "bench/statistics.h"

namespace flowhand {

namespace {

using std::chrono::milliseconds;

/// Fewer reports say nothing of their pace.
constexpr std::size_t kLeastReports = 50;
/// A training device answers within 100 ms at the upper levels and 300 ms at the lowest (14 CFR Part 60, A2A and C2A
/// 4.a.2, transport delay): gaps and intervals are held against that.
constexpr Duration kUpperDelay = milliseconds(100);
constexpr Duration kLowestDelay = milliseconds(300);
/// A gap is three intervals and more; shorter than this no hand and no score notices.
constexpr double kDropoutIntervals = 3.0;
constexpr Duration kLeastDropout = milliseconds(20);
/// Shares of the time in gaps.
constexpr double kLostCaution = 0.01;
constexpr double kLostBad = 0.1;

} // namespace

DeviceHealth measureDevice(const DeviceSeries& device) {
    DeviceHealth health;
    health.reports = device.reports.size();
    health.isPaced = device.isPaced();
    health.interval = device.medianInterval();
    if (health.reports < kLeastReports || !health.isPaced) {
        health.findings.push_back(
            {"reports", Soundness::Unmeasured,
             health.isPaced ? phrase("{1} reports").with(std::to_string(health.reports))
                            : phrase("{1} reports, only when something changed").with(std::to_string(health.reports)),
             phrase("gaps show only where reports come at a pace of their own"),
             health.isPaced ? phrase("measure for longer") : Phrase()});
        return health;
    }
    std::vector<double> usual;
    Duration gaps{};
    for (std::size_t i = 1; i < device.reports.size(); ++i) {
        const Duration interval = device.reports[i] - device.reports[i - 1];
        health.longest = std::max(health.longest, interval);
        const bool isGap = seconds(interval) > kDropoutIntervals * seconds(health.interval) && interval > kLeastDropout;
        health.dropouts += isGap ? 1 : 0;
        gaps += isGap ? interval : Duration{};
        if (!isGap)
            usual.push_back(seconds(interval));
    }
    health.jitter = fromSeconds(deviationOf(usual));
    health.lost = seconds(gaps) / std::max(seconds(device.reports.back() - device.reports.front()), 1e-9);
    const Soundness pace = health.interval > kLowestDelay  ? Soundness::Bad
                           : health.interval > kUpperDelay ? Soundness::Caution
                                                           : Soundness::Good;
    health.findings.push_back(
        {"reports", pace, phrase("a report every {1}").with(millisText(health.interval)),
         phrase("a control should be seen within 100 ms"),
         pace == Soundness::Good ? Phrase() : phrase("set the card to a shorter report interval, if it can")});
    const Soundness jitter = health.jitter > kUpperDelay ? Soundness::Bad
                             : health.jitter > std::max(health.interval / 2, Duration(milliseconds(4)))
                                 ? Soundness::Caution
                                 : Soundness::Good;
    health.findings.push_back(
        {"jitter", jitter, phrase("intervals differ by {1} (sigma)").with(millisText(health.jitter)),
         jitter == Soundness::Good ? phrase("steady enough for every step")
                                   : phrase("times are known only as well as the reports come"),
         jitter == Soundness::Good ? Phrase() : phrase("plug it in directly instead of through a hub")});
    const Soundness dropouts = health.lost > kLostBad || health.longest > kLowestDelay      ? Soundness::Bad
                               : health.lost > kLostCaution || health.longest > kUpperDelay ? Soundness::Caution
                                                                                            : Soundness::Good;
    health.findings.push_back(
        {"dropouts", dropouts,
         phrase("{1} gaps, the longest of {2}").with(std::to_string(health.dropouts), millisText(health.longest)),
         dropouts == Soundness::Good ? phrase("nothing was missed")
                                     : phrase("what moves in a gap is seen late or not at all"),
         dropouts == Soundness::Good ? Phrase()
                                     : phrase("try another cable and socket, plug it in directly instead of through a "
                                              "hub, and see whether the computer was busy")});
    return health;
}

} // namespace flowhand
