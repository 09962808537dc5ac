#include "presenter/currentlibrary.h"

#include <utility>

#include <QPointer>

namespace flowhand {

namespace fs = std::filesystem;

namespace {

/// A program that saves a file touches it several times within this, and the check of a text goes first.
constexpr int kSettleMillis = 30;

using Stamps = std::map<std::string, fs::file_time_type>;

Stamps stampsOf(const LibraryFolders& folders) {
    Stamps stamps;
    const auto add = [&](const fs::path& path) {
        std::error_code failed;
        const fs::file_time_type time = fs::last_write_time(path, failed);
        if (!failed)
            stamps[path.string()] = time;
    };
    for (const std::string& folder : {folders.shipped, folders.own}) {
        std::error_code failed;
        if (!fs::is_directory(folder, failed))
            continue;
        add(folder);
        for (fs::recursive_directory_iterator at(folder, failed), end; !failed && at != end; at.increment(failed))
            if (std::error_code ignored; at->is_directory(ignored) || at->path().extension() == ".toml")
                add(at->path());
    }
    return stamps;
}

ReadLibrary readIfChanged(const LibraryFolders& folders, const std::optional<Stamps>& before) {
    ReadLibrary read{stampsOf(folders), nullptr};
    if (!before || read.stamps != *before)
        read.library = loadLibraries(folders);
    return read;
}

} // namespace

ReadLibrary readLibrary(const LibraryFolders& folders) {
    return readIfChanged(folders, std::nullopt);
}

LibraryPtr loadLibraries(const LibraryFolders& folders) {
    auto loaded = std::make_shared<LoadedLibrary>();
    loaded->aircraft = loadLibrary(folders.shipped, loaded->problems);
    std::error_code ignored;
    if (fs::is_directory(folders.own, ignored))
        for (AircraftFolder& folder : loadLibrary(folders.own, loaded->problems))
            loaded->aircraft.push_back(std::move(folder));
    return loaded;
}

CurrentLibrary::CurrentLibrary(LibraryDesk& desk, LibraryFolders folders, ReadLibrary first, QObject* parent)
    : QObject(parent), m_desk(desk), m_folders(std::move(folders)), m_now(std::move(first)) {
    m_settling.setSingleShot(true);
    m_settling.setInterval(kSettleMillis);
    connect(&m_settling, &QTimer::timeout, this, [this] {
        look(false);
    });
    const auto settle = [this] {
        m_settling.start();
    };
    connect(&m_watcher, &QFileSystemWatcher::fileChanged, this, settle);
    connect(&m_watcher, &QFileSystemWatcher::directoryChanged, this, settle);
    if (m_now.library)
        watch();
}

const LibraryPtr& CurrentLibrary::now() {
    if (!m_now.library) {
        m_now = readLibrary(m_folders);
        watch();
    }
    return m_now.library;
}

void CurrentLibrary::useOwn(const std::string& folder) {
    m_folders.own = folder;
    reload();
}

/// One question at a time: what changes while it is answered is looked at after it.
void CurrentLibrary::look(bool isWhateverItIs) {
    if (m_isReading) {
        m_isStale = true;
        m_isWantedWhateverItIs |= isWhateverItIs;
        return;
    }
    m_isReading = true;
    m_desk.ask<ReadLibrary>(
        [folders = m_folders, before = isWhateverItIs ? std::nullopt : std::optional(m_now.stamps)](TextCheck&) {
            return readIfChanged(folders, before);
        },
        [this, self = QPointer(this)](ReadLibrary read) {
            if (self)
                take(std::move(read));
        });
}

void CurrentLibrary::take(ReadLibrary read) {
    m_isReading = false;
    m_now.stamps = std::move(read.stamps);
    if (read.library) {
        m_now.library = std::move(read.library);
        watch();
        Q_EMIT changed();
    }
    if (std::exchange(m_isStale, false))
        look(std::exchange(m_isWantedWhateverItIs, false));
}

/// Folders too: files come and go, and many editors put a new file in the place of the old one. Where the person's own
/// folder is not there yet, the one that it will be made in.
void CurrentLibrary::watch() {
    QStringList paths;
    for (const auto& [path, time] : m_now.stamps)
        paths << QString::fromStdString(path);
    std::error_code failed;
    if (const fs::path own(m_folders.own);
        !fs::is_directory(own, failed) && fs::is_directory(own.parent_path(), failed))
        paths << QString::fromStdString(own.parent_path().string());
    QStringList gone;
    for (const QString& before : m_watcher.files() + m_watcher.directories())
        if (!paths.contains(before))
            gone << before;
    if (!gone.isEmpty())
        m_watcher.removePaths(gone);
    const QStringList known = m_watcher.files() + m_watcher.directories();
    paths.removeIf([&](const QString& path) {
        return known.contains(path);
    });
    if (paths.isEmpty())
        return;
    m_watcher.addPaths(paths);
    m_settling.start(); // they may have changed before they were watched
}

} // namespace flowhand
