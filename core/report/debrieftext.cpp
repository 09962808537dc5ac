#include <algorithm>
#include <utility>

#include "base/names.h"
#include "report/debrief.h"
#include "report/findings.h"
#include "report/notelines.h"
#include "report/texttable.h"

namespace flowhand {

namespace {

constexpr std::size_t kWidth = 100;
constexpr char kIndent[] = "  ";

class TextWriter {
public:
    explicit TextWriter(const DebriefInput& input) : m_input(input), m_findings(findingsOf(input)) {}

    std::string write() {
        writeHead();
        writeResult();
        writeRejudgement();
        writeLedger();
        writeSteps();
        writeManner();
        writeGuards();
        writeExtras();
        writeRepairs();
        writeNotes();
        if (!m_findings.remarks.empty())
            title("Remarks");
        for (const Phrase& remark : m_findings.remarks)
            paragraph(remark.english(), "- ");
        m_text += "\n";
        paragraph(kTrainingNote, "");
        return std::move(m_text);
    }

private:
    void title(const std::string& text) { m_text += "\n" + text + "\n"; }

    void paragraph(const std::string& text, const std::string& mark) {
        const std::string indent = mark.empty() ? "" : kIndent;
        const std::size_t room = kWidth - indent.size() - mark.size();
        bool isFirst = true;
        for (const std::string& line : wrapped(text, room)) {
            m_text += indent + (isFirst ? mark : std::string(mark.size(), ' ')) + line + "\n";
            isFirst = false;
        }
    }

    void writeHead() {
        const RunHeader& header = m_input.header;
        paragraph(m_input.flow.title + ", " + m_input.aircraft.title, "");
        std::string line = m_input.runId > 0 ? "Run " + std::to_string(m_input.runId) : "Not stored";
        line += ", " + wallTime(header.startedUnixMillis);
        if (!header.pilot.empty())
            line += ", " + header.pilot;
        line += header.rigTitle.empty() ? ", without a rig" : ", rig: " + header.rigTitle;
        paragraph(line, "");
    }

    void writeResult() {
        const Score& score = m_input.score;
        m_text += "\n";
        if (!score.isScored) {
            paragraph(
                "No score: " +
                    (score.whyNotPassed.isEmpty() ? "the run did not come to its end" : score.whyNotPassed.english()) +
                    ".",
                "");
            return;
        }
        std::string points = pointsText(score.milliPoints);
        if (score.upperMilliPoints > score.milliPoints)
            points += " to " + pointsText(score.upperMilliPoints);
        paragraph((score.isPassed ? "PASSED with " : "NOT PASSED with ") + points + " of 100 points" +
                      (score.isPassed ? std::string() : ": " + score.whyNotPassed.english()) + ".",
                  "");
        if (score.upperMilliPoints > score.milliPoints)
            paragraph("The lower number counts: some steps are too close to a control's noise to be sure.", "");
        paragraph("From the first step due to the last one done: " + clockText(score.pace) + ".", "");
        if (m_input.timeline != nullptr)
            paragraph("What went well: " + wentWell(m_input.timeline->run()).english(), "");
    }

    void writeRejudgement() {
        if (m_input.rejudgement == nullptr)
            return;
        const Rejudgement& again = *m_input.rejudgement;
        m_text += "\n";
        if (!again.isCompared) {
            paragraph("Judged from its samples by version " + again.by + ": the record holds no result.", "");
            return;
        }
        const std::string versions = "Judged again by version " + again.by +
                                     (again.otherFlow.empty() ? std::string() : " and the flow " + again.otherFlow) +
                                     " (recorded with " + m_input.header.programVersion + "): ";
        if (again.isSame) {
            paragraph(versions + "the same events, to the byte.", "");
        } else {
            paragraph(versions + pointsText(again.milliPointsBefore) + " points before, " +
                          pointsText(m_input.score.milliPoints) + " now. Events that changed (- before, + now):",
                      "");
            for (const std::string& line : again.gone)
                paragraph(line, "- ");
            for (const std::string& line : again.added)
                paragraph(line, "+ ");
        }
        writeChangedSteps(again);
    }

    void writeChangedSteps(const Rejudgement& again) {
        for (const Phrase& remark : again.remarks)
            paragraph(remark.english(), "");
        if (again.changed.empty())
            return;
        title("Steps that changed (the other: as it was recorded)");
        for (const StepComparison& step : again.changed)
            paragraph(step.title + ": " + changeText(step).english(), "- ");
    }

    void writeLedger() {
        if (!m_input.score.isScored)
            return;
        if (m_findings.ledger.empty()) {
            title("Nothing went wrong.");
            return;
        }
        title("What went wrong, worst first");
        std::vector<std::vector<std::string>> rows;
        for (const LedgerLine& line : m_findings.ledger)
            rows.push_back(
                {pointsText(line.milliPoints), (line.text.isEmpty() ? lossWords(line.what) : line.text).english()});
        m_text += textTable({{"points", 8, true}, {"", kWidth - 12, false}}, rows, kIndent);
    }

    static std::string timeText(const std::optional<Time>& time) { return time ? clockText(*time) : "-"; }

    void writeSteps() {
        std::vector<std::vector<std::string>> rows;
        for (const StepFinding& step : m_findings.steps) {
            std::string margin = step.margin ? numberText(*step.margin) : "";
            if (step.margin && !step.marginUnit.empty())
                margin += " " + step.marginUnit;
            rows.push_back({step.title, timeText(step.due), timeText(step.done), step.verdict.english(),
                            step.by + (step.isSimulated ? " *" : ""), margin,
                            step.milliPoints != 0 ? pointsText(step.milliPoints) : ""});
        }
        title("Steps");
        // With the blanks between them at most 98 characters.
        m_text += textTable({{"step", 27, false},
                             {"due", 7, true},
                             {"done", 7, true},
                             {"how", 12, false},
                             {"by", 17, false},
                             {"margin", 9, true},
                             {"lost", 7, true}},
                            rows, kIndent);
        if (m_findings.isSimulated)
            m_text += std::string(kIndent) + "* simulated: on screen or by scripted hands\n";
    }

    /// Of the steps that were not done straight: when what happened, and what was going on.
    void writeManner() {
        if (m_input.timeline == nullptr)
            return;
        bool isFirst = true;
        for (std::size_t i = 0; i < m_input.timeline->steps().size(); ++i) {
            const StepTimes& times = m_input.timeline->steps()[i];
            if (!times.wrongReach && !times.hesitation && !times.overshoot)
                continue;
            if (std::exchange(isFirst, false))
                title("Not done straight");
            const std::string context = contextText(times.context).english();
            paragraph(m_input.flow.steps[i].title + ": " + timesText(times, m_input.aircraft).english() +
                          (context.empty() ? "" : "; " + context),
                      "- ");
        }
    }

    void writeRepairs() {
        if (m_input.timeline == nullptr || m_input.timeline->repairs().empty())
            return;
        title("Errors, and how long until they were put right");
        for (const Repair& repair : m_input.timeline->repairs())
            paragraph(clockText(repair.time) + " " + repair.text.english() + ": " + repairText(repair).english(), "- ");
    }

    void writeNotes() {
        const std::vector<NoteLine> lines = noteLines(m_input);
        if (lines.empty())
            return;
        title("Notes");
        for (const NoteLine& line : lines) {
            std::string text = line.what.english() + (line.where.isEmpty() ? "" : " at " + line.where.english());
            if (!line.text.empty())
                text += ": " + line.text;
            if (!line.author.empty())
                text += " (" + line.author + ")";
            paragraph(text, "- ");
        }
    }

    void writeGuards() {
        if (m_findings.guards.empty())
            return;
        title("Guards");
        std::vector<std::string> kept;
        for (const GuardFinding& guard : m_findings.guards) {
            if (guard.episodes.empty()) {
                kept.push_back(guard.title);
                continue;
            }
            std::string text = "BROKEN: " + guard.title;
            for (std::size_t i = 0; i < guard.episodes.size(); ++i) {
                const Episode& episode = guard.episodes[i];
                text += (i == 0 ? ", from " : "; from ") + clockText(episode.from) + " to " +
                        (episode.to ? clockText(*episode.to) : "the end");
            }
            paragraph(text, "- ");
        }
        if (!kept.empty())
            paragraph("kept: " + joined(kept, "; "), "- ");
    }

    void writeExtras() {
        if (m_findings.extras.empty())
            return;
        title("Besides the steps");
        for (const ExtraFinding& extra : m_findings.extras)
            paragraph(clockText(extra.time) + " " + extra.text.english() +
                          (extra.isPutBack ? "; put back in time, no loss" : ""),
                      "- ");
    }

    const DebriefInput& m_input;
    Findings m_findings;
    std::string m_text;
};

} // namespace

std::string debriefText(const DebriefInput& input) {
    return TextWriter(input).write();
}

} // namespace flowhand
