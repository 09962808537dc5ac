#include <QtTest>

#include <atomic>
#include <thread>

#include "base/doorbell.h"
#include "base/names.h"
#include "base/parallel.h"
#include "base/phrase.h"
#include "base/phrasejson.h"
#include "base/sha256.h"
#include "base/signal.h"
#include "base/time.h"
#include "base/tomlfile.h"
#include "base/unit.h"

using namespace flowhand;
using namespace std::chrono_literals;

class TestBase : public QObject {
    Q_OBJECT

private slots:
    void ringsAreHeardAsSoonAsTheyWant();
    void phrasesAreFilledIn();
    void phrasesAreJoined();
    void durationsAreExact_data();
    void durationsAreExact();
    void badDurationsAreRefused_data();
    void badDurationsAreRefused();
    void clockTextRoundsToTenths();
    void unitsConvert_data();
    void unitsConvert();
    void wholeConversionsAreExact();
    void unitsKeepTheirDimension();
    void valuesReadAndShow();
    void nearestNameIsSuggested();
    void tomlErrorsNameThePlace();
    void tomlReaderComplainsOfUnknownKeys();
    void placesInTextGoThroughEscapes_data();
    void placesInTextGoThroughEscapes();
    void sha256MatchesThePublishedExamples_data();
    void sha256MatchesThePublishedExamples();
    void parallelWorkIsDoneOnceEach_data();
    void parallelWorkIsDoneOnceEach();
};

void TestBase::parallelWorkIsDoneOnceEach_data() {
    QTest::addColumn<int>("count");
    for (const int count : {0, 1, 2, 1000})
        QTest::addRow("%d", count) << count;
}

void TestBase::parallelWorkIsDoneOnceEach() {
    QFETCH(int, count);
    std::vector<std::atomic<int>> done(static_cast<std::size_t>(count));
    inParallel(done.size(), [&](std::size_t i) {
        ++done[i];
    });
    for (const std::atomic<int>& each : done)
        QCOMPARE(each.load(), 1);
}

void TestBase::durationsAreExact_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<qint64>("nanoseconds");
    QTest::newRow("seconds") << "2 s" << qint64(2'000'000'000);
    QTest::newRow("no space") << "300ms" << qint64(300'000'000);
    QTest::newRow("tenths are exact") << "0.1 s" << qint64(100'000'000);
    QTest::newRow("minutes") << "1.5 min" << qint64(90'000'000'000);
    QTest::newRow("nanoseconds") << "0.000000001 s" << qint64(1);
}

void TestBase::durationsAreExact() {
    QFETCH(QString, text);
    QFETCH(qint64, nanoseconds);
    const Result<Duration> duration = parseDuration(text.toStdString());
    QVERIFY(duration);
    QCOMPARE(qint64(duration->count()), nanoseconds);
}

void TestBase::badDurationsAreRefused_data() {
    QTest::addColumn<QString>("text");
    for (const char* text : {"", "s", "2", "2 kt", "-1 s", "1..2 s", "99999999999999999999 s", "900000000000 h"})
        QTest::newRow(text) << QString(text);
}

void TestBase::badDurationsAreRefused() {
    QFETCH(QString, text);
    const Result<Duration> duration = parseDuration(text.toStdString());
    QVERIFY(!duration);
    QCOMPARE(duration.error().code, std::string("bad-duration"));
}

void TestBase::clockTextRoundsToTenths() {
    QCOMPARE(clockText(0s), std::string("0:00.0"));
    QCOMPARE(clockText(59'950ms), std::string("1:00.0"));
    QCOMPARE(clockText(754'321ms), std::string("12:34.3"));
}

void TestBase::unitsConvert_data() {
    QTest::addColumn<double>("value");
    QTest::addColumn<QString>("from");
    QTest::addColumn<QString>("to");
    QTest::addColumn<double>("expected");
    // BIPM SI brochure, 9th edition, table 8 and its predecessors: the nautical mile is 1852 m; ISO 80000-3: foot
    // 0.3048 m.
    QTest::newRow("knot") << 1.0 << "kt"
                          << "km/h" << 1.852;
    QTest::newRow("foot") << 1.0 << "ft"
                          << "m" << 0.3048;
    QTest::newRow("feet in a nautical mile") << 1.0 << "NM"
                                             << "ft" << 6076.115485564304;
    // BIPM SI brochure, 8th edition, table 9: conventional inch of mercury 3386.389 Pa (NIST SP 811, appendix B.8).
    QTest::newRow("standard pressure") << 1013.25 << "hPa"
                                       << "inHg" << 29.92126;
}

void TestBase::unitsConvert() {
    QFETCH(double, value);
    QFETCH(QString, from);
    QFETCH(QString, to);
    QFETCH(double, expected);
    const double result = convert(value, *findUnit(from.toStdString()), *findUnit(to.toStdString()));
    QVERIFY2(std::fabs(result / expected - 1.0) < 1e-6, qPrintable(QString::number(result, 'g', 12)));
}

void TestBase::wholeConversionsAreExact() {
    const auto in = [](double value, const char* from, const char* to) {
        return convert(value, *findUnit(from), *findUnit(to));
    };
    QVERIFY(in(36, "km/h", "m/s") == 10.0);
    QVERIFY(in(3600, "kt", "m/s") == 1852.0);
    QVERIFY(in(0.3, "m", "km") == 0.0003);
    QVERIFY(in(1500, "ft/min", "m/s") == 7.62);
}

void TestBase::unitsKeepTheirDimension() {
    QCOMPARE(findUnit("m")->dimension / findUnit("s")->dimension, findUnit("kt")->dimension);
    QVERIFY(findUnit("kt")->dimension != findUnit("deg")->dimension);
    QVERIFY(!findUnit("knots"));
}

void TestBase::valuesReadAndShow() {
    Signal flap{"flap_lever", "Flap lever", SignalKind::Position, {}, 0, 0, 1, {"up", "4", "12"}};
    QCOMPARE(valueText(flap, *parseValue(flap, "12")), std::string("12"));
    QCOMPARE(valueText(flap, Value::between()), std::string("between"));
    QCOMPARE(valueText(flap, Value::unknown()), std::string("not known yet"));
    const Result<Value> wrong = parseValue(flap, "14");
    QVERIFY(!wrong);
    QVERIFY(wrong.error().message.find("up, 4, 12") != std::string::npos);
    Signal speed{"airspeed", "Airspeed", SignalKind::Number, *findUnit("kt"), 0, 0, 1, {}};
    QCOMPARE(valueText(speed, *parseValue(speed, "185.2 km/h")), std::string("100 kt"));
    QVERIFY(!parseValue(speed, "80 deg"));
    QVERIFY(!parseValue(speed, "nan kt"));
    QVERIFY(!(Value::number(0) == Value::unknown()));
    QVERIFY(Value::unknown() == Value::unknown());
}

void TestBase::nearestNameIsSuggested() {
    QCOMPARE(nearestHint("tillr", {"flap_lever", "tiller"}), std::string("; did you mean 'tiller'?"));
    QCOMPARE(nearestHint("xyz", {"flap_lever", "tiller"}), std::string());
}

/// That a ring is heard too late shows as a test that does not end, that it is heard too soon as a wait that is too
/// short.
void TestBase::ringsAreHeardAsSoonAsTheyWant() {
    using namespace std::chrono_literals;
    Doorbell bell;
    const auto waited = [&](Hurry hurry, Duration soon, Duration later) {
        bell.ring(hurry);
        const auto begin = std::chrono::steady_clock::now();
        if (!bell.wait(1h, soon, later))
            qFatal("the ring was lost");
        return std::chrono::steady_clock::now() - begin;
    };
    waited(Hurry::Now, 1h, 1h);
    waited(Hurry::Soon, 1h, 1h); // the first one for long
    QVERIFY(waited(Hurry::Soon, 5ms, 1h) >= 5ms);
    waited(Hurry::Now, 1h, 1h);
    waited(Hurry::Soon, 1h, 1h);
    QVERIFY(waited(Hurry::Later, 0ms, 5ms) >= 5ms);
    QVERIFY(!bell.wait(1ms)); // all are used up
    bell.ring(Hurry::Later);
    QVERIFY(bell.wait(1ms, 1h, 1h)); // the wait is over before it was heard
    std::thread other([&] {
        bell.ring(Hurry::Later);
        bell.ring(Hurry::Now);
    });
    QVERIFY(bell.wait(1h, 1h, 1h));
    other.join();
}

void TestBase::phrasesAreFilledIn() {
    const Phrase late = phrase("{2}: {1} late, {2} in {braces} and {3}").with("1.2 s", phrase("step {1}").with("{1}"));
    QCOMPARE(late.english(), std::string("step {1}: 1.2 s late, step {1} in {braces} and {3}"));
    QVERIFY(late.isPattern());
    QVERIFY(!Phrase("{1}").isPattern());
    QCOMPARE(Phrase("{1}").english(), std::string("{1}"));
    QVERIFY(Phrase() == Phrase(std::string()) && Phrase().isEmpty());
    QVERIFY(phraseOf(late.text(), late.parts()) == late);
}

void TestBase::phrasesAreJoined() {
    const Phrase both = joined(std::vector<Phrase>{phrase("done"), Phrase("Flaps"), Phrase()}, ", ");
    QCOMPARE(both.english(), std::string("done, Flaps, "));
    QCOMPARE((Phrase() + phrase("done")).english(), std::string("done"));
    QCOMPARE(both.parts().front(), phrase("done"));
    QCOMPARE(joined(std::vector<Phrase>{Phrase(), phrase("done")}, ", ").english(), std::string("done"));
    const std::vector<Phrase> many(200, phrase("done"));
    QVERIFY(phraseFrom(phraseJson(joined(many, ", "))) == joined(many, ", "));
}

void TestBase::tomlErrorsNameThePlace() {
    const Result<TomlFile> broken = TomlFile::parse("a = 1\nb = = 2\n", "rig.toml");
    QVERIFY(!broken);
    QCOMPARE(broken.error().place.file, std::string("rig.toml"));
    QCOMPARE(broken.error().place.line, 2);
    QVERIFY(!TomlFile::load("/nonexistent/rig.toml"));
    QCOMPARE(TomlFile::load("/").error().code, std::string("unreadable-file"));
    QCOMPARE(TomlFile::load("/dev/zero").error().code, std::string("unreadable-file"));
    std::string deep = "a = 1\na";
    for (int i = 0; i < 50'000; ++i)
        deep += ".a";
    const Result<TomlFile> tooDeep =
        TomlFile::parse(deep + " = 1\n", "rig.toml"); // seen: the parser's stack overflowed
    QVERIFY(!tooDeep);
    QCOMPARE(tooDeep.error().place.line, 2);
}

void TestBase::tomlReaderComplainsOfUnknownKeys() {
    const Result<TomlFile> file = TomlFile::parse("title = 'x'\nwiht = 3\nweight = 'heavy'\n", "flow.toml");
    QVERIFY(file);
    Problems problems;
    TomlReader reader(*file, file->root(), "step 'x'", problems);
    QCOMPARE(reader.requiredText("title"), std::string("x"));
    QVERIFY(!reader.integer("weight"));
    QVERIFY(!reader.text("within"));
    reader.finish();
    QCOMPARE(problems.all().size(), std::size_t(2));
    QCOMPARE(describe(problems.all()[0].error),
             std::string("flow.toml:3:10: 'weight' of step 'x' must be a whole number"));
    QCOMPARE(problems.all()[1].error.code, std::string("unknown-key"));
    QCOMPARE(problems.all()[1].error.place.line, 2);
}

void TestBase::placesInTextGoThroughEscapes_data() {
    QTest::addColumn<QString>("source");
    QTest::addColumn<int>("offset");
    QTest::addColumn<int>("line");
    QTest::addColumn<int>("column");
    QTest::newRow("plain") << "a = \"tiller > 3 deg\"" << 9 << 1 << 15;
    QTest::newRow("literal") << "a = 'tiller'" << 0 << 1 << 6;
    QTest::newRow("escape before") << "a = \"x\\ty z\"" << 2 << 1 << 9;
    QTest::newRow("several lines") << "a = \"\"\"\nx and\n  y\"\"\"" << 8 << 3 << 3;
    QTest::newRow("line continuation") << "a = \"\"\"x \\\n   y\"\"\"" << 2 << 2 << 4;
}

void TestBase::placesInTextGoThroughEscapes() {
    QFETCH(QString, source);
    QFETCH(int, offset);
    QFETCH(int, line);
    QFETCH(int, column);
    const Result<TomlFile> file = TomlFile::parse(source.toStdString(), "f");
    QVERIFY(file);
    const SourcePlace place = file->placeInText(*file->root().find("a"), static_cast<std::size_t>(offset));
    QCOMPARE(place.line, line);
    QCOMPARE(place.column, column);
}

void TestBase::sha256MatchesThePublishedExamples_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("hash");
    // NIST, FIPS 180-4 example computations for SHA-256 (values from memory, checked with coreutils' sha256sum).
    QTest::newRow("one block") << "abc"
                               << "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    QTest::newRow("two blocks") << "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"
                                << "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1";
    // Computed with coreutils' sha256sum.
    QTest::newRow("empty") << ""
                           << "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
    QTest::newRow("just a block") << QString(64, 'a')
                                  << "ffe054fe7ae0cb6dc65c3af9b61d5209f439851db43d0ba5997337df154668eb";
}

void TestBase::sha256MatchesThePublishedExamples() {
    QFETCH(QString, text);
    QFETCH(QString, hash);
    QCOMPARE(QString::fromStdString(sha256(text.toStdString())), hash);
}

QTEST_APPLESS_MAIN(TestBase)
#include "test_base.moc"
