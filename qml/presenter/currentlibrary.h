#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <QFileSystemWatcher>
#include <QObject>
#include <QTimer>

#include "presenter/librarydesk.h"
#include "procedure/library.h"

namespace flowhand {

/// The folders that the files come from. The person's own need not be there.
struct LibraryFolders {
    std::string shipped;
    std::string own;
};

/// All that can be flown, of both.
struct LoadedLibrary {
    std::vector<AircraftFolder> aircraft; ///< the person's own last
    Problems problems;
};
/// Whoever still needs what another one has replaced keeps it by this.
using LibraryPtr = std::shared_ptr<const LoadedLibrary>;
[[nodiscard]] LibraryPtr loadLibraries(const LibraryFolders& folders);

/// A library, and when each of its files and folders was written before it was read.
struct ReadLibrary {
    std::map<std::string, std::filesystem::file_time_type> stamps;
    LibraryPtr library; ///< null: nothing has changed since it was read before
};
/// For any thread.
[[nodiscard]] ReadLibrary readLibrary(const LibraryFolders& folders);

/// The one place that knows what there is to fly now. Its files are watched: a change of any of them is read at the
/// desk and told at once, wherever it was made. GUI thread.
class CurrentLibrary : public QObject {
    Q_OBJECT

public:
    /// `desk` must outlive it. Without `first` the files are read at the first use.
    CurrentLibrary(LibraryDesk& desk, LibraryFolders folders, ReadLibrary first = {}, QObject* parent = nullptr);

    /// Never null.
    [[nodiscard]] const LibraryPtr& now();
    [[nodiscard]] const LibraryFolders& folders() const { return m_folders; }
    /// The person's own files are elsewhere now.
    void useOwn(const std::string& folder);
    /// Reads all of it anew, whether or not a file has changed.
    void reload() { look(true); }

Q_SIGNALS:
    void changed();

private:
    void look(bool isWhateverItIs);
    void take(ReadLibrary read);
    void watch();

    LibraryDesk& m_desk;
    LibraryFolders m_folders;
    ReadLibrary m_now;
    bool m_isReading = false;
    bool m_isStale = false;              ///< something has changed since the answer was asked for
    bool m_isWantedWhateverItIs = false; ///< and it was asked to be read anew
    QFileSystemWatcher m_watcher;
    QTimer m_settling;
};

} // namespace flowhand
