#include "store/runreader.h"

#include <algorithm>

#include "base/sha256.h"
#include "store/notebook.h"
#include "store/runjson.h"
#include "store/samplereader.h"
#include "store/window.h"

namespace flowhand {

namespace {

constexpr char kSummary[] =
    "SELECT run.id, started_ms, aircraft_folder, flow_title, rig_title, pilot, simulated, result.run IS NOT NULL, "
    "coalesce(result.length_us, run.length_us), scored, milli_points, passed, flow_id, deleted_ms, "
    "(SELECT group_concat(name, ',') FROM tag WHERE tag.run = run.id), "
    "EXISTS (SELECT 1 FROM reference WHERE reference.run = run.id), "
    "(SELECT count(*) FROM note WHERE note.run = run.id) FROM run LEFT JOIN result ON result.run = run.id";

std::vector<std::string> tagsOf(const std::string& list) {
    std::vector<std::string> tags;
    for (std::size_t at = 0; at < list.size();) {
        const std::size_t end = std::min(list.find(',', at), list.size());
        tags.push_back(list.substr(at, end - at));
        at = end + 1;
    }
    return tags;
}

RunSummary summaryOf(const Statement& row) {
    RunSummary summary;
    summary.id = row.integer(0);
    summary.startedUnixMillis = row.integer(1);
    summary.aircraftFolder = row.text(2);
    summary.flowTitle = row.text(3);
    summary.rigTitle = row.text(4);
    summary.pilot = row.text(5);
    summary.isSimulated = row.integer(6) != 0;
    summary.isFinished = row.integer(7) != 0;
    summary.length = std::chrono::microseconds(row.integer(8));
    summary.isScored = row.integer(9) != 0;
    summary.milliPoints = row.integer(10);
    summary.isPassed = row.integer(11) != 0;
    summary.flowId = row.text(12);
    summary.isDeleted = row.integer(13) != 0;
    summary.tags = tagsOf(row.text(14));
    summary.isReference = row.integer(15) != 0;
    summary.notes = row.integer(16);
    return summary;
}

std::string lowerCase(std::string text) {
    for (char& letter : text)
        if (letter >= 'A' && letter <= 'Z')
            letter = static_cast<char>(letter - 'A' + 'a');
    return text;
}

bool says(const RunSummary& run, const std::string& lowerText) {
    std::vector<std::string> words = run.tags;
    words.insert(words.end(), {run.flowTitle, run.flowId, run.aircraftFolder, run.rigTitle, run.pilot});
    return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
        return lowerCase(word).find(lowerText) != std::string::npos;
    });
}

} // namespace

tl::unexpected<Error> noSuchRun(std::int64_t id, const std::string& file) {
    return failure("no-such-run", "there is no run " + std::to_string(id) + "; 'flowhand runs' lists those there are",
                   {file, 0, 0});
}

Result<std::vector<RunSummary>> RunReader::summaries(const RunQuery& query) {
    Result<std::vector<RunSummary>> all = allSummaries();
    if (!all)
        return all;
    const std::string text = lowerCase(query.text);
    const std::set<std::int64_t> noted = text.empty() ? std::set<std::int64_t>() : withNotesSaying(query.text);
    std::erase_if(*all, [&](const RunSummary& run) {
        if (run.isDamaged)
            return false;
        const bool isTagged =
            query.tag.empty() || std::find(run.tags.begin(), run.tags.end(), query.tag) != run.tags.end();
        const bool hasText = text.empty() || noted.count(run.id) > 0 || says(run, text);
        return run.isDeleted != query.isDeleted || !isTagged || !hasText;
    });
    return all;
}

/// SQL's LIKE takes no heed of the case of ASCII letters; its wild cards are taken as they stand.
std::set<std::int64_t> RunReader::withNotesSaying(const std::string& text) {
    std::set<std::int64_t> runs;
    std::string pattern = "%";
    for (const char letter : text) {
        if (letter == '%' || letter == '_' || letter == '\\')
            pattern += '\\';
        pattern += letter;
    }
    Result<Statement> rows = m_connection.prepare("SELECT DISTINCT run FROM note WHERE text LIKE ? ESCAPE '\\'");
    if (!rows)
        return runs;
    rows->bindText(1, pattern + "%");
    while (rows->step().value_or(false))
        runs.insert(rows->integer(0));
    return runs;
}

Result<std::vector<RunSummary>> RunReader::allSummaries() {
    Result<Statement> rows = m_connection.prepare(std::string(kSummary) + " ORDER BY run.id DESC");
    if (!rows)
        return tl::unexpected(rows.error());
    std::vector<RunSummary> all;
    for (;;) {
        const Result<bool> row = rows->step();
        if (!row)
            return row.error().code == "store-damaged" ? summariesOneByOne() : tl::unexpected(row.error());
        if (!*row)
            return all;
        all.push_back(summaryOf(*rows));
    }
}

Result<std::vector<RunSummary>> RunReader::summariesOneByOne() {
    const Result<std::int64_t> last = m_connection.number("SELECT seq FROM sqlite_sequence WHERE name = 'run'");
    Result<Statement> rows = m_connection.prepare(std::string(kSummary) + " WHERE run.id = ?");
    if (!last || !rows)
        return tl::unexpected(last ? rows.error() : last.error());
    std::vector<RunSummary> all;
    for (std::int64_t id = *last; id > 0; --id) {
        rows->reset();
        const Result<bool> row = rows->bind(1, id).step();
        if (row && *row)
            all.push_back(summaryOf(*rows));
        if (!row) {
            RunSummary damaged;
            damaged.id = id;
            damaged.isDamaged = true;
            all.push_back(damaged);
        }
    }
    return all;
}

Result<StoredRun> RunReader::loadOutcome(std::int64_t id) {
    StoredRun run;
    run.summary.id = id;
    if (const Status header = loadHeader(run); !header) {
        if (header.error().code != "store-damaged")
            return tl::unexpected(header.error());
        run.summary.isDamaged = true;
        run.damage.push_back("the run's header cannot be read");
    }
    loadResult(run);
    return run;
}

Result<StoredRun> RunReader::load(std::int64_t id, SampleForm form) {
    Result<StoredRun> run = loadOutcome(id);
    if (!run)
        return run;
    loadSamples(*run, form);
    loadCommands(*run);
    loadEvents(*run);
    loadNotes(*run);
    return run;
}

Status RunReader::loadHeader(StoredRun& run) {
    Result<Statement> summary = m_connection.prepare(std::string(kSummary) + " WHERE run.id = ?");
    if (!summary)
        return tl::unexpected(summary.error());
    const Result<bool> found = summary->bind(1, run.summary.id).step();
    if (!found)
        return tl::unexpected(found.error());
    if (!*found)
        return noSuchRun(run.summary.id, m_connection.file());
    run.summary = summaryOf(*summary);
    Result<Statement> row =
        m_connection.prepare("SELECT program_version, flow_id, flow_file, motion_source, aircraft_hash, flow_hash, "
                             "rig_hash, setup FROM run WHERE id = ?");
    if (!row)
        return tl::unexpected(row.error());
    const Result<bool> there = row->bind(1, run.summary.id).step();
    if (!there)
        return tl::unexpected(there.error());
    RunHeader& header = run.header;
    header.startedUnixMillis = run.summary.startedUnixMillis;
    header.pilot = run.summary.pilot;
    header.aircraftFolder = run.summary.aircraftFolder;
    header.flowTitle = run.summary.flowTitle;
    header.rigTitle = run.summary.rigTitle;
    header.programVersion = row->text(0);
    header.flowId = row->text(1);
    header.flowFile = row->text(2);
    header.motionSource = row->text(3);
    header.aircraftSource = source(row->text(4), "aircraft file", run);
    header.flowSource = source(row->text(5), "flow", run);
    header.rigSource = source(row->text(6), "rig", run);
    const std::optional<Bytes> setup = unpack(row->text(7));
    if (!setup || !readSetup(*setup, header))
        run.damage.push_back("the names of the controls and the session's setup are damaged");
    return {};
}

Result<Flow> RunReader::flowOf(std::int64_t id) {
    StoredRun run;
    run.summary.id = id;
    if (const Status header = loadHeader(run); !header)
        return tl::unexpected(header.error());
    Problems problems;
    std::optional<Aircraft> aircraft =
        parseAircraft(run.header.aircraftSource, run.header.aircraftFolder + "/aircraft.toml", problems);
    std::optional<Flow> flow =
        aircraft ? parseFlow(run.header.flowSource, run.header.flowFile, *aircraft, problems) : std::nullopt;
    if (!flow)
        return failure("unreadable-run",
                       "the flow of run " + std::to_string(id) + " cannot be read: " +
                           (run.damage.empty() ? describe(problems.firstError()) : run.damage.front()),
                       {m_connection.file(), 0, 0});
    return std::move(*flow);
}

std::string RunReader::source(const std::string& hash, const char* what, StoredRun& run) {
    std::optional<Bytes> text;
    if (Result<Statement> row = m_connection.prepare("SELECT text FROM source WHERE hash = ?")) {
        const Result<bool> found = row->bindText(1, hash).step();
        if (found && *found)
            text = unpack(row->text(0));
    }
    if (text && sha256(*text) == hash)
        return *text;
    run.damage.push_back("the " + std::string(what) + " as it was flown is damaged");
    return {};
}

void RunReader::loadSamples(StoredRun& run, SampleForm form) {
    // The result's length may be damaged; the highest window tells how far the samples go.
    Result<Statement> extent = m_connection.prepare("SELECT min(window), max(window) FROM chunk WHERE run = ?");
    const Result<bool> row = extent ? extent->bind(1, run.summary.id).step() : tl::unexpected(extent.error());
    WindowRange range{run.summary.id, 0, windowOf(run.summary.length)};
    if (row && *row) {
        range.first = extent->integer(0);
        range.last = extent->integer(1);
    }
    SampleDamage damage;
    if (form == SampleForm::InOrder)
        run.samples = readSamples(m_connection, range, damage);
    else
        run.bySignal = readBySignal(m_connection, range, damage);
    run.damage.insert(run.damage.end(), damage.words.begin(), damage.words.end());
    run.missing = std::move(damage.missing);
    nameMissing(run);
}

/// A window gets its keyframe together with its first chunk; one without the other has lost rows.
void RunReader::nameMissing(StoredRun& run) {
    Result<Statement> rows =
        m_connection.prepare("SELECT window FROM keyframe WHERE run = ?1 AND window NOT IN (SELECT window FROM chunk "
                             "WHERE run = ?1) ORDER BY window");
    if (!rows)
        return;
    rows->bind(1, run.summary.id);
    while (rows->step().value_or(false)) {
        const std::int64_t window = rows->integer(0);
        run.damage.push_back("the samples from " + clockText(startOf(window)) + " to " +
                             clockText(startOf(window + 1)) + " are missing");
        run.missing.push_back({startOf(window), startOf(window + 1)});
    }
}

void RunReader::loadCommands(StoredRun& run) {
    Result<Statement> rows =
        m_connection.prepare("SELECT time_us, kind, text FROM command WHERE run = ? ORDER BY number");
    Result<bool> row = rows ? rows->bind(1, run.summary.id).step() : tl::unexpected(rows.error());
    bool isWhole = true;
    for (; row && *row; row = rows->step()) {
        const std::optional<CommandKind> kind = findCommandKind(rows->text(1));
        isWhole &= kind.has_value();
        if (kind)
            run.commands.push_back({std::chrono::microseconds(rows->integer(0)), *kind, rows->text(2)});
    }
    if (!row || !isWhole)
        run.damage.push_back("some of the pilot's commands (start, hold, stop ...) cannot be read");
}

void RunReader::loadEvents(StoredRun& run) {
    Result<Statement> rows = m_connection.prepare("SELECT line FROM event WHERE run = ? ORDER BY number");
    Result<bool> row = rows ? rows->bind(1, run.summary.id).step() : tl::unexpected(rows.error());
    Sha256 hash;
    for (; row && *row; row = rows->step()) {
        run.eventLines.push_back(rows->text(0));
        hash.add(run.eventLines.back() + "\n");
    }
    bool isWhole = row.has_value();
    Result<Statement> stored = m_connection.prepare("SELECT events_hash FROM result WHERE run = ?");
    const Result<bool> there = stored ? stored->bind(1, run.summary.id).step() : tl::unexpected(stored.error());
    if (there && *there)
        isWhole &= hash.hex() == stored->text(0);
    if (!isWhole)
        run.damage.push_back("the list of events is damaged; judging the run again makes it anew");
}

void RunReader::loadNotes(StoredRun& run) {
    Result<std::vector<Note>> notes = Notebook(m_connection).notesOf(run.summary.id);
    if (notes)
        run.notes = std::move(*notes);
    else
        run.damage.push_back("the notes cannot be read");
}

void RunReader::loadResult(StoredRun& run) {
    Result<Statement> rows = m_connection.prepare("SELECT detail, version FROM result WHERE run = ?");
    const Result<bool> row = rows ? rows->bind(1, run.summary.id).step() : tl::unexpected(rows.error());
    if (row && !*row)
        return;
    const std::optional<Bytes> detail = row ? unpack(rows->text(0)) : std::nullopt;
    if (!detail || !readResult(*detail, run.score, run.results, run.losses))
        run.damage.push_back("the score is damaged; judging the run again makes it anew");
    else
        run.judgedBy = rows->text(1);
}

Result<std::vector<Value>> RunReader::valuesAt(std::int64_t id, Time time) {
    Result<Statement> rows = m_connection.prepare(
        "SELECT window, state FROM keyframe WHERE run = ? AND window <= ? ORDER BY window DESC LIMIT 1");
    if (!rows)
        return tl::unexpected(rows.error());
    const Result<bool> row = rows->bind(1, id).bind(2, windowOf(time)).step();
    if (!row)
        return tl::unexpected(row.error());
    if (!*row)
        return std::vector<Value>();
    const std::optional<State> state = decodeState(rows->text(1));
    if (!state)
        return failure("store-damaged", "the state of the run at " + clockText(time) + " is damaged",
                       {m_connection.file(), 0, 0});
    std::vector<Value> values;
    for (const std::optional<Value>& value : *state)
        values.push_back(value.value_or(Value::unknown()));
    SampleDamage damage;
    for (const Sample& sample : readSamples(m_connection, {id, rows->integer(0), windowOf(time)}, damage)) {
        if (sample.time > time)
            break;
        if (values.size() <= indexOf(sample.signal))
            values.resize(indexOf(sample.signal) + 1);
        values[indexOf(sample.signal)] = sample.value;
    }
    if (!damage.words.empty())
        return failure("store-damaged", damage.words.front(), {m_connection.file(), 0, 0});
    return values;
}

} // namespace flowhand
