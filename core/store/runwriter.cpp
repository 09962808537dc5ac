#include "store/runwriter.h"

#include "procedure/flow.h"
#include "store/housekeeping.h"
#include "store/notebook.h"
#include "store/runjson.h"

namespace flowhand {

bool isSimulated(const Sample& sample) {
    return sample.actor == Actor::Hand && (sample.origin == Origin::Script || sample.origin == Origin::Screen);
}

Result<std::int64_t> RunWriter::begin(const RunHeader& header) {
    if (const Status kept = keepNames(header); !kept)
        return tl::unexpected(kept.error());
    Result<Transaction> transaction = Transaction::begin(m_connection);
    if (!transaction)
        return tl::unexpected(transaction.error());
    Status done = addHeader(header, {});
    if (done)
        done = transaction->commit();
    if (!done)
        return tl::unexpected(done.error());
    return m_run;
}

Status RunWriter::addHeader(const RunHeader& header, const std::string& archiveHash) {
    for (const std::string& source : {header.aircraftSource, header.flowSource, header.rigSource})
        if (const Status added = addSource(source); !added)
            return added;
    Result<Statement> insert = m_connection.prepare(
        "INSERT INTO run (started_ms, pilot, program_version, aircraft_folder, flow_id, flow_title, flow_file, "
        "rig_title, motion_source, aircraft_hash, flow_hash, rig_hash, setup, archive_hash) VALUES "
        "(?,?,?,?,?,?,?,?,?,?,?,?,?,?)");
    if (!insert)
        return tl::unexpected(insert.error());
    insert->bind(1, header.startedUnixMillis);
    int parameter = 2;
    for (const std::string* text : {&header.pilot, &header.programVersion, &header.aircraftFolder, &header.flowId,
                                    &header.flowTitle, &header.flowFile, &header.rigTitle, &header.motionSource})
        insert->bindText(parameter++, *text);
    for (const std::string* source : {&header.aircraftSource, &header.flowSource, &header.rigSource})
        insert->bindText(parameter++, sha256(*source));
    insert->bindBytes(parameter, pack({setupJson(header)})).bindText(parameter + 1, archiveHash);
    if (const Status inserted = insert->run(); !inserted)
        return inserted;
    m_run = m_connection.lastId();
    m_version = header.programVersion;
    return {};
}

/// Whether the archive has been imported before.
Status RunWriter::wantNew(const std::string& archiveHash) {
    Result<Statement> row = m_connection.prepare("SELECT id FROM run WHERE archive_hash = ?");
    if (!row)
        return tl::unexpected(row.error());
    const Result<bool> found = row->bindText(1, archiveHash).step();
    if (!found)
        return tl::unexpected(found.error());
    if (*found)
        return failure("already-imported", "this archive is here already, as run " + std::to_string(row->integer(0)),
                       {m_connection.file(), 0, 0});
    return {};
}

Result<std::int64_t> RunWriter::add(const ArchivedRun& archived) {
    const StoredRun& run = archived.run;
    if (const Status kept = keepNames(run.header); !kept)
        return tl::unexpected(kept.error());
    Result<Transaction> transaction = Transaction::begin(m_connection);
    if (!transaction)
        return tl::unexpected(transaction.error());
    Status done = wantNew(archived.hash);
    if (done)
        done = addHeader(run.header, archived.hash);
    if (done)
        done = addSamples(run.samples);
    if (done)
        done = run.summary.isFinished ? closeWindow() : journal();
    if (done)
        done = addCommands(run.commands);
    m_length = std::max(m_length, run.summary.length);
    if (done)
        done = updateRun();
    for (std::size_t i = 0; done && i < run.eventLines.size(); ++i)
        done = addLine(run.eventLines[i]);
    m_version = run.judgedBy;
    if (done && run.summary.isFinished)
        done = addResult(run.summary.length, run.score, run.results, run.losses);
    if (done)
        done = addBeside(run);
    if (done)
        done = transaction->commit();
    if (!done)
        return tl::unexpected(done.error());
    return m_run;
}

/// What stands beside the run itself.
Status RunWriter::addBeside(const StoredRun& run) {
    Status done;
    Notebook notebook(m_connection);
    for (std::size_t i = 0; done && i < run.notes.size(); ++i)
        done = notebook.insert(m_run, run.notes[i]);
    Housekeeping housekeeping(m_connection);
    for (std::size_t i = 0; done && i < run.summary.tags.size(); ++i)
        done = housekeeping.tag(m_run, run.summary.tags[i]);
    return done;
}

Status RunWriter::keepNames(const RunHeader& header) {
    Problems problems;
    m_aircraft = parseAircraft(header.aircraftSource, header.aircraftFolder + "/aircraft.toml", problems);
    const std::optional<Flow> flow =
        m_aircraft ? parseFlow(header.flowSource, header.flowFile, *m_aircraft, problems) : std::nullopt;
    if (!flow)
        return failure("store-bad-header",
                       "the run cannot be recorded, because its files cannot be read back from the record: " +
                           (problems.all().empty() ? std::string("they are empty") : describe(problems.firstError())),
                       {});
    for (const Step& step : flow->steps)
        m_stepIds.push_back(step.id);
    return {};
}

Status RunWriter::addSource(const std::string& source) {
    Result<Statement> insert = m_connection.prepare("INSERT OR IGNORE INTO source (hash, text) VALUES (?, ?)");
    if (!insert)
        return tl::unexpected(insert.error());
    return insert->bindText(1, sha256(source)).bindBytes(2, pack({source})).run();
}

Status RunWriter::write(const RunBatch& batch) {
    if (batch.isEmpty())
        return {};
    Result<Transaction> transaction = Transaction::begin(m_connection);
    if (!transaction)
        return tl::unexpected(transaction.error());
    Status done = addSamples(batch.samples);
    if (done)
        done = journal();
    if (done)
        done = addCommands(batch.commands);
    if (done)
        done = addEvents(batch.events);
    if (done)
        done = updateRun();
    return done ? transaction->commit() : done;
}

Status RunWriter::addSamples(const std::vector<Sample>& samples) {
    for (const Sample& sample : samples) {
        const std::int64_t window = windowOf(sample.time);
        if (m_window && *m_window != window)
            if (const Status closed = closeWindow(); !closed)
                return closed;
        if (!m_window) {
            m_window = window;
            m_keyframe = encodeState(m_state);
        }
        take(sample);
    }
    return {};
}

void RunWriter::take(const Sample& sample) {
    m_place = sample.time == m_instant ? m_place + 1 : 0;
    m_instant = sample.time;
    m_length = std::max(m_length, sample.time);
    m_isSimulated |= isSimulated(sample);
    if (m_state.size() <= indexOf(sample.signal))
        m_state.resize(indexOf(sample.signal) + 1);
    m_state[indexOf(sample.signal)] = sample.value;
    m_streams[static_cast<std::size_t>(sample.origin)].samples.push_back({sample, m_place});
}

Status RunWriter::journal() {
    for (std::size_t i = 0; i < m_streams.size(); ++i) {
        Stream& stream = m_streams[i];
        if (stream.journalled == stream.samples.size())
            continue;
        const auto first = stream.samples.begin() + static_cast<std::ptrdiff_t>(stream.journalled);
        if (const Status added = addChunk(i, ++stream.parts, {first, stream.samples.end()}); !added)
            return added;
        stream.journalled = stream.samples.size();
    }
    return addKeyframe();
}

Status RunWriter::closeWindow() {
    if (!m_window)
        return {};
    if (const Status added = addKeyframe(); !added)
        return added;
    Result<Statement> remove =
        m_connection.prepare("DELETE FROM chunk WHERE run = ? AND window = ? AND stream = ? AND part > 0");
    if (!remove)
        return tl::unexpected(remove.error());
    remove->bind(1, m_run).bind(2, *m_window);
    for (std::size_t i = 0; i < m_streams.size(); ++i) {
        Stream& stream = m_streams[i];
        if (stream.samples.empty())
            continue;
        if (const Status added = addChunk(i, 0, stream.samples); !added)
            return added;
        if (const Status removed = remove->bind(3, static_cast<std::int64_t>(i)).run(); !removed)
            return removed;
        stream.samples.clear();
        stream.journalled = 0;
        stream.parts = 0;
    }
    m_window.reset();
    return {};
}

Status RunWriter::addKeyframe() {
    if (m_keyframe.empty())
        return {};
    Result<Statement> insert = m_connection.prepare("INSERT INTO keyframe (run, window, state) VALUES (?, ?, ?)");
    if (!insert)
        return tl::unexpected(insert.error());
    Status added = insert->bind(1, m_run).bind(2, *m_window).bindBytes(3, m_keyframe).run();
    m_keyframe.clear();
    return added;
}

Status RunWriter::addChunk(std::size_t stream, std::int64_t part, const std::vector<PlacedSample>& samples) {
    Result<Statement> insert =
        m_connection.prepare("INSERT INTO chunk (run, window, stream, part, samples) VALUES (?, ?, ?, ?, ?)");
    if (!insert)
        return tl::unexpected(insert.error());
    insert->bind(1, m_run).bind(2, *m_window).bind(3, static_cast<std::int64_t>(stream)).bind(4, part);
    return insert->bindBytes(5, encodeChunk(samples)).run();
}

Status RunWriter::addCommands(const std::vector<RunCommand>& commands) {
    Result<Statement> insert =
        m_connection.prepare("INSERT INTO command (run, number, time_us, kind, text) VALUES (?, ?, ?, ?, ?)");
    if (!insert)
        return tl::unexpected(insert.error());
    for (const RunCommand& command : commands) {
        insert->bind(1, m_run).bind(2, m_commands++).bind(3, micros(command.time));
        if (const Status added = insert->bindText(4, nameOf(command.kind)).bindText(5, command.text).run(); !added)
            return added;
        m_length = std::max(m_length, command.time);
    }
    return {};
}

Status RunWriter::addEvents(const std::vector<Event>& events) {
    for (const Event& event : events) {
        if (const Status added = addLine(toJson(event, m_aircraft->signals, m_stepIds)); !added)
            return added;
        m_length = std::max(m_length, event.time);
    }
    return {};
}

Status RunWriter::addLine(const std::string& line) {
    Result<Statement> insert = m_connection.prepare("INSERT INTO event (run, number, line) VALUES (?, ?, ?)");
    if (!insert)
        return tl::unexpected(insert.error());
    m_eventsHash.add(line + "\n");
    return insert->bind(1, m_run).bind(2, m_events++).bindText(3, line).run();
}

Status RunWriter::updateRun() {
    Result<Statement> update = m_connection.prepare("UPDATE run SET length_us = ?, simulated = ? WHERE id = ?");
    if (!update)
        return tl::unexpected(update.error());
    return update->bind(1, micros(m_length)).bind(2, m_isSimulated ? 1 : 0).bind(3, m_run).run();
}

Status RunWriter::finish(Time end, const Score& score, const std::vector<StepResult>& results,
                         const RunLosses& losses) {
    Result<Transaction> transaction = Transaction::begin(m_connection);
    if (!transaction)
        return tl::unexpected(transaction.error());
    if (const Status closed = closeWindow(); !closed)
        return closed;
    const Status done = addResult(end, score, results, losses);
    return done ? transaction->commit() : done;
}

Status RunWriter::addResult(Time end, const Score& score, const std::vector<StepResult>& results,
                            const RunLosses& losses) {
    Result<Statement> insert =
        m_connection.prepare("INSERT INTO result (run, length_us, version, scored, milli_points, passed, events_hash, "
                             "detail) VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
    if (!insert)
        return tl::unexpected(insert.error());
    insert->bind(1, m_run).bind(2, micros(end)).bindText(3, m_version);
    insert->bind(4, score.isScored ? 1 : 0).bind(5, score.milliPoints).bind(6, score.isPassed ? 1 : 0);
    return insert->bindText(7, m_eventsHash.hex()).bindBytes(8, pack({resultJson(score, results, losses)})).run();
}

} // namespace flowhand
