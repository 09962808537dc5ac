#include "voice/toneplayer.h"

#include <algorithm>
#include <cmath>

#include <QAudioDevice>
#include <QAudioFormat>
#include <QAudioSink>

namespace flowhand {

namespace {

/// What the device itself prefers, but with whole numbers of 16 bits: every sound server takes those.
QAudioFormat formatFor(const QAudioDevice& device) {
    QAudioFormat format = device.preferredFormat();
    format.setSampleFormat(QAudioFormat::Int16);
    return format;
}

/// The same on each of the device's channels.
QByteArray bytesOf(Earcon earcon, const QAudioFormat& format) {
    QByteArray bytes;
    for (const float sample : earconSamples(earcon, format.sampleRate())) {
        const auto value = static_cast<qint16>(std::lround(std::clamp(sample, -1.0F, 1.0F) * 32767.0F));
        for (int channel = 0; channel < format.channelCount(); ++channel)
            bytes.append(reinterpret_cast<const char*>(&value), sizeof value);
    }
    return bytes;
}

} // namespace

TonePlayer::TonePlayer(QObject* parent) : QObject(parent) {}

TonePlayer::~TonePlayer() = default;

bool TonePlayer::play(Earcon earcon, double volume, const QAudioDevice& device) {
    if (device.isNull())
        return false;
    const QAudioFormat format = formatFor(device);
    m_sink.reset();
    m_samples.close();
    m_samples.setData(bytesOf(earcon, format));
    m_samples.open(QIODevice::ReadOnly);
    m_sink = std::make_unique<QAudioSink>(device, format);
    m_sink->setVolume(volume);
    m_sink->start(&m_samples);
    return m_sink->error() == QAudio::NoError;
}

} // namespace flowhand
