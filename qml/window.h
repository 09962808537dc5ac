#pragma once

#include <QUrl>

class QQmlApplicationEngine;

namespace flowhand {

class BenchPresenter;
class FlyPresenter;
class LibraryPresenter;
class ManualPresenter;
class ProgressPresenter;
class ReviewPresenter;
class Settings;
class Sound;

/// Makes the QML types of this library known to the program; call once before the first engine.
void registerQmlTypes();

/// Places that a window can do without, as benchmarks do.
struct MorePlaces {
    ProgressPresenter* progress = nullptr;
    LibraryPresenter* library = nullptr;
    ManualPresenter* manual = nullptr;
};

/// The window itself; what it is made of can be read before it is shown.
[[nodiscard]] QUrl mainView();

/// Shows the program's window over these presenters, which must outlive the engine; the voice opens after its
/// first frame. False when it cannot be shown; the engine has said why.
[[nodiscard]] bool showWindow(QQmlApplicationEngine& engine, FlyPresenter& fly, BenchPresenter& bench,
                              ReviewPresenter& review, Settings& settings, Sound& sound, const MorePlaces& more = {});

} // namespace flowhand
