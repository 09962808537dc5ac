#pragma once

#include <QThread>

#include "voice/voice.h"

namespace flowhand {

class VoiceWorker;

/// Words by a speech engine of this machine, tones by its sound server. Both open slowly and may answer late, so they
/// live on a thread of their own. Without an engine a tone stands for the words; without a sound server nothing is
/// heard. Either is told once.
class SpokenVoice final : public Voice {
    Q_OBJECT

public:
    explicit SpokenVoice(QObject* parent = nullptr);
    /// Joins the thread.
    ~SpokenVoice() override;

    void say(const QString& words, const QString& by) override;
    void tell(const QString& words, const QLocale& language) override;
    void play(Earcon earcon) override;
    void hush() override;
    void setVolume(double volume) override;
    void setVoice(const QString& name) override;
    void setDevice(const QString& id) override;

private:
    QThread m_thread;
    VoiceWorker* m_worker; ///< lives on m_thread, which deletes it
};

} // namespace flowhand
