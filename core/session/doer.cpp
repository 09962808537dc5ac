#include "session/doer.h"

#include "session/session.h"

namespace flowhand {

Doer doerOf(const Step& step, const SessionSetup& setup) {
    if (step.kind == StepKind::Say)
        return (step.cue ? step.cue->by : step.seat) == setup.ownSeat ? Doer::Hand : Doer::Words;
    const std::string& mover = step.movedBy.empty() ? step.seat : step.movedBy;
    return setup.isSolo || mover == setup.ownSeat ? Doer::Hand : Doer::Partner;
}

} // namespace flowhand
