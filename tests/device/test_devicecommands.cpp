#include <QtTest>
#include <sstream>

#include <nlohmann/json.hpp>

#include "command/command.h"
#include "command/identify.h"
#include "command/livedevices.h"
#include "device/deviceclass.h"
#include "device/recording.h"
#include "fakehid.h"
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
    void ruleForARig();
    void privateDevicesAreLeftAlone();
    void keyboardsAreNotRecorded();
    void theMovedUnitIsIdentified();
    void nothingMoved();
    void countersInWords();

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
    QByteArray inC;
    for (int at = 0; at < hex.size(); at += 3)
        inC += "0x" + hex.mid(at, 2) + ", // item\n";
    QTest::newRow("as C writes it") << inC;
    QTest::newRow("a recording of a device with any name") << QByteArray("device: 1209:F1FE P\xC3\xA9"
                                                                         "dale\ndescriptor: " +
                                                                         hex + "\n0.1: 00 01 02\n");
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

void TestDeviceCommands::ruleForARig() {
    const std::string rig = write("rig.toml", "format = 1\ntitle = 'Desk'\n[[device]]\nname = 'a'\nid = '1209:F101'\n"
                                              "[[device]]\nname = 'b'\nid = '1209:F102'\nport = 'p'\n"
                                              "[[device]]\nname = 'c'\nid = '1209:F102'\nport = 'q'\n");
    const Outcome outcome = call({"devices", "--rule", "--rig", rig});
    QCOMPARE(outcome.status, kExitDone);
    const QString out = QString::fromStdString(outcome.out);
    QCOMPARE(out.count("\nSUBSYSTEM=="), 2); // just these, each once
    QVERIFY(out.contains("*:1209:F101.*") && out.contains("*:1209:F102.*"));
    const Outcome bad = call({"devices", "--rule", "--rig", write("bad.toml", "format = 1\n[[device]]\nname = 'a'\n")});
    QCOMPARE(bad.status, kExitError);
    QVERIFY2(bad.err.find("bad.toml:2:1: ") != std::string::npos, bad.err.c_str());
    QVERIFY(bad.out.empty());
}

namespace {

DeviceInfo unit(const std::string& path, DeviceClass deviceClass) {
    DeviceInfo info;
    info.path = path;
    info.vendor = 0x1209;
    info.product = 0x0001;
    info.port = "port " + path;
    info.name = "Box";
    info.deviceClass = deviceClass;
    info.readable = true;
    return info;
}

using Classes = std::vector<DeviceClass>;

/// The classes that may be opened of a unit's parts; or the error's code.
std::string opened(const Classes& parts, bool areNamed, bool areNamedByRig) {
    std::vector<DeviceInfo> devices;
    for (const DeviceClass part : parts)
        devices.push_back(unit(className(part), part));
    const auto found = devicesToOpen(devices, areNamed, areNamedByRig);
    if (!found)
        return found.error().code;
    std::string names;
    for (const DeviceInfo& device : *found)
        names += device.path + ".";
    return names;
}

constexpr const char* kAxis = "05 01 09 04 A1 01 09 30 15 00 26 FF 00 75 08 95 01 81 02 C0";

} // namespace

void TestDeviceCommands::privateDevicesAreLeftAlone() {
    using enum DeviceClass;
    QCOMPARE(opened({Controls, Keyboard, Mouse, SecurityKey, Other}, false, false), std::string("controls."));
    QCOMPARE(opened({Keyboard, Mouse, SecurityKey, Other}, false, false), std::string("no-device"));
    QCOMPARE(opened({Controls, Keyboard}, true, false), std::string("controls.")); // the keyboard part of a composite
    for (const DeviceClass left : {Keyboard, Mouse, SecurityKey}) {
        QCOMPARE(opened({left}, true, false), std::string("private-device")); // an id typed here is not enough
        QCOMPARE(opened({left}, true, true), std::string(className(left)) + ".");
    }
    QCOMPARE(opened({Other}, true, false), std::string("other."));
}

void TestDeviceCommands::keyboardsAreNotRecorded() {
    FakeHid hid;
    hid.plug(unit("k", DeviceClass::Keyboard), bytesOf(published::kKeyboard));
    std::ostringstream out;
    std::ostringstream err;
    CommandLine line{out, err, {}};
    const std::string file = m_folder.filePath("keys").toStdString();
    QCOMPARE(recordDevice(line, hid, unit("k", DeviceClass::Keyboard), file, {}), kExitError);
    QVERIFY2(err.str().find("types like a keyboard") != std::string::npos, err.str().c_str());
    QCOMPARE(hid.opens("k"), 0);
    QVERIFY(!QFile::exists(QString::fromStdString(file)));
}

void TestDeviceCommands::theMovedUnitIsIdentified() {
    FakeHid hid;
    const std::vector<DeviceInfo> devices{unit("a", DeviceClass::Controls), unit("b", DeviceClass::Controls)};
    for (const DeviceInfo& device : devices)
        hid.plug(device, bytesOf(kAxis));
    hid.send("a", {100});
    for (const std::uint8_t value : {100, 100, 200, 100})
        hid.send("b", {value});
    std::ostringstream out;
    std::ostringstream err;
    CommandLine line{out, err, {}};
    LookOptions options;
    options.asJson = true;
    QCOMPARE(identifyDevice(line, hid, devices, options, Duration{}), kExitDone); // no rest: all counts as movement
    const Json found = Json::parse(out.str());
    QCOMPARE(found["port"], Json("port b"));
    QCOMPARE(found["input"], Json("X"));
}

void TestDeviceCommands::nothingMoved() {
    FakeHid hid;
    const std::vector<DeviceInfo> devices{unit("a", DeviceClass::Controls)};
    hid.plug(devices.front(), bytesOf(kAxis));
    std::ostringstream out;
    std::ostringstream err;
    CommandLine line{out, err, {}};
    LookOptions options;
    options.length = std::chrono::milliseconds(1);
    QCOMPARE(identifyDevice(line, hid, devices, options, Duration{}), kExitError);
    QVERIFY(err.str().find("no unit moved") != std::string::npos);
}

void TestDeviceCommands::countersInWords() {
    DeviceCounters counters;
    QCOMPARE(countersText("yoke", counters), std::string("yoke  0 reports"));
    counters.reports = 3000;
    counters.period = std::chrono::microseconds(1001);
    QCOMPARE(countersText("yoke", counters), std::string("yoke  3000 reports, 999 a second"));
    counters.suspected = 12;
    counters.truncated = 1;
    QCOMPARE(countersText("yoke", counters), std::string("yoke  3000 reports, 999 a second, 12 may have been lost, 1 "
                                                         "shorter than the descriptor says"));
}

QTEST_APPLESS_MAIN(TestDeviceCommands)
#include "test_devicecommands.moc"
