#include "windowflight.h"

#include <cstdlib>
#include <functional>
#include <iostream>

#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickWindow>
#include <QTimer>

#include "base/problem.h"
#include "livebench.h"
#include "liveruns.h"
#include "liveshelf.h"
#include "presenter/benchpresenter.h"
#include "presenter/flypresenter.h"
#include "presenter/reviewpresenter.h"
#include "presenter/settings.h"
#include "presenter/sound.h"
#include "sockethid.h"
#include "voice/silentvoice.h"
#include "window.h"

using namespace flowhand;

namespace {

constexpr int kLookMillis = 20;

/// Looks at each snapshot on its way from the run to the window.
using Look = std::function<void(const RunSnapshot&)>;

class WatchedRun final : public RunHandle {
public:
    WatchedRun(std::unique_ptr<RunHandle> run, const Look& look) : m_run(std::move(run)), m_look(look) {}
    void command(CommandKind kind, const std::string& text) override { m_run->command(kind, text); }
    void jump(const std::string& step) override { m_run->jump(step); }
    void moveOnScreen(SignalId signal, Value value) override { m_run->moveOnScreen(signal, value); }
    [[nodiscard]] SessionSetup setup() const override { return m_run->setup(); }
    [[nodiscard]] std::shared_ptr<const GroundScene> scene() const override { return m_run->scene(); }
    [[nodiscard]] RunSnapshot snapshot() const override {
        RunSnapshot snapshot = m_run->snapshot();
        m_look(snapshot);
        return snapshot;
    }

private:
    std::unique_ptr<RunHandle> m_run;
    const Look& m_look;
};

class WatchedRuns final : public RunMaker {
public:
    WatchedRuns(RunMaker& runs, Look look) : m_runs(runs), m_look(std::move(look)) {}
    [[nodiscard]] Result<std::unique_ptr<RunHandle>> make(const FlightChoice& wish,
                                                          std::function<void()> onChange) override {
        Result<std::unique_ptr<RunHandle>> run = m_runs.make(wish, std::move(onChange));
        if (!run)
            return run;
        return std::make_unique<WatchedRun>(std::move(*run), m_look);
    }
    [[nodiscard]] bool canDemonstrate(const FlightChoice& choice) const override {
        return m_runs.canDemonstrate(choice);
    }
    [[nodiscard]] Result<PracticeFigures> practice(const AircraftFolder& folder) const override {
        return m_runs.practice(folder);
    }
    [[nodiscard]] QString rigTitle() const override { return m_runs.rigTitle(); }
    [[nodiscard]] ConnectedDevices devices() const override { return m_runs.devices(); }

private:
    RunMaker& m_runs;
    const Look m_look;
};

/// The text with these words that a person sees in the window; empty: none.
QString shownWith(const QString& words, const QQuickItem& item) {
    if (!item.isVisible())
        return {};
    const QString own = item.property("text").toString();
    if (own.contains(words))
        return own;
    for (const QQuickItem* child : item.childItems())
        if (const QString text = shownWith(words, *child); !text.isEmpty())
            return text;
    return {};
}

/// What is measured of the window as it goes.
struct WindowWatch {
    Measured measured;
    std::size_t known = 0; ///< presses that the window was told of
    std::size_t drawn = 0;

    void look(const RunSnapshot& snapshot) {
        measured.suspected = 0;
        for (const DeviceLosses& losses : snapshot.losses.devices)
            measured.suspected += losses.suspected;
        known = 0;
        for (const StepView& step : snapshot.session.steps)
            known += step.seen != kForever;
    }
    void frameIsDrawn() {
        for (; drawn < known; ++drawn)
            measured.seenNanos.push_back(steadyNanos());
    }
};

} // namespace

Measured flyInWindow(const RateFlight& flight, SocketHid& system, bool isIdle, bool (*isOver)()) {
    setenv("QT_QPA_PLATFORM", "offscreen", 1);
    setenv("QT_QUICK_BACKEND", "software", 1);
    char name[] = "flowhand";
    char* arguments[] = {name, nullptr};
    int count = 1;
    const QGuiApplication app(count, arguments);
    registerQmlTypes();
    const LibraryPtr library = loadLibraries({flight.procedures(), {}});
    Settings settings(QString::fromStdString(flight.storeFile() + ".settings.toml"));
    Sound sound(settings, [] {
        return std::make_unique<SilentVoice>();
    });
    WindowWatch watch;
    LiveRuns runs(flight.rigFile(), flight.storeFile(), system);
    WatchedRuns watchedRuns(runs, [&](const RunSnapshot& snapshot) {
        watch.look(snapshot);
    });
    FlyPresenter fly(library, watchedRuns, sound);
    LiveBenches benches(
        [&library] {
            return library;
        },
        flight.rigFile(), system);
    BenchPresenter bench(benches, sound);
    LiveShelf shelf(flight.storeFile());
    ReviewPresenter review(shelf);
    QQmlApplicationEngine engine;
    if (!showWindow(engine, fly, bench, review, settings, sound)) {
        std::cerr << "there is no window" << std::endl;
        std::exit(1);
    }
    auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().front());
    QObject::connect(window, &QQuickWindow::frameSwapped, &app, [&] {
        watch.frameIsDrawn();
    });
    fly.chooseHands(true);
    fly.startFlow(0);
    if (!fly.failure().isEmpty()) {
        std::cerr << fly.failure().toStdString() << std::endl;
        std::exit(1);
    }
    if (!isIdle)
        fly.waive();
    std::int64_t cpuBefore = -1;
    QTimer timer;
    QObject::connect(&timer, &QTimer::timeout, &app, [&] {
        if (cpuBefore < 0 && system.reports().front() > 0)
            cpuBefore = cpuMicros();
        if (const QString text = shownWith("may have been lost", *window->contentItem()); !text.isEmpty())
            watch.measured.shown = text.toStdString();
        if (isOver())
            QCoreApplication::quit();
    });
    timer.start(kLookMillis);
    QGuiApplication::exec();
    Measured measured = std::move(watch.measured);
    measured.cpuMicros = cpuMicros() - cpuBefore;
    measured.reports = system.reports();
    measured.hasWindow = true;
    return measured;
}
