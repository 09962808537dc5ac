#include <QtTest>

#include "base/textfile.h"
#include "base/tomlfile.h"
#include "rig/rigedit.h"

using namespace flowhand;

class TestRigEdit : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void edits_data();
    void edits();
    void whatCannotBeEditedIsRefused_data();
    void whatCannotBeEditedIsRefused();
    void shippedRigsCanBeEdited_data();
    void shippedRigsCanBeEdited();
    void oneTable_data();
    void oneTable();
    void keysAreReadAsWritten();
};

void TestRigEdit::edits_data() {
    QTest::addColumn<QString>("before");
    QTest::addColumn<QString>("key");
    QTest::addColumn<QString>("value");
    QTest::addColumn<QString>("after");
    const QString head = "[[control]]\nsignal = \"a\"\nwiring = \"axis\" # kept\n";
    QTest::newRow("replace") << head + "range = [1, 2] # was measured\n"
                             << "range"
                             << "[3, 4]" << head + "range = [3, 4] # was measured\n";
    QTest::newRow("several lines") << head + "gates = [\n  { at = 1 }, # ]\n  { at = 2 },\n]\nnoise = 1\n"
                                   << "gates"
                                   << "[{ at = 5 }]" << head + "gates = [{ at = 5 }]\nnoise = 1\n";
    QTest::newRow("add") << head + "range = [1, 2]\n\n# the next\n[[control]]\nsignal = \"b\"\n"
                         << "noise"
                         << "1.5" << head + "noise = 1.5\nrange = [1, 2]\n\n# the next\n[[control]]\nsignal = \"b\"\n";
    QTest::newRow("add at the end of the file") << head.chopped(1) << "noise"
                                                << "2" << head + "noise = 2";
    QTest::newRow("remove") << head + "centre = 5 # middle\nnoise = 1\n"
                            << "centre"
                            << "" << head + "noise = 1\n";
    QTest::newRow("remove what is not there") << head << "centre"
                                              << "" << head;
    QTest::newRow("text") << head + "debounce = '10 ms'\n"
                          << "debounce"
                          << "\"5 ms\"" << head + "debounce = \"5 ms\"\n";
    QTest::newRow("characters of several bytes")
        << QString::fromUtf8("# Größe\n[[control]]\nname = \"Höhe\"\nwiring = \"axis\"\n'range' = [1, 2]\n") << "range"
        << "[3, 4]"
        << QString::fromUtf8("# Größe\n[[control]]\nname = \"Höhe\"\nwiring = \"axis\"\n'range' = [3, 4]\n");
    QTest::newRow("Windows line ends") << "[[control]]\r\nwiring = \"axis\"\r\nrange = [1, 2]\r\n"
                                       << "range"
                                       << "[3, 4]"
                                       << "[[control]]\r\nwiring = \"axis\"\r\nrange = [3, 4]\r\n";
    QTest::newRow("the same key elsewhere") << "[[device]]\nnoise = 9\n" + head + "noise = 1\n"
                                            << "noise"
                                            << "2"
                                            << "[[device]]\nnoise = 9\n" + head + "noise = 2\n";
}

void TestRigEdit::edits() {
    QFETCH(QString, before);
    QFETCH(QString, key);
    QFETCH(QString, value);
    QFETCH(QString, after);
    const auto text = withControlKeys(before.toStdString(), 0, {{key.toStdString(), value.toStdString()}});
    QVERIFY2(text, text ? "" : text.error().message.c_str());
    QCOMPARE(QString::fromStdString(*text), after);
}

void TestRigEdit::whatCannotBeEditedIsRefused_data() {
    QTest::addColumn<QString>("source");
    QTest::addColumn<QString>("value");
    QTest::newRow("no such control") << "title = \"x\"\n"
                                     << "1";
    QTest::newRow("in one line") << "control = [{ wiring = \"axis\", noise = 1 }]\n"
                                 << "";
    QTest::newRow("not a value") << "[[control]]\nwiring = \"axis\"\nnoise = 1\n"
                                 << "1\nrange = 2";
    QTest::newRow("no TOML") << "[[control\n"
                             << "1";
}

void TestRigEdit::whatCannotBeEditedIsRefused() {
    QFETCH(QString, source);
    QFETCH(QString, value);
    QVERIFY(!withControlKeys(source.toStdString(), 0, {{"noise", value.toStdString()}}));
}

void TestRigEdit::shippedRigsCanBeEdited_data() {
    QTest::addColumn<QString>("file");
    for (const QFileInfo& file : QDir(ASSETS "/rigs").entryInfoList({"*.toml"}))
        QTest::newRow(qPrintable(file.fileName())) << file.filePath();
}

void TestRigEdit::shippedRigsCanBeEdited() {
    QFETCH(QString, file);
    const std::string source = *readFile(file.toStdString());
    const TomlFile before = *TomlFile::parse(source, {});
    const std::size_t count = before.root().find("control")->items.size();
    QVERIFY(count > 0);
    for (std::size_t i = 0; i < count; ++i) {
        const auto added = withControlKeys(source, i, {{"added", "[1, 2]"}});
        QVERIFY(added);
        const auto changed = withControlKeys(*added, i, {{"added", "[ { x = \"]\" } ]"}});
        QVERIFY(changed);
        const auto removed = withControlKeys(*changed, i, {{"added", ""}});
        QVERIFY(removed);
        QCOMPARE(*removed, source);
    }
}

void TestRigEdit::oneTable_data() {
    QTest::addColumn<QString>("before");
    QTest::addColumn<QString>("value");
    QTest::addColumn<QString>("after");
    QTest::newRow("begun at the end") << "title = \"x\"\n"
                                      << "1"
                                      << "title = \"x\"\n\n[limits]\nhigh = 1\n";
    QTest::newRow("no last line end") << "title = \"x\""
                                      << "1"
                                      << "title = \"x\"\n\n[limits]\nhigh = 1\n";
    QTest::newRow("replaced") << "[limits] # mine\nlow = 2\nhigh = 3 # once\n[other]\nhigh = 4\n"
                              << "1"
                              << "[limits] # mine\nlow = 2\nhigh = 1 # once\n[other]\nhigh = 4\n";
    QTest::newRow("added") << "[limits] # mine\nlow = 2\n"
                           << "1"
                           << "[limits] # mine\nhigh = 1\nlow = 2\n";
    QTest::newRow("removed") << "[limits]\nhigh = 3\n"
                             << ""
                             << "[limits]\n";
    QTest::newRow("removed where it is not") << "title = \"x\"\n"
                                             << ""
                                             << "title = \"x\"\n";
}

void TestRigEdit::oneTable() {
    QFETCH(QString, before);
    QFETCH(QString, value);
    QFETCH(QString, after);
    const auto text = withTableKeys(before.toStdString(), "limits", {{"high", value.toStdString()}});
    QVERIFY2(text, text ? "" : text.error().message.c_str());
    QCOMPARE(QString::fromStdString(*text), after);
    // Written in one line it is for hands to change.
    const auto refused = withTableKeys("limits = { low = 1 }\n", "limits", {{"high", "1"}});
    QVERIFY(!refused);
    QCOMPARE(refused.error().code, std::string("cannot-edit"));
}

void TestRigEdit::keysAreReadAsWritten() {
    const std::string source = "[[control]]\nwiring = \"axis\"\n[[control]]\nwiring = 'axis'\nnoise = 1.50 # so\n"
                               "range = [ 1,\n  2 ] # counts\n";
    const auto keys = controlKeysIn(source, 1, {"wiring", "noise", "range", "smooth"});
    QVERIFY(keys);
    const std::vector<std::string> expected = {"'axis'", "1.50", "[ 1,\n  2 ]", ""};
    for (std::size_t i = 0; i < expected.size(); ++i)
        QCOMPARE((*keys)[i].value, expected[i]);
    QVERIFY(!controlKeysIn(source, 2, {"noise"}));
}

QTEST_APPLESS_MAIN(TestRigEdit)
#include "test_rig_edit.moc"
