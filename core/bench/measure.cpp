#include "bench/measure.h"

#include <algorithm>
#include <chrono>

namespace flowhand {

namespace {

Result<const Series*> seriesFor(const InputRef& input, const DeviceSeries& device) {
    if (const Series* series = device.find(input.name))
        return series;
    return failure("unknown-input", "the device that was measured has no input '" + input.name + "'", input.place);
}

} // namespace

Result<ControlCalibration> calibrateControl(const BenchControl& control, const DeviceSeries& device) {
    if (!control.canBeCalibrated())
        return failure("not-calibrated", "'" + control.control->name() + "' is wired as '" + control.wiring +
                                             "'; axis, gates and two_axes are calibrated, contacts need none");
    ControlCalibration result;
    for (std::size_t i = 0; i < control.axes.size(); ++i) {
        const InputRef& input = control.control->inputs()[i];
        const Result<const Series*> series = seriesFor(input, device);
        if (!series)
            return tl::unexpected(series.error());
        Result<AxisCalibration> calibration = calibrateAxis(**series, control.axes[i]);
        if (!calibration) {
            Error error = calibration.error();
            error.message.insert(0, control.control->name() + ", " + input.name + ": ");
            return tl::unexpected(std::move(error));
        }
        result.findings.insert(result.findings.end(), calibration->findings.begin(), calibration->findings.end());
        result.axes.push_back(std::move(*calibration));
    }
    result.keys = rigKeysOf(control, result.axes);
    return result;
}

Result<ControlHealth> measureControl(const BenchControl& control, const DeviceSeries& device, bool isOperated) {
    ControlHealth health;
    std::vector<ContactEdges> contacts;
    for (const InputRef& input : control.control->inputs()) {
        const Result<const Series*> series = seriesFor(input, device);
        if (!series)
            return tl::unexpected(series.error());
        if (input.use == InputUse::Axis) {
            health.axes.emplace_back(input.name, measureAxis(**series, control.axisHealth));
        } else if (input.use == InputUse::Contact && !input.hatDirection) {
            contacts.push_back(edgesOf(**series));
            health.contacts.emplace_back(
                input.name, measureContact(contacts.back(), {isOperated && !control.isSwitch, control.hasFastEdges,
                                                             device.isPaced() ? device.medianInterval() : Duration{}}));
        }
    }
    if (control.isSwitch) {
        SwitchHealthAsk ask = control.switchHealth;
        ask.isOperated = isOperated;
        health.switches.push_back(measureSwitch(contacts, ask));
    }
    return health;
}

EvidenceRecord evidenceOf(std::string_view kind, const BenchControl& control, const ControlFingerprint& fingerprint,
                          const std::string& deviceName, const DeviceSeries& device, Soundness worst,
                          std::string result) {
    EvidenceRecord record;
    record.kind = kind;
    record.unixSeconds =
        std::chrono::duration_cast<std::chrono::seconds>(std::chrono::system_clock::now().time_since_epoch()).count();
    record.control = fingerprint.control;
    record.signals = fingerprint.signals;
    record.fingerprint = fingerprint.hash;
    record.isGood = worst != Soundness::Bad;
    record.result = std::move(result);
    for (const InputRef& input : control.control->inputs())
        if (const Series* series = device.find(input.name))
            record.raw.push_back(rawTraceOf(*series, deviceName, device.reports.size()));
    return record;
}

} // namespace flowhand
