// The program. Qt starts only for the window; everything else is core/command.

#include <cstdlib>
#include <filesystem>
#include <future>
#include <iostream>
#include <memory>

#include <QDateTime>
#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQmlComponent>

#include "aircraft/practice.h"
#include "command/commandline.h"
#include "command/datafolder.h"
#include "command/owncopy.h"
#include "device/hidsystem.h"
#include "livebench.h"
#include "livedesk.h"
#include "liveruns.h"
#include "liveshelf.h"
#include "presenter/benchpresenter.h"
#include "presenter/currentlibrary.h"
#include "presenter/flypresenter.h"
#include "presenter/language.h"
#include "presenter/librarypresenter.h"
#include "presenter/manualpresenter.h"
#include "presenter/progresspresenter.h"
#include "presenter/reviewpresenter.h"
#include "presenter/reviewvoice.h"
#include "presenter/settings.h"
#include "presenter/settingslinks.h"
#include "presenter/sound.h"
#include "store/datahome.h"
#include "store/store.h"
#include "voice/spokenvoice.h"
#include "window.h"

namespace {

using namespace flowhand;

bool hasDisplay() {
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
        if (const char* value = std::getenv(name); value != nullptr && value[0] != '\0')
            return true;
    return false;
}

/// None: the aircraft is not there any more, or has no practice aircraft.
ReviewPresenter::FindGround groundsOf(const LibraryPtr& library) {
    return [library](const std::string& aircraft) -> std::shared_ptr<const GroundScene> {
        for (const AircraftFolder& folder : library->aircraft) {
            if (folder.aircraft->folder != aircraft)
                continue;
            if (Result<GroundScene> scene = PracticeAircraft::sceneOf(*folder.aircraft))
                return std::make_shared<const GroundScene>(std::move(*scene));
        }
        return nullptr;
    };
}

int runWindow(int argc, char** argv, const WindowWish& wish) {
    const LibraryFolders folders{dataFolder() + "/procedures", ownProcedures()};
    // The files are read while Qt opens the display, and the views are while the files are.
    std::future<ReadLibrary> files = std::async(std::launch::async, [&folders] {
        return readLibrary(folders);
    });
    QGuiApplication app(argc, argv);
    QGuiApplication::setApplicationName("flowhand");
    QGuiApplication::setApplicationDisplayName("Flowhand");
    QGuiApplication::setDesktopFileName("org.flowhand.Flowhand"); // by which Wayland finds name and icon
    registerQmlTypes();
    auto viewing = std::make_unique<QQmlApplicationEngine>();
    auto reading = std::make_unique<QQmlComponent>(viewing.get(), mainView(), QQmlComponent::Asynchronous);
    LiveDesk desk;
    CurrentLibrary library(desk, folders, files.get());
    Settings settings(QString::fromStdString(settingsFile()));
    const Language language(settings);
    Sound sound(settings, [] {
        return std::make_unique<SpokenVoice>();
    });
    const std::unique_ptr<HidSystem> devices = systemDevices();
    LiveRuns runs(wish.rigFile, wish.storeFile, *devices);
    LiveShelf shelf(wish.storeFile);
    FlyPresenter fly(library.now(), runs, sound);
    fly.note()->setShelf(&shelf);
    LiveBenches benches(
        [&library] {
            return library.now();
        },
        wish.rigFile, *devices);
    BenchPresenter bench(benches, sound);
    ReviewPresenter review(shelf, groundsOf(library.now()));
    review.setSampleFolder(dataFolder() + "/assets/runs");
    ProgressPresenter progress(shelf, wish.storeFile, library.now(), [] {
        return QDateTime::currentMSecsSinceEpoch();
    });
    LibraryPresenter libraryPlace(desk, library, benches);
    QObject::connect(&library, &CurrentLibrary::changed, &fly, [&] {
        fly.offer(library.now());
        progress.offer(library.now());
        review.useGround(groundsOf(library.now()));
        bench.lookAgain();
    });
    ManualPresenter manual(manualFolder());
    const ReviewVoice reviewVoice(*review.run()->timeline(), sound);
    linkSettings(settings, fly);
    if (wish.storeFile == defaultStoreFile())
        QObject::connect(&settings, &Settings::dataFolderChanged, &fly, [&] {
            runs.useStore(defaultStoreFile());
            shelf.useStore(defaultStoreFile());
            progress.useStore(defaultStoreFile());
            fly.lookAgain();
            review.close();
            library.useOwn(ownProcedures());
        });
    if (!wish.rigFile.empty())
        fly.chooseHands(true);
    else if (settings.hands() == Settings::Hands::Unasked)
        fly.askHands();
    else
        fly.chooseHands(settings.hands() == Settings::Hands::Rig);

    const std::unique_ptr<QQmlApplicationEngine> engine = std::move(viewing); // goes before what it shows
    const std::unique_ptr<QQmlComponent> views = std::move(reading);
    QObject::connect(&language, &Language::changed, &sound, &Sound::changed);
    QObject::connect(&language, &Language::changed, &fly, &FlyPresenter::tellAnew);
    QObject::connect(&language, &Language::changed, &bench, &BenchPresenter::tellAnew);
    QObject::connect(&language, &Language::changed, &review, &ReviewPresenter::tellAnew);
    QObject::connect(&language, &Language::changed, &progress, &ProgressPresenter::tellAnew);
    QObject::connect(&language, &Language::changed, engine.get(), &QQmlEngine::retranslate);
    return showWindow(*engine, fly, bench, review, settings, sound, {&progress, &libraryPlace, &manual})
               ? QGuiApplication::exec()
               : EXIT_FAILURE;
}

} // namespace

int main(int argc, char** argv) {
    WindowWish wish;
    if (const std::optional<int> status = runCommandLine(argc, argv, std::cout, std::cerr, wish))
        return *status;
    if (hasDisplay())
        return runWindow(argc, argv, wish);
    if (argc > 1) {
        std::cerr
            << "flowhand: there is no display for the window; 'flowhand practise FLOW --rig FILE' flies without it\n";
        return EXIT_FAILURE;
    }
    std::cout << "There is no display, so scripted hands fly the demonstration.\n\n";
    return flyDemonstration(std::cout, std::cerr);
}
