#include "stubreview.h"

#include <map>

#include <Qt>
#include <QtGlobal>

#include "aircraft/practice.h"
#include "base/textfile.h"
#include "procedure/library.h"
#include "store/archive.h"
#include "store/connection.h"

namespace flowhand::test {

namespace {

using namespace std::chrono_literals;

/// Every title of a file that a person wrote, made as long as anybody might write it.
std::string withLongTitles(std::string source) {
    constexpr char kMark[] = "\ntitle = \"";
    for (std::size_t at = source.find(kMark); at != std::string::npos; at = source.find(kMark, at + 1)) {
        const std::size_t end = source.find('"', at + sizeof kMark - 1);
        source.insert(end, " and leave it there until the ground crew has answered twice");
    }
    return source;
}

void lengthen(StoredRun& run) {
    run.header.flowSource = withLongTitles(run.header.flowSource);
    run.header.flowTitle += " with everything that belongs to it on an unusually long day";
    run.header.pilot = "Somebody with a first, a second and a third name";
    run.header.rigTitle = "Quadrant, pedals, tiller and a panel of switches from the workshop";
}

void withPilot(StoredRun& run) {
    run.header.pilot = "Ada";
}

} // namespace

QStringList StubShelf::names() {
    return {"review-list",    "review-empty",   "review-refused",   "review-deleted",      "review-list-long",
            "review",         "review-good",    "review-recovered", "review-damaged",      "review-long-names",
            "review-steps",   "review-signals", "review-about",     "review-marks-zoomed", "review-notes",
            "review-writing", "review-ruling",  "review-compare",   "review-no-other"};
}

std::shared_ptr<const GroundScene> StubShelf::ground(const std::string& aircraft) {
    Problems problems;
    const std::optional<AircraftFolder> folder = loadAircraftFolder(ASSETS "/../procedures/" + aircraft, problems);
    const Result<GroundScene> scene =
        folder ? PracticeAircraft::sceneOf(*folder->aircraft) : Result<GroundScene>(failure("no-aircraft", aircraft));
    if (!scene)
        qFatal("%s", describe(scene.error()).c_str());
    return std::make_shared<const GroundScene>(*scene);
}

Store& StubShelf::store() {
    if (!m_store)
        m_store.emplace(Store::open(file()));
    if (!*m_store)
        qFatal("%s", describe(m_store->error()).c_str());
    return **m_store;
}

std::vector<int> StubShelf::keysFor(const QString& state) {
    using namespace Qt;
    static const std::map<QString, std::vector<int>> keys = {
        {"review-steps", {Key_F3, Key_Down, Key_Down}},
        {"review-signals", {Key_F6}},
        {"review-about", {Key_F8}},
        {"review-notes", {Key_F4}},
        {"review-writing", {Key_F4, Key_N}},
        {"review-ruling", {Key_U}},
        {"review-compare", {Key_F5}},
        {"review-no-other", {Key_F5}},
        {"review-marks-zoomed", {Key_Plus, Key_Plus, Key_Plus, Key_Plus, Key_A, Key_Period, Key_Period, Key_B, Key_K}}};
    const auto found = keys.find(state);
    return found != keys.end() ? found->second : std::vector<int>();
}

void StubShelf::post(Work work, std::function<void()> then) {
    Result<Store> refused = failure("store-locked", "another program holds it; close that, then try again", {file()});
    if (isRefusing)
        work(refused);
    else {
        (void)store();
        work(*m_store);
    }
    then();
}

std::int64_t StubShelf::add(const std::string& name, const std::function<void(StoredRun&)>& change) {
    const std::string path = ASSETS "/runs/" + name + ".flowrun";
    const Result<std::string> bytes = readFile(path, kLargestArchive);
    Result<ArchivedRun> archived = bytes ? readArchive(*bytes, path) : tl::unexpected(bytes.error());
    if (!archived)
        qFatal("%s", describe(archived.error()).c_str());
    if (change) {
        change(archived->run);
        archived->hash += "-changed-" + std::to_string(++m_changed); // it is not the run of that archive any more
    }
    const Result<std::int64_t> id = store().add(*archived);
    if (!id)
        qFatal("%s", describe(id.error()).c_str());
    return *id;
}

std::int64_t StubShelf::addCutOff(const std::string& name) {
    const std::int64_t whole = add(name, [](StoredRun&) {});
    const Result<StoredRun> run = store().load(whole);
    const std::unique_ptr<Recorder> recorder = store().recorder();
    bool isWritten = recorder->begin(run->header).has_value();
    for (const RunCommand& command : run->commands)
        if (command.time < run->summary.length / 2)
            isWritten &= recorder->command(command).has_value();
    std::vector<Sample> samples = run->samples;
    std::erase_if(samples, [&](const Sample& sample) {
        return sample.time > run->summary.length / 2;
    });
    isWritten &= recorder->samples(samples).has_value();
    isWritten &= store().remove(whole).has_value();
    if (!isWritten)
        qFatal("a run could not be cut off");
    return recorder->runId();
}

void StubShelf::addNotes(std::int64_t run) {
    const auto write = [&](NoteKind kind, const Anchor& anchor, const char* choice, const char* text) {
        Note note;
        note.kind = kind;
        note.anchor = anchor;
        note.choice = choice;
        note.text = text;
        note.phase = kind == NoteKind::Mark ? "take_off" : "";
        if (const Result<std::int64_t> id = store().writeNote(run, note); !id)
            qFatal("%s", describe(id.error()).c_str());
    };
    write(NoteKind::Objective, {}, "", "Both thrust levers together, and the gear on the call.");
    write(NoteKind::Account, {}, "", "I was looking outside and lost the order after the speed call.");
    write(NoteKind::Note, {{}, {}, 20s}, "", "Eyes inside for five seconds here.");
    write(NoteKind::Mark, {}, "3", "");
    write(NoteKind::Practice, {}, "", "The same take-off twice, at half the pace.");
}

std::int64_t StubShelf::fill(const QString& state) {
    isRefusing = state == "review-refused";
    if (isRefusing || state == "review-empty")
        return 0;
    if (state == "review-no-other")
        return add("taxi_out_good");
    if (state == "review-recovered")
        return addCutOff("take_off_faulty");
    if (state.contains("long")) {
        add("taxi_out_good", lengthen);
        const std::int64_t shown = add("take_off_faulty", lengthen);
        return state == "review-list-long" ? 0 : shown;
    }
    const std::int64_t good = add("take_off_good", withPilot);
    bool isDone = store().setReference(good).has_value();
    if (state == "review-good")
        return good;
    const std::int64_t faulty = add("take_off_faulty", withPilot);
    if (state == "review-list" || state == "review-deleted")
        fillList(state == "review-deleted");
    if (state == "review-notes" || state == "review-ruling")
        addNotes(faulty);
    if (state == "review-damaged") {
        m_store.reset();
        Result<Connection> connection = Connection::open(file(), OpenMode::ReadWrite, 1s);
        isDone &=
            connection && connection->execute("UPDATE chunk SET samples = x'00' WHERE run = " + std::to_string(faulty) +
                                              " AND window BETWEEN 3 AND 6");
    }
    if (!isDone)
        qFatal("the runs of a state could not be made");
    return state == "review-list" || state == "review-deleted" ? 0 : faulty;
}

void StubShelf::fillList(bool isTaxiDeleted) {
    const std::int64_t taxi = add("taxi_out_good");
    const std::int64_t landing = add("landing_roll_good");
    addCutOff("landing_roll_good");
    bool isDone = store().tag(taxi, "check ride").has_value() && store().tag(landing, "second try").has_value();
    if (isTaxiDeleted)
        isDone &= store().remove(taxi).has_value();
    if (!isDone)
        qFatal("the runs of a list could not be marked");
}

} // namespace flowhand::test
