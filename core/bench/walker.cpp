#include "bench/walker.h"

#include <chrono>
#include <utility>

#include "bench/walkevidence.h"

namespace flowhand {

Walker::Walker(Parts parts, Walk::Setup setup, Time begin)
    : m_parts(std::move(parts)), m_tolerances(setup.tolerances),
      m_walk(m_parts.aircraft, m_parts.file, m_parts.reaches, std::move(setup), begin) {
    m_parts.feed.keepTraces();
}

Result<bool> Walker::advance(const std::vector<Sample>& samples, Time now) {
    if (m_walk.isDone())
        return false;
    for (const Sample& sample : samples)
        m_walk.take(sample);
    const WalkedControl& control = m_walk.current();
    if (!m_walk.advance(now))
        return false;
    if (const Status kept = keep(control); !kept)
        return tl::unexpected<Error>(kept.error());
    return true;
}

Status Walker::skip(Time now) {
    const WalkedControl& control = m_walk.current();
    m_walk.skip(now);
    return keep(control);
}

Status Walker::keep(const WalkedControl& control) {
    std::vector<RawTrace> traces =
        m_parts.feed.takeTraces(*m_parts.file.controls[control.control], control.begin, control.end);
    m_parts.feed.keepTraces();
    if (m_parts.evidenceFile.empty())
        return {};
    const auto wall = std::chrono::system_clock::now().time_since_epoch();
    return appendEvidence(m_parts.evidenceFile,
                          walkEvidence(control, m_parts.fingerprints[control.control], m_parts.aircraft,
                                       m_parts.reaches, m_tolerances, m_parts.isRecorded,
                                       std::chrono::duration_cast<std::chrono::seconds>(wall).count(),
                                       std::move(traces)));
}

} // namespace flowhand
