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

void collect(RunLoop& loop, FlownRun& flown, const ShowEvent& show) {
    for (Event& event : loop.takeEvents()) {
        show(event, *flown.flow);
        flown.events.push_back(std::move(event));
    }
}

FlownRun begun(const RunLoop& loop, const Flow* flow) {
    FlownRun flown;
    flown.flow = flow;
    flown.header = loop.header();
    return flown;
}

void begin(RunLoop& loop, const FlightStart& start) {
    if (start.from.empty())
        loop.command(CommandKind::Start);
    else if (start.isPlaced)
        loop.command(CommandKind::Jump, start.from);
    else
        loop.jump(start.from);
    if (start.isWaived)
        loop.command(CommandKind::Waive);
}

/// The present flow has ended: keeps it, and begins the one that follows. False when none does.
bool goOn(RunLoop& loop, std::vector<FlownRun>& flown) {
    flown.back().snapshot = loop.snapshot();
    if (!loop.goOn())
        return false;
    flown.push_back(begun(loop, loop.snapshot().flow));
    return true;
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

std::vector<FlownRun> flyScripted(RunParts parts, const FlightStart& start, const ShowEvent& show) {
    const Flow* const first = parts.flow;
    RunLoop loop(std::move(parts));
    std::vector<FlownRun> flown{begun(loop, first)};
    begin(loop, start);
    Time time{};
    Time handsDone = kForever;
    while (time < kLongestRun && (handsDone == kForever || time - handsDone <= kPatience)) {
        time += PracticeAircraft::kMotionPeriod;
        loop.advance(time);
        collect(loop, flown.back(), show);
        if (loop.areHandsDone() && handsDone == kForever)
            handsDone = time;
        if (!loop.isEnded())
            continue;
        if (!goOn(loop, flown))
            return flown;
        handsDone = kForever;
    }
    flown.back().setUp = loop.snapshot().session.setUp;
    loop.command(CommandKind::Stop);
    loop.advance(time + PracticeAircraft::kMotionPeriod);
    collect(loop, flown.back(), show);
    flown.back().snapshot = loop.snapshot();
    return flown;
}

namespace {

/// Tells what the pilot should know of a run, each thing once.
class Teller {
public:
    Teller(const Aircraft& aircraft, const std::function<void(const std::string&)>& say)
        : m_aircraft(aircraft), m_say(say) {}

    void tell(const RunLoop& loop, Time now) {
        for (; m_noticesSaid < loop.notices().size(); ++m_noticesSaid)
            m_say(loop.notices()[m_noticesSaid].english());
        if (loop.phase() != SessionPhase::SetUp || loop.changeCount() == m_toldCount || now - m_told < kTellPeriod)
            return;
        m_told = now;
        m_toldCount = loop.changeCount();
        const std::string wanted = wantedText(loop.snapshot().session.setUp, m_aircraft);
        if (wanted != m_wantedSaid && !wanted.empty())
            m_say("Before the start, put right:" + wanted);
        m_wantedSaid = wanted;
    }

private:
    const Aircraft& m_aircraft;
    const std::function<void(const std::string&)>& m_say;
    std::size_t m_noticesSaid = 0;
    std::string m_wantedSaid;
    Time m_told = -kTellPeriod;
    std::uint64_t m_toldCount = 0;
};

} // namespace

std::vector<FlownRun> flyLive(RunParts parts, const LiveFlight& live, const FlightStart& start, const ShowEvent& show) {
    const Flow* const first = parts.flow;
    DeviceHub* const devices = parts.devices;
    Teller teller(*parts.aircraft, live.say);
    RunLoop loop(std::move(parts));
    std::vector<FlownRun> flown{begun(loop, first)};
    begin(loop, start);
    bool isStopped = false;
    while (!loop.isEnded() || goOn(loop, flown)) {
        if (live.isStopping() && !std::exchange(isStopped, true))
            loop.command(CommandKind::Stop);
        const Time now = live.clock.now() - live.origin;
        loop.advance(now);
        collect(loop, flown.back(), show);
        teller.tell(loop, now);
        const Time until = std::min(loop.nextTime(), now + kLook);
        if (devices != nullptr)
            devices->waitUntil(until);
        else if (until > now)
            (void)live.bell.wait(until - now);
    }
    return flown;
}

} // namespace flowhand
