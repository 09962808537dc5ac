#include "presenter/sound.h"

#include <algorithm>
#include <utility>

#include "voice/silentvoice.h"

namespace flowhand {

namespace {

/// 12 dB less, at the linear volume that engines and sound servers take: beside a simulator or a sleeper.
constexpr double kQuiet = 0.25;

} // namespace

Sound::Sound(Settings& settings, Maker makeSpoken, QObject* parent)
    : QObject(parent), m_settings(settings), m_makeSpoken(std::move(makeSpoken)),
      m_voice(std::make_unique<SilentVoice>()) {
    connect(&m_settings, &Settings::changed, this, [this] {
        if (m_isStarted)
            apply();
        Q_EMIT changed();
        Q_EMIT devicesChanged();
    });
}

Sound::~Sound() = default;

void Sound::start() {
    if (std::exchange(m_isStarted, true))
        return;
    apply();
}

void Sound::change() {
    using enum Settings::Loudness;
    const Settings::Loudness now = m_settings.loudness();
    m_settings.setLoudness(now == Full ? Quiet : now == Quiet ? Off : Full);
}

void Sound::apply() {
    const Settings::Loudness loudness = m_settings.loudness();
    if (loudness == Settings::Loudness::Off) {
        if (std::exchange(m_isSpoken, false))
            m_voice = std::make_unique<SilentVoice>();
        return setNotice({});
    }
    if (!std::exchange(m_isSpoken, true)) {
        m_voice = m_makeSpoken();
        connect(m_voice.get(), &Voice::unheard, this, &Sound::setNotice);
        connect(m_voice.get(), &Voice::fellBack, this, &Sound::setNotice);
        connect(m_voice.get(), &Voice::voicesFound, this, &Sound::setVoices);
        connect(m_voice.get(), &Voice::devicesFound, this, &Sound::setDevices);
    }
    m_voice->setVoice(m_settings.voice());
    m_voice->setDevice(m_settings.soundDevice());
    m_voice->setVolume(m_settings.volumePercent() / 100.0 * (loudness == Settings::Loudness::Quiet ? kQuiet : 1.0));
}

void Sound::tryOut() {
    m_voice->play(Earcon::Done);
    m_voice->say(QStringLiteral("Flaps twelve, set."), QStringLiteral("first_officer"));
}

void Sound::setVoices(const QStringList& voices) {
    m_voices = voices;
    Q_EMIT voicesChanged();
}

void Sound::setDevices(const QList<SoundDevice>& devices) {
    m_devices = devices;
    Q_EMIT devicesChanged();
}

bool Sound::isDeviceMissing() const {
    const QString chosen = m_settings.soundDevice();
    return !chosen.isEmpty() && std::none_of(m_devices.begin(), m_devices.end(), [&chosen](const SoundDevice& device) {
        return device.id == chosen;
    });
}

QStringList Sound::deviceIds() const {
    QStringList ids;
    for (const SoundDevice& device : m_devices)
        ids.append(device.id);
    if (isDeviceMissing())
        ids.append(m_settings.soundDevice());
    return ids;
}

QStringList Sound::deviceNames() const {
    QStringList names;
    for (const SoundDevice& device : m_devices)
        names.append(device.name);
    if (isDeviceMissing())
        names.append(tr("%1 (not there now)").arg(m_settings.soundDevice()));
    return names;
}

void Sound::dismissNotice() {
    setNotice({});
}

void Sound::setNotice(const QString& notice) {
    if (notice == m_notice)
        return;
    m_notice = notice;
    Q_EMIT noticeChanged();
}

QString Sound::words() const {
    switch (m_settings.loudness()) {
    case Settings::Loudness::Full:
        return tr("Sound: on");
    case Settings::Loudness::Quiet:
        return tr("Sound: quiet");
    case Settings::Loudness::Off:
        break;
    }
    return tr("Sound: off");
}

} // namespace flowhand
