#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include <QDir>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QQmlEngine>
#include <QQuickItem>
#include <QQuickView>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "presenter/language.h"
#include "stubrun.h"
#include "window.h"

using namespace flowhand;

namespace {

constexpr const char* kUsage =
    "flowhand_screens OUTDIR [STATE...]       writes a picture of each state, size and theme\n"
    "flowhand_screens --state STATE FILE      writes one, as the manual shows it\n"
    "flowhand_screens --compare STATE FILE    fails unless the state looks as it does there\n"
    "flowhand_screens --manual PAGES OUTDIR   copies the manual's pages and draws the pictures that they name\n"
    "flowhand_screens --language CODE ...     the same in another language: de\n";

/// The smallest window: its words are still to be read on a page.
constexpr QSize kPageSize(1024, 640);
/// Another version of a font moves the edges of letters: so large is a difference that an eye sees, and so few of the
/// picture's points may have one.
constexpr int kSeenDifference = 48;
constexpr double kMostDifferent = 0.005;
constexpr int kSmallestFile = 0; ///< of PNG: Qt's quality that packs best

struct Look {
    QString theme = QStringLiteral("light"); ///< as paper
    QSize size = kPageSize;
    double textScale = 1.0;
};

QImage drawn(const QString& state, const Look& look) {
    test::Stage stage(state);
    QQuickView view;
    stage.fill(view);
    QObject* tokens = test::tokensOf(*view.engine());
    tokens->setProperty("theme", look.theme);
    tokens->setProperty("textScale", look.textScale);
    view.resize(look.size);
    view.show();
    QCoreApplication::processEvents();
    for (const int key : stage.keys())
        for (const QEvent::Type type : {QEvent::KeyPress, QEvent::KeyRelease}) {
            QKeyEvent event(type, key, Qt::NoModifier);
            QCoreApplication::sendEvent(&view, &event);
        }
    for (int frame = 0; frame < 2; ++frame) { // layouts within layouts settle with the third frame
        (void)view.grabWindow();
        QCoreApplication::processEvents();
    }
    return view.grabWindow();
}

bool isState(const QString& name) {
    if (test::Stage::names().contains(name))
        return true;
    std::fprintf(stderr, "flowhand_screens: there is no state '%s'\n", qPrintable(name));
    return false;
}

bool drawEach(const QStringList& states, const QString& folder) {
    bool isWhole = QDir().mkpath(folder);
    const auto save = [&](const QString& state, const Look& look) {
        const QString file = QStringLiteral("%1/%2-%3-%4x%5%6.png")
                                 .arg(folder, state, look.theme)
                                 .arg(look.size.width())
                                 .arg(look.size.height())
                                 .arg(look.textScale > 1 ? "-200-percent" : "");
        isWhole = drawn(state, look).save(file) && isWhole;
    };
    for (const QString& state : states) {
        if (!isState(state))
            return false;
        for (const char* theme : {"dark", "light"}) {
            for (const QSize size : {QSize(1024, 640), QSize(1280, 800), QSize(1920, 1080)})
                save(state, {theme, size, 1.0});
            save(state, {theme, QSize(1280, 800), 2.0});
        }
    }
    return isWhole;
}

bool drawForPage(const QString& state, const QString& file) {
    return isState(state) && drawn(state, {}).save(file, "PNG", kSmallestFile);
}

bool looksAs(const QString& state, const QString& file) {
    const QImage there = QImage(file).convertToFormat(QImage::Format_RGB32);
    const QImage now = isState(state) ? drawn(state, {}).convertToFormat(QImage::Format_RGB32) : QImage();
    int different = there.size() == now.size() ? 0 : kPageSize.width() * kPageSize.height();
    for (int y = 0; y < now.height() && different < kPageSize.width() * kPageSize.height(); ++y)
        for (int x = 0; x < now.width(); ++x) {
            const QColor a = there.pixelColor(x, y);
            const QColor b = now.pixelColor(x, y);
            const int most =
                std::max({std::abs(a.red() - b.red()), std::abs(a.green() - b.green()), std::abs(a.blue() - b.blue())});
            different += most > kSeenDifference ? 1 : 0;
        }
    const bool isSame = different <= kMostDifferent * kPageSize.width() * kPageSize.height();
    if (!isSame)
        std::fprintf(stderr, "%s is not what the window looks like now; draw it anew with './check screens'\n",
                     qPrintable(file));
    return isSame;
}

/// What `out` held before goes: no picture is left that no page shows.
bool makeManual(const QString& pages, const QString& out) {
    if (!QDir(out).removeRecursively() || !QDir().mkpath(out + "/pictures"))
        return false;
    static const QRegularExpression picture(QStringLiteral("\\]\\((pictures/([a-z-]+)\\.png)\\)"));
    for (const QFileInfo& page : QDir(pages).entryInfoList({"*.md"}, QDir::Files)) {
        QFile text(page.filePath());
        if (!text.open(QIODevice::ReadOnly))
            return false;
        const QString words = QString::fromUtf8(text.readAll());
        if (!text.copy(out + "/" + page.fileName()))
            return false;
        for (auto named = picture.globalMatch(words); named.hasNext();) {
            const QRegularExpressionMatch match = named.next();
            if (!drawForPage(match.captured(2), out + "/" + match.captured(1)))
                return false;
        }
    }
    return true;
}

bool carryOut(const QStringList& words) {
    if (words.size() == 3 && words.front() == QLatin1String("--state"))
        return drawForPage(words.at(1), words.at(2));
    if (words.size() == 3 && words.front() == QLatin1String("--compare"))
        return looksAs(words.at(1), words.at(2));
    if (words.size() == 3 && words.front() == QLatin1String("--manual"))
        return makeManual(words.at(1), words.at(2));
    if (words.isEmpty() || words.front().startsWith(QLatin1Char('-'))) {
        std::fputs(kUsage, stderr);
        return false;
    }
    return drawEach(words.size() > 1 ? words.mid(1) : test::Stage::names(), words.front());
}

int carryOutIn(const QString& language, const QStringList& words) {
    const QTemporaryDir folder;
    Settings settings(folder.filePath("settings.toml"));
    settings.setLanguage(language);
    const Language translated(settings);
    return carryOut(words) ? 0 : 1;
}

} // namespace

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    const QGuiApplication app(argc, argv);
    registerQmlTypes();
    const QStringList words = app.arguments().mid(1);
    const bool isTranslated = words.size() > 2 && words.front() == QLatin1String("--language");
    return isTranslated ? carryOutIn(words.at(1), words.mid(2)) : carryOutIn(QStringLiteral("en"), words);
}
