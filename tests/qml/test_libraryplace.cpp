// The Library place: its files, cards, copies, and the editor with its live check.

#include <QDir>
#include <QSignalSpy>
#include <QtTest>

#include "base/textfile.h"
#include "presenter/manualpresenter.h"
#include "presenter/verdict.h"
#include "stubbench.h"
#include "stublibrary.h"

using namespace flowhand;

namespace {

QString textOf(const QString& file) {
    return QString::fromStdString(readFile(file.toStdString()).value_or(""));
}

/// A place with a copy of a flow open.
struct Editing {
    Editing() {
        library.setPrintFolder(desk.folders().own.c_str());
        library.enter();
        library.setSearch("twin_jet/taxi_out.toml");
        library.copyToOwn();
    }
    FileEditor& editor() { return *library.editor(); }

    test::StubDesk desk;
    CurrentLibrary files{desk, desk.folders()};
    test::StubBenchMaker rigs;
    LibraryPresenter library{desk, files, rigs};
};

} // namespace

class TestLibraryPlace : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyKindIsListed_data();
    void everyKindIsListed();
    void searchFindsFiles();
    void aBrokenFileIsListedAndSaysWhy();
    void shippedFilesAreOnlyRead();
    void aCopyIsOnesOwn();
    void theTextIsSavedAsItIsWritten();
    void whatIsWrongIsToldAtItsPlace();
    void typingIsCheckedInOnePieceMeanwhile();
    void aChangeFromOutsideIsShownAtOnce();
    void bothChangesAreKept_data();
    void bothChangesAreKept();
    void unsavedChangesSurviveTheEnd();
    void unsavedChangesHoldTheirPlace();
    void aFileThatIsGoneIsWrittenAgain();
    void aSaveGivesFlyTheNewFlow();
    void aSaveFromOutsideIsOfferedAtOnce();
    void theOwnFilesMayBeElsewhere();
    void whatIsWrittenStaysOpenThoughItMoves();
    void theCardIsPrinted_data();
    void theCardIsPrinted();
    void theManualHasItsPages();
};

void TestLibraryPlace::everyKindIsListed_data() {
    QTest::addColumn<int>("kind");
    QTest::addColumn<int>("least");
    QTest::newRow("flows") << int(LibraryPresenter::Flows) << 40;
    QTest::newRow("checklists") << int(LibraryPresenter::Checklists) << 20;
    QTest::newRow("scenarios") << int(LibraryPresenter::Scenarios) << 5;
    QTest::newRow("aircraft") << int(LibraryPresenter::Aircraft) << 3;
}

void TestLibraryPlace::everyKindIsListed() {
    QFETCH(int, kind);
    QFETCH(int, least);
    test::StubDesk desk;
    CurrentLibrary files(desk, desk.folders());
    test::StubBenchMaker rigs;
    LibraryPresenter library(desk, files, rigs);
    library.enter();
    library.setKind(kind);
    QVERIFY2(library.rows()->count() >= least, qPrintable(QString::number(library.rows()->count())));
    for (int row = 0; row < library.rows()->count(); ++row) {
        library.choose(row);
        QVERIFY(!library.isOwn());
        QVERIFY2(library.card().contains("not for real-world flight training"), qPrintable(library.title()));
        QVERIFY(!library.card().contains("<svg"));
        QCOMPARE(library.editor()->verdictKind(), int(Verdict::Done));
        QCOMPARE(library.title(), library.rows()->row<LibraryRow>(row).title);
        QCOMPARE(library.panel().isEmpty(), kind == LibraryPresenter::Scenarios);
    }
}

void TestLibraryPlace::searchFindsFiles() {
    test::StubDesk desk;
    CurrentLibrary files(desk, desk.folders());
    test::StubBenchMaker rigs;
    LibraryPresenter library(desk, files, rigs);
    library.enter();
    library.setSearch(" twin_jet/taxi_out ");
    QCOMPARE(library.rows()->count(), 1);
    QCOMPARE(library.title(), QString("Taxi out"));
    library.setSearch("no such flow");
    QCOMPARE(library.rows()->count(), 0);
    QVERIFY(library.card().isEmpty() && !library.editor()->isOpen());
}

void TestLibraryPlace::aBrokenFileIsListedAndSaysWhy() {
    Editing now;
    QVERIFY(writeFile(now.editor().file().toStdString(), "title = \"x\"\n[[step]]\n"));
    QTRY_VERIFY(now.library.rows()->row<LibraryRow>(0).broken);
    const auto row = now.library.rows()->row<LibraryRow>(0);
    QVERIFY(row.own && !row.detail.isEmpty());
}

void TestLibraryPlace::shippedFilesAreOnlyRead() {
    test::StubDesk desk;
    CurrentLibrary files(desk, desk.folders());
    test::StubBenchMaker rigs;
    LibraryPresenter library(desk, files, rigs);
    library.enter();
    library.edit();
    FileEditor& editor = *library.editor();
    QVERIFY(editor.isReadOnly());
    const QString before = editor.text();
    editor.edit("else");
    QVERIFY(!editor.isUnsaved() && !editor.save());
    QCOMPARE(textOf(editor.file()), before);
}

void TestLibraryPlace::aCopyIsOnesOwn() {
    Editing now;
    QVERIFY(now.library.isEditing() && now.library.isOwn());
    QVERIFY(now.editor().file().startsWith(now.library.ownFolder()));
    QVERIFY(!now.editor().isReadOnly());
    QCOMPARE(now.library.rows()->count(), 2); // the shipped one is there as before
    QVERIFY(now.library.rows()->row<LibraryRow>(0).own);
}

void TestLibraryPlace::theTextIsSavedAsItIsWritten() {
    Editing now;
    const QString before = now.editor().text();
    const QString after = "# A remark of my own, before everything.\n" + before + "\n# And one behind, \u00e4\u00f6.\n";
    now.editor().edit(after);
    QVERIFY(now.editor().isUnsaved());
    QCOMPARE(textOf(now.editor().file()), before);
    QVERIFY(now.editor().save());
    QVERIFY(!now.editor().isUnsaved());
    QCOMPARE(textOf(now.editor().file()), after);
    QCOMPARE(now.editor().verdictKind(), int(Verdict::Done));
}

void TestLibraryPlace::whatIsWrongIsToldAtItsPlace() {
    Editing now;
    QString text = now.editor().text();
    const qsizetype at = text.indexOf("done = \"taxi_light\"");
    text.replace(at, 19, "done = \"taxi_lamp\"");
    now.editor().edit(text);
    QCOMPARE(now.editor().findings()->count(), 1);
    const auto row = now.editor().findings()->row<TextFindingRow>(0);
    QCOMPARE(row.line, text.left(at).count('\n') + 1);
    QCOMPARE(row.kindOf, int(Verdict::Wrong));
    QCOMPARE(row.code, QString("unknown-name"));
    const int place = now.editor().positionOf(row.line, row.column);
    QVERIFY2(text.mid(place).startsWith("taxi_lamp"), qPrintable(text.mid(place, 20)));
    QVERIFY(now.library.card().isEmpty());
    now.editor().edit(text.replace("taxi_lamp", "taxi_light"));
    QCOMPARE(now.editor().findings()->count(), 0);
    QVERIFY(!now.library.card().isEmpty());
}

void TestLibraryPlace::typingIsCheckedInOnePieceMeanwhile() {
    Editing now;
    QSignalSpy checks(&now.editor(), &FileEditor::checked);
    now.desk.isHolding = true;
    const QString text = now.editor().text();
    for (const char* more : {"#", "# a", "# ab"})
        now.editor().edit(text + more);
    now.desk.answer();
    QCOMPARE(checks.count(), 1); // the first was overtaken; the last was asked once, and told
    QCOMPARE(now.editor().verdictKind(), int(Verdict::Done));
}

void TestLibraryPlace::aChangeFromOutsideIsShownAtOnce() {
    Editing now;
    QSignalSpy reloads(&now.editor(), &FileEditor::reloaded);
    const QString other = "# Another program's.\n" + now.editor().text();
    QVERIFY(writeFile(now.editor().file().toStdString(), other.toStdString()));
    QTRY_COMPARE(now.editor().text(), other);
    QVERIFY(!now.editor().isUnsaved() && !now.editor().isChangedOutside());
    // As many editors do: a new file takes the place of the old one.
    const QString third = "# A third.\n" + other;
    const QString beside = now.editor().file() + ".new";
    QVERIFY(writeFile(beside.toStdString(), third.toStdString()));
    QCOMPARE(std::rename(qPrintable(beside), qPrintable(now.editor().file())), 0);
    QTRY_COMPARE(now.editor().text(), third);
    QVERIFY(reloads.count() >= 2);
}

void TestLibraryPlace::bothChangesAreKept_data() {
    QTest::addColumn<bool>("isMineKept");
    QTest::newRow("mine") << true;
    QTest::newRow("theirs") << false;
}

void TestLibraryPlace::bothChangesAreKept() {
    QFETCH(bool, isMineKept);
    Editing now;
    const QString file = now.editor().file();
    const QString mine = "# Mine.\n" + now.editor().text();
    const QString theirs = "# Theirs.\n" + now.editor().text();
    now.editor().edit(mine);
    QVERIFY(writeFile(file.toStdString(), theirs.toStdString()));
    QTRY_VERIFY(now.editor().isChangedOutside());
    QCOMPARE(now.editor().text(), mine);
    QVERIFY(!now.editor().save()); // not before the person has chosen
    QCOMPARE(textOf(file), theirs);
    if (isMineKept) {
        now.editor().keepMine();
        QVERIFY(now.editor().save());
    } else {
        now.editor().revert();
    }
    QCOMPARE(now.editor().text(), isMineKept ? mine : theirs);
    QCOMPARE(textOf(file), isMineKept ? mine : theirs);
    QVERIFY(!now.editor().isUnsaved() && !now.editor().isChangedOutside());
}

void TestLibraryPlace::unsavedChangesSurviveTheEnd() {
    test::StubDesk desk;
    CurrentLibrary files(desk, desk.folders());
    test::StubBenchMaker rigs;
    QString mine;
    std::string file;
    {
        LibraryPresenter library(desk, files, rigs);
        library.enter();
        library.copyToOwn();
        mine = "# Not saved.\n" + library.editor()->text();
        file = library.editor()->file().toStdString();
        library.editor()->edit(mine);
    }
    QVERIFY(textOf(QString::fromStdString(file)) != mine);
    FileEditor editor(desk);
    editor.open(file, false);
    QCOMPARE(editor.text(), mine);
    QVERIFY(editor.isUnsaved() && !editor.notice().isEmpty());
    QVERIFY(editor.save());
    FileEditor again(desk);
    again.open(file, false);
    QVERIFY(!again.isUnsaved() && again.notice().isEmpty());
    QCOMPARE(again.text(), mine);
}

void TestLibraryPlace::unsavedChangesHoldTheirPlace() {
    Editing now;
    now.editor().edit("# Mine.\n" + now.editor().text());
    const QString text = now.editor().text();
    now.library.choose(1);
    now.library.setKind(LibraryPresenter::Scenarios);
    now.library.leaveEditor();
    now.library.enter();
    QVERIFY(now.library.isEditing() && now.library.isFailed());
    QCOMPARE(now.editor().text(), text);
    QCOMPARE(now.library.kind(), int(LibraryPresenter::Flows));
    now.editor().revert();
    now.library.leaveEditor();
    QVERIFY(!now.library.isEditing());
}

void TestLibraryPlace::aFileThatIsGoneIsWrittenAgain() {
    Editing now;
    const QString file = now.editor().file();
    const QString text = now.editor().text();
    QVERIFY(QFile::remove(file));
    QTRY_VERIFY(!now.editor().notice().isEmpty());
    now.editor().edit(text + "# still here\n");
    QVERIFY(now.editor().save());
    QCOMPARE(textOf(file), text + "# still here\n");
}

void TestLibraryPlace::aSaveGivesFlyTheNewFlow() {
    Editing now;
    const LibraryPtr before = now.files.now();
    now.editor().edit(now.editor().text().replace("title = \"Taxi out\"", "title = \"Taxi out, my way\""));
    QVERIFY(now.editor().save());
    QCOMPARE(now.files.now()->aircraft.back().flows.front().title, std::string("Taxi out, my way"));
    QCOMPARE(before->aircraft.back().flows.front().title, std::string("Taxi out")); // for whoever still flies it
    QCOMPARE(now.library.title(), QString("Taxi out, my way"));
}

void TestLibraryPlace::aSaveFromOutsideIsOfferedAtOnce() {
    Editing now;
    now.library.leaveEditor();
    const std::string file = now.editor().file().toStdString();
    const QString other = textOf(now.editor().file()).replace("\"Taxi out\"", "\"Taxi out, their way\"");
    QVERIFY(writeFile(file, other.toStdString()));
    QTRY_COMPARE(now.files.now()->aircraft.back().flows.front().title, std::string("Taxi out, their way"));
    QCOMPARE(now.library.rows()->row<LibraryRow>(0).title, QString("Taxi out, their way"));
    QTRY_COMPARE(now.library.title(), QString("Taxi out, their way"));
}

void TestLibraryPlace::theOwnFilesMayBeElsewhere() {
    Editing now;
    const std::size_t before = now.files.now()->aircraft.size();
    const QTemporaryDir folder;
    now.files.useOwn(folder.path().toStdString());
    QCOMPARE(now.files.now()->aircraft.size(), before - 1);
    QCOMPARE(now.library.ownFolder(), folder.path());
}

void TestLibraryPlace::whatIsWrittenStaysOpenThoughItMoves() {
    Editing now;
    const QString file = now.editor().file();
    now.editor().edit(
        now.editor().text().replace("title = \"Taxi out\"", "style = \"read-and-do\"\ntitle = \"Taxi out\""));
    QVERIFY(now.editor().save()); // is listed among the checklists now
    QCOMPARE(now.library.rows()->count(), 1);
    QVERIFY(now.library.isEditing());
    QCOMPARE(now.editor().file(), file);
    now.library.leaveEditor();
    QVERIFY(!now.library.isOwn());
    now.library.setKind(LibraryPresenter::Checklists);
    QVERIFY(now.library.isOwn());
}

void TestLibraryPlace::theCardIsPrinted_data() {
    QTest::addColumn<int>("kind");
    QTest::newRow("flow") << int(LibraryPresenter::Flows);
    QTest::newRow("checklist") << int(LibraryPresenter::Checklists);
    QTest::newRow("scenario") << int(LibraryPresenter::Scenarios);
    QTest::newRow("aircraft") << int(LibraryPresenter::Aircraft);
}

void TestLibraryPlace::theCardIsPrinted() {
    QFETCH(int, kind);
    test::StubDesk desk;
    CurrentLibrary files(desk, desk.folders());
    test::StubBenchMaker rigs;
    LibraryPresenter library(desk, files, rigs);
    library.setPrintFolder(QString::fromStdString(desk.folders().own) + "/printed");
    library.enter();
    library.setKind(kind);
    library.print();
    QVERIFY2(!library.isFailed(), qPrintable(library.message()));
    const QString file = library.message().section(": ", 1);
    QFile pdf(file);
    QVERIFY2(pdf.open(QIODevice::ReadOnly), qPrintable(file));
    const QByteArray content = pdf.readAll();
    QVERIFY(content.startsWith("%PDF-") && content.contains("%%EOF"));
    QVERIFY(content.size() > 10'000);
    library.setPrintFolder("/proc/nowhere");
    library.print();
    QVERIFY(library.isFailed());
}

void TestLibraryPlace::theManualHasItsPages() {
    ManualPresenter manual(test::StubDesk::manualFolder());
    manual.enter();
    QCOMPARE(manual.pages()->count(), 9);
    for (int row = 0; row < manual.pages()->count(); ++row) {
        manual.choose(row);
        QVERIFY(manual.text().contains("<h1>" + manual.title() + "</h1>"));
        QVERIFY(manual.text().contains("not for real-world flight training"));
    }
    ManualPresenter missing("/nowhere");
    missing.enter();
    QVERIFY(!missing.failure().isEmpty());
}

QTEST_MAIN(TestLibraryPlace)
#include "test_libraryplace.moc"
