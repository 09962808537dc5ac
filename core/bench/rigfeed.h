#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bench/inputsource.h"
#include "bench/rawtrace.h"
#include "rig/rig.h"
#include "rig/rigfile.h"

namespace flowhand {

/// Feeds a rig with what the devices of a source say, and keeps what its inputs said as evidence needs it. Rig file,
/// rig and source must outlive it. One thread.
class RigFeed {
public:
    RigFeed(const RigFile& file, Rig& rig, const InputSource& source);

    [[nodiscard]] bool isAnyThere() const;
    /// The rig's devices that are not there, with the reason.
    [[nodiscard]] std::vector<Phrase> missing() const;

    /// Appends the samples that the rig makes of it, and to `messages` what a person should know.
    void take(const InputNews& news, std::vector<Sample>& samples, std::vector<Phrase>& messages);

    /// Where the source has an input of the rig: its device and input; nothing while that is not there.
    [[nodiscard]] std::optional<std::pair<DeviceIndex, std::uint16_t>> placeOf(const InputRef& input) const;

    /// Every change of every input is kept from now on; before, only the last of each.
    void keepTraces();
    /// What the inputs of one control said since keepTraces(), and how they stood then; and forgets it.
    [[nodiscard]] std::vector<RawTrace> takeTraces(const Control& control, Time begin, Time end);

private:
    [[nodiscard]] std::vector<std::uint64_t> reports() const;

    const RigFile& m_file;
    Rig& m_rig;
    const InputSource& m_source;
    std::vector<SourceMatch> m_matches;                   ///< by the rig's device
    std::vector<std::optional<DeviceIndex>> m_rigDevices; ///< by the source's device
    bool m_isKeeping = false;
    std::vector<std::uint64_t> m_reportsBefore; ///< by the rig's device, at keepTraces()
    std::map<std::pair<DeviceIndex, std::string>, std::vector<RawChange>> m_changes;
};

} // namespace flowhand
