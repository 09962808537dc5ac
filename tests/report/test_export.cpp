// What a run looks like outside of the program: the page and the tables.

#include <QRegularExpression>
#include <QtTest>

#include "report/debriefhtml.h"
#include "report/runcsv.h"
#include "report/timelinesvg.h"
#include "review/flown.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

/// Reads a table back: RFC 4180.
QList<QStringList> rowsOf(const std::string& csv) {
    QList<QStringList> rows{{}};
    QByteArray cell;
    bool isQuoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        const char letter = csv[i];
        if (isQuoted) {
            const bool isTwo = letter == '"' && i + 1 < csv.size() && csv[i + 1] == '"';
            if (letter != '"' || isTwo)
                cell.append(letter);
            i += isTwo ? 1 : 0;
            isQuoted = letter != '"' || isTwo;
        } else if (letter == '"') {
            isQuoted = true;
        } else if (letter == ',' || letter == '\n') {
            rows.back().append(QString::fromUtf8(cell));
            cell.clear();
            if (letter == '\n')
                rows.append(QStringList());
        } else if (letter != '\r') {
            cell.append(letter);
        }
    }
    rows.removeLast();
    return rows;
}

} // namespace

class TestExport : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void thePageNeedsNothingElse();
    void thePageSaysWhatTheDebriefSays();
    void whatPeopleWriteIsText();
    void picturesFitTheirFrame();
    void everySampleIsInTheTable();
    void everyEventIsInTheTable();
    void noCellIsAFormula();

private:
    std::optional<FlownRecord> m_run;
    std::optional<Timeline> m_timeline;
    std::vector<Note> m_notes;
    DebriefInput input() {
        DebriefInput input{*m_run->flow,        *m_run->aircraft,      m_run->header,
                           m_run->judged.score, m_run->judged.results, m_run->judged.events};
        input.notes = &m_notes;
        input.timeline = &*m_timeline;
        return input;
    }
};

void TestExport::initTestCase() {
    m_run = flown("take_off", readFile(TEST_DATA "/hands/take_off_wrong.hands", 1 << 20).value_or(""));
    QVERIFY(m_run);
    m_run->header.pilot = "<b>Kim</b> & \"Co\"";
    m_timeline.emplace(m_run->reviewed());
    Note note;
    note.kind = NoteKind::Account;
    note.text = "Flap </li><script>alert(1)</script>";
    m_notes = {note};
}

void TestExport::thePageNeedsNothingElse() {
    const QString page = QString::fromStdString(debriefHtml(input()));
    for (const char* outside : {"http:", "https:", "src=", "href=", "url(", "@import", "<script", "<link", "<img"})
        QVERIFY2(!page.contains(outside), outside);
    QVERIFY(page.startsWith("<!DOCTYPE html>") && page.endsWith("</html>\n"));
    QVERIFY(page.count("<svg") > 3);
    QCOMPARE(page.count("<svg"), page.count("</svg>"));
    for (const char* tag : {"table", "tr", "td", "li", "ul", "p", "h2"})
        QCOMPARE(page.count(QRegularExpression(QString("<%1[ >]").arg(tag))), page.count(QString("</%1>").arg(tag)));
}

void TestExport::thePageSaysWhatTheDebriefSays() {
    const QString page = QString::fromStdString(debriefHtml(input()));
    QVERIFY(page.contains(kTrainingNote));
    QVERIFY(!m_run->judged.score.ledger.empty());
    for (const LedgerLine& line : m_run->judged.score.ledger)
        QVERIFY2(page.contains(QString::fromStdString(line.text.english()).toHtmlEscaped()),
                 line.text.english().c_str());
    for (const Step& step : m_run->flow->steps)
        QVERIFY(page.contains(QString::fromStdString(step.title).toHtmlEscaped()));
    QVERIFY(page.contains("steps in order and on time"));
    QVERIFY(page.contains("the pilot's own account") || page.contains("the pilot&#39;s own account"));
}

void TestExport::whatPeopleWriteIsText() {
    const QString page = QString::fromStdString(debriefHtml(input()));
    QVERIFY(page.contains("&lt;b&gt;Kim&lt;/b&gt; &amp; &quot;Co&quot;"));
    QVERIFY(page.contains("&lt;script&gt;alert(1)"));
    QVERIFY(!page.contains("<b>Kim"));
}

void TestExport::picturesFitTheirFrame() {
    std::vector<std::string> pictures{lanesSvg(*m_timeline)};
    for (const SignalId signal : signalsToPlot(*m_timeline, 20))
        pictures.push_back(signalSvg(*m_timeline, signal));
    QVERIFY(pictures.size() > 4);
    for (const std::string& picture : pictures) {
        const QString svg = QString::fromStdString(picture);
        QVERIFY(!svg.contains("nan") && !svg.contains("inf"));
        static const QRegularExpression box("viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"");
        const QRegularExpressionMatch frame = box.match(svg);
        QVERIFY(frame.hasMatch());
        static const QRegularExpression place("<rect x=\"([-0-9.]+)\" y=\"([-0-9.]+)\" width=\"([-0-9.]+)\"");
        for (auto places = place.globalMatch(svg); places.hasNext();) {
            const QRegularExpressionMatch one = places.next();
            QVERIFY(one.captured(1).toDouble() >= 0 && one.captured(2).toDouble() >= 0);
            QVERIFY(one.captured(1).toDouble() + one.captured(3).toDouble() <= frame.captured(1).toDouble() + 2);
        }
    }
}

void TestExport::everySampleIsInTheTable() {
    const QList<QStringList> rows = rowsOf(signalsCsv(m_run->reviewed(), m_run->samples));
    QCOMPARE(std::size_t(rows.size()), m_run->samples.size() + 1);
    QCOMPARE(rows[0].join(","), QString("time_s,signal,value,unit,actor,origin,control"));
    for (std::size_t i = 0; i < m_run->samples.size(); ++i) {
        const Sample& sample = m_run->samples[i];
        const QStringList& row = rows[qsizetype(i) + 1];
        QCOMPARE(row.size(), qsizetype(7));
        const Signal& signal = m_run->aircraft->signals[sample.signal];
        QVERIFY(Time(std::llround(row[0].toDouble() * 1e9)) == sample.time);
        QCOMPARE(row[1], QString::fromStdString(signal.name));
        if (signal.kind == SignalKind::Number)
            QVERIFY(row[2].toDouble() == sample.value.number());
        else
            QCOMPARE(row[2], QString::fromStdString(valueText(signal, sample.value)));
    }
}

void TestExport::everyEventIsInTheTable() {
    const QList<QStringList> rows = rowsOf(eventsCsv(m_run->reviewed()));
    QCOMPARE(std::size_t(rows.size()), m_run->judged.events.size() + 1);
    for (std::size_t i = 0; i < m_run->judged.events.size(); ++i) {
        const Event& event = m_run->judged.events[i];
        const QStringList& row = rows[qsizetype(i) + 1];
        QCOMPARE(row.size(), rows[0].size());
        QCOMPARE(row[1].toStdString(), std::string(nameOf(event.kind)));
        QCOMPARE(row[2].toStdString(), event.step < 0 ? "" : m_run->flow->steps[std::size_t(event.step)].id);
        QCOMPARE(row[11].toStdString(), event.text.english());
    }
}

void TestExport::noCellIsAFormula() {
    std::vector<Event> events(1);
    events[0].text = std::string("=HYPERLINK(\"x\")");
    const ReviewedRun run{*m_run->flow, *m_run->aircraft,      m_run->header,       m_run->bySignal,
                          events,       m_run->judged.results, m_run->judged.score, m_run->length};
    QCOMPARE(rowsOf(eventsCsv(run))[1].last(), QString("'=HYPERLINK(\"x\")"));
}

QTEST_APPLESS_MAIN(TestExport)
#include "test_export.moc"
