#include "window.h"

#include <QQmlApplicationEngine>
#include <QtQml>

#include "presenter/benchpresenter.h"
#include "presenter/flypresenter.h"
#include "presenter/settings.h"

void qml_register_types_Flowhand();

namespace flowhand {

void registerQmlTypes() {
    // Naming the function is enough: a static library's registration is linked in only when something refers to it.
    volatile auto registration = &qml_register_types_Flowhand;
    Q_UNUSED(registration)
}

bool showWindow(QQmlApplicationEngine& engine, FlyPresenter& fly, BenchPresenter& bench, Settings& settings) {
    engine.setInitialProperties({{"fly", QVariant::fromValue(&fly)},
                                 {"bench", QVariant::fromValue(&bench)},
                                 {"settings", QVariant::fromValue(&settings)}});
    engine.load(QUrl("qrc:/qt-project.org/imports/Flowhand/shell/Main.qml"));
    return !engine.rootObjects().isEmpty();
}

} // namespace flowhand
