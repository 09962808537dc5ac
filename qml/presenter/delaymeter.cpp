#include "presenter/delaymeter.h"

#include <algorithm>

namespace flowhand {

namespace {

using namespace std::chrono_literals;

/// A calm beat, at which people keep time well (common practice).
constexpr Duration kBeat = 900ms;
/// The first clicks find the beat.
constexpr int kClicksBefore = 2;
constexpr int kTaps = 10;
/// Later than this after a click, a tap is an early one to the next.
constexpr Duration kLatest = 550ms;
/// Half of the taps lie within this, or somebody tapped to something else (common practice: a calm person keeps within
/// a quarter of it).
constexpr Duration kWidest = 120ms;

std::int64_t millis(Duration duration) {
    return std::chrono::duration_cast<std::chrono::milliseconds>(duration).count();
}

} // namespace

std::optional<int> delayOfTaps(std::vector<Duration> offsets) {
    if (offsets.empty())
        return std::nullopt;
    std::sort(offsets.begin(), offsets.end());
    const std::size_t count = offsets.size();
    if (offsets[count - 1 - count / 4] - offsets[count / 4] > kWidest)
        return std::nullopt;
    const Duration median = (offsets[(count - 1) / 2] + offsets[count / 2]) / 2;
    return static_cast<int>(std::max<std::int64_t>(0, millis(median)));
}

DelayMeter::DelayMeter(BenchMaker& maker, Sound& sound, const Clock& clock, QObject* parent)
    : QObject(parent), m_maker(maker), m_sound(sound), m_clock(clock), m_timer(this) {
    m_timer.setTimerType(Qt::PreciseTimer);
    m_timer.setInterval(std::chrono::duration_cast<std::chrono::milliseconds>(kBeat));
    connect(&m_timer, &QTimer::timeout, this, &DelayMeter::click);
}

DelayMeter::~DelayMeter() {
    m_bench.reset();
}

int DelayMeter::tapsWanted() {
    return kTaps;
}

QString DelayMeter::rigName(bool withRig) const {
    return withRig ? m_maker.rigTitle() : QStringLiteral("screen");
}

void DelayMeter::begin(bool withRig) {
    stop();
    m_outcome.clear();
    m_offsets.clear();
    m_clicks = m_tapped = 0;
    m_rig = rigName(withRig);
    if (withRig) {
        auto bench = m_maker.open([this] {
            if (!m_isLookQueued.exchange(true))
                QMetaObject::invokeMethod(this, &DelayMeter::look, Qt::QueuedConnection);
        });
        if (!bench) {
            m_outcome = QString::fromStdString(describe(bench.error()));
            Q_EMIT changed();
            return;
        }
        m_bench = std::move(*bench);
        m_values = m_bench->snapshot().values;
    }
    m_timer.start();
    Q_EMIT changed();
}

void DelayMeter::stop() {
    m_timer.stop();
    m_bench.reset();
    Q_EMIT changed();
}

void DelayMeter::click() {
    m_sound.voice().play(Earcon::Click);
    m_clicked = m_clock.now();
    ++m_clicks;
}

/// Whatever a contact does is a tap; that it opens again comes after the tap and counts no more.
void DelayMeter::look() {
    m_isLookQueued = false;
    if (!m_bench)
        return;
    const std::vector<Value> before = std::exchange(m_values, m_bench->snapshot().values);
    for (std::size_t signal = 0; signal < m_values.size() && signal < before.size(); ++signal)
        if (m_values[signal] != before[signal] && before[signal].isKnown() &&
            m_bench->aircraft().signals[static_cast<SignalId>(signal)].kind != SignalKind::Number)
            return tap();
}

void DelayMeter::tap() {
    if (!isRunning() || m_clicks == 0)
        return;
    const Duration since = m_clock.now() - m_clicked;
    const bool isEarly = since > kLatest;
    const int of = isEarly ? m_clicks + 1 : m_clicks;
    if (of <= std::max(m_tapped, kClicksBefore))
        return;
    m_tapped = of;
    m_offsets.push_back(isEarly ? since - kBeat : since);
    if (taps() == kTaps)
        finish();
    Q_EMIT changed();
}

void DelayMeter::finish() {
    const std::optional<int> delay = delayOfTaps(m_offsets);
    stop();
    if (!delay) {
        m_outcome = tr("The taps lay too far apart to tell the delay. Tap to the clicks as to music, and try again.");
        return;
    }
    m_outcome = tr("%1 ms").arg(*delay);
    Q_EMIT measured(m_rig, *delay);
}

} // namespace flowhand
