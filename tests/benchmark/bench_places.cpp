// How long a frame takes in the places Fly, Library and Progress of the window while something moves there; the Bench
// has bench_plot, Review bench_review. With "opengl" as its argument it draws by the platform and the renderer of the
// environment, else in memory without either.

#include <cstdio>
#include <cstdlib>
#include <string>

#include <QDateTime>
#include <QGuiApplication>

#include "base/textfile.h"
#include "framewatch.h"
#include "store/archive.h"
#include "wholewindow.h"

using namespace flowhand;

namespace {

constexpr int kFrames = 400;
constexpr int kSettleMillis = 3'000;
constexpr int kRuns = 60; ///< that Progress tells of
constexpr std::int64_t kDayMillis = 86'400'000;

[[noreturn]] void stop(const std::string& what) {
    std::fprintf(stderr, "bench_places: %s\n", what.c_str());
    std::exit(1);
}

/// Two months of practice of two flows.
void fillStore(const std::string& file, std::int64_t now) {
    Result<Store> store = Store::open(file);
    if (!store)
        stop(describe(store.error()));
    for (int day = 0; day < kRuns; ++day) {
        const std::string name = day % 3 == 0 ? "taxi_out_good" : day % 3 == 1 ? "take_off_good" : "take_off_faulty";
        const std::string path = ASSETS "/runs/" + name + ".flowrun";
        const Result<std::string> bytes = readFile(path, kLargestArchive);
        Result<ArchivedRun> archived = bytes ? readArchive(*bytes, path) : tl::unexpected(bytes.error());
        if (!archived)
            stop(describe(archived.error()));
        archived->run.header.startedUnixMillis = now - (kRuns - day) * kDayMillis;
        for (Sample& sample : archived->run.samples)
            if (sample.origin == Origin::Script)
                sample.origin = Origin::Screen; // scripted hands practise nothing
        archived->hash += "-" + std::to_string(day);
        if (const Result<std::int64_t> id = store->add(*archived); !id)
            stop(describe(id.error()));
    }
}

void measureFly(QQuickWindow& window, FlyPresenter& fly, FrameWatch& watch) {
    for (const char* flow : {"taxi_out", "take_off"}) {
        fly.demonstrate(fly.find(QStringLiteral("twin_jet"), QString::fromLatin1(flow)));
        run(kSettleMillis);
        if (fly.stage() != FlyPresenter::Running)
            stop(std::string("the demonstration does not run: ") + fly.failure().toStdString());
        watch.measure((std::string("Fly: ") + flow + " as it is flown").c_str(), kFrames, [&](int) {
            fly.refresh();
            window.update();
        });
        fly.leave();
    }
}

void measureLibrary(QQuickWindow& window, LibraryPresenter& library, FrameWatch& watch) {
    press(window, Qt::Key_5, Qt::ControlModifier);
    run(kSettleMillis);
    if (library.rows()->count() < 10)
        stop("the library is not listed");
    watch.measure("Library: the next file chosen", kFrames, [&](int frame) {
        library.choose(frame % 20 < 10 ? frame % 10 : 9 - frame % 10);
        window.update();
    });
    watch.measure("Library: the card turned", kFrames, [&](int frame) {
        press(window, frame % 20 < 10 ? Qt::Key_PageDown : Qt::Key_PageUp);
        window.update();
    });
}

void measureProgress(QQuickWindow& window, ProgressPresenter& progress, FrameWatch& watch) {
    press(window, Qt::Key_4, Qt::ControlModifier);
    run(kSettleMillis);
    if (progress.flows()->count() < 2)
        stop("there is no progress: " + progress.failure().toStdString());
    watch.measure("Progress: the next flow chosen", kFrames, [&](int frame) {
        progress.choose(frame % 2);
        window.update();
    });
}

} // namespace

int main(int argc, char** argv) {
    drawAsAsked(argc, argv);
    const QGuiApplication app(argc, argv);
    registerQmlTypes();
    const QTemporaryDir folder;
    const std::int64_t now = QDateTime::currentMSecsSinceEpoch();
    fillStore(WholeWindow::storeIn(folder), now);
    WholeWindow whole(folder, now);
    QQuickWindow* const window = whole.show();
    if (window == nullptr)
        return 1;
    run(500); // keys go nowhere before
    FrameWatch watch(*window);
    measureFly(*window, whole.fly, watch);
    measureLibrary(*window, whole.library, watch);
    measureProgress(*window, whole.progress, watch);
    return 0;
}
