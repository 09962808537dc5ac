#pragma once

#include <atomic>
#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QTimer>
#include <QtQml/qqmlregistration.h>

#include "base/time.h"
#include "presenter/benchmaker.h"
#include "presenter/sound.h"

namespace flowhand {

/// Of taps to a beat, each so much after its click: the median, 0 at the least. Nothing where they lie too far apart.
[[nodiscard]] std::optional<int> delayOfTaps(std::vector<Duration> offsets);

/// Measures the sum of sound and input delay: clicks at a steady beat, a tap to each. What is measured is taken off the
/// response times of later runs with the same rig, so it holds what lies between a cue that sounds and a hand that is
/// seen, and nothing of how quick the hand is. GUI thread.
class DelayMeter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the bench's presenter")
    Q_PROPERTY(bool running READ isRunning NOTIFY changed)
    Q_PROPERTY(int taps READ taps NOTIFY changed)
    Q_PROPERTY(int tapsWanted READ tapsWanted CONSTANT)
    Q_PROPERTY(QString outcome READ outcome NOTIFY changed)

public:
    /// All must outlive it.
    DelayMeter(BenchMaker& maker, Sound& sound, const Clock& clock, QObject* parent);
    ~DelayMeter() override;

    /// The name under which the delay is kept: of the rig, or of the controls on the screen.
    [[nodiscard]] Q_INVOKABLE QString rigName(bool withRig) const;
    /// Taps come from any button or switch of the rig, or by tap().
    Q_INVOKABLE void begin(bool withRig);
    Q_INVOKABLE void tap();
    Q_INVOKABLE void stop();
    /// The next beat. Comes by itself.
    void click();

    [[nodiscard]] bool isRunning() const { return m_timer.isActive(); }
    [[nodiscard]] int taps() const { return static_cast<int>(m_offsets.size()); }
    [[nodiscard]] static int tapsWanted();
    [[nodiscard]] QString outcome() const { return m_outcome; }

Q_SIGNALS:
    void changed();
    void measured(const QString& rig, int millis);

private:
    void look();
    void finish();

    BenchMaker& m_maker;
    Sound& m_sound;
    const Clock& m_clock;
    QTimer m_timer;
    QString m_rig;
    QString m_outcome;
    Time m_clicked{};
    int m_clicks = 0;
    int m_tapped = 0; ///< the click that was tapped to last
    std::vector<Duration> m_offsets;
    std::vector<Value> m_values; ///< of the rig's controls
    std::atomic<bool> m_isLookQueued = false;
    std::unique_ptr<BenchHandle> m_bench; ///< last, so that its thread ends before what it calls back goes
};

} // namespace flowhand
