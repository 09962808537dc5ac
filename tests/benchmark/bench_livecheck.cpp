// How long the Library's editor takes from a keystroke until its marks are drawn, in the largest shipped files.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include <QDateTime>
#include <QEventLoop>
#include <QGuiApplication>
#include <QQuickItem>

#include "wholewindow.h"
#include "windowbench.h"

using namespace flowhand;

namespace {

namespace fs = std::filesystem;
using SteadyTime = std::chrono::steady_clock::time_point;

constexpr double kGoalMillis = 200.0;
constexpr int kKeys = 300;
constexpr int kWaitMillis = 5'000; ///< for one answer; nobody waits so long
/// A quick typist's ten keys a second.
constexpr int kBetweenKeysMillis = 100;
constexpr int kSettleMillis = 1'000;
constexpr QSize kWindow(1280, 800);

template <class Sender, class Signal>
bool waitFor(Sender* sender, Signal signal) {
    QEventLoop loop;
    bool hasCome = false;
    QObject::connect(sender, signal, &loop, [&] {
        hasCome = true;
        loop.quit();
    });
    QTimer::singleShot(kWaitMillis, &loop, &QEventLoop::quit);
    loop.exec();
    return hasCome;
}

/// The largest file of a folder's kind.
std::string largest(const std::string& procedures, bool (*isKind)(const fs::path&)) {
    fs::path found;
    for (const auto& entry : fs::recursive_directory_iterator(procedures))
        if (entry.path().extension() == ".toml" && isKind(entry.path()) &&
            (found.empty() || entry.file_size() > fs::file_size(found)))
            found = entry.path();
    return found.string();
}

struct Times {
    std::vector<double> told;  ///< ms until the check has answered
    std::vector<double> drawn; ///< until the frame with its marks is drawn
};

double share(std::vector<double> values, double part) {
    std::sort(values.begin(), values.end());
    return values.empty() ? 0.0 : values[static_cast<std::size_t>(part * double(values.size() - 1))];
}

/// Types into the middle of the file and takes it back: every second text has an error in it.
bool type(QQuickWindow& window, FileEditor& editor, Times& times) {
    for (int key = 0; key < kKeys; ++key) {
        const bool isTaking = key % 2 == 1;
        const int code = isTaking ? Qt::Key_Backspace : Qt::Key_BracketLeft;
        const QString text = isTaking ? QString() : QStringLiteral("[");
        QKeyEvent press(QEvent::KeyPress, code, Qt::NoModifier, text);
        const SteadyTime begin = std::chrono::steady_clock::now();
        QCoreApplication::sendEvent(&window, &press);
        if (!waitFor(&editor, &FileEditor::checked))
            return false;
        times.told.push_back(millisSince(begin));
        window.update();
        if (!waitFor(&window, &QQuickWindow::frameSwapped))
            return false;
        times.drawn.push_back(millisSince(begin));
        run(kBetweenKeysMillis);
    }
    return true;
}

bool measure(const char* what, const std::string& file, QQuickWindow& window, LibraryPresenter& library) {
    library.leaveEditor();
    library.setSearch({});
    const bool isAircraft = isAircraftFile(file);
    library.setKind(isAircraft             ? LibraryPresenter::Aircraft
                    : isScenarioFile(file) ? LibraryPresenter::Scenarios
                                           : LibraryPresenter::Flows);
    const fs::path path(file);
    const fs::path inFolder = isScenarioFile(file) ? path.parent_path().parent_path() : path.parent_path();
    library.setSearch(QString::fromStdString((inFolder.filename() / path.lexically_relative(inFolder)).string()));
    if (library.isOwn())
        library.edit(); // came along with a flow
    else
        library.copyToOwn();
    run(kSettleMillis);
    FileEditor& editor = *library.editor();
    if (!library.isEditing() || editor.isReadOnly()) {
        std::fprintf(stderr, "%s could not be opened: %s\n", file.c_str(), qPrintable(library.message()));
        return false;
    }
    for (int line = 0; line < 40; ++line) { // into its middle
        QKeyEvent down(QEvent::KeyPress, Qt::Key_Down, Qt::NoModifier);
        QCoreApplication::sendEvent(&window, &down);
    }
    Times times;
    if (!type(window, editor, times)) {
        std::fprintf(stderr, "no answer within %d ms\n", kWaitMillis);
        return false;
    }
    std::printf("%-10s %-36s %6lld  %6.1f %6.1f %6.1f  %6.1f %6.1f %6.1f  %5.2f\n", what,
                (inFolder.filename() / path.filename()).c_str(), static_cast<long long>(fs::file_size(file)),
                share(times.told, 0.5), share(times.told, 0.99), share(times.told, 1.0), share(times.drawn, 0.5),
                share(times.drawn, 0.99), share(times.drawn, 1.0), share(times.drawn, 1.0) / kGoalMillis);
    std::fflush(stdout);
    editor.revert();
    run(kSettleMillis);
    return true;
}

} // namespace

int main(int argc, char** argv) {
    drawInMemory();
    const QGuiApplication app(argc, argv);
    registerQmlTypes();
    const QTemporaryDir folder;
    WholeWindow whole(folder, QDateTime::currentMSecsSinceEpoch());
    QQuickWindow* const window = whole.show();
    if (window == nullptr)
        return 1;
    window->resize(kWindow);
    run(kSettleMillis); // keys go nowhere before
    press(*window, Qt::Key_5, Qt::ControlModifier);
    run(kSettleMillis);
    std::printf("%-10s %-36s %6s  %20s  %20s  %s\n", "", "", "bytes", "told p50/p99/max ms", "drawn p50/p99/max ms",
                "max / 200 ms");
    const bool isWhole = measure("flow",
                                 largest(PROCEDURES,
                                         [](const fs::path& file) {
                                             return isFlowFile(file.string()) && !isScenarioFile(file.string());
                                         }),
                                 *window, whole.library) &&
                         measure("scenario",
                                 largest(PROCEDURES,
                                         [](const fs::path& file) {
                                             return isScenarioFile(file.string());
                                         }),
                                 *window, whole.library) &&
                         measure("aircraft",
                                 largest(PROCEDURES,
                                         [](const fs::path& file) {
                                             return isAircraftFile(file.string());
                                         }),
                                 *window, whole.library);
    return isWhole ? 0 : 1;
}
