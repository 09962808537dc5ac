#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "base/time.h"
#include "session/runloop.h"

namespace flowhand {

/// A run on a thread of its own, the session thread, in real time. Every function may be called from any thread.
class Run {
public:
    /// `origin` is the clock's time at which the run's time is 0, the same that the devices stamp from. `onChange` is
    /// called on the session thread after something a view shows has changed, at most 60 times a second. The clock must
    /// outlive the run.
    Run(RunParts parts, const Clock& clock, Time origin, std::function<void()> onChange);
    /// Stops the run if it is not over, and joins the thread.
    ~Run();
    Run(const Run&) = delete;
    Run& operator=(const Run&) = delete;

    void command(CommandKind kind, const std::string& text = {});
    /// As RunLoop::jump(): the aircraft goes where the step says.
    void jump(const std::string& step);
    void moveOnScreen(SignalId signal, Value value);
    [[nodiscard]] RunSnapshot snapshot() const;

private:
    struct State;
    std::unique_ptr<State> m_state;
};

} // namespace flowhand
