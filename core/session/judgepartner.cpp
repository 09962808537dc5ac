#include <algorithm>
#include <cmath>

#include "procedure/replybutton.h"
#include "session/judge.h"

namespace flowhand {

namespace {

using namespace std::chrono_literals;

constexpr std::string_view kCockpit = "cockpit";
/// How long the partner's finger stays on a button.
constexpr Duration kPress = 300ms;
/// How often the partner looks whether it is time to move.
constexpr Duration kLookAgain = 500ms;
/// Places along a lever that the partner tries.
constexpr int kPlaces = 200;
/// A partner who forgets, notices after this many times the step's `late`.
constexpr int kForgetFactor = 2;

} // namespace

void Judge::assignDoers() {
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        StepTrack& track = m_tracks[i];
        track.doer = doerOf(step(i), m_setup);
        track.controls = step(i).controls;
        if (step(i).kind != StepKind::Say)
            continue;
        track.controls.clear();
        const std::optional<SignalId> button = replyButton(m_aircraft);
        if (track.doer == Doer::Hand && button)
            track.controls = {*button};
    }
}

bool Judge::isSpokenByPilot(const std::string& by) const {
    return by == m_setup.ownSeat;
}

void Judge::say(WordsPurpose purpose, std::size_t i, const std::string& by, const std::string& text) {
    const bool isSeat = std::find(m_aircraft.seats.begin(), m_aircraft.seats.end(), by) != m_aircraft.seats.end();
    const std::string voice = m_setup.isSolo && isSeat ? std::string(kCockpit) : by;
    if (m_speaker.say({purpose, i, voice, text}))
        beginWords();
}

void Judge::beginWords() {
    const Utterance& words = m_speaker.current();
    Event& event = tell(EventKind::WordsBegan, static_cast<int>(words.step));
    event.by = words.by;
    event.text = words.text;
    ++m_wordsBegun;
    m_wordsEnd = m_now + speakingTime(letterCount(words.text));
    m_timers.set({m_wordsEnd, RunTimerKind::WordsEnd, 0});
}

void Judge::wordsEnded() {
    const Utterance words = m_speaker.finish();
    if (m_speaker.isSpeaking())
        beginWords();
    m_mayEnd = true;
    if (words.purpose == WordsPurpose::Remark)
        return;
    StepTrack& track = m_tracks[words.step];
    if (words.purpose == WordsPurpose::Cue && track.isComing() && track.isCued)
        makeDue(words.step, m_now);
    if (words.purpose == WordsPurpose::Reply && track.isOpen())
        finish(words.step, m_now);
}

void Judge::schedulePartner(std::size_t i) {
    if (step(i).kind != StepKind::Reply && m_tracks[i].controls.empty())
        return; // a look at the instruments: done when it is so
    const bool isByScript =
        std::any_of(m_tracks[i].controls.begin(), m_tracks[i].controls.end(), [&](SignalId control) {
            return m_setup.hasPartnerHands && isContinuous(control);
        });
    if (isByScript)
        return;
    Duration delay = m_pace.delay(i);
    if (m_pace.error(i) == PartnerError::Late)
        delay += kForgetFactor * step(i).late;
    m_timers.set({m_now + delay, RunTimerKind::PartnerActs, i});
}

/// The rest of its condition is not so yet, as that the aircraft stands: moving now would not do it.
bool Judge::isTooSoon(std::size_t i) const {
    if (!step(i).done || step(i).done->condition.isInstant() || step(i).done->condition.usesReference())
        return false;
    std::vector<Value> values = m_values;
    for (const SignalId control : m_tracks[i].controls)
        values[indexOf(control)] = target(i, control, values);
    return step(i).done->condition.holdsNow(values) == Truth::False;
}

void Judge::partnerActs(std::size_t i) {
    StepTrack& track = m_tracks[i];
    if (!track.isOpen())
        return;
    if (step(i).kind == StepKind::Reply) {
        if (step(i).reply.empty())
            finish(i, m_now);
        else
            say(WordsPurpose::Reply, i, step(i).movedBy, step(i).reply);
        return;
    }
    const bool isWrong = m_pace.error(i) == PartnerError::WrongValue;
    std::vector<Value> values = m_values;
    if (isTooSoon(i)) {
        m_timers.set({m_now + kLookAgain, RunTimerKind::PartnerActs, i});
        return;
    }
    bool hasMoved = false;
    for (const SignalId control : track.controls) {
        Value wanted = target(i, control, values);
        if (isWrong && control == track.controls.front())
            wanted = wrongTarget(control, wanted);
        if (wanted == values[indexOf(control)])
            continue;
        values[indexOf(control)] = wanted;
        hasMoved = true;
        m_partnerMoves.push_back({m_real + kTick, control, wanted});
        if (m_movements.isButton(control))
            m_timers.set({m_now + kPress, RunTimerKind::PartnerLetsGo, indexOf(control)});
    }
    if (!hasMoved && !isWrong && !track.controls.empty()) {
        track.fit = track.controls.front(); // there already: the partner's hand rests on it
        track.fitBegan = m_now;
        tryFinish(i);
    }
}

void Judge::partnerLetsGo(std::size_t control) {
    m_partnerMoves.push_back({m_real + kTick, m_aircraft.controls[control].signal, Value::onOff(false)});
}

/// Where `control` has to go for step `i`, nearest to where it is; where it is when that does or nothing would.
Value Judge::target(std::size_t i, SignalId control, const std::vector<Value>& values) const {
    const Signal& signal = m_aircraft.signals[control];
    const Value now = values[indexOf(control)];
    if (!step(i).done)
        return Value::onOff(true);
    const Condition& done = step(i).done->condition;
    if (signal.kind == SignalKind::Number)
        return numberTarget(i, control, values);
    if (done.fits(control, now, values) && !m_movements.isButton(control))
        return now;
    if (signal.kind == SignalKind::OnOff) {
        const Value other = Value::onOff(!(now.isKnown() && now.isOn()));
        return done.fits(control, other, values) ? other : now;
    }
    Value best = now;
    int nearest = static_cast<int>(signal.positions.size()) + 1;
    for (int position = 0; position < static_cast<int>(signal.positions.size()); ++position) {
        const int way = std::abs(position - (now.isKnown() ? now.position() : 0));
        if (way < nearest && done.fits(control, Value::position(position), values)) {
            nearest = way;
            best = Value::position(position);
        }
    }
    return best;
}

/// The middle of the stretch of places that fit nearest to where the lever is.
Value Judge::numberTarget(std::size_t i, SignalId control, const std::vector<Value>& values) const {
    const Signal& signal = m_aircraft.signals[control];
    const Value now = values[indexOf(control)];
    const double at = now.isKnown() ? now.number() : signal.lowest;
    const auto place = [&](int n) {
        return signal.lowest + (signal.highest - signal.lowest) * n / kPlaces;
    };
    const auto doesFit = [&](int n) {
        return step(i).done->condition.fits(control, Value::number(place(n)), values);
    };
    if (now.isKnown() && step(i).done->condition.fits(control, now, values))
        return now;
    double best = at;
    double nearest = 2.0 * (signal.highest - signal.lowest);
    for (int first = 0; first <= kPlaces; ++first) {
        if (!doesFit(first))
            continue;
        int last = first;
        while (last < kPlaces && doesFit(last + 1))
            ++last;
        const double middle = (place(first) + place(last)) / 2.0;
        if (std::fabs(middle - at) < nearest) {
            nearest = std::fabs(middle - at);
            best = middle;
        }
        first = last;
    }
    return Value::number(best);
}

/// A slip of the partner's: the next gate, half the way, or nothing at all.
Value Judge::wrongTarget(SignalId control, Value right) const {
    const Signal& signal = m_aircraft.signals[control];
    const Value now = value(control);
    if (signal.kind == SignalKind::Position && right.isKnown())
        return Value::position(right.position() > 0 ? right.position() - 1 : 1);
    if (signal.kind == SignalKind::Number && now.isKnown())
        return Value::number((now.number() + right.number()) / 2.0);
    return now;
}

} // namespace flowhand
