#pragma once

#include "presenter/reviewtimeline.h"
#include "presenter/sound.h"

namespace flowhand {

/// Says a run's words again while it is played at about its own pace, from half to twice: slower they would come in
/// pieces, faster on top of each other. Words cut off those before. GUI thread.
class ReviewVoice : public QObject {
public:
    /// Both must outlive it.
    ReviewVoice(ReviewTimeline& timeline, Sound& sound);

private:
    void speak(double from, double to);

    ReviewTimeline& m_timeline;
    Sound& m_sound;
    bool m_hasSpoken = false; ///< since it began to play
};

} // namespace flowhand
