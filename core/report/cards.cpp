#include "report/cards.h"

#include "base/names.h"
#include "procedure/conditionwords.h"
#include "procedure/phase.h"
#include "report/debrief.h"
#include "report/html.h"
#include "report/panelsvg.h"

namespace flowhand {

namespace {

/// 12 pt and 14 pt: CAP 676 chapter 7 prefers them for what is read at arm's length (second-hand).
constexpr const char* kCardStyle = R"(
body, td { font-size: 12pt; line-height: 1.35; } th { font-size: 12pt; } h2 { font-size: 14pt; }
.t { font: 18px "Noto Sans", "DejaVu Sans", sans-serif; fill: #111; } .b { font-weight: 600; }
.picture { width: 100%; height: auto; margin: 2mm 0; } .way { break-inside: avoid; }
.cue { width: 37%; } .seat { width: 17%; }
.card { break-after: page; } .card:last-child { break-after: auto; }
.number { text-align: right; width: 9mm; } .box { width: 7mm; font-size: 15pt; line-height: 1; }
.said { font-style: italic; } .critical { font-weight: 700; } .why { color: #333; }
)";

std::string spaced(std::string name) {
    for (char& c : name)
        c = c == '_' ? ' ' : c;
    return name;
}

std::string phaseText(const Flow& flow) {
    const auto title = [](const std::string& id) {
        const std::optional<std::size_t> at = findPhase(id);
        return at ? phases()[*at].title : id;
    };
    return flow.phaseFrom == flow.phaseTo ? title(flow.phaseFrom)
                                          : title(flow.phaseFrom) + " to " + title(flow.phaseTo);
}

const char* styleText(FlowStyle style) {
    switch (style) {
    case FlowStyle::DoThenVerify:
        return "Checklist: done already, now verified";
    case FlowStyle::ReadAndDo:
        return "Checklist: read, then done, item by item";
    case FlowStyle::Flow:
        break;
    }
    return "Flow: from memory";
}

std::string paragraph(const std::string& html, const char* look = "") {
    return std::string("<p") + look + ">" + html + "</p>\n";
}

std::string trainingNote() {
    return paragraph(escaped(kTrainingNote) + " Learn to fly from a licensed instructor.", " class=\"note\"");
}

std::string seatText(const Step& step) {
    std::string text = spaced(step.seat);
    if (!step.orderedBy.empty())
        text += ", ordered by " + spaced(step.orderedBy);
    if (step.movedBy != step.seat)
        text += ", moved by " + spaced(step.movedBy);
    return text;
}

/// What asks for a step: words, a state, or both.
std::string cueHtml(const Step& step, const Aircraft& aircraft) {
    std::string html;
    if (step.when)
        html += "when " + escaped(conditionWords(step.when->condition.text(), aircraft));
    if (step.cue)
        html += (html.empty() ? "" : "; ") + escaped(spaced(step.cue->by)) + ": <span class=\"said\">" +
                escaped(step.cue->text) + "</span>";
    return html;
}

std::string stepRow(const Step& step, const Aircraft& aircraft, std::size_t number, bool isChecklist) {
    std::string html = "<tr><td class=\"number\">" + std::to_string(number) + "</td>";
    if (isChecklist)
        html += "<td class=\"box\">&#9744;</td>";
    html += "<td>" + cueHtml(step, aircraft) + "</td><td";
    html += step.weight == 3 ? " class=\"critical\">" : ">";
    html += escaped(step.title) + (step.weight == 3 ? " (critical)" : "");
    if (!step.reply.empty())
        html += "<br><span class=\"said\">&#8220;" + escaped(step.reply) + "&#8221;</span>";
    html += "</td><td>" + escaped(seatText(step)) + "</td></tr>\n";
    return html;
}

std::string stepTable(const Flow& flow, const Aircraft& aircraft) {
    const bool isChecklist = flow.style != FlowStyle::Flow;
    std::string html = "<table><thead><tr><th class=\"number\">No.</th>";
    html += isChecklist ? "<th></th>" : "";
    html += "<th class=\"cue\">Cue</th><th>Do, and say</th><th class=\"seat\">Seat</th></tr></thead><tbody>\n";
    for (std::size_t i = 0; i < flow.steps.size(); ++i)
        html += stepRow(flow.steps[i], aircraft, i + 1, isChecklist);
    return html + "</tbody></table>\n";
}

std::string listed(const char* head, const std::vector<std::string>& items) {
    if (items.empty())
        return {};
    std::string html = std::string("<h2>") + head + "</h2>\n<ul>";
    for (const std::string& item : items)
        html += "<li>" + escaped(item) + "</li>";
    return html + "</ul>\n";
}

std::string card(const Aircraft& aircraft, const Flow& flow) {
    std::string html = "<section class=\"card\" id=\"" + escaped(flow.id) + "\"><h1>" + escaped(flow.title) + "</h1>\n";
    html += paragraph(escaped(aircraft.title + ". " + styleText(flow.style) + ". " + phaseText(flow) + "."));
    if (flow.abnormal) {
        html += paragraph("<b>Condition:</b> " + escaped(flow.abnormal->condition));
        html += paragraph("<b>Objective:</b> " + escaped(flow.abnormal->objective));
    } else if (!flow.summary.empty()) {
        html += paragraph(escaped(flow.summary));
    }
    html += trainingNote();
    html += stepTable(flow, aircraft);
    std::vector<std::string> never, ends;
    for (const Guard& guard : flow.guards)
        never.push_back(guard.title);
    for (const Outcome& outcome : flow.outcomes)
        ends.push_back(outcome.title);
    html += listed("Never", never);
    html += listed("Ends early with", ends);
    html += "<div class=\"way\"><h2>The way over the cockpit</h2>\n" + panelSvg(aircraft, &flow) + "</div>\n";
    return html + "</section>\n";
}

std::string page(const std::string& title, const std::string& body) {
    return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>" + escaped(title) +
           "</title><meta name=\"viewport\" content=\"width=device-width\"><style>" + kPageStyle + kCardStyle +
           "</style></head><body>\n" + body + "</body></html>\n";
}

} // namespace

std::string cardHtml(const Aircraft& aircraft, const Flow& flow) {
    return page(flow.title, card(aircraft, flow));
}

std::string cardSetHtml(const AircraftFolder& folder) {
    const Aircraft& aircraft = *folder.aircraft;
    std::string poster = "<section class=\"card\"><h1>" + escaped(aircraft.title) + "</h1>\n" + trainingNote() +
                         panelSvg(aircraft, nullptr) +
                         "<h2>Flows and checklists, gate to gate</h2>\n<table><thead><tr><th>Phase</th><th>Card</th>"
                         "<th>Kind</th></tr></thead><tbody>\n";
    std::string cards;
    for (const Flow& flow : folder.flows) {
        poster += "<tr><td>" + escaped(phaseText(flow)) + "</td><td><a href=\"#" + escaped(flow.id) + "\">" +
                  escaped(flow.title) + "</a></td><td>" + (flow.abnormal ? "Abnormal. " : "") + styleText(flow.style) +
                  "</td></tr>\n";
        cards += card(aircraft, flow);
    }
    return page(aircraft.title, poster + "</tbody></table></section>\n" + cards);
}

} // namespace flowhand
