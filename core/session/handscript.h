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
    Wait,   ///< nothing, for as long as another line would take
    Stop    ///< end following and keeping
};

/// One line of a script of hands.
struct HandLine {
    HandTrigger trigger = HandTrigger::After;
    Duration delay{};
    std::size_t step = 0;
    std::optional<std::size_t> of; ///< the step whose lines they are (linesOf); none: before any step
    std::optional<Condition> condition;

    HandAct act = HandAct::Move;
    std::vector<SignalId> controls;
    Value target;         ///< of Move: in the control's unit; of Keep: the speed
    std::size_t jump = 0; ///< of Jump: the step's index
    Duration lasts{};     ///< of Move: the time it takes; of Press: how long it is held
    SourcePlace place;
};

/// A stretch of lines, [first, end).
struct HandStretch {
    std::size_t first = 0;
    std::size_t end = 0;
};

/// The lines of a step: the first that waits for it and those after it, up to the next one that waits for a step.
[[nodiscard]] std::optional<HandStretch> linesOf(const std::vector<HandLine>& lines, std::size_t step);

/// Format: procedures/README.md, 'Hands'. Lines with errors are named in `problems` and left out.
[[nodiscard]] std::vector<HandLine> parseHandScript(const std::string& source, const std::string& name,
                                                    const Aircraft& aircraft, const Flow& flow, Problems& problems);

} // namespace flowhand
