#include <QtTest>
#include <sstream>

#include <nlohmann/json.hpp>

#include "command/command.h"
#include "device/recording.h"
#include "hidtext.h"
#include "publisheddevices.h"

using namespace flowhand;
using Json = nlohmann::json;

namespace {

/// What a command printed, and its exit status.
struct Outcome {
    int status = -1;
    std::string out;
    std::string err;

    /// JSON lines.
    [[nodiscard]] std::vector<Json> lines() const {
        std::vector<Json> parsed;
        std::istringstream stream(out);
        for (std::string line; std::getline(stream, line);)
            parsed.push_back(Json::parse(line));
        return parsed;
    }
};

Outcome call(std::vector<std::string> arguments) {
    std::ostringstream out;
    std::ostringstream err;
    CommandLine line{out, err, {}};
    CLI::App app;
    addDevicesCommand(app, line);
    addDecodeCommand(app, line);
    std::reverse(arguments.begin(), arguments.end()); // as CLI11 takes them
    app.parse(arguments);
    const int status = line.chosen();
    return {status, out.str(), err.str()};
}

} // namespace

class TestDeviceCommands : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() { QVERIFY(m_folder.isValid()); }
    void reportsAsJsonLines();
    void arraysTellUsages();
    void filesOfEveryForm_data();
    void filesOfEveryForm();
    void descriptorInWords();
    void mistakesAreErrors_data();
    void mistakesAreErrors();
    void ruleForDevicesThatAreNotThere();

private:
    std::string write(const QString& name, const QByteArray& content) {
        QFile file(m_folder.filePath(name));
        if (!file.open(QFile::WriteOnly) || file.write(content) != content.size())
            return {};
        return file.fileName().toStdString();
    }

    QTemporaryDir m_folder;
};

void TestDeviceCommands::reportsAsJsonLines() {
    const std::string reports = write("reports", "81 7F 00 4F\n0.5: 7F 81 FF 82\n7F\n");
    const Outcome outcome = call({"decode", "--descriptor", published::kJoystick, "--reports", reports, "--json"});
    QCOMPARE(outcome.status, kExitDone);
    const std::vector<Json> lines = outcome.lines();
    QCOMPARE(lines.size(), std::size_t(4));
    QCOMPARE(lines[0]["applications"][0]["name"], Json("Joystick"));
    QCOMPARE(lines[0]["items"][2]["offset"], Json(4));
    QVERIFY(!lines[1].contains("time"));
    QCOMPARE(lines[2]["time"], Json(0.5));
    QCOMPARE(lines[1]["controls"].size(), std::size_t(8));
    // HID 1.11, D.1: the throttle is the first byte, the hat the lower four bits of the fourth
    QCOMPARE(lines[1]["controls"][0],
             Json::parse(R"({"report_id": 0, "usage_page": 2, "usage": 187, "bit": 0, "size": 8,
                                                     "raw": -127, "value": -127, "null": false})"));
    QCOMPARE(lines[1]["controls"][3],
             Json::parse(R"({"report_id": 0, "usage_page": 1, "usage": 57, "bit": 24, "size": 4,
                                                     "raw": 15, "value": null, "null": true})"));
    QCOMPARE(lines[3]["controls"].size(), std::size_t(1)); // cut short
}

void TestDeviceCommands::arraysTellUsages() {
    const std::string reports = write("reports", "02 00 04 05 00 00 00 00\n");
    const Outcome outcome = call({"decode", "--descriptor", published::kKeyboard, "--reports", reports, "--json"});
    // HID 1.11, E.6: modifiers, a constant byte, six keys
    QCOMPARE(outcome.lines().at(1)["arrays"], Json::parse(R"([{"bit": 16, "usages": [458756, 458757]}])"));
    QCOMPARE(outcome.lines().at(1)["controls"].size(), std::size_t(8));
}

void TestDeviceCommands::filesOfEveryForm_data() {
    QTest::addColumn<QByteArray>("content");
    const QByteArray hex = published::kMouse;
    QTest::newRow("bytes, as sysfs has them") << QByteArray::fromHex(hex);
    QTest::newRow("hexadecimal") << hex;
    QTest::newRow("hexadecimal in lines") << QByteArray("# a mouse\n" + hex.left(60) + "\n" + hex.mid(60) + "\n");
    QTest::newRow("a recording") << QByteArray("device: 1209:F1FE Mouse\ndescriptor: " + hex + "\n0.1: 00 01 02\n");
}

void TestDeviceCommands::filesOfEveryForm() {
    QFETCH(QByteArray, content);
    const Outcome outcome = call({"decode", "--descriptor", write("descriptor", content), "--json"});
    QCOMPARE(outcome.status, kExitDone);
    QCOMPARE(outcome.lines().at(0)["bytes"], Json(0x32));
    QCOMPARE(outcome.lines().at(0)["inputs"].size(), std::size_t(5));
}

void TestDeviceCommands::descriptorInWords() {
    const std::string reports = write("reports", "1.5: 05 FF 02\n");
    const Outcome outcome = call({"decode", "--descriptor", published::kMouse, "--reports", reports});
    QCOMPARE(outcome.status, kExitDone);
    const QString out = QString::fromStdString(outcome.out);
    for (const char* words :
         {"    4  A1 01           Collection (Application)\n", "    6  09 01             Usage (Pointer)\n",
          "5 inputs\n", "  X: relative -127 to 127\n", "1.500000: 05 FF 02\n", "  X = -1\n"})
        QVERIFY2(out.contains(words), words);
}

void TestDeviceCommands::mistakesAreErrors_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QString>("words");
    QTest::newRow("malformed descriptor") << QStringList{"decode", "--descriptor", "05 01 09 04 A1 01 26 FF"}
                                          << "malformed report descriptor at byte 6: ";
    QTest::newRow("neither file nor bytes") << QStringList{"decode", "--descriptor", "no such"} << "neither a file nor";
    QTest::newRow("no reports") << QStringList{"decode", "--descriptor", "05 01", "--reports", "/nowhere/at/all"}
                                << "/nowhere/at/all: this file cannot be opened";
    QTest::newRow("no id") << QStringList{"devices", "stick"} << "'stick' names no device";
    QTest::newRow("id too long") << QStringList{"devices", "1209:12345"} << "names no device";
    QTest::newRow("not connected") << QStringList{"devices", "FFFF:FFFE", "--watch"} << "no controls are connected";
}

void TestDeviceCommands::mistakesAreErrors() {
    QFETCH(QStringList, arguments);
    QFETCH(QString, words);
    std::vector<std::string> given;
    for (const QString& argument : arguments)
        given.push_back(argument.toStdString());
    const Outcome outcome = call(given);
    QCOMPARE(outcome.status, kExitError);
    QVERIFY2(QString::fromStdString(outcome.err).contains(words), outcome.err.c_str());
}

void TestDeviceCommands::ruleForDevicesThatAreNotThere() {
    const Outcome outcome = call({"devices", "1209:f110", "--rule"});
    QCOMPARE(outcome.status, kExitDone);
    QVERIFY2(outcome.out.find("KERNELS==\"*:1209:F110.*\"") != std::string::npos, outcome.out.c_str());
}

QTEST_APPLESS_MAIN(TestDeviceCommands)
#include "test_devicecommands.moc"
