#pragma once

#include <functional>
#include <memory>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/settings.h"
#include "voice/voice.h"

namespace flowhand {

/// How loud the program speaks, and with which voice, as the settings have it. Off is a silent voice: then no engine
/// and no device is held. GUI thread.
class Sound : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(QString words READ words NOTIFY changed)
    Q_PROPERTY(QStringList voices READ voices NOTIFY voicesChanged)
    Q_PROPERTY(QStringList deviceIds READ deviceIds NOTIFY devicesChanged)
    Q_PROPERTY(QStringList deviceNames READ deviceNames NOTIFY devicesChanged)
    Q_PROPERTY(QString notice READ notice NOTIFY noticeChanged)

public:
    using Maker = std::function<std::unique_ptr<Voice>()>;

    /// `makeSpoken` makes the voice that is heard. Silent until start(). `settings` must outlive it.
    Sound(Settings& settings, Maker makeSpoken, QObject* parent = nullptr);
    ~Sound() override;

    /// Once the window is there: opening a voice must not keep anyone from seeing it.
    void start();
    /// On, quiet, off, and on again.
    Q_INVOKABLE void change();
    Q_INVOKABLE void dismissNotice();
    /// Lets the voice be heard as it is set.
    Q_INVOKABLE void tryOut();

    [[nodiscard]] Voice& voice() { return *m_voice; }
    /// "Sound: on".
    [[nodiscard]] QString words() const;
    /// The names of the voices there are, once the engine has told them.
    [[nodiscard]] QStringList voices() const { return m_voices; }
    /// The sound devices to choose from, once the voice has told them: their ids, and their names in the same order. A
    /// chosen one that is not there stands last.
    [[nodiscard]] QStringList deviceIds() const;
    [[nodiscard]] QStringList deviceNames() const;
    /// Why nothing is heard, or not where it was wished, until it is dismissed.
    [[nodiscard]] QString notice() const { return m_notice; }

Q_SIGNALS:
    void changed();
    void noticeChanged();
    void voicesChanged();
    void devicesChanged();

private:
    void apply();
    void setNotice(const QString& notice);
    void setVoices(const QStringList& voices);
    void setDevices(const QList<SoundDevice>& devices);
    [[nodiscard]] bool isDeviceMissing() const;

    Settings& m_settings;
    Maker m_makeSpoken;
    std::unique_ptr<Voice> m_voice; ///< never null
    bool m_isSpoken = false;        ///< whether m_voice is one that is heard
    bool m_isStarted = false;
    QString m_notice;
    QStringList m_voices;
    QList<SoundDevice> m_devices;
};

} // namespace flowhand
