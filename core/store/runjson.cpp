#include "store/runjson.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "base/phrasejson.h"
#include "base/wholenumber.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<std::string_view, 10> kStateNames = {"waiting",   "due",       "seen",      "done", "omitted",
                                                          "found_set", "too_early", "uncertain", "void", "left_out"};
static_assert(kStateNames.size() == static_cast<std::size_t>(StepState::LeftOut) + 1);

constexpr std::array<std::string_view, 12> kCommandNames = {
    "start", "waive", "hold", "gap", "resume", "repeat", "jump", "stop", "unobserved", "carry_on", "event", "place"};
static_assert(kCommandNames.size() == static_cast<std::size_t>(CommandKind::Place) + 1);

std::string dumped(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Json toJson(const ControlFacts& facts) {
    return {{"wired", facts.isWired}, {"simulated", facts.isSimulated}, {"sigma", facts.sigma},
            {"range", facts.range},   {"momentary", facts.isMomentary}, {"control", facts.controlName}};
}

ControlFacts factsOf(const Json& json) {
    ControlFacts facts;
    facts.isWired = json.at("wired").get<bool>();
    facts.isSimulated = json.at("simulated").get<bool>();
    facts.sigma = json.at("sigma").get<double>();
    facts.range = json.at("range").get<double>();
    facts.isMomentary = json.at("momentary").get<bool>();
    facts.controlName = json.at("control").get<std::string>();
    return facts;
}

Json toJson(const StepResult& result) {
    return {{"state", kStateNames[static_cast<std::size_t>(result.state)]},
            {"own", result.isOwn},
            {"due", result.due.count()},
            {"done", result.done.count()},
            {"suspended", result.suspended.count()},
            {"mu", result.mu},
            {"too_early", result.isTooEarly},
            {"uncertain", result.isUncertain}};
}

StepResult stepResultOf(const Json& json) {
    StepResult result;
    const auto name = json.at("state").get<std::string>();
    const auto* const at = std::find(kStateNames.begin(), kStateNames.end(), name);
    if (at == kStateNames.end())
        throw Json::out_of_range::create(403, "no state '" + name + "'", &json);
    result.state = static_cast<StepState>(at - kStateNames.begin());
    result.isOwn = json.at("own").get<bool>();
    result.due = Time(wholeNumber<std::int64_t>(json.at("due")));
    result.done = Time(wholeNumber<std::int64_t>(json.at("done")));
    result.suspended = Duration(wholeNumber<std::int64_t>(json.at("suspended")));
    result.mu = json.at("mu").get<double>();
    result.isTooEarly = json.at("too_early").get<bool>();
    result.isUncertain = json.at("uncertain").get<bool>();
    return result;
}

Json toJson(const LedgerLine& line) {
    return {{"milli_points", line.milliPoints},
            {"step", line.step},
            {"guard", line.guard},
            {"what", nameOf(line.what)},
            {"text", phraseJson(line.text)}};
}

LedgerLine ledgerLineOf(const Json& json) {
    const auto name = json.at("what").get<std::string>();
    const std::optional<LossKind> what = findLossKind(name);
    if (!what)
        throw Json::out_of_range::create(403, "no loss '" + name + "'", &json);
    return {wholeNumber<std::int64_t>(json.at("milli_points")), wholeNumber<int>(json.at("step")),
            wholeNumber<int>(json.at("guard")), *what, phraseFrom(json.at("text"))};
}

Json toJson(const Score& score) {
    Json ledger = Json::array();
    for (const LedgerLine& line : score.ledger)
        ledger.push_back(toJson(line));
    Json late = Json::array();
    for (const Duration duration : score.late)
        late.push_back(duration.count());
    return {{"scored", score.isScored},
            {"milli_points", score.milliPoints},
            {"upper_milli_points", score.upperMilliPoints},
            {"passed", score.isPassed},
            {"why_not_passed", phraseJson(score.whyNotPassed)},
            {"weight", score.weight},
            {"pace", score.pace.count()},
            {"ledger", std::move(ledger)},
            {"out_of_order", score.outOfOrder},
            {"late", std::move(late)}};
}

Score scoreFrom(const Json& json) {
    Score score;
    score.isScored = json.at("scored").get<bool>();
    score.milliPoints = wholeNumber<std::int64_t>(json.at("milli_points"));
    score.upperMilliPoints = wholeNumber<std::int64_t>(json.at("upper_milli_points"));
    score.isPassed = json.at("passed").get<bool>();
    score.whyNotPassed = phraseFrom(json.at("why_not_passed"));
    score.weight = wholeNumber<std::int64_t>(json.at("weight"));
    score.pace = Duration(wholeNumber<std::int64_t>(json.at("pace")));
    for (const Json& line : json.at("ledger"))
        score.ledger.push_back(ledgerLineOf(line));
    score.outOfOrder = json.at("out_of_order").get<std::vector<bool>>();
    for (const Json& duration : json.at("late"))
        score.late.emplace_back(wholeNumber<std::int64_t>(duration));
    return score;
}

Json toJson(const RunLosses& losses) {
    Json devices = Json::array();
    for (const DeviceLosses& device : losses.devices)
        devices.push_back({{"device", device.device}, {"suspected", device.suspected}, {"replaced", device.replaced}});
    return {{"late", losses.lateChanges}, {"latest", losses.latest.count()}, {"devices", std::move(devices)}};
}

RunLosses lossesFrom(const Json& json) {
    RunLosses losses;
    losses.lateChanges = wholeNumber<std::uint64_t>(json.at("late"));
    losses.latest = Duration(wholeNumber<std::int64_t>(json.at("latest")));
    for (const Json& device : json.at("devices"))
        losses.devices.push_back({device.at("device").get<std::string>(),
                                  wholeNumber<std::uint64_t>(device.at("suspected")),
                                  wholeNumber<std::uint64_t>(device.at("replaced"))});
    return losses;
}

} // namespace

namespace {

Json eventsOf(const SessionSetup& setup) {
    Json events = Json::array();
    for (const SetupEvent& event : setup.events)
        events.push_back({{"id", event.id}, {"title", event.title}, {"by", event.by}, {"words", event.words}});
    return events;
}

/// Older records have neither scenario nor events.
void readScenario(const Json& json, RunHeader& header, SessionSetup& setup) {
    header.scenario = json.value("scenario", std::string());
    const auto events = json.find("events");
    for (std::size_t i = 0; events != json.end() && i < events->size(); ++i) {
        const Json& event = events->at(i);
        setup.events.push_back({event.at("id").get<std::string>(), event.at("title").get<std::string>(),
                                event.at("by").get<std::string>(), event.at("words").get<std::string>()});
    }
}

} // namespace

std::string setupJson(const RunHeader& header) {
    const SessionSetup& setup = header.setup;
    Json controls = Json::array();
    for (const ControlFacts& facts : setup.controls)
        controls.push_back(toJson(facts));
    return dumped({{"control_names", header.controlNames},
                   {"help", header.help},
                   {"time_scale", setup.timeScale},
                   {"own_seat", setup.ownSeat},
                   {"solo", setup.isSolo},
                   {"seed", setup.seed},
                   {"partner_error_rate", setup.partnerErrorRate},
                   {"partner_hands", setup.hasPartnerHands},
                   {"latency", setup.latency.count()},
                   {"controls", std::move(controls)},
                   {"scenario", header.scenario},
                   {"events", eventsOf(setup)}});
}

bool readSetup(std::string_view text, RunHeader& header) {
    try {
        const Json json = Json::parse(text);
        SessionSetup setup;
        setup.ownSeat = json.at("own_seat").get<std::string>();
        setup.isSolo = json.at("solo").get<bool>();
        setup.seed = wholeNumber<std::uint64_t>(json.at("seed"));
        setup.partnerErrorRate = json.at("partner_error_rate").get<double>();
        setup.hasPartnerHands = json.value("partner_hands", false); // runs before there were any have no such key
        setup.latency = Duration(wholeNumber<std::int64_t>(json.at("latency")));
        for (const Json& facts : json.at("controls"))
            setup.controls.push_back(factsOf(facts));
        // Older records have neither.
        header.help = json.value("help", std::string());
        setup.timeScale = json.value("time_scale", 1.0);
        readScenario(json, header, setup);
        header.controlNames = json.at("control_names").get<std::vector<std::string>>();
        header.setup = std::move(setup);
    } catch (const nlohmann::json::exception&) {
        return false;
    }
    return true;
}

std::string resultJson(const Score& score, const std::vector<StepResult>& results, const RunLosses& losses) {
    Json steps = Json::array();
    for (const StepResult& result : results)
        steps.push_back(toJson(result));
    return dumped({{"score", toJson(score)}, {"steps", std::move(steps)}, {"losses", toJson(losses)}});
}

bool readResult(std::string_view text, Score& score, std::vector<StepResult>& results, RunLosses& losses) {
    try {
        const Json json = Json::parse(text);
        std::vector<StepResult> steps;
        for (const Json& step : json.at("steps"))
            steps.push_back(stepResultOf(step));
        const auto kept = json.find("losses"); // older records have none
        RunLosses lost = kept != json.end() ? lossesFrom(*kept) : RunLosses();
        score = scoreFrom(json.at("score"));
        results = std::move(steps);
        losses = std::move(lost);
    } catch (const nlohmann::json::exception&) {
        return false;
    }
    return true;
}

std::string_view nameOf(CommandKind kind) {
    return kCommandNames[static_cast<std::size_t>(kind)];
}

std::optional<CommandKind> findCommandKind(std::string_view name) {
    for (std::size_t i = 0; i < kCommandNames.size(); ++i)
        if (kCommandNames[i] == name)
            return static_cast<CommandKind>(i);
    return std::nullopt;
}

} // namespace flowhand
