#include <QFile>
#include <QtTest>

#include "store/database.h"
#include "storefixture.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

Note noteOf(NoteKind kind, std::string text, std::string choice = {}) {
    Note note;
    note.kind = kind;
    note.text = std::move(text);
    note.choice = std::move(choice);
    return note;
}

Note aboutStep(Note note, const char* step, Time offset = {}) {
    note.anchor = {step, offset, 2s + offset};
    return note;
}

} // namespace

class TestNotes : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void init();
    void notesComeBackAsTheyWere();
    void oneOfItsKindTakesTheOthersPlace();
    void theAccountComesFirst();
    void badNotesSayWhy_data();
    void badNotesSayWhy();
    void notesAreWrittenInMidRun();
    void theScoreStaysUntouched();
    void aNoteIsChangedAndRemoved();
    void everyMarkIsExplained();

private:
    std::optional<TemporaryStore> m_place;
    std::optional<Store> m_store;
    std::int64_t m_run = 0;
    std::vector<Note> notes() { return m_store->load(m_run)->notes; }
};

void TestNotes::init() {
    m_store.reset();
    m_place.emplace();
    Result<Store> store = Store::open(m_place->file());
    QVERIFY(store);
    m_store.emplace(std::move(*store));
    const std::unique_ptr<Recorder> recorder = m_store->recorder();
    QVERIFY(recorder->begin(testHeader()));
    QVERIFY(recorder->samples(testSamples(1)));
    QVERIFY(recorder->finish(1s, testScore(), testResults()));
    m_run = recorder->runId();
}

void TestNotes::notesComeBackAsTheyWere() {
    Note note = aboutStep(noteOf(NoteKind::Note, "Looked outside here.\nTwice, \"long\"."), "flap_12", -300ms);
    note.author = "Kim";
    const Result<std::int64_t> id = m_store->writeNote(m_run, note);
    QVERIFY2(id, id ? "" : id.error().message.c_str());
    const std::vector<Note> back = notes();
    QCOMPARE(back.size(), std::size_t(1));
    QVERIFY(back[0].writtenUnixMillis > 1'700'000'000'000);
    note.id = *id;
    note.writtenUnixMillis = back[0].writtenUnixMillis;
    QVERIFY(back[0] == note);
    QCOMPARE(m_store->runs()->front().notes, std::int64_t(1));
}

void TestNotes::oneOfItsKindTakesTheOthersPlace() {
    QVERIFY(m_store->writeNote(m_run, noteOf(NoteKind::Account, "It went well.")));
    QVERIFY(m_store->writeNote(m_run, noteOf(NoteKind::Account, "It went well enough.")));
    QVERIFY(m_store->writeNote(m_run, aboutStep(noteOf(NoteKind::Cause, "", "forgot"), "flap_12")));
    QVERIFY(m_store->writeNote(m_run, aboutStep(noteOf(NoteKind::Cause, "", "slipped"), "taxi_light")));
    QVERIFY(m_store->writeNote(m_run, aboutStep(noteOf(NoteKind::Cause, "", "was rushed"), "flap_12")));
    QVERIFY(m_store->writeNote(m_run, noteOf(NoteKind::Note, "one")));
    QVERIFY(m_store->writeNote(m_run, noteOf(NoteKind::Note, "two")));
    std::vector<std::string> said;
    for (const Note& note : notes())
        said.push_back(note.text + note.choice);
    QCOMPARE(said, (std::vector<std::string>{"It went well enough.", "slipped", "was rushed", "one", "two"}));
}

void TestNotes::theAccountComesFirst() {
    Note mark = noteOf(NoteKind::Mark, "", "4");
    mark.phase = "taxi_out";
    const Note ruling = aboutStep(noteOf(NoteKind::Ruling, "A telephone rang.", "excused"), "flap_12");
    for (const Note& note : {mark, ruling, noteOf(NoteKind::Practice, "Flap first.")})
        QCOMPARE(m_store->writeNote(m_run, note).error().code, std::string("account-first"));
    QVERIFY(m_store->writeNote(m_run, noteOf(NoteKind::Objective, "Flap before the light.")));
    QVERIFY(m_store->writeNote(m_run, noteOf(NoteKind::Account, "Forgot the flap.")));
    for (const Note& note : {mark, ruling, noteOf(NoteKind::Practice, "Flap first.")})
        QVERIFY(m_store->writeNote(m_run, note));
}

void TestNotes::badNotesSayWhy_data() {
    QTest::addColumn<QString>("kind");
    QTest::addColumn<QString>("step");
    QTest::addColumn<QString>("guard");
    QTest::addColumn<QString>("phase");
    QTest::addColumn<QString>("choice");
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("message");
    QTest::newRow("no words") << "note"
                              << ""
                              << ""
                              << ""
                              << ""
                              << ""
                              << "words";
    QTest::newRow("no such step") << "note"
                                  << "flap_13"
                                  << ""
                                  << ""
                                  << ""
                                  << "x"
                                  << "did you mean 'flap_12'?";
    QTest::newRow("no such guard") << "ruling"
                                   << ""
                                   << "speed"
                                   << ""
                                   << "stands"
                                   << "x"
                                   << "no guard 'speed'";
    QTest::newRow("ruling about nothing") << "ruling"
                                          << ""
                                          << ""
                                          << ""
                                          << "stands"
                                          << "x"
                                          << "which finding";
    QTest::newRow("ruling without a reason") << "ruling"
                                             << "flap_12"
                                             << ""
                                             << ""
                                             << "stands"
                                             << ""
                                             << "reason";
    QTest::newRow("no such ruling") << "ruling"
                                    << "flap_12"
                                    << ""
                                    << ""
                                    << "maybe"
                                    << "x"
                                    << "stands, excused";
    QTest::newRow("no such cause") << "cause"
                                   << "flap_12"
                                   << ""
                                   << ""
                                   << "bored"
                                   << ""
                                   << "did not know, forgot";
    QTest::newRow("no such phase") << "mark"
                                   << ""
                                   << ""
                                   << "cruise"
                                   << "3"
                                   << ""
                                   << "no phase 'cruise'";
    QTest::newRow("no such mark") << "mark"
                                  << ""
                                  << ""
                                  << "taxi_out"
                                  << "6"
                                  << ""
                                  << "1, 2, 3, 4, 5";
    QTest::newRow("a book") << "note"
                            << ""
                            << ""
                            << ""
                            << "" << QString(20'000, 'x') << "longer";
}

void TestNotes::badNotesSayWhy() {
    QFETCH(QString, kind);
    QFETCH(QString, step);
    QFETCH(QString, guard);
    QFETCH(QString, phase);
    QFETCH(QString, choice);
    QFETCH(QString, text);
    QFETCH(QString, message);
    QVERIFY(m_store->writeNote(m_run, noteOf(NoteKind::Account, "So it went.")));
    Note note = noteOf(*findNoteKind(kind.toStdString()), text.toStdString(), choice.toStdString());
    note.anchor.step = step.toStdString();
    note.guard = guard.toStdString();
    note.phase = phase.toStdString();
    const Result<std::int64_t> written = m_store->writeNote(m_run, note);
    QVERIFY(!written);
    QCOMPARE(written.error().code, std::string("bad-note"));
    QVERIFY2(QString::fromStdString(written.error().message).contains(message), written.error().message.c_str());
    QCOMPARE(notes().size(), std::size_t(1));
}

void TestNotes::notesAreWrittenInMidRun() {
    const std::unique_ptr<Recorder> recorder = m_store->recorder();
    QVERIFY(recorder->begin(testHeader()));
    QVERIFY(recorder->samples(testSamples(1)));
    QVERIFY(m_store->writeNote(recorder->runId(), noteOf(NoteKind::Note, "here")));
    QVERIFY(recorder->samples(std::vector<Sample>{handSample(2'000'000, 0, 1.0)}));
    QVERIFY(recorder->finish(2s, testScore(), testResults()));
    const Result<StoredRun> run = m_store->load(recorder->runId());
    QVERIFY(run && run->damage.empty());
    QCOMPARE(run->notes.size(), std::size_t(1));
    QCOMPARE(run->samples.size(), testSamples(1).size() + 1);
    QCOMPARE(m_store->writeNote(99, noteOf(NoteKind::Note, "x")).error().code, std::string("no-such-run"));
}

void TestNotes::theScoreStaysUntouched() {
    QVERIFY(m_store->writeNote(m_run, noteOf(NoteKind::Account, "Forgot the flap.")));
    QVERIFY(m_store->writeNote(m_run, aboutStep(noteOf(NoteKind::Ruling, "Not briefed.", "excused"), "flap_12")));
    const Result<StoredRun> run = m_store->load(m_run);
    QCOMPARE(run->score.milliPoints, testScore().milliPoints);
    QCOMPARE(run->score.ledger.size(), testScore().ledger.size());
    QVERIFY(!run->summary.isPassed);
}

void TestNotes::aNoteIsChangedAndRemoved() {
    const Result<std::int64_t> id = m_store->writeNote(m_run, noteOf(NoteKind::Note, "first"));
    Note changed = notes().at(0);
    changed.text = "second";
    const Result<std::int64_t> again = m_store->writeNote(m_run, changed);
    QVERIFY(id && again);
    QCOMPARE(notes().size(), std::size_t(1));
    QCOMPARE(notes()[0].text, std::string("second"));
    QVERIFY(m_store->removeNote(*again));
    QVERIFY(notes().empty());
    QCOMPARE(m_store->removeNote(*again).error().code, std::string("no-such-note"));
}

void TestNotes::everyMarkIsExplained() {
    for (int mark = 1; mark <= 5; ++mark)
        QVERIFY(!markWords(mark).isEmpty());
    QVERIFY(markWords(0).isEmpty() && markWords(6).isEmpty());
}

QTEST_APPLESS_MAIN(TestNotes)
#include "test_notes.moc"
