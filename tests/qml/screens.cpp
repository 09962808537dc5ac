#include <cstdio>

#include <QDir>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QQmlEngine>
#include <QQuickItem>
#include <QQuickView>

#include "stubrun.h"
#include "window.h"

using namespace flowhand;

namespace {

bool grab(const QString& state, const QString& theme, const QSize& size, const QString& folder, double textScale) {
    test::Stage stage(state);
    QQuickView view;
    view.setResizeMode(QQuickView::SizeRootObjectToView);
    view.setInitialProperties(stage.properties());
    view.setSource(QUrl("qrc:/qt-project.org/imports/Flowhand/shell/Shell.qml"));
    QObject* tokens = test::tokensOf(*view.engine());
    tokens->setProperty("theme", theme);
    tokens->setProperty("textScale", textScale);
    view.resize(size);
    view.show();
    QCoreApplication::processEvents();
    for (const int key : stage.keys())
        for (const QEvent::Type type : {QEvent::KeyPress, QEvent::KeyRelease}) {
            QKeyEvent event(type, key, Qt::NoModifier);
            QCoreApplication::sendEvent(&view, &event);
        }
    const QString file = QStringLiteral("%1/%2-%3-%4x%5%6.png")
                             .arg(folder, state, theme)
                             .arg(size.width())
                             .arg(size.height())
                             .arg(textScale > 1 ? "-200-percent" : "");
    for (int frame = 0; frame < 2; ++frame) { // layouts within layouts settle with the third frame
        (void)view.grabWindow();
        QCoreApplication::processEvents();
    }
    return view.grabWindow().save(file);
}

} // namespace

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    const QGuiApplication app(argc, argv);
    registerQmlTypes();
    if (app.arguments().size() < 2) {
        std::fputs("flowhand_screens OUTDIR [STATE...]: writes a picture of each state, size and theme\n", stderr);
        return 1;
    }
    const QString folder = app.arguments().at(1);
    const QStringList states = app.arguments().size() > 2 ? app.arguments().mid(2) : test::Stage::names();
    QDir().mkpath(folder);
    bool isWhole = true;
    for (const QString& state : states)
        for (const char* theme : {"dark", "light"}) {
            for (const QSize size : {QSize(1024, 640), QSize(1280, 800), QSize(1920, 1080)})
                isWhole = grab(state, theme, size, folder, 1.0) && isWhole;
            isWhole = grab(state, theme, QSize(1280, 800), folder, 2.0) && isWhole;
        }
    return isWhole ? 0 : 1;
}
