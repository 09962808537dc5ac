#include "bench/rigfeed.h"

#include <algorithm>

namespace flowhand {

RigFeed::RigFeed(const RigFile& file, Rig& rig, const InputSource& source)
    : m_file(file), m_rig(rig), m_source(source), m_matches(matchSource(source, file.devices)),
      m_rigDevices(source.devices().size()) {
    for (std::size_t i = 0; i < m_matches.size(); ++i)
        if (m_matches[i].device)
            m_rigDevices[*m_matches[i].device] = static_cast<DeviceIndex>(i);
}

bool RigFeed::isAnyThere() const {
    return std::any_of(m_matches.begin(), m_matches.end(), [](const SourceMatch& match) {
        return match.device.has_value();
    });
}

std::vector<Phrase> RigFeed::missing() const {
    std::vector<Phrase> words;
    for (std::size_t i = 0; i < m_matches.size(); ++i)
        if (!m_matches[i].device)
            words.push_back(phrase("{1}: {2}").with(m_file.devices[i].name, m_matches[i].why));
    return words;
}

void RigFeed::take(const InputNews& news, std::vector<Sample>& samples, std::vector<Phrase>& messages) {
    for (const DeviceIndex unit : news.connected) {
        if (!m_rigDevices[unit])
            continue;
        if (const Status status = m_rig.connect(*m_rigDevices[unit], m_source.inputs(unit)); !status)
            messages.push_back(describe(status.error()));
    }
    messages.insert(messages.end(), news.messages.begin(), news.messages.end());
    for (Reading reading : news.readings) {
        const DeviceIndex unit = reading.device;
        if (!m_rigDevices[unit])
            continue;
        reading.device = *m_rigDevices[unit];
        std::vector<RawChange>& changes = m_changes[{reading.device, m_source.inputs(unit)[reading.input].name}];
        if (!m_isKeeping)
            changes.clear();
        changes.push_back({reading.time, reading.raw, reading.isNull});
        m_rig.take(reading, samples);
    }
    m_rig.advance(news.now, samples);
}

std::optional<std::pair<DeviceIndex, std::uint16_t>> RigFeed::placeOf(const InputRef& input) const {
    const std::optional<DeviceIndex> unit = m_matches[input.device].device;
    if (!unit)
        return std::nullopt;
    const std::vector<InputInfo>& inputs = m_source.inputs(*unit);
    for (std::size_t i = 0; i < inputs.size(); ++i)
        if (inputs[i].name == input.name)
            return std::pair(*unit, static_cast<std::uint16_t>(i));
    return std::nullopt;
}

void RigFeed::keepTraces() {
    m_isKeeping = true;
    m_reportsBefore = reports();
    for (auto& [input, changes] : m_changes)
        if (changes.size() > 1)
            changes.erase(changes.begin(), changes.end() - 1);
}

std::vector<RawTrace> RigFeed::takeTraces(const Control& control, Time begin, Time end) {
    const std::vector<std::uint64_t> now = reports();
    std::vector<RawTrace> traces;
    for (const InputRef& input : control.inputs()) {
        const std::string& device = m_file.devices[input.device].name;
        const bool isThere = std::any_of(traces.begin(), traces.end(), [&](const RawTrace& trace) {
            return trace.device == device && trace.input == input.name;
        });
        const auto found = m_changes.find({input.device, input.name});
        if (isThere || found == m_changes.end())
            continue;
        RawTrace trace{device, input.name, begin, end, now[input.device] - m_reportsBefore[input.device], {}};
        for (const RawChange& change : found->second) {
            if (change.time > end)
                break;
            if (change.time <= begin)
                trace.changes.clear(); // what an input said last before stands at the beginning
            trace.changes.push_back(change);
            trace.changes.back().time = std::max(change.time, begin);
        }
        traces.push_back(std::move(trace));
    }
    m_isKeeping = false;
    return traces;
}

std::vector<std::uint64_t> RigFeed::reports() const {
    std::vector<std::uint64_t> all(m_file.devices.size(), 0);
    for (std::size_t unit = 0; unit < m_rigDevices.size(); ++unit)
        if (m_rigDevices[unit])
            all[*m_rigDevices[unit]] = m_source.reports(static_cast<DeviceIndex>(unit));
    return all;
}

} // namespace flowhand
