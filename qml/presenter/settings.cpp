#include "presenter/settings.h"

#include <algorithm>

#include <QDir>
#include <QFileInfo>

#include "store/datahome.h"

namespace flowhand {

Settings::Settings(const QString& file, QObject* parent) : QObject(parent), m_file(file) {
    const SettingsRead read = readSettings(file);
    m_values = read.values;
    if (read.problem.isEmpty())
        return;
    const Result<QString> aside = setAside(file);
    m_mayWrite = aside.has_value();
    if (!aside) {
        setNotice(tr("The settings file has an error, and what you choose now is not kept. %1").arg(read.problem));
        return;
    }
    setNotice(tr("The settings file had an error and was put aside as %1; what could be read of it holds. %2")
                  .arg(QFileInfo(*aside).fileName(), read.problem));
    keep();
}

void Settings::keep() {
    if (!m_mayWrite)
        return;
    const Status written = writeSettings(m_file, m_values);
    if (written)
        m_isLossTold = false;
    else if (!std::exchange(m_isLossTold, true))
        setNotice(tr("What you choose is not kept: %1").arg(QString::fromStdString(describe(written.error()))));
}

void Settings::setNotice(const QString& notice) {
    if (notice == m_notice)
        return;
    m_notice = notice;
    Q_EMIT noticeChanged();
}

QString Settings::nameProblem(const QString& name) const {
    if (name.isEmpty())
        return tr("Write a name first.");
    return m_values.pilots.contains(name) ? tr("There is somebody of that name already.") : QString();
}

QString Settings::addPilot(const QString& name) {
    const QString wanted = name.simplified();
    const QString problem = nameProblem(wanted);
    if (!problem.isEmpty())
        return problem;
    m_values.pilots.append(wanted);
    setPilot(wanted);
    return {};
}

QString Settings::renamePilot(const QString& name) {
    const QString wanted = name.simplified();
    const QString problem = nameProblem(wanted);
    if (!problem.isEmpty())
        return problem;
    if (const qsizetype at = m_values.pilots.indexOf(m_values.pilot); at >= 0)
        m_values.pilots[at] = wanted;
    else
        m_values.pilots.append(wanted);
    setPilot(wanted);
    return {};
}

QString Settings::useDataFolder(const QString& folder) {
    QString wanted = folder.trimmed();
    if (wanted.startsWith(QStringLiteral("~/")))
        wanted = QDir::homePath() + wanted.mid(1);
    if (!wanted.isEmpty() && !QDir::isAbsolutePath(wanted))
        return tr("Write the whole path, from / on.");
    if (!wanted.isEmpty() && !(QDir().mkpath(wanted) && QFileInfo(wanted).isWritable()))
        return tr("This folder cannot be written to.");
    wanted = wanted.isEmpty() ? wanted : QDir::cleanPath(wanted);
    const bool isOther = wanted != m_values.dataFolder;
    set(&SettingsValues::dataFolder, wanted);
    if (isOther)
        Q_EMIT dataFolderChanged();
    return {};
}

QString Settings::usualDataFolder() const {
    return QString::fromStdString(usualDataHome());
}

int Settings::delayOf(const QString& rig, int /*revision*/) const {
    const auto delay = m_values.delays.find(rig);
    return delay != m_values.delays.end() ? delay->second : 0;
}

void Settings::setDelay(const QString& rig, int millis) {
    std::map<QString, int> delays = m_values.delays;
    delays.erase(rig);
    if (millis > 0)
        delays[rig] = std::min(millis, 1000);
    ++m_delays;
    set(&SettingsValues::delays, delays);
}

Settings::Hands Settings::hands() const {
    if (m_values.hands == QStringLiteral("rig"))
        return Hands::Rig;
    return m_values.hands == QStringLiteral("screen") ? Hands::Screen : Hands::Unasked;
}

void Settings::setHands(Hands hands) {
    set(&SettingsValues::hands, hands == Hands::Unasked ? QString()
                                : hands == Hands::Rig   ? QStringLiteral("rig")
                                                        : QStringLiteral("screen"));
}

Settings::Loudness Settings::loudness() const {
    if (m_values.sound == QStringLiteral("off"))
        return Loudness::Off;
    return m_values.sound == QStringLiteral("quiet") ? Loudness::Quiet : Loudness::Full;
}

void Settings::setLoudness(Loudness loudness) {
    setSound(loudness == Loudness::Off     ? QStringLiteral("off")
             : loudness == Loudness::Quiet ? QStringLiteral("quiet")
                                           : QStringLiteral("on"));
}

} // namespace flowhand
