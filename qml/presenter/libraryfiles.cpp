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
void addBroken(const LibraryFile& broken, const std::string& why, std::vector<LibraryFile>& files) {
    const bool isKnown = std::any_of(files.begin(), files.end(), [&](const LibraryFile& file) {
        return file.file == broken.file;
    });
    if (isKnown)
        return;
    files.push_back(broken);
    files.back().row.broken = true;
    files.back().row.detail = words(why);
}

bool isIn(const std::string& folder, const std::string& file) {
    return !folder.empty() && file.rfind(folder + "/", 0) == 0;
}

void addAll(const LoadedLibrary& library, const std::string& own, bool isOwn, std::vector<LibraryFile>& files) {
    for (const AircraftFolder& folder : library.aircraft)
        if (isIn(own, folder.aircraft->file) == isOwn)
            addFolder(folder, isOwn, files);
    for (const Problem& problem : library.problems.all()) {
        const std::string& name = problem.error.place.file;
        const std::filesystem::path path(name);
        if (problem.severity != Severity::Error || path.extension() != ".toml" || isIn(own, name) != isOwn)
            continue;
        const ProcedureKind kind = isAircraftFile(name)   ? ProcedureKind::Aircraft
                                   : isScenarioFile(name) ? ProcedureKind::Scenario
                                                          : ProcedureKind::Flow;
        addBroken(fileOf(kind, name, path.filename().string(), isOwn), problem.error.message, files);
    }
}

} // namespace

std::vector<LibraryFile> libraryFiles(const LoadedLibrary& library, const std::string& own) {
    std::vector<LibraryFile> files;
    addAll(library, own, true, files);
    addAll(library, own, false, files);
    return files;
}

} // namespace flowhand
