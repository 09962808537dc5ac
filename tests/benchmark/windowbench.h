#pragma once

#include <chrono>
#include <cstdlib>
#include <string>

#include <QCoreApplication>
#include <QEventLoop>
#include <QKeyEvent>
#include <QQuickWindow>
#include <QTimer>

namespace flowhand {

inline double millisSince(std::chrono::steady_clock::time_point begin) {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
}

/// Before the application is made: no display, no graphics card.
inline void drawInMemory() {
    setenv("QT_QPA_PLATFORM", "offscreen", 1);
    setenv("QT_QUICK_BACKEND", "software", 1);
}

/// The same unless "opengl" is the program's argument: then by the platform and the renderer of the environment.
inline void drawAsAsked(int argc, char** argv) {
    if (argc < 2 || std::string(argv[1]) != "opengl")
        drawInMemory();
}

/// The window goes on for this long.
inline void run(int forMillis) {
    QEventLoop loop; // QCoreApplication::quit() would close the window
    QTimer::singleShot(forMillis, &loop, &QEventLoop::quit);
    loop.exec();
}

inline void press(QQuickWindow& window, int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    for (const QEvent::Type type : {QEvent::KeyPress, QEvent::KeyRelease}) {
        QKeyEvent event(type, key, modifiers);
        QCoreApplication::sendEvent(&window, &event);
    }
}

} // namespace flowhand
