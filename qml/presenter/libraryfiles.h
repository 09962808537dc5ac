#pragma once

#include <memory>
#include <string>
#include <vector>

#include "command/textcheck.h"
#include "presenter/libraryrows.h"

namespace flowhand {

/// A file of the library.
struct LibraryFile {
    ProcedureKind kind = ProcedureKind::Flow;
    std::string file;
    bool isOwn = false;
    LibraryRow row; ///< all but its number
};

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
[[nodiscard]] std::shared_ptr<const LoadedLibrary> loadLibraries(const LibraryFolders& folders);

/// Every flow, checklist, scenario and aircraft of both, in the order of the flight, each aircraft's together, the
/// person's own first. A file that cannot be read is there too, and says why.
[[nodiscard]] std::vector<LibraryFile> libraryFiles(const LibraryFolders& folders);

} // namespace flowhand
