#include "session/anchor.h"

namespace flowhand {

Anchor anchorAt(const Flow& flow, const std::vector<StepResult>& results, Time time) {
    Anchor anchor{{}, {}, time};
    Time latest = Time::min();
    for (std::size_t i = 0; i < results.size() && i < flow.steps.size(); ++i) {
        const Time due = results[i].due;
        if (due == kForever || due > time || due < latest)
            continue;
        latest = due;
        anchor = {flow.steps[i].id, time - due, time};
    }
    return anchor;
}

Time timeOf(const Anchor& anchor, const Flow& flow, const std::vector<StepResult>& results) {
    for (std::size_t i = 0; i < results.size() && i < flow.steps.size(); ++i)
        if (flow.steps[i].id == anchor.step && results[i].due != kForever)
            return results[i].due + anchor.offset;
    return anchor.time;
}

} // namespace flowhand
