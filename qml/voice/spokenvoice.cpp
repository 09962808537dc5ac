#include "voice/spokenvoice.h"

#include <algorithm>
#include <memory>
#include <utility>

#include <QAudioDevice>
#include <QLocale>
#include <QMediaDevices>
#include <QTextToSpeech>
#include <QVoice>

#include "voice/toneplayer.h"

namespace flowhand {

namespace {

/// speech-dispatcher, a process of its own: an engine that falls over there does not take the window with it. Never
/// flite, which speaks within this process: its plugin of Qt 6.4.2 crashes when words are to be said while those before
/// are still being made, and words that cut others off are what a run is full of.
const QString kEngine = QStringLiteral("speechd");

/// How fast, -1..1. At this rate two voices of espeak-ng 1.51 ended 0.3 s after the end that a run models
/// (speakingTime() of session/partnerpace.h) in the mean, at worst 0.65 s, of which part is the way through the sound
/// server (measured of 12 texts, on a machine busy with other work).
constexpr double kRate = 0.5;

/// Crews speak English, whatever the language of the session is.
const QLocale kLocale(QLocale::English, QLocale::UnitedKingdom);

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
        m_outputs = std::make_unique<QMediaDevices>();
        connect(m_outputs.get(), &QMediaDevices::audioOutputsChanged, this, &VoiceWorker::tellDevices);
        tellDevices();
        if (!QTextToSpeech::availableEngines().contains(kEngine))
            return fall(tr("Nothing is spoken: Qt has no speech engine for speech-dispatcher, so a tone stands for the "
                           "words. Install the package qt6-speech-speechd-plugin."));
        m_speech = std::make_unique<QTextToSpeech>(kEngine);
        if (m_speech->state() == QTextToSpeech::Error)
            return loseEngine(m_speech->errorString());
        connect(
            m_speech.get(), &QTextToSpeech::errorOccurred, this,
            [this](QTextToSpeech::ErrorReason /*reason*/, const QString& why) {
                loseEngine(why);
            },
            Qt::QueuedConnection); // the engine must not go while it reports
        m_speech->setLocale(kLocale);
        m_voices = m_speech->availableVoices();
        if (m_voices.isEmpty())
            return loseEngine(tr("there is no English voice"));
        m_speech->setRate(kRate);
        m_speech->setVolume(m_volume);
        QStringList names;
        for (const QVoice& voice : m_voices)
            names.append(voice.name());
        Q_EMIT voicesFound(names);
    }

    void say(const QString& words, const QString& by) {
        if (!m_speech)
            return play(Earcon::Words);
        m_speech->stop(QTextToSpeech::BoundaryHint::Immediate);
        if (std::exchange(m_isForeign, false))
            m_speech->setLocale(kLocale);
        if (const int voice = voiceOf(by); voice < m_voices.size())
            m_speech->setVoice(m_voices[voice]);
        m_speech->say(words);
    }

    void tell(const QString& words, const QLocale& language) {
        const bool isForeign =
            m_speech && language.language() != kLocale.language() && m_speech->availableLocales().contains(language);
        if (!isForeign)
            return say(words, QStringLiteral("cockpit"));
        m_speech->stop(QTextToSpeech::BoundaryHint::Immediate);
        m_speech->setLocale(language);
        m_isForeign = true;
        m_speech->say(words);
    }

    void play(Earcon earcon) {
        // A headset may have come or gone since the tone before.
        if (m_isHeard && !m_tones->play(earcon, m_volume, output())) {
            m_isHeard = false;
            fall(tr("Nothing is heard any more: the sound server is gone. Once it runs again, turn the sound off and "
                    "on again."));
        }
    }

    void hush() {
        if (m_speech)
            m_speech->stop(QTextToSpeech::BoundaryHint::Immediate);
    }

    void setVoice(const QString& name) { m_chosen = name; }

    void setDevice(const QString& id) {
        if (id == m_deviceId)
            return;
        m_deviceId = id;
        m_isFallBackTold = false;
        (void)output(); // says at once that it is not there
    }

    void setVolume(double volume) {
        m_volume = volume;
        if (m_speech)
            m_speech->setVolume(volume);
    }

Q_SIGNALS:
    void unheard(const QString& why);
    void fellBack(const QString& why);
    void voicesFound(const QStringList& names);
    void devicesFound(const QList<SoundDevice>& devices);

private:
    void tellDevices() {
        QList<SoundDevice> devices;
        for (const QAudioDevice& device : QMediaDevices::audioOutputs()) {
            SoundDevice one;
            one.id = QString::fromUtf8(device.id());
            one.name = device.description();
            devices.append(one);
        }
        Q_EMIT devicesFound(devices);
        (void)output();
    }

    /// The chosen one, or the desktop's.
    [[nodiscard]] QAudioDevice output() {
        if (m_deviceId.isEmpty() || !m_isHeard)
            return QMediaDevices::defaultAudioOutput();
        for (const QAudioDevice& device : QMediaDevices::audioOutputs())
            if (QString::fromUtf8(device.id()) == m_deviceId) {
                m_isFallBackTold = false;
                return device;
            }
        if (!std::exchange(m_isFallBackTold, true))
            Q_EMIT fellBack(
                tr("The chosen sound device, %1, is not there. Tones come out of the one that the desktop has "
                   "chosen, until it is plugged in again.")
                    .arg(m_deviceId));
        return QMediaDevices::defaultAudioOutput();
    }

    /// People by the chosen voice of the engine, the cockpit's and the ground's words by others where it has them.
    [[nodiscard]] int voiceOf(const QString& by) const {
        const auto isChosen = [this](const QVoice& voice) {
            return voice.name() == m_chosen;
        };
        const auto found = std::find_if(m_voices.begin(), m_voices.end(), isChosen);
        const int person = found != m_voices.end() ? static_cast<int>(found - m_voices.begin()) : 0;
        const int thing = by == QStringLiteral("cockpit") ? 1 : by == QStringLiteral("ground") ? 4 : -1;
        return thing < 0 ? person : thing == person ? 0 : thing; // a thing never has the people's voice
    }

    void loseEngine(const QString& why) {
        m_speech.reset();
        fall(tr("Nothing is spoken, so a tone stands for the words: the speech engine says “%1”. Install the packages "
                "speech-dispatcher and speech-dispatcher-espeak-ng, then turn the sound off and on again.")
                 .arg(why));
    }

    void fall(const QString& why) {
        if (!m_hasFallen)
            Q_EMIT unheard(why);
        m_hasFallen = true;
    }

    std::unique_ptr<QTextToSpeech> m_speech;
    std::unique_ptr<TonePlayer> m_tones;
    std::unique_ptr<QMediaDevices> m_outputs; ///< tells when one comes or goes
    QList<QVoice> m_voices;
    QString m_chosen;   ///< the voice of people
    QString m_deviceId; ///< empty: the desktop's
    double m_volume = 1.0;
    bool m_isForeign = false; ///< the engine is set to another language than English
    bool m_isHeard = false;
    bool m_hasFallen = false;
    bool m_isFallBackTold = false;
};

SpokenVoice::SpokenVoice(QObject* parent) : Voice(parent), m_worker(new VoiceWorker) {
    m_worker->moveToThread(&m_thread);
    connect(&m_thread, &QThread::started, m_worker, &VoiceWorker::open);
    connect(&m_thread, &QThread::finished, m_worker, &QObject::deleteLater);
    connect(m_worker, &VoiceWorker::unheard, this, &Voice::unheard);
    connect(m_worker, &VoiceWorker::fellBack, this, &Voice::fellBack);
    connect(m_worker, &VoiceWorker::voicesFound, this, &Voice::voicesFound);
    connect(m_worker, &VoiceWorker::devicesFound, this, &Voice::devicesFound);
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

void SpokenVoice::tell(const QString& words, const QLocale& language) {
    QMetaObject::invokeMethod(m_worker, [worker = m_worker, words, language] {
        worker->tell(words, language);
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

void SpokenVoice::setVoice(const QString& name) {
    QMetaObject::invokeMethod(m_worker, [worker = m_worker, name] {
        worker->setVoice(name);
    });
}

void SpokenVoice::setDevice(const QString& id) {
    QMetaObject::invokeMethod(m_worker, [worker = m_worker, id] {
        worker->setDevice(id);
    });
}

void SpokenVoice::setVolume(double volume) {
    QMetaObject::invokeMethod(m_worker, [worker = m_worker, volume] {
        worker->setVolume(volume);
    });
}

} // namespace flowhand

#include "spokenvoice.moc"
