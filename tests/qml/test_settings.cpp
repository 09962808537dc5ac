// What the pilot has chosen: the file it is kept in, and that it takes effect at once.

#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickView>
#include <QQuickWindow>
#include <QtTest>

#include "presenter/delaymeter.h"
#include "presenter/settingsfile.h"
#include "presenter/settingslinks.h"
#include "store/datahome.h"
#include "store/store.h"
#include "stubcockpit.h"
#include "stubrun.h"
#include "window.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

QByteArray contentOf(const QString& file) {
    QFile in(file);
    return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
}

void write(const QString& file, const QByteArray& text) {
    QFile out(file);
    QVERIFY(out.open(QIODevice::WriteOnly));
    out.write(text);
}

SettingsValues everythingChanged() {
    SettingsValues values;
    values.theme = "light";
    values.language = "de";
    values.textPercent = 170;
    values.motion = "reduced";
    values.length = "ft";
    values.sound = "quiet";
    values.volumePercent = 40;
    values.voice = "English (Great Britain)+\"Tweaky\"";
    values.soundDevice = "alsa_output.usb-\"Headset\"-00.analog-stereo";
    values.help = "from memory";
    values.hands = "rig";
    values.feed = "json:49100";
    values.pilot = "Zoë \\ \"Z\"\tO'Hara";
    values.pilots = {"Anna", values.pilot};
    values.dataFolder = "/home/pilot/flying";
    values.keys = {{"fly.hold", "P"}, {"thrust_lever_1 more", "Ctrl+7"}};
    values.delays = {{"Desk \"quadrant\"", 84}, {"screen", 31}};
    return values;
}

struct StepClock final : Clock {
    Time now() const override { return time; }
    Time time{};
};

} // namespace

class TestSettings : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void everythingSurvivesARestart();
    void theFileExplainsItself();
    void aBrokenFileIsPutAside_data();
    void aBrokenFileIsPutAside();
    void noBrokenFileIsLost();
    void whatCannotBeKeptIsToldOnce();
    void pilotsAreAddedAndRenamed();
    void theDataFolderIsChecked();
    void theCommandLineFollowsTheDataFolder();
    void theLookChangesAtOnce();
    void theSoundChangesAtOnce();
    void theSoundDeviceChangesAtOnce();
    void aSoundDeviceThatIsGoneIsToldOnce();
    void helpAndPilotStandInTheNextRun();
    void helpHidesWhatIsToBeKnown_data();
    void helpHidesWhatIsToBeKnown();
    void distancesHaveTheirUnit();
    void tapsTellTheDelay_data();
    void tapsTellTheDelay();
    void theDelayIsMeasuredAndTakenOff();
    void settingsAreReachedByKeys();
    void settingsCloseWhenARunGoesOn();
};

void TestSettings::initTestCase() {
    registerQmlTypes();
}

void TestSettings::everythingSurvivesARestart() {
    const QTemporaryDir folder;
    const QString file = folder.filePath("flowhand/settings.toml");
    const SettingsValues values = everythingChanged();
    QVERIFY(writeSettings(file, values));
    const SettingsRead read = readSettings(file);
    QCOMPARE(read.problem, QString());
    QVERIFY(read.values == values);
    QCOMPARE(QDir(folder.filePath("flowhand")).entryList(QDir::Files | QDir::Hidden), QStringList{"settings.toml"});
    Settings settings(file);
    QCOMPARE(settings.notice(), QString());
    settings.setTheme("dark");
    QCOMPARE(Settings(file).theme(), QString("dark"));
}

void TestSettings::theFileExplainsItself() {
    const QTemporaryDir folder;
    const QString file = folder.filePath("settings.toml");
    QVERIFY(writeSettings(file, {}));
    QByteArray before;
    int keys = 0;
    for (const QByteArray& line : contentOf(file).split('\n')) {
        if (line.contains(" = ")) {
            ++keys;
            QVERIFY2(before.startsWith("# "), line.constData());
        }
        before = line;
    }
    QCOMPARE(keys, 15);
}

void TestSettings::aBrokenFileIsPutAside_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::newRow("not closed") << QByteArray("theme = \"dark\nvolume = 20\n");
    QTest::newRow("wrong type") << QByteArray("volume = \"loud\"\nmotion = \"reduced\"\n");
    QTest::newRow("too much") << QByteArray("text_size = 900\nmotion = \"reduced\"\n");
    QTest::newRow("unknown word") << QByteArray("theme = \"pink\"\nmotion = \"reduced\"\n");
    QTest::newRow("unknown key") << QByteArray("thme = \"dark\"\nmotion = \"reduced\"\n");
    QTest::newRow("no key") << QByteArray("motion = \"reduced\"\n[keys]\nhold = 2\n");
}

void TestSettings::aBrokenFileIsPutAside() {
    QFETCH(QByteArray, text);
    const QTemporaryDir folder;
    const QString file = folder.filePath("settings.toml");
    write(file, text);
    const Settings settings(file);
    QVERIFY2(settings.notice().contains("settings.toml.broken-1"), qPrintable(settings.notice()));
    QCOMPARE(contentOf(file + ".broken-1"), text);
    if (text.contains("reduced"))
        QCOMPARE(settings.motion(), QString("reduced"));
    QCOMPARE(settings.textPercent(), 100);
    const Settings again(file);
    QCOMPARE(again.notice(), QString());
    QCOMPARE(again.motion(), settings.motion());
}

void TestSettings::noBrokenFileIsLost() {
    const QTemporaryDir folder;
    const QString file = folder.filePath("settings.toml");
    for (const char* text : {"a = ", "b = "}) {
        write(file, text);
        const Settings settings(file);
    }
    QCOMPARE(contentOf(file + ".broken-1"), QByteArray("a = "));
    QCOMPARE(contentOf(file + ".broken-2"), QByteArray("b = "));
}

void TestSettings::whatCannotBeKeptIsToldOnce() {
    const QTemporaryDir folder;
    write(folder.filePath("file"), "no folder");
    Settings settings(folder.filePath("file/settings.toml"));
    settings.setTheme("dark");
    QCOMPARE(settings.theme(), QString("dark"));
    QVERIFY(!settings.notice().isEmpty());
    settings.dismissNotice();
    settings.setTheme("light");
    QCOMPARE(settings.notice(), QString());
}

void TestSettings::pilotsAreAddedAndRenamed() {
    const QTemporaryDir folder;
    const QString file = folder.filePath("settings.toml");
    Settings settings(file);
    QVERIFY(!settings.addPilot("  ").isEmpty());
    QCOMPARE(settings.addPilot(" Anna  B "), QString());
    QCOMPARE(settings.pilot(), QString("Anna B"));
    QVERIFY(!settings.addPilot("Anna B").isEmpty());
    QCOMPARE(settings.addPilot("Carl"), QString());
    settings.setPilot("Anna B");
    QVERIFY(!settings.renamePilot("Carl").isEmpty());
    QCOMPARE(settings.renamePilot("Anna"), QString());
    const Settings again(file);
    QCOMPARE(again.pilots(), (QStringList{"Anna", "Carl"}));
    QCOMPARE(again.pilot(), QString("Anna"));
}

void TestSettings::theDataFolderIsChecked() {
    const QTemporaryDir folder;
    write(folder.filePath("file"), "no folder");
    Settings settings(folder.filePath("settings.toml"));
    const QSignalSpy told(&settings, &Settings::dataFolderChanged);
    QVERIFY(!settings.useDataFolder("relative/path").isEmpty());
    QVERIFY(!settings.useDataFolder(folder.filePath("file/below")).isEmpty());
    QCOMPARE(settings.dataFolder(), QString());
    QCOMPARE(settings.useDataFolder(folder.filePath("own/data/")), QString());
    QCOMPARE(settings.dataFolder(), folder.filePath("own/data"));
    QVERIFY(QDir(folder.filePath("own/data")).exists());
    QCOMPARE(told.count(), 1);
}

void TestSettings::theCommandLineFollowsTheDataFolder() {
    const QTemporaryDir folder;
    const QByteArray before = qgetenv("XDG_CONFIG_HOME");
    qputenv("XDG_CONFIG_HOME", folder.path().toUtf8());
    const std::string usual = usualDataHome();
    QCOMPARE(dataHome(), usual);
    Settings settings(QString::fromStdString(settingsFile()));
    QCOMPARE(settings.useDataFolder(folder.filePath("data")), QString());
    QCOMPARE(defaultStoreFile(), folder.filePath("data/runs.sqlite").toStdString());
    QCOMPARE(settings.useDataFolder(""), QString());
    QCOMPARE(dataHome(), usual);
    qputenv("XDG_CONFIG_HOME", before);
}

void TestSettings::theLookChangesAtOnce() {
    test::Stage stage("choosing");
    QQmlApplicationEngine engine;
    QVERIFY(showWindow(engine, stage.fly(), stage.bench(), stage.review(), stage.settings(), stage.sound()));
    const QObject* tokens = test::tokensOf(engine);
    stage.settings().setTheme("light");
    QCOMPARE(tokens->property("isDark").toBool(), false);
    stage.settings().setTheme("dark");
    QCOMPARE(tokens->property("isDark").toBool(), true);
    stage.settings().setTextPercent(250);
    QCOMPARE(tokens->property("textScale").toDouble(), 2.0);
    QCOMPARE(tokens->property("bodySize").toInt(), 30);
    stage.settings().setMotion("reduced");
    QCOMPARE(tokens->property("quickTime").toInt(), 0);
}

void TestSettings::theSoundChangesAtOnce() {
    test::Stage stage("choosing");
    Settings& settings = stage.settings();
    settings.setVolumePercent(50);
    QCOMPARE(stage.heard().volume, 0.5);
    settings.setSound("quiet");
    QCOMPARE(stage.heard().volume, 0.125);
    QCOMPARE(stage.sound().words(), QString("Sound: quiet"));
    Q_EMIT stage.sound().voice().voicesFound({"Ada", "Bob"});
    QCOMPARE(stage.sound().voices(), (QStringList{"Ada", "Bob"}));
    settings.setVoice("Bob");
    QCOMPARE(stage.heard().voice, QString("Bob"));
    settings.setSound("off");
    stage.heard().take();
    stage.sound().tryOut();
    QCOMPARE(stage.heard().log, QStringList());
    settings.setSound("on");
    QCOMPARE(stage.heard().volume, 0.5);
    QCOMPARE(stage.heard().voice, QString("Bob"));
    stage.sound().tryOut();
    QCOMPARE(stage.heard().log.size(), 2);
}

void TestSettings::theSoundDeviceChangesAtOnce() {
    test::Stage stage("choosing");
    Settings& settings = stage.settings();
    QCOMPARE(stage.sound().deviceIds(), QStringList());
    SoundDevice speakers;
    speakers.id = "alsa_output.pci";
    speakers.name = "Loudspeakers";
    SoundDevice headset;
    headset.id = "alsa_output.usb";
    headset.name = "Headset";
    Q_EMIT stage.sound().voice().devicesFound({speakers, headset});
    QCOMPARE(stage.sound().deviceIds(), (QStringList{speakers.id, headset.id}));
    QCOMPARE(stage.sound().deviceNames(), (QStringList{"Loudspeakers", "Headset"}));
    settings.setSoundDevice(headset.id);
    QCOMPARE(stage.heard().device, headset.id);
    settings.setSound("off");
    settings.setSoundDevice(speakers.id);
    QCOMPARE(stage.heard().device, headset.id);
    settings.setSound("on");
    QCOMPARE(stage.heard().device, speakers.id);
    settings.setSoundDevice({});
    QCOMPARE(stage.heard().device, QString());
}

void TestSettings::aSoundDeviceThatIsGoneIsToldOnce() {
    test::Stage stage("choosing");
    Settings& settings = stage.settings();
    settings.setSoundDevice("alsa_output.usb");
    SoundDevice speakers;
    speakers.id = "alsa_output.pci";
    speakers.name = "Loudspeakers";
    Q_EMIT stage.sound().voice().devicesFound({speakers});
    QCOMPARE(stage.sound().deviceIds(), (QStringList{"alsa_output.pci", "alsa_output.usb"}));
    QVERIFY(stage.sound().deviceNames().last().contains("not there"));
    Q_EMIT stage.sound().voice().fellBack("the headset is gone");
    QCOMPARE(stage.sound().notice(), QString("the headset is gone"));
    stage.sound().dismissNotice();
    settings.setVolumePercent(50);
    QCOMPARE(stage.sound().notice(), QString());
    QCOMPARE(settings.soundDevice(), QString("alsa_output.usb")); // it is used again once it is back
}

void TestSettings::helpAndPilotStandInTheNextRun() {
    test::Stage stage("choosing");
    stage.settings().setHelp("prompted");
    stage.settings().addPilot("Anna");
    stage.fly().startFlow(0);
    QCOMPARE(stage.maker().last.help, std::string("prompted"));
    QCOMPARE(stage.maker().last.pilot, std::string("Anna"));
    stage.fly().demonstrate(0);
    QCOMPARE(stage.maker().last.help, std::string("guided"));
    QCOMPARE(stage.maker().last.pilot, std::string());
}

void TestSettings::helpHidesWhatIsToBeKnown_data() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<bool>("isNamed");
    QTest::addColumn<int>("targets");
    QTest::addColumn<bool>("isWanted");
    QTest::addColumn<bool>("isNextShown");
    QTest::newRow("guided") << "due-gate" << true << 1 << true << true;
    QTest::newRow("prompted") << "due-prompted" << true << 1 << false << false;
    QTest::newRow("from memory") << "due-memory" << false << 0 << false << false;
    QTest::newRow("partner, from memory") << "partner-memory" << true << 1 << true << false;
}

void TestSettings::helpHidesWhatIsToBeKnown() {
    QFETCH(QString, state);
    QFETCH(bool, isNamed);
    QFETCH(int, targets);
    QFETCH(bool, isWanted);
    QFETCH(bool, isNextShown);
    test::Stage stage(state);
    RunPresenter& run = *stage.fly().run();
    const int step = state.startsWith("partner") ? 7 : 1;
    const QString title = QString::fromStdString(stage.flow().steps[static_cast<std::size_t>(step)].title);
    QCOMPARE(run.dueTitle() == title, isNamed);
    QCOMPARE(run.targets()->count(), targets);
    if (targets > 0)
        QCOMPARE(run.targets()->row<TargetRow>(0).wanted, isWanted);
    QCOMPARE(run.coming()->count() > 0, isNextShown);
    QCOMPARE(!run.nextTitle().isEmpty(), isNextShown);
    if (!isNextShown && step != 7)
        QVERIFY(run.comingText().contains("not shown"));
    QVERIFY(isNextShown || run.dueWhy().isEmpty());
}

void TestSettings::distancesHaveTheirUnit() {
    test::Stage stage("due-gate");
    RunPresenter& run = *stage.fly().run();
    test::setValue(stage.maker().snapshot.values, stage.aircraft(), "on_ground", Value::onOff(true));
    test::setValue(stage.maker().snapshot.values, stage.aircraft(), "centreline_offset", Value::number(-3.05));
    stage.fly().refresh();
    const QString metres = run.lineText();
    stage.settings().setLength("ft");
    QVERIFY2(metres.contains("3.0 m left") || metres.contains("3.1 m left"), qPrintable(metres));
    QVERIFY2(run.lineText().contains("10 ft left"), qPrintable(run.lineText()));
}

void TestSettings::tapsTellTheDelay_data() {
    QTest::addColumn<QList<int>>("millis");
    QTest::addColumn<int>("delay"); // -1: none
    QTest::newRow("even") << QList<int>{80, 80, 80, 80, 80, 80, 80, 80, 80, 80} << 80;
    QTest::newRow("around") << QList<int>{60, 100, 90, 70, 80, 84, 76, 95, 65, 82} << 81;
    QTest::newRow("two slips") << QList<int>{80, 500, 81, 79, -200, 82, 78, 80, 83, 77} << 80;
    QTest::newRow("ahead of the click") << QList<int>{-30, -20, -40, -30, -25, -35, -30, -30, -20, -40} << 0;
    QTest::newRow("at random") << QList<int>{0, 500, -300, 200, 400, -100, 300, 100, -200, 450} << -1;
    QTest::newRow("none") << QList<int>{} << -1;
}

void TestSettings::tapsTellTheDelay() {
    QFETCH(QList<int>, millis);
    QFETCH(int, delay);
    std::vector<Duration> offsets;
    for (const int one : millis)
        offsets.push_back(std::chrono::milliseconds(one));
    QCOMPARE(delayOfTaps(offsets).value_or(-1), delay);
}

void TestSettings::theDelayIsMeasuredAndTakenOff() {
    test::Stage stage("choosing");
    StepClock clock;
    DelayMeter meter(stage.benchMaker(), stage.sound(), clock, nullptr);
    QObject::connect(&meter, &DelayMeter::measured, &stage.settings(), &Settings::setDelay);
    meter.begin(false);
    for (int beat = 0; beat < 12; ++beat) {
        meter.click();
        clock.time += 70ms;
        meter.tap();
        clock.time += 20ms;
        meter.tap(); // the same finger, bouncing
        clock.time += 810ms;
    }
    QVERIFY(!meter.isRunning());
    QCOMPARE(stage.settings().delayOf("screen"), 70);
    QVERIFY(stage.heard().log.contains(QString("play %1").arg(int(Earcon::Click))));
    stage.fly().startFlow(0);
    QCOMPARE(stage.maker().last.delayMillis, 70);
    stage.fly().demonstrate(0);
    QCOMPARE(stage.maker().last.delayMillis, 0);
    stage.fly().leave();
    stage.fly().chooseHands(true); // a rig of which nothing is known
    stage.fly().startFlow(0);
    QCOMPARE(stage.maker().last.delayMillis, 0);
    stage.benchMaker().refusal = "no rig";
    meter.begin(true);
    QVERIFY(!meter.isRunning() && meter.outcome().contains("no rig"));
}

void TestSettings::settingsAreReachedByKeys() {
    test::Stage stage("choosing");
    QQmlApplicationEngine engine;
    QVERIFY(showWindow(engine, stage.fly(), stage.bench(), stage.review(), stage.settings(), stage.sound()));
    auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().first());
    window->requestActivate();
    QVERIFY(QTest::qWaitForWindowActive(window));
    QTest::keyClick(window, Qt::Key_F12);
    QCoreApplication::processEvents();
    const auto focus = [window](const QString& name) {
        for (int tries = 0; tries < 60; ++tries) {
            QTest::keyClick(window, Qt::Key_Tab);
            const QQuickItem* item = window->activeFocusItem();
            if (item != nullptr && item->property("text").toString() == name)
                return true;
        }
        return false;
    };
    QVERIFY(focus("dark"));
    QTest::keyClick(window, Qt::Key_Return);
    QCOMPARE(stage.settings().theme(), QString("dark"));
    QTest::keyClick(window, Qt::Key_PageDown);
    QTest::keyClick(window, Qt::Key_PageDown);
    QVERIFY(focus("from memory"));
    QTest::keyClick(window, Qt::Key_Space);
    QCOMPARE(stage.settings().help(), QString("from memory"));
    QTest::keyClick(window, Qt::Key_Escape);
    QCoreApplication::processEvents();
    QTest::keyClick(window, Qt::Key_Return); // the main button of Fly again
    QCOMPARE(stage.maker().last.help, std::string("from memory"));
}

void TestSettings::settingsCloseWhenARunGoesOn() {
    test::Stage stage("held");
    QQmlApplicationEngine engine;
    QVERIFY(showWindow(engine, stage.fly(), stage.bench(), stage.review(), stage.settings(), stage.sound()));
    auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().first());
    window->requestActivate();
    QVERIFY(QTest::qWaitForWindowActive(window));
    QTest::keyClick(window, Qt::Key_F12);
    const auto* shell = window->contentItem()->childItems().first();
    QVERIFY(shell->property("settingsShown").toBool());
    stage.maker().snapshot.session.phase = SessionPhase::Running;
    stage.fly().refresh();
    QVERIFY(!shell->property("settingsShown").toBool());
    QTest::keyClick(window, Qt::Key_F12);
    QVERIFY(!shell->property("settingsShown").toBool());
}

QTEST_MAIN(TestSettings)
#include "test_settings.moc"
