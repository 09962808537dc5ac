// The runs that the states of the Progress place show: stubreview.h.

#include <Qt>

#include "stubreview.h"

namespace flowhand::test {

QStringList StubShelf::progressNames() {
    return {"progress",       "progress-mixed",   "progress-chosen", "progress-first",
            "progress-empty", "progress-refused", "progress-long"};
}

/// A sample run as if a person had flown it, so long ago and so quickly.
void StubShelf::addPractice(const std::string& name, double daysAgo, double pace, const std::string& pilot,
                            const std::string& rig) {
    constexpr double kDay = 86'400'000.0;
    add(name, [&](StoredRun& run) {
        for (Sample& sample : run.samples)
            if (sample.actor == Actor::Hand)
                sample.origin = Origin::Device;
        run.header.startedUnixMillis = kNow - static_cast<std::int64_t>(daysAgo * kDay);
        run.header.pilot = pilot;
        run.header.rigTitle = rig;
        run.score.pace = fromSeconds(seconds(run.score.pace) * pace);
    });
}

void StubShelf::fillProgress(const QString& state) {
    isRefusing = state == "progress-refused";
    if (isRefusing || state == "progress-empty")
        return;
    if (state == "progress-first")
        return addPractice("take_off_good", 0.01, 1.0);
    if (state == "progress-long") {
        addPractice("take_off_faulty", 3.0, 1.0, "Somebody with a first, a second and a third name",
                    "Quadrant, pedals, tiller and a panel of switches from the workshop");
        return addPractice("taxi_out_good", 1.0, 1.0, "Somebody with a first, a second and a third name",
                           "Quadrant, pedals, tiller and a panel of switches from the workshop");
    }
    addPractice("take_off_good", 40.0, 0.9, "Kim", "");
    double pace = 1.9;
    for (const double daysAgo : {16.0, 15.0, 13.0, 12.9, 10.0})
        addPractice("take_off_faulty", daysAgo, 2.1);
    for (const double daysAgo : {9.0, 8.9, 7.0, 6.9, 6.0, 5.5, 4.0})
        addPractice("take_off_good", daysAgo, pace *= 0.92);
    addPractice("taxi_out_good", 0.5, 1.2);
    addPractice("landing_roll_good", 2.2, 1.0);
}

} // namespace flowhand::test
