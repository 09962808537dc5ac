// How long the program takes from its start to its first frame, beside a window of Qt Quick with nothing in it; and
// what it costs while its window is open and nobody does anything. On an X server of its own, drawn by Qt's software
// renderer.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QGuiApplication>
#include <QImage>
#include <QPixmap>
#include <QQmlApplicationEngine>
#include <QScreen>
#include <QThread>

#include "desktop.h"
#include "framewatch.h"

using namespace flowhand;

namespace {

constexpr int kStarts = 9;
constexpr int kPatienceMillis = 60'000;
/// Until a place has drawn itself, read its files and fallen asleep.
constexpr int kSettleMillis = 4'000;
constexpr int kIdleMillis = 10'000;

const QByteArray kBareWindow = "import QtQuick\nWindow { visible: true; width: 1280; height: 800; color: '#602020' }\n";

[[noreturn]] void stop(const char* what) {
    std::fprintf(stderr, "bench_start: %s\n", what);
    std::exit(1);
}

int showBareWindow(int argc, char** argv) {
    const QGuiApplication app(argc, argv);
    QQmlApplicationEngine engine;
    engine.loadData(kBareWindow);
    return QGuiApplication::exec();
}

QImage screen() {
    return QGuiApplication::primaryScreen()->grabWindow(0).toImage();
}

/// A screen with nothing on it is black, and so is a window that has not been drawn.
bool isSomethingDrawn() {
    const QRgb pixel = QGuiApplication::primaryScreen()->grabWindow(0, 640, 400, 1, 1).toImage().pixel(0, 0);
    return (pixel & 0xFFFFFFU) != 0;
}

void end(QProcess& program) {
    program.terminate();
    if (!program.waitForFinished(kPatienceMillis))
        stop("a program does not end");
    while (isSomethingDrawn())
        QThread::msleep(1);
}

/// What is started, and how long each start took until something was drawn, in ms.
struct Starts {
    const char* what;
    QString program;
    QStringList arguments;
    QString home;
    std::vector<double> millis{};

    [[nodiscard]] double median() const {
        std::vector<double> sorted = millis;
        std::sort(sorted.begin(), sorted.end());
        return sorted[sorted.size() / 2];
    }
    [[nodiscard]] double least() const { return *std::min_element(millis.begin(), millis.end()); }
};

void startOnce(const test::Desktop& desktop, Starts& starts) {
    QProcessEnvironment environment = desktop.environment();
    environment.insert("HOME", starts.home);
    QProcess program;
    program.setProcessEnvironment(environment);
    program.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    const auto begin = std::chrono::steady_clock::now();
    program.start(starts.program, starts.arguments);
    while (!isSomethingDrawn()) {
        if (millisSince(begin) > kPatienceMillis)
            stop("nothing was drawn");
        QThread::usleep(500);
    }
    starts.millis.push_back(millisSince(begin));
    end(program);
}

/// In turns, so that what else the machine does meets all of them.
void measureStarts(const test::Desktop& desktop, std::vector<Starts> all) {
    for (int round = -1; round < kStarts; ++round)
        for (Starts& starts : all) {
            startOnce(desktop, starts);
            if (round < 0) // reads from the disk
                starts.millis.clear();
        }
    for (const Starts& starts : all)
        std::printf("%-44s median %5.0f ms, least %5.0f ms; more than the bare window: %4.0f ms, %4.0f ms\n",
                    starts.what, starts.median(), starts.least(), starts.median() - all.front().median(),
                    starts.least() - all.front().least());
    std::fflush(stdout);
}

/// User and system time of all its threads so far: proc(5), /proc/[pid]/stat, fields 14 and 15.
double cpuMillis(qint64 process) {
    QFile file(QStringLiteral("/proc/%1/stat").arg(process));
    if (!file.open(QIODevice::ReadOnly))
        stop("the program is gone");
    const QByteArray line = file.readAll();
    const QList<QByteArray> fields = line.mid(line.lastIndexOf(')') + 2).split(' '); // from field 3 on
    return (fields.at(11).toDouble() + fields.at(12).toDouble()) * 1000.0 / double(sysconf(_SC_CLK_TCK));
}

void measureIdle(test::Desktop& desktop, const QString& program) {
    struct Place {
        const char* name;
        QStringList keys;
    };
    const std::vector<Place> places = {
        {"Fly, choosing", {}},
        {"Bench", {"ctrl+2"}},
        {"Review, the list", {"ctrl+3"}},
        {"Progress", {"ctrl+4"}},
        {"Library", {"ctrl+5"}},
        {"Manual", {"ctrl+6"}},
        {"Settings", {"F12"}},
        {"Fly, set-up", {"ctrl+1", "Return"}},
    };
    QProcess* window = desktop.run(program);
    if (window == nullptr)
        stop("the program does not start");
    while (!isSomethingDrawn())
        QThread::msleep(10);
    if (!desktop.click({900, 12})) // on nothing: without a window manager the keyboard follows the mouse
        stop("nothing can be clicked");
    QImage before;
    for (const Place& place : places) {
        if (!place.keys.isEmpty() && !desktop.press(place.keys))
            stop("no key can be pressed");
        QThread::msleep(kSettleMillis);
        const QImage now = screen();
        if (now == before)
            stop("a key leads nowhere");
        before = now;
        const auto begin = std::chrono::steady_clock::now();
        const double cpu = cpuMillis(window->processId());
        QThread::msleep(kIdleMillis);
        std::printf("idle, %-38s %5.2f %% of a core\n", place.name,
                    100.0 * (cpuMillis(window->processId()) - cpu) / millisSince(begin));
        std::fflush(stdout);
    }
    end(*window);
}

/// A home in which the question of the first start is answered.
QString homeOfAPilot(const test::Desktop& desktop) {
    const QString folder = desktop.home() + "/.config/flowhand";
    QDir().mkpath(folder);
    QFile file(folder + "/settings.toml");
    if (!file.open(QIODevice::WriteOnly) || file.write("hands = \"screen\"\n") < 0)
        stop("there is no settings file");
    return desktop.home();
}

} // namespace

int main(int argc, char** argv) {
    if (argc > 1 && std::string(argv[1]) == "bare")
        return showBareWindow(argc, argv);
    test::Desktop desktop;
    const QString why = test::Desktop::isPossible() ? desktop.start() : QStringLiteral("Xvfb is missing; install it");
    if (!why.isEmpty())
        stop(qPrintable(why));
    for (const QString& name : desktop.environment().keys())
        qputenv(name.toUtf8(), desktop.environment().value(name).toUtf8());
    const QGuiApplication app(argc, argv);
    const QString own = QCoreApplication::applicationFilePath();
    const QString program = QCoreApplication::applicationDirPath() + "/../../flowhand";
    measureStarts(desktop, {{"a bare Qt Quick window", own, {"bare"}, desktop.home()},
                            {"the program, for the first time", program, {}, desktop.folder() + "/nobody"},
                            {"the program, with its flows", program, {}, homeOfAPilot(desktop)}});
    measureIdle(desktop, program);
    return 0;
}
