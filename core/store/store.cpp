#include "store/store.h"

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <system_error>
#include <utility>

#include "store/database.h"
#include "store/datahome.h"
#include "store/housekeeping.h"
#include "store/notebook.h"
#include "store/runreader.h"
#include "store/runwriter.h"
#include "store/storerecorder.h"

namespace flowhand {

namespace {

std::int64_t unixMillis() {
    using namespace std::chrono;
    return duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count();
}

} // namespace

struct Store::Database {
    Connection connection;
    StoreOptions options;
};

Store::Store(std::unique_ptr<Database> database) : m_database(std::move(database)) {}
Store::~Store() = default;
Store::Store(Store&&) noexcept = default;

Result<Store> Store::open(const std::string& file, const StoreOptions& options) {
    std::error_code ignored;
    if ((options.mustExist || options.isReadOnly) && !std::filesystem::exists(file, ignored))
        return failure("store-missing",
                       "there are no runs yet; 'flowhand practise FLOW' flies one, and --db names another file",
                       {file, 0, 0});
    Result<Connection> connection = openDatabase(file, options.isReadOnly, options.patience);
    if (!connection)
        return tl::unexpected(connection.error());
    return Store(std::make_unique<Database>(Database{std::move(*connection), options}));
}

std::unique_ptr<Recorder> Store::recorder() {
    const std::string& file = m_database->connection.file();
    if (m_database->connection.isReadOnly())
        return std::make_unique<StoreRecorder>(
            failure("store-read-only",
                    "the run cannot be recorded, because the file can only be read; allow writing to it and its "
                    "folder, or choose another file with --db",
                    {file, 0, 0}));
    return std::make_unique<StoreRecorder>(openDatabase(file, false, m_database->options.patience));
}

Result<std::vector<RunSummary>> Store::runs(const RunQuery& query) {
    return RunReader(m_database->connection).summaries(query);
}

Result<StoredRun> Store::load(std::int64_t id, SampleForm form) {
    return RunReader(m_database->connection).load(id, form);
}

Result<std::vector<Value>> Store::valuesAt(std::int64_t id, Time time) {
    return RunReader(m_database->connection).valuesAt(id, time);
}

Status Store::wantWritable() const {
    const Connection& connection = m_database->connection;
    if (!connection.isReadOnly())
        return {};
    return failure("store-read-only",
                   "nothing can be changed here, because the file can only be read; allow writing to it and its folder",
                   {connection.file(), 0, 0});
}

Result<std::int64_t> Store::writeNote(std::int64_t run, const Note& note) {
    if (const Status writable = wantWritable(); !writable)
        return tl::unexpected(writable.error());
    const Result<Flow> flow = RunReader(m_database->connection).flowOf(run);
    if (!flow)
        return tl::unexpected(flow.error());
    Note written = note;
    written.writtenUnixMillis = unixMillis();
    return Notebook(m_database->connection).write(run, written, *flow);
}

template <class Change>
Status Store::change(Change change) {
    if (const Status writable = wantWritable(); !writable)
        return writable;
    return change(Housekeeping(m_database->connection));
}

Status Store::removeNote(std::int64_t note) {
    const Status writable = wantWritable();
    return writable ? Notebook(m_database->connection).remove(note) : writable;
}

Status Store::tag(std::int64_t run, const std::string& name) {
    return change([&](Housekeeping keeping) {
        return keeping.tag(run, name);
    });
}

Status Store::untag(std::int64_t run, const std::string& name) {
    return change([&](Housekeeping keeping) {
        return keeping.untag(run, name);
    });
}

Status Store::setReference(std::int64_t run) {
    return change([&](Housekeeping keeping) {
        return keeping.setReference(run);
    });
}

Status Store::clearReference(std::int64_t run) {
    return change([&](Housekeeping keeping) {
        return keeping.clearReference(run);
    });
}

Result<std::int64_t> Store::referenceFor(std::int64_t run) {
    return Housekeeping(m_database->connection).referenceFor(run);
}

Status Store::remove(std::int64_t run) {
    return change([&](Housekeeping keeping) {
        return keeping.remove(run, unixMillis());
    });
}

Status Store::restore(std::int64_t run) {
    return change([&](Housekeeping keeping) {
        return keeping.restore(run);
    });
}

Result<Trimmed> Store::trim(std::int64_t mostBytes) {
    if (const Status writable = wantWritable(); !writable)
        return tl::unexpected(writable.error());
    return Housekeeping(m_database->connection).trim(mostBytes, unixMillis());
}

Result<std::vector<std::string>> Store::check() {
    Result<std::vector<std::string>> problems = Housekeeping(m_database->connection).check();
    Result<std::vector<RunSummary>> listed = problems ? runs() : tl::unexpected(problems.error());
    const Result<std::vector<RunSummary>> deleted = listed ? runs({{}, {}, true}) : listed;
    if (!deleted)
        return tl::unexpected(deleted.error());
    std::copy_if(deleted->begin(), deleted->end(), std::back_inserter(*listed), [](const RunSummary& run) {
        return !run.isDamaged; // listed already
    });
    for (const RunSummary& summary : *listed) {
        const Result<StoredRun> run = load(summary.id);
        const std::string name = "run " + std::to_string(summary.id) + ": ";
        if (!run)
            problems->push_back(name + run.error().message);
        else
            for (const std::string& damage : run->damage)
                problems->push_back(name + damage);
    }
    return problems;
}

Status Store::backup(const std::string& file) {
    return Housekeeping(m_database->connection).backup(file);
}

Result<std::int64_t> Store::add(const ArchivedRun& run) {
    if (const Status writable = wantWritable(); !writable)
        return tl::unexpected(writable.error());
    Result<Connection> connection = openDatabase(m_database->connection.file(), false, m_database->options.patience);
    if (!connection)
        return tl::unexpected(connection.error());
    return RunWriter(std::move(*connection)).add(run);
}

std::string defaultStoreFile() {
    return dataHome() + "/runs.sqlite";
}

} // namespace flowhand
