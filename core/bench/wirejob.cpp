#include <utility>

#include "bench/benchjob.h"
#include "bench/wiringdesk.h"
#include "bench/wiringguide.h"

namespace flowhand {

namespace {

class WireJob final : public BenchJob {
public:
    WireJob(const Aircraft& aircraft, const std::string& rigFile, SignalId signal, const BenchDevices& devices)
        : m_aircraft(aircraft), m_source(devices.source), m_desk(aircraft, rigFile, devices.source),
          m_guide({{signal}, WiringWay::Found, {}, {}}, aircraft, m_watch, devices.now) {
        for (const DeviceIndex device : devices.connected)
            m_watch.connect(device, devices.source.inputs(device));
        for (const auto& [input, reading] : devices.last)
            m_watch.take(reading);
        m_view.task = BenchTask::Wire;
        m_view.signal = signal;
        Problems problems;
        if (const Status loaded = m_desk.load(problems); !loaded)
            end(false, describe(loaded.error()));
        show();
    }

    void take(const InputNews& news, const std::vector<Sample>& /*samples*/) override {
        if (m_view.isOver)
            return;
        for (const DeviceIndex device : news.connected)
            m_watch.connect(device, m_source.inputs(device));
        for (const Reading& reading : news.readings)
            m_watch.take(reading);
        m_guide.advance(news.now);
        if (m_guide.isDone())
            finish();
        show();
    }

    void next(Time /*now*/) override {} // each stage ends by itself, when the control stands still

    [[nodiscard]] BenchTaskView view() const override { return m_view; }
    [[nodiscard]] bool takeWritten() override { return std::exchange(m_hasWritten, false); }

private:
    void show() {
        m_view.ask = m_view.isOver ? std::string() : m_guide.ask();
        m_view.stage = m_guide.stage();
        m_view.stageCount = m_guide.stageCount();
    }

    void finish() {
        const Result<WiringProposal> proposal = m_guide.solve([this](InputPlace place) {
            return m_desk.nameOf(place);
        });
        if (!proposal)
            return end(false, describe(proposal.error()));
        const Result<std::vector<WiringConflict>> conflicts = m_desk.propose(m_guide.wish(), *proposal);
        if (!conflicts)
            return end(false, describe(conflicts.error()));
        if (!conflicts->empty()) {
            const WiringConflict& conflict = conflicts->front();
            return end(false, conflict.input + " is wired to '" + conflict.control +
                                  "' already, so nothing was written. Wire that one anew first, or move only this "
                                  "control.");
        }
        if (const Status accepted = m_desk.accept(false, false); !accepted)
            return end(false, describe(accepted.error()));
        std::string inputs;
        for (const InputPlace place : proposal->inputs)
            inputs += (inputs.empty() ? "" : ", ") + m_desk.nameOf(place);
        m_hasWritten = true;
        end(true, m_aircraft.signals[m_view.signal].label + " is wired to " + inputs + " (" + proposal->wiring + ").");
        m_view.outcome.insert(m_view.outcome.end(), proposal->remarks.begin(), proposal->remarks.end());
    }

    void end(bool isGood, std::string words) {
        m_view.isOver = true;
        m_view.isGood = isGood;
        m_view.goodCount = isGood ? 1 : 0;
        m_view.outcome = {std::move(words)};
    }

    const Aircraft& m_aircraft;
    const InputSource& m_source;
    InputWatch m_watch;
    WiringDesk m_desk;
    WiringGuide m_guide;
    BenchTaskView m_view;
    bool m_hasWritten = false;
};

} // namespace

std::unique_ptr<BenchJob> wireJob(const Aircraft& aircraft, const std::string& rigFile, SignalId signal,
                                  const BenchDevices& devices) {
    return std::make_unique<WireJob>(aircraft, rigFile, signal, devices);
}

} // namespace flowhand
