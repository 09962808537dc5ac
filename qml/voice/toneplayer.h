#pragma once

#include <memory>

#include <QBuffer>
#include <QObject>

#include "voice/earcon.h"

class QAudioSink;

namespace flowhand {

/// Plays earcons on the default output. Lives on the thread that made it.
class TonePlayer : public QObject {
    Q_OBJECT

public:
    explicit TonePlayer(QObject* parent = nullptr);
    ~TonePlayer() override;

    /// Cuts off the tone before. False when there is nothing to play it on.
    bool play(Earcon earcon, double volume);

private:
    QBuffer m_samples;
    std::unique_ptr<QAudioSink> m_sink; ///< reads m_samples
};

} // namespace flowhand
