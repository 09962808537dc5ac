#include "report/debriefhtml.h"

#include "base/names.h"
#include "report/findings.h"
#include "report/html.h"
#include "report/notelines.h"
#include "report/timelinesvg.h"

namespace flowhand {

namespace {

constexpr const char* kStyle = R"(
.picture { width: 100%; height: auto; break-inside: avoid; margin: 1mm 0; }
.t { font: 15px "Noto Sans", "DejaVu Sans", sans-serif; fill: #111; } .b { font-weight: 600; }
.result { font-size: 13pt; font-weight: 600; } .number { text-align: right; white-space: nowrap; }
)";

constexpr std::size_t kMostPlots = 14;

class Page {
public:
    explicit Page(const DebriefInput& input) : m_input(input), m_findings(findingsOf(input)) {}

    std::string html() {
        m_html = "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Debrief: " +
                 escaped(m_input.flow.title) +
                 "</title><meta name=\"viewport\" content=\"width=device-width\"><style>" + std::string(kPageStyle) +
                 kStyle + "</style></head><body>\n";
        writeHead();
        writeResult();
        writeLedger();
        writeNotes();
        writePictures();
        writeSteps();
        writeManner();
        writeRest();
        writeCautions();
        m_html += "</body></html>\n";
        return std::move(m_html);
    }

private:
    void title(const std::string& text) { m_html += "<h2>" + escaped(text) + "</h2>\n"; }
    void item(const std::string& text) { m_html += "<li>" + escaped(text) + "</li>\n"; }

    void writeHead() {
        const RunHeader& header = m_input.header;
        m_html += "<h1>Debrief: " + escaped(m_input.flow.title) + "</h1>\n<table class=\"facts\">";
        const auto fact = [&](const char* what, const std::string& value) {
            if (!value.empty())
                m_html += std::string("<tr><td>") + what + "</td><td>" + escaped(value) + "</td></tr>";
        };
        fact("Aircraft", m_input.aircraft.title);
        fact("Flown", wallTime(header.startedUnixMillis) +
                          (m_input.runId > 0 ? ", run " + std::to_string(m_input.runId) : std::string()));
        fact("Pilot", header.pilot);
        fact("Seat", header.setup.ownSeat + (header.setup.isSolo ? ", alone" : ""));
        fact("Rig", header.rigTitle.empty() ? "none" : header.rigTitle);
        fact("Motion", header.motionSource);
        fact("Program", "version " + header.programVersion);
        m_html += "</table>\n<p class=\"note\">" + escaped(kTrainingNote) +
                  " Its score says how this flow was flown here; it qualifies nobody for anything.</p>\n";
    }

    void writeResult() {
        const Score& score = m_input.score;
        std::string text = "No score";
        if (score.isScored) {
            text = score.isPassed ? "Passed with " : "Not passed with ";
            text += pointsText(score.milliPoints);
            if (score.upperMilliPoints > score.milliPoints)
                text += " to " + pointsText(score.upperMilliPoints);
            text += " of 100 points";
        }
        if (!score.whyNotPassed.isEmpty())
            text += ": " + score.whyNotPassed.english();
        m_html += "<p class=\"result\">" + escaped(text) + ".</p>\n";
        if (m_input.timeline != nullptr)
            m_html += "<p>What went well: " + escaped(wentWell(m_input.timeline->run()).english()) + "</p>\n";
        if (score.isScored)
            m_html += "<p>From the first step due to the last one done: " + clockText(score.pace) + ".</p>\n";
        if (m_input.rejudgement != nullptr)
            m_html += "<p>Judged from its samples by version " + escaped(m_input.rejudgement->by) + ".</p>\n";
    }

    void writeLedger() {
        if (!m_input.score.isScored)
            return;
        title(m_findings.ledger.empty() ? "Nothing went wrong" : "What went wrong, worst first");
        if (m_findings.ledger.empty())
            return;
        m_html += "<table><thead><tr><th class=\"number\">Points</th><th>What</th></tr></thead><tbody>\n";
        for (const LedgerLine& line : m_findings.ledger)
            m_html += "<tr><td class=\"number\">" + pointsText(line.milliPoints) + "</td><td>" +
                      escaped((line.text.isEmpty() ? lossWords(line.what) : line.text).english()) + "</td></tr>\n";
        m_html += "</tbody></table>\n";
    }

    void writeNotes() {
        const std::vector<NoteLine> lines = noteLines(m_input);
        if (lines.empty())
            return;
        title("Notes");
        m_html += "<ul>\n";
        for (const NoteLine& line : lines) {
            m_html += "<li><b>" + escaped(line.what.english()) + "</b>";
            if (!line.where.isEmpty())
                m_html += " at " + escaped(line.where.english());
            if (!line.text.empty())
                m_html += ": " + escaped(line.text);
            if (!line.author.empty())
                m_html += " <span class=\"small\">(" + escaped(line.author) + ")</span>";
            m_html += "</li>\n";
        }
        m_html += "</ul>\n";
    }

    void writePictures() {
        if (m_input.timeline == nullptr)
            return;
        title("The run along its time");
        m_html += "<p class=\"small\">Bars: steps from due to done; light: in order and on time, dark: done otherwise, "
                  "dashed: not done. Upright stroke: first movement.</p>\n" +
                  lanesSvg(*m_input.timeline) + "\n";
        const std::vector<SignalId> signals = signalsToPlot(*m_input.timeline, kMostPlots);
        if (signals.empty())
            return;
        title("Signals that were judged");
        m_html += "<p class=\"small\">Over the same time. Grey: what a step wanted while it was open.</p>\n";
        for (const SignalId signal : signals)
            m_html += signalSvg(*m_input.timeline, signal) + "\n";
    }

    static std::string timeText(const std::optional<Time>& time) { return time ? clockText(*time) : "\xE2\x80\x93"; }

    [[nodiscard]] const StepTimes* timesOf(std::size_t step) const {
        const bool isThere = m_input.timeline != nullptr && step < m_input.timeline->steps().size();
        return isThere ? &m_input.timeline->steps()[step] : nullptr;
    }

    void writeSteps() {
        title("Steps");
        m_html += "<table><thead><tr><th>Step</th><th class=\"number\">Due</th><th class=\"number\">Moved</th><th "
                  "class=\"number\">Done</th><th>How</th><th>By</th><th class=\"number\">Margin</th><th "
                  "class=\"number\">Lost</th></tr></thead><tbody>\n";
        for (std::size_t i = 0; i < m_findings.steps.size(); ++i) {
            const StepFinding& step = m_findings.steps[i];
            const StepTimes* const times = timesOf(i);
            const std::string context = times != nullptr ? contextText(times->context).english() : std::string();
            std::string margin = step.margin ? numberText(*step.margin) : "";
            if (step.margin && !step.marginUnit.empty())
                margin += " " + step.marginUnit;
            m_html += "<tr><td>" + escaped(step.title) +
                      (context.empty() ? "" : "<div class=\"small\">" + escaped(context) + "</div>") +
                      "</td><td class=\"number\">" + timeText(step.due) + "</td><td class=\"number\">" +
                      timeText(times != nullptr ? times->firstMovement : std::nullopt) + "</td><td class=\"number\">" +
                      timeText(step.done) + "</td><td>" + escaped(step.verdict.english()) + "</td><td>" +
                      escaped(step.by + (step.isSimulated ? " *" : "")) + "</td><td class=\"number\">" +
                      escaped(margin) + "</td><td class=\"number\">" +
                      (step.milliPoints != 0 ? pointsText(step.milliPoints) : "") + "</td></tr>\n";
        }
        m_html += "</tbody></table>\n";
        if (m_findings.isSimulated)
            m_html += "<p class=\"small\">* simulated: on screen or by scripted hands</p>\n";
    }

    void writeManner() {
        std::string items;
        for (std::size_t i = 0; m_input.timeline != nullptr && i < m_input.timeline->steps().size(); ++i) {
            const StepTimes& times = m_input.timeline->steps()[i];
            if (!times.wrongReach && !times.hesitation && !times.overshoot)
                continue;
            const std::string context = contextText(times.context).english();
            items += "<li>" +
                     escaped(m_input.flow.steps[i].title + ": " + timesText(times, m_input.aircraft).english() +
                             (context.empty() ? "" : "; " + context)) +
                     "</li>\n";
        }
        if (items.empty())
            return;
        title("Not done straight");
        m_html += "<ul>\n" + items + "</ul>\n";
    }

    void writeRest() {
        if (!m_findings.guards.empty()) {
            title("Guards");
            m_html += "<ul>\n";
            for (const GuardFinding& guard : m_findings.guards)
                item((guard.episodes.empty() ? "kept: " : "BROKEN: ") + guard.title);
            m_html += "</ul>\n";
        }
        if (m_input.timeline != nullptr && !m_input.timeline->repairs().empty()) {
            title("Errors, and how long until they were put right");
            m_html += "<ul>\n";
            for (const Repair& repair : m_input.timeline->repairs())
                item(clockText(repair.time) + " " + repair.text.english() + ": " + repairText(repair).english());
            m_html += "</ul>\n";
        }
        if (m_findings.remarks.empty())
            return;
        title("Remarks");
        m_html += "<ul>\n";
        for (const Phrase& remark : m_findings.remarks)
            item(remark.english());
        m_html += "</ul>\n";
    }

    void writeCautions() {
        title("Cautions");
        m_html += "<ul>\n";
        item("A step is confirmed from what the controls did. What the eyes looked at, and why, no rig can see.");
        item("The aircraft, the airport and the procedures are invented. Learn to fly from a licensed instructor.");
        item("Scores are comparable between runs of the same flow on the same rig only.");
        m_html += "</ul>\n<p class=\"small\">" + escaped(kTrainingNote) + "</p>\n";
    }

    const DebriefInput& m_input;
    Findings m_findings;
    std::string m_html;
};

} // namespace

std::string debriefHtml(const DebriefInput& input) {
    return Page(input).html();
}

} // namespace flowhand
