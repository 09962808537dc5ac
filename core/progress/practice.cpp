#include "progress/practice.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "base/names.h"
#include "procedure/flow.h"
#include "store/outcomes.h"

namespace flowhand {

namespace {

/// Whether the score counts the step: as core/session/score.cpp.
bool counts(const Step& step, const StepResult& result) {
    return result.isOwn && result.state != StepState::Void && result.state != StepState::LeftOut &&
           (result.state != StepState::FoundSet || step.compareOnly);
}

/// The ledger's words without what differs from run to run; empty: no mistake.
Phrase mistakeOf(const LedgerLine& line) {
    if (line.what == LossKind::SmallMargin || line.what == LossKind::Floor)
        return {};
    const bool isElsewhere = line.what == LossKind::WrongControl || line.what == LossKind::WrongValue;
    return isElsewhere && !line.text.isEmpty() ? line.text : lossWords(line.what);
}

/// Flows as they were flown; most runs share one.
class FlownFlows {
public:
    const Flow* of(const RunHeader& header) {
        std::string key = header.aircraftSource + '\0' + header.flowSource;
        const auto known = m_flows.find(key);
        if (known != m_flows.end())
            return known->second ? &*known->second : nullptr;
        Problems problems;
        const std::optional<Aircraft> aircraft =
            parseAircraft(header.aircraftSource, header.aircraftFolder + "/aircraft.toml", problems);
        std::optional<Flow> flow =
            aircraft ? parseFlow(header.flowSource, header.flowFile, *aircraft, problems) : std::nullopt;
        const auto added = m_flows.emplace(std::move(key), std::move(flow)).first;
        return added->second ? &*added->second : nullptr;
    }

private:
    std::map<std::string, std::optional<Flow>> m_flows;
};

void keepPractice(std::vector<RunSummary>& runs, const std::set<std::int64_t>& scripted) {
    std::erase_if(runs, [&](const RunSummary& run) {
        return run.isDamaged || !run.isFinished || !run.isScored || scripted.count(run.id) > 0;
    });
}

std::vector<PracticeLine> linesOf(const std::vector<RunSummary>& runs) {
    std::vector<PracticeLine> lines;
    for (const RunSummary& run : runs) {
        auto line = std::find_if(lines.begin(), lines.end(), [&](const PracticeLine& known) {
            return known.pilot == run.pilot && known.rig == run.rigTitle;
        });
        if (line == lines.end()) {
            PracticeLine added{run.pilot, run.rigTitle, 0};
            line = lines.insert(lines.end(), std::move(added));
        }
        ++line->runs;
    }
    return lines;
}

std::string shownRig(const std::string& title) {
    return title.empty() ? onScreenName() : title;
}

Phrase rigWords(const PracticeRecord& record) {
    if (record.isEveryRig)
        return phrase("on every rig");
    return record.line.rig.empty() ? phrase("on on-screen controls") : phrase("on {1}").with(record.line.rig);
}

Phrase pilotWords(const PracticeRecord& record) {
    if (record.isEveryPilot)
        return phrase("every pilot");
    return record.line.pilot.empty() ? phrase("a pilot without a name") : Phrase(record.line.pilot);
}

bool fits(const PracticeLine& line, const PracticeWish& wish) {
    const bool isPilot = wish.isEveryPilot || !wish.pilot || *wish.pilot == line.pilot;
    const bool isRig = wish.isEveryRig || !wish.rig || *wish.rig == line.rig || *wish.rig == shownRig(line.rig);
    return isPilot && isRig;
}

tl::unexpected<Error> nobody(const std::vector<PracticeLine>& lines, const PracticeWish& wish) {
    std::vector<std::string> pilots, rigs;
    for (const PracticeLine& line : lines) {
        if (std::find(pilots.begin(), pilots.end(), line.pilot) == pilots.end())
            pilots.push_back(line.pilot);
        const bool isOfPilot = wish.isEveryPilot || !wish.pilot || *wish.pilot == line.pilot;
        if (isOfPilot && std::find(rigs.begin(), rigs.end(), shownRig(line.rig)) == rigs.end())
            rigs.push_back(shownRig(line.rig));
    }
    if (wish.pilot && !wish.isEveryPilot && std::find(pilots.begin(), pilots.end(), *wish.pilot) == pilots.end())
        return failure("unknown-pilot", "no run was flown by '" + *wish.pilot + "'; there are runs by " +
                                            joined(pilots, ", ") + nearestHint(*wish.pilot, pilots));
    return failure("unknown-rig", "no such run was flown on '" + wish.rig.value_or("") + "'; there are runs on " +
                                      joined(rigs, ", ") + nearestHint(wish.rig.value_or(""), rigs));
}

/// The line that is meant; the wish's 'every' is heeded by whoever asks.
Result<PracticeLine> chosenLine(const std::vector<PracticeLine>& lines, const PracticeWish& wish) {
    for (const PracticeLine& line : lines)
        if (fits(line, wish))
            return line;
    return nobody(lines, wish);
}

bool isOfRecord(const RunSummary& run, const PracticeRecord& record) {
    return (record.isEveryPilot || run.pilot == record.line.pilot) &&
           (record.isEveryRig || run.rigTitle == record.line.rig);
}

void takeRun(Outcomes& outcomes, const RunSummary& summary, FlownFlows& flows, PracticeRecord& record) {
    const Result<StoredRun> run = outcomes.load(summary.id);
    const Flow* const flow = run ? flows.of(run->header) : nullptr;
    std::optional<PractisedRun> practised = flow != nullptr ? practisedRun(*run, *flow) : std::nullopt;
    if (practised) {
        record.runs.push_back(std::move(*practised));
        record.simulatedRuns += summary.isSimulated ? 1 : 0;
    } else {
        record.remarks.push_back(
            phrase("Run {1} cannot be read as a whole and is left out; 'flowhand runs check' says more.")
                .with(std::to_string(summary.id)));
    }
}

} // namespace

std::string onScreenName() {
    return "on-screen controls";
}

Phrase describe(const PracticeRecord& record) {
    return phrase("{1}, {2}").with(pilotWords(record), rigWords(record));
}

std::optional<PractisedRun> practisedRun(const StoredRun& run, const Flow& flow) {
    if (run.results.size() != flow.steps.size())
        return std::nullopt;
    PractisedRun practised;
    practised.id = run.summary.id;
    practised.startedUnixMillis = run.summary.startedUnixMillis;
    practised.length = run.summary.length;
    practised.flow.aircraftFolder = run.header.aircraftFolder;
    practised.flow.flowId = run.header.flowId;
    practised.flowTitle = run.header.flowTitle;
    practised.help = run.header.help;
    practised.milliPoints = run.score.milliPoints;
    practised.isPassed = run.score.isPassed;
    practised.whyNotPassed = run.score.whyNotPassed;
    practised.pace = run.score.pace;
    practised.isComplete = true;
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        if (!counts(flow.steps[i], run.results[i]))
            continue;
        StepTry step{flow.steps[i].id, flow.steps[i].title, {}};
        for (const LedgerLine& line : run.score.ledger) {
            const Phrase mistake = line.step == static_cast<int>(i) ? mistakeOf(line) : Phrase();
            if (!mistake.isEmpty() &&
                std::find(step.mistakes.begin(), step.mistakes.end(), mistake) == step.mistakes.end())
                step.mistakes.push_back(mistake);
            if (line.step == static_cast<int>(i) &&
                (line.what == LossKind::NotDone || line.what == LossKind::Uncertain))
                practised.isComplete = false;
        }
        practised.steps.push_back(std::move(step));
    }
    return practised;
}

Result<PracticeRecord> practiceRecord(const std::string& storeFile, const PracticeWish& wish) {
    Result<Outcomes> outcomes = Outcomes::open(storeFile);
    if (!outcomes)
        return tl::unexpected(outcomes.error());
    Result<std::vector<RunSummary>> summaries = outcomes->runs();
    const Result<std::set<std::int64_t>> scripted = outcomes->scripted();
    if (!summaries || !scripted)
        return tl::unexpected(summaries ? scripted.error() : summaries.error());
    keepPractice(*summaries, *scripted);
    PracticeRecord record;
    record.isEveryPilot = wish.isEveryPilot;
    record.isEveryRig = wish.isEveryRig;
    record.lines = linesOf(*summaries);
    if (record.lines.empty())
        return record;
    Result<PracticeLine> line = chosenLine(record.lines, wish);
    if (!line)
        return tl::unexpected(line.error());
    record.line = std::move(*line);
    FlownFlows flows;
    for (const RunSummary& summary : *summaries)
        if (isOfRecord(summary, record))
            takeRun(*outcomes, summary, flows, record);
    std::stable_sort(record.runs.begin(), record.runs.end(), [](const PractisedRun& a, const PractisedRun& b) {
        return std::pair(a.startedUnixMillis, a.id) < std::pair(b.startedUnixMillis, b.id);
    });
    record.line.runs = static_cast<std::int64_t>(record.runs.size());
    return record;
}

} // namespace flowhand
