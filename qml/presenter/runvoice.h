#pragma once

#include <cstdint>
#include <vector>

#include "presenter/sound.h"
#include "session/run.h"

namespace flowhand {

/// Says aloud what a run's snapshots tell: the words of its cues, calls and replies, and a tone for what became of the
/// pilot's steps. A run does not wait for a voice; it models how long words take. So
///
///   * words begin when the run begins them, and cut off earlier ones that still sound: a voice that is slower than
///     modelled never falls behind;
///   * words that the run has ended before they could begin here are left out;
///   * the same words are said again only when the run begins them anew (after a hold, at a repeat);
///   * a hold and a set-up check cut words off; the run speaks them again when it goes on. The last words of a run that
///     ends by itself may fade out; once the pilot stops or leaves it, nothing more is heard of it;
///   * of steps that close together the worst is told, of a guard and a step the guard.
///
/// GUI thread.
class RunVoice {
public:
    /// `sound` must outlive it.
    explicit RunVoice(Sound& sound) : m_sound(sound) {}

    /// Another run. The flow must outlive what is shown.
    void begin(const Flow& flow, const SessionSetup& setup);
    void show(const RunSnapshot& snapshot);
    /// Nothing more of this run.
    void stop();

private:
    void speak(const SessionView& now);
    void tell(const RunSnapshot& snapshot);

    Sound& m_sound;
    const Flow* m_flow = nullptr; ///< none: stopped, or not begun
    SessionSetup m_setup;
    SessionView m_before;
};

} // namespace flowhand
