#include "report/cards.h"

#include <algorithm>
#include <cmath>

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

constexpr double kMetresPerSecondInKnot = 1852.0 / 3600.0; ///< ISO 80000-3: a nautical mile is 1852 m

std::string spaced(std::string name) {
    for (char& c : name)
        c = c == '_' ? ' ' : c;
    return name;
}

std::string phaseText(const Flow& flow) {
    const auto title = [](const std::string& id) {
        const std::optional<std::size_t> at = findPhase(id);
        return at ? phases()[*at].title.english() : id;
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

std::string poster(const Aircraft& aircraft, const std::vector<Flow>& flows, bool isLinked) {
    std::string html = "<section class=\"card\"><h1>" + escaped(aircraft.title) + "</h1>\n" + trainingNote() +
                       panelSvg(aircraft, nullptr) +
                       "<h2>Flows and checklists, gate to gate</h2>\n<table><thead><tr><th>Phase</th><th>Card</th>"
                       "<th>Kind</th></tr></thead><tbody>\n";
    for (const Flow& flow : flows)
        html +=
            "<tr><td>" + escaped(phaseText(flow)) + "</td><td>" +
            (isLinked ? "<a href=\"#" + escaped(flow.id) + "\">" + escaped(flow.title) + "</a>" : escaped(flow.title)) +
            "</td><td>" + (flow.abnormal ? "Abnormal. " : "") + styleText(flow.style) + "</td></tr>\n";
    return html + "</tbody></table>";
}

const char* kindText(ControlKind kind) {
    switch (kind) {
    case ControlKind::Lever:
        return "lever";
    case ControlKind::GatedLever:
        return "lever with gates";
    case ControlKind::Switch:
        return "switch";
    case ControlKind::Selector:
        return "selector";
    case ControlKind::Button:
        return "button";
    case ControlKind::Wheel:
        return "wheel";
    case ControlKind::Pedal:
        return "pedal";
    case ControlKind::Yoke:
        return "yoke";
    }
    return "";
}

std::string controlTable(const Aircraft& aircraft) {
    std::string html = "<h2>Controls</h2>\n<table><thead><tr><th>Control</th><th>On the panel</th><th>Kind</th>"
                       "<th>Where</th></tr></thead><tbody>\n";
    for (const CockpitControl& control : aircraft.controls)
        html += "<tr><td>" + escaped(aircraft.signals[control.signal].label) + "</td><td>" +
                escaped(control.panelLabel) + "</td><td>" + kindText(control.kind) + "</td><td>" +
                escaped(control.area) + "</td></tr>\n";
    return html + "</tbody></table>";
}

/// "Engine 1 fails, after V1: when on the ground ... 80 in 100 flights."
std::string eventText(const ScenarioEvent& event, const Aircraft& aircraft) {
    std::string text = event.title + ", when " + conditionWords(event.when.condition.text(), aircraft);
    if (event.chance < 1.0)
        text += "; in about " + std::to_string(std::lround(event.chance * 100.0)) + " of 100 flights";
    if (!event.group.empty())
        text += "; at most one of the group '" + event.group + "'";
    if (event.words)
        text += ". " + spaced(event.words->by) + ": \"" + event.words->text + "\"";
    return text;
}

std::vector<std::string> surroundingsOf(const Scenario& scenario) {
    std::vector<std::string> facts;
    if (!scenario.startPlace.empty())
        facts.push_back("Begins at: " + spaced(scenario.startPlace));
    const Surroundings& around = scenario.surroundings;
    if (!around.surface.empty())
        facts.push_back("Surface: " + spaced(around.surface));
    if (around.wind)
        facts.push_back("Wind from " + std::to_string(std::lround(around.wind->from)) + " degrees, " +
                        std::to_string(std::lround(around.wind->speed / kMetresPerSecondInKnot)) + " kt");
    if (around.mass)
        facts.push_back("Mass at the start: " + std::to_string(std::lround(*around.mass)) + " kg");
    return facts;
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

std::string cardHtml(const Aircraft& aircraft, const std::vector<Flow>& flows, const Scenario& scenario) {
    std::string html = "<section class=\"card\"><h1>" + escaped(scenario.title) + "</h1>\n" +
                       paragraph(escaped(aircraft.title + ". Scenario.")) + paragraph(escaped(scenario.summary)) +
                       trainingNote();
    std::vector<std::string> titles, events;
    for (const std::string& id : scenario.flows) {
        const auto flow = std::find_if(flows.begin(), flows.end(), [&](const Flow& each) {
            return each.id == id;
        });
        titles.push_back(flow != flows.end() ? flow->title : id);
    }
    for (const ScenarioEvent& event : scenario.events)
        events.push_back(eventText(event, aircraft));
    html += listed("At the start", surroundingsOf(scenario)) + listed("Flown one after the other", titles) +
            listed("What may happen", events);
    return page(scenario.title, html + "</section>\n");
}

std::string cardHtml(const Aircraft& aircraft, const std::vector<Flow>& flows) {
    return page(aircraft.title, poster(aircraft, flows, false) + controlTable(aircraft) + "</section>\n");
}

std::string cardSetHtml(const AircraftFolder& folder) {
    std::string cards;
    for (const Flow& flow : folder.flows)
        cards += card(*folder.aircraft, flow);
    return page(folder.aircraft->title, poster(*folder.aircraft, folder.flows, true) + "</section>\n" + cards);
}

} // namespace flowhand
