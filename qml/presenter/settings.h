#pragma once

#include <QObject>
#include <QSettings>
#include <QtQml/qqmlregistration.h>

namespace flowhand {

/// What the pilot has chosen for good. Kept in a file at once; GUI thread.
class Settings : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    /// "system", "dark" or "light".
    Q_PROPERTY(QString theme READ theme WRITE setTheme NOTIFY themeChanged)

public:
    /// Whose hands fly; Unasked until the question of the first start is answered.
    enum class Hands { Unasked, Screen, Rig };
    enum class Loudness { Full, Quiet, Off };

    explicit Settings(const QString& file, QObject* parent = nullptr);

    [[nodiscard]] QString theme() const;
    void setTheme(const QString& theme);
    [[nodiscard]] Hands hands() const;
    void setHands(Hands hands);
    /// Where the motion comes from; empty: the practice aircraft.
    [[nodiscard]] QString feed() const;
    void setFeed(const QString& feed);
    /// Of the voice and the tones; Full until something else is chosen.
    [[nodiscard]] Loudness loudness() const;
    void setLoudness(Loudness loudness);

Q_SIGNALS:
    void themeChanged();

private:
    QSettings m_file;
};

} // namespace flowhand
