// Phrases as records keep them.

#include <QtTest>

#include <rapidcheck.h>

#include "base/phrasejson.h"
#include "session/event.h"

using namespace flowhand;
using Json = nlohmann::ordered_json;

namespace {

Phrase anyPhrase(int depth) {
    const auto words = *rc::gen::element<std::string>("", "Flap lever", "[\"not a pattern\"]", "{1}", "ä “x”");
    if (depth == 0 || *rc::gen::arbitrary<bool>())
        return words;
    std::vector<Phrase> parts;
    const int count = *rc::gen::inRange(0, 4);
    for (int i = 0; i < count; ++i)
        parts.push_back(anyPhrase(depth - 1));
    return phraseOf(*rc::gen::element<std::string>("{1} at {2}", "{2}: {1}", "not done"), std::move(parts));
}

} // namespace

class TestPhraseJson : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void wordsAreAString();
    void everyPhraseComesBack();
    void malformedOnesAreRefused_data();
    void malformedOnesAreRefused();
    void aColumnOfTextKeepsWords();
    void linesAreComparedInEnglish();
};

void TestPhraseJson::wordsAreAString() {
    QVERIFY(phraseJson(std::string("Gear up")) == Json("Gear up"));
    QCOMPARE(phraseJson(phrase("{1}: not done").with("Flap")).dump(), std::string(R"(["{1}: not done","Flap"])"));
}

void TestPhraseJson::everyPhraseComesBack() {
    QVERIFY(rc::check("in JSON and in text", [] {
        const Phrase phrase = anyPhrase(4);
        RC_ASSERT(phraseFrom(Json::parse(phraseJson(phrase).dump())) == phrase);
        if (phrase.isPattern())
            RC_ASSERT(phraseOfText(phraseText(phrase)) == phrase);
    }));
}

void TestPhraseJson::malformedOnesAreRefused_data() {
    QTest::addColumn<QString>("json");
    QTest::newRow("a number") << "3";
    QTest::newRow("nothing") << "null";
    QTest::newRow("an object") << "{}";
    QTest::newRow("no pattern") << "[]";
    QTest::newRow("an empty pattern") << "[\"\"]";
    QTest::newRow("a pattern that is a number") << "[7]";
    QTest::newRow("a part that is none") << "[\"{1}\", [\"{1}\", null]]";
    QTest::newRow("too many parts") << "[\"x\",\"1\",\"2\",\"3\",\"4\",\"5\",\"6\",\"7\",\"8\",\"9\",\"10\"]";
    QTest::newRow("a part named twice, which could grow beyond all measure") << "[\"{1} and {1}\", \"a\"]";
    QTest::newRow("parts without end") << QString("[\"{1}\",").repeated(5000) + "\"\"" + QString("]").repeated(5000);
}

void TestPhraseJson::malformedOnesAreRefused() {
    QFETCH(QString, json);
    const Json parsed = Json::parse(json.toStdString());
    QVERIFY_THROWS_EXCEPTION(nlohmann::json::exception, (void)phraseFrom(parsed));
    QCOMPARE(phraseOfText(json.toStdString()), Phrase(json.toStdString())); // words, then
}

void TestPhraseJson::aColumnOfTextKeepsWords() {
    for (const char* words : {"", "quadrant is lost", "[x] is lost", "[\"broken"})
        QVERIFY(phraseOfText(phraseText(std::string(words))) == Phrase(std::string(words)));
}

void TestPhraseJson::linesAreComparedInEnglish() {
    Event event;
    event.kind = EventKind::Gap;
    event.margin = 1.0 / 3.0;
    event.text = phrase("{1} is back.").with("quadrant");
    Event older = event;
    older.text = event.text.english();
    SignalTable signals;
    event.marginSignal = older.marginSignal = SignalId{0};
    Signal lever;
    lever.name = "lever";
    QVERIFY(signals.add(lever));
    const std::string line = toJson(event, signals, {});
    QVERIFY(line != toJson(older, signals, {}));
    QCOMPARE(englishLine(line), toJson(older, signals, {}));
    QCOMPARE(englishLine(toJson(older, signals, {})), toJson(older, signals, {}));
    QCOMPARE(englishLine("{\"text\":[3]}"), std::string("{\"text\":[3]}"));
    QCOMPARE(englishLine("no JSON"), std::string("no JSON"));
}

QTEST_APPLESS_MAIN(TestPhraseJson)
#include "test_phrasejson.moc"
