#include "stubbench.h"

#include <cmath>

#include "stubcockpit.h"

namespace flowhand::test {

namespace {

using namespace std::chrono_literals;

class StubBench final : public BenchHandle {
public:
    StubBench(const StubBenchMaker& maker, std::shared_ptr<const Aircraft> aircraft)
        : m_maker(maker), m_aircraft(std::move(aircraft)) {}
    void show(std::vector<const Flow*> flows) { m_flows = std::move(flows); }

    BenchSnapshot snapshot() const override { return m_maker.snapshot; }
    std::vector<BenchPoint> takeTrace() override { return m_maker.points; }
    void watch(SignalId signal) override { m_maker.told->watched.push_back(signal); }
    void begin(const BenchWish& wish) override { m_maker.told->begun.push_back(wish); }
    void next() override { ++m_maker.told->nexts; }
    void cancel() override { ++m_maker.told->cancels; }
    Status writeSheet(const std::string&) override { return {}; }
    Status writeCoverage(const std::string& file, bool) override {
        return failure("save-failed", "it cannot be written: the disk is full", {file});
    }
    Status showPage(const std::string& file) override {
        m_maker.told->shown.push_back(file);
        return {};
    }
    const Aircraft& aircraft() const override { return *m_aircraft; }
    const std::vector<const Flow*>& flows() const override { return m_flows; }

private:
    const StubBenchMaker& m_maker;
    std::shared_ptr<const Aircraft> m_aircraft;
    std::vector<const Flow*> m_flows;
};

Proof proofOf(std::size_t control, bool isUnwired) {
    return isUnwired || control % 7 == 6 ? Proof::Unwired
           : control % 5 == 4            ? Proof::Wired
           : control % 3 == 2            ? Proof::Calibrated
                                         : Proof::SeenWorking;
}

Coverage coverageFor(const AircraftFolder& folder, bool isUnwired) {
    Coverage coverage;
    const Aircraft& aircraft = *folder.aircraft;
    for (std::size_t i = 0; i < aircraft.controls.size(); ++i) {
        CoveredControl control;
        control.signal = aircraft.controls[i].signal;
        control.proof = proofOf(i, isUnwired);
        control.wiredTo = aircraft.signals[control.signal].name;
        control.inputs = control.proof == Proof::Unwired ? "" : "quadrant: axis " + std::to_string(i + 1);
        control.date = control.proof > Proof::Wired ? "2026-03-01T18:04:05Z" : "";
        control.isCalibratable = i < 4;
        control.isStale = i == 1 && !isUnwired;
        control.staleDate = control.isStale ? "2026-02-11T09:00:00Z" : "";
        control.failedDate = i == 3 && !isUnwired ? "2026-03-02T10:00:00Z" : "";
        coverage.controls.push_back(control);
    }
    for (std::size_t flow = 0; flow < folder.flows.size(); ++flow)
        for (std::size_t step = 0; step < folder.flows[flow].steps.size(); ++step) {
            CoveredStep covered;
            covered.flow = flow;
            covered.step = step;
            covered.needed = folder.flows[flow].steps[step].controls;
            for (const SignalId signal : covered.needed) {
                const CoveredControl& control = coverage.controls[indexOf(signal)];
                covered.proof = std::min(covered.proof, control.proof);
                covered.isStale = covered.isStale || control.isStale;
                if (control.proof == Proof::Unwired)
                    covered.obstacles.push_back(
                        {"not-wired", signal, phrase("{1} is not wired").with(aircraft.signals[signal].label)});
            }
            coverage.steps.push_back(std::move(covered));
        }
    if (!isUnwired)
        coverage.orphans = {aircraft.controls[17].signal};
    return coverage;
}

/// As core says it, so that it is there in every language.
std::vector<Finding> someFindings() {
    using enum Soundness;
    return {{"noise",
             Good,
             phrase("sigma {1} counts, peak to peak {2}; {3} effective and {4} noise-free bits of {5}")
                 .with("1.2", "7.9", "12.4", "9.7", "14"),
             phrase("its noise (6.6 sigma) is {1} % of its travel; a step's band must be wider than that").with("0.16"),
             {}},
            {"jumps", Bad,
             phrase("{1}; it jumps at the counts {2}")
                 .with(phrase("{1} spikes, the largest of {2} counts").with("7", "38"),
                       phrase("{1} to {2}").with("610", "648")),
             phrase("so does a worn or dirty track, or a loose plug"),
             phrase("turn it quickly from end to end fifty times, then see to plug and solder; if it stays, change the "
                    "potentiometer. Until then a 'spike_limit' keeps spikes out")},
            {"range", Caution,
             phrase("it uses {1} % of the converter's range, counts {2} to {3}").with("31", "212", "1481"),
             phrase("that gives {1} places that noise does not blur; 100 are enough for 1 %").with("64"),
             phrase("let the lever turn the potentiometer further: a longer arm at the lever, a shorter one at the "
                    "potentiometer, or a potentiometer of less travel")},
            {"hysteresis", Unmeasured, phrase("no place was come to from both sides"),
             phrase("hysteresis is the difference between coming to a place from above and from below"),
             phrase("move it to its places both upwards and downwards, and hold it there for a second")}};
}

/// A lever pushed up in three steps, with a little noise.
std::vector<BenchPoint> someTrace(Time now, double lowest, double highest) {
    std::vector<BenchPoint> points;
    for (int i = 0; i < 1000; ++i) {
        const double share = 0.1 + 0.25 * std::floor(i / 300.0) + 0.004 * std::sin(i * 1.7) * std::cos(i * 0.37);
        points.push_back({now - 10s + i * 10ms, lowest + share * (highest - lowest)});
    }
    return points;
}

} // namespace

QStringList StubBenchMaker::names() {
    return {"bench",           "bench-new-rig", "bench-no-device", "bench-wiring",    "bench-calibrating",
            "bench-measuring", "bench-walking", "bench-walked",    "bench-refused",   "bench-long-names",
            "bench-question",  "bench-ways",    "bench-zones",     "bench-values",    "bench-gates",
            "bench-keys",      "bench-filters", "bench-applied",   "bench-tolerances"};
}

Result<std::unique_ptr<BenchHandle>> StubBenchMaker::open(std::function<void()> onChange) {
    std::vector<const Flow*> flows;
    for (const Flow& flow : m_folder->flows)
        flows.push_back(&flow);
    Result<std::unique_ptr<BenchHandle>> bench =
        openFor(std::shared_ptr<const Aircraft>(std::shared_ptr<void>(), m_folder->aircraft.get()), onChange);
    if (bench)
        static_cast<StubBench&>(**bench).show(std::move(flows));
    return bench;
}

Result<std::unique_ptr<BenchHandle>> StubBenchMaker::openFor(std::shared_ptr<const Aircraft> aircraft,
                                                             std::function<void()>) {
    if (!refusal.empty())
        return failure("unknown-signal", refusal, {file.toStdString(), 14, 10});
    return std::make_unique<StubBench>(*this, std::move(aircraft));
}

/// A flap lever on its travel, a repeat check, and an input with two controls.
void StubBenchMaker::showGates(const AircraftFolder& folder) {
    const Aircraft& aircraft = *folder.aircraft;
    GateTravel travel;
    travel.signal = aircraft.controls[4].signal;
    travel.lowest = 60;
    travel.highest = 960;
    double at = 130;
    for (const std::string& position : aircraft.signals[travel.signal].positions) {
        travel.gates.push_back({position, at, 32});
        at += 190;
    }
    snapshot.travels = std::make_shared<const std::vector<GateTravel>>(std::vector<GateTravel>{travel});
    snapshot.shared = std::make_shared<const std::vector<SharedInput>>(
        std::vector<SharedInput>{{aircraft.controls[1].signal, "quadrant: axis 1", "Thrust lever 1"}});
    std::vector<MeasuredControl> measured = *snapshot.measured;
    for (const std::size_t control : {std::size_t(0), std::size_t(4)})
        measured.push_back({aircraft.controls[control].signal,
                            BenchTask::Check,
                            "2026-03-20T18:10:00Z",
                            false,
                            {{"place",
                              Soundness::Good,
                              phrase("{1}: count {2}, {3} in the file: off by {4} % of the travel")
                                  .with(phrase("low end"), "12", "10", "0.2"),
                              {},
                              {}}}});
    snapshot.measured = std::make_shared<const std::vector<MeasuredControl>>(measured);
    points = someTrace(snapshot.now, travel.lowest, travel.highest);
}

/// What the measurement asks for, or what became of it.
void StubBenchMaker::showFilters(const AircraftFolder& folder, bool isApplied) {
    ControlFilters filters;
    filters.signal = folder.aircraft->controls[0].signal;
    filters.words = {phrase("jumps beyond {1} counts must last for {2}").with("220", "17 ms")};
    filters.allowed = 100ms;
    filters.allowedOf = folder.flows.front().steps.front().title;
    if (isApplied) {
        filters.words = {phrase("median of {1}").with("24 ms"), phrase("low-pass of {1}").with("9 ms")};
        filters.delay = 21ms;
        filters.canUndo = true;
        snapshot.task.task = BenchTask::ApplyFilters;
        snapshot.task.isOver = snapshot.task.isGood = true;
        snapshot.task.outcome = {
            phrase("Written into the rig file: {1}.")
                .with(joined({std::string("median = \"24 ms\""), phrase("no {1}").with("spike_limit")}, ", "))};
    } else {
        filters.change = {{"median", "\"24 ms\""}, {"smooth", "\"9 ms\""}, {"spike_limit", ""}};
        filters.changedDelay = 21ms;
        filters.findings = {
            {"spikes", Soundness::Caution,
             phrase("{1}: a median of {2} leaves no trace of them, and makes it late by {3}")
                 .with(phrase("spikes of {1} counts and more, for {2} at most").with("180", "8 ms"), "24 ms", "12 ms"),
             phrase("a hand moves as fast, so 'spike_limit' cannot tell them from a movement"),
             std::string("median = \"24 ms\"")}};
    }
    snapshot.filters = std::make_shared<const std::vector<ControlFilters>>(std::vector<ControlFilters>{filters});
}

void StubBenchMaker::show(const QString& state, const AircraftFolder& folder) {
    m_folder = &folder;
    const bool isNew = state == "bench-new-rig" || state == "bench-wiring" || state == "bench-no-device";
    if (state == "bench-refused")
        refusal = "this aircraft has no control 'flap_levr'; did you mean 'flap_lever'?";
    snapshot.now = 60s;
    snapshot.rigTitle =
        isNew ? phrase("New rig of the {1}").with("Twin jet") : Phrase(std::string("Desk quadrant and pedals"));
    snapshot.values = stubValues(*folder.aircraft, 0);
    snapshot.stirring.assign(snapshot.values.size(), false);
    snapshot.stirring[0] = !isNew;
    if (state != "bench-no-device")
        snapshot.devices = {{"quadrant", true, {}}, {"pedals", !isNew, {}}};
    snapshot.coverage = std::make_shared<const Coverage>(coverageFor(folder, isNew));
    snapshot.bothSeats = snapshot.coverage;
    std::vector<MeasuredControl> measured;
    if (!isNew)
        measured.push_back(
            {folder.aircraft->controls[0].signal, BenchTask::Measure, "2026-03-01T18:10:00Z", false, someFindings()});
    snapshot.measured = std::make_shared<const std::vector<MeasuredControl>>(measured);
    snapshot.filters = std::make_shared<const std::vector<ControlFilters>>();
    snapshot.shared = std::make_shared<const std::vector<SharedInput>>();
    snapshot.travels = std::make_shared<const std::vector<GateTravel>>();
    points = someTrace(snapshot.now, 0, 100);
    BenchTaskView& task = snapshot.task;
    task.signal = folder.aircraft->controls[0].signal;
    const auto ask = [&task](BenchTask kind, const Phrase& words, std::size_t stage, std::size_t stages) {
        task.task = kind;
        task.ask = words;
        task.stage = stage;
        task.stageCount = stages;
    };
    if (state == "bench-wiring")
        ask(BenchTask::Wire, phrase("Move {1} to {2} and hold it.").with("Thrust lever 1", phrase("its high end")), 1,
            3);
    if (state == "bench-calibrating") // the longest that is asked of a lever
        ask(BenchTask::Calibrate,
            phrase(
                "{1} Then push it to one side, let it spring back and leave it alone for two seconds; three times from "
                "each side.")
                .with(phrase("Move it to one end and hold it there for a second, then to the other; three times.")),
            0, 1);
    if (state == "bench-measuring")
        ask(BenchTask::Measure,
            phrase("Leave it alone for ten seconds. Then {1}.")
                .with(joined({phrase("move it slowly from end to end and back, three times"),
                              phrase("let it spring back from both sides")},
                             ", ")),
            0, 1);
    if (state == "bench-walking")
        ask(BenchTask::Walk,
            phrase("{1}: still to be seen: {2}.")
                .with("Thrust lever 1",
                      joined({phrase("its high end"), phrase("the way between its ends, slowly")}, ", ")),
            0, 19);
    if (state == "bench-walked") {
        ask(BenchTask::Walk, {}, 19, 19);
        task.isOver = true;
        task.goodCount = 18;
        task.outcome = {phrase("{1} of {2} controls were confirmed.").with("18", "19"),
                        phrase("{1}, not seen: {2}.")
                            .with("Reverse lever 2", phrase("{1} (came to {2})").with(phrase("its high end"), "85 %"))};
    }
    if (state == "bench-question") {
        ask(BenchTask::Wire,
            phrase("{1}. Shall it make both? If not, stop, and move only the one control.")
                .with(phrase("{1} is wired to '{2}' already").with("quadrant: X", "Thrust lever 2")),
            3, 3);
        task.isQuestion = true;
    }
    if (state == "bench-gates")
        showGates(folder);
    if (state == "bench-filters" || state == "bench-applied")
        showFilters(folder, state == "bench-applied");
    if (state == "bench-long-names")
        snapshot.notices = {
            std::string("The rig declares that nothing keeps the reverse levers down while the thrust levers are "
                        "forward; a guard judges it.")};
}

} // namespace flowhand::test
