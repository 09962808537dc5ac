#include "procedure/flowstarter.h"

#include <algorithm>
#include <cctype>
#include <sstream>

namespace flowhand {

namespace {

/// The control of that kind that `usual` names, else the first that the first seat reaches; null when there is none.
const CockpitControl* controlOf(const Aircraft& aircraft, ControlKind kind, std::string_view usual) {
    const CockpitControl* found = nullptr;
    for (const CockpitControl& control : aircraft.controls) {
        const bool isInReach = control.seats.empty() || std::find(control.seats.begin(), control.seats.end(),
                                                                  aircraft.seats.front()) != control.seats.end();
        if (control.kind != kind || !isInReach)
            continue;
        if (aircraft.signals[control.signal].name == usual)
            return &control;
        if (found == nullptr)
            found = &control;
    }
    return found;
}

/// "first_flow" as a title: "First flow".
std::string titleOf(std::string id) {
    std::replace(id.begin(), id.end(), '_', ' ');
    id.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(id.front())));
    return id;
}

std::string stepOn(const Signal& light) {
    return R"(
[[step]]
id = "first"                    # its name in this file: for 'after', guards and hands
title = ")" +
           light.label + R"( on"
done = ")" +
           light.name + R"("             # the condition that says it is done
within = "10 s"                 # on time until so long after it became due; left out: 5 s
why = "Say in one line what it is for."
)";
}

std::string stepTo(const Signal& lever) {
    const std::string& position = lever.positions[1];
    return R"(
[[step]]
id = "second"                   # comes after the one before it, unless 'after' says otherwise
title = ")" +
           lever.label + " to " + position + R"("
cue = { by = "ground", text = "All clear." }    # words that ask for it; it is due when they end
done = ")" +
           lever.name + " == '" + position + R"('"
weight = 2                      # 1 normal, 2 important, 3: a run that misses it does not pass
why = "Say in one line what it is for."
)";
}

} // namespace

std::string flowStarter(const Aircraft& aircraft, const std::string& id, const std::string& place) {
    const CockpitControl* light = controlOf(aircraft, ControlKind::Switch, "taxi_light");
    const CockpitControl* lever = controlOf(aircraft, ControlKind::GatedLever, "flap_lever");
    std::ostringstream text;
    text << "# A flow of " << aircraft.title << ". What the keys mean: README.md in the folder above.\n"
         << "format = 1\ntitle = \"" << titleOf(id) << R"("
summary = "Say in a sentence where it begins, where it ends and what it is for."
style = "flow"                  # from memory; "do-then-verify" and "read-and-do" are checklists
phases = ["taxi_out"]           # one phase, or the first and the last
seat = ")"
         << aircraft.seats.front() << R"("               # whose steps they are, unless a step says otherwise

[start]
place = ")"
         << place << R"("                 # a start place of practice.toml

[start.controls]                # where each control that is judged has to be before the run begins
)";
    if (light != nullptr)
        text << aircraft.signals[light->signal].name << " = \"off\"\n";
    if (lever != nullptr)
        text << aircraft.signals[lever->signal].name << " = \"" << aircraft.signals[lever->signal].positions.front()
             << "\"\n";
    if (light != nullptr)
        text << stepOn(aircraft.signals[light->signal]);
    if (lever != nullptr)
        text << stepTo(aircraft.signals[lever->signal]);
    text << R"(
[[guard]]
id = "rolled"
title = "Rolled before all was done"
never = "ground_speed > 1 kt"   # what must not be, from the first step to the last
)";
    return text.str();
}

} // namespace flowhand
