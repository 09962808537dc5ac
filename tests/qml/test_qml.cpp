#include <algorithm>
#include <cmath>

#include <QAccessible>
#include <QPalette>
#include <QQmlEngine>
#include <QQuickItem>
#include <QQuickView>
#include <QtTest>

#include "stubrun.h"
#include "window.h"

using namespace flowhand;

namespace {

QStringList g_warnings; // Qt's message handler has no other place to put them

/// Qt 6.4's list view says the excepted one of itself when rows go while it makes them, faster than a person's keys.
void noteWarning(QtMsgType type, const QMessageLogContext&, const QString& message) {
    if (type != QtDebugMsg && type != QtInfoMsg && !message.startsWith("DelegateModel::cancel: index out range"))
        g_warnings.append(message);
}

/// The whole window in one state, without a display.
class ShownStage {
public:
    ShownStage(const QString& state, const char* theme, QSize size = {1280, 800}) : stage(state) {
        stage.fill(view);
        test::tokensOf(*view.engine())->setProperty("theme", theme);
        view.resize(size);
        view.show();
        QCoreApplication::processEvents();
        for (const int key : stage.keys())
            QTest::keyClick(&view, static_cast<Qt::Key>(key));
    }

    [[nodiscard]] QList<QQuickItem*> items() const {
        QList<QQuickItem*> all;
        collect(view.rootObject(), all);
        return all;
    }

    test::Stage stage;
    QQuickView view;

private:
    static void collect(QQuickItem* item, QList<QQuickItem*>& all) {
        if (item == nullptr || !item->isVisible() || item->opacity() <= 0)
            return;
        all.append(item);
        for (QQuickItem* child : item->childItems())
            collect(child, all);
    }
};

QString accessibleName(QQuickItem* item) {
    QAccessibleInterface* interface = QAccessible::queryAccessibleInterface(item);
    return interface != nullptr ? interface->text(QAccessible::Name) : QString();
}

/// Relative luminance and contrast ratio: W3C, Web Content Accessibility Guidelines 2.1, 'relative luminance' and
/// 'contrast ratio'.
double luminance(const QColor& color) {
    const auto linear = [](double share) {
        return share <= 0.03928 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(color.redF()) + 0.7152 * linear(color.greenF()) + 0.0722 * linear(color.blueF());
}

double contrast(const QColor& a, const QColor& b) {
    const double lighter = std::max(luminance(a), luminance(b));
    const double darker = std::min(luminance(a), luminance(b));
    return (lighter + 0.05) / (darker + 0.05);
}

/// What is scrolled is reached by scrolling: Tab takes the view along.
bool isScrolled(const QQuickItem* item) {
    for (const QQuickItem* around = item->parentItem(); around != nullptr; around = around->parentItem())
        if (around->inherits("QQuickFlickable") && around->property("contentHeight").toDouble() > around->height())
            return true;
    return false;
}

const QString kFooterNote = "Flowhand is a hobby trainer and is not for real-world flight training.";

} // namespace

class TestQml : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void loadsWithoutWarning_data() { everyState(); }
    void loadsWithoutWarning();
    void isAccessible_data() { everyState(); }
    void isAccessible();
    void showsTheTrainingNote_data() { everyState(); }
    void showsTheTrainingNote();
    void hasOnePrimaryAction_data() { everyState(); }
    void hasOnePrimaryAction();
    void keepsInsideTheWindow_data();
    void keepsInsideTheWindow();
    void dueStepIsReadable_data();
    void dueStepIsReadable();
    void colourContrast_data();
    void colourContrast();
    void themeFollowsTheSetting();
    void generalKeys_data();
    void generalKeys();
    void arrowsChooseAFlow();
    void theChosenCardIsInView();
    void aFeedIsWrittenDown();
    void pagesChangeWhatIsListed();
    void escapeAndReturnLeaveTheStart();
    void theGroundStandsBesideTheDueStep_data();
    void theGroundStandsBesideTheDueStep();
    void slowTimeIsShown();
    void aJumpIsPickedByKeys();
    void keySheetAndCockpitAreToggled();
    void controlKeysMoveControls();
    void tabVisitsEveryControl();
    void arrowsMoveTheFocusedControl();
    void mouseDragsAControl();
    void verdictStandsBesideTheNextStep();
    void stepsWithOtherControlsFollowEachOther();
    void benchKeys();
    void benchTasksHaveKeys_data();
    void benchTasksHaveKeys();
    void benchWiresAnotherWay();
    void benchTakesTrueValues();
    void benchFiltersAreUsedAndTakenBack();
    void benchTolerancesAreSet();
    void benchWordsAreWhole_data();
    void benchWordsAreWhole();
    void benchQuestionIsAnswered();
    void benchSheetIsSavedAndOpened();
    void soundHasAKey();
    void placesAreLeftBetweenRunsOnly();
    void reviewOpensByKeys();
    void reviewDeviationsHaveFigures();
    void reviewNoteTakesTwoKeys();
    void reviewPanelsHaveKeys();
    void reviewIsScrubbedAndZoomedByMouse();
    void reviewSearchTakesLetters();

private:
    static void everyState();
};

void TestQml::initTestCase() {
    registerQmlTypes();
    QAccessible::setActive(true);
}

void TestQml::everyState() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<QString>("theme");
    for (const QString& state : test::Stage::names())
        for (const char* theme : {"dark", "light"})
            QTest::newRow(qPrintable(state + ", " + theme)) << state << QString(theme);
}

void TestQml::loadsWithoutWarning() {
    QFETCH(QString, state);
    QFETCH(QString, theme);
    g_warnings.clear();
    const QtMessageHandler before = qInstallMessageHandler(noteWarning);
    {
        const ShownStage shown(state, qPrintable(theme));
        QVERIFY(shown.view.rootObject() != nullptr);
    }
    qInstallMessageHandler(before);
    QCOMPARE(g_warnings, QStringList());
}

void TestQml::isAccessible() {
    QFETCH(QString, state);
    QFETCH(QString, theme);
    const ShownStage shown(state, qPrintable(theme));
    int focusable = 0;
    for (QQuickItem* item : shown.items()) {
        if (!item->activeFocusOnTab())
            continue;
        ++focusable;
        QVERIFY2(!accessibleName(item).isEmpty(), item->metaObject()->className());
    }
    QVERIFY(focusable > 0);
}

void TestQml::showsTheTrainingNote() {
    QFETCH(QString, state);
    QFETCH(QString, theme);
    const ShownStage shown(state, qPrintable(theme), {1024, 640});
    int notes = 0;
    for (QQuickItem* item : shown.items())
        if (item->property("text").toString() == kFooterNote) {
            ++notes;
            QVERIFY(!item->property("truncated").toBool());
            const QRectF place = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
            QVERIFY(QRectF(0, 0, 1024, 640).contains(place));
        }
    QCOMPARE(notes, 1);
}

void TestQml::hasOnePrimaryAction() {
    QFETCH(QString, state);
    QFETCH(QString, theme);
    const ShownStage shown(state, qPrintable(theme));
    int primary = 0;
    for (QQuickItem* item : shown.items())
        if (item->property("primary").toBool() && item->inherits("QQuickButton") && item->isEnabled())
            ++primary;
    QVERIFY2(primary <= 1, qPrintable(QString::number(primary)));
}

void TestQml::keepsInsideTheWindow_data() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<QSize>("size");
    for (const QString& state : test::Stage::names())
        for (const QSize size : {QSize(1024, 640), QSize(1280, 800), QSize(1920, 1080), QSize(3840, 2160)})
            QTest::newRow(qPrintable(QString("%1 at %2").arg(state).arg(size.width()))) << state << size;
}

void TestQml::keepsInsideTheWindow() {
    QFETCH(QString, state);
    QFETCH(QSize, size);
    const ShownStage shown(state, "dark", size);
    const QRectF window(QPointF(), size);
    for (QQuickItem* item : shown.items()) {
        if (!item->inherits("QQuickButton"))
            continue;
        QRectF place = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
        if (isScrolled(item))
            place.moveTop(0);
        QVERIFY2(window.contains(place), qPrintable(item->property("text").toString()));
    }
}

void TestQml::dueStepIsReadable_data() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<int>("height");
    for (const char* state :
         {"due-switch", "due-gate", "due-levers", "due-reply", "due-dial", "due-wheel", "due-pedals"})
        for (const int height : {640, 800, 1080, 2160})
            QTest::newRow(qPrintable(QString("%1 at %2").arg(state).arg(height))) << QString(state) << height;
}

void TestQml::dueStepIsReadable() {
    QFETCH(QString, state);
    QFETCH(int, height);
    ShownStage shown(state, "dark", {height * 16 / 10, height});
    const QString title = shown.stage.fly().run()->dueTitle();
    for (QQuickItem* item : shown.items())
        if (item->property("text").toString() == title) {
            const double size = item->property("font").value<QFont>().pixelSize();
            QVERIFY2(size >= std::max(44.0, height / 16.0), qPrintable(QString::number(size)));
            QVERIFY(!item->property("truncated").toBool());
            return;
        }
    QFAIL("the due step is not shown");
}

void TestQml::colourContrast_data() {
    QTest::addColumn<QString>("theme");
    QTest::addColumn<QString>("ink");
    QTest::addColumn<QString>("ground");
    QTest::addColumn<double>("least");
    // Levels of W3C, WCAG 2.1: 1.4.3 (text, 4.5) and 1.4.11 (parts of controls, 3).
    const auto add = [](const char* theme, const char* ink, const char* ground, double least) {
        QTest::newRow(qPrintable(QString("%1: %2 on %3").arg(theme, ink, ground)))
            << QString(theme) << QString(ink) << QString(ground) << least;
    };
    for (const char* theme : {"dark", "light"}) {
        for (const char* ground : {"ground", "raised", "sunken"}) {
            for (const char* ink : {"text", "quiet", "accent", "done", "late", "wrong", "unsure", "info"})
                add(theme, ink, ground, 4.5);
            add(theme, "line", ground, 3.0);
        }
        add(theme, "accentText", "accent", 4.5);
        add(theme, "raised", "text", 4.5);
    }
}

void TestQml::colourContrast() {
    QFETCH(QString, theme);
    QFETCH(QString, ink);
    QFETCH(QString, ground);
    QFETCH(double, least);
    QQmlEngine engine;
    QObject* tokens = test::tokensOf(engine);
    tokens->setProperty("theme", theme);
    const double ratio = contrast(tokens->property(qPrintable(ink)).value<QColor>(),
                                  tokens->property(qPrintable(ground)).value<QColor>());
    QVERIFY2(ratio >= least, qPrintable(QString::number(ratio)));
}

void TestQml::themeFollowsTheSetting() {
    QQmlEngine engine;
    QObject* tokens = test::tokensOf(engine);
    tokens->setProperty("theme", "light");
    QVERIFY(!tokens->property("isDark").toBool());
    tokens->setProperty("theme", "dark");
    QVERIFY(tokens->property("isDark").toBool());
    tokens->setProperty("theme", "system");
    QPalette palette;
    palette.setColor(QPalette::Window, Qt::black);
    QGuiApplication::setPalette(palette);
    QTRY_VERIFY(tokens->property("isDark").toBool());
    palette.setColor(QPalette::Window, Qt::white);
    QGuiApplication::setPalette(palette);
    QTRY_VERIFY(!tokens->property("isDark").toBool());
}

void TestQml::generalKeys_data() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<int>("key");
    QTest::addColumn<int>("command");
    const auto add = [](const char* state, Qt::Key key, CommandKind command) {
        QTest::newRow(qPrintable(QString("%1, %2").arg(state).arg(key)))
            << QString(state) << static_cast<int>(key) << static_cast<int>(command);
    };
    add("set-up-ready", Qt::Key_Return, CommandKind::Start);
    add("due-gate", Qt::Key_F2, CommandKind::Hold);
    add("due-gate", Qt::Key_F3, CommandKind::Repeat);
    add("due-gate", Qt::Key_F8, CommandKind::Stop);
    add("due-gate", Qt::Key_F7, CommandKind::Hold);
    add("held", Qt::Key_F2, CommandKind::Resume);
    add("held", Qt::Key_Return, CommandKind::Resume);
}

void TestQml::generalKeys() {
    QFETCH(QString, state);
    QFETCH(int, key);
    QFETCH(int, command);
    ShownStage shown(state, "dark");
    QTest::keyClick(&shown.view, static_cast<Qt::Key>(key));
    const std::vector<CommandKind>& told = shown.stage.maker().told->commands;
    QCOMPARE(told.size(), std::size_t(1));
    QCOMPARE(static_cast<int>(told.front()), command);
}

void TestQml::arrowsChooseAFlow() {
    ShownStage shown("choosing", "dark");
    QTest::keyClick(&shown.view, Qt::Key_Right);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QCOMPARE(shown.stage.maker().last.flow->id, std::string("take_off"));
}

void TestQml::theChosenCardIsInView() {
    ShownStage shown("choosing-many", "dark", {1024, 640});
    const int all = shown.stage.fly().flows()->rowCount();
    QCOMPARE(all, 15);
    for (int row = 1; row < all; ++row) {
        QTest::keyClick(&shown.view, Qt::Key_Right);
        QCoreApplication::processEvents();
        const QList<QQuickItem*> items = shown.items();
        const auto button = std::find_if(items.begin(), items.end(), [](QQuickItem* item) {
            return item->property("primary").toBool() && item->isEnabled();
        });
        QVERIFY(button != items.end());
        const QRectF place = (*button)->mapRectToScene(QRectF(0, 0, (*button)->width(), (*button)->height()));
        QVERIFY2(QRectF(0, 0, 1024, 640).contains(place), qPrintable(QString::number(row)));
    }
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QVERIFY(shown.stage.maker().last.flow == &shown.stage.flow(all - 1));
}

void TestQml::aFeedIsWrittenDown() {
    ShownStage shown("choosing", "dark");
    FeedPresenter& feed = *shown.stage.fly().feed();
    feed.setEditing(true);
    for (const char key : std::string("json:"))
        QTest::keyClick(&shown.view, key);
    QTest::keyClick(&shown.view, Qt::Key_Return); // tries it
    QVERIFY(feed.isEditing() && !feed.problem().isEmpty());
    QVERIFY(!shown.stage.maker().last.flow);
    QTest::keyClick(&shown.view, Qt::Key_Escape);
    QVERIFY(!feed.isEditing());
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QVERIFY(shown.stage.maker().last.flow != nullptr);
}

void TestQml::pagesChangeWhatIsListed() {
    ShownStage shown("choosing-many", "dark");
    QTest::keyClick(&shown.view, Qt::Key_Right);
    QTest::keyClick(&shown.view, Qt::Key_PageDown);
    QCOMPARE(shown.stage.fly().group(), 1);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QVERIFY(shown.stage.maker().last.scenario != nullptr);
    QCOMPARE(shown.stage.maker().last.scenario->title, std::string("Engine failure before V1")); // the first again
}

void TestQml::escapeAndReturnLeaveTheStart() {
    ShownStage shown("choosing-start", "dark");
    QTest::keyClick(&shown.view, Qt::Key_Down); // in the list of places
    QCOMPARE(shown.stage.fly().start()->words(),
             QString("Thousand feet, with “Thrust levers to take-off thrust”, 2 times slower"));
    QTest::keyClick(&shown.view, Qt::Key_Escape);
    QVERIFY(!shown.stage.fly().start()->isEditing());
    shown.stage.fly().start()->setEditing(true);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QVERIFY(!shown.stage.fly().start()->isEditing());
    QVERIFY(shown.stage.maker().last.flow == nullptr); // not flown yet
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QCOMPARE(shown.stage.maker().last.place, std::string("thousand_feet"));
}

void TestQml::theGroundStandsBesideTheDueStep_data() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<int>("cards");
    QTest::newRow("rolling") << "taxiing" << 1;
    QTest::newRow("rolling, the controls are real") << "taxiing-with-rig" << 1;
    QTest::newRow("a feed moves the aircraft") << "due-gate" << 0;
}

void TestQml::theGroundStandsBesideTheDueStep() {
    QFETCH(QString, state);
    QFETCH(int, cards);
    for (const QSize size : {QSize(1024, 640), QSize(1280, 800), QSize(1920, 1080)}) {
        const ShownStage shown(state, "dark", size);
        QList<QRectF> grounds;
        QRectF due;
        for (QQuickItem* item : shown.items()) {
            const QRectF place = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
            const QString type = item->metaObject()->className();
            if (type.startsWith("GroundCard"))
                grounds << place;
            if (type.startsWith("DueCard"))
                due = place;
        }
        QCOMPARE(grounds.size(), cards);
        for (const QRectF& ground : grounds) {
            QVERIFY(!ground.intersects(due));
            QVERIFY(QRectF(QPointF(), size).contains(ground));
            QVERIFY(ground.width() >= 200 && ground.height() >= 150);
        }
    }
}

void TestQml::slowTimeIsShown() {
    const auto isShown = [](const char* state) {
        const ShownStage shown(state, "dark");
        const QList<QQuickItem*> items = shown.items();
        return std::any_of(items.begin(), items.end(), [](const QQuickItem* item) {
            return item->property("text").toString() == "times slower";
        });
    };
    QVERIFY(isShown("slow"));
    QVERIFY(!isShown("taxiing"));
}

void TestQml::aJumpIsPickedByKeys() {
    ShownStage shown("held", "dark");
    QTest::keyClick(&shown.view, Qt::Key_F7); // begins at the step that is due, the second
    QTest::keyClick(&shown.view, Qt::Key_Down);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QCOMPARE(shown.stage.maker().told->commands, std::vector<CommandKind>{CommandKind::Jump});
    QCOMPARE(shown.stage.maker().told->texts.back(), std::string("thrust"));
    QTest::keyClick(&shown.view, Qt::Key_F7);
    QTest::keyClick(&shown.view, Qt::Key_F7); // stays
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QCOMPARE(shown.stage.maker().told->commands.back(), CommandKind::Resume);
}

void TestQml::keySheetAndCockpitAreToggled() {
    ShownStage shown("due-gate", "dark");
    const auto count = [&shown](const char* type) {
        int found = 0;
        for (QQuickItem* item : shown.items())
            found += QString(item->metaObject()->className()).startsWith(type) ? 1 : 0;
        return found;
    };
    QCOMPARE(count("KeySheet"), 0);
    QTest::keyClick(&shown.view, Qt::Key_F1);
    QCOMPARE(count("KeySheet"), 1);
    QTest::keyClick(&shown.view, Qt::Key_F1);
    QCOMPARE(count("KeySheet"), 0);
    QCOMPARE(count("ControlPanel"), 1);
    QTest::keyClick(&shown.view, Qt::Key_F4);
    QCOMPARE(count("ControlPanel"), 0);
}

void TestQml::controlKeysMoveControls() {
    ShownStage shown("due-reply", "dark");
    const Aircraft& aircraft = shown.stage.aircraft();
    QTest::keyPress(&shown.view, Qt::Key_Space);
    QTest::keyRelease(&shown.view, Qt::Key_Space);
    QTest::keyClick(&shown.view, Qt::Key_L);
    const auto& moves = shown.stage.maker().told->moves;
    QCOMPARE(moves.size(), std::size_t(3));
    QCOMPARE(moves[0].first, *aircraft.signals.find("reply_button"));
    QVERIFY(moves[0].second == Value::onOff(true));
    QVERIFY(moves[1].second == Value::onOff(false));
    QCOMPARE(moves[2].first, *aircraft.signals.find("flap_lever"));
    QVERIFY(moves[2].second == Value::position(2));
}

void TestQml::tabVisitsEveryControl() {
    ShownStage shown("due-gate", "dark");
    QSet<QString> visited;
    for (int presses = 0; presses < 60; ++presses) {
        QTest::keyClick(&shown.view, Qt::Key_Tab);
        if (QQuickItem* item = shown.view.activeFocusItem())
            visited.insert(accessibleName(item));
    }
    for (const ControlState* control : shown.stage.fly().panel()->controls()->shown())
        QVERIFY2(visited.contains(control->label()), qPrintable(control->label()));
    for (const char* button : {"Hold", "Repeat", "Stop", "Keys", "Controls"})
        QVERIFY2(visited.contains(button), button);
}

void TestQml::arrowsMoveTheFocusedControl() {
    ShownStage shown("due-gate", "dark");
    for (int presses = 0; presses < 60; ++presses) {
        QTest::keyClick(&shown.view, Qt::Key_Tab);
        if (accessibleName(shown.view.activeFocusItem()) == "Flap lever")
            break;
    }
    QTest::keyClick(&shown.view, Qt::Key_Down);
    const auto& moves = shown.stage.maker().told->moves;
    QCOMPARE(moves.size(), std::size_t(1));
    QVERIFY(moves[0].second == Value::position(2));
}

void TestQml::mouseDragsAControl() {
    ShownStage shown("due-gate", "dark");
    QQuickItem* lever = nullptr;
    for (QQuickItem* item : shown.items())
        if (QString(item->metaObject()->className()).startsWith("ScreenControl") &&
            accessibleName(item) == "Thrust lever 1")
            lever = item;
    QVERIFY(lever != nullptr);
    const QPoint bottom = lever->mapToScene(QPointF(lever->width() / 2, lever->height() - 10)).toPoint();
    QTest::mousePress(&shown.view, Qt::LeftButton, {}, bottom);
    QTest::mouseMove(&shown.view, bottom - QPoint(0, 200));
    QTest::mouseRelease(&shown.view, Qt::LeftButton, {}, bottom - QPoint(0, 200));
    const auto& moves = shown.stage.maker().told->moves;
    QVERIFY(moves.size() >= 2);
    QVERIFY(moves.front().second.number() < 15.0);
    QVERIFY(moves.back().second == Value::number(100.0));
}

void TestQml::verdictStandsBesideTheNextStep() {
    ShownStage shown("verdict", "dark");
    QStringList words;
    for (QQuickItem* item : shown.items())
        words.append(item->property("text").toString());
    QVERIFY(words.contains("late"));
    QVERIFY(words.contains(shown.stage.fly().run()->dueTitle()));
}

/// Each with the drawings and lines of its controls, after each other one, while the window is drawn.
void TestQml::stepsWithOtherControlsFollowEachOther() {
    ShownStage shown("due-switch", "dark");
    RunSnapshot& snapshot = shown.stage.maker().snapshot;
    const StepView open = snapshot.session.steps[0];
    const int count = static_cast<int>(shown.stage.flow().steps.size());
    for (int turn = 0; turn < count * count; ++turn) {
        const int due = turn % 2 == 0 ? turn / count : turn % count;
        for (StepView& step : snapshot.session.steps)
            step = StepView();
        snapshot.session.steps[static_cast<std::size_t>(due)] = open;
        snapshot.session.due = {due};
        shown.stage.fly().refresh();
        QVERIFY(QSignalSpy(&shown.view, &QQuickWindow::frameSwapped).wait());
        QString title = shown.stage.fly().run()->dueTitle();
        QCOMPARE(title.remove(QChar(0x2060)), // which holds its words together
                 QString::fromStdString(shown.stage.flow().steps[static_cast<std::size_t>(due)].title));
    }
}

void TestQml::benchKeys() {
    ShownStage shown("bench", "dark");
    QTest::keyClick(&shown.view, Qt::Key_Down);
    QCOMPARE(shown.stage.bench().chosen(), 1);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    const auto& begun = shown.stage.benchMaker().told->begun;
    QCOMPARE(begun.size(), std::size_t(1));
    QCOMPARE(static_cast<int>(begun[0].task), static_cast<int>(BenchPresenter::Measure));
    QVERIFY(begun[0].signal == shown.stage.aircraft().controls[1].signal);

    ShownStage walking("bench-walking", "dark");
    QTest::keyClick(&walking.view, Qt::Key_Return);
    QTest::keyClick(&walking.view, Qt::Key_Escape);
    QCOMPARE(walking.stage.benchMaker().told->nexts, 1);
    QCOMPARE(walking.stage.benchMaker().told->cancels, 1);
}

void TestQml::benchTasksHaveKeys_data() {
    QTest::addColumn<int>("key");
    QTest::addColumn<int>("task");
    QTest::newRow("wire") << int(Qt::Key_W) << int(BenchPresenter::Wire);
    QTest::newRow("calibrate") << int(Qt::Key_C) << int(BenchPresenter::Calibrate);
    QTest::newRow("check again") << int(Qt::Key_R) << int(BenchPresenter::Check);
    QTest::newRow("measure") << int(Qt::Key_M) << int(BenchPresenter::Measure);
    QTest::newRow("walk") << int(Qt::Key_K) << int(BenchPresenter::Walk);
}

void TestQml::benchTasksHaveKeys() {
    QFETCH(int, key);
    QFETCH(int, task);
    ShownStage shown("bench", "dark");
    QTest::keyClick(&shown.view, static_cast<Qt::Key>(key));
    const std::vector<BenchWish>& begun = shown.stage.benchMaker().told->begun;
    QCOMPARE(begun.size(), std::size_t(1));
    QCOMPARE(static_cast<int>(begun.front().task), task);
    // While one goes on, no other one is begun by a slip.
    ShownStage busy("bench-walking", "dark");
    QTest::keyClick(&busy.view, static_cast<Qt::Key>(key));
    QVERIFY(busy.stage.benchMaker().told->begun.empty());
}

void TestQml::benchWiresAnotherWay() {
    ShownStage shown("bench", "dark");
    QTest::keyClick(&shown.view, Qt::Key_O);
    QTest::keyClick(&shown.view, Qt::Key_Down);
    QTest::keyClick(&shown.view, Qt::Key_Right);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    const std::vector<BenchWish>& begun = shown.stage.benchMaker().told->begun;
    QCOMPARE(begun.size(), std::size_t(1));
    QCOMPARE(begun.front().words, std::string("thrust_lever_1+reverse_lever_1=split_axis"));
    QTest::keyClick(&shown.view, Qt::Key_O);
    QTest::keyClick(&shown.view, Qt::Key_Escape);
    QTest::keyClick(&shown.view, Qt::Key_Down); // the list of controls has the keys again
    QCOMPARE(shown.stage.bench().chosen(), 1);
}

void TestQml::benchTakesTrueValues() {
    ShownStage shown("bench", "dark");
    QTest::keyClick(&shown.view, Qt::Key_V);
    for (const char key : QByteArray("0 %, 40 %, 100 %"))
        QTest::keyClick(&shown.view, key);
    QVERIFY(shown.stage.benchMaker().told->begun.empty());
    QTest::keyClick(&shown.view, Qt::Key_Return);
    const std::vector<BenchWish>& begun = shown.stage.benchMaker().told->begun;
    QCOMPARE(begun.size(), std::size_t(1));
    QCOMPARE(static_cast<int>(begun.front().task), static_cast<int>(BenchPresenter::Calibrate));
    QCOMPARE(begun.front().words, std::string("0 %, 40 %, 100 %"));
}

void TestQml::benchFiltersAreUsedAndTakenBack() {
    ShownStage shown("bench-filters", "dark");
    QTest::keyClick(&shown.view, Qt::Key_U); // nothing was changed yet
    QTest::keyClick(&shown.view, Qt::Key_A);
    const std::vector<BenchWish>& begun = shown.stage.benchMaker().told->begun;
    QCOMPARE(begun.size(), std::size_t(1));
    QCOMPARE(static_cast<int>(begun.front().task), static_cast<int>(BenchPresenter::ApplyFilters));
    QVERIFY2(shown.stage.bench().filterChange().contains("Late by 21 ms"),
             qPrintable(shown.stage.bench().filterChange()));
    QVERIFY2(shown.stage.bench().filterWords().contains("100 ms are allowed"),
             qPrintable(shown.stage.bench().filterWords()));
    ShownStage applied("bench-applied", "dark");
    QTest::keyClick(&applied.view, Qt::Key_A); // there is nothing left to change
    QTest::keyClick(&applied.view, Qt::Key_U);
    const std::vector<BenchWish>& undone = applied.stage.benchMaker().told->begun;
    QCOMPARE(undone.size(), std::size_t(1));
    QCOMPARE(static_cast<int>(undone.front().task), static_cast<int>(BenchPresenter::UndoFilters));
}

void TestQml::benchTolerancesAreSet() {
    ShownStage shown("bench", "dark");
    QTest::keyClick(&shown.view, Qt::Key_T);
    for (const char key : QByteArray("1.5 deg"))
        QTest::keyClick(&shown.view, key);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    const std::vector<BenchWish>& begun = shown.stage.benchMaker().told->begun;
    QCOMPARE(begun.size(), std::size_t(1));
    QCOMPARE(static_cast<int>(begun.front().task), static_cast<int>(BenchPresenter::SetTolerances));
    QCOMPARE(begun.front().words, std::string("1.5 deg, 5 deg, 3 %"));
}

void TestQml::benchWordsAreWhole_data() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<QSize>("size");
    for (const QString& state : test::Stage::names())
        for (const QSize size : {QSize(1024, 640), QSize(1280, 800), QSize(1920, 1080)})
            if (state.startsWith("bench"))
                QTest::newRow(qPrintable(QString("%1 at %2").arg(state).arg(size.width()))) << state << size;
}

/// No button of the bench lies over another one or outside of what it stands in, and no instruction is cut.
void TestQml::benchWordsAreWhole() {
    QFETCH(QString, state);
    QFETCH(QSize, size);
    ShownStage shown(state, "dark", size);
    for (int frame = 0; frame < 2; ++frame) { // layouts within layouts settle with the third frame
        (void)shown.view.grabWindow();
        QCoreApplication::processEvents();
    }
    QList<QPair<QString, QRectF>> buttons;
    for (QQuickItem* item : shown.items()) {
        const QRectF place = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
        if (item->property("text").toString() == shown.stage.bench().ask() && !shown.stage.bench().ask().isEmpty())
            QVERIFY2(!item->property("truncated").toBool(), qPrintable(shown.stage.bench().ask()));
        if (!item->inherits("QQuickButton"))
            continue;
        const QString text = item->property("text").toString();
        QVERIFY2(item->width() + 0.5 >= item->implicitWidth(), qPrintable(text));
        for (const auto& [other, taken] : buttons)
            QVERIFY2(!taken.intersects(place), qPrintable(text + " over " + other));
        buttons.append({text, place});
        for (QQuickItem* around = item->parentItem(); around != nullptr; around = around->parentItem()) {
            const QRectF room = around->mapRectToScene(QRectF(0, 0, around->width(), around->height()));
            if (around->inherits("QQuickRectangle") || around->clip())
                QVERIFY2(room.adjusted(-1, -1, 1, 1).contains(place), qPrintable(text));
        }
    }
    QVERIFY(!buttons.isEmpty());
}

void TestQml::benchQuestionIsAnswered() {
    ShownStage shown("bench-question", "dark");
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QCOMPARE(shown.stage.benchMaker().told->nexts, 1);
}

void TestQml::benchSheetIsSavedAndOpened() {
    ShownStage shown("bench", "dark");
    QTest::keyClick(&shown.view, Qt::Key_P);
    QVERIFY(shown.stage.benchMaker().told->shown.empty());
    QTest::keyClick(&shown.view, Qt::Key_S);
    QTest::keyClick(&shown.view, Qt::Key_P);
    QCOMPARE(shown.stage.benchMaker().told->shown,
             std::vector<std::string>{"/home/pilot/.local/share/flowhand/rigs/desk.html"});
}

void TestQml::soundHasAKey() {
    ShownStage shown("due-gate", "dark");
    QTest::keyClick(&shown.view, Qt::Key_F9);
    QCOMPARE(shown.stage.sound().words(), QString("Sound: quiet"));
    bool isShown = false;
    for (QQuickItem* item : shown.items())
        isShown = isShown || (item->inherits("QQuickButton") && accessibleName(item) == "Sound: quiet");
    QVERIFY(isShown);
}

void TestQml::placesAreLeftBetweenRunsOnly() {
    ShownStage choosing("choosing", "dark");
    QTest::keyClick(&choosing.view, Qt::Key_2, Qt::ControlModifier);
    QCOMPARE(choosing.view.rootObject()->property("place").toInt(), 1);
    QVERIFY(choosing.stage.bench().isOpen());
    QTest::keyClick(&choosing.view, Qt::Key_1, Qt::ControlModifier);
    QCOMPARE(choosing.view.rootObject()->property("place").toInt(), 0);
    QTRY_VERIFY(!choosing.stage.bench().isOpen());

    ShownStage running("due-gate", "dark");
    QTest::keyClick(&running.view, Qt::Key_2, Qt::ControlModifier);
    QCOMPARE(running.view.rootObject()->property("place").toInt(), 0);
}

void TestQml::reviewOpensByKeys() {
    ShownStage shown("review-list", "dark");
    ReviewPresenter& review = shown.stage.review();
    QTest::keyClick(&shown.view, Qt::Key_Down);
    QCOMPARE(review.chosen(), 1);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QCOMPARE(int(review.stage()), int(ReviewPresenter::Reviewing));
    QTest::keyClick(&shown.view, Qt::Key_Space);
    QVERIFY(review.run()->timeline()->isPlaying());
    QTest::keyClick(&shown.view, Qt::Key_1, Qt::ControlModifier); // what plays is stopped when the place is left
    QVERIFY(!review.run()->timeline()->isPlaying());
    QTest::keyClick(&shown.view, Qt::Key_3, Qt::ControlModifier);
    QCOMPARE(shown.view.rootObject()->property("place").toInt(), 2);
    QTest::keyClick(&shown.view, Qt::Key_Escape);
    QCOMPARE(int(review.stage()), int(ReviewPresenter::Listing));
}

void TestQml::reviewDeviationsHaveFigures() {
    ShownStage shown("review", "dark");
    RunReview& run = *shown.stage.review().run();
    const std::vector<Deviation>& deviations = run.debrief().timeline().deviations();
    QVERIFY(deviations.size() >= 3 && deviations.size() <= 9);
    for (std::size_t i = deviations.size(); i-- > 0;) {
        QTest::keyClick(&shown.view, static_cast<Qt::Key>(Qt::Key_1 + int(i)));
        QCOMPARE(run.chosenDeviation(), int(i));
        QCOMPARE(run.timeline()->heldTime(), deviations[i].time);
    }
    QTest::keyClick(&shown.view, Qt::Key_Down);
    QCOMPARE(run.chosenDeviation(), 1);
}

void TestQml::reviewNoteTakesTwoKeys() {
    ShownStage shown("review", "dark");
    ReviewPresenter& review = shown.stage.review();
    review.run()->timeline()->hold(20);
    QTest::keyClick(&shown.view, Qt::Key_N);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QCOMPARE(review.notes()->notes().size(), std::size_t(1));
    const Note& note = review.notes()->notes().front();
    QCOMPARE(note.anchor.time, Time(std::chrono::seconds(20)));
    // The keys are the timeline's again.
    QTest::keyClick(&shown.view, Qt::Key_End);
    QCOMPARE(review.run()->timeline()->now(), review.run()->timeline()->length());
    QTest::keyClick(&shown.view, Qt::Key_N);
    for (const char letter : QByteArray("slow"))
        QTest::keyClick(&shown.view, letter);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QCOMPARE(review.notes()->notes().back().text, std::string("slow"));
    QTest::keyClick(&shown.view, Qt::Key_N);
    QTest::keyClick(&shown.view, Qt::Key_Escape);
    QCOMPARE(review.notes()->notes().size(), std::size_t(2));
    QCOMPARE(int(review.stage()), int(ReviewPresenter::Reviewing));
}

void TestQml::reviewPanelsHaveKeys() {
    ShownStage shown("review", "dark");
    const auto isShown = [&shown](const char* type) {
        for (QQuickItem* item : shown.items())
            if (QString(item->metaObject()->className()).startsWith(type))
                return true;
        return false;
    };
    QVERIFY(isShown("DeviationList"));
    const std::pair<Qt::Key, const char*> panels[] = {{Qt::Key_F3, "ReviewStepList"}, {Qt::Key_F4, "NotesPanel"},
                                                      {Qt::Key_F5, "CompareTable"},   {Qt::Key_F6, "SignalChooser"},
                                                      {Qt::Key_F8, "RunRemarks"},     {Qt::Key_F2, "DeviationList"}};
    for (const auto& [key, type] : panels) {
        QTest::keyClick(&shown.view, key);
        QVERIFY2(isShown(type), type);
    }
}

void TestQml::reviewIsScrubbedAndZoomedByMouse() {
    ShownStage shown("review", "dark");
    ReviewTimeline& timeline = *shown.stage.review().run()->timeline();
    QQuickItem* plot = nullptr;
    for (QQuickItem* item : shown.items())
        if (QString(item->metaObject()->className()).startsWith("flowhand::TimeRuler"))
            plot = item;
    QVERIFY(plot != nullptr);
    const QPointF left = plot->mapToScene(QPointF(0, plot->height() / 2));
    const auto at = [&](double share) {
        return (left + QPointF(share * plot->width(), 0)).toPoint();
    };
    QTest::mousePress(&shown.view, Qt::LeftButton, {}, at(0.25));
    QVERIFY(std::abs(timeline.now() - 0.25 * timeline.length()) < 0.01 * timeline.length());
    QTest::mouseRelease(&shown.view, Qt::LeftButton, {}, at(0.25));
    QTest::mousePress(&shown.view, Qt::LeftButton, {}, at(0.75));
    QTest::mouseRelease(&shown.view, Qt::LeftButton, {}, at(0.75));
    QVERIFY(std::abs(timeline.now() - 0.75 * timeline.length()) < 0.01 * timeline.length());
    const double pointed = 0.5 * timeline.length();
    QWheelEvent wheel(at(0.5), at(0.5), {}, QPoint(0, 480), Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(&shown.view, &wheel);
    QVERIFY(timeline.to() - timeline.from() < 0.7 * timeline.length());
    QVERIFY(std::abs((timeline.from() + timeline.to()) / 2 - pointed) < 0.01 * timeline.length());
}

void TestQml::reviewSearchTakesLetters() {
    ShownStage shown("review-list", "dark");
    ReviewPresenter& review = shown.stage.review();
    const int all = review.runs()->count();
    QTest::keyClick(&shown.view, Qt::Key_F);
    for (const char letter : QByteArray("drt"))
        QTest::keyClick(&shown.view, letter);
    QCOMPARE(review.search(), QString("drt"));
    QVERIFY(!review.isDeletedShown());
    QCOMPARE(review.runs()->count(), 0);
    QTest::keyClick(&shown.view, Qt::Key_Escape);
    QCOMPARE(review.runs()->count(), all);
}

QTEST_MAIN(TestQml)
#include "test_qml.moc"
