#include "presenter/libraryfiles.h"

#include <algorithm>
#include <filesystem>

#include "presenter/ribbon.h"

namespace flowhand {

namespace {

QString words(const std::string& text) {
    return QString::fromStdString(text);
}

LibraryFile fileOf(ProcedureKind kind, const std::string& file, const std::string& title, bool isOwn) {
    LibraryFile found;
    found.kind = kind;
    found.file = file;
    found.isOwn = isOwn;
    found.row.title = words(title);
    found.row.own = isOwn;
    return found;
}

void addFolder(const AircraftFolder& folder, bool isOwn, std::vector<LibraryFile>& files) {
    const QString aircraft = words(folder.aircraft->title);
    files.push_back(fileOf(ProcedureKind::Aircraft, folder.aircraft->file, folder.aircraft->title, isOwn));
    files.back().row.detail = QObject::tr("%1 controls, %2 flows and checklists, %3 scenarios")
                                  .arg(folder.aircraft->controls.size())
                                  .arg(folder.flows.size())
                                  .arg(folder.scenarios.size());
    for (const Flow& flow : folder.flows) {
        const ProcedureKind kind = flow.style == FlowStyle::Flow ? ProcedureKind::Flow : ProcedureKind::Checklist;
        LibraryFile file = fileOf(kind, flow.file, flow.title, isOwn);
        const RibbonStretch stretch = stretchOf(flow);
        file.row.from = stretch.from;
        file.row.to = stretch.to;
        file.row.detail = flow.abnormal ? QObject::tr("%1, %2, abnormal").arg(aircraft, stretch.title.toLower())
                                        : QObject::tr("%1, %2").arg(aircraft, stretch.title.toLower());
        files.push_back(std::move(file));
    }
    for (const Scenario& scenario : folder.scenarios) {
        files.push_back(fileOf(ProcedureKind::Scenario, scenario.file, scenario.title, isOwn));
        files.back().row.detail = aircraft;
    }
}

/// Files that were left out, each once.
void addBroken(const Problems& problems, bool isOwn, std::vector<LibraryFile>& files) {
    for (const Problem& problem : problems.all()) {
        const std::string& name = problem.error.place.file;
        const bool isKnown = std::any_of(files.begin(), files.end(), [&](const LibraryFile& file) {
            return file.file == name;
        });
        if (problem.severity != Severity::Error || isKnown || std::filesystem::path(name).extension() != ".toml")
            continue;
        const ProcedureKind kind = isAircraftFile(name)   ? ProcedureKind::Aircraft
                                   : isScenarioFile(name) ? ProcedureKind::Scenario
                                                          : ProcedureKind::Flow;
        files.push_back(fileOf(kind, name, std::filesystem::path(name).filename().string(), isOwn));
        files.back().row.broken = true;
        files.back().row.detail = words(problem.error.message);
    }
}

void addAll(const std::string& procedures, bool isOwn, std::vector<LibraryFile>& files) {
    std::error_code ignored;
    if (!std::filesystem::is_directory(procedures, ignored))
        return;
    Problems problems;
    for (const AircraftFolder& folder : loadLibrary(procedures, problems))
        addFolder(folder, isOwn, files);
    addBroken(problems, isOwn, files);
}

} // namespace

std::shared_ptr<const LoadedLibrary> loadLibraries(const LibraryFolders& folders) {
    auto loaded = std::make_shared<LoadedLibrary>();
    loaded->aircraft = loadLibrary(folders.shipped, loaded->problems);
    std::error_code ignored;
    if (std::filesystem::is_directory(folders.own, ignored))
        for (AircraftFolder& folder : loadLibrary(folders.own, loaded->problems))
            loaded->aircraft.push_back(std::move(folder));
    return loaded;
}

std::vector<LibraryFile> libraryFiles(const LibraryFolders& folders) {
    std::vector<LibraryFile> files;
    addAll(folders.own, true, files);
    addAll(folders.shipped, false, files);
    return files;
}

} // namespace flowhand
