// Which key does what: the table, and what the pilot makes of it.

#include <set>

#include <QDirIterator>
#include <QQuickItem>
#include <QQuickView>
#include <QRegularExpression>
#include <QtTest>

#include "presenter/keychoice.h"
#include "presenter/keytable.h"
#include "shown.h"
#include "window.h"

using namespace flowhand;

namespace {

/// A choice of keys over settings of its own.
struct Chosen {
    Chosen() { keys.setSettings(&settings); }

    [[nodiscard]] int rowOf(const QString& id) const {
        const std::vector<KeyUse> table = keyTable();
        for (std::size_t row = 0; row < table.size(); ++row)
            if (table[row].id == id)
                return static_cast<int>(row);
        return -1;
    }

    QTemporaryDir folder;
    Settings settings{folder.filePath("settings.toml")};
    KeyChoice keys;
};

} // namespace

class TestKeys : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void theUsualKeysDoNotMeet();
    void everyKeyOnAButtonIsInTheTable();
    void whatCannotBeIsSaid_data();
    void whatCannotBeIsSaid();
    void anotherKeyDoesTheSame();
    void aKeyIsGivenBack();
    void keysSurviveARestart();
    void controlsFollowTheirKeys();
    void aKeyIsChosenByKeys();
    void placesAreReachedWhateverTheirFigureDoes();
    void theTextTakesKeysAtOnce();
    void aStepIsActedOut();
};

void TestKeys::initTestCase() {
    registerQmlTypes();
}

void TestKeys::theUsualKeysDoNotMeet() {
    Chosen chosen;
    std::set<QString> ids;
    const std::vector<KeyUse> table = keyTable();
    for (std::size_t row = 0; row < table.size(); ++row) {
        QVERIFY(!table[row].does.isEmpty() && !table[row].shown.isEmpty());
        if (table[row].id.isEmpty())
            continue;
        QVERIFY2(ids.insert(table[row].id).second, qPrintable(table[row].id));
        QCOMPARE(chosen.keys.bind(static_cast<int>(row), table[row].key), QString());
    }
    QVERIFY(chosen.settings.keys().empty());
}

void TestKeys::everyKeyOnAButtonIsInTheTable() {
    QStringList known = {"← →"}; // of a panel alone, beside its own words
    for (const KeyUse& use : keyTable())
        known += use.shown.split(' ') + QStringList{use.shown};
    static const QRegularExpression name(R"(keyName: (?:primary \? )?(?:qsTr\()?"([^"]+)\")");
    int names = 0;
    QDirIterator files("qml", {"*.qml"}, QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        QFile file(files.next());
        QVERIFY(file.open(QIODevice::ReadOnly));
        for (auto found = name.globalMatch(QString::fromUtf8(file.readAll())); found.hasNext(); ++names) {
            const QString key = found.next().captured(1);
            QVERIFY2(known.contains(key), qPrintable(file.fileName() + ": " + key));
        }
    }
    QVERIFY(names > 40);
}

void TestKeys::whatCannotBeIsSaid_data() {
    QTest::addColumn<QString>("id");
    QTest::addColumn<int>("key");
    QTest::addColumn<QString>("word");
    QTest::newRow("of a control") << "fly.hold" << int(Qt::Key_P) << "parking brake";
    QTest::newRow("of the same place") << "fly.hold" << int(Qt::Key_F8) << "stop the run";
    QTest::newRow("of all places") << "bench.wire" << int(Qt::Key_F9) << "sound";
    QTest::newRow("of any place, for all") << "sound" << int(Qt::Key_W) << "wire it";
    QTest::newRow("of lists and fields") << "bench.wire" << int(Qt::Key_Tab) << "as it is";
    QTest::newRow("figure in Review") << "review.note" << int(Qt::Key_3) << "as it is";
    QTest::newRow("arrow") << "fly.hold" << int(Qt::Key_Up) << "as it is";
}

void TestKeys::whatCannotBeIsSaid() {
    QFETCH(QString, id);
    QFETCH(int, key);
    QFETCH(QString, word);
    Chosen chosen;
    QVERIFY(chosen.rowOf(id) >= 0);
    const QString problem = chosen.keys.bind(chosen.rowOf(id), key);
    QVERIFY2(problem.contains(word), qPrintable(problem));
    QVERIFY(chosen.settings.keys().empty());
}

void TestKeys::anotherKeyDoesTheSame() {
    test::Shown shown("due-gate");
    shown.stage.settings().setKeys({{"fly.hold", "F11"}});
    QTest::keyClick(&shown.view, Qt::Key_F2); // means nothing any more
    QVERIFY(shown.stage.maker().told->commands.empty());
    QTest::keyClick(&shown.view, Qt::Key_F11);
    QCOMPARE(shown.stage.maker().told->commands, std::vector<CommandKind>{CommandKind::Hold});
    QVERIFY(shown.hasText("F11"));
    QVERIFY(!shown.hasText("F2"));
}

void TestKeys::aKeyIsGivenBack() {
    Chosen chosen;
    const int hold = chosen.rowOf("fly.hold");
    const int stop = chosen.rowOf("fly.stop");
    QCOMPARE(chosen.keys.bind(hold, Qt::Key_F11), QString());
    QCOMPARE(chosen.keys.bind(stop, Qt::Key_F2), QString());
    QVERIFY(chosen.keys.restore(hold).contains("stop the run"));
    QCOMPARE(chosen.keys.usual(Qt::Key_F11), int(Qt::Key_F2));
    QCOMPARE(chosen.keys.usual(Qt::Key_F2), int(Qt::Key_F8));
    QCOMPARE(chosen.keys.usual(Qt::Key_F8), 0);
    QCOMPARE(chosen.keys.shown("F2 F8 Q"), QString("F11 F2 Q"));
    QCOMPARE(chosen.keys.restore(stop), QString());
    QCOMPARE(chosen.keys.restore(hold), QString());
    QVERIFY(!chosen.keys.isAnyChanged());
    chosen.keys.bind(hold, Qt::Key_F11);
    chosen.keys.restoreAll();
    QCOMPARE(chosen.keys.usual(Qt::Key_F2), int(Qt::Key_F2));
}

void TestKeys::keysSurviveARestart() {
    Chosen chosen;
    QCOMPARE(chosen.keys.bind(chosen.rowOf("fly.jump"), Qt::Key_Odiaeresis), QString());
    QCOMPARE(chosen.keys.bind(chosen.rowOf("fly.stop"), Qt::Key_Semicolon), QString());
    Settings settings(chosen.settings.file());
    KeyChoice again;
    again.setSettings(&settings);
    QCOMPARE(again.usual(Qt::Key_Odiaeresis), int(Qt::Key_F7));
    QCOMPARE(again.usual(Qt::Key_Semicolon), int(Qt::Key_F8));
}

void TestKeys::controlsFollowTheirKeys() {
    test::Shown shown("due-gate");
    shown.stage.settings().setKeys({{"taxi_light change", "Z"}});
    QTest::keyClick(&shown.view, Qt::Key_X);
    QVERIFY(shown.stage.maker().told->moves.empty());
    QTest::keyClick(&shown.view, Qt::Key_Z);
    QCOMPARE(shown.stage.maker().told->moves.size(), std::size_t(1));
    QVERIFY(shown.hasText("Z"));
}

void TestKeys::aKeyIsChosenByKeys() {
    test::Shown shown("settings-keys");
    shown.view.requestActivate();
    const QQuickItem* focused = nullptr;
    for (int tries = 0; tries < 40; ++tries) {
        QTest::keyClick(&shown.view, Qt::Key_Tab);
        focused = shown.view.activeFocusItem();
        if (focused != nullptr && focused->property("text").toString() == "F2")
            break;
    }
    QCOMPARE(focused->property("text").toString(), QString("F2"));
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QTest::keyClick(&shown.view, Qt::Key_F8);
    QVERIFY(shown.hasText("F8 is the key for “stop the run” already; give that one another key first."));
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QTest::keyClick(&shown.view, Qt::Key_F11);
    QCOMPARE(shown.stage.settings().keys().at("fly.hold"), QString("F11"));
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QTest::keyClick(&shown.view, Qt::Key_Escape); // leaves the key, not the settings
    QVERIFY(shown.hasText("All as usual"));
}

void TestKeys::placesAreReachedWhateverTheirFigureDoes() {
    test::Shown shown("choosing");
    shown.stage.settings().setKeys({{"yoke_roll more", "Z"}});
    QTest::keyClick(&shown.view, Qt::Key_2, Qt::ControlModifier);
    QCOMPARE(shown.view.rootObject()->property("place").toInt(), 1);
}

void TestKeys::theTextTakesKeysAtOnce() {
    test::Shown shown("library");
    shown.view.requestActivate();
    QTest::keyClick(&shown.view, Qt::Key_Return); // a copy of one's own
    QVERIFY(shown.stage.library().isEditing());
    QTest::keyClick(&shown.view, '#');
    FileEditor& editor = *shown.stage.library().editor();
    QVERIFY(editor.isUnsaved() && editor.text().startsWith('#'));
    QTest::keyClick(&shown.view, Qt::Key_S, Qt::ControlModifier);
    QVERIFY(!editor.isUnsaved());
}

/// Written behind what the cursor is in, here the file's head: the text stays one that can be flown.
void TestKeys::aStepIsActedOut() {
    test::Shown shown("library-editor");
    LibraryPresenter& library = shown.stage.library();
    QTest::keyClick(&shown.view, Qt::Key_F7);
    QVERIFY(library.acted()->isOpen() && library.acted()->title().isEmpty());
    QVERIFY(library.acted()->panel()->pressKey(Qt::Key_X));
    QCOMPARE(library.acted()->title(), QString("Taxi light on"));
    QTest::keyClick(&shown.view, Qt::Key_F8);
    const FileEditor& editor = *library.editor();
    QVERIFY(editor.text().contains("[[step]]\nid = \"taxi_light_on_2\"\n"));
    for (const Problem& problem : editor.lastCheck().problems)
        QVERIFY2(problem.severity != Severity::Error, describe(problem.error).c_str());
    QTest::keyClick(&shown.view, Qt::Key_F7);
    QVERIFY(!library.acted()->isOpen());
}

QTEST_MAIN(TestKeys)
#include "test_keys.moc"
