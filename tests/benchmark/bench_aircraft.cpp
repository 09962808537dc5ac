// What a step of the practice aircraft costs: a parked, a rolling and a flying aircraft.
#include <chrono>
#include <cstdio>
#include <string>
#include <vector>

#include "aircraft/practice.h"

using namespace flowhand;

namespace {

constexpr int kSteps = 200000;

bool measure(const Aircraft& aircraft, const char* title, const std::string& place, double lever) {
    Result<PracticeAircraft> practice = PracticeAircraft::create(aircraft, place);
    if (!practice) {
        std::fprintf(stderr, "%s\n", describe(practice.error()).c_str());
        return false;
    }
    for (const char* name : {"thrust_lever_1", "thrust_lever_2"})
        practice->take(
            {Time{}, *aircraft.signals.find(name), Value::number(lever), Actor::Hand, Origin::Script, kNoControl});
    std::vector<Sample> motion;
    std::size_t samples = 0;
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < kSteps; ++i) {
        motion.clear();
        practice->step(motion);
        samples += motion.size();
    }
    const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - start;
    const double each = took.count() / kSteps;
    std::printf("practice aircraft, %-16s %6.3f us a step, %5.0f times real time, %.2f samples a step\n", title, each,
                seconds(PracticeAircraft::kStep) * 1e6 / each, static_cast<double>(samples) / kSteps);
    return true;
}

} // namespace

int main() {
    Problems problems;
    const std::optional<Aircraft> aircraft =
        loadAircraft(std::string(PROCEDURES) + "/twin_jet/aircraft.toml", problems);
    if (!aircraft) {
        std::fprintf(stderr, "%s\n", describe(problems.firstError()).c_str());
        return 1;
    }
    const bool isWhole = measure(*aircraft, "parked", "stand", 0.0) && measure(*aircraft, "rolling", "line_up", 10.0) &&
                         measure(*aircraft, "taking off", "line_up", 90.0);
    return isWhole ? 0 : 1;
}
