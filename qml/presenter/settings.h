#pragma once

#include <utility>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/settingsfile.h"

namespace flowhand {

/// What the pilot has chosen for good. Each change is kept in the file at once, and told by changed(); GUI thread.
class Settings : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(QString theme READ theme WRITE setTheme NOTIFY changed)
    Q_PROPERTY(QString language READ language WRITE setLanguage NOTIFY changed)
    Q_PROPERTY(int textPercent READ textPercent WRITE setTextPercent NOTIFY changed)
    Q_PROPERTY(QString motion READ motion WRITE setMotion NOTIFY changed)
    Q_PROPERTY(QString length READ length WRITE setLength NOTIFY changed)
    Q_PROPERTY(QString sound READ sound WRITE setSound NOTIFY changed)
    Q_PROPERTY(int volumePercent READ volumePercent WRITE setVolumePercent NOTIFY changed)
    Q_PROPERTY(QString voice READ voice WRITE setVoice NOTIFY changed)
    Q_PROPERTY(QString soundDevice READ soundDevice WRITE setSoundDevice NOTIFY changed)
    Q_PROPERTY(QString help READ help WRITE setHelp NOTIFY changed)
    Q_PROPERTY(QString pilot READ pilot WRITE setPilot NOTIFY changed)
    Q_PROPERTY(QStringList pilots READ pilots NOTIFY changed)
    Q_PROPERTY(QString dataFolder READ dataFolder NOTIFY changed)
    Q_PROPERTY(int delays READ delays NOTIFY changed)
    Q_PROPERTY(QString usualDataFolder READ usualDataFolder CONSTANT)
    Q_PROPERTY(QString file READ file CONSTANT)
    Q_PROPERTY(QString notice READ notice NOTIFY noticeChanged)

public:
    /// Whose hands fly; Unasked until the question of the first start is answered.
    enum class Hands { Unasked, Screen, Rig };
    enum class Loudness { Full, Quiet, Off };

    /// Reads the file. One that is not sound is given another name, and `notice` says so.
    explicit Settings(const QString& file, QObject* parent = nullptr);

    [[nodiscard]] QString theme() const { return m_values.theme; }
    void setTheme(const QString& theme) { set(&SettingsValues::theme, theme); }
    [[nodiscard]] QString language() const { return m_values.language; }
    void setLanguage(const QString& language) { set(&SettingsValues::language, language); }
    [[nodiscard]] int textPercent() const { return m_values.textPercent; }
    void setTextPercent(int percent) { set(&SettingsValues::textPercent, qBound(100, percent, 200)); }
    [[nodiscard]] QString motion() const { return m_values.motion; }
    void setMotion(const QString& motion) { set(&SettingsValues::motion, motion); }
    [[nodiscard]] QString length() const { return m_values.length; }
    void setLength(const QString& unit) { set(&SettingsValues::length, unit); }
    [[nodiscard]] QString sound() const { return m_values.sound; }
    void setSound(const QString& sound) { set(&SettingsValues::sound, sound); }
    [[nodiscard]] int volumePercent() const { return m_values.volumePercent; }
    void setVolumePercent(int percent) { set(&SettingsValues::volumePercent, qBound(0, percent, 100)); }
    [[nodiscard]] QString voice() const { return m_values.voice; }
    void setVoice(const QString& name) { set(&SettingsValues::voice, name); }
    [[nodiscard]] QString soundDevice() const { return m_values.soundDevice; }
    void setSoundDevice(const QString& id) { set(&SettingsValues::soundDevice, id); }
    [[nodiscard]] QString help() const { return m_values.help; }
    void setHelp(const QString& help) { set(&SettingsValues::help, help); }

    [[nodiscard]] QString pilot() const { return m_values.pilot; }
    void setPilot(const QString& name) { set(&SettingsValues::pilot, name); }
    [[nodiscard]] QStringList pilots() const { return m_values.pilots; }
    /// Adds somebody, who flies from now on. Empty, or why it cannot be done.
    Q_INVOKABLE QString addPilot(const QString& name);
    /// The one who flies gets another name from the next run on. Empty, or why it cannot be done.
    Q_INVOKABLE QString renamePilot(const QString& name);

    [[nodiscard]] QString dataFolder() const { return m_values.dataFolder; }
    [[nodiscard]] QString usualDataFolder() const;
    /// Runs and rigs are there from now on; those of the folder before stay where they are. No words: the usual one.
    /// Empty, or why it cannot be done.
    Q_INVOKABLE QString useDataFolder(const QString& folder);

    [[nodiscard]] Hands hands() const;
    void setHands(Hands hands);
    /// Where the motion comes from; empty: the practice aircraft.
    [[nodiscard]] QString feed() const { return m_values.feed; }
    void setFeed(const QString& feed) { set(&SettingsValues::feed, feed); }
    /// Of the voice and the tones; Full until something else is chosen.
    [[nodiscard]] Loudness loudness() const;
    void setLoudness(Loudness loudness);
    [[nodiscard]] const std::map<QString, QString>& keys() const { return m_values.keys; }
    void setKeys(const std::map<QString, QString>& keys) { set(&SettingsValues::keys, keys); }

    /// Of sound and input, in ms, with this rig; 0: nothing was measured. `revision`, delays(), only makes a binding
    /// look again.
    [[nodiscard]] Q_INVOKABLE int delayOf(const QString& rig, int revision = 0) const;
    Q_INVOKABLE void setDelay(const QString& rig, int millis);
    [[nodiscard]] int delays() const { return m_delays; }

    [[nodiscard]] QString file() const { return m_file; }
    /// What was wrong with the file, until it is dismissed.
    [[nodiscard]] QString notice() const { return m_notice; }
    Q_INVOKABLE void dismissNotice() { setNotice({}); }

Q_SIGNALS:
    void changed();
    void dataFolderChanged();
    void noticeChanged();

private:
    template <class T>
    void set(T SettingsValues::*which, T value) {
        if (m_values.*which == value)
            return;
        m_values.*which = std::move(value);
        keep();
        Q_EMIT changed();
    }
    void keep();
    void setNotice(const QString& notice);
    [[nodiscard]] QString nameProblem(const QString& name) const;

    QString m_file;
    SettingsValues m_values;
    QString m_notice;
    int m_delays = 0;
    bool m_mayWrite = true; ///< false: the file is not sound and could not be put aside
    bool m_isLossTold = false;
};

} // namespace flowhand
