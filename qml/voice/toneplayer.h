#pragma once

#include <memory>

#include <QBuffer>
#include <QObject>

#include "voice/earcon.h"

class QAudioDevice;
class QAudioSink;

namespace flowhand {

/// Plays earcons. Lives on the thread that made it.
class TonePlayer : public QObject {
    Q_OBJECT

public:
    explicit TonePlayer(QObject* parent = nullptr);
    ~TonePlayer() override;

    /// Cuts off the tone before. False when it cannot be played on this device.
    bool play(Earcon earcon, double volume, const QAudioDevice& device);

private:
    QBuffer m_samples;
    std::unique_ptr<QAudioSink> m_sink; ///< reads m_samples
};

} // namespace flowhand
