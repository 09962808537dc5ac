#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

#include "condition/judgement.h"
#include "condition/reading.h"

using namespace flowhand;

namespace {

void require(bool isSo) {
    if (!isSo)
        std::abort();
}

struct Bench {
    Bench() {
        const auto add = [&](const char* name, SignalKind kind, const char* unit) {
            Signal signal;
            signal.name = name;
            signal.kind = kind;
            signal.unit = *findUnit(unit);
            signal.highest = kind == SignalKind::Number ? 100.0 : 0.0;
            if (kind == SignalKind::Position)
                signal.positions = {"up", "4", "12"};
            require(table.add(signal).has_value());
        };
        add("x", SignalKind::Number, "kt");
        add("y", SignalKind::Number, "deg");
        add("n", SignalKind::Number, "");
        add("p", SignalKind::OnOff, "");
        add("q", SignalKind::OnOff, "");
        add("g", SignalKind::Position, "");
        values["v"] = {false, "", 20.0, *findUnit("kt")};
        values["d"] = {false, "", 3.0, *findUnit("s")};
        values["w"] = {true, "12", 0.0, {}};
    }
    SignalTable table;
    std::map<std::string, AircraftValue, std::less<>> values;
};

const Bench& bench() {
    static const Bench one;
    return one;
}

std::optional<Condition> compiled(const std::string& text, const SignalTable& table) {
    std::vector<ConditionProblem> problems;
    std::optional<Condition> condition = Condition::compile(text, {table, bench().values}, problems);
    const bool hasError = std::any_of(problems.begin(), problems.end(), [](const auto& one) {
        return !one.isWarning;
    });
    require(condition.has_value() != hasError);
    for (const ConditionProblem& problem : problems)
        require(problem.offset <= text.size() && !problem.message.empty());
    return condition;
}

Value valueOf(SignalKind kind, std::uint8_t byte) {
    if (byte == 0)
        return Value::unknown();
    if (kind == SignalKind::OnOff)
        return Value::onOff(byte % 2 == 0);
    return Value::number(kind == SignalKind::Position ? byte % 4 - 1 : byte == 255 ? HUGE_VAL : byte - 100);
}

/// Three bytes a change: which signal and what else is done, its value, and how much later.
void watch(const Condition& condition, const std::string& changes) {
    Monitor monitor(bench().table);
    const MonitorId id = monitor.add(condition);
    std::vector<TruthChange> told;
    Time now{};
    for (std::size_t i = 0; i + 2 < changes.size(); i += 3) {
        const auto byte = [&](std::size_t at) {
            return static_cast<std::uint8_t>(changes[i + at]);
        };
        const SignalId signal{static_cast<std::uint32_t>(byte(0) % bench().table.size())};
        monitor.set(signal, valueOf(bench().table[signal].kind, byte(1)));
        now += byte(2) < 8 ? Duration(byte(2)) : std::chrono::milliseconds(100 * byte(2));
        if (byte(0) >= 224)
            monitor.setReference(id, now);
        monitor.settle(now, told);
        require(monitor.nextTimer() > now);
        const Margin margin = monitor.margin(id);
        require(!std::isnan(margin.value));
        require(monitor.truth(id) != Truth::True || margin.value >= 0);
        require(monitor.truth(id) != Truth::False || margin.value <= 0);
    }
    require(std::is_sorted(told.begin(), told.end(), [](const auto& a, const auto& b) {
        return a.time < b.time;
    }));
    static_cast<void>(condition.holdsNow(monitor.values()));
    static_cast<void>(condition.fits(SignalId{0}, Value::number(1), monitor.values()));
}

void judgeTable(const std::string& text, const std::string& csv) {
    const Result<TraceTable> table = TraceTable::parse(csv, "fuzz.csv");
    if (!table)
        return;
    const Result<Trace> trace = table->read(bench().table, readingOf(text, table->signalNames(), {}));
    if (!trace)
        return;
    const std::optional<Condition> condition = compiled(text, trace->signals);
    if (!condition)
        return;
    const Time end = trace->rows.back().time + std::chrono::seconds(1);
    const Judgement judgement = judge(*condition, *trace, end);
    require(judgement.segments.front().from == trace->rows.front().time && judgement.segments.back().to == end);
    for (std::size_t i = 1; i < judgement.segments.size(); ++i)
        require(judgement.segments[i].from == judgement.segments[i - 1].to &&
                judgement.segments[i].truth != judgement.segments[i - 1].truth);
}

} // namespace

/// The first line as a condition; the rest as a stream of changes to watch it on, and as a table to judge it on.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string source(reinterpret_cast<const char*>(data), size);
    const std::size_t end = std::min(source.find('\n'), source.size());
    const std::string text = source.substr(0, end);
    const std::string rest = source.substr(std::min(end + 1, source.size()));
    if (const std::optional<Condition> condition = compiled(text, bench().table))
        watch(*condition, rest);
    judgeTable(text, rest);
    return 0;
}
