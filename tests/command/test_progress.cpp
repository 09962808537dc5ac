// 'flowhand progress', as a person types it, in this process.

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QtTest>

#include "base/textfile.h"
#include "command/printed.h"
#include "store/archive.h"
#include "store/store.h"

using namespace flowhand;

namespace {

constexpr std::int64_t kDay = 86'400'000;

/// A shipped run, as if a person had flown it on the screen so many days ago.
void add(Store& store, const std::string& name, int daysAgo, const std::string& pilot, const std::string& rig = {}) {
    const std::string path = ASSETS "/runs/" + name + ".flowrun";
    Result<ArchivedRun> archived = readArchive(*readFile(path, kLargestArchive), path);
    if (!archived)
        qFatal("%s", describe(archived.error()).c_str());
    StoredRun& run = archived->run;
    for (Sample& sample : run.samples)
        if (sample.actor == Actor::Hand)
            sample.origin = Origin::Screen;
    run.header.startedUnixMillis = QDateTime::currentMSecsSinceEpoch() - daysAgo * kDay;
    run.header.pilot = pilot;
    run.header.rigTitle = rig;
    archived->hash = name + std::to_string(daysAgo) + pilot; // it is not the run of that archive any more
    if (const Result<std::int64_t> id = store.add(*archived); !id)
        qFatal("%s", describe(id.error()).c_str());
}

QJsonObject objectIn(const QString& text) {
    return QJsonDocument::fromJson(text.toUtf8()).object();
}

} // namespace

class TestProgress : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void thePlanComesFirst();
    void aFlowAlone();
    void jsonHasTheSame();
    void pilotsAreMixedOnlyWhenAsked();
    void scriptedHandsAreNoPractice();
    void badInputIsAnError_data();
    void badInputIsAnError();

private:
    QTemporaryDir m_folder;
    QString m_db = m_folder.filePath("runs.sqlite");
    Printed progress(const QStringList& arguments) const {
        return flowhandWith(QStringList{"progress", "--db", m_db} + arguments);
    }
};

void TestProgress::initTestCase() {
    Store store = std::move(*Store::open(m_db.toStdString()));
    add(store, "take_off_good", 20, "Ada", "Desk");
    for (const int daysAgo : {9, 7, 6})
        add(store, "take_off_faulty", daysAgo, "Kim");
    add(store, "take_off_good", 5, "Kim");
    add(store, "taxi_out_good", 1, "Kim");
}

void TestProgress::thePlanComesFirst() {
    const Printed printed = progress({});
    QCOMPARE(printed.status, 0);
    QVERIFY2(printed.out.startsWith("Progress of Kim, on on-screen controls: 5 runs."), qPrintable(printed.out));
    QVERIFY2(printed.out.contains("  1. Take-off to flap retraction. Last flown 5 days ago: by the forgetting model"),
             qPrintable(printed.out));
    QVERIFY(printed.out.contains("unproven"));
    QVERIFY(printed.out.contains("not for real-world flight training"));
    QVERIFY(printed.out.contains(", 3 of 4: "));
    QVERIFY(printed.out.contains("Ada, on Desk: 1 run\n"));
    for (const QString& line : printed.out.split('\n'))
        QVERIFY2(line.size() <= 100, qPrintable(line));
}

void TestProgress::aFlowAlone() {
    const Printed printed = progress({"--flow", "twin_jet/taxi_out"});
    QCOMPARE(printed.status, 0);
    QVERIFY(printed.out.contains("(twin_jet/taxi_out)"));
    QVERIFY(!printed.out.contains("(twin_jet/take_off)") && !printed.out.contains("Today"));
}

void TestProgress::jsonHasTheSame() {
    const QJsonObject all = objectIn(progress({"--json"}).out);
    QCOMPARE(all["pilot"].toString(), QString("Kim"));
    QCOMPARE(all["plan"].toObject()["today"].toArray().first().toObject()["flow"].toString(), QString("take_off"));
    QCOMPARE(all["plan"].toObject()["due_on_days_ahead"].toArray().size(), 7);
    const QJsonArray flows = all["flows"].toArray();
    QCOMPARE(flows.size(), 2);
    const QJsonObject takeOff = flows.last().toObject();
    QCOMPARE(takeOff["runs"].toArray().size(), 4);
    QVERIFY(takeOff["points_per_run"].isDouble());
    QVERIFY(takeOff["learning_curve"].isNull()); // too few runs
    QCOMPARE(takeOff["goes_wrong"].toArray().first().toObject()["runs"].toInt(), 4);
}

void TestProgress::pilotsAreMixedOnlyWhenAsked() {
    const QJsonObject ada = objectIn(progress({"--pilot", "Ada", "--json"}).out);
    QCOMPARE(ada["rig"].toString(), QString("Desk"));
    QCOMPARE(ada["flows"].toArray().size(), 1);
    const QJsonObject all = objectIn(progress({"--all-pilots", "--all-rigs", "--json"}).out);
    QVERIFY(all["pilot"].isNull() && all["rig"].isNull());
    QCOMPARE(all["flows"].toArray().last().toObject()["runs"].toArray().size(), 5);
}

void TestProgress::scriptedHandsAreNoPractice() {
    const QString db = m_folder.filePath("demonstrations.sqlite");
    QCOMPARE(flowhandWith({"practise", "twin_jet/take_off", "--demonstration", "--db", db}).status, 0);
    const Printed printed = flowhandWith({"progress", "--db", db});
    QCOMPARE(printed.status, 0);
    QVERIFY2(printed.out.startsWith("No run counts as practice yet"), qPrintable(printed.out));
}

void TestProgress::badInputIsAnError_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QString>("says");
    QTest::newRow("pilot") << QStringList{"--pilot", "Kam"} << "did you mean 'Kim'?";
    QTest::newRow("rig") << QStringList{"--pilot", "Kim", "--rig", "Desk"} << "there are runs on on-screen controls";
    QTest::newRow("flow") << QStringList{"--flow", "take_of"} << "there is no flow 'take_of'";
    QTest::newRow("both") << QStringList{"--pilot", "Kim", "--all-pilots"} << "excludes";
    QTest::newRow("file") << QStringList{"--db", "/nowhere/runs.sqlite"} << "there are no runs yet";
}

void TestProgress::badInputIsAnError() {
    QFETCH(QStringList, arguments);
    QFETCH(QString, says);
    const Printed printed = flowhandWith(
        QStringList{"progress"} + (arguments.contains("--db") ? QStringList() : QStringList{"--db", m_db}) + arguments);
    QCOMPARE(printed.status, 1);
    QVERIFY2(printed.err.contains(says), qPrintable(printed.err));
}

QTEST_APPLESS_MAIN(TestProgress)
#include "test_progress.moc"
