#include "command/takein.h"

#include <algorithm>
#include <filesystem>
#include <vector>

#include "base/textfile.h"
#include "store/archive.h"

namespace flowhand {

const char* const kSampleTag = "sample";

Result<std::int64_t> takeIn(Store& store, const std::string& file) {
    const Result<std::string> bytes = readFile(file, kLargestArchive);
    if (!bytes)
        return tl::unexpected(bytes.error());
    const Result<ArchivedRun> run = readArchive(*bytes, file);
    if (!run)
        return tl::unexpected(run.error());
    return store.add(*run);
}

Status takeInSamples(Store& store, const std::string& folder) {
    std::vector<std::string> files;
    std::error_code problem;
    for (const auto& entry : std::filesystem::directory_iterator(folder, problem))
        if (entry.path().extension() == ".flowrun")
            files.push_back(entry.path().string());
    if (files.empty())
        return failure("no-samples", "there is no sample run in this folder; install the program again", {folder});
    std::sort(files.begin(), files.end());
    for (const std::string& file : files) {
        const Result<std::int64_t> id = takeIn(store, file);
        if (!id && id.error().code == "already-imported")
            continue;
        if (!id)
            return tl::unexpected(id.error());
        if (const Status tagged = store.tag(*id, kSampleTag); !tagged)
            return tagged;
    }
    return {};
}

} // namespace flowhand
