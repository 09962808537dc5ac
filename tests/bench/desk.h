#pragma once

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "base/problem.h"
#include "procedure/library.h"
#include "rig/rigfile.h"

namespace flowhand {

/// The demonstration aircraft with its flows.
[[nodiscard]] inline const AircraftFolder& twinJetFolder() {
    static const AircraftFolder folder = [] {
        Problems problems;
        std::optional<AircraftFolder> loaded = loadAircraftFolder(PROCEDURES "/twin_jet", problems);
        if (!loaded || problems.hasErrors())
            std::abort();
        return std::move(*loaded);
    }();
    return folder;
}

[[nodiscard]] inline SignalId twinJetSignal(const std::string& name) {
    return *twinJetFolder().aircraft->signals.find(name);
}

/// The text of a shipped rig.
[[nodiscard]] inline std::string shippedRig(const std::string& name) {
    std::ifstream file(std::string(ASSETS "/rigs/") + name);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

/// `text` with its one `before` made `after`; a test that no longer fits its file ends here.
[[nodiscard]] inline std::string edited(std::string text, const std::string& before, const std::string& after) {
    const std::size_t at = text.find(before);
    if (at == std::string::npos)
        std::abort();
    return text.replace(at, before.size(), after);
}

/// A rig with one device 'desk' and these controls, or a whole rig file.
[[nodiscard]] inline RigFile rigOf(const std::string& text) {
    static const std::string kHead = "format = 1\ntitle = \"Desk\"\n[[device]]\nname = \"desk\"\nid = \"1209:F101\"\n";
    const bool isWhole = text.find("format") != std::string::npos;
    Problems problems;
    const Aircraft& aircraft = *twinJetFolder().aircraft;
    std::optional<RigFile> rig =
        parseRigFile(isWhole ? text : kHead + text, "desk.toml", aircraft.signals, aircraft.controls.size(), problems);
    if (!rig) {
        std::fprintf(stderr, "%s\n", describe(problems.firstError()).c_str());
        std::abort();
    }
    return std::move(*rig);
}

} // namespace flowhand
