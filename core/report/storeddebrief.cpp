#include "report/storeddebrief.h"

#include <algorithm>
#include <set>
#include <utility>

#include "report/eventlines.h"
#include "review/remap.h"
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

std::vector<std::string> englishLines(const std::vector<std::string>& lines) {
    std::vector<std::string> all;
    for (const std::string& line : lines)
        all.push_back(englishLine(line));
    return all;
}

} // namespace

Result<StoredDebrief> StoredDebrief::of(StoredRun run, const RejudgeWish& wish) {
    StoredDebrief debrief(std::move(run));
    if (const Status read = debrief.readSources(); !read)
        return tl::unexpected(read.error());
    debrief.m_judged->samples = std::make_shared<const SamplesBySignal>(debrief.m_run.samples);
    const bool hasResult = debrief.readRecord();
    if (wish.isWanted || !hasResult)
        debrief.judge(hasResult, wish);
    debrief.layOut();
    return debrief;
}

Result<StoredDebrief> StoredDebrief::open(Store& store, std::int64_t id, const std::string& programVersion) {
    Result<StoredRun> run = store.load(id, SampleForm::BySignal);
    if (!run)
        return tl::unexpected(run.error());
    StoredDebrief debrief(std::move(*run));
    if (const Status read = debrief.readSources(); !read)
        return tl::unexpected(read.error());
    if (!debrief.readRecord()) {
        // It has to be judged, for which the samples are wanted in their order.
        run = store.load(id);
        return run ? of(std::move(*run), {programVersion}) : tl::unexpected(run.error());
    }
    debrief.m_judged->samples = std::make_shared<const SamplesBySignal>(std::move(debrief.m_run.bySignal));
    debrief.layOut();
    return debrief;
}

void StoredDebrief::layOut() {
    m_run.samples = {};
    m_timeline = std::make_unique<Timeline>(reviewed(*m_judged));
}

Status StoredDebrief::readSources() {
    const auto unreadable = [&](const char* what, const Problems& problems) {
        return failure("unreadable-run",
                       "run " + std::to_string(m_run.summary.id) +
                           " cannot be gone through, because this program cannot read its " + what + ": " +
                           (m_run.damage.empty() ? describe(problems.firstError()) : m_run.damage.front()) +
                           "; its samples are kept as they are");
    };
    const RunHeader& header = m_run.header;
    Problems problems;
    std::optional<Aircraft> aircraft =
        parseAircraft(header.aircraftSource, header.aircraftFolder + "/aircraft.toml", problems);
    if (!aircraft)
        return unreadable("aircraft file", problems);
    m_judged->aircraft = std::make_shared<const Aircraft>(std::move(*aircraft));
    std::optional<Flow> flow = parseFlow(header.flowSource, header.flowFile, *m_judged->aircraft, problems);
    if (!flow)
        return unreadable("flow", problems);
    m_judged->flow = std::make_shared<const Flow>(std::move(*flow));
    m_judged->header = std::make_shared<const RunHeader>(header);
    return {};
}

/// The judgement that was recorded; false where there is none that can be read.
bool StoredDebrief::readRecord() {
    if (!m_run.summary.isFinished || m_run.results.size() != m_judged->flow->steps.size())
        return false;
    for (const std::string& line : m_run.eventLines) {
        std::optional<Event> event = parseEvent(line, *m_judged->aircraft, *m_judged->flow);
        if (!event)
            return false;
        m_judged->events.push_back(std::move(*event));
    }
    m_judged->results = m_run.results;
    m_judged->score = m_run.score;
    return true;
}

void StoredDebrief::judge(bool isCompared, const RejudgeWish& wish) {
    Judged again{m_judged->aircraft, m_judged->flow, m_judged->header, m_judged->samples, {}, {}, {}};
    std::vector<Sample> otherSamples;
    Rejudgement rejudgement;
    rejudgement.by = wish.programVersion;
    rejudgement.isCompared = isCompared;
    if (wish.flow) {
        again.aircraft = wish.aircraft;
        again.flow = wish.flow;
        RemappedRecord record = remapped(*m_judged->header, m_run.samples, *m_judged->aircraft, *wish.aircraft);
        again.header = std::make_shared<const RunHeader>(std::move(record.header));
        again.samples = std::make_shared<const SamplesBySignal>(record.samples);
        otherSamples = std::move(record.samples);
        rejudgement.otherFlow = wish.flow->file;
        rejudgement.remarks = std::move(record.remarks);
    }
    JudgedRun judgement = judgeAgain(*again.aircraft, *again.flow, again.header->setup,
                                     wish.flow ? otherSamples : m_run.samples, m_run.commands, m_run.summary.length);
    again.events = std::move(judgement.events);
    again.results = std::move(judgement.results);
    again.score = std::move(judgement.score);
    const auto isStart = [](const Event& event) {
        return event.kind == EventKind::RunStarted || event.kind == EventKind::Jumped;
    };
    if (wish.flow && std::none_of(again.events.begin(), again.events.end(), isStart))
        rejudgement.remarks.push_back(
            phrase("By this flow the run would not have begun: the controls did not stand as its start wants them."));
    if (isCompared) {
        const std::vector<std::string> now = englishLines(judgement.lines);
        const std::vector<std::string> before = englishLines(m_run.eventLines);
        rejudgement.isSame = now == before;
        rejudgement.gone = missingFrom(now, before);
        rejudgement.added = missingFrom(before, now);
        rejudgement.milliPointsBefore = m_judged->score.milliPoints;
        if (!rejudgement.isSame)
            rejudgement.changed = changedSteps(compareRuns(Timeline(reviewed(again)), Timeline(reviewed(*m_judged))));
    }
    m_rejudgement = std::move(rejudgement);
    *m_judged = std::move(again);
}

ReviewedRun StoredDebrief::reviewed(const Judged& judged) const {
    return {*judged.flow,   *judged.aircraft, *judged.header,       *judged.samples, judged.events,
            judged.results, judged.score,     m_run.summary.length, m_run.missing};
}

DebriefInput StoredDebrief::input() const {
    DebriefInput input{*m_judged->flow, *m_judged->aircraft, *m_judged->header,
                       m_judged->score, m_judged->results,   m_judged->events};
    input.runId = m_run.summary.id;
    input.isCutOff = !m_run.summary.isFinished;
    input.damage = m_run.damage;
    input.rejudgement = m_rejudgement ? &*m_rejudgement : nullptr;
    input.losses = m_run.losses;
    input.notes = &m_run.notes;
    input.timeline = m_timeline.get();
    return input;
}

} // namespace flowhand
