#include "session/bench.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <sstream>
#include <string_view>

#include "session/replay.h"

namespace flowhand::test {

namespace {

const char* const kCockpit = R"(
format = 1
title = "Test cockpit"
engines = 1
seats = ["captain", "first_officer"]
[values]
rotate_speed = "136 kt"
[[control]]
name = "flap_lever"
label = "Flap lever"
area = "pedestal"
kind = "gated lever"
positions = ["up", "4", "12", "22"]
[[control]]
name = "gear_lever"
label = "Gear lever"
area = "panel"
kind = "gated lever"
positions = ["up", "down"]
[[control]]
name = "taxi_light"
label = "Taxi light"
area = "overhead"
kind = "switch"
[[control]]
name = "parking_brake"
label = "Parking brake"
area = "pedestal"
kind = "switch"
[[control]]
name = "thrust_lever_1"
label = "Thrust lever 1"
area = "pedestal"
kind = "lever"
unit = "%"
range = [0, 100]
continuous = true
[[control]]
name = "thrust_lever_2"
label = "Thrust lever 2"
area = "pedestal"
kind = "lever"
unit = "%"
range = [0, 100]
continuous = true
[[control]]
name = "toe_brake"
label = "Toe brake"
area = "floor"
kind = "pedal"
unit = "%"
range = [0, 100]
continuous = true
[[control]]
name = "tiller"
label = "Tiller"
area = "side"
kind = "wheel"
unit = "deg"
range = [-70, 70]
continuous = true
[[control]]
name = "pitch_trim"
label = "Pitch trim"
area = "pedestal"
kind = "wheel"
unit = "deg"
range = [-10, 10]
[[control]]
name = "takeoff_button"
label = "Take-off button"
area = "pedestal"
kind = "button"
[[control]]
name = "reply_button"
label = "Reply button"
area = "yoke"
kind = "button"
)";

constexpr std::string_view kFound = "found ";

std::string shown(Time time) {
    char text[32];
    std::snprintf(text, sizeof text, "%.6f", seconds(time));
    std::string result = text;
    result.erase(result.find_last_not_of('0') + 1);
    if (result.back() == '.')
        result.pop_back();
    return result;
}

[[noreturn]] void give(const Problems& problems) {
    for (const Problem& problem : problems.all())
        std::fprintf(stderr, "%s\n", describe(problem.error).c_str());
    std::abort();
}

std::string trimmed(std::string text) {
    text.erase(0, text.find_first_not_of(' '));
    text.erase(text.find_last_not_of(' ') + 1);
    return text;
}

} // namespace

const Aircraft& cockpit() {
    static const Aircraft aircraft = [] {
        Problems problems;
        std::optional<Aircraft> parsed = parseAircraft(kCockpit, "cockpit/aircraft.toml", problems);
        if (!parsed)
            give(problems);
        return std::move(*parsed);
    }();
    return aircraft;
}

SessionSetup onScreen() {
    SessionSetup setup;
    setup.controls.resize(cockpit().controls.size());
    for (ControlFacts& facts : setup.controls)
        facts.isSimulated = true;
    return setup;
}

Flow flowOf(const std::string& text) {
    Problems problems;
    const std::string head = "format = 1\ntitle = \"Test\"\nsummary = \"A test.\"\nphases = [\"taxi_out\"]\n"
                             "seat = \"captain\"\n";
    std::optional<Flow> flow = parseFlow(head + text, "test.toml", cockpit(), problems);
    if (!flow)
        give(problems);
    return std::move(*flow);
}

std::string idOf(const Flow& flow, int step) {
    return flow.steps[static_cast<std::size_t>(step)].id;
}

Bench::Bench(const Flow& flow, SessionSetup setup) : session(cockpit(), flow, std::move(setup)), m_flow(flow) {}

void Bench::begin(const std::string& values) {
    std::string standing = "flap_lever = up; gear_lever = down; taxi_light = off; parking_brake = off; "
                           "thrust_lever_1 = 0 %; thrust_lever_2 = 0 %; toe_brake = 0 %; tiller = 0 deg; "
                           "pitch_trim = 0 deg; takeoff_button = off; reply_button = off";
    std::vector<Sample> batch = changes(Time(-1'000'000), standing + (values.empty() ? "" : "; " + values));
    for (Sample& sample : batch)
        sample.actor = Actor::Machine;
    take(Time(-1'000'000), batch);
    play("0 start");
}

std::vector<Sample> Bench::changes(Time time, const std::string& text) const {
    std::vector<Sample> batch;
    std::istringstream parts(text);
    for (std::string part; std::getline(parts, part, ';');) {
        const std::size_t equals = part.find('=');
        std::string name = trimmed(part.substr(0, equals));
        const bool isFound = name.rfind(kFound, 0) == 0;
        if (isFound)
            name = name.substr(kFound.size());
        const std::optional<SignalId> id = cockpit().signals.find(name);
        if (!id)
            std::fprintf(stderr, "no signal '%s'\n", name.c_str()), std::abort();
        const std::string word = trimmed(part.substr(equals + 1));
        Result<Value> value = word == "between"   ? Result<Value>(Value::between())
                              : word == "unknown" ? Result<Value>(Value::unknown())
                                                  : parseValue(cockpit().signals[*id], word);
        if (!value)
            std::fprintf(stderr, "%s\n", describe(value.error()).c_str()), std::abort();
        const bool isControl = cockpit().isControl(*id);
        batch.push_back({time, *id, *value, isControl && !isFound ? Actor::Hand : Actor::Machine,
                         isControl ? Origin::Script : Origin::Practice, kNoControl});
    }
    return batch;
}

void Bench::play(const std::string& script) {
    std::istringstream lines(script);
    for (std::string line; std::getline(lines, line);) {
        line = trimmed(line);
        if (line.empty())
            continue;
        const std::size_t space = line.find(' ');
        const Time time = *parseDuration(line.substr(0, space) + " s");
        const std::string what = trimmed(line.substr(space));
        feedPartner(time);
        if (what.find('=') == std::string::npos)
            command(time, what);
        else
            take(time, changes(time, what));
        collect();
    }
}

void Bench::take(Time time, std::vector<Sample> batch) {
    batch.erase(std::remove_if(batch.begin(), batch.end(),
                               [&](const Sample& s) {
                                   return !session.isNews(s);
                               }),
                batch.end());
    session.take(time, batch);
    samples.insert(samples.end(), batch.begin(), batch.end());
    m_last = time;
}

void Bench::command(Time time, const std::string& words) {
    const std::string word = words.substr(0, words.find(' '));
    const std::string rest = word == words ? "" : words.substr(word.size() + 1);
    if (word == "wait") {
        session.advance(time);
        return;
    }
    const std::pair<const char*, CommandKind> kinds[] = {
        {"start", CommandKind::Start},   {"waive", CommandKind::Waive}, {"hold", CommandKind::Hold},
        {"gap", CommandKind::Gap},       {"jump", CommandKind::Jump},   {"resume", CommandKind::Resume},
        {"repeat", CommandKind::Repeat}, {"stop", CommandKind::Stop},   {"place", CommandKind::Place}};
    for (const auto& [name, kind] : kinds)
        if (word == name) {
            commands.push_back({time, kind, rest});
            apply(session, commands.back());
        }
}

void Bench::until(double seconds) {
    play(shown(fromSeconds(seconds)) + " wait");
}

void Bench::feedPartner(Time limit) {
    for (;;) {
        collect();
        const auto next =
            std::min_element(m_partner.begin(), m_partner.end(), [](const PartnerMove& a, const PartnerMove& b) {
                return a.time < b.time;
            });
        const Time timer = session.nextTimer();
        if (next != m_partner.end() && next->time < limit && next->time <= timer) {
            const PartnerMove move = *next;
            m_partner.erase(next);
            take(move.time, {{move.time, move.signal, move.value, Actor::Partner, Origin::Script, kNoControl}});
        } else if (timer < limit) {
            session.advance(timer);
        } else {
            return;
        }
    }
}

void Bench::collect() {
    for (Event& event : session.takeEvents())
        all.push_back(std::move(event));
    for (const PartnerMove& move : session.takePartnerMoves())
        m_partner.push_back(move);
}

std::string Bench::told(const Event& event) const {
    std::string kind(nameOf(event.kind));
    if (kind.rfind("step-", 0) == 0)
        kind.erase(0, 5);
    std::string text = shown(event.time) + " " + kind;
    if (event.step >= 0 && event.kind != EventKind::WordsBegan)
        text += " " + idOf(m_flow, event.step);
    if (event.guard >= 0)
        text += " " + m_flow.guards[static_cast<std::size_t>(event.guard)].id;
    const bool isOfControl = event.kind == EventKind::PartnerMoved || event.kind == EventKind::MatchWanted ||
                             event.kind == EventKind::Matched || event.kind == EventKind::SetUpWanted ||
                             event.kind == EventKind::SetUpWaived || event.kind == EventKind::WrongControl ||
                             event.kind == EventKind::WrongValue || event.kind == EventKind::StepUndone;
    if (isOfControl)
        text +=
            " " + cockpit().signals[event.signal].name + " " + valueText(cockpit().signals[event.signal], event.value);
    if (event.kind == EventKind::WordsBegan)
        text += " " + event.by + ": " + event.text.english();
    if (event.kind == EventKind::RunEnded || event.kind == EventKind::OutcomeReached || event.kind == EventKind::Held ||
        event.kind == EventKind::Gap)
        text += " " + event.text.english();
    return text;
}

std::string Bench::events(const std::string& leave) {
    std::string text;
    for (; m_shown < all.size(); ++m_shown)
        if ((" " + leave + " ").find(" " + std::string(nameOf(all[m_shown].kind)) + " ") == std::string::npos)
            text += (text.empty() ? "" : ", ") + told(all[m_shown]);
    return text;
}

} // namespace flowhand::test
