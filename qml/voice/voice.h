#pragma once

#include <QList>
#include <QLocale>
#include <QObject>
#include <QString>
#include <QStringList>

#include "voice/earcon.h"

namespace flowhand {

/// Something that sound comes out of.
struct SoundDevice {
    QString id; ///< the same at the next start
    QString name;

    bool operator==(const SoundDevice&) const = default;
};

/// What the program says aloud. GUI thread; no function waits for a sound.
class Voice : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    /// Says these English words now. What is still being said is cut off: who listens needs the newest words.
    virtual void say(const QString& words, const QString& by) = 0;
    /// The same of the program's own words, which are in the language of the window, by the cockpit's voice. Where the
    /// engine has no voice of that language, the English one reads them.
    virtual void tell(const QString& words, const QLocale& language) = 0;
    virtual void play(Earcon earcon) = 0;
    /// Ends the words at once.
    virtual void hush() = 0;
    /// 0..1; of words and tones.
    virtual void setVolume(double volume) = 0;
    /// Whose voice people have, by its name; empty or unknown: the first.
    virtual void setVoice(const QString& name) = 0;
    /// What tones come out of, by its id; empty or not there: what the desktop's sound settings say.
    virtual void setDevice(const QString& id) = 0;

Q_SIGNALS:
    /// Nothing can be heard, or no words can: why, and the way out. Once for each voice.
    void unheard(const QString& why);
    /// The chosen device is not there, so the desktop's is used: in words. Again only after it has been there, or
    /// another one was chosen.
    void fellBack(const QString& why);
    /// The names to choose from. At most once for each voice.
    void voicesFound(const QStringList& names);
    /// Those there are now; again whenever one comes or goes.
    void devicesFound(const QList<SoundDevice>& devices);
};

} // namespace flowhand
