#include "device/playback.h"

#include <algorithm>
#include <set>

#include "device/recordedunit.h"
#include "device/usable.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

Result<std::vector<DeviceInfo>> unitsOf(const std::vector<NamedRecording>& recordings) {
    std::vector<DeviceInfo> units;
    std::set<std::string> files;
    for (const NamedRecording& named : recordings) {
        if (!files.insert(named.file).second)
            return failure("bad-recording", "this recording is named twice", {named.file});
        Result<DeviceInfo> unit = recordedUnit(named.recording, named.file);
        if (!unit)
            return tl::unexpected(unit.error());
        units.push_back(std::move(*unit));
    }
    return units;
}

std::vector<Duration> leadsOf(const std::vector<NamedRecording>& recordings) {
    std::vector<const Recording*> all;
    for (const NamedRecording& named : recordings)
        all.push_back(&named.recording);
    return recordingLeads(all);
}

/// Decodes one device's reports. Connected at time 0, so the first report is a tick later at least.
class Player {
public:
    Player(DeviceIndex device, const DeviceWish& wish, Playback& playback)
        : m_device(device), m_wish(wish), m_playback(playback) {}

    Status play(const NamedRecording& named, Duration lead) {
        Result<ReportDecoder> decoder = decoderFor(named.recording.descriptor, m_wish);
        if (!decoder)
            return tl::unexpected(decoder.error());
        m_playback.inputs[m_device] = decoder->inputs();
        m_playback.notices.push_back({Time{}, m_device, DeviceChange::Connected, {}});
        return decodeReports(
            named.recording, named.file, *decoder, Untimed::Refused,
            [&](Time time, const RecordedReport&, ReportFit fit, const std::vector<InputChange>& changes) {
                take(std::max(wholeTick(time + lead), kTick), fit, changes);
            });
    }

private:
    void take(Time time, ReportFit fit, const std::vector<InputChange>& changes) {
        for (const InputChange& change : changes)
            m_playback.readings.push_back({time, m_device, change.input, change.raw, change.isNull});
        if (fit != ReportFit::Exact && m_said.insert(fit).second)
            m_playback.notices.push_back({time, m_device, DeviceChange::Remark, fitRemark(m_wish, fit)});
    }

    const DeviceIndex m_device;
    const DeviceWish& m_wish;
    Playback& m_playback;
    std::set<ReportFit> m_said;
};

void sortByTime(Playback& playback) {
    const auto isEarlier = [](const auto& a, const auto& b) {
        return a.time < b.time;
    };
    std::stable_sort(playback.readings.begin(), playback.readings.end(), isEarlier);
    std::stable_sort(playback.notices.begin(), playback.notices.end(), isEarlier);
}

} // namespace

Result<Playback> playBack(const std::vector<DeviceWish>& wishes, const std::vector<NamedRecording>& recordings) {
    const Result<std::vector<DeviceInfo>> units = unitsOf(recordings);
    if (!units)
        return tl::unexpected(units.error());
    const std::vector<Duration> lead = leadsOf(recordings);
    const std::vector<WishMatch> matches =
        matchWishes(wishes, *units, std::vector<std::optional<DeviceInfo>>(wishes.size()));
    Playback playback;
    playback.inputs.resize(wishes.size());
    std::vector<bool> isUsed(recordings.size());
    for (std::size_t i = 0; i < wishes.size(); ++i) {
        const auto device = static_cast<DeviceIndex>(i);
        if (!matches[i].unit && matches[i].why.code == "equal-units")
            return tl::unexpected(matches[i].why);
        if (!matches[i].unit) {
            playback.notices.push_back(
                {Time{}, device, DeviceChange::Lost,
                 "there is no recording of " + wishText(wishes[i]) + ": name it by --recording"});
            continue;
        }
        const auto at = static_cast<std::size_t>(std::find_if(units->begin(), units->end(),
                                                              [&](const DeviceInfo& unit) {
                                                                  return unit.path == matches[i].unit->path;
                                                              }) -
                                                 units->begin());
        isUsed[at] = true;
        if (const Status played = Player(device, wishes[i], playback).play(recordings[at], lead[at]); !played)
            return tl::unexpected(played.error());
    }
    for (std::size_t at = 0; at < recordings.size(); ++at)
        if (!isUsed[at])
            return failure("unused-recording",
                           "the rig has no device for this recording of " + recordings[at].recording.device,
                           {recordings[at].file});
    sortByTime(playback);
    return playback;
}

} // namespace flowhand
