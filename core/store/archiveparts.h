#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "store/store.h"
#include "store/window.h"

namespace flowhand {

// The sections of an archive by their letters, and those of them that are JSON, there and back. Reading gives false
// where the text is not what was written.

inline constexpr char kHeaderSection = 'h';
inline constexpr char kAircraftSection = 'a';
inline constexpr char kFlowSection = 'f';
inline constexpr char kRigSection = 'g';
inline constexpr char kSetupSection = 'u';
inline constexpr char kCommandSection = 'c';
inline constexpr char kEventSection = 'e';
inline constexpr char kResultSection = 'r';
inline constexpr char kNoteSection = 'n';
/// By Origin.
inline constexpr std::array<char, kStreams> kSampleSections = {'0', '1', '2', '3', '4'};

/// Of the header what is neither setup nor a source; length, tags and version of the result too.
[[nodiscard]] std::string headerJson(const StoredRun& run);
[[nodiscard]] bool readHeader(std::string_view json, StoredRun& run);

[[nodiscard]] std::string commandsJson(const std::vector<RunCommand>& commands);
[[nodiscard]] bool readCommands(std::string_view json, std::vector<RunCommand>& commands);

[[nodiscard]] std::string notesJson(const std::vector<Note>& notes);
[[nodiscard]] bool readNotes(std::string_view json, std::vector<Note>& notes);

/// What is wrong with a run that was read from an archive, in words; empty: nothing. Everything a run is later judged,
/// shown and stored with is in its range: times, signals, values, names, numbers.
[[nodiscard]] std::string wrongWith(const StoredRun& run);

} // namespace flowhand
