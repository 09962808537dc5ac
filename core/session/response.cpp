#include "session/response.h"

#include <algorithm>

namespace flowhand {

std::vector<Time> responseStarts(const std::vector<StepResult>& results, const std::vector<bool>& isDone) {
    std::vector<Time> starts(results.size());
    std::vector<std::size_t> byTime;
    for (std::size_t i = 0; i < results.size(); ++i) {
        starts[i] = results[i].done;
        if (isDone[i])
            byTime.push_back(i);
    }
    std::stable_sort(byTime.begin(), byTime.end(), [&](std::size_t a, std::size_t b) {
        return results[a].done < results[b].done;
    });
    for (std::size_t n = 0; n < byTime.size(); ++n) {
        const StepResult& result = results[byTime[n]];
        const bool isAfterCue = result.due <= result.done;
        Time start = isAfterCue ? result.due : result.done;
        if (n > 0) {
            const Time last = results[byTime[n - 1]].done;
            start = isAfterCue ? std::max(result.due, last) : last;
        }
        starts[byTime[n]] = start;
    }
    return starts;
}

} // namespace flowhand
