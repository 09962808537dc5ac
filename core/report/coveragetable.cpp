#include "report/coveragetable.h"

#include <algorithm>
#include <vector>

#include <nlohmann/json.hpp>

#include "base/names.h"
#include "report/texttable.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;
constexpr const char* kIndent = "  ";

/// "seen working 2026-03-01", "wired, stale".
std::string stateText(const CoveredControl& control) {
    std::string text = proofText(control.proof);
    if (!control.date.empty())
        text += " " + control.date.substr(0, 10);
    if (control.isStale)
        text += "; changed since " + control.staleDate.substr(0, 10) + ", so prove it anew";
    if (!control.failedDate.empty())
        text += "; the walk of " + control.failedDate.substr(0, 10) + " did not confirm it";
    return text;
}

std::string stateText(const CoveredStep& step) {
    if (!step.isConfirmable())
        return "cannot be confirmed";
    if (step.needed.empty())
        return "needs no control";
    return std::string(proofText(step.proof)) + (step.isStale ? ", stale" : "");
}

class Writer {
public:
    explicit Writer(const CoverageTable& table) : m_table(table) {}

    std::string text() {
        writeHead();
        writeObstacles();
        writeSteps();
        writeControls();
        writeOrphans();
        return m_text;
    }

private:
    [[nodiscard]] const Flow& flow(const CoveredStep& step) const { return *m_table.input.flows[step.flow]; }
    [[nodiscard]] const std::string& label(SignalId id) const { return m_table.input.aircraft.signals[id].label; }

    void writeHead() {
        const std::vector<CoveredStep>& steps = m_table.coverage.steps;
        const auto good = std::count_if(steps.begin(), steps.end(), [](const CoveredStep& step) {
            return step.isConfirmable();
        });
        const auto idle = std::count_if(steps.begin(), steps.end(), [](const CoveredStep& step) {
            return step.needed.empty();
        });
        m_text += m_table.rigTitle + ", " + m_table.input.aircraft.title + ": " + std::to_string(good) + " of " +
                  std::to_string(steps.size()) + " steps can be confirmed with this rig" +
                  (idle > 0 ? "; " + std::to_string(idle) + " of them need no control" : std::string()) + ".\n";
    }

    void writeObstacles() {
        if (m_table.coverage.isComplete())
            return;
        m_text += "\nCannot be confirmed with this rig\n";
        std::vector<std::vector<std::string>> rows;
        for (const CoveredStep& step : m_table.coverage.steps)
            for (const Obstacle& obstacle : step.obstacles)
                rows.push_back({flow(step).id, flow(step).steps[step.step].title, obstacle.text.english()});
        m_text += textTable({{"flow", 20}, {"step", 34}, {"why", 60}}, rows, kIndent);
    }

    void writeSteps() {
        m_text += "\nSteps\n";
        std::vector<std::vector<std::string>> rows;
        for (const CoveredStep& step : m_table.coverage.steps) {
            std::vector<std::string> labels;
            for (const SignalId id : step.needed)
                labels.push_back(label(id));
            rows.push_back({flow(step).id, flow(step).steps[step.step].title, joined(labels, ", "), stateText(step)});
        }
        m_text += textTable({{"flow", 20}, {"step", 40}, {"controls", 40}, {"state", 24}}, rows, kIndent);
    }

    void writeControls() {
        m_text += "\nControls\n";
        std::vector<std::vector<std::string>> rows;
        for (const CoveredControl& control : m_table.coverage.controls)
            if (control.stepCount > 0 || control.proof != Proof::Unwired)
                rows.push_back({label(control.signal), control.wiredTo, control.inputs, stateText(control),
                                noiseText(control), std::to_string(control.stepCount)});
        m_text += textTable({{"control", 24},
                             {"wired as", 24},
                             {"input", 24},
                             {"state", 32},
                             {"noise (1 sigma)", 20},
                             {"steps", 5, true}},
                            rows, kIndent);
    }

    /// Whence it is known as well: what the coverage rests on.
    [[nodiscard]] std::string noiseText(const CoveredControl& control) const {
        if (control.sigma <= 0)
            return {};
        const Signal& signal = m_table.input.aircraft.signals[control.signal];
        return valueText(signal, Value::number(control.sigma)) +
               (control.noiseDate.empty() ? std::string(", rig file") : ", " + control.noiseDate.substr(0, 10));
    }

    void writeOrphans() {
        if (m_table.coverage.orphans.empty())
            return;
        std::vector<std::string> labels;
        for (const SignalId id : m_table.coverage.orphans)
            labels.push_back(label(id));
        m_text += "\nWired, but no step of these flows needs it: " + joined(labels, ", ") + ".\n";
    }

    const CoverageTable& m_table;
    std::string m_text;
};

std::string csvField(const std::string& text) {
    if (text.find_first_of("\",\r\n") == std::string::npos)
        return text;
    std::string quoted = "\"";
    for (const char c : text)
        quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + "\"";
}

std::string csvLine(const std::vector<std::string>& fields) {
    std::string line;
    for (const std::string& field : fields)
        line += (&field == &fields.front() ? "" : ",") + csvField(field);
    return line + "\r\n";
}

/// Obstacles of one control; of no control: all of them.
std::string reasonsFor(const CoveredStep& step, SignalId id) {
    std::vector<std::string> reasons;
    for (const Obstacle& obstacle : step.obstacles)
        if (id == kNoSignal || obstacle.signal == id)
            reasons.push_back(obstacle.text.english());
    return joined(reasons, "; ");
}

Json jsonOf(const CoveredControl& control, const SignalTable& signals) {
    return {{"signal", signals[control.signal].name},
            {"label", signals[control.signal].label},
            {"wired_as", control.wiredTo},
            {"inputs", control.inputs},
            {"state", proofText(control.proof)},
            {"date", control.date},
            {"stale", control.isStale},
            {"stale_since", control.staleDate},
            {"walk_failed", control.failedDate},
            {"noise", control.sigma},
            {"noise_from", control.sigma <= 0          ? ""
                           : control.noiseDate.empty() ? "rig file"
                                                       : control.noiseDate},
            {"steps", control.stepCount}};
}

} // namespace

std::string coverageText(const CoverageTable& table) {
    return Writer(table).text();
}

std::string coverageCsv(const CoverageTable& table) {
    const SignalTable& signals = table.input.aircraft.signals;
    std::string csv = csvLine({"flow", "step", "title", "control", "label", "wired_as", "inputs", "state", "date",
                               "stale", "confirmable", "why"});
    for (const CoveredStep& step : table.coverage.steps) {
        const Flow& flow = *table.input.flows[step.flow];
        const std::string& id = flow.steps[step.step].id;
        const std::string& title = flow.steps[step.step].title;
        if (step.needed.empty())
            csv += csvLine({flow.id, id, title, "", "", "", "", "", "", "", "yes", ""});
        for (const SignalId needed : step.needed) {
            const CoveredControl& control = table.coverage.controls[indexOf(needed)];
            const std::string why = reasonsFor(step, needed);
            csv += csvLine({flow.id, id, title, signals[needed].name, signals[needed].label, control.wiredTo,
                            control.inputs, proofText(control.proof), control.date, control.isStale ? "yes" : "no",
                            why.empty() ? "yes" : "no", why});
        }
    }
    return csv;
}

std::string coverageJson(const CoverageTable& table) {
    const SignalTable& signals = table.input.aircraft.signals;
    Json json{{"rig", table.rigTitle},
              {"aircraft", table.input.aircraft.folder},
              {"complete", table.coverage.isComplete()},
              {"proven", table.coverage.isProven()}};
    json["steps"] = Json::array();
    for (const CoveredStep& step : table.coverage.steps) {
        const Flow& flow = *table.input.flows[step.flow];
        Json controls = Json::array();
        for (const SignalId id : step.needed)
            controls.push_back(signals[id].name);
        Json obstacles = Json::array();
        for (const Obstacle& obstacle : step.obstacles)
            obstacles.push_back({{"code", obstacle.code},
                                 {"control", signals[obstacle.signal].name},
                                 {"text", obstacle.text.english()}});
        json["steps"].push_back({{"flow", flow.id},
                                 {"step", flow.steps[step.step].id},
                                 {"title", flow.steps[step.step].title},
                                 {"controls", controls},
                                 {"state", step.needed.empty() ? "needs no control" : proofText(step.proof)},
                                 {"stale", step.isStale},
                                 {"confirmable", step.isConfirmable()},
                                 {"obstacles", obstacles}});
    }
    json["controls"] = Json::array();
    for (const CoveredControl& control : table.coverage.controls)
        json["controls"].push_back(jsonOf(control, signals));
    json["orphans"] = Json::array();
    for (const SignalId id : table.coverage.orphans)
        json["orphans"].push_back(signals[id].name);
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace flowhand
