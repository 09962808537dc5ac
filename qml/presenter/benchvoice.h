#pragma once

#include "bench/workbench.h"
#include "presenter/sound.h"

namespace flowhand {

/// Says aloud what the builder shall do next at the bench, so that hands and eyes can stay on the control:
///
///   * what is asked when another control or stage begins, at once;
///   * what is still open of the same control only after it has stood for a while, so that nobody is talked at while
///     moving; never the same twice in a row;
///   * a tone for each control that is confirmed or given up, and the first sentence of what came of the task.
///
/// GUI thread.
class BenchVoice {
public:
    /// `sound` must outlive it.
    explicit BenchVoice(Sound& sound) : m_sound(sound) {}

    /// `now` on the bench's clock.
    void show(const BenchTaskView& task, Time now);
    /// Nothing more of this task.
    void stop();

private:
    void say(const Phrase& words);
    void tellEnds(const BenchTaskView& task);

    Sound& m_sound;
    BenchTaskView m_before;
    Phrase m_said;
    Time m_standsSince{}; ///< what is asked now
};

} // namespace flowhand
