#include "presenter/settingsfile.h"

#include <algorithm>
#include <vector>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

#include "base/tomlfile.h"

namespace flowhand {

namespace {

using Choices = std::vector<const char*>;

/// A setting that is one of a few words, with what stands above it in the file.
struct WordSetting {
    const char* key;
    QString SettingsValues::*value;
    Choices choices; ///< none: any text
    const char* says;
};

struct PercentSetting {
    const char* key;
    int SettingsValues::*value;
    int least;
    int most;
    const char* says;
};

const std::vector<WordSetting>& wordSettings() {
    using V = SettingsValues;
    static const std::vector<WordSetting> all = {
        {"theme", &V::theme, {"system", "dark", "light"}, "Colours: system (as the desktop has them), dark, light."},
        {"language",
         &V::language,
         {"system", "en", "de", "pseudo"},
         "Language of the window: system (as the desktop), en, de; pseudo tries out long texts."},
        {"motion", &V::motion, {"full", "reduced"}, "What moves on screen only to show where it went: full, reduced."},
        {"length", &V::length, {"m", "ft"}, "Unit of distances on the ground: m, ft."},
        {"sound", &V::sound, {"on", "quiet", "off"}, "Words and tones: on, quiet (a quarter of the volume), off."},
        {"voice", &V::voice, {}, "Voice of the words, by its name; empty: the speech engine's first."},
        {"sound_device", &V::soundDevice, {}, "Sound device of the tones, by its id; empty: the desktop's."},
        {"help",
         &V::help,
         {"guided", "prompted", "from memory"},
         "Help while flying: guided (what to do, where, and what comes), prompted (what to do), from memory."},
        {"hands", &V::hands, {"", "rig", "screen"}, "What the hands are on: rig, screen; empty: asked at the start."},
        {"feed", &V::feed, {}, "Where the motion comes from, as in json:49100; empty: the practice aircraft."},
        {"pilot", &V::pilot, {}, "Who flies, one of the pilots; the name stands in each run."},
        {"data_folder", &V::dataFolder, {}, "Folder of runs and rigs, an absolute path; empty: the usual one."},
    };
    return all;
}

const std::vector<PercentSetting>& percentSettings() {
    static const std::vector<PercentSetting> all = {
        {"text_size", &SettingsValues::textPercent, 100, 200, "Size of all text, in percent: 100 to 200."},
        {"volume", &SettingsValues::volumePercent, 0, 100, "Volume of words and tones, in percent: 0 to 100."},
    };
    return all;
}

/// A TOML basic string: TOML v1.0.0, 'String'.
QString quoted(const QString& text) {
    QString out = QStringLiteral("\"");
    for (const QChar c : text) {
        if (c == QLatin1Char('"') || c == QLatin1Char('\\'))
            out += QLatin1Char('\\') + QString(c);
        else if (c.unicode() < 0x20 || c.unicode() == 0x7F)
            out += QStringLiteral("\\u%1").arg(c.unicode(), 4, 16, QLatin1Char('0'));
        else
            out += c;
    }
    return out + QLatin1Char('"');
}

QString words(const Choices& choices) {
    QStringList all;
    for (const char* choice : choices)
        all.append(quoted(QString::fromUtf8(choice)));
    return all.join(QStringLiteral(", "));
}

void readWord(const WordSetting& setting, TomlReader& reader, SettingsValues& values) {
    const std::optional<std::string> text = reader.text(setting.key);
    if (!text)
        return;
    const auto isIt = [&text](const char* choice) {
        return *text == choice;
    };
    if (setting.choices.empty() || std::any_of(setting.choices.begin(), setting.choices.end(), isIt))
        values.*setting.value = QString::fromStdString(*text);
    else
        reader.problems().error("bad-setting",
                                std::string("'") + setting.key + "' is one of " + words(setting.choices).toStdString() +
                                    ", not \"" + *text + "\"",
                                reader.placeOf(setting.key));
}

void readPercent(const PercentSetting& setting, TomlReader& reader, SettingsValues& values) {
    const std::optional<std::int64_t> number = reader.integer(setting.key);
    if (!number)
        return;
    if (*number >= setting.least && *number <= setting.most)
        values.*setting.value = static_cast<int>(*number);
    else
        reader.problems().error("bad-setting",
                                std::string("'") + setting.key + "' goes from " + std::to_string(setting.least) +
                                    " to " + std::to_string(setting.most),
                                reader.placeOf(setting.key));
}

void readKeys(const TomlNode& table, Problems& problems, SettingsValues& values) {
    for (const TomlMember& member : table.members) {
        if (member.second.kind == TomlNode::Kind::Text)
            values.keys[QString::fromStdString(member.first)] = QString::fromStdString(member.second.text);
        else
            problems.error("bad-setting", "a key is written as a text, as in \"F2\"", member.second.place);
    }
}

/// Nobody's sound is later than that, and a response time that loses more is no longer one.
constexpr std::int64_t kMostDelay = 1000;

void readDelays(const TomlNode& table, Problems& problems, SettingsValues& values) {
    for (const TomlMember& member : table.members) {
        const TomlNode& delay = member.second;
        if (delay.kind == TomlNode::Kind::Integer && delay.integer >= 0 && delay.integer <= kMostDelay)
            values.delays[QString::fromStdString(member.first)] = static_cast<int>(delay.integer);
        else
            problems.error("bad-setting", "a delay is a whole number of milliseconds, 0 to 1000", delay.place);
    }
}

QString textOf(const SettingsValues& values) {
    QString text = QStringLiteral("# What was chosen in Flowhand's settings. The program writes this file anew at each "
                                  "change;\n# it may be edited while the program is not running.\n");
    const auto add = [&text](const char* says, const char* key, const QString& value) {
        text += QStringLiteral("\n# %1\n%2 = %3\n").arg(QString::fromUtf8(says), QString::fromUtf8(key), value);
    };
    for (const WordSetting& setting : wordSettings())
        add(setting.says, setting.key, quoted(values.*setting.value));
    for (const PercentSetting& setting : percentSettings())
        add(setting.says, setting.key, QString::number(values.*setting.value));
    QStringList pilots;
    for (const QString& pilot : values.pilots)
        pilots.append(quoted(pilot));
    add("Everybody who flies here.", "pilots", QStringLiteral("[%1]").arg(pilots.join(QStringLiteral(", "))));
    text += QStringLiteral("\n# Keys that are not the usual ones, by what they do.\n[keys]\n");
    for (const auto& [use, key] : values.keys)
        text += QStringLiteral("%1 = %2\n").arg(quoted(use), quoted(key));
    text +=
        QStringLiteral("\n# Delay of sound and input, in milliseconds, by rig (screen: the controls on the screen).\n"
                       "[delays]\n");
    for (const auto& [rig, delay] : values.delays)
        text += QStringLiteral("%1 = %2\n").arg(quoted(rig)).arg(delay);
    return text;
}

} // namespace

SettingsRead readSettings(const QString& file) {
    SettingsRead read;
    if (!QFile::exists(file))
        return read;
    const Result<TomlFile> toml = TomlFile::load(file.toStdString());
    if (!toml) {
        read.problem = QString::fromStdString(describe(toml.error()));
        return read;
    }
    Problems problems;
    TomlReader reader(*toml, toml->root(), "the settings", problems);
    SettingsValues& values = read.values;
    for (const WordSetting& setting : wordSettings())
        readWord(setting, reader, values);
    for (const PercentSetting& setting : percentSettings())
        readPercent(setting, reader, values);
    for (const std::string& pilot : reader.texts("pilots"))
        values.pilots.append(QString::fromStdString(pilot));
    if (!values.pilot.isEmpty() && !values.pilots.contains(values.pilot))
        values.pilots.append(values.pilot);
    if (const TomlNode* keys = reader.table("keys"))
        readKeys(*keys, problems, values);
    if (const TomlNode* delays = reader.table("delays"))
        readDelays(*delays, problems, values);
    reader.finish();
    if (problems.hasErrors())
        read.problem = QString::fromStdString(describe(problems.firstError()));
    return read;
}

Status writeSettings(const QString& file, const SettingsValues& values) {
    (void)QDir().mkpath(QFileInfo(file).absolutePath()); // a folder that cannot be made shows as a file that cannot
    QSaveFile out(file);
    const QByteArray text = textOf(values).toUtf8();
    if (!out.open(QIODevice::WriteOnly) || out.write(text) != text.size() || !out.commit())
        return failure("unwritable-file", out.errorString().toStdString(), {file.toStdString()});
    return {};
}

Result<QString> setAside(const QString& file) {
    for (int number = 1; number < 1000; ++number) {
        const QString name = QStringLiteral("%1.broken-%2").arg(file).arg(number);
        if (QFile::exists(name))
            continue;
        if (QFile::rename(file, name))
            return name;
        break;
    }
    return failure("unwritable-file", "it cannot be given another name", {file.toStdString()});
}

} // namespace flowhand
