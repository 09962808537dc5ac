#include <QtTest>

#include <QTemporaryDir>

#include "bench.h"
#include "problemtext.h"
#include "procedure/library.h"

using namespace flowhand;

class TestLibrary : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void init();
    void flowsStandInTheOrderOfTheFlight();
    void aListSaysTheOrderWithinAPhase();
    void aBrokenFlowIsLeftOutAndNamed();
    void aBrokenAircraftIsLeftOutAndNamed();
    void otherFilesAreNoFlows();
    void aMissingFolderIsAnError();

private:
    void write(const QString& path, const QString& text) const;
    [[nodiscard]] std::string root() const { return m_folder->path().toStdString(); }

    std::unique_ptr<QTemporaryDir> m_folder;
};

namespace {

QString flowIn(const char* phase) {
    return QString("format = 1\ntitle = \"Flow\"\nphases = [\"%1\"]\nseat = \"pilot\"\n[[step]]\nid = \"light\"\n"
                   "title = \"Light on\"\ndone = \"light\"\n")
        .arg(phase);
}

} // namespace

void TestLibrary::init() {
    m_folder = std::make_unique<QTemporaryDir>();
    QVERIFY(m_folder->isValid());
    write("bench/aircraft.toml", benchText("aircraft.toml"));
    write("bench/a.toml", flowIn("landing"));
    write("bench/b.toml", flowIn("taxi_out"));
}

void TestLibrary::write(const QString& path, const QString& text) const {
    const QString whole = m_folder->filePath(path);
    QVERIFY(QDir().mkpath(QFileInfo(whole).path()));
    QFile file(whole);
    QVERIFY(file.open(QIODevice::WriteOnly));
    QVERIFY(file.write(text.toUtf8()) == text.toUtf8().size());
}

void TestLibrary::flowsStandInTheOrderOfTheFlight() {
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(root(), problems);
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
    QCOMPARE(library.size(), std::size_t(1));
    QCOMPARE(library[0].aircraft->folder, std::string("bench"));
    QCOMPARE(library[0].flows.size(), std::size_t(2));
    QCOMPARE(library[0].flows[0].id, std::string("b"));
    QCOMPARE(library[0].flows[1].id, std::string("a"));
}

void TestLibrary::aListSaysTheOrderWithinAPhase() {
    for (const char* id : {"early", "late", "other"})
        write(QString("bench/%1.toml").arg(id), flowIn("taxi_out"));
    write("bench/aircraft.toml",
          QString(benchText("aircraft.toml")).replace("[values]", "flows = [\"late\", \"early\", \"none\"]\n[values]"));
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(root(), problems);
    std::vector<std::string> ids;
    for (const Flow& flow : library[0].flows)
        ids.push_back(flow.id);
    QCOMPARE(ids, (std::vector<std::string>{"late", "early", "b", "other", "a"}));
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
}

void TestLibrary::aBrokenFlowIsLeftOutAndNamed() {
    write("bench/c.toml", flowIn("nowhere"));
    write("bench/d.toml", "title = ");
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(root(), problems);
    QCOMPARE(library[0].flows.size(), std::size_t(2));
    QCOMPARE(problems.all().size(), std::size_t(2));
    QCOMPARE(problems.all()[0].error.code, std::string("unknown-phase"));
    QCOMPARE(problems.all()[0].error.place.file, root() + "/bench/c.toml");
    QCOMPARE(problems.all()[1].error.code, std::string("bad-toml"));
}

void TestLibrary::aBrokenAircraftIsLeftOutAndNamed() {
    write("other/aircraft.toml", "format = 1\n");
    Problems problems;
    QCOMPARE(loadLibrary(root(), problems).size(), std::size_t(1));
    QVERIFY(problems.hasErrors());
    QCOMPARE(problems.firstError().place.file, root() + "/other/aircraft.toml");
}

void TestLibrary::otherFilesAreNoFlows() {
    write("bench/practice.toml", "format = 1\n");
    write("bench/notes.txt", "[[step]]\n");
    write("ground/ground.toml", "format = 1\n");
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(root(), problems);
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
    QCOMPARE(library[0].flows.size(), std::size_t(2));
}

void TestLibrary::aMissingFolderIsAnError() {
    Problems problems;
    QVERIFY(loadLibrary(root() + "/nowhere", problems).empty());
    QCOMPARE(problems.firstError().code, std::string("unreadable-folder"));
}

QTEST_APPLESS_MAIN(TestLibrary)
#include "test_library.moc"
