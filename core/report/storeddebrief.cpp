#include "report/storeddebrief.h"

#include <set>
#include <utility>

#include "report/eventlines.h"
#include "session/replay.h"

namespace flowhand {

namespace {

/// Lines of `all` that `others` does not have, each as often as it has it more.
std::vector<std::string> missingFrom(const std::vector<std::string>& others, const std::vector<std::string>& all) {
    std::multiset<std::string> there(others.begin(), others.end());
    std::vector<std::string> missing;
    for (const std::string& line : all) {
        const auto at = there.find(line);
        if (at == there.end())
            missing.push_back(line);
        else
            there.erase(at);
    }
    return missing;
}

} // namespace

StoredDebrief::StoredDebrief(StoredRun run, std::unique_ptr<Aircraft> aircraft, std::unique_ptr<Flow> flow)
    : m_run(std::move(run)), m_aircraft(std::move(aircraft)), m_flow(std::move(flow)) {}

Result<StoredDebrief> StoredDebrief::of(StoredRun run, bool isJudgedAgain, const std::string& programVersion) {
    const RunHeader& header = run.header;
    Problems problems;
    std::optional<Aircraft> aircraft =
        parseAircraft(header.aircraftSource, header.aircraftFolder + "/aircraft.toml", problems);
    if (!aircraft)
        return failure("unreadable-run",
                       "run " + std::to_string(run.summary.id) +
                           " cannot be gone through, because this program cannot read its aircraft file: " +
                           (run.damage.empty() ? describe(problems.firstError()) : run.damage.front()) +
                           "; its samples are kept as they are");
    auto keptAircraft = std::make_unique<Aircraft>(std::move(*aircraft));
    std::optional<Flow> flow = parseFlow(header.flowSource, header.flowFile, *keptAircraft, problems);
    if (!flow)
        return failure("unreadable-run",
                       "run " + std::to_string(run.summary.id) +
                           " cannot be gone through, because this program cannot read its flow: " +
                           (run.damage.empty() ? describe(problems.firstError()) : run.damage.front()) +
                           "; its samples are kept as they are");
    StoredDebrief debrief(std::move(run), std::move(keptAircraft), std::make_unique<Flow>(std::move(*flow)));
    const bool hasResult = debrief.m_run.summary.isFinished &&
                           debrief.m_run.results.size() == debrief.m_flow->steps.size() && debrief.readEvents();
    if (isJudgedAgain || !hasResult)
        debrief.judge(hasResult, programVersion);
    return debrief;
}

bool StoredDebrief::readEvents() {
    for (const std::string& line : m_run.eventLines) {
        std::optional<Event> event = parseEvent(line, *m_aircraft, *m_flow);
        if (!event)
            return false;
        m_events.push_back(std::move(*event));
    }
    return true;
}

void StoredDebrief::judge(bool isCompared, const std::string& programVersion) {
    JudgedRun judgement =
        judgeAgain(*m_aircraft, *m_flow, m_run.header.setup, m_run.samples, m_run.commands, m_run.summary.length);
    Rejudgement rejudgement;
    rejudgement.by = programVersion;
    rejudgement.isCompared = isCompared;
    if (isCompared) {
        rejudgement.isSame = judgement.lines == m_run.eventLines;
        rejudgement.gone = missingFrom(judgement.lines, m_run.eventLines);
        rejudgement.added = missingFrom(m_run.eventLines, judgement.lines);
        rejudgement.milliPointsBefore = m_run.score.milliPoints;
    }
    m_rejudgement = std::move(rejudgement);
    m_events = std::move(judgement.events);
    m_run.score = std::move(judgement.score);
    m_run.results = std::move(judgement.results);
}

DebriefInput StoredDebrief::input() const {
    return {*m_flow,          *m_aircraft,
            m_run.header,     m_run.score,
            m_run.results,    m_events,
            m_run.summary.id, !m_run.summary.isFinished,
            m_run.damage,     m_rejudgement ? &*m_rejudgement : nullptr,
            m_run.losses};
}

} // namespace flowhand
