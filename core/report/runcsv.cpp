#include "report/runcsv.h"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <string_view>

namespace flowhand {

namespace {

constexpr std::array<std::string_view, 3> kActors = {"hand", "partner", "machine"};
constexpr std::array<std::string_view, 5> kOrigins = {"device", "script", "screen", "practice aircraft", "feed"};

/// A spreadsheet takes a cell that begins so for a formula, and runs it.
bool looksLikeFormula(std::string_view text) {
    return !text.empty() && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos;
}

class CsvWriter {
public:
    void head(const char* names) { m_csv += std::string(names) + "\r\n"; }

    void text(std::string_view text) {
        separate();
        const bool isFormula = looksLikeFormula(text);
        if (!isFormula && text.find_first_of(",\"\r\n") == std::string_view::npos) {
            m_csv += text;
            return;
        }
        m_csv += isFormula ? "\"'" : "\"";
        for (const char letter : text)
            m_csv += letter == '"' ? std::string("\"\"") : std::string(1, letter);
        m_csv += '"';
    }

    void number(double number) {
        separate();
        char text[40];
        // The fewest digits that give it back.
        for (int digits = 6; digits <= 17; ++digits) {
            std::snprintf(text, sizeof text, "%.*g", digits, number);
            if (std::strtod(text, nullptr) == number)
                break;
        }
        m_csv += text;
    }

    void time(Time time) {
        separate();
        char text[40];
        const std::int64_t micros = std::chrono::floor<std::chrono::microseconds>(time).count();
        std::snprintf(text, sizeof text, "%s%lld.%06lld", micros < 0 ? "-" : "",
                      static_cast<long long>(std::llabs(micros) / 1'000'000),
                      static_cast<long long>(std::llabs(micros) % 1'000'000));
        m_csv += text;
    }

    void value(const Signal& signal, Value value) {
        if (!value.isKnown())
            text("");
        else if (signal.kind == SignalKind::Number)
            number(value.number());
        else
            text(valueText(signal, value));
    }

    void end() {
        m_csv += "\r\n";
        m_isFirst = true;
    }

    std::string take() { return std::move(m_csv); }

private:
    void separate() {
        if (!m_isFirst)
            m_csv += ',';
        m_isFirst = false;
    }

    std::string m_csv;
    bool m_isFirst = true;
};

std::string_view controlName(const ReviewedRun& run, ControlId control) {
    const std::vector<std::string>& names = run.header.controlNames;
    const auto index = static_cast<std::size_t>(control);
    return control != kNoControl && index < names.size() ? std::string_view(names[index]) : std::string_view();
}

void writeSignal(CsvWriter& csv, const ReviewedRun& run, const Event& event) {
    if (event.signal == kNoSignal) {
        csv.text("");
        csv.text("");
        csv.text("");
        return;
    }
    const Signal& signal = run.aircraft.signals[event.signal];
    csv.text(signal.name);
    csv.value(signal, event.value);
    csv.text(signal.unit.symbol);
}

} // namespace

std::string eventsCsv(const ReviewedRun& run) {
    CsvWriter csv;
    csv.head("time_s,event,step,guard,signal,value,unit,control,margin,margin_unit,by,text");
    for (const Event& event : run.events) {
        csv.time(event.time);
        csv.text(nameOf(event.kind));
        csv.text(event.step >= 0 ? std::string_view(run.flow.steps[static_cast<std::size_t>(event.step)].id)
                                 : std::string_view());
        csv.text(event.guard >= 0 ? std::string_view(run.flow.guards[static_cast<std::size_t>(event.guard)].id)
                                  : std::string_view());
        writeSignal(csv, run, event);
        csv.text(controlName(run, event.control));
        if (event.margin)
            csv.number(*event.margin);
        else
            csv.text("");
        csv.text(event.margin && event.marginSignal != kNoSignal
                     ? std::string_view(run.aircraft.signals[event.marginSignal].unit.symbol)
                     : std::string_view());
        csv.text(event.by);
        csv.text(event.text.english());
        csv.end();
    }
    return csv.take();
}

std::string signalsCsv(const ReviewedRun& run, const std::vector<Sample>& samples) {
    CsvWriter csv;
    csv.head("time_s,signal,value,unit,actor,origin,control");
    for (const Sample& sample : samples) {
        if (indexOf(sample.signal) >= run.aircraft.signals.size())
            continue;
        const Signal& signal = run.aircraft.signals[sample.signal];
        csv.time(sample.time);
        csv.text(signal.name);
        csv.value(signal, sample.value);
        csv.text(signal.unit.symbol);
        csv.text(kActors[static_cast<std::size_t>(sample.actor)]);
        csv.text(kOrigins[static_cast<std::size_t>(sample.origin)]);
        csv.text(controlName(run, sample.control));
        csv.end();
    }
    return csv.take();
}

} // namespace flowhand
