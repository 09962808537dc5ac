#include "report/progresstext.h"

#include <cmath>
#include <cstdio>
#include <utility>

#include "base/figuretext.h"
#include "report/debrief.h"
#include "report/findings.h"
#include "report/texttable.h"

namespace flowhand {

namespace {

constexpr std::size_t kWidest = 100;
constexpr std::size_t kShownSteps = 5; ///< of a flow; the rest seldom goes wrong

class Page {
public:
    Page(const PracticeRecord& record, const Progress& progress, const FlowName* only)
        : m_record(record), m_progress(progress), m_only(only) {}

    std::string text() {
        paragraph("Progress of " + describe(m_record).english() + ": " + std::to_string(m_record.line.runs) +
                  (m_record.line.runs == 1 ? " run." : " runs.") +
                  (m_record.simulatedRuns > 0
                       ? " Of these, with simulated input: " + std::to_string(m_record.simulatedRuns) + "."
                       : std::string()));
        for (const Phrase& remark : m_record.remarks)
            paragraph(remark.english());
        if (m_only == nullptr)
            addPlan();
        for (const FlowProgress& flow : m_progress.flows)
            if (m_only == nullptr || flow.flow == *m_only)
                addFlow(flow);
        addOthers();
        m_text += '\n';
        paragraph(kTrainingNote);
        return m_text;
    }

private:
    void paragraph(const std::string& words, const std::string& indent = {}) {
        for (const std::string& line : wrapped(words, kWidest - indent.size()))
            m_text += indent + line + '\n';
    }

    void addPlan() {
        m_text += "\nToday\n";
        if (!m_progress.plan.later.isEmpty())
            paragraph(m_progress.plan.later.english(), "  ");
        int number = 0;
        for (const PlannedFlow& flow : m_progress.plan.today)
            paragraph(std::to_string(++number) + ". " + flow.title + ". " + flow.reason.english(), "  ");
        std::string ahead = "Due today and on the days after, each flown and passed on its day:";
        for (const int flows : m_progress.plan.ahead)
            ahead += " " + std::to_string(flows);
        paragraph(ahead + ".", "  ");
        paragraph(forgettingNote().english(), "  ");
    }

    void addFlow(const FlowProgress& flow) {
        m_text += "\n" + flow.title + " (" + flow.flow.aircraftFolder + "/" + flow.flow.flowId + ")\n";
        std::vector<std::vector<std::string>> rows;
        for (const ProgressPoint& point : flow.points)
            rows.push_back({std::to_string(point.run), wallTime(point.startedUnixMillis), pointsText(point.milliPoints),
                            point.isPassed ? "passed" : "not passed",
                            point.isComplete && point.pace > Duration{} ? clockText(point.pace) : "", point.help});
        m_text += textTable({{"run", 6, true},
                             {"started", 16, false},
                             {"points", 8, true},
                             {"", 10, false},
                             {"pace", 8, true},
                             {"help", 16, false}},
                            rows, "  ");
        if (flow.pointsPerRun)
            paragraph("Score: " + scoreTrendText(*flow.pointsPerRun).english() + ".", "  ");
        if (flow.secondsPerRun)
            paragraph("Pace: " + paceTrendText(*flow.secondsPerRun).english() + ".", "  ");
        if (flow.curve)
            paragraph("Learning curve: " + curveText(*flow.curve, static_cast<int>(flow.points.size()) + 1).english() +
                          ".",
                      "  ");
        addSteps(flow);
    }

    void addSteps(const FlowProgress& flow) {
        if (flow.steps.empty())
            return;
        m_text += "  Goes wrong, in the last " + std::to_string(std::min(flow.points.size(), kRunsForRates)) +
                  (flow.points.size() == 1 ? " run:\n" : " runs:\n");
        for (std::size_t i = 0; i < std::min(flow.steps.size(), kShownSteps); ++i) {
            const StepRate& step = flow.steps[i];
            std::string words = step.title + ", " + rateText(step.wrong, step.runs).english() + ": ";
            for (const Instead& instead : step.instead)
                words += (&instead == &step.instead.front() ? "" : "; ") + instead.words.english() +
                         (step.wrong == 1 ? "" : " (" + std::to_string(instead.runs) + ")");
            paragraph(words, "    ");
        }
    }

    void addOthers() {
        if (m_record.lines.size() < 2 || (m_record.isEveryPilot && m_record.isEveryRig))
            return;
        m_text += "\nThere are runs of others too; --pilot, --rig, --all-pilots and --all-rigs choose:\n";
        for (const PracticeLine& line : m_record.lines) {
            PracticeRecord other;
            other.line = line;
            paragraph(describe(other).english() + ": " + std::to_string(line.runs) +
                          (line.runs == 1 ? " run" : " runs"),
                      "  ");
        }
    }

    const PracticeRecord& m_record;
    const Progress& m_progress;
    const FlowName* m_only;
    std::string m_text;
};

/// `up` and `down` name how much it is.
Phrase changeText(double change, Phrase up, Phrase down) {
    const std::string size = toTenths(std::abs(change));
    if (size == "0.0")
        return phrase("the same from run to run");
    return std::move(change > 0.0 ? up : down).with(size);
}

} // namespace

std::string progressText(const PracticeRecord& record, const Progress& progress, const FlowName* flow) {
    return Page(record, progress, flow).text();
}

Phrase rateText(int part, int whole) {
    return phrase("{1} of {2}").with(std::to_string(part), std::to_string(whole));
}

Phrase scoreTrendText(double pointsPerRun) {
    return changeText(pointsPerRun, phrase("{1} points better a run"), phrase("{1} points worse a run"));
}

Phrase paceTrendText(double secondsPerRun) {
    return changeText(secondsPerRun, phrase("{1} s slower a run"), phrase("{1} s quicker a run"));
}

Phrase curveText(const LearningCurve& curve, int nextTry) {
    char off[32];
    std::snprintf(off, sizeof off, "%.0f", 100.0 * std::expm1(curve.residual));
    if (curve.rate <= 0.0)
        return phrase("{1} through {2} runs, typically {3} % of the time off; it shows no gain yet")
            .with(nameOf(curve.kind), std::to_string(curve.tries), off);
    return phrase("{1} through {2} runs, typically {3} % of the time off; the next run about {4} s")
        .with(nameOf(curve.kind), std::to_string(curve.tries), off, toTenths(curve.secondsAt(nextTry)));
}

} // namespace flowhand
