#include "presenter/runvoice.h"

#include <algorithm>
#include <optional>

#include "presenter/stepfacts.h"
#include "presenter/verdict.h"

namespace flowhand {

namespace {

std::optional<Earcon> earconOf(Verdict::Kind verdict) {
    switch (verdict) {
    case Verdict::Done:
        return Earcon::Done;
    case Verdict::Late:
        return Earcon::Late;
    case Verdict::Unsure:
        return Earcon::Unsure;
    case Verdict::Wrong:
    case Verdict::OutOfOrder:
        return Earcon::Wrong;
    case Verdict::Waiting:
    case Verdict::Due:
    case Verdict::Info:
    case Verdict::LeftOut:
        break;
    }
    return std::nullopt;
}

int rankOf(Earcon earcon) {
    switch (earcon) {
    case Earcon::Guard:
        return 4;
    case Earcon::Wrong:
        return 3;
    case Earcon::Unsure:
        return 2;
    case Earcon::Late:
        return 1;
    case Earcon::Done:
    case Earcon::Words:
    case Earcon::Click:
        break;
    }
    return 0;
}

} // namespace

void RunVoice::begin(const Flow& flow, const SessionSetup& setup) {
    stop();
    m_flow = &flow;
    m_setup = setup;
    m_before = {};
}

void RunVoice::show(const RunSnapshot& snapshot) {
    if (m_flow == nullptr)
        return;
    speak(snapshot.session);
    tell(snapshot);
    m_before = snapshot.session;
}

void RunVoice::stop() {
    if (m_flow != nullptr)
        m_sound.voice().hush();
    m_flow = nullptr;
}

void RunVoice::speak(const SessionView& now) {
    const bool stands = now.phase == SessionPhase::Held || now.phase == SessionPhase::SetUp;
    if (stands && m_before.phase == SessionPhase::Running)
        m_sound.voice().hush();
    if (now.phase == SessionPhase::Running && now.wordsBegun != m_before.wordsBegun && !now.saying.empty())
        m_sound.voice().say(QString::fromStdString(now.saying), QString::fromStdString(now.sayingBy));
}

void RunVoice::tell(const RunSnapshot& snapshot) {
    const SessionView& now = snapshot.session;
    std::optional<Earcon> worst;
    const auto consider = [&worst](std::optional<Earcon> earcon) {
        if (earcon && (!worst || rankOf(*earcon) > rankOf(*worst)))
            worst = earcon;
    };
    for (std::size_t i = 0; i < now.steps.size() && now.steps.size() == m_before.steps.size(); ++i) {
        const bool closes = isClosed(now.steps[i].state) && m_before.steps[i].state != now.steps[i].state;
        if (closes && stepRow(*m_flow, snapshot, m_setup, static_cast<int>(i)).own)
            consider(earconOf(verdictOf(now.steps[i])));
    }
    for (const int guard : now.openGuards)
        if (std::count(m_before.openGuards.begin(), m_before.openGuards.end(), guard) == 0)
            consider(Earcon::Guard);
    if (worst)
        m_sound.voice().play(*worst);
}

} // namespace flowhand
