#include "presenter/settings.h"

namespace flowhand {

namespace {

const QString kTheme = QStringLiteral("theme");
const QString kHands = QStringLiteral("hands");
const QString kFeed = QStringLiteral("feed");

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

} // namespace flowhand
