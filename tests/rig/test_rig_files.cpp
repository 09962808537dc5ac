#include <QtTest>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "device/descriptor.h"
#include "device/inputs.h"
#include "rig/controls.h"
#include "rig/rigfile.h"
#include "twinjet.h"

using namespace flowhand;

class TestRigFiles : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void badFilesAreRefused_data();
    void badFilesAreRefused();
    void allProblemsAreFound();
    void warnings();
    void missingInterlocksAreRemarks();
    void tolerancesAreReadAndWritten();
    void tolerancesOutOfReason_data();
    void tolerancesOutOfReason();
    void whatIsAskedForIsRemarked();
    void missingInputNamesTheOffer();
    void inputOfTheWrongKind();
    void rangeOutsideTheDevice();
    void shippedRigsLoad_data();
    void shippedRigsLoad();
    void examplesOfTheReadmeAreGood_data();
    void examplesOfTheReadmeAreGood();
    void readmeListsEveryWiring_data();
    void readmeListsEveryWiring();
    void fullCockpitFitsItsDevices();
    void savedFileIsTheNewOne();
    void badFileIsNotSaved();
    void unwritableFolderKeepsTheOldFile();
    void savesThroughALink();
};

namespace {

// Line 1 of `controls` is line 6 of the file.
const std::string kHead = "format = 1\ntitle = \"Test\"\n[[device]]\nname = \"unit\"\nid = \"1209:F101\"\n";
const std::string kThrust = "[[control]]\nsignal = \"thrust_lever_1\"\nwiring = \"axis\"\ninput = \"X\"\n";
const std::string kFlap = "[[control]]\nsignal = \"flap_lever\"\nwiring = \"gates\"\ninput = \"X\"\nband = 50\n";
const std::string kGood = kHead + kThrust + "range = [0, 4000]\n";

std::optional<Rig> parse(const std::string& source, Problems& problems) {
    return Rig::parse(source, "test.toml", twinJet().signals, twinJet().controlCount, problems);
}

std::string contentOf(const std::string& path) {
    std::ifstream stream(path, std::ios::binary);
    std::ostringstream content;
    content << stream.rdbuf();
    return content.str();
}

std::vector<InputInfo> inputsOfHex(const std::string& name) {
    std::istringstream words(contentOf(TEST_DATA "/rig/" + name + ".hex"));
    std::vector<std::uint8_t> bytes;
    for (std::string word; words >> word;)
        bytes.push_back(static_cast<std::uint8_t>(std::stoi(word, nullptr, 16)));
    const Result<Descriptor> descriptor = parseDescriptor(bytes);
    return descriptor ? makeInputs(*descriptor).inputs : std::vector<InputInfo>();
}

/// A folder of its own, gone at the end.
class Folder {
public:
    Folder() : m_path(std::filesystem::temp_directory_path() / "flowhand-rig-XXXXXX") {
        std::string name = m_path.string();
        m_path = mkdtemp(name.data());
    }
    ~Folder() { std::filesystem::remove_all(m_path); }
    [[nodiscard]] std::string file(const std::string& name) const { return (m_path / name).string(); }
    [[nodiscard]] std::size_t count() const {
        return static_cast<std::size_t>(
            std::distance(std::filesystem::directory_iterator(m_path), std::filesystem::directory_iterator()));
    }

private:
    std::filesystem::path m_path;
};

} // namespace

void TestRigFiles::badFilesAreRefused_data() {
    QTest::addColumn<QString>("source");
    QTest::addColumn<QString>("code");
    QTest::addColumn<int>("line");
    QTest::addColumn<int>("column");
    QTest::addColumn<QString>("words");
    const auto row = [](const char* name, const std::string& source, const char* code, int line, int column,
                        const char* words) {
        QTest::newRow(name) << QString::fromStdString(source) << code << line << column << words;
    };
    row("not TOML", "format = 1\ntitle = \n", "bad-toml", 2, 9, "");
    row("no format", "title = \"T\"\n", "missing-key", 1, 1, "begins with format = 1");
    row("newer format", "format = 2\n" + kGood.substr(11), "unknown-format", 1, 10, "format 2");
    row("no devices", "format = 1\ntitle = \"T\"\n", "empty-rig", 1, 1, "[[device]]");
    row("bad id",
        "format = 1\ntitle = \"T\"\n[[device]]\nname = \"a\"\nid = \"12:34\"\n" + kThrust + "range = [0, 9]\n",
        "bad-id", 5, 6, "four hex digits");
    row("equal devices", kHead + "[[device]]\nname = \"other\"\nid = \"1209:F101\"\nport = \"p\"\n" + kThrust,
        "equal-devices", 6, 1, "serial or their port");
    row("device twice", kHead + "[[device]]\nname = \"unit\"\nid = \"1209:F102\"\n", "duplicate-name", 7, 8, "'unit'");
    row("unknown key of a device", kHead + "prot = \"1\"\n", "unknown-key", 6, 8, "did you mean 'port'?");
    row("unknown signal", kHead + "[[control]]\nsignal = \"thrust_lever_l\"\nwiring = \"axis\"\n", "unknown-signal", 7,
        10, "did you mean 'thrust_lever_");
    row("a signal that is no control", kHead + "[[control]]\nsignal = \"airspeed\"\nwiring = \"axis\"\n",
        "unknown-signal", 7, 10, "not a control");
    row("unknown wiring", kHead + "[[control]]\nsignal = \"tiller\"\nwiring = \"axes\"\n", "unknown-wiring", 8, 10,
        "did you mean 'axis'?");
    row("empty wiring", kHead + "[[control]]\nsignal = \"tiller\"\nwiring = \"\"\n", "unknown-wiring", 8, 10, "");
    row("no signals", kHead + "[[control]]\nsignal = []\nwiring = \"axis\"\n", "missing-key", 7, 10, "'signal'");
    row("unknown device", kHead + kThrust + "device = \"unti\"\nrange = [0, 9]\n", "unknown-device", 10, 10,
        "did you mean 'unit'?");
    row("unknown device of an input",
        kHead + "[[control]]\nsignal = \"tiller\"\nwiring = \"axis\"\ninput = \"pedals: X\"\nrange = [0, 9]\n",
        "unknown-device", 9, 9, "'pedals'");
    row("which device", kHead + "[[device]]\nname = \"b\"\nid = \"1209:F102\"\n" + kThrust + "range = [0, 9]\n",
        "missing-device", 12, 9, "device = ");
    row("unknown key", kHead + kThrust + "range = [0, 9]\ncenter = 4\n", "unknown-key", 11, 10,
        "did you mean 'centre'?");
    row("no range", kHead + kThrust, "missing-key", 6, 1, "'range'");
    row("empty range", kHead + kThrust + "range = [512, 512]\n", "empty-range", 10, 9, "both counts");
    row("range of one", kHead + kThrust + "range = [512]\n", "bad-range", 10, 9, "two whole numbers");
    row("range with fractions", kHead + kThrust + "range = [0.5, 9]\n", "bad-range", 10, 9, "two whole numbers");
    const std::string points = "points = [\n{ at = 100, value = \"0 %\" },\n{ at = 900, value = \"70 %\" },\n";
    row("range and points", kHead + kThrust + points + "]\nrange = [0, 9]\n", "bad-points", 14, 9, "remove 'range'");
    row("points and to", kHead + kThrust + points + "]\nto = [0, 9]\n", "bad-points", 14, 6, "remove 'to'");
    row("one point", kHead + kThrust + "points = [{ at = 100, value = \"0 %\" }]\n", "bad-points", 10, 10,
        "two or more");
    row("a point's value falls", kHead + kThrust + points + "{ at = 990, value = \"60 %\" },\n]\n", "bad-points", 13, 1,
        "lowest first");
    row("a value twice", kHead + kThrust + points + "{ at = 990, value = \"70 %\" },\n]\n", "bad-points", 13, 1, "");
    row("a point's count turns back", kHead + kThrust + points + "{ at = 500, value = \"90 %\" },\n]\n", "bad-points",
        13, 1, "all rise or all fall");
    row("a count twice", kHead + kThrust + points + "{ at = 900, value = \"90 %\" },\n]\n", "bad-points", 13, 1, "");
    row("a point without a count", kHead + kThrust + points + "{ value = \"90 %\" },\n]\n", "missing-key", 13, 1,
        "'at'");
    row("a point without a value", kHead + kThrust + points + "{ at = 990 },\n]\n", "missing-key", 13, 1, "'value'");
    row("a point of another unit", kHead + kThrust + points + "{ at = 990, value = \"9 deg\" },\n]\n", "bad-value", 13,
        21, "");
    row("a point outside the signal", kHead + kThrust + points + "{ at = 990, value = \"101 %\" },\n]\n", "bad-values",
        13, 21, "0 to 100 %");
    row("unknown key of a point", kHead + kThrust + points + "{ at = 990, valeu = \"90 %\" },\n]\n", "unknown-key", 13,
        21, "did you mean 'value'?");
    row("a centre that is no point", kHead + kThrust + points + "]\ncentre = 500\n", "bad-points", 14, 10,
        "one of them");
    row("a centre that is an end", kHead + kThrust + points + "]\ncentre = 900\n", "centre-outside-range", 14, 10, "");
    row("end bands that leave nothing of the points", kHead + kThrust + points + "]\nend_band = 400\n",
        "band-too-large", 14, 12, "");
    row("centre outside", kHead + kThrust + "range = [100, 900]\ncentre = 900\n", "centre-outside-range", 11, 10, "");
    row("dead band too large", kHead + kThrust + "range = [900, 100]\ncentre = 200\ndead_band = 100\n",
        "band-too-large", 12, 13, "");
    row("dead band without centre", kHead + kThrust + "range = [100, 900]\ndead_band = 10\n", "missing-key", 11, 13,
        "'centre'");
    row("end bands too large", kHead + kThrust + "range = [100, 900]\nend_band = 400\n", "band-too-large", 11, 12, "");
    row("negative noise", kHead + kThrust + "range = [0, 9]\nnoise = -1\n", "bad-noise", 11, 9, "");
    row("settle without a limit", kHead + kThrust + "range = [0, 9]\nsettle = \"1 s\"\n", "missing-key", 11, 10,
        "spike_limit");
    row("a median of minutes", kHead + kThrust + "range = [0, 9]\nmedian = \"1 min\"\n", "bad-value", 11, 10, "1 s");
    row("a low-pass of minutes", kHead + kThrust + "range = [0, 9]\nsmooth = \"1 min\"\n", "bad-value", 11, 10, "1 s");
    row("a spike limit behind a low-pass", kHead + kThrust + "range = [0, 9]\nspike_limit = 5\nsmooth = \"5 ms\"\n",
        "two-filters", 11, 15, "'median' with 'smooth'");
    row("to outside the signal", kHead + kThrust + "range = [0, 9]\nto = [0, 120]\n", "bad-values", 11, 6,
        "0 to 100 %");
    row("an axis for a switch", kHead + "[[control]]\nsignal = \"taxi_light\"\nwiring = \"axis\"\ninput = \"X\"\n",
        "wrong-wiring", 8, 10, "not a number");
    row("gates overlap",
        kHead + kFlap + "gates = [\n{ position = \"up\", at = 100 },\n{ position = \"4\", at = 200 },\n]\n",
        "gates-overlap", 13, 1, "'up' and '4'");
    row("hysteresis fills the gap",
        kHead + kFlap +
            "hysteresis = 20\ngates = [\n{ position = \"up\", at = 100 },\n{ position = \"4\", at = 220 },\n]\n",
        "hysteresis-too-large", 11, 14, "only 20 counts");
    row("a gate that is none",
        kHead + kFlap + "gates = [{ position = \"5\", at = 1 }, { position = \"4\", at = 220 }]\n", "bad-value", 11, 23,
        "it has up, 4, 12, 22, 34");
    row("one gate", kHead + kFlap + "gates = [{ position = \"up\", at = 1 }]\n", "missing-key", 11, 9, "two or more");
    row("a gate twice", kHead + kFlap + "gates = [{ position = \"up\", at = 1 }, { position = \"up\", at = 220 }]\n",
        "gate-twice", 11, 9, "'up'");
    row("signal wired twice", kGood + kThrust + "range = [0, 9]\n", "signal-wired-twice", 12, 10, "combine");
    row("two contacts, no combine",
        kHead + "[[control]]\nsignal = \"taxi_light\"\nwiring = \"contact\"\ninput = [\"button 1\", \"button 2\"]\n",
        "needs-combine", 9, 9, "any");
    row("two axes, no combine",
        kHead + "[[control]]\nsignal = \"rudder_pedals\"\nwiring = \"two_axes\"\ninput = [\"X\", \"Y\"]\n"
                "ranges = [[0, 9], [0, 9]]\n",
        "needs-combine", 6, 1, "difference");
    row("open means closed",
        kHead + "[[control]]\nsignal = \"gear_lever\"\nwiring = \"contact\"\ninput = \"button 1\"\nopen = \"up\"\n"
                "closed = \"up\"\n",
        "same-meaning", 11, 10, "");
    row("a contact without meaning",
        kHead + "[[control]]\nsignal = \"gear_lever\"\nwiring = \"contact\"\ninput = \"button 1\"\nopen = \"up\"\n",
        "missing-key", 6, 1, "'closed'");
    row("a position twice",
        kHead + "[[control]]\nsignal = \"gear_lever\"\nwiring = \"selector\"\ncontacts = [\n"
                "{ input = \"button 1\", value = \"up\" },\n{ input = \"button 2\", value = \"up\" },\n]\n",
        "position-twice", 11, 31, "'up'");
    row("split outside",
        kHead + "[[control]]\nsignal = [\"thrust_lever_1\", \"reverse_lever_1\"]\nwiring = \"split_axis\"\n"
                "input = \"X\"\nranges = [[100, 900], [200, 0]]\nsplit = 150\n",
        "range-crosses-split", 10, 10, "");
    row("too many positions for the bits",
        kHead + "[[control]]\nsignal = \"autobrake\"\nwiring = \"coded_switch\"\ncode = \"gray\"\n"
                "input = [\"button 1\", \"button 2\"]\npositions = [\"off\", \"low\", \"medium\", \"high\", "
                "\"rejected\"]\n",
        "wrong-positions", 11, 13, "2 bits");
    row("three inputs for an encoder",
        kHead + "[[control]]\nsignal = \"pitch_trim\"\nwiring = \"encoder\"\n"
                "input = [\"button 1\", \"button 2\", \"button 3\"]\nstart = \"0 deg\"\nper_detent = \"1 deg\"\n",
        "wrong-inputs", 9, 9, "2 inputs");
    row("wrong unit of a step",
        kHead + "[[control]]\nsignal = \"pitch_trim\"\nwiring = \"encoder\"\ninput = [\"button 1\", \"button 2\"]\n"
                "start = \"0 deg\"\nper_detent = \"1 kt\"\n",
        "bad-value", 11, 14, "10 deg");
    row("a start that is no value",
        kHead + "[[control]]\nsignal = \"taxi_light\"\nwiring = \"toggle\"\ninput = \"button 1\"\nstart = \"\"\n",
        "bad-value", 10, 9, "on or off");
    row("toggle without a start",
        kHead + "[[control]]\nsignal = \"taxi_light\"\nwiring = \"toggle\"\ninput = \"button 1\"\n", "missing-key", 6,
        1, "'start'");
}

void TestRigFiles::badFilesAreRefused() {
    QFETCH(QString, source);
    QFETCH(QString, code);
    QFETCH(int, line);
    QFETCH(int, column);
    QFETCH(QString, words);
    Problems problems;
    QVERIFY(!parse(source.toStdString(), problems));
    QVERIFY(problems.hasErrors());
    const Error* found = nullptr;
    for (const Problem& problem : problems.all())
        if (found == nullptr && problem.error.code == code.toStdString())
            found = &problem.error;
    QVERIFY2(found != nullptr, describe(problems.firstError()).c_str());
    const std::string text = describe(*found);
    QVERIFY2(found->place.file == "test.toml" && found->place.line == line && found->place.column == column,
             text.c_str());
    QVERIFY2(QString::fromStdString(found->message).contains(words), text.c_str());
}

void TestRigFiles::allProblemsAreFound() {
    Problems problems;
    QVERIFY(!parse(kHead + kThrust + "range = [5, 5]\nnoise = -2\n" + kFlap + "gates = []\n" +
                       "[[control]]\nsignal = \"nothing\"\nwiring = \"axis\"\n",
                   problems));
    std::set<std::string> codes;
    for (const Problem& problem : problems.all())
        codes.insert(problem.error.code);
    QCOMPARE(codes, (std::set<std::string>{"empty-range", "bad-noise", "missing-key", "unknown-signal"}));
}

void TestRigFiles::warnings() {
    Problems problems;
    const std::optional<Rig> rig =
        parse(kHead + "[[device]]\nname = \"spare\"\nid = \"1209:F102\"\n" + kFlap +
                  "device = \"unit\"\ngates = [{ position = \"up\", at = 100 }, { position = \"34\", at = 900 }]\n",
              problems);
    QVERIFY(rig);
    QCOMPARE(problems.all().size(), std::size_t(2));
    QCOMPARE(problems.all()[0].error.code, std::string("position-not-wired"));
    QVERIFY(problems.all()[0].error.message.find("4, 12, 22") != std::string::npos);
    QCOMPARE(problems.all()[1].error.code, std::string("unused-device"));
    QCOMPARE(problems.all()[1].error.place.line, 6);
}

void TestRigFiles::missingInterlocksAreRemarks() {
    Problems problems;
    const std::optional<Rig> rig =
        parse(kGood + "[[missing_interlock]]\nsignal = [\"reverse_lever_1\", \"thrust_lever_1\"]\ntext = \"no lock\"\n",
              problems);
    QVERIFY(rig);
    QCOMPARE(rig->remarks().size(), std::size_t(1));
    QCOMPARE(rig->remarks()[0].english(),
             std::string("No mechanical interlock (Reverse lever 1, Thrust lever 1): no lock"));
}

void TestRigFiles::tolerancesAreReadAndWritten() {
    Problems problems;
    const auto tolerancesOf = [&](const std::string& text) {
        const std::optional<RigFile> rig =
            parseRigFile(text, "test.toml", twinJet().signals, twinJet().controlCount, problems);
        return rig ? std::optional(rig->tolerances) : std::nullopt;
    };
    QVERIFY(tolerancesOf(kGood) == WalkTolerances{});
    QVERIFY(tolerancesOf(kGood + "[tolerances]\nlever = \"4 deg\"\n") == (WalkTolerances{2.0, 4.0, 0.03}));
    const WalkTolerances wanted{1.5, 5.0, 0.045};
    const auto written = withTolerances(kGood, wanted);
    QVERIFY(written);
    QVERIFY(written->find("[tolerances]\nsteering = \"1.5 deg\"\ntravel = \"4.5 %\"\n") != std::string::npos);
    QVERIFY(tolerancesOf(*written) == wanted);
    const auto back = withTolerances(*written, WalkTolerances{});
    QVERIFY(back);
    QVERIFY(tolerancesOf(*back) == WalkTolerances{});
    QCOMPARE(problems.all().size(), std::size_t(0));
}

void TestRigFiles::tolerancesOutOfReason_data() {
    QTest::addColumn<QString>("line");
    QTest::addColumn<QString>("message");
    QTest::newRow("no unit") << "lever = \"4\""
                             << "10 deg";
    QTest::newRow("another unit") << "travel = \"4 deg\""
                                  << "10 %";
    QTest::newRow("none") << "steering = \"0 deg\""
                          << "from 0.01 deg to 90 deg";
    QTest::newRow("all of it") << "travel = \"90 %\""
                               << "from 0.1 % to 50 %";
    QTest::newRow("misspelt") << "levers = \"4 deg\""
                              << "lever";
}

void TestRigFiles::tolerancesOutOfReason() {
    QFETCH(QString, line);
    QFETCH(QString, message);
    Problems problems;
    QVERIFY(!parse(kGood + "[tolerances]\n" + line.toStdString() + "\n", problems));
    const Error error = problems.firstError();
    QVERIFY2(QString::fromStdString(error.message).contains(message), error.message.c_str());
    QVERIFY(error.place.line > 0);
}

void TestRigFiles::whatIsAskedForIsRemarked() {
    Problems problems;
    const std::optional<Rig> rig =
        parse(kGood + "sweep = true\n[[control]]\nsignal = \"taxi_light\"\nwiring = \"toggle\"\n"
                      "input = \"button 1\"\nstart = \"ask\"\n",
              problems);
    QVERIFY(rig);
    QCOMPARE(rig->remarks().size(), std::size_t(2));
    QVERIFY(rig->remarks()[0].english().find("Thrust lever 1: move it once from end to end") == 0);
    QVERIFY(rig->remarks()[1].english().find("Taxi light: say how it stands") == 0);
}

void TestRigFiles::missingInputNamesTheOffer() {
    Problems problems;
    std::optional<Rig> rig = parse(kGood, problems);
    const Status status = rig->connect(0, inputsOf({"Y", "Rz"}, 12, 1));
    QVERIFY(!status);
    QCOMPARE(describe(status.error()),
             std::string("test.toml:9:9: the device 'unit' has no input 'X'; it has Y, Rz, button 1 to button 12, "
                         "hat 1"));
}

void TestRigFiles::inputOfTheWrongKind() {
    Problems problems;
    std::optional<Rig> rig =
        parse(kHead + "[[control]]\nsignal = \"taxi_light\"\nwiring = \"contact\"\ninput = \"X\"\n", problems);
    const Status status = rig->connect(0, inputsOf({"X"}, 1));
    QVERIFY(!status);
    QCOMPARE(status.error().code, std::string("wrong-input-kind"));
    QCOMPARE(status.error().place.line, 9);
}

void TestRigFiles::rangeOutsideTheDevice() {
    Problems problems;
    std::optional<Rig> rig = parse(kHead + kThrust + "range = [0, 5000]\n", problems);
    const Status status = rig->connect(0, inputsOf({"X"}, 0));
    QVERIFY(!status);
    QCOMPARE(status.error().code, std::string("range-outside-device"));
    QVERIFY(status.error().message.find("0 to 4095") != std::string::npos);
}

void TestRigFiles::shippedRigsLoad_data() {
    QTest::addColumn<QString>("path");
    for (const auto& entry : std::filesystem::directory_iterator(ASSETS "/rigs"))
        if (entry.path().extension() == ".toml")
            QTest::newRow(entry.path().filename().c_str()) << QString::fromStdString(entry.path().string());
}

void TestRigFiles::shippedRigsLoad() {
    QFETCH(QString, path);
    Problems problems;
    const std::optional<Rig> rig = Rig::load(path.toStdString(), twinJet().signals, twinJet().controlCount, problems);
    for (const Problem& problem : problems.all())
        QFAIL(describe(problem.error).c_str()); // no warning either
    QVERIFY(rig);
    QVERIFY(!rig->title().empty());
    QCOMPARE(rig->source(), contentOf(path.toStdString()));
    QVERIFY(rig->controlNames().size() > 1);
    QVERIFY(rig->controlNames()[0].empty());
}

void TestRigFiles::examplesOfTheReadmeAreGood_data() {
    QTest::addColumn<QString>("source");
    std::istringstream readme(contentOf(ASSETS "/rigs/README.md"));
    std::string heading;
    std::string example;
    bool isExample = false;
    for (std::string line; std::getline(readme, line);) {
        if (line.rfind("#", 0) == 0 && !isExample)
            heading = line;
        if (line == "```" && isExample)
            QTest::newRow(heading.c_str()) << QString::fromStdString(example);
        isExample = line.rfind("```", 0) == 0 ? line == "```toml" : isExample;
        if (line == "```toml")
            example.clear();
        else if (isExample)
            example += line + "\n";
    }
}

void TestRigFiles::examplesOfTheReadmeAreGood() {
    QFETCH(QString, source);
    Problems problems;
    const bool isWhole = source.startsWith("format");
    const bool isGood = parse((isWhole ? "" : kHead) + source.toStdString(), problems).has_value();
    QVERIFY2(isGood, isGood ? "" : describe(problems.firstError()).c_str());
}

void TestRigFiles::readmeListsEveryWiring_data() {
    QTest::addColumn<QString>("heading");
    for (const WiringKind& kind : wiringKinds())
        QTest::newRow(std::string(kind.name).c_str())
            << "\n### `" + QString::fromStdString(std::string(kind.name)) + "`: ";
}

void TestRigFiles::readmeListsEveryWiring() {
    QFETCH(QString, heading);
    QVERIFY(QString::fromStdString(contentOf(ASSETS "/rigs/README.md")).contains(heading));
}

void TestRigFiles::fullCockpitFitsItsDevices() {
    Problems problems;
    std::optional<Rig> rig =
        Rig::load(ASSETS "/rigs/full_cockpit.toml", twinJet().signals, twinJet().controlCount, problems);
    QVERIFY(rig);
    const char* names[] = {"quadrant", "pedals", "yoke"};
    std::vector<Sample> samples;
    for (DeviceIndex device = 0; device < 3; ++device) {
        const std::vector<InputInfo> inputs = inputsOfHex(names[device]);
        QVERIFY(!inputs.empty());
        const Status status = rig->connect(device, inputs);
        QVERIFY2(status, status ? "" : describe(status.error()).c_str());
        for (std::size_t i = 0; i < inputs.size(); ++i) // the first report: all inputs
            rig->take(
                {Time{}, device, static_cast<std::uint16_t>(i), inputs[i].lowest, inputs[i].kind == InputKind::Hat},
                samples);
    }
    std::size_t wired = 0;
    for (const ControlFacts& facts : rig->facts())
        wired += facts.isWired ? 1 : 0;
    for (const char* name :
         {"thrust_lever_1",  "thrust_lever_2", "reverse_lever_1", "reverse_lever_2", "flap_lever",    "spoiler_lever",
          "gear_lever",      "parking_brake",  "pitch_trim",      "fuel_lever_1",    "fuel_lever_2",  "takeoff_button",
          "autobrake",       "taxi_light",     "landing_lights",  "tiller",          "rudder_pedals", "toe_brake_left",
          "toe_brake_right", "yoke_pitch",     "yoke_roll",       "reply_button"})
        QVERIFY2(rig->facts()[indexOf(*twinJet().signals.find(name))].isWired, name);
    QCOMPARE(wired, std::size_t(22));
    QVERIFY(rig->unheard().empty());
    const std::vector<bool> needed = rig->inputsOf(0, {twinJet().id("thrust_lever_1"), twinJet().id("yoke_pitch")});
    QCOMPARE(std::count(needed.begin(), needed.end(), true), 1); // the yoke is another device's
    QVERIFY(
        rig->wiredInputs(0)[static_cast<std::size_t>(std::find(needed.begin(), needed.end(), true) - needed.begin())]);
    QCOMPARE(samples.size(), wired);
    for (const Sample& sample : samples)
        QVERIFY(sample.actor == Actor::Machine || rig->facts()[indexOf(sample.signal)].isMomentary);
}

void TestRigFiles::savedFileIsTheNewOne() {
    const Folder folder;
    const std::string path = folder.file("rig.toml");
    QVERIFY(saveRigFile(path, kGood, twinJet().signals, twinJet().controlCount));
    std::filesystem::permissions(path, std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
    const std::string calibrated = kHead + kThrust + "range = [12, 3987]\n";
    QVERIFY(saveRigFile(path, calibrated, twinJet().signals, twinJet().controlCount));
    QCOMPARE(contentOf(path), calibrated);
    QCOMPARE(folder.count(), std::size_t(1));
    QVERIFY(std::filesystem::status(path).permissions() ==
            (std::filesystem::perms::owner_read | std::filesystem::perms::owner_write));
}

void TestRigFiles::badFileIsNotSaved() {
    const Folder folder;
    const std::string path = folder.file("rig.toml");
    QVERIFY(saveRigFile(path, kGood, twinJet().signals, twinJet().controlCount));
    const Status status =
        saveRigFile(path, kHead + kThrust + "range = [7, 7]\n", twinJet().signals, twinJet().controlCount);
    QVERIFY(!status);
    QCOMPARE(status.error().code, std::string("empty-range"));
    QCOMPARE(status.error().place.line, 10);
    QCOMPARE(status.error().place.column, 9);
    QCOMPARE(contentOf(path), kGood);
    QCOMPARE(folder.count(), std::size_t(1));
}

void TestRigFiles::unwritableFolderKeepsTheOldFile() {
    const Folder folder;
    const Status status =
        saveRigFile(folder.file("missing/rig.toml"), kGood, twinJet().signals, twinJet().controlCount);
    QVERIFY(!status);
    QCOMPARE(status.error().code, std::string("save-failed"));
    std::filesystem::create_directory(folder.file("rig.toml")); // cannot be replaced by a file
    QVERIFY(!saveRigFile(folder.file("rig.toml"), kGood, twinJet().signals, twinJet().controlCount));
    QCOMPARE(folder.count(), std::size_t(1)); // nothing is left lying about
}

void TestRigFiles::savesThroughALink() {
    const Folder folder;
    QVERIFY(saveRigFile(folder.file("real.toml"), kGood, twinJet().signals, twinJet().controlCount));
    std::filesystem::create_symlink("real.toml", folder.file("link.toml"));
    const std::string changed = kHead + kThrust + "range = [1, 4000]\n";
    QVERIFY(saveRigFile(folder.file("link.toml"), changed, twinJet().signals, twinJet().controlCount));
    QVERIFY(std::filesystem::is_symlink(folder.file("link.toml")));
    QCOMPARE(contentOf(folder.file("real.toml")), changed);
}

QTEST_APPLESS_MAIN(TestRigFiles)
#include "test_rig_files.moc"
