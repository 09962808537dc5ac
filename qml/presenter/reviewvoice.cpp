#include "presenter/reviewvoice.h"

namespace flowhand {

namespace {

constexpr double kSlowest = 0.5;
constexpr double kFastest = 2.0;

} // namespace

ReviewVoice::ReviewVoice(ReviewTimeline& timeline, Sound& sound) : m_timeline(timeline), m_sound(sound) {
    connect(&timeline, &ReviewTimeline::played, this, &ReviewVoice::speak);
    connect(&timeline, &ReviewTimeline::playChanged, this, [this] {
        if (m_hasSpoken && !m_timeline.isPlaying())
            m_sound.voice().hush();
        m_hasSpoken = m_hasSpoken && m_timeline.isPlaying();
    });
}

void ReviewVoice::speak(double from, double to) {
    if (m_timeline.pace() < kSlowest || m_timeline.pace() > kFastest)
        return;
    for (const Call& call : m_timeline.timeline().calls()) {
        if (seconds(call.from) < from || seconds(call.from) >= to)
            continue;
        m_sound.voice().say(QString::fromStdString(call.text), QString::fromStdString(call.by));
        m_hasSpoken = true;
    }
}

} // namespace flowhand
