#pragma once

#include <string>
#include <vector>

#include "command/textcheck.h"
#include "presenter/currentlibrary.h"
#include "presenter/libraryrows.h"

namespace flowhand {

/// A file of the library.
struct LibraryFile {
    ProcedureKind kind = ProcedureKind::Flow;
    std::string file;
    bool isOwn = false;
    LibraryRow row; ///< all but its number
};

/// Every flow, checklist, scenario and aircraft of a library, in the order of the flight, each aircraft's together,
/// those in the person's `own` folder first. A file that cannot be read is there too, and says why.
[[nodiscard]] std::vector<LibraryFile> libraryFiles(const LoadedLibrary& library, const std::string& own);

} // namespace flowhand
