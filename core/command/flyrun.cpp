#include "command/flyrun.h"

#include <algorithm>

namespace flowhand {

namespace {

using namespace std::chrono_literals;

/// Scripted hands that have nothing left to do, with the flow still waiting after this long, will not end it.
constexpr Duration kPatience = 5min;
/// No flow is longer than this.
constexpr Duration kLongestRun = std::chrono::hours(4);
/// A live run looks at its devices at least this often; they wake it before that.
constexpr Duration kLook = 20ms;
/// What the set-up still wants is told no oftener: nobody reads faster.
constexpr Duration kTellPeriod = 100ms;

void collect(RunLoop& loop, FlownRun& flown, const std::function<void(const Event&)>& show) {
    for (Event& event : loop.takeEvents()) {
        show(event);
        flown.events.push_back(std::move(event));
    }
}

void begin(RunLoop& loop, const std::string& from) {
    if (from.empty())
        loop.command(CommandKind::Start);
    else
        loop.command(CommandKind::Jump, from);
}

} // namespace

std::string wantedText(const std::vector<SetUpItem>& items, const Aircraft& aircraft) {
    std::string text;
    for (const SetUpItem& item : items) {
        const Signal& signal = aircraft.signals[item.signal];
        text += "\n    " + signal.label + ": is " + valueText(signal, item.found) + ", wanted " +
                valueText(signal, item.wanted);
        if (!item.found.isKnown())
            text += " (move it once)";
    }
    return text;
}

FlownRun flyScripted(RunParts parts, const std::string& from, bool isWaived,
                     const std::function<void(const Event&)>& show) {
    FlownRun flown;
    RunLoop loop(std::move(parts));
    begin(loop, from);
    if (isWaived)
        loop.command(CommandKind::Waive);
    Time time{};
    Time handsDone = kForever;
    while (!loop.isEnded() && time < kLongestRun) {
        time += PracticeAircraft::kMotionPeriod;
        loop.advance(time);
        collect(loop, flown, show);
        if (loop.areHandsDone() && handsDone == kForever)
            handsDone = time;
        if (handsDone != kForever && time - handsDone > kPatience)
            break;
    }
    if (!loop.isEnded()) {
        flown.setUp = loop.snapshot().session.setUp;
        loop.command(CommandKind::Stop);
        loop.advance(time + PracticeAircraft::kMotionPeriod);
        collect(loop, flown, show);
    }
    flown.snapshot = loop.snapshot();
    return flown;
}

FlownRun flyLive(RunParts parts, const Clock& clock, Time origin, const std::string& from, bool isWaived,
                 const std::function<bool()>& isStopping, const std::function<void(const Event&)>& show,
                 const std::function<void(const std::string&)>& say) {
    FlownRun flown;
    const Aircraft& aircraft = *parts.aircraft;
    DeviceHub* const devices = parts.devices;
    RunLoop loop(std::move(parts));
    begin(loop, from);
    if (isWaived)
        loop.command(CommandKind::Waive);
    std::size_t noticesSaid = 0;
    std::string wantedSaid;
    Time told = -kTellPeriod;
    std::uint64_t toldCount = 0;
    bool isStopped = false;
    while (!loop.isEnded()) {
        if (isStopping() && !std::exchange(isStopped, true))
            loop.command(CommandKind::Stop);
        const Time now = clock.now() - origin;
        loop.advance(now);
        collect(loop, flown, show);
        for (; noticesSaid < loop.notices().size(); ++noticesSaid)
            say(loop.notices()[noticesSaid]);
        if (loop.phase() == SessionPhase::SetUp && loop.changeCount() != toldCount && now - told >= kTellPeriod) {
            told = now;
            toldCount = loop.changeCount();
            const std::string wanted = wantedText(loop.snapshot().session.setUp, aircraft);
            if (wanted != wantedSaid && !wanted.empty())
                say("Before the start, put right:" + wanted);
            wantedSaid = wanted;
        }
        devices->waitUntil(std::min(loop.nextTime(), now + kLook));
    }
    flown.snapshot = loop.snapshot();
    return flown;
}

} // namespace flowhand
