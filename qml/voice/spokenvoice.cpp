#include "voice/spokenvoice.h"

#include <memory>

#include <QAudioDevice>
#include <QMediaDevices>
#include <QTextToSpeech>
#include <QVoice>

#include "voice/toneplayer.h"

namespace flowhand {

namespace {

/// Speaks by itself, without a network and without a daemon.
const QString kFirstEngine = QStringLiteral("flite");

/// How fast, -1..1. At this rate the voices of flite 2.2 take as long for the words of the shipped flows as a run
/// takes them to (speakingTime() of session/partnerpace.h): 0.07 to 0.15 times less to more, at worst 0.16 s later
/// (measured of 19 texts, two voices).
constexpr double kRate = 0.3;

QString engineOf(const QStringList& engines) {
    if (engines.contains(kFirstEngine))
        return kFirstEngine;
    for (const QString& engine : engines)
        if (engine != QStringLiteral("mock")) // of Qt's own tests
            return engine;
    return {};
}

} // namespace

/// The part of a voice that opens devices. On the voice's thread.
class VoiceWorker : public QObject {
    Q_OBJECT

public:
    void open() {
        if (QMediaDevices::defaultAudioOutput().isNull())
            return fall(tr("Nothing is spoken: no sound server answers. What would be said is on the screen. Once one "
                           "runs, turn the sound off and on again."));
        m_isHeard = true;
        m_tones = std::make_unique<TonePlayer>();
        const QString engine = engineOf(QTextToSpeech::availableEngines());
        if (engine.isEmpty())
            return fall(tr("Nothing is spoken: there is no speech engine, so a tone stands for the words. Install "
                           "the package qt6-speech-flite-plugin."));
        m_speech = std::make_unique<QTextToSpeech>(engine);
        if (m_speech->state() == QTextToSpeech::Error)
            return loseEngine(m_speech->errorString());
        connect(
            m_speech.get(), &QTextToSpeech::errorOccurred, this,
            [this](QTextToSpeech::ErrorReason /*reason*/, const QString& why) {
                loseEngine(why);
            },
            Qt::QueuedConnection); // the engine must not go while it reports
        m_voices = m_speech->availableVoices();
        m_speech->setRate(kRate);
        m_speech->setVolume(m_volume);
    }

    void say(const QString& words, const QString& by) {
        if (!m_speech)
            return play(Earcon::Words);
        m_speech->stop(QTextToSpeech::BoundaryHint::Immediate);
        if (const int voice = voiceOf(by); voice < m_voices.size())
            m_speech->setVoice(m_voices[voice]);
        m_speech->say(words);
    }

    void play(Earcon earcon) {
        if (m_isHeard && !m_tones->play(earcon, m_volume)) {
            m_isHeard = false;
            fall(tr("Nothing is heard any more: the sound server is gone. Once it runs again, turn the sound off and "
                    "on again."));
        }
    }

    void hush() {
        if (m_speech)
            m_speech->stop(QTextToSpeech::BoundaryHint::Immediate);
    }

    void setVolume(double volume) {
        m_volume = volume;
        if (m_speech)
            m_speech->setVolume(volume);
    }

Q_SIGNALS:
    void unheard(const QString& why);

private:
    /// People by the first voice of the engine, the cockpit's and the ground's words by others where it has them.
    [[nodiscard]] static int voiceOf(const QString& by) {
        return by == QStringLiteral("cockpit") ? 1 : by == QStringLiteral("ground") ? 4 : 0;
    }

    void loseEngine(const QString& why) {
        m_speech.reset();
        fall(tr("Nothing is spoken any more, so a tone stands for the words: the speech engine says “%1”.").arg(why));
    }

    void fall(const QString& why) {
        if (!m_hasFallen)
            Q_EMIT unheard(why);
        m_hasFallen = true;
    }

    std::unique_ptr<QTextToSpeech> m_speech;
    std::unique_ptr<TonePlayer> m_tones;
    QList<QVoice> m_voices;
    double m_volume = 1.0;
    bool m_isHeard = false;
    bool m_hasFallen = false;
};

SpokenVoice::SpokenVoice(QObject* parent) : Voice(parent), m_worker(new VoiceWorker) {
    m_worker->moveToThread(&m_thread);
    connect(&m_thread, &QThread::started, m_worker, &VoiceWorker::open);
    connect(&m_thread, &QThread::finished, m_worker, &QObject::deleteLater);
    connect(m_worker, &VoiceWorker::unheard, this, &Voice::unheard);
    m_thread.setObjectName(QStringLiteral("voice"));
    m_thread.start();
}

SpokenVoice::~SpokenVoice() {
    m_thread.quit();
    m_thread.wait();
}

void SpokenVoice::say(const QString& words, const QString& by) {
    QMetaObject::invokeMethod(m_worker, [worker = m_worker, words, by] {
        worker->say(words, by);
    });
}

void SpokenVoice::play(Earcon earcon) {
    QMetaObject::invokeMethod(m_worker, [worker = m_worker, earcon] {
        worker->play(earcon);
    });
}

void SpokenVoice::hush() {
    QMetaObject::invokeMethod(m_worker, [worker = m_worker] {
        worker->hush();
    });
}

void SpokenVoice::setVolume(double volume) {
    QMetaObject::invokeMethod(m_worker, [worker = m_worker, volume] {
        worker->setVolume(volume);
    });
}

} // namespace flowhand

#include "spokenvoice.moc"
