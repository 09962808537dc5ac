#include <QRegularExpression>
#include <QtTest>

#include <set>

#include "procedure/library.h"
#include "procedure/panelareas.h"
#include "report/cards.h"
#include "report/debrief.h"
#include "report/html.h"

using namespace flowhand;

/// Cards of every shipped flow.
class TestCards : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void aCardHasTheWholeFlow_data();
    void aCardHasTheWholeFlow();
    void everyControlLiesInItsBlock_data();
    void everyControlLiesInItsBlock();
    void aSetHasEveryCard();
    void wordsAreNoMarkup();

private:
    std::vector<AircraftFolder> m_library;
};

namespace {

QString text(const std::string& words) {
    return QString::fromStdString(escaped(words));
}

/// The boxes of a picture, by their fill: blocks are grey, controls white, numbers black.
std::vector<QRectF> boxes(const QString& html, const QString& fill) {
    static const QRegularExpression shape(
        R"~(<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)" rx="3" fill="(#\w+)")~");
    std::vector<QRectF> found;
    for (auto at = shape.globalMatch(html); at.hasNext();) {
        const auto match = at.next();
        if (match.captured(5) == fill)
            found.emplace_back(match.captured(1).toDouble(), match.captured(2).toDouble(), match.captured(3).toDouble(),
                               match.captured(4).toDouble());
    }
    return found;
}

} // namespace

void TestCards::initTestCase() {
    Problems problems;
    m_library = loadLibrary(PROCEDURES, problems);
    QVERIFY(!m_library.empty() && !problems.hasErrors());
}

void TestCards::aCardHasTheWholeFlow_data() {
    QTest::addColumn<const Aircraft*>("aircraft");
    QTest::addColumn<const Flow*>("flow");
    for (const AircraftFolder& folder : m_library)
        for (const Flow& flow : folder.flows)
            QTest::newRow(qPrintable(QString::fromStdString(folder.aircraft->folder + "/" + flow.id)))
                << static_cast<const Aircraft*>(folder.aircraft.get()) << &flow;
}

void TestCards::aCardHasTheWholeFlow() {
    QFETCH(const Aircraft*, aircraft);
    QFETCH(const Flow*, flow);
    const QString html = QString::fromStdString(cardHtml(*aircraft, *flow));
    QVERIFY(html.contains(kTrainingNote));
    QVERIFY(html.contains("<h1>" + text(flow->title)));
    if (flow->abnormal) {
        QVERIFY(html.contains(text(flow->abnormal->condition)));
        QVERIFY(html.contains(text(flow->abnormal->objective)));
    }
    qsizetype at = 0;
    std::set<std::size_t> worked;
    for (const Step& step : flow->steps) {
        at = html.indexOf(text(step.title), at); // in their order
        QVERIFY2(at >= 0, step.title.c_str());
        QVERIFY2(!step.cue || html.contains(text(step.cue->text)), step.id.c_str());
        QVERIFY2(html.contains(text(step.reply)), step.id.c_str());
        std::vector<SignalId> controls;
        if (step.done)
            for (const SignalId id : step.done->condition.signals())
                if (aircraft->isControl(id) && aircraft->control(id).kind != ControlKind::Button)
                    controls.push_back(id);
        controls.insert(controls.end(), step.controls.begin(), step.controls.end());
        if (!controls.empty())
            worked.insert(indexOf(controls.front()));
    }
    QCOMPARE(boxes(html, "#111").size(), worked.size()); // each worked control has its numbers
    QCOMPARE(html.contains("&#9744;"), flow->style != FlowStyle::Flow);
}

void TestCards::everyControlLiesInItsBlock_data() {
    QTest::addColumn<const AircraftFolder*>("folder");
    for (const AircraftFolder& folder : m_library)
        QTest::newRow(folder.aircraft->folder.c_str()) << &folder;
}

void TestCards::everyControlLiesInItsBlock() {
    QFETCH(const AircraftFolder*, folder);
    const QString html = QString::fromStdString(cardHtml(*folder->aircraft, folder->flows.front()));
    const std::vector<QRectF> blocks = boxes(html, "#f4f4f4");
    const std::vector<QRectF> controls = boxes(html, "#fff");
    QCOMPARE(blocks.size(), panelAreas(*folder->aircraft).size());
    QCOMPARE(controls.size(), folder->aircraft->controls.size());
    for (std::size_t i = 0; i < blocks.size(); ++i)
        for (std::size_t j = i + 1; j < blocks.size(); ++j)
            QVERIFY(!blocks[i].intersects(blocks[j]));
    for (std::size_t i = 0; i < controls.size(); ++i) {
        QVERIFY(controls[i].height() > 12.0); // room for its label
        QCOMPARE(std::count_if(blocks.begin(), blocks.end(),
                               [&](const QRectF& block) {
                                   return block.contains(controls[i]);
                               }),
                 1);
        for (std::size_t j = i + 1; j < controls.size(); ++j)
            QVERIFY(!controls[i].intersects(controls[j]));
    }
}

void TestCards::aSetHasEveryCard() {
    for (const AircraftFolder& folder : m_library) {
        const QString html = QString::fromStdString(cardSetHtml(folder));
        QCOMPARE(html.count("<section"), qsizetype(folder.flows.size()) + 1);
        QCOMPARE(html.count(kTrainingNote), qsizetype(folder.flows.size()) + 1);
        for (const Flow& flow : folder.flows)
            QVERIFY(html.contains("href=\"#" + text(flow.id) + "\""));
    }
}

void TestCards::wordsAreNoMarkup() {
    Flow flow = m_library.front().flows.front();
    flow.title = "<script>\"&";
    flow.steps.front().title = "<b>";
    const QString html = QString::fromStdString(cardHtml(*m_library.front().aircraft, flow));
    QVERIFY(!html.contains("<script>"));
    QVERIFY(html.contains("&lt;b&gt;"));
}

QTEST_APPLESS_MAIN(TestCards)
#include "test_cards.moc"
