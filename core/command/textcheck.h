#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "procedure/library.h"

namespace flowhand {

/// What a file of a procedures folder is.
enum class ProcedureKind : std::uint8_t { Flow, Checklist, Scenario, Aircraft };

/// A text as an editor holds it, looked through.
struct CheckedText {
    std::vector<Problem> problems; ///< of this text alone, in the order of its lines
    std::string card;              ///< as HTML, to read and to print; empty: the text cannot be read yet
    std::string title;
};

/// Checks texts while they are written, among the other files of their aircraft's folder, which it keeps in mind as
/// long as they do not change on the disk. One thread at a time.
class TextCheck {
public:
    /// `file` says what the text is and among which others it stands; it need not be there.
    [[nodiscard]] CheckedText check(const std::string& file, const std::string& text);

private:
    using Stamps = std::map<std::string, std::filesystem::file_time_type>;

    [[nodiscard]] AircraftFolder* folderOf(const std::filesystem::path& folder, Problems& problems);
    void checkFlow(AircraftFolder& folder, const std::string& file, const std::string& text, CheckedText& checked);
    void checkScenario(const AircraftFolder& folder, const std::string& file, const std::string& text,
                       CheckedText& checked);

    std::string m_folderName;
    Stamps m_stamps;
    std::optional<AircraftFolder> m_folder;
    Problems m_folderProblems;
};

/// By its name and place: an aircraft's file, one in a folder of scenarios, or else a flow. Whether a flow is a
/// checklist stands in its text.
[[nodiscard]] bool isAircraftFile(const std::string& file);
[[nodiscard]] bool isScenarioFile(const std::string& file);

} // namespace flowhand
