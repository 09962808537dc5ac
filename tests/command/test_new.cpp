// The start of an author's own file: written for each shipped aircraft, without a fault, flown as it is.

#include <QTemporaryDir>
#include <QtTest>

#include <filesystem>

#include "command/printed.h"

namespace fs = std::filesystem;

class TestNew : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void init();
    void isCleanAndFliesAtOnce_data();
    void isCleanAndFliesAtOnce();
    void refuses_data();
    void refuses();
    void leavesWhatIsThereAlone();

private:
    [[nodiscard]] QString procedures() const { return m_folder->filePath("procedures"); }
    [[nodiscard]] QString path(const char* file) const { return procedures() + "/" + file; }

    std::unique_ptr<QTemporaryDir> m_folder;
};

void TestNew::init() {
    m_folder = std::make_unique<QTemporaryDir>();
    fs::copy(PROCEDURES, procedures().toStdString(), fs::copy_options::recursive);
}

void TestNew::isCleanAndFliesAtOnce_data() {
    QTest::addColumn<QString>("aircraft");
    QTest::addColumn<QString>("hands");
    const QString flap = "due first: taxi_light on\ndue second, 1 s later: flap_lever ";
    QTest::newRow("jet") << "twin_jet" << flap + "4\n";
    QTest::newRow("turboprop") << "twin_turboprop" << flap + "15\n";
    QTest::newRow("single") << "light_single" << flap + "10\n";
}

void TestNew::isCleanAndFliesAtOnce() {
    QFETCH(QString, aircraft);
    QFETCH(QString, hands);
    const QString name = aircraft + "/my_first";
    const Printed made = flowhandWith({"new", "flow", name, "--procedures", procedures()});
    QVERIFY2(made.status == 0, qPrintable(made.err));
    const QString file = procedures() + "/" + name + ".toml";
    QVERIFY2(made.out.contains(file), qPrintable(made.out));
    const Printed checked = flowhandWith({"lint", file});
    QCOMPARE(checked.status, 0);
    QVERIFY2(checked.out.contains("nothing to complain of"), qPrintable(checked.out));
    const QString script = m_folder->filePath("my.hands");
    QFile writer(script);
    QVERIFY(writer.open(QIODevice::WriteOnly));
    writer.write(hands.toUtf8());
    writer.close();
    const Printed flown =
        flowhandWith({"practise", name, "--procedures", procedures(), "--hands", script, "--unstored"});
    QVERIFY2(flown.status == 0, qPrintable(flown.out + flown.err));
}

void TestNew::refuses_data() {
    QTest::addColumn<QString>("name");
    QTest::addColumn<QString>("says");
    QTest::newRow("no aircraft") << "my_first"
                                 << "say whose flow it is";
    QTest::newRow("no such aircraft") << "twin_jot/my_first"
                                      << "did you mean 'twin_jet'?";
    QTest::newRow("capital") << "twin_jet/MyFirst"
                             << "lower case letters";
    QTest::newRow("out of the folder") << "twin_jet/../my_first"
                                       << "lower case letters";
    QTest::newRow("there already") << "twin_jet/taxi_out"
                                   << "is there already";
}

void TestNew::refuses() {
    QFETCH(QString, name);
    QFETCH(QString, says);
    const Printed printed = flowhandWith({"new", "flow", name, "--procedures", procedures()});
    QCOMPARE(printed.status, 1);
    QVERIFY2(printed.err.contains(says), qPrintable(printed.err));
}

void TestNew::leavesWhatIsThereAlone() {
    QFile before(path("twin_jet/taxi_out.toml"));
    QVERIFY(before.open(QIODevice::ReadOnly));
    const QByteArray text = before.readAll();
    before.close();
    QCOMPARE(flowhandWith({"new", "flow", "twin_jet/taxi_out", "--procedures", procedures()}).status, 1);
    QVERIFY(before.open(QIODevice::ReadOnly));
    QCOMPARE(before.readAll(), text);
}

QTEST_GUILESS_MAIN(TestNew)
#include "test_new.moc"
