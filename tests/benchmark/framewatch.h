#pragma once

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <vector>

#include <QCoreApplication>
#include <QQuickWindow>

#include "windowbench.h"

namespace flowhand {

/// Changes what a window shows, frame by frame, and measures what each costs: the change itself, then layout, painting
/// and drawing.
class FrameWatch {
public:
    explicit FrameWatch(QQuickWindow& window) {
        QObject::connect(
            &window, &QQuickWindow::afterAnimating, &window,
            [this] {
                m_begun = std::chrono::steady_clock::now();
            },
            Qt::DirectConnection);
        QObject::connect(
            &window, &QQuickWindow::frameSwapped, &window,
            [this] {
                m_drawing = millisSince(m_begun);
                m_isDrawn = true;
            },
            Qt::DirectConnection);
    }

    /// Ends the program when a change is not drawn within two seconds.
    void measure(const char* what, int count, const std::function<void(int)>& change) {
        std::vector<double> frames;
        for (int frame = 0; frame < count; ++frame) {
            m_isDrawn = false;
            const auto begin = std::chrono::steady_clock::now();
            change(frame);
            const double changing = millisSince(begin);
            while (!m_isDrawn && millisSince(begin) < 2000)
                QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
            if (!m_isDrawn) {
                std::fprintf(stderr, "no frame was drawn while %s\n", what);
                std::exit(1);
            }
            frames.push_back(changing + m_drawing);
        }
        std::sort(frames.begin(), frames.end());
        const auto timely = std::upper_bound(frames.begin(), frames.end(), 1000.0 / 60.0) - frames.begin();
        std::printf("%-34s median %6.2f ms, 99 of 100 within %6.2f ms, worst %6.2f ms; %3.0f of 100 within 16.7 ms\n",
                    what, frames[frames.size() / 2], frames[frames.size() * 99 / 100], frames.back(),
                    100.0 * double(timely) / double(frames.size()));
        std::fflush(stdout);
    }

private:
    std::chrono::steady_clock::time_point m_begun;
    double m_drawing = 0.0;
    bool m_isDrawn = false;
};

} // namespace flowhand
