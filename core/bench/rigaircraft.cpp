#include "bench/rigaircraft.h"

#include <algorithm>
#include <limits>

#include "rig/rigfile.h"

namespace flowhand {

std::size_t aircraftOfRig(const std::string& source, const std::string& file,
                          const std::vector<AircraftFolder>& library, Problems& problems) {
    std::size_t best = 0;
    Problems ofBest;
    auto fewest = std::numeric_limits<std::ptrdiff_t>::max();
    for (std::size_t i = 0; i < library.size() && fewest > 0; ++i) {
        Problems found;
        const Aircraft& aircraft = *library[i].aircraft;
        (void)parseRigFile(source, file, aircraft.signals, aircraft.controls.size(), found);
        const auto errors = std::count_if(found.all().begin(), found.all().end(), [](const Problem& problem) {
            return problem.severity == Severity::Error;
        });
        if (errors >= fewest)
            continue;
        fewest = errors;
        best = i;
        ofBest = std::move(found);
    }
    for (const Problem& problem : ofBest.all())
        problems.add(problem.severity, problem.error);
    return best;
}

} // namespace flowhand
