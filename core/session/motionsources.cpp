#include "session/motionsources.h"

#include <algorithm>

#include "base/names.h"

namespace flowhand {

namespace {

/// Moved by a lever alone, wherever the aircraft is.
bool followsItsLever(const std::string& name) {
    return name == "flap_angle" || name == "gear_position" || name.rfind("engine_power_", 0) == 0;
}

Result<MotionSource> sourceNamed(const std::string& choice, const std::string& word, bool hasFeed) {
    if (word == "practice")
        return MotionSource::Practice;
    if (word == "none")
        return MotionSource::None;
    if (word == "feed" && hasFeed)
        return MotionSource::Feed;
    if (word == "feed")
        return failure("bad-source", "'" + choice + "' asks for a feed and there is none; name one with --feed");
    return failure("bad-source", "'" + choice +
                                     "' is no source; write it as in airspeed=practice, with feed, practice "
                                     "or none behind the sign");
}

Result<SignalId> motionNamed(const Aircraft& aircraft, const std::string& name) {
    const std::optional<SignalId> id = aircraft.signals.find(name);
    if (id && !aircraft.isControl(*id))
        return *id;
    std::vector<std::string> known;
    for (std::size_t i = aircraft.controls.size(); i < aircraft.signals.size(); ++i)
        known.push_back(aircraft.signals.all()[i].name);
    return failure("unknown-signal", "there is no motion signal '" + name + "'; there are " + joined(known, ", ") +
                                         nearestHint(name, known));
}

} // namespace

Result<MotionSources> MotionSources::choose(const Aircraft& aircraft, bool hasFeed,
                                            const std::vector<std::string>& choices) {
    MotionSources sources;
    sources.m_sources.assign(aircraft.signals.size(), hasFeed ? MotionSource::Feed : MotionSource::Practice);
    for (std::size_t i = aircraft.controls.size(); hasFeed && i < aircraft.signals.size(); ++i)
        if (followsItsLever(aircraft.signals.all()[i].name))
            sources.m_sources[i] = MotionSource::FeedElsePractice;
    for (const std::string& choice : choices) {
        const std::size_t sign = choice.find('=');
        const std::string word = sign == std::string::npos ? std::string() : choice.substr(sign + 1);
        const Result<MotionSource> source = sourceNamed(choice, word, hasFeed);
        if (!source)
            return tl::unexpected(source.error());
        const Result<SignalId> id = motionNamed(aircraft, choice.substr(0, sign));
        if (!id)
            return tl::unexpected(id.error());
        sources.m_sources[indexOf(*id)] = *source;
    }
    return sources;
}

MotionSource MotionSources::of(SignalId signal) const {
    return m_sources.empty() ? MotionSource::Practice : m_sources[indexOf(signal)];
}

bool MotionSources::takesFeed(SignalId signal) const {
    return of(signal) == MotionSource::Feed || of(signal) == MotionSource::FeedElsePractice;
}

bool MotionSources::takesPractice(SignalId signal) const {
    return of(signal) == MotionSource::Practice || of(signal) == MotionSource::FeedElsePractice;
}

bool MotionSources::usesPractice() const {
    return m_sources.empty() || std::any_of(m_sources.begin(), m_sources.end(), [](MotionSource source) {
               return source == MotionSource::Practice || source == MotionSource::FeedElsePractice;
           });
}

void MotionSources::noteFed(SignalId signal) {
    if (of(signal) == MotionSource::FeedElsePractice)
        m_sources[indexOf(signal)] = MotionSource::Feed;
}

std::string MotionSources::title(const Aircraft& aircraft, const std::string& feed) const {
    std::vector<std::string> practised;
    std::vector<std::string> none;
    for (std::size_t i = aircraft.controls.size(); i < aircraft.signals.size(); ++i) {
        const SignalId id{static_cast<std::uint32_t>(i)};
        if (of(id) == MotionSource::None)
            none.push_back(aircraft.signals[id].label);
        else if (takesPractice(id))
            practised.push_back(aircraft.signals[id].label);
    }
    std::string text = feed.empty() ? "practice aircraft" : feed;
    if (!feed.empty() && !practised.empty())
        text += "; practice aircraft: " + joined(practised, ", ");
    return none.empty() ? text : text + "; nothing: " + joined(none, ", ");
}

} // namespace flowhand
