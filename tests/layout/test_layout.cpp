// The folders' order, as the table in DEVELOPERS.md has it: what each file of core/ may include.

#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>
#include <QtTest>

namespace {

struct Folder {
    const char* name;
    QStringList below; ///< that it may include, directly or through others
};

const QList<Folder>& folders() {
    static const QList<Folder> all = [] {
        const QStringList condition{"base"};
        const QStringList procedure = condition + QStringList{"condition"};
        const QStringList device{"base"};
        const QStringList rig = device + QStringList{"device"};
        const QStringList feed{"base"};
        const QStringList aircraft = procedure + QStringList{"procedure"};
        const QStringList bench = rig + procedure + QStringList{"rig", "procedure"};
        const QStringList session = rig + aircraft + QStringList{"rig", "aircraft", "feed"};
        const QStringList store = session + QStringList{"session"};
        const QStringList review = session + QStringList{"session"};
        const QStringList progress = store + QStringList{"store"};
        const QStringList report = store + QStringList{"store", "review", "bench", "progress"};
        const QStringList command = report + QStringList{"report"};
        return QList<Folder>{
            {"base", {}},       {"device", device},     {"condition", condition}, {"procedure", procedure},
            {"rig", rig},       {"aircraft", aircraft}, {"feed", feed},           {"session", session},
            {"review", review}, {"store", store},       {"bench", bench},         {"progress", progress},
            {"report", report}, {"command", command}};
    }();
    return all;
}

/// Libraries that one folder alone may know.
struct Library {
    const char* header;
    const char* where;
};

constexpr Library kLibraries[] = {{"sqlite3.h", "core/store/"},
                                  {"hidapi", "core/device/"},
                                  {"libserialport.h", "core/feed/"},
                                  {"toml++", "core/base/tomlfile.cpp"},
                                  {"CLI/", "core/command/"}};

} // namespace

class TestLayout : public QObject {
    Q_OBJECT

private slots:
    void everyFolderIsInTheTable();
    void includesPointDown_data();
    void includesPointDown();
};

void TestLayout::everyFolderIsInTheTable() {
    QStringList known;
    for (const Folder& folder : folders())
        known << folder.name;
    known.sort();
    QCOMPARE(QDir("core").entryList(QDir::Dirs | QDir::NoDotAndDotDot, QDir::Name), known);
}

void TestLayout::includesPointDown_data() {
    QTest::addColumn<QString>("file");
    QTest::addColumn<QStringList>("allowed");
    for (const Folder& folder : folders()) {
        QDirIterator files(QString("core/") + folder.name, {"*.h", "*.cpp"}, QDir::Files, QDirIterator::Subdirectories);
        while (files.hasNext()) {
            const QString file = files.next();
            QTest::newRow(qPrintable(file)) << file << (folder.below + QStringList{folder.name});
        }
    }
}

void TestLayout::includesPointDown() {
    QFETCH(QString, file);
    QFETCH(QStringList, allowed);
    QFile source(file);
    QVERIFY(source.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(source.readAll());
    static const QRegularExpression include(R"(^\s*#\s*include\s*([<"])([^>"]+)[>"])",
                                            QRegularExpression::MultilineOption);
    for (auto matches = include.globalMatch(text); matches.hasNext();) {
        const QRegularExpressionMatch match = matches.next();
        const QString header = match.captured(2);
        if (match.captured(1) == "\"")
            QVERIFY2(allowed.contains(header.section('/', 0, 0)), qPrintable("may not include " + header));
        QVERIFY2(!QRegularExpression("^Q[A-Z]|^Qt").match(header).hasMatch(), qPrintable("Qt in core: " + header));
        QVERIFY2(header != "ranges" && header != "format", qPrintable("not in every compiler: " + header));
        for (const Library& library : kLibraries)
            if (header.startsWith(library.header))
                QVERIFY2(file.contains(library.where), qPrintable(header + " belongs into " + library.where));
    }
}

QTEST_APPLESS_MAIN(TestLayout)
#include "test_layout.moc"
