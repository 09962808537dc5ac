// The kernel as referee of our decoder, a row a sample device: see README.md here.

#include <QMap>
#include <QSet>
#include <QtTest>

#include "guestrun.h"
#include "refereecorpus.h"

namespace {

constexpr int kMostSeconds = 400; // 15 s of work, on a computer with much else to do
constexpr int kFewestReports = 300;

/// What the program 'referee' told of one device.
struct Verdict {
    QStringList wrong;
    QStringList deviates;
    int reports = 0;
    int comparisons = 0;
};

QStringList texts(const std::vector<std::string>& strings) {
    QStringList list;
    for (const std::string& string : strings)
        list << QString::fromStdString(string);
    return list;
}

} // namespace

class TestReferee : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void everyDeviationIsDocumented();
    void agrees_data();
    void agrees();
    void everyDeviationOccurs();

private:
    std::vector<SampleDevice> m_samples = sampleDevices(TEST_DATA "/rig");
    QMap<QString, Verdict> m_verdicts;
    QString m_errors;
};

void TestReferee::initTestCase() {
    SKIP_WITHOUT_GUEST();
    const guest::Outcome outcome = guest::run(kMostSeconds, {"--processors", "1"}, {REFEREE, TEST_DATA "/rig"});
    SKIP_WITHOUT_KERNEL(outcome);
    m_errors = outcome.errors;
    QString device;
    for (const QString& line : outcome.output.split('\n', Qt::SkipEmptyParts)) {
        const QString word = line.section(": ", 0, 0);
        const QString rest = line.section(": ", 1);
        if (word == "device")
            device = rest;
        else if (word == "wrong")
            m_verdicts[device].wrong << rest;
        else if (word == "deviates")
            m_verdicts[device].deviates << rest;
        else if (word == "done")
            m_verdicts[device] = {m_verdicts[device].wrong, m_verdicts[device].deviates,
                                  rest.section(' ', 0, 0).toInt(), rest.section(' ', 1, 1).toInt()};
    }
}

void TestReferee::everyDeviationIsDocumented() {
    QFile file(KERNEL_FOLDER "/README.md");
    QVERIFY(file.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(file.readAll());
    for (const Deviation& deviation : deviations()) {
        const QString line = QString("| `%1` | %2 |").arg(deviation.id, deviation.reason);
        QVERIFY2(text.contains(line), qPrintable("README.md lacks the line " + line));
    }
}

void TestReferee::agrees_data() {
    QTest::addColumn<int>("index");
    for (std::size_t i = 0; i < m_samples.size(); ++i)
        QTest::newRow(m_samples[i].name.c_str()) << int(i);
}

void TestReferee::agrees() {
    QFETCH(int, index);
    const SampleDevice& sample = m_samples[std::size_t(index)];
    const QString name = QString::fromStdString(sample.name);
    QVERIFY2(m_verdicts.contains(name), qPrintable("the referee did not come to this device\n" + m_errors));
    const Verdict verdict = m_verdicts[name];
    QVERIFY2(verdict.wrong.isEmpty(), qPrintable(name + ":\n" + verdict.wrong.join('\n')));
    QVERIFY2(verdict.reports >= kFewestReports, qPrintable("the referee gave up on it\n" + m_errors));
    QVERIFY(verdict.comparisons >= verdict.reports);
    QStringList wanted = texts(sample.deviates);
    wanted.sort();
    QCOMPARE(verdict.deviates, wanted);
}

void TestReferee::everyDeviationOccurs() {
    QSet<QString> found;
    for (const Verdict& verdict : m_verdicts)
        for (const QString& id : verdict.deviates)
            found << id;
    for (const Deviation& deviation : deviations())
        QVERIFY2(found.contains(deviation.id),
                 qPrintable(QString("no device showed '%1' (%2): a listed deviation must occur")
                                .arg(deviation.id, deviation.reason)));
}

QTEST_GUILESS_MAIN(TestReferee)
#include "test_referee.moc"
