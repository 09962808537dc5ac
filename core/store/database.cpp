#include "store/database.h"

#include <filesystem>
#include <system_error>

#include "store/schema.h"

namespace flowhand {

namespace {

enum class FileKind { Missing, New, Ours };

/// What the file is, by a look that leaves it as it was.
Result<FileKind> look(const std::string& file, OpenMode mode, Duration patience) {
    std::error_code ignored;
    if (!std::filesystem::exists(file, ignored))
        return FileKind::Missing;
    Result<Connection> connection = Connection::open(file, mode, patience);
    if (!connection)
        return tl::unexpected(connection.error());
    connection->leaveUntouched();
    const Result<std::int64_t> tables = connection->number("SELECT count(*) FROM sqlite_schema");
    const Result<std::int64_t> application = tables ? connection->number("PRAGMA application_id") : tables;
    const Result<std::int64_t> version = application ? connection->number("PRAGMA user_version") : application;
    if (!version)
        return tl::unexpected(version.error());
    if (*tables == 0 && *application == 0 && *version == 0)
        return FileKind::New;
    if (*application != kApplicationId)
        return failure("store-unreadable",
                       "this is another program's file, not one of runs; choose another file with --db", {file, 0, 0});
    const auto known = static_cast<std::int64_t>(migrations().size());
    if (*version > known)
        return failure("store-newer",
                       "a newer program has written this file (its schema is " + std::to_string(*version) +
                           ", this program knows up to " + std::to_string(known) +
                           "); use that program, or choose another file with --db",
                       {file, 0, 0});
    return FileKind::Ours;
}

bool isUnwritable(const Error& error) {
    return error.code == "store-read-only" || error.code == "store-unreadable";
}

/// What is of an older schema and cannot be brought up to date where it is, is so in memory.
Result<Connection> upToDate(Result<Connection> connection) {
    const Result<std::int64_t> version =
        connection ? connection->number("PRAGMA user_version") : tl::unexpected(connection.error());
    if (!version)
        return tl::unexpected(version.error());
    if (*version == static_cast<std::int64_t>(migrations().size()))
        return connection;
    Result<Connection> copy = connection->copyInMemory();
    if (copy)
        if (const Status done = migrate(*copy, migrations()); !done)
            return tl::unexpected(done.error());
    return copy;
}

/// Reads a file that cannot be written, or shall not be. Where not even the log's index can be made beside it, the file
/// is taken as it stands.
Result<Connection> openToRead(const std::string& file, Duration patience) {
    for (const OpenMode mode : {OpenMode::ReadOnly, OpenMode::Immutable}) {
        const Result<FileKind> kind = look(file, mode, patience);
        if (!kind && mode == OpenMode::ReadOnly && isUnwritable(kind.error()))
            continue;
        if (!kind)
            return tl::unexpected(kind.error());
        if (*kind != FileKind::Ours)
            return failure("store-unreadable", "there are no runs in this file; choose another with --db",
                           {file, 0, 0});
        return upToDate(Connection::open(file, mode, patience));
    }
    return failure("store-unreadable", "the runs cannot be read; allow reading the file and its folder", {file, 0, 0});
}

Status makeFolders(const std::string& file) {
    const std::filesystem::path folder = std::filesystem::path(file).parent_path();
    std::error_code problem;
    if (!folder.empty())
        std::filesystem::create_directories(folder, problem);
    if (problem == std::errc::permission_denied || problem == std::errc::read_only_file_system)
        return failure("store-read-only",
                       "the folder of the runs cannot be made here; allow writing, or choose another file with --db",
                       {file, 0, 0});
    if (problem)
        return failure("store-unreadable",
                       "the folder of the runs cannot be made (" + problem.message() +
                           "); choose another file with --db",
                       {file, 0, 0});
    return {};
}

Result<Connection> openToWrite(const std::string& file, OpenMode mode, Duration patience) {
    Result<Connection> connection = Connection::open(file, mode, patience);
    if (!connection)
        return connection;
    Status ready =
        connection->execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON");
    if (ready)
        ready = migrate(*connection, migrations());
    if (!ready)
        return tl::unexpected(ready.error());
    return connection;
}

} // namespace

Result<Connection> openDatabase(const std::string& file, bool isReadOnly, Duration patience) {
    if (isReadOnly)
        return openToRead(file, patience);
    const Result<FileKind> kind = look(file, OpenMode::ReadWrite, patience);
    if (!kind) {
        if (isUnwritable(kind.error()))
            if (Result<Connection> readable = openToRead(file, patience))
                return readable;
        return tl::unexpected(kind.error());
    }
    if (*kind == FileKind::Missing)
        if (const Status made = makeFolders(file); !made)
            return tl::unexpected(made.error());
    Result<Connection> connection =
        openToWrite(file, *kind == FileKind::Missing ? OpenMode::Create : OpenMode::ReadWrite, patience);
    if (!connection && isUnwritable(connection.error()) && *kind == FileKind::Ours)
        return openToRead(file, patience);
    return connection;
}

} // namespace flowhand
