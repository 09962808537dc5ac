#pragma once

#include <memory>
#include <utility>

#include <QStringList>

#include "voice/voice.h"

namespace flowhand::test {

/// What a voice was told, in order: "say WHO: WORDS", "play NUMBER", "hush".
struct Heard {
    QStringList log;
    double volume = -1.0;
    QString voice;
    QString device;
    int voices = 0; ///< how many were made

    /// Since the last call.
    QStringList take() { return std::exchange(log, {}); }
};

/// Writes down what it shall say.
class FakeVoice final : public Voice {
public:
    explicit FakeVoice(std::shared_ptr<Heard> heard) : m_heard(std::move(heard)) { ++m_heard->voices; }

    void say(const QString& words, const QString& by) override {
        m_heard->log << QStringLiteral("say %1: %2").arg(by, words);
    }
    void tell(const QString& words, const QLocale& language) override {
        const bool isEnglish = language.language() == QLocale::English;
        m_heard->log << (isEnglish ? QStringLiteral("say cockpit: ")
                                   : QStringLiteral("say cockpit in %1: ").arg(language.name().left(2))) +
                            words;
    }
    void play(Earcon earcon) override { m_heard->log << QStringLiteral("play %1").arg(static_cast<int>(earcon)); }
    void hush() override { m_heard->log << QStringLiteral("hush"); }
    void setVolume(double volume) override { m_heard->volume = volume; }
    void setVoice(const QString& name) override { m_heard->voice = name; }
    void setDevice(const QString& id) override { m_heard->device = id; }

private:
    std::shared_ptr<Heard> m_heard;
};

} // namespace flowhand::test
