#include "command/textcheck.h"

#include <algorithm>
#include <tuple>

#include "command/lintscenario.h"
#include "procedure/lint.h"
#include "report/cards.h"

namespace flowhand {

namespace fs = std::filesystem;

namespace {

constexpr const char* kAircraftFile = "aircraft.toml";
constexpr const char* kScenarioFolder = "scenarios";

std::map<std::string, fs::file_time_type> stampsOf(const fs::path& folder) {
    std::map<std::string, fs::file_time_type> stamps;
    std::error_code failed;
    for (fs::directory_iterator at(folder, failed), end; !failed && at != end; at.increment(failed))
        if (at->path().extension() == ".toml")
            stamps[at->path().string()] = at->last_write_time(failed);
    return stamps;
}

fs::path aircraftFolderOf(const std::string& file) {
    const fs::path folder = fs::path(file).parent_path();
    return isScenarioFile(file) ? folder.parent_path() : folder;
}

/// Problems of other files are theirs.
void keepOwn(const std::string& file, const Problems& problems, CheckedText& checked) {
    for (const Problem& problem : problems.all())
        if (problem.error.place.file == file || problem.error.place.file.empty())
            checked.problems.push_back(problem);
    std::stable_sort(checked.problems.begin(), checked.problems.end(), [](const Problem& a, const Problem& b) {
        const SourcePlace& x = a.error.place;
        const SourcePlace& y = b.error.place;
        return std::tie(x.line, x.column) < std::tie(y.line, y.column);
    });
}

void checkAircraft(const std::vector<Flow>& flows, const std::string& file, const std::string& text,
                   CheckedText& checked) {
    Problems problems;
    const std::optional<Aircraft> aircraft = parseAircraft(text, file, problems);
    keepOwn(file, problems, checked);
    if (!aircraft)
        return;
    checked.title = aircraft->title;
    checked.card = cardHtml(*aircraft, flows);
}

} // namespace

bool isAircraftFile(const std::string& file) {
    return fs::path(file).filename() == kAircraftFile;
}

bool isScenarioFile(const std::string& file) {
    return fs::path(file).parent_path().filename() == kScenarioFolder;
}

CheckedText TextCheck::check(const std::string& file, const std::string& text) {
    CheckedText checked;
    Problems problems;
    AircraftFolder* const folder = folderOf(aircraftFolderOf(file), problems);
    if (isAircraftFile(file)) {
        checkAircraft(folder != nullptr ? folder->flows : std::vector<Flow>(), file, text, checked);
    } else if (folder == nullptr) {
        Error error = problems.hasErrors()
                          ? problems.firstError()
                          : Error{"no-aircraft", "this folder has no aircraft.toml, so its controls are not known", {}};
        error.message = "the aircraft of this folder cannot be read: " + describe(error);
        error.place = {file, 1, 1};
        checked.problems.push_back({Severity::Error, std::move(error)});
    } else if (isScenarioFile(file)) {
        checkScenario(*folder, file, text, checked);
    } else {
        checkFlow(*folder, file, text, checked);
    }
    return checked;
}

AircraftFolder* TextCheck::folderOf(const fs::path& folder, Problems& problems) {
    Stamps stamps = stampsOf(folder);
    if (folder.string() != m_folderName || stamps != m_stamps) {
        m_folderName = folder.string();
        m_stamps = std::move(stamps);
        m_folderProblems = {};
        m_folder = loadAircraftFolder(m_folderName, m_folderProblems);
    }
    problems = m_folderProblems;
    return m_folder ? &*m_folder : nullptr;
}

void TextCheck::checkFlow(AircraftFolder& folder, const std::string& file, const std::string& text,
                          CheckedText& checked) {
    Problems problems;
    std::optional<Flow> flow = parseFlow(text, file, *folder.aircraft, problems);
    if (flow) {
        auto place = std::find_if(folder.flows.begin(), folder.flows.end(), [&](const Flow& each) {
            return each.id == flow->id;
        });
        if (place == folder.flows.end())
            place = folder.flows.insert(place, std::move(*flow));
        else
            *place = std::move(*flow);
        lint(folder, *place, problems);
        checked.title = place->title;
        checked.card = cardHtml(*folder.aircraft, *place);
    }
    keepOwn(file, problems, checked);
}

void TextCheck::checkScenario(const AircraftFolder& folder, const std::string& file, const std::string& text,
                              CheckedText& checked) {
    Problems problems;
    const std::optional<Scenario> scenario = parseScenario(text, file, *folder.aircraft, problems);
    if (scenario) {
        (void)lintScenario(*scenario, folder, problems);
        checked.title = scenario->title;
        checked.card = cardHtml(*folder.aircraft, folder.flows, *scenario);
    }
    keepOwn(file, problems, checked);
}

} // namespace flowhand
