// The program itself, from the first start to the debrief that is handed on: with an empty home folder, by key and
// mouse events of an X server, read through the accessibility bus as a screen reader reads it.

#include <algorithm>

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QtTest>

#include "desktop.h"
#include "screenreader.h"
#include "store/store.h"

using namespace flowhand;

namespace {

/// What a busy machine may need until something is seen; nobody waits for it where all is well.
constexpr int kPatienceMillis = 60'000;

const QString kFirstStep = QStringLiteral("Start switch 1 to continuous");
const QString kNote = QStringLiteral("Look at the panel before the hand goes there.");

QString contentOf(const QString& file) {
    QFile in(file);
    return in.open(QIODevice::ReadOnly) ? QString::fromUtf8(in.readAll()) : QString();
}

} // namespace

class TestWindow : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void init();
    void cleanup();
    void aWholeSession();

private:
    [[nodiscard]] bool startProgram();
    [[nodiscard]] bool waitFor(const QString& name);
    [[nodiscard]] bool waitForBeginning(const QString& name);
    [[nodiscard]] bool click(const QString& name, double across = 0.5);
    [[nodiscard]] bool tabTo(const QString& name);
    [[nodiscard]] Result<StoredRun> storedRun() const;
    void choosesNoControls();
    void watchesTheFlow();
    void fliesIt();
    void writesANote();
    void exportsTheDebrief();
    void theStoreHasTheRun();
    void startsAgainWithoutAsking();

    test::ScreenReader m_reader;
    std::unique_ptr<test::Desktop> m_desktop;
    QProcess* m_program = nullptr;
};

void TestWindow::initTestCase() {
    if (!test::Desktop::isPossible())
        QSKIP("there is no Xvfb on this machine; install the package xvfb");
}

void TestWindow::init() {
    m_desktop = std::make_unique<test::Desktop>();
    QCOMPARE(m_desktop->start(), QString());
    QCOMPARE(m_reader.start(*m_desktop), QString());
    QVERIFY(startProgram());
}

void TestWindow::cleanup() {
    if (QTest::currentTestFailed() && m_desktop) {
        for (const test::Shown& shown : m_reader.look())
            qInfo() << shown.role << shown.name << shown.description << shown.place;
        qInfo().noquote() << contentOf(m_desktop->complaintsOf("flowhand"));
    }
    m_desktop.reset();
}

bool TestWindow::startProgram() {
    m_program = m_desktop->run(QCoreApplication::applicationDirPath() + "/../../flowhand");
    return m_program != nullptr;
}

bool TestWindow::waitFor(const QString& name) {
    return QTest::qWaitFor(
        [&] {
            return m_reader.named(name).has_value();
        },
        kPatienceMillis);
}

bool TestWindow::waitForBeginning(const QString& name) {
    return QTest::qWaitFor(
        [&] {
            return m_reader.beginning(name).has_value();
        },
        kPatienceMillis);
}

/// By the mouse, so far across from its left end.
bool TestWindow::click(const QString& name, double across) {
    if (!waitFor(name))
        return false;
    const std::optional<test::Shown> shown = m_reader.named(name);
    return shown &&
           m_desktop->click({shown->place.left() + int(shown->place.width() * across), shown->place.center().y()});
}

/// Once round all that can have the keyboard, at most.
bool TestWindow::tabTo(const QString& name) {
    for (int tabs = 0; tabs < 100; ++tabs) {
        const std::optional<test::Shown> shown = m_reader.named(name);
        if (shown && shown->hasFocus)
            return true;
        if (!m_desktop->press({"Tab"}))
            return false;
    }
    return false;
}

Result<StoredRun> TestWindow::storedRun() const {
    StoreOptions options;
    options.isReadOnly = options.mustExist = true;
    Result<Store> store = Store::open(m_desktop->home().toStdString() + "/.local/share/flowhand/runs.sqlite", options);
    return store ? store->load(2) : tl::unexpected(store.error());
}

void TestWindow::aWholeSession() {
    choosesNoControls();
    watchesTheFlow();
    fliesIt();
    writesANote();
    exportsTheDebrief();
    theStoreHasTheRun();
    startsAgainWithoutAsking();
    // Nothing that its views are made of was at fault.
    const QString complaints = contentOf(m_desktop->complaintsOf("flowhand"));
    QVERIFY2(!complaints.contains("qrc:"), qPrintable(complaints));
}

void TestWindow::choosesNoControls() {
    QVERIFY(waitFor("What will your hands be on?"));
    QVERIFY(m_reader.named("Flowhand is a hobby trainer and is not for real-world flight training."));
    // There is no sound server: it says so once and goes on.
    QVERIFY(waitForBeginning("Nothing is spoken: no sound server answers."));
    QVERIFY(click("Dismiss"));
    QVERIFY(click("Use the screen"));
    QVERIFY(waitFor("Choose a flow"));
    QVERIFY(!m_reader.beginning("Nothing is spoken"));
    QTRY_VERIFY(contentOf(m_desktop->home() + "/.config/flowhand/settings.toml").contains("hands = \"screen\""));
}

void TestWindow::watchesTheFlow() {
    if (QTest::currentTestFailed())
        return;
    for (int flow = 0; flow < 40 && !m_reader.named(kFirstStep); ++flow)
        QVERIFY(m_desktop->press({"Right"}));
    QVERIFY(waitFor(kFirstStep));
    QVERIFY(m_desktop->press({"Return"}));
    // Who has no controls is shown first how it is done.
    QVERIFY(waitFor("A demonstration: scripted hands flew this."));
    QVERIFY(m_reader.named("Passed"));
    QVERIFY(m_reader.named("Now fly it yourself"));
    QVERIFY(m_desktop->press({"Return"}));
    QVERIFY(waitFor("The first step will be"));
    QVERIFY(m_desktop->press({"Return"}));
}

void TestWindow::fliesIt() {
    if (QTest::currentTestFailed())
        return;
    QVERIFY(waitFor("Your step, now"));
    QVERIFY(m_reader.named("Simulated hands"));
    QVERIFY(click("Start switch 1", 0.9)); // on its word on the right: continuous
    QVERIFY(waitForBeginning("So far: 1 of 6 steps"));
    QVERIFY(m_desktop->press({"c"})); // the landing lights, which no step wants
    QVERIFY(tabTo("Start switch 2"));
    QVERIFY(m_desktop->press({"Right"}));
    QVERIFY(waitFor("Answer: “Before V one I stop, after V one we fly.”"));
    QVERIFY(m_desktop->press({"space"}));
    QVERIFY(waitFor("Fly it again"));
    QVERIFY(m_reader.named("Flown on the screen: simulated hands."));
}

void TestWindow::writesANote() {
    if (QTest::currentTestFailed())
        return;
    QVERIFY(m_desktop->press({"ctrl+3"}));
    QVERIFY(waitForBeginning("Before take-off, "));
    QVERIFY(m_desktop->press({"Return"}));
    QVERIFY(waitFor("Deviations"));
    QVERIFY(m_desktop->press({"n"}));
    QVERIFY(waitForBeginning("Note at "));
    QVERIFY(m_desktop->type(kNote));
    QVERIFY(m_desktop->press({"Return"}));
    QTRY_COMPARE_WITH_TIMEOUT(storedRun().has_value() ? storedRun()->notes.size() : 0U, 1U, kPatienceMillis);
}

void TestWindow::exportsTheDebrief() {
    if (QTest::currentTestFailed())
        return;
    const QString file = m_desktop->home() + "/Documents/Flowhand/run-2.html";
    QVERIFY(m_desktop->press({"e"}));
    QVERIFY(waitFor("Written: " + file));
    const QString page = contentOf(file);
    for (const QString& words : {QStringLiteral("Before take-off"), kFirstStep, kNote, QStringLiteral("Landing lights"),
                                 QStringLiteral("simulated"), QStringLiteral("</html>")})
        QVERIFY2(page.contains(words), qPrintable(words + " is not in " + page));
}

void TestWindow::theStoreHasTheRun() {
    if (QTest::currentTestFailed())
        return;
    const Result<StoredRun> run = storedRun();
    QVERIFY(run);
    QCOMPARE(run->summary.flowId, std::string("before_take_off"));
    QVERIFY(run->summary.isFinished && run->summary.isSimulated && run->summary.isScored && !run->summary.isDamaged);
    QCOMPARE(run->notes.front().text, kNote.toStdString());
    std::vector<StepState> states;
    for (const StepResult& step : run->results)
        states.push_back(step.state);
    using enum StepState;
    QVERIFY(states == (std::vector<StepState>{Done, Done, FoundSet, FoundSet, FoundSet, Done}));
    const auto isWrongControl = [](const LedgerLine& line) {
        return line.what == LossKind::WrongControl;
    };
    QCOMPARE(std::count_if(run->score.ledger.begin(), run->score.ledger.end(), isWrongControl), 1);
    QVERIFY(run->score.milliPoints < 100'000);
}

void TestWindow::startsAgainWithoutAsking() {
    if (QTest::currentTestFailed())
        return;
    m_program->terminate();
    QVERIFY(m_program->waitForFinished(kPatienceMillis));
    QVERIFY(startProgram());
    QVERIFY(waitFor("Choose a flow"));
    QVERIFY(m_reader.named("Fly it"));
    QVERIFY(click("Progress"));
    // The demonstration is no practice.
    QVERIFY(waitFor("A pilot without a name, on on-screen controls: 1 run, 1 of them with simulated input"));
}

QTEST_GUILESS_MAIN(TestWindow)
#include "test_window.moc"
