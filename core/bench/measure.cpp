#include "bench/measure.h"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "bench/measurednoise.h"

namespace flowhand {

namespace {

Result<const Series*> seriesFor(const InputRef& input, const Measurement& measurement) {
    if (const Series* series = seriesIn(measurement, input))
        return series;
    return failure("unknown-input", "the device that was measured has no input '" + input.name + "'", input.place);
}

/// What an axis said while its switch was (not) operated, joined together: the time in between is cut out.
Series whileSwitched(const Series& axis, const Series& contact, const InputRef& ref, bool isOperated) {
    Series part;
    part.input = axis.input;
    if (axis.points.empty())
        return part;
    const Time begin = axis.points.front().time;
    std::size_t at = 0; // in the contact
    bool isWanted = false;
    Time since = begin; // that it is (not) wanted
    Duration cut{};     // so far
    std::int64_t held = axis.points.front().raw;
    const auto follow = [&](Time time) {
        for (; at < contact.points.size() && contact.points[at].time <= time; ++at) {
            const bool isClosed = contact.points[at].raw != contact.input.lowest;
            if (((isClosed != ref.isNormallyClosed) == isOperated) == isWanted)
                continue;
            isWanted = !isWanted;
            const Time change = std::max(contact.points[at].time, begin);
            if (isWanted) {
                cut += change - since;
                part.points.push_back({change - cut, held, false});
            }
            since = change;
        }
    };
    for (const RawChange& point : axis.points) {
        if (point.isNull)
            continue;
        follow(point.time);
        held = point.raw;
        if (isWanted)
            part.points.push_back({point.time - cut, held, false});
    }
    follow(axis.end);
    part.end = (isWanted ? axis.end : since) - cut;
    return part;
}

Result<Series> seriesOfAxis(const BenchControl& control, const BenchAxis& axis, const Measurement& measurement) {
    const std::vector<InputRef>& inputs = control.control->inputs();
    const Result<const Series*> series = seriesFor(inputs[axis.input], measurement);
    if (!series)
        return tl::unexpected(series.error());
    if (!axis.isSwitched)
        return **series;
    const Result<const Series*> contact = seriesFor(inputs[1], measurement);
    if (!contact)
        return tl::unexpected(contact.error());
    return whileSwitched(**series, **contact, inputs[1], *axis.isSwitched);
}

Duration intervalOf(const DeviceSeries& device) {
    return device.isPaced() ? device.medianInterval() : Duration{};
}

} // namespace

WantedInputs inputsOf(const BenchControl& control) {
    WantedInputs wanted;
    for (const InputRef& input : control.control->inputs())
        wanted[input.device].push_back(input.name);
    return wanted;
}

BenchResult<ControlCalibration> calibrateControl(const BenchControl& control, const Measurement& measurement) {
    if (!control.canBeCalibrated())
        return benchFailure("not-calibrated",
                            phrase("'{1}' is wired as '{2}'; levers and pedals are calibrated, contacts need none")
                                .with(control.control->name(), control.wiring));
    ControlCalibration result;
    double noise = 0.0;
    for (const BenchAxis& axis : control.axes) {
        const Result<Series> series = seriesOfAxis(control, axis, measurement);
        if (!series)
            return tl::unexpected<BenchError>(series.error());
        BenchResult<AxisCalibration> calibration = calibrateAxis(*series, axis.ask);
        const Phrase lead = axis.name.isEmpty() ? Phrase(control.inputNames[axis.input]) : axis.name;
        if (!calibration)
            return benchFailure(calibration.error().code,
                                phrase("{1}, {2}: {3}").with(control.control->name(), lead, calibration.error().words));
        const AxisLimits& filters = control.filters.axis;
        const bool isFiltered = filters.median > Duration{} || filters.smooth > Duration{};
        const std::optional<double> left =
            isFiltered ? noiseBehind(*series, restingOf(*series), filters.median, filters.smooth) : std::nullopt;
        noise = std::max(noise, std::max(kRoundingNoise, left.value_or(calibration->noise)));
        for (Finding finding : calibration->findings) {
            if (!axis.name.isEmpty())
                finding.text = phrase("{1}: {2}").with(axis.name, std::move(finding.text));
            result.findings.push_back(std::move(finding));
        }
        result.axes.push_back(std::move(*calibration));
    }
    BenchResult<std::vector<RigKey>> keys = rigKeysOf(control, result.axes, std::round(100 * noise) / 100);
    if (!keys)
        return tl::unexpected(keys.error());
    result.keys = std::move(*keys);
    return result;
}

Result<ControlHealth> measureControl(const BenchControl& control, const Measurement& measurement, bool isOperated) {
    ControlHealth health;
    std::vector<ContactEdges> contacts;
    const std::vector<InputRef>& inputs = control.control->inputs();
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const InputRef& input = inputs[i];
        const Result<const Series*> series = seriesFor(input, measurement);
        if (!series)
            return tl::unexpected(series.error());
        if (input.use == InputUse::Axis) {
            health.axes.emplace_back(control.inputNames[i], measureAxis(**series, control.axisHealth));
        } else if (input.use == InputUse::Contact && !input.hatDirection) {
            contacts.push_back(edgesOf(**series));
            health.contacts.emplace_back(
                control.inputNames[i],
                measureContact(contacts.back(), {isOperated && !control.isSwitch, control.hasFastEdges,
                                                 intervalOf(measurement.at(input.device))}));
        }
    }
    if (control.isSwitch) {
        SwitchHealthAsk ask = control.switchHealth;
        ask.isOperated = isOperated;
        health.switches.push_back(measureSwitch(contacts, ask));
    }
    return health;
}

DeviceHealths deviceHealthsOf(const Measurement& measurement, const std::vector<DeviceWish>& devices) {
    DeviceHealths all;
    for (const auto& [index, series] : measurement)
        all.emplace_back(devices[index].name, measureDevice(series));
    return all;
}

EvidenceRecord evidenceAbout(const ControlFingerprint& fingerprint, std::string_view kind) {
    EvidenceRecord record;
    record.kind = kind;
    record.unixSeconds =
        std::chrono::duration_cast<std::chrono::seconds>(std::chrono::system_clock::now().time_since_epoch()).count();
    record.control = fingerprint.control;
    record.signals = fingerprint.signals;
    record.fingerprint = fingerprint.hash;
    return record;
}

EvidenceRecord evidenceOf(std::string_view kind, const BenchControl& control, const ControlFingerprint& fingerprint,
                          const std::vector<DeviceWish>& devices, const Measurement& measurement, Soundness worst,
                          std::string result) {
    EvidenceRecord record = evidenceAbout(fingerprint, kind);
    record.isGood = worst != Soundness::Bad;
    record.result = std::move(result);
    for (const InputRef& input : control.control->inputs())
        if (const Series* series = seriesIn(measurement, input))
            record.raw.push_back(
                rawTraceOf(*series, devices[input.device].name, measurement.at(input.device).reports.size()));
    return record;
}

} // namespace flowhand
