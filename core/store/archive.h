#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "store/packed.h"
#include "store/store.h"

namespace flowhand {

// A run as one file, to be kept or handed on: samples, flow, aircraft and rig as they were, with their hashes, events,
// score, notes. Format: README.md, 'Archives'.

/// Larger files are no archives of runs: four hours at full rate are a tenth of it.
inline constexpr std::size_t kLargestArchive = std::size_t{256} << 20;

/// A run read from an archive, every part of it checked (archiveparts.h).
struct ArchivedRun {
    StoredRun run;
    std::string hash; ///< of the archive, hex: tells whether a store has it already
};

/// Error `damaged-run`: an archive holds whole runs only.
[[nodiscard]] Result<Bytes> archiveOf(const StoredRun& run);

/// Whatever the bytes are, nothing but memory is used, no more than about 2 GiB, and no path in them is ever opened.
/// `file` stands in messages. Errors `not-an-archive`, `newer-archive`, `damaged-archive`.
[[nodiscard]] Result<ArchivedRun> readArchive(std::string_view bytes, const std::string& file);

/// One part of an archive, packed.
struct ArchiveSection {
    char kind = 0;
    Bytes bytes;
};
/// The file that these sections make, with its mark and hash; and back. Nothing when it is no archive.
[[nodiscard]] Bytes joinSections(const std::vector<ArchiveSection>& sections);
[[nodiscard]] Result<std::vector<ArchiveSection>> splitSections(std::string_view bytes, const std::string& file);

} // namespace flowhand
