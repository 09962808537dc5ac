// How smoothly the bench's place shows a control whose device sends a thousand reports a second.

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <thread>
#include <vector>

#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QTemporaryDir>

#include "base/textfile.h"
#include "device/fakehid.h"
#include "device/hidtext.h"
#include "livebench.h"
#include "liveruns.h"
#include "liveshelf.h"
#include "presenter/benchpresenter.h"
#include "presenter/flypresenter.h"
#include "presenter/reviewpresenter.h"
#include "presenter/settings.h"
#include "presenter/sound.h"
#include "procedure/library.h"
#include "voice/silentvoice.h"
#include "window.h"
#include "windowbench.h"

using namespace flowhand;

namespace {

using SteadyTime = std::chrono::steady_clock::time_point;

/// X and Y of 16 bits, without ids.
constexpr const char* kTwoAxes = "05 01 09 04 A1 01 09 30 09 31 15 00 27 FF FF 00 00 75 10 95 02 81 02 C0";

/// Thrust lever 1 is a plain lever, the flap lever has gates: both kinds of plot.
constexpr const char* kRig = R"(format = 1
title = "A thousand a second"
[[device]]
name = "quadrant"
id = "1209:0001"
[[control]]
signal = "thrust_lever_1"
wiring = "axis"
input = "X"
range = [0, 65535]
[[control]]
signal = "flap_lever"
wiring = "gates"
input = "Y"
gates = [
    { position = "up", at = 6000, band = 1500 },
    { position = "4", at = 19000, band = 1500 },
    { position = "12", at = 32000, band = 1500 },
    { position = "22", at = 45000, band = 1500 },
    { position = "34", at = 58000, band = 1500 },
]
)";

/// As long as the plot shows.
constexpr int kFillMillis = 10'500;
constexpr int kRowMillis = 5'000;
constexpr int kShowMillis = 500;
/// A display's 60 frames a second leave so long for each.
constexpr double kFrameMillis = 1000.0 / 60.0;

/// Sends both axes, moving slowly with noise on them, every millisecond while it is on.
class Hand {
public:
    explicit Hand(FakeHid& hid)
        : m_hid(hid), m_thread([this] {
              work();
          }) {}
    ~Hand() {
        m_isStopping = true;
        m_thread.join();
    }
    void setOn(bool isOn) { m_isOn = isOn; }
    [[nodiscard]] int sent() const { return m_sent; }

private:
    void work() {
        SteadyTime next = std::chrono::steady_clock::now();
        std::uint32_t noise = 1;
        for (int at = 0; !m_isStopping; ++at) {
            next += std::chrono::milliseconds(1);
            std::this_thread::sleep_until(next);
            if (!m_isOn)
                continue;
            noise = noise * 1664525U + 1013904223U;
            const int raw = static_cast<int>(32768 + 30000 * std::sin(at / 700.0)) + static_cast<int>(noise >> 24) * 4;
            const auto low = static_cast<std::uint8_t>(raw & 0xFF);
            const auto high = static_cast<std::uint8_t>((raw >> 8) & 0xFF);
            m_hid.send("q", {low, high, low, high});
            ++m_sent;
        }
    }

    FakeHid& m_hid;
    std::atomic<bool> m_isOn = false;
    std::atomic<bool> m_isStopping = false;
    std::atomic<int> m_sent = 0;
    std::thread m_thread; ///< last
};

double millis(std::chrono::steady_clock::duration time) {
    return std::chrono::duration<double, std::milli>(time).count();
}

double threadCpuMillis() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return double(now.tv_sec) * 1e3 + double(now.tv_nsec) / 1e6;
}

/// What the window did in one row.
class Frames {
public:
    explicit Frames(QQuickWindow& window) {
        QObject::connect(&window, &QQuickWindow::afterAnimating, &window, [this] {
            m_begun = std::chrono::steady_clock::now();
        });
        QObject::connect(&window, &QQuickWindow::frameSwapped, &window, [this] {
            const SteadyTime now = std::chrono::steady_clock::now();
            m_costs.push_back(millis(now - m_begun));
            if (m_swapped != SteadyTime())
                m_gaps.push_back(millis(now - m_swapped));
            m_swapped = now;
        });
    }

    void begin() {
        m_costs.clear();
        m_gaps.clear();
        m_swapped = {};
        m_since = std::chrono::steady_clock::now();
        m_cpu = threadCpuMillis();
    }

    void tell(const char* what, int reports) const {
        const double wall = millis(std::chrono::steady_clock::now() - m_since);
        std::printf("%-34s %6.0f /s  %5.1f /s  %5.1f %5.1f %5.1f  %5.1f %5.1f %5.1f  %4.0f %%  %5.2f\n", what,
                    1000.0 * reports / wall, 1000.0 * double(m_costs.size()) / wall, share(m_costs, 0.5),
                    share(m_costs, 0.99), share(m_costs, 1.0), share(m_gaps, 0.5), share(m_gaps, 0.99),
                    share(m_gaps, 1.0), 100.0 * (threadCpuMillis() - m_cpu) / wall,
                    share(m_costs, 0.99) / kFrameMillis);
        std::fflush(stdout);
    }

private:
    static double share(std::vector<double> values, double part) {
        if (values.empty())
            return 0.0;
        std::sort(values.begin(), values.end());
        return values[static_cast<std::size_t>(part * double(values.size() - 1))];
    }

    std::vector<double> m_costs; ///< ms from the begin of a frame until it is drawn
    std::vector<double> m_gaps;  ///< ms between two frames
    SteadyTime m_begun;
    SteadyTime m_swapped;
    SteadyTime m_since;
    double m_cpu = 0.0;
};

/// Each kind of plot, filled, in windows of three sizes.
void measure(BenchPresenter& bench, QQuickWindow& window, Hand& hand) {
    Frames frames(window);
    const auto row = [&](const std::string& what) {
        const int before = hand.sent();
        frames.begin();
        run(kRowMillis);
        frames.tell(what.c_str(), hand.sent() - before);
    };
    std::printf("%-34s %9s  %8s  %17s  %17s  %6s  %s\n", "", "reports", "frames", "drawing p50/99/max",
                "apart p50/99/max", "busy", "p99 / 16.7 ms");
    for (const char* lever : {"Thrust lever 1", "Flap lever"}) {
        for (int at = 0; at < bench.controls()->count() && bench.chosenLabel() != lever; ++at)
            bench.choose(at);
        hand.setOn(false);
        run(kFillMillis);
        row(std::string(lever) + ", still");
        hand.setOn(true);
        run(kFillMillis);
        for (const QSize size : {QSize(1024, 640), QSize(1280, 800), QSize(1920, 1080)}) {
            window.resize(size);
            run(500);
            row(std::string(lever) + ", " + std::to_string(size.width()) + " x " + std::to_string(size.height()));
        }
    }
}

} // namespace

int main(int argc, char** argv) {
    drawInMemory();
    const QGuiApplication app(argc, argv);
    registerQmlTypes();
    const QTemporaryDir folder;
    const std::string rigFile = folder.filePath("rig.toml").toStdString();
    const LibraryPtr library = loadLibraries({PROCEDURES, {}});
    if (!writeFile(rigFile, kRig) || library->aircraft.empty()) {
        std::fputs("there is no rig file or no aircraft\n", stderr);
        return 1;
    }
    Settings settings(folder.filePath("settings.toml"));
    Sound sound(settings, [] {
        return std::make_unique<SilentVoice>();
    });
    FakeHid hid;
    hid.plug(quadrantInfo(), bytesOf(kTwoAxes));
    LiveRuns runs(rigFile, folder.filePath("runs.sqlite").toStdString(), hid);
    FlyPresenter fly(library, runs, sound);
    LiveBenches benches(
        [&library] {
            return library;
        },
        rigFile, hid);
    BenchPresenter bench(benches, sound);
    LiveShelf shelf(folder.filePath("runs.sqlite").toStdString());
    ReviewPresenter review(shelf);
    fly.chooseHands(true);
    QQmlApplicationEngine engine;
    if (!showWindow(engine, fly, bench, review, settings, sound))
        return 1;
    auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().front());
    run(kShowMillis); // keys go nowhere before
    press(*window, Qt::Key_2, Qt::ControlModifier);
    if (!bench.isOpen()) {
        std::fprintf(stderr, "the bench is not open: %s\n", qPrintable(bench.failure()));
        return 1;
    }
    Hand hand(hid);
    measure(bench, *window, hand);
    return 0;
}
