#pragma once

#include <map>

#include <QString>
#include <QStringList>

#include "base/error.h"

namespace flowhand {

/// All that the pilot has chosen, as it is written down. Texts that name one of a few choices always hold one of them.
struct SettingsValues {
    QString theme = QStringLiteral("system");    ///< system, dark, light
    QString language = QStringLiteral("system"); ///< system, en, de, pseudo
    int textPercent = 100;                       ///< 100 to 200
    QString motion = QStringLiteral("full");     ///< full, reduced
    QString length = QStringLiteral("m");        ///< m, ft: of distances on the ground
    QString sound = QStringLiteral("on");        ///< on, quiet, off
    int volumePercent = 100;                     ///< 0 to 100
    QString voice;                               ///< by its name; empty: the engine's first
    QString soundDevice;                         ///< by its id; empty: the desktop's
    QString help = QStringLiteral("guided");     ///< guided, prompted, from memory
    QString hands;                               ///< rig, screen; empty: not asked yet
    QString feed;                                ///< empty: the practice aircraft
    QString pilot;                               ///< one of `pilots`; empty: nobody said
    QStringList pilots;
    QString dataFolder;              ///< absolute; empty: the usual one
    std::map<QString, QString> keys; ///< by what they do (keymap.h); only those that were changed
    std::map<QString, int> delays;   ///< of sound and input, in ms, by rig; 0 to 1000

    bool operator==(const SettingsValues&) const = default;
};

/// The settings as a TOML file that explains itself. Pure but for the disk.
struct SettingsRead {
    SettingsValues values;
    QString problem; ///< the first one, with its place; empty: the file is sound. What could be read is in `values`.
};

/// No file yet is sound, and everything as usual.
[[nodiscard]] SettingsRead readSettings(const QString& file);
/// Puts the whole file in place at once: after a power cut there is the old or the new one. Makes its folder.
[[nodiscard]] Status writeSettings(const QString& file, const SettingsValues& values);
/// Gives a file that is not sound another name beside it, which it returns.
[[nodiscard]] Result<QString> setAside(const QString& file);

} // namespace flowhand
