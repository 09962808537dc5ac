#include "store/store.h"

#include <pwd.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <system_error>
#include <utility>

#include "store/database.h"
#include "store/runreader.h"
#include "store/storerecorder.h"

namespace flowhand {

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

Result<std::vector<RunSummary>> Store::runs() {
    return RunReader(m_database->connection).summaries();
}

Result<StoredRun> Store::load(std::int64_t id) {
    return RunReader(m_database->connection).load(id);
}

Result<std::vector<Value>> Store::valuesAt(std::int64_t id, Time time) {
    return RunReader(m_database->connection).valuesAt(id, time);
}

std::string defaultStoreFile() {
    const char* data = std::getenv("XDG_DATA_HOME");
    // The XDG base directory specification: a relative path is to be ignored.
    if (data != nullptr && data[0] == '/')
        return std::string(data) + "/flowhand/runs.sqlite";
    const char* home = std::getenv("HOME");
    if (home == nullptr || home[0] != '/') {
        const passwd* user = getpwuid(getuid());
        home = user != nullptr ? user->pw_dir : "/";
    }
    return std::string(home) + "/.local/share/flowhand/runs.sqlite";
}

} // namespace flowhand
