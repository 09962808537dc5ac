#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "base/signal.h"
#include "base/time.h"
#include "condition/condition.h"
#include "procedure/flow.h"

namespace flowhand {

/// From when a line's delay counts.
enum class HandTrigger : std::uint8_t {
    After, ///< the end of the line before
    With,  ///< the beginning of the line before
    At,    ///< the start of the run
    Due,   ///< a step of the flow became due
    When   ///< a condition is true (without windows)
};

enum class HandAct : std::uint8_t {
    Move,
    Press,  ///< a button, and let go
    Follow, ///< steer along the line on the ground from now on
    Keep,   ///< hold a speed on the ground from now on
    Jump,   ///< the run goes on with another step
    Stop    ///< end following and keeping
};

/// One line of a script of hands.
struct HandLine {
    HandTrigger trigger = HandTrigger::After;
    Duration delay{};
    std::size_t step = 0;
    std::optional<Condition> condition;

    HandAct act = HandAct::Move;
    std::vector<SignalId> controls;
    Value target;         ///< of Move: in the control's unit; of Keep: the speed
    std::size_t jump = 0; ///< of Jump: the step's index
    Duration lasts{};     ///< of Move: the time it takes; of Press: how long it is held
    SourcePlace place;
};

/// Format: procedures/README.md, 'Hands'. Lines with errors are named in `problems` and left out.
[[nodiscard]] std::vector<HandLine> parseHandScript(const std::string& source, const std::string& name,
                                                    const Aircraft& aircraft, const Flow& flow, Problems& problems);

} // namespace flowhand
