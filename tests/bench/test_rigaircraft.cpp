// Which aircraft a rig file is written for, whole or with an error in it.

#include <filesystem>

#include <QtTest>

#include "base/textfile.h"
#include "bench/rigaircraft.h"

using namespace flowhand;

class TestRigAircraft : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void isTheOneWhoseControlsItWires_data() {
        QTest::addColumn<QString>("file");
        QTest::addColumn<QString>("aircraft");
        QTest::addColumn<QString>("wrong"); ///< put in place of the last signal's name
        for (const auto& entry : std::filesystem::recursive_directory_iterator(ASSETS "/rigs")) {
            const std::string folder = entry.path().parent_path().filename();
            if (entry.path().extension() != ".toml" || folder == "rigs")
                continue;
            for (const char* wrong : {"", "no_such_lever"})
                QTest::addRow("%s %s %s", folder.c_str(), entry.path().stem().c_str(), wrong)
                    << QString::fromStdString(entry.path()) << QString::fromStdString(folder) << QString(wrong);
        }
    }
    void isTheOneWhoseControlsItWires() {
        QFETCH(QString, file);
        QFETCH(QString, aircraft);
        QFETCH(QString, wrong);
        Problems ofLibrary;
        const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, ofLibrary);
        QString source = QString::fromStdString(*readFile(file.toStdString()));
        const qsizetype last = source.lastIndexOf("signal = \"") + qsizetype(qstrlen("signal = \""));
        if (!wrong.isEmpty())
            source.replace(last, source.indexOf('"', last) - last, wrong);
        Problems problems;
        const std::size_t best = aircraftOfRig(source.toStdString(), file.toStdString(), library, problems);
        QCOMPARE(QString::fromStdString(library[best].aircraft->folder), aircraft);
        QCOMPARE(problems.hasErrors(), !wrong.isEmpty());
        if (!wrong.isEmpty()) // the person's mistake, and nothing of other aircraft's controls
            QVERIFY2(QString::fromStdString(problems.firstError().message).contains(wrong),
                     problems.firstError().message.c_str());
    }

    void isTheFirstWhereNothingTells() {
        Problems ofLibrary, problems;
        const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, ofLibrary);
        QCOMPARE(aircraftOfRig("format = [", "rig.toml", library, problems), std::size_t(0));
        QVERIFY(problems.hasErrors());
    }
};

QTEST_APPLESS_MAIN(TestRigAircraft)
#include "test_rigaircraft.moc"
