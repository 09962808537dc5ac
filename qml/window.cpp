#include "window.h"

#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QtQml>

#include "presenter/benchpresenter.h"
#include "presenter/flypresenter.h"
#include "presenter/librarypresenter.h"
#include "presenter/manualpresenter.h"
#include "presenter/progresspresenter.h"
#include "presenter/reviewpresenter.h"
#include "presenter/settings.h"
#include "presenter/sound.h"

void qml_register_types_Flowhand();

namespace flowhand {

void registerQmlTypes() {
    // Naming the function is enough: a static library's registration is linked in only when something refers to it.
    volatile auto registration = &qml_register_types_Flowhand;
    Q_UNUSED(registration)
}

QUrl mainView() {
    return QUrl("qrc:/qt-project.org/imports/Flowhand/shell/Main.qml");
}

bool showWindow(QQmlApplicationEngine& engine, FlyPresenter& fly, BenchPresenter& bench, ReviewPresenter& review,
                Settings& settings, Sound& sound, const MorePlaces& more) {
    engine.setInitialProperties({{"fly", QVariant::fromValue(&fly)},
                                 {"bench", QVariant::fromValue(&bench)},
                                 {"review", QVariant::fromValue(&review)},
                                 {"progress", QVariant::fromValue(more.progress)},
                                 {"library", QVariant::fromValue(more.library)},
                                 {"manual", QVariant::fromValue(more.manual)},
                                 {"settings", QVariant::fromValue(&settings)},
                                 {"sound", QVariant::fromValue(&sound)}});
    engine.load(mainView());
    if (engine.rootObjects().isEmpty())
        return false;
    // Opening a voice takes a second or more; the window is there first.
    if (auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().first()))
        QObject::connect(window, &QQuickWindow::frameSwapped, &sound, &Sound::start,
                         static_cast<Qt::ConnectionType>(Qt::QueuedConnection | Qt::SingleShotConnection));
    return true;
}

} // namespace flowhand
