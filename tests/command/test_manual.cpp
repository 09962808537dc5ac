// The manual: its pages, what they cite, and 'flowhand manual'.

#include <QRegularExpression>
#include <QTemporaryDir>
#include <QtTest>

#include "base/textfile.h"
#include "command/printed.h"
#include "report/manual.h"
#include "report/markdown.h"
#include "session/score.h"

using namespace flowhand;

namespace {

constexpr const char* kFolder = ASSETS "/manual";

std::string html(const std::string& markdown) {
    return markdownHtml(markdown, [](const std::string& name) {
        return name == "there.png" ? "data:there" : "";
    });
}

/// The flow of the page 'What the score means'.
Flow scoreFlow() {
    Flow flow;
    const std::pair<const char*, int> steps[] = {
        {"Taxi light on", 1}, {"Press both toe brakes", 1}, {"Flap lever to 12", 2}, {"Thrust levers to idle", 3}};
    for (const auto& [title, weight] : steps) {
        Step step;
        step.id = title;
        step.title = title;
        step.weight = weight;
        step.within = std::chrono::seconds(5);
        step.late = std::chrono::seconds(10);
        if (!flow.steps.empty())
            step.after = {flow.steps.size() - 1};
        flow.steps.push_back(std::move(step));
    }
    return flow;
}

std::vector<StepResult> allDone() {
    std::vector<StepResult> results(4);
    for (std::size_t i = 0; i < results.size(); ++i) {
        results[i].state = StepState::Done;
        results[i].due = std::chrono::seconds(20 * static_cast<int>(i));
        results[i].done = results[i].due + std::chrono::seconds(2);
    }
    return results;
}

} // namespace

class TestManual : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void markdownBecomesHtml_data();
    void markdownBecomesHtml();
    void everyPageIsWhole_data();
    void everyPageIsWhole();
    void onePageHasThemAll();
    void theScoresOfTheExamples_data();
    void theScoresOfTheExamples();
    void theCommandListsAndPrints();
};

void TestManual::markdownBecomesHtml_data() {
    QTest::addColumn<QString>("markdown");
    QTest::addColumn<QString>("expected");
    QTest::newRow("heading") << "## Two words"
                             << "<h2>Two words</h2>\n";
    QTest::newRow("paragraph") << "a **b** *c* `d<e` f"
                               << "<p>a <b>b</b> <i>c</i> <code>d&lt;e</code> f</p>\n";
    QTest::newRow("no mark-up") << "0.40 * w, 2 * 3 & more"
                                << "<p>0.40 * w, 2 * 3 &amp; more</p>\n";
    QTest::newRow("list") << "- a\n- b"
                          << "<ul>\n<li>a</li>\n<li>b</li>\n</ul>\n";
    QTest::newRow("numbers") << "1. a\n2. b"
                             << "<ol>\n<li>a</li>\n<li>b</li>\n</ol>\n";
    QTest::newRow("table") << "| a | b |\n| --- | --- |\n| c |  |"
                           << "<table><thead><tr><th>a</th><th>b</th></tr>\n</thead><tbody>\n<tr><td>c</td><td></td></"
                              "tr>\n</tbody></table>\n";
    QTest::newRow("link") << "[a](b.html)"
                          << "<p><a href=\"b.html\">a</a></p>\n";
    QTest::newRow("picture") << "![a](there.png)"
                             << "<p><img src=\"data:there\" alt=\"a\"></p>\n";
    QTest::newRow("no picture") << "![a](gone.png)"
                                << "<p></p>\n";
    QTest::newRow("code") << "    a < b\n    c"
                          << "<pre>a &lt; b\nc\n</pre>\n";
    QTest::newRow("a table that ends early")
        << "| a |"
        << "<table><thead><tr><th>a</th></tr>\n</thead><tbody>\n</tbody></table>\n";
    QTest::newRow("open marks") << "**a `b [c"
                                << "<p>**a `b [c</p>\n";
}

void TestManual::markdownBecomesHtml() {
    QFETCH(QString, markdown);
    QFETCH(QString, expected);
    QCOMPARE(QString::fromStdString(html(markdown.toStdString())), expected);
}

void TestManual::everyPageIsWhole_data() {
    QTest::addColumn<QString>("title");
    QTest::addColumn<QString>("text");
    const Result<std::vector<ManualPage>> pages = manualPages(kFolder);
    QVERIFY(pages.has_value());
    QCOMPARE(pages->size(), std::size_t(9));
    for (const ManualPage& page : *pages)
        QTest::newRow(page.id.c_str()) << QString::fromStdString(page.title) << QString::fromStdString(page.text);
}

void TestManual::everyPageIsWhole() {
    QFETCH(QString, title);
    QFETCH(QString, text);
    QVERIFY(!title.isEmpty() && text.startsWith("# " + title + "\n"));
    QVERIFY(text.contains("not for real-world flight training"));
    QVERIFY(text.contains("low voltage") && text.contains("electrical codes") && text.contains("licensed instructor"));
    // Commands that a page names are there.
    static const QRegularExpression command("`flowhand ([a-z]+)[^`]*`");
    for (auto at = command.globalMatch(text); at.hasNext();) {
        const QString name = at.next().captured(1);
        QVERIFY2(flowhandWith({name, "--help"}).status == 0, qPrintable(name));
    }
}

void TestManual::onePageHasThemAll() {
    const QTemporaryDir folder;
    const QString file = folder.filePath("manual.html");
    const Printed printed = flowhandWith({"manual", "--html", file, "--folder", kFolder});
    QCOMPARE(printed.status, 0);
    const QString page = QString::fromStdString(readFile(file.toStdString()).value_or(""));
    QCOMPARE(page.count("<section id="), 9);
    QCOMPARE(page.count("for real-world flight training"), 9);
    QVERIFY(page.contains("href=\"#score\""));
    QVERIFY(!page.contains("src=\"pictures/") && !page.contains("http")); // it needs no other file
}

void TestManual::theScoresOfTheExamples_data() {
    QTest::addColumn<QString>("score");
    for (const char* score : {"93", "85.714", "88.571", "82.857", "98.571"})
        QTest::newRow(score) << score;
}

/// What the page tells is what the program reckons.
void TestManual::theScoresOfTheExamples() {
    QFETCH(QString, score);
    const Flow flow = scoreFlow();
    std::vector<StepResult> results = allDone();
    std::vector<ExtraResult> extras;
    if (score == "93") {
        results[2].done = results[2].due + std::chrono::seconds(7);
        extras.push_back({results[2].due, false, false, 2, kNoSignal, Phrase("Spoiler lever")});
    } else if (score == "85.714") {
        results[0].state = StepState::Omitted;
    } else if (score == "88.571") {
        results[3].done = results[2].due + std::chrono::seconds(1);
        results[3].due = results[3].done;
        results[2].done = results[3].done + std::chrono::seconds(2);
    } else if (score == "82.857") {
        results[3].due = {};
        results[3].done = std::chrono::milliseconds(500);
    } else {
        results[2].mu = 0.5;
    }
    const Score reckoned = scoreOf(flow, results, extras, {}, {});
    QCOMPARE(static_cast<double>(reckoned.milliPoints) / 1000.0, score.toDouble());
    QCOMPARE(reckoned.isPassed, score != "82.857");
    const Result<std::string> page = readFile(std::string(kFolder) + "/80_score.md");
    QVERIFY(page && QString::fromStdString(*page).contains("Score: **" + score + "**"));
}

void TestManual::theCommandListsAndPrints() {
    const Printed list = flowhandWith({"manual", "--folder", kFolder});
    QCOMPARE(list.status, 0);
    QVERIFY2(list.out.contains("score               What the score means\n"), qPrintable(list.out));
    const Printed page = flowhandWith({"manual", "wiring", "--folder", kFolder});
    QVERIFY(page.status == 0 && page.out.startsWith("# Wiring"));
    const Printed none = flowhandWith({"manual", "wirin", "--folder", kFolder});
    QVERIFY(none.status == 1 && none.err.contains("did you mean 'wiring'?"));
    QCOMPARE(flowhandWith({"manual", "--folder", "/nowhere"}).status, 1);
}

QTEST_APPLESS_MAIN(TestManual)
#include "test_manual.moc"
