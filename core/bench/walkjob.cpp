#include <algorithm>
#include <utility>

#include "bench/benchjob.h"
#include "bench/walker.h"

namespace flowhand {

namespace {

class WalkJob final : public BenchJob {
public:
    WalkJob(const Aircraft& aircraft, const BenchRigState& rig, RigFeed& feed, const std::vector<Value>& values,
            Time now)
        : m_walker({aircraft, rig.rig, rig.reaches, rig.fingerprints, feed, evidenceFileOf(rig.file), false},
                   Walk::Setup{rig.rig.tolerances}, now) {
        std::vector<Sample> standing; // where the controls are found; nobody's hand
        for (std::size_t i = 0; i < rig.reaches.size() && i < values.size(); ++i)
            if (values[i].isKnown())
                standing.push_back({now, SignalId(i), values[i], Actor::Machine, Origin::Device, kNoControl});
        m_view.task = BenchTask::Walk;
        m_view.stageCount = m_walker.walk().controls().size();
        if (m_walker.walk().isDone())
            end(false, {phrase("No control is wired in this rig yet.")});
        else
            take({{}, {}, {}, now}, standing);
    }

    void take(const InputNews& news, const std::vector<Sample>& samples) override {
        if (m_view.isOver)
            return;
        const Result<bool> isNext = m_walker.advance(samples, news.now);
        if (!isNext)
            return end(false, {describe(isNext.error())});
        m_hasWritten = m_hasWritten || *isNext;
        show();
    }

    void next(Time now) override {
        if (m_view.isOver)
            return;
        if (const Status skipped = m_walker.skip(now); !skipped)
            return end(false, {describe(skipped.error())});
        m_hasWritten = true;
        show();
    }

    [[nodiscard]] BenchTaskView view() const override { return m_view; }
    [[nodiscard]] bool takeWritten() override { return std::exchange(m_hasWritten, false); }

private:
    void show() {
        const Walk& walk = m_walker.walk();
        m_view.goodCount = static_cast<std::size_t>(
            std::count_if(walk.controls().begin(), walk.controls().end(), [](const WalkedControl& control) {
                return control.outcome == WalkOutcome::Confirmed;
            }));
        if (walk.isDone())
            return summarize();
        m_view.ask = walk.ask();
        m_view.stage = static_cast<std::size_t>(&walk.current() - walk.controls().data());
        m_view.signal = walk.current().signals.front().signal;
    }

    void summarize() {
        const std::vector<WalkedControl>& all = m_walker.walk().controls();
        std::vector<Phrase> words = {phrase("{1} of {2} controls were confirmed.")
                                         .with(std::to_string(m_view.goodCount), std::to_string(all.size()))};
        for (const WalkedControl& control : all)
            for (const WalkedSignal& signal : control.signals)
                if (control.outcome != WalkOutcome::Confirmed && !signal.isConfirmed)
                    words.push_back(phrase("{1}, not seen: {2}.").with(control.name, signal.missing));
        end(m_walker.walk().isAllConfirmed(), std::move(words));
    }

    void end(bool isGood, std::vector<Phrase> words) {
        m_view.isOver = true;
        m_view.isGood = isGood;
        m_view.ask = {};
        m_view.outcome = std::move(words);
    }

    Walker m_walker;
    BenchTaskView m_view;
    bool m_hasWritten = false;
};

} // namespace

std::unique_ptr<BenchJob> walkJob(const Aircraft& aircraft, const BenchRigState& rig, RigFeed& feed,
                                  const std::vector<Value>& values, Time now) {
    return std::make_unique<WalkJob>(aircraft, rig, feed, values, now);
}

} // namespace flowhand
