#include "device/playback.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "device/usable.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

/// The recorded unit as the system would have listed it; its path is the file.
Result<DeviceInfo> unitOf(const NamedRecording& named) {
    const Recording& recording = named.recording;
    const auto id = parseIdText(std::string_view(recording.device).substr(0, recording.device.find(' ')));
    if (!id)
        return failure("bad-recording",
                       "this is no recording of a device: it has no line like 'device: 1209:0001 Quadrant', as "
                       "'flowhand devices --record FILE' writes it",
                       {named.file});
    if (recording.descriptor.empty())
        return failure("bad-recording", "this recording has no line 'descriptor: ...'", {named.file});
    DeviceInfo unit;
    unit.path = named.file;
    std::tie(unit.vendor, unit.product) = *id;
    unit.port = recording.port;
    unit.serial = recording.serial;
    return unit;
}

Result<std::vector<DeviceInfo>> unitsOf(const std::vector<NamedRecording>& recordings) {
    std::vector<DeviceInfo> units;
    std::set<std::string> files;
    for (const NamedRecording& named : recordings) {
        if (!files.insert(named.file).second)
            return failure("bad-recording", "this recording is named twice", {named.file});
        Result<DeviceInfo> unit = unitOf(named);
        if (!unit)
            return tl::unexpected(unit.error());
        units.push_back(std::move(*unit));
    }
    return units;
}

/// How much later than the first of them each was started; 0 where one does not say when.
std::vector<Duration> leads(const std::vector<NamedRecording>& recordings) {
    std::vector<Duration> all(recordings.size(), Duration{});
    Time first = kForever;
    for (const NamedRecording& named : recordings) {
        if (!named.recording.started)
            return all;
        first = std::min(first, *named.recording.started);
    }
    for (std::size_t i = 0; i < recordings.size(); ++i)
        all[i] = *recordings[i].recording.started - first;
    return all;
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
        Time last{};
        std::size_t number = 0;
        for (const RecordedReport& report : named.recording.reports) {
            ++number;
            if (!report.time || *report.time < last)
                return failure("bad-recording",
                               "report " + std::to_string(number) +
                                   (report.time ? " is earlier than the one before it"
                                                : " has no time: it cannot be told when it came"),
                               {named.file});
            last = *report.time;
            take(report, std::max(wholeTick(last + lead), kTick), *decoder);
        }
        return {};
    }

private:
    void take(const RecordedReport& report, Time time, ReportDecoder& decoder) {
        m_changes.clear();
        const ReportFit fit = decoder.decode(report.bytes, m_changes);
        for (const InputChange& change : m_changes)
            m_playback.readings.push_back({time, m_device, change.input, change.raw, change.isNull});
        if (fit != ReportFit::Exact && m_said.insert(fit).second)
            m_playback.notices.push_back(
                {time, m_device, DeviceChange::Remark, wishText(m_wish) + " " + fitRemark(fit)});
    }

    const DeviceIndex m_device;
    const DeviceWish& m_wish;
    Playback& m_playback;
    std::vector<InputChange> m_changes;
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
    const std::vector<Duration> lead = leads(recordings);
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
