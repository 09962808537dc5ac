#pragma once

#include <QObject>
#include <QString>
#include <QStringList>

#include "voice/earcon.h"

namespace flowhand {

/// What the program says aloud. GUI thread; no function waits for a sound.
class Voice : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    /// Says these words now. What is still being said is cut off: who listens needs the newest words.
    virtual void say(const QString& words, const QString& by) = 0;
    virtual void play(Earcon earcon) = 0;
    /// Ends the words at once.
    virtual void hush() = 0;
    /// 0..1; of words and tones.
    virtual void setVolume(double volume) = 0;
    /// Whose voice people have, by its name; empty or unknown: the first.
    virtual void setVoice(const QString& name) = 0;

Q_SIGNALS:
    /// Nothing can be heard, or no words can: why, and the way out. Once for each voice.
    void unheard(const QString& why);
    /// The names to choose from. At most once for each voice.
    void voicesFound(const QStringList& names);
};

} // namespace flowhand
