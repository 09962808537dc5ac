#include "bench/benchcontrol.h"

#include <algorithm>

#include "base/names.h"
#include "base/tomlfile.h"

namespace flowhand {

namespace {

bool isInverted(const TomlNode* range) {
    return range != nullptr && range->items.size() == 2 && range->items[0].integer > range->items[1].integer;
}

/// The gates' positions as they follow each other by rising count in the file.
std::vector<std::string> gatesOf(const TomlNode& table) {
    std::vector<std::pair<std::int64_t, std::string>> gates;
    if (const TomlNode* list = table.find("gates"))
        for (const TomlNode& gate : list->items)
            gates.emplace_back(gate.find("at")->integer, gate.find("position")->text);
    std::sort(gates.begin(), gates.end());
    std::vector<std::string> positions;
    for (const auto& [at, position] : gates)
        positions.push_back(position);
    return positions;
}

void readAxes(const TomlNode& table, BenchControl& bench) {
    if (bench.wiring == "axis") {
        AxisAsk ask;
        ask.isInverted = isInverted(table.find("range"));
        ask.hasCentre = table.find("centre") != nullptr;
        bench.axisHealth.hasCentre = ask.hasCentre;
        bench.axes = {ask};
    } else if (bench.wiring == "gates") {
        AxisAsk ask;
        ask.gates = gatesOf(table);
        bench.axisHealth.gateCount = ask.gates.size();
        bench.axes = {ask};
    } else if (bench.wiring == "two_axes") {
        const TomlNode* ranges = table.find("ranges");
        for (std::size_t i = 0; ranges != nullptr && i < ranges->items.size(); ++i) {
            AxisAsk ask;
            ask.isInverted = isInverted(&ranges->items[i]);
            bench.axes.push_back(ask);
        }
    }
}

void readSwitch(const TomlNode& table, BenchControl& bench) {
    bench.isSwitch = bench.wiring == "selector" || bench.wiring == "on_off_on";
    bench.hasFastEdges = bench.wiring == "encoder";
    bench.switchHealth.hasOpenPosition = bench.wiring == "on_off_on" || table.find("unwired") != nullptr;
    if (const TomlNode* transit = table.find("transit"))
        bench.switchHealth.transit = parseDuration(transit->text).value_or(bench.switchHealth.transit);
}

std::string pairText(const AxisCalibration& calibration) {
    return "[" + std::to_string(calibration.low.at) + ", " + std::to_string(calibration.high.at) + "]";
}

std::string gatesText(const AxisCalibration& calibration) {
    std::string text = "[\n";
    for (const GatePlace& gate : calibration.gates)
        text += "    { position = \"" + gate.position + "\", at = " + std::to_string(gate.place.at) +
                ", band = " + std::to_string(gate.band) + " },\n";
    return text + "]";
}

} // namespace

Result<std::vector<BenchControl>> benchControlsOf(const RigFile& rig, const SignalTable& signals) {
    const Result<std::vector<ControlFingerprint>> fingerprints = fingerprintsOf(rig, signals);
    if (!fingerprints)
        return tl::unexpected(fingerprints.error());
    const Result<TomlFile> toml = TomlFile::parse(rig.source, {});
    std::vector<BenchControl> all;
    for (std::size_t i = 0; i < rig.controls.size(); ++i) {
        const TomlNode& table = toml->root().find("control")->items[i];
        BenchControl bench;
        bench.index = i;
        bench.control = rig.controls[i].get();
        bench.wiring = table.find("wiring")->text;
        bench.fingerprint = (*fingerprints)[i];
        readAxes(table, bench);
        readSwitch(table, bench);
        all.push_back(std::move(bench));
    }
    return all;
}

Result<const BenchControl*> findBenchControl(const std::vector<BenchControl>& controls, const std::string& name) {
    std::vector<std::string> known;
    for (const BenchControl& bench : controls) {
        const std::vector<std::string>& signals = bench.fingerprint.signals;
        if (bench.control->name() == name || std::find(signals.begin(), signals.end(), name) != signals.end())
            return &bench;
        known.push_back(bench.control->name());
        known.insert(known.end(), signals.begin(), signals.end());
    }
    return failure("unknown-control", "this rig has no control '" + name + "'" + nearestHint(name, known));
}

std::vector<RigKey> rigKeysOf(const BenchControl& control, const std::vector<AxisCalibration>& calibrations) {
    double noise = 0.0;
    std::int64_t endBand = 0;
    for (const AxisCalibration& calibration : calibrations) {
        noise = std::max(noise, calibration.noise);
        endBand = std::max(endBand, calibration.endBand);
    }
    const AxisCalibration& first = calibrations.front();
    std::vector<RigKey> keys;
    if (control.wiring == "gates") {
        keys = {{"gates", gatesText(first)}, {"hysteresis", std::to_string(first.hysteresis)}};
    } else if (control.wiring == "two_axes") {
        std::string ranges;
        for (const AxisCalibration& calibration : calibrations)
            ranges += (ranges.empty() ? "[" : ", ") + pairText(calibration);
        keys = {{"ranges", ranges + "]"}, {"end_band", std::to_string(endBand)}};
    } else {
        keys = {{"range", pairText(first)}, {"end_band", std::to_string(endBand)}};
        if (first.centre) {
            keys.push_back({"centre", std::to_string(first.centre->place.at)});
            keys.push_back({"dead_band", std::to_string(first.centre->deadBand)});
        }
    }
    keys.push_back({"noise", numberText(noise)});
    return keys;
}

} // namespace flowhand
