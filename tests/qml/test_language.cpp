// The window in other languages: all of it is translated, changes at once, and has room for longer words.

#include <QFile>
#include <QQmlApplicationEngine>
#include <QQuickItem>
#include <QQuickView>
#include <QQuickWindow>
#include <QRegularExpression>
#include <QXmlStreamReader>
#include <QtTest>

#include "presenter/benchfacts.h"
#include "presenter/benchrows.h"
#include "presenter/language.h"
#include "presenter/signaltext.h"
#include "procedure/motion.h"
#include "shown.h"
#include "window.h"

Q_DECLARE_METATYPE(flowhand::Phrase)

using namespace flowhand;

namespace {

/// One text of a translation file.
struct Message {
    QString source;
    QString translation;
    bool isFinished = true;
};

std::vector<Message> messagesOf(const QString& file) {
    std::vector<Message> all;
    QFile in(file);
    if (!in.open(QIODevice::ReadOnly))
        return all;
    QXmlStreamReader xml(&in);
    while (!xml.atEnd()) {
        xml.readNext();
        if (!xml.isStartElement())
            continue;
        if (xml.name() == QStringLiteral("message") && xml.attributes().hasAttribute("id"))
            all.push_back({xml.attributes().value("id").toString(), {}, true}); // core's: its source is empty
        else if (xml.name() == QStringLiteral("source")) {
            if (const QString source = xml.readElementText(); !source.isEmpty())
                all.push_back({source, {}, true});
        } else if (xml.name() == QStringLiteral("translation") && !all.empty()) {
            all.back().isFinished = !xml.attributes().hasAttribute("type");
            all.back().translation = xml.readElementText();
        }
    }
    return all;
}

QStringList placesOf(const QString& text) {
    static const QRegularExpression place("%[0-9n]|\\{[1-9]\\}");
    QStringList found;
    for (auto match = place.globalMatch(text); match.hasNext();)
        found.append(match.next().captured());
    found.sort();
    return found;
}

/// What stands between the places of an English text and is long enough to be told from names; without what is the same
/// in German.
QStringList englishFragments() {
    static const QStringList all = [] {
        static const QRegularExpression place("%[0-9n]|\\{[1-9]\\}");
        constexpr int kTelling = 12;
        QStringList found;
        for (const char* file : {"qml/language/core_de.ts", "qml/language/flowhand_de.ts"})
            for (const Message& message : messagesOf(file))
                for (const QString& part : message.source.split(place))
                    if (part.trimmed().size() >= kTelling && part.trimmed().contains(' ') &&
                        !message.translation.contains(part.trimmed()))
                        found.append(part.trimmed());
        found.removeDuplicates();
        return found;
    }();
    return all;
}

bool isInCoreList(const QString& pattern) {
    static const std::vector<Message> messages = messagesOf("qml/language/core_de.ts");
    return std::any_of(messages.begin(), messages.end(), [&pattern](const Message& message) {
        return message.source == pattern;
    });
}

/// Its own and its parts'; not those that only set one phrase behind another.
QStringList patternsIn(const Phrase& phrase) {
    QStringList patterns;
    const QString text = QString::fromStdString(phrase.text());
    if (phrase.isPattern() && text != "{1}{2}" && text != "{1}{2}{3}")
        patterns << text;
    for (const Phrase& part : phrase.parts())
        patterns << patternsIn(part);
    return patterns;
}

std::vector<Phrase> phrasesOf(const BenchSnapshot& snapshot) {
    std::vector<Phrase> all = snapshot.task.outcome;
    all.push_back(snapshot.rigTitle);
    all.push_back(snapshot.task.ask);
    all.insert(all.end(), snapshot.notices.begin(), snapshot.notices.end());
    for (const CoveredStep& step : snapshot.coverage->steps)
        for (const Obstacle& obstacle : step.obstacles)
            all.push_back(obstacle.text);
    const auto take = [&all](const std::vector<Finding>& findings) {
        for (const Finding& finding : findings)
            all.insert(all.end(), {finding.text, finding.reason, finding.remedy});
    };
    for (const MeasuredControl& measured : *snapshot.measured)
        take(measured.findings);
    for (const ControlFilters& filters : *snapshot.filters) {
        take(filters.findings);
        all.insert(all.end(), filters.words.begin(), filters.words.end());
    }
    return all;
}

void collect(QQuickItem* item, QList<QQuickItem*>& all) {
    if (!item->isVisible() || item->opacity() <= 0)
        return;
    all.append(item);
    for (QQuickItem* child : item->childItems())
        collect(child, all);
}

/// All that is written in the window, also what is read out alone.
QStringList textsOf(QQuickItem* root) {
    QList<QQuickItem*> items;
    collect(root, items);
    QStringList texts;
    for (const QQuickItem* item : items)
        if (const QString text = item->property("text").toString(); !text.isEmpty())
            texts << text;
    return texts;
}

/// What is scrolled from side to side is reached by scrolling.
bool isAside(const QQuickItem* item) {
    for (const QQuickItem* around = item->parentItem(); around != nullptr; around = around->parentItem())
        if (around->inherits("QQuickFlickable") && around->property("contentWidth").toDouble() > around->width() + 1)
            return true;
    return false;
}

} // namespace

class TestLanguage : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void germanIsWhole_data();
    void germanIsWhole();
    void everyTextIsInTheFile_data();
    void everyTextIsInTheFile();
    void theLanguageChangesAtOnce();
    void sentencesBeginWithACapital_data();
    void sentencesBeginWithACapital();
    void benchIsGerman_data();
    void benchIsGerman();
    void benchChangesItsLanguageAtOnce();
    void coreSpeaksTheLanguage_data();
    void coreSpeaksTheLanguage();
    void motionHasGermanNames();
    void pseudoKeepsWhatIsFilledIn();
    void nothingIsClipped_data();
    void nothingIsClipped();
};

void TestLanguage::initTestCase() {
    registerQmlTypes();
}

void TestLanguage::germanIsWhole_data() {
    QTest::addColumn<QString>("file");
    QTest::addColumn<int>("atLeast");
    QTest::newRow("window") << "qml/language/flowhand_de.ts" << 500;
    QTest::newRow("core") << "qml/language/core_de.ts" << 150;
}

void TestLanguage::germanIsWhole() {
    QFETCH(QString, file);
    QFETCH(int, atLeast);
    const std::vector<Message> messages = messagesOf(file);
    QVERIFY(static_cast<int>(messages.size()) > atLeast);
    for (const Message& message : messages) {
        QVERIFY2(message.isFinished && !message.translation.isEmpty(), qPrintable(message.source));
        QCOMPARE(placesOf(message.translation), placesOf(message.source));
    }
}

void TestLanguage::everyTextIsInTheFile_data() {
    QTest::addColumn<QString>("file");
    QTest::addColumn<QStringList>("sources");
    QTest::newRow("window") << "flowhand_de.ts" << QStringList{"qml", "-extensions", "cpp,h,qml"};
    QTest::newRow("core") << "core_de.ts"
                          << QStringList{"-tr-function-alias", "qtTrId+=phrase", "core", "-extensions", "cpp,h"};
}

/// What lupdate finds in the sources is what the file has.
void TestLanguage::everyTextIsInTheFile() {
    QFETCH(QString, file);
    QFETCH(QStringList, sources);
    const QTemporaryDir folder;
    const QString copy = folder.filePath(file);
    QVERIFY(QFile::copy("qml/language/" + file, copy));
    const QStringList options{"-silent", "-locations", "none", "-no-obsolete"};
    QProcess lupdate;
    lupdate.start("/usr/lib/qt6/bin/lupdate", options + sources + QStringList{"-ts", copy});
    QVERIFY2(lupdate.waitForFinished(120'000) && lupdate.exitCode() == 0, lupdate.readAllStandardError().constData());
    for (const Message& message : messagesOf(copy))
        QVERIFY2(message.isFinished, qPrintable("not translated: " + message.source));
}

void TestLanguage::theLanguageChangesAtOnce() {
    test::Stage stage("choosing");
    stage.settings().setLanguage("en");
    const Language language(stage.settings());
    QQmlApplicationEngine engine;
    connect(&language, &Language::changed, &engine, &QQmlEngine::retranslate);
    connect(&language, &Language::changed, &stage.sound(), &Sound::changed);
    QVERIFY(showWindow(engine, stage.fly(), stage.bench(), stage.review(), stage.settings(), stage.sound()));
    auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().first());
    const auto has = [window](const QString& text) {
        QList<QQuickItem*> items;
        collect(window->contentItem(), items);
        return std::any_of(items.begin(), items.end(), [&text](const QQuickItem* item) {
            return item->property("text").toString() == text;
        });
    };
    QVERIFY(has("Choose a flow"));
    stage.settings().setLanguage("de");
    QVERIFY(has("Einen Ablauf wählen"));
    QVERIFY(has("Ton: an"));
    QCOMPARE(QCoreApplication::translate("KeyTable", "Space"), QString("Leertaste"));
    stage.settings().setLanguage("en");
    QVERIFY(has("Choose a flow"));
    QVERIFY(has("Sound: on"));
}

void TestLanguage::sentencesBeginWithACapital_data() {
    QTest::addColumn<Phrase>("said");
    QTest::addColumn<QString>("begins");
    const Phrase slow = phrase("it counts one by one");
    QTest::newRow("own words") << slow << "It counts";
    QTest::newRow("own words within") << phrase("{1}; {2}").with(slow, slow) << "It counts one by one; it";
    QTest::newRow("a name") << phrase("{1}: {2}").with("quadrant", slow) << "quadrant: it counts";
    QTest::newRow("a line of a file") << Phrase(std::string("median = 4")) << "median";
    QTest::newRow("nothing") << Phrase() << "";
}

void TestLanguage::sentencesBeginWithACapital() {
    QFETCH(Phrase, said);
    QFETCH(QString, begins);
    QVERIFY2(sentenceOf(said).startsWith(begins), qPrintable(sentenceOf(said)));
    QCOMPARE(sentenceOf(said).isEmpty(), begins.isEmpty());
}

void TestLanguage::benchIsGerman_data() {
    QTest::addColumn<QString>("state");
    for (const QString& state : test::StubBenchMaker::names())
        if (!state.contains("long") && state != "bench-refused") // an error of a file
            QTest::newRow(qPrintable(state)) << state;
}

/// No words of core's patterns, nor of the window's texts, stand there as they are in English.
void TestLanguage::benchIsGerman() {
    QFETCH(QString, state);
    QTemporaryDir folder;
    Settings settings(folder.filePath("settings.toml"));
    settings.setLanguage("de");
    const Language language(settings);
    test::Shown shown(state);
    (void)shown.view.grabWindow();
    QList<QQuickItem*> items;
    collect(shown.view.rootObject(), items);
    QStringList english;
    for (const QString& fragment : englishFragments())
        for (const QQuickItem* item : items)
            if (item->property("text").toString().contains(fragment))
                english.append(fragment + " in: " + item->property("text").toString());
    QVERIFY2(english.isEmpty(), qPrintable(english.join(" | ")));
    for (const Phrase& phrase : phrasesOf(shown.stage.benchMaker().snapshot))
        for (const QString& pattern : patternsIn(phrase))
            QVERIFY2(isInCoreList(pattern), qPrintable(pattern));
}

void TestLanguage::benchChangesItsLanguageAtOnce() {
    test::Stage stage("bench-filters");
    stage.settings().setLanguage("en");
    const Language language(stage.settings());
    BenchPresenter& bench = stage.bench();
    connect(&language, &Language::changed, &bench, &BenchPresenter::tellAnew);
    BenchSnapshot& snapshot = stage.benchMaker().snapshot;
    snapshot.task.ask = phrase("Let go.");
    Coverage coverage = *snapshot.coverage;
    for (CoveredStep& step : coverage.steps)
        step.obstacles.push_back({"not-wired", kNoSignal, phrase("{1} is not wired").with("Beacon")});
    snapshot.coverage = std::make_shared<const Coverage>(coverage);
    bench.enter();
    const auto shown = [&bench] {
        QStringList texts{bench.ask(), bench.filterWords()};
        for (int row = 0; row < bench.findings()->count(); ++row)
            texts << bench.findings()->row<FindingRow>(row).reason;
        for (int row = 0; row < bench.coverage()->count(); ++row)
            texts << bench.coverage()->row<CoverageRow>(row).why;
        for (int row = 0; row < bench.wiring()->offers()->count(); ++row)
            texts << bench.wiring()->offers()->row<OfferRow>(row).text;
        return texts.join('\n');
    };
    const QStringList english{"Let go.", "jumps beyond 220 counts", "loose plug", "is not wired", "as of two seats"};
    const QStringList german{"Loslassen.", "Sprünge über 220 Zählwerte", "loser Stecker", "ist nicht verdrahtet",
                             "wie von zwei Sitzen"};
    for (const QString& words : english)
        QVERIFY2(shown().contains(words), qPrintable(shown()));
    QSignalSpy changed(&bench, &BenchPresenter::changed);
    stage.settings().setLanguage("de");
    QVERIFY(!changed.isEmpty());
    for (const QString& words : german)
        QVERIFY2(shown().contains(words), qPrintable(shown()));
    for (const QString& words : english)
        QVERIFY2(!shown().contains(words), qPrintable(words));
}

void TestLanguage::coreSpeaksTheLanguage_data() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<QString>("says"); ///< core, in German
    QTest::newRow("live debrief") << "not-passed"
                                  << "Ein entscheidender Schritt wurde nicht sicher getan: ";
    QTest::newRow("device lost") << "device-lost"
                                 << "Wieder einstecken; der Durchgang geht von selbst weiter";
    QTest::newRow("feed lost") << "feed-lost"
                               << " ist verstummt.";
    QTest::newRow("deviations") << "review"
                                << "Schutzregel verletzt: ";
    QTest::newRow("steps") << "review-steps"
                           << "getan";
    QTest::newRow("the run as a whole") << "review-about"
                                        << "Simulierte Eingabe";
    QTest::newRow("notes") << "review-notes"
                           << "Der eigene Bericht des Piloten";
    QTest::newRow("comparison") << "review-compare"
                                << "(der andere: ";
    QTest::newRow("progress") << "progress"
                              << "Zuletzt vor 4 Tagen geflogen: ";
}

/// In German no sentence of core's is left in English; in English none in German, and that at once.
void TestLanguage::coreSpeaksTheLanguage() {
    QFETCH(QString, state);
    QFETCH(QString, says);
    test::Shown shown(state);
    shown.stage.settings().setLanguage("en");
    const Language language(shown.stage.settings());
    connect(&language, &Language::changed, &shown.stage.sound(), &Sound::changed);
    connect(&language, &Language::changed, &shown.stage.fly(), &FlyPresenter::tellAnew);
    connect(&language, &Language::changed, &shown.stage.review(), &ReviewPresenter::tellAnew);
    connect(&language, &Language::changed, &shown.stage.progress(), &ProgressPresenter::tellAnew);
    connect(&language, &Language::changed, shown.view.engine(), &QQmlEngine::retranslate);
    const auto texts = [&shown] {
        (void)shown.view.grabWindow();
        QCoreApplication::processEvents();
        return textsOf(shown.view.rootObject());
    };
    const QStringList english = texts();
    QVERIFY(!english.join('\n').contains(says));
    shown.stage.settings().setLanguage("de");
    const QStringList german = texts();
    QVERIFY2(german.join('\n').contains(says), qPrintable(german.join('\n')));
    for (const QString& text : german)
        for (const QString& fragment : englishFragments())
            QVERIFY2(!text.contains(fragment), qPrintable(fragment + " in: " + text));
    shown.stage.settings().setLanguage("en");
    const QStringList again = texts();
    QCOMPARE(again.size(), english.size());
    for (qsizetype i = 0; i < again.size(); ++i)
        QCOMPARE(again[i], english[i]);
}

/// Every signal of the aircraft's motion, so that a new one is not forgotten.
void TestLanguage::motionHasGermanNames() {
    test::Stage stage("choosing");
    stage.settings().setLanguage("de");
    const Language language(stage.settings());
    for (const Signal& signal : motionSignals(2, true))
        QVERIFY2(labelOf(signal) != QString::fromStdString(signal.label) || signal.label.starts_with('V'),
                 signal.label.c_str());
    Signal control;
    control.label = "Fuel lever 1";
    QCOMPARE(labelOf(control), QString("Fuel lever 1"));
}

void TestLanguage::pseudoKeepsWhatIsFilledIn() {
    const PseudoTranslator pseudo;
    const QString text = pseudo.translate("", "Run %1 of %2", nullptr, -1);
    QVERIFY2(text.startsWith('[') && text.endsWith("~]") && text.size() > 15, qPrintable(text));
    QCOMPARE(placesOf(text), (QStringList{"%1", "%2"}));
    QCOMPARE(pseudo.translate("", "F1", nullptr, -1), QString("F1"));
}

void TestLanguage::nothingIsClipped_data() {
    QTest::addColumn<QString>("state");
    for (const QString& state : test::Stage::names())
        if (!state.contains("long"))
            QTest::newRow(qPrintable(state)) << state;
}

/// Texts of our own, which the brackets tell, stand whole in the window of 1280 by 800; what a file named may be cut.
void TestLanguage::nothingIsClipped() {
    QFETCH(QString, state);
    PseudoTranslator pseudo;
    QCoreApplication::installTranslator(&pseudo);
    test::Shown shown(state);
    for (int frame = 0; frame < 2; ++frame) { // layouts within layouts settle with the third frame
        (void)shown.view.grabWindow();
        QCoreApplication::processEvents();
    }
    QList<QQuickItem*> items;
    collect(shown.view.rootObject(), items);
    QStringList cut;
    for (const QQuickItem* item : items) {
        const QString text = item->property("text").toString();
        if (!item->inherits("QQuickText") || !text.startsWith('[') || isAside(item))
            continue;
        const QRectF place = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
        if (item->property("truncated").toBool() || place.left() < -1 || place.right() > 1281)
            cut.append(text);
    }
    QCoreApplication::removeTranslator(&pseudo);
    QVERIFY2(cut.isEmpty(), qPrintable(cut.join(" | ")));
}

QTEST_MAIN(TestLanguage)
#include "test_language.moc"
