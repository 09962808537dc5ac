#include "presenter/settings.h"

namespace flowhand {

namespace {

const QString kTheme = QStringLiteral("theme");
const QString kHands = QStringLiteral("hands");
const QString kFeed = QStringLiteral("feed");
const QString kSound = QStringLiteral("sound");

} // namespace

Settings::Settings(const QString& file, QObject* parent) : QObject(parent), m_file(file, QSettings::IniFormat) {}

QString Settings::theme() const {
    const QString theme = m_file.value(kTheme).toString();
    return theme == QStringLiteral("dark") || theme == QStringLiteral("light") ? theme : QStringLiteral("system");
}

void Settings::setTheme(const QString& theme) {
    if (theme == this->theme())
        return;
    m_file.setValue(kTheme, theme);
    Q_EMIT themeChanged();
}

Settings::Hands Settings::hands() const {
    const QString hands = m_file.value(kHands).toString();
    if (hands == QStringLiteral("rig"))
        return Hands::Rig;
    return hands == QStringLiteral("screen") ? Hands::Screen : Hands::Unasked;
}

void Settings::setHands(Hands hands) {
    if (hands == Hands::Unasked)
        m_file.remove(kHands);
    else
        m_file.setValue(kHands, hands == Hands::Rig ? QStringLiteral("rig") : QStringLiteral("screen"));
}

QString Settings::feed() const {
    return m_file.value(kFeed).toString();
}

void Settings::setFeed(const QString& feed) {
    if (feed.isEmpty())
        m_file.remove(kFeed);
    else
        m_file.setValue(kFeed, feed);
}

Settings::Loudness Settings::loudness() const {
    const QString sound = m_file.value(kSound).toString();
    if (sound == QStringLiteral("off"))
        return Loudness::Off;
    return sound == QStringLiteral("quiet") ? Loudness::Quiet : Loudness::Full;
}

void Settings::setLoudness(Loudness loudness) {
    m_file.setValue(kSound, loudness == Loudness::Off     ? QStringLiteral("off")
                            : loudness == Loudness::Quiet ? QStringLiteral("quiet")
                                                          : QStringLiteral("on"));
}

} // namespace flowhand
