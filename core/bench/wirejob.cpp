#include <optional>
#include <utility>

#include "base/names.h"
#include "bench/benchjob.h"
#include "bench/wiringdesk.h"
#include "bench/wiringguide.h"

namespace flowhand {

namespace {

class WireJob final : public BenchJob {
public:
    WireJob(const Aircraft& aircraft, const std::string& rigFile, const WiringWish& wish, const BenchDevices& devices)
        : m_aircraft(aircraft), m_source(devices.source), m_desk(aircraft, rigFile, devices.source),
          m_guide(wish, aircraft, m_watch, devices.now) {
        for (const DeviceIndex device : devices.connected)
            m_watch.connect(device, devices.source.inputs(device));
        for (const auto& [input, reading] : devices.last)
            m_watch.take(reading);
        m_view.task = BenchTask::Wire;
        m_view.signal = wish.signals.front();
        Problems problems;
        if (const Status loaded = m_desk.load(problems); !loaded)
            end(false, describe(loaded.error()));
        show();
    }

    void take(const InputNews& news, const std::vector<Sample>& /*samples*/) override {
        if (m_view.isOver || m_proposal)
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

    /// Each stage ends by itself, when the control stands still; only a question waits for an answer.
    void next(Time /*now*/) override {
        if (m_proposal && !m_view.isOver)
            write(true);
    }

    [[nodiscard]] BenchTaskView view() const override { return m_view; }
    [[nodiscard]] bool takeWritten() override { return std::exchange(m_hasWritten, false); }

private:
    void show() {
        if (m_view.isOver)
            m_view.ask = {};
        else if (!m_view.isQuestion)
            m_view.ask = m_guide.ask();
        m_view.stage = m_guide.stage();
        m_view.stageCount = m_guide.stageCount();
    }

    void finish() {
        BenchResult<WiringProposal> proposal = m_guide.solve([this](InputPlace place) {
            return m_desk.nameOf(place);
        });
        if (!proposal)
            return end(false, proposal.error().words);
        const Result<std::vector<WiringConflict>> conflicts = m_desk.propose(m_guide.wish(), *proposal);
        if (!conflicts)
            return end(false, describe(conflicts.error()));
        m_proposal = std::move(*proposal);
        if (conflicts->empty())
            return write(false);
        std::vector<Phrase> shared;
        for (const WiringConflict& conflict : *conflicts)
            shared.push_back(phrase("{1} is wired to '{2}' already").with(conflict.input, conflict.control));
        m_view.isQuestion = true;
        m_view.ask =
            phrase("{1}. Shall it make both? If not, stop, and move only the one control.").with(joined(shared, ", "));
    }

    void write(bool isShared) {
        m_view.isQuestion = false;
        if (const Status accepted = m_desk.accept(isShared, false); !accepted)
            return end(false, describe(accepted.error()));
        std::vector<std::string> inputs;
        for (const InputPlace place : m_proposal->inputs)
            inputs.push_back(m_desk.nameOf(place));
        std::vector<std::string> labels;
        for (const SignalId signal : m_guide.wish().signals)
            labels.push_back(m_aircraft.signals[signal].label);
        m_hasWritten = true;
        end(true, (labels.size() > 1 ? phrase("{1} are wired to {2} ({3}).") : phrase("{1} is wired to {2} ({3})."))
                      .with(allOf(labels), joined(inputs, ", "), m_proposal->wiring));
        m_view.outcome.insert(m_view.outcome.end(), m_proposal->remarks.begin(), m_proposal->remarks.end());
    }

    void end(bool isGood, Phrase words) {
        m_view.isOver = true;
        m_view.isGood = isGood;
        m_view.goodCount = isGood ? 1 : 0;
        m_view.ask = {};
        m_view.outcome = {std::move(words)};
    }

    const Aircraft& m_aircraft;
    const InputSource& m_source;
    InputWatch m_watch;
    WiringDesk m_desk;
    WiringGuide m_guide;
    std::optional<WiringProposal> m_proposal; ///< once all stages are over
    BenchTaskView m_view;
    bool m_hasWritten = false;
};

} // namespace

std::unique_ptr<BenchJob> wireJob(const Aircraft& aircraft, const std::string& rigFile, const WiringWish& wish,
                                  const BenchDevices& devices) {
    return std::make_unique<WireJob>(aircraft, rigFile, wish, devices);
}

} // namespace flowhand
