// How long a frame takes while an hour's run is gone through: scrubbing, panning, zooming, playing. With "opengl" as
// its argument it draws by the platform and the renderer of the environment, else in memory without either.
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>
#include <vector>

#include <QGuiApplication>
#include <QQuickItem>
#include <QQuickView>
#include <QTemporaryDir>

#include "base/textfile.h"
#include "framewatch.h"
#include "liveshelf.h"
#include "presenter/reviewpresenter.h"
#include "store/archive.h"
#include "window.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

constexpr int kFrames = 400;
constexpr Duration kHour = 1h;
constexpr int kMovingAxes = 8;

[[noreturn]] void stop(const std::string& what) {
    std::fprintf(stderr, "bench_review: %s\n", what.c_str());
    std::exit(1);
}

/// A sample run, gone on with until an hour is over: eight controls moving at 100/s, all motion at 20/s.
ArchivedRun hourOf(const std::string& name) {
    const std::string file = ASSETS "/runs/" + name + ".flowrun";
    const Result<std::string> bytes = readFile(file, kLargestArchive);
    Result<ArchivedRun> archived = bytes ? readArchive(*bytes, file) : tl::unexpected(bytes.error());
    if (!archived)
        stop(describe(archived.error()));
    StoredRun& run = archived->run;
    Problems problems;
    const std::optional<Aircraft> aircraft = parseAircraft(run.header.aircraftSource, "aircraft.toml", problems);
    if (!aircraft)
        stop("the sample run's aircraft cannot be read");
    std::vector<SignalId> axes;
    std::vector<SignalId> motion;
    for (std::size_t i = 0; i < aircraft->signals.size(); ++i) {
        const SignalId id{static_cast<std::uint32_t>(i)};
        if (aircraft->signals[id].kind != SignalKind::Number)
            continue;
        if (!aircraft->isControl(id))
            motion.push_back(id);
        else if (axes.size() < kMovingAxes)
            axes.push_back(id);
    }
    std::mt19937 random(7);
    std::normal_distribution<double> noise(0.0, 0.3);
    const Time begin = run.samples.back().time;
    for (int tick = 1; begin + tick * 10ms < kHour; ++tick) {
        const Time time = begin + tick * 10ms;
        const double at = seconds(time);
        for (std::size_t i = 0; i < axes.size(); ++i) {
            const double value = 40.0 + 30.0 * std::sin(at / (3.0 + double(i))) + noise(random);
            run.samples.push_back({time, axes[i], Value::number(std::round(value * 100.0) / 100.0), Actor::Hand,
                                   Origin::Device, kNoControl});
        }
        for (std::size_t i = 0; tick % 5 == 0 && i < motion.size(); ++i)
            run.samples.push_back({time, motion[i],
                                   Value::number(std::round(50.0 + 40.0 * std::sin(at / 20 + double(i)))),
                                   Actor::Machine, Origin::Practice, kNoControl});
    }
    run.summary.length = kHour;
    archived->hash += "-hour";
    return std::move(*archived);
}

void measureFrames(QQuickView& view, ReviewTimeline& timeline) {
    FrameWatch watch(view);
    watch.measure("scrubbing the whole hour", kFrames, [&](int frame) {
        timeline.scrub(double(frame % 97 + 1) / 98);
    });
    timeline.zoom(60, 0.5);
    watch.measure("scrubbing a minute of it", kFrames, [&](int frame) {
        timeline.scrub(double(frame % 97 + 1) / 98);
    });
    watch.measure("panning a minute at a time", kFrames, [&](int frame) {
        timeline.pan(frame % 80 < 40 ? 0.05 : -0.05);
    });
    timeline.fit();
    watch.measure("zooming in and out", kFrames, [&](int frame) {
        timeline.zoom(frame % 80 < 40 ? 1.2 : 1 / 1.2, 0.37);
    });
    timeline.fit();
    timeline.hold(0);
    timeline.togglePlay();
    watch.measure("playing", kFrames, [&](int) {
        timeline.advance(1.0 / 60);
    });
}

} // namespace

int main(int argc, char** argv) {
    drawAsAsked(argc, argv);
    const QGuiApplication app(argc, argv);
    registerQmlTypes();
    const QTemporaryDir folder;
    const std::string file = folder.filePath("runs.sqlite").toStdString();
    std::int64_t id = 0;
    {
        const ArchivedRun run = hourOf("take_off_faulty");
        Result<Store> store = Store::open(file);
        const Result<std::int64_t> added = store ? store->add(run) : tl::unexpected(store.error());
        if (!added)
            stop(describe(added.error()));
        id = *added;
        std::printf("an hour, %zu samples\n", run.run.samples.size());
    }
    LiveShelf shelf(file);
    ReviewPresenter review(shelf);
    const auto opening = std::chrono::steady_clock::now();
    review.openRun(static_cast<int>(id));
    while (review.stage() == ReviewPresenter::Opening && millisSince(opening) < 60'000)
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 20);
    if (review.stage() != ReviewPresenter::Reviewing)
        stop(review.failure().toStdString());
    std::printf("opened, beside the window          %8.1f ms\n", millisSince(opening));

    QQuickView view;
    view.setResizeMode(QQuickView::SizeRootObjectToView);
    view.setInitialProperties({{"review", QVariant::fromValue(&review)}});
    view.setSource(QUrl("qrc:/qt-project.org/imports/Flowhand/review/ReviewPlace.qml"));
    view.resize(1280, 800);
    view.show();
    QCoreApplication::processEvents();
    measureFrames(view, *review.run()->timeline());
    return 0;
}
