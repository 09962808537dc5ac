#pragma once

#include "voice/voice.h"

namespace flowhand {

/// Says nothing and needs nothing: for who has turned the sound off.
class SilentVoice final : public Voice {
public:
    using Voice::Voice;

    void say(const QString& /*words*/, const QString& /*by*/) override {}
    void tell(const QString& /*words*/, const QLocale& /*language*/) override {}
    void play(Earcon /*earcon*/) override {}
    void hush() override {}
    void setVolume(double /*volume*/) override {}
    void setVoice(const QString& /*name*/) override {}
    void setDevice(const QString& /*id*/) override {}
};

} // namespace flowhand
