#include "bench/benchcontrol.h"

#include <algorithm>
#include <array>
#include <cstdio>

#include "base/names.h"
#include "base/tomlfile.h"
#include "bench/listtext.h"
#include "bench/millistext.h"
#include "bench/splitpoint.h"

namespace flowhand {

namespace {

std::int64_t countIn(const TomlNode& table, std::string_view key, std::int64_t missing = 0) {
    const TomlNode* node = table.find(key);
    return node != nullptr ? node->integer : missing;
}

AxisInFile ofRange(const TomlNode& table, const TomlNode& range) {
    AxisInFile axis;
    axis.low = range.items[0].integer;
    axis.high = range.items[1].integer;
    axis.endBand = countIn(table, "end_band");
    return axis;
}

AxisInFile ofAxis(const TomlNode& table, const Signal& signal) {
    AxisInFile axis;
    if (const TomlNode* points = table.find("points")) {
        for (const TomlNode& point : points->items)
            if (const Result<Value> value = parseValue(signal, point.find("value")->text))
                axis.points.push_back({point.find("at")->integer, value->number()});
        axis.low = axis.points.front().at;
        axis.high = axis.points.back().at;
        axis.endBand = countIn(table, "end_band");
    } else {
        axis = ofRange(table, *table.find("range"));
    }
    if (const TomlNode* centre = table.find("centre"))
        axis.centre = centre->integer;
    axis.deadBand = countIn(table, "dead_band");
    return axis;
}

AxisAsk askOf(const AxisInFile& axis) {
    AxisAsk ask;
    ask.hasIdle = axis.idle.has_value();
    ask.isInverted = axis.low && axis.high && *axis.low > *axis.high;
    ask.hasCentre = axis.centre.has_value();
    for (const AxisMap::Point& point : axis.points)
        ask.values.push_back(point.value);
    return ask;
}

/// By rising count, whatever their order in the file.
void readGates(const TomlNode& table, BenchControl& bench) {
    std::vector<std::pair<AxisInFile::Gate, std::string>> gates;
    for (const TomlNode& gate : table.find("gates")->items)
        gates.push_back(
            {{gate.find("at")->integer, countIn(gate, "band", countIn(table, "band"))}, gate.find("position")->text});
    std::sort(gates.begin(), gates.end(), [](const auto& a, const auto& b) {
        return a.first.at < b.first.at;
    });
    AxisAsk ask;
    AxisInFile axis;
    for (const auto& [gate, position] : gates) {
        axis.gates.push_back(gate);
        ask.gates.push_back(position);
    }
    bench.axisHealth.gateCount = ask.gates.size();
    bench.axes = {{0, std::nullopt, {}, ask, axis}};
}

/// Idle to full of the first part, and on beyond the split to full of the second.
AxisInFile ofSplit(const TomlNode& table) {
    const TomlNode& ranges = *table.find("ranges");
    AxisInFile axis;
    axis.low = ranges.items[1].items[1].integer;
    axis.high = ranges.items[0].items[1].integer;
    axis.idle = ranges.items[0].items[0].integer;
    axis.split = table.find("split")->integer;
    axis.endBand = countIn(table, "end_band");
    return axis;
}

/// Of the wirings with several ranges: one an input, or two of the first input, which a switch tells apart.
void readRanges(const TomlNode& table, BenchControl& bench) {
    const bool isSwitched = bench.wiring == "switched_axis";
    const std::vector<TomlNode>& ranges = table.find("ranges")->items;
    for (std::size_t i = 0; i < ranges.size(); ++i) {
        BenchAxis axis;
        axis.input = isSwitched ? 0 : i;
        axis.name = bench.inputNames[axis.input];
        if (isSwitched) {
            axis.isSwitched = i == 1;
            axis.name = (i == 1 ? phrase("{1} with its switch on") : phrase("{1} with its switch off"))
                            .with(std::move(axis.name));
        }
        axis.inFile = ofRange(table, ranges[i]);
        axis.ask = askOf(axis.inFile);
        bench.axes.push_back(std::move(axis));
    }
}

void readAxes(const TomlNode& table, const Signal& signal, BenchControl& bench) {
    if (bench.wiring == "axis") {
        const AxisInFile axis = ofAxis(table, signal);
        bench.axes = {{0, std::nullopt, {}, askOf(axis), axis}};
        bench.axisHealth.hasCentre = axis.centre.has_value();
        bench.valueUnit = signal.unit.symbol;
    } else if (bench.wiring == "gates") {
        readGates(table, bench);
    } else if (bench.wiring == "split_axis") {
        const AxisInFile axis = ofSplit(table);
        bench.axes = {{0, std::nullopt, {}, askOf(axis), axis}};
    } else if (bench.wiring == "two_axes" || bench.wiring == "switched_axis" || bench.wiring == "parking_latch") {
        readRanges(table, bench);
    }
}

Duration durationIn(const TomlNode& table, std::string_view key, Duration missing) {
    const TomlNode* node = table.find(key);
    return node != nullptr ? parseDuration(node->text).value_or(missing) : missing;
}

void readFilters(const TomlNode& table, BenchControl& bench) {
    constexpr std::array<std::string_view, 5> kOfAxis = {"axis", "gates", "split_axis", "switched_axis", "two_axes"};
    constexpr std::array<std::string_view, 10> kOfContact = {
        "contact", "on_off_on", "selector",     "coded_switch",  "zones",
        "toggle",  "set_clear", "step_buttons", "parking_latch", "switched_axis"};
    FiltersInFile& filters = bench.filters;
    filters.isOfAxis = std::find(kOfAxis.begin(), kOfAxis.end(), bench.wiring) != kOfAxis.end();
    filters.isOfContact = std::find(kOfContact.begin(), kOfContact.end(), bench.wiring) != kOfContact.end();
    filters.isOfGates = bench.wiring == "gates" || bench.wiring == "split_axis";
    if (const TomlNode* noise = table.find("noise"))
        filters.axis.noise = noise->kind == TomlNode::Kind::Float ? noise->real : static_cast<double>(noise->integer);
    filters.axis.spikeLimit = countIn(table, "spike_limit");
    filters.axis.settle = durationIn(table, "settle", std::chrono::milliseconds(20));
    filters.axis.median = durationIn(table, "median", {});
    filters.axis.smooth = durationIn(table, "smooth", {});
    filters.hysteresis = countIn(table, "hysteresis");
    filters.debounce = durationIn(table, "debounce", kDebounce);
}

void readSwitch(const TomlNode& table, BenchControl& bench) {
    bench.isSwitch = bench.wiring == "selector" || bench.wiring == "on_off_on";
    bench.hasFastEdges = bench.wiring == "encoder";
    bench.switchHealth.hasOpenPosition = bench.wiring == "on_off_on" || table.find("unwired") != nullptr;
    bench.switchHealth.transit = durationIn(table, "transit", bench.switchHealth.transit);
}

std::vector<std::string> inputNamesOf(const Control& control, const std::vector<DeviceWish>& devices) {
    const std::vector<InputRef>& inputs = control.inputs();
    const bool areOfOne = std::all_of(inputs.begin(), inputs.end(), [&](const InputRef& input) {
        return input.device == inputs.front().device;
    });
    std::vector<std::string> names;
    for (const InputRef& input : inputs)
        names.push_back((areOfOne ? "" : devices[input.device].name + ": ") + input.name);
    return names;
}

std::string pairText(const AxisCalibration& calibration) {
    return "[" + std::to_string(calibration.low.at) + ", " + std::to_string(calibration.high.at) + "]";
}

std::string pointsText(const AxisCalibration& calibration, const std::string& unit) {
    std::string text = "[\n";
    for (const ValuePlace& value : calibration.values)
        text +=
            "    { at = " + std::to_string(value.place.at) + ", value = \"" + exactText(value.value, unit) + "\" },\n";
    return text + "]";
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
        bench.inputNames = inputNamesOf(*bench.control, rig.devices);
        readAxes(table, signals[bench.control->signals().front()], bench);
        readSwitch(table, bench);
        readFilters(table, bench);
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

BenchStatus giveValues(BenchControl& control, const Signal& signal, std::string_view list) {
    if (control.wiring != "axis")
        return benchFailure("not-calibrated", phrase("'{1}' is wired as '{2}'; values are given to an axis alone")
                                                  .with(control.control->name(), control.wiring));
    std::vector<double> values;
    for (const std::string& text : parted(list, ',')) {
        const Result<Value> value = parseValue(signal, text);
        if (!value)
            return tl::unexpected<BenchError>(
                {value.error(), phrase("“{1}” is no value of it; write a number and its unit, as in {2}, with a point "
                                       "and no comma")
                                    .with(text, exactText(signal.highest, signal.unit.symbol))});
        const double number = value->number();
        if ((!values.empty() && number <= values.back()) ||
            (signal.lowest < signal.highest && (number < signal.lowest || number > signal.highest)))
            return benchFailure(
                "bad-values",
                phrase("'{1}' is out of order; values rise from the low end to the high end, both of "
                       "them included, within {2} to {3} {4}")
                    .with(text, numberText(signal.lowest), numberText(signal.highest), signal.unit.symbol));
        values.push_back(number);
    }
    if (values.size() < 2)
        return benchFailure("bad-values", phrase("give the values of two places or more, as in {1}")
                                              .with('"' + exactText(signal.lowest, signal.unit.symbol) + ", " +
                                                    exactText(signal.highest, signal.unit.symbol) + '"'));
    control.axes.front().ask.values = std::move(values);
    return {};
}

std::string exactText(double value, const std::string& unit) {
    char text[40];
    std::snprintf(text, sizeof text, "%.10g", value); // finer than any angle that is measured
    return text + (unit.empty() ? unit : " " + unit);
}

BenchResult<std::vector<RigKey>> rigKeysOf(const BenchControl& control,
                                           const std::vector<AxisCalibration>& calibrations, double noise) {
    std::int64_t endBand = 0;
    for (const AxisCalibration& calibration : calibrations)
        endBand = std::max(endBand, calibration.endBand);
    const AxisCalibration& first = calibrations.front();
    std::vector<RigKey> keys;
    if (control.wiring == "gates") {
        keys = {{"gates", gatesText(first)}, {"hysteresis", std::to_string(first.hysteresis)}};
    } else if (first.idle) {
        const std::optional<SplitPoint> split =
            splitPointOf(first.idle->at, first.high.at, first.low.at, noise, first.idle->spread);
        if (!split)
            return benchFailure("not-fitting",
                                phrase("'{1}': the way from idle to one of its ends is too short to tell from idle")
                                    .with(control.control->name()));
        keys = split->keys();
        keys.push_back({"end_band", std::to_string(std::min(endBand, split->mostEndBand()))});
    } else if (calibrations.size() > 1 || control.wiring == "parking_latch") {
        std::vector<std::string> ranges;
        for (const AxisCalibration& calibration : calibrations)
            ranges.push_back(pairText(calibration));
        keys = {{"ranges", "[" + joined(ranges, ", ") + "]"}};
        if (control.filters.isOfAxis)
            keys.push_back({"end_band", std::to_string(endBand)});
    } else {
        if (first.values.empty())
            keys = {{"range", pairText(first)}};
        else
            keys = {{"range", ""}, {"to", ""}, {"points", pointsText(first, control.valueUnit)}};
        keys.push_back({"end_band", std::to_string(endBand)});
        if (first.centre) {
            keys.push_back({"centre", std::to_string(first.centre->place.at)});
            keys.push_back({"dead_band", std::to_string(first.centre->deadBand)});
        }
    }
    if (control.filters.isOfAxis)
        keys.push_back({"noise", exactText(noise, {})});
    return keys;
}

std::vector<Phrase> filterWords(const FiltersInFile& filters) {
    std::vector<Phrase> words;
    if (filters.isOfAxis) {
        if (filters.axis.spikeLimit > 0)
            words.push_back(phrase("jumps beyond {1} counts must last for {2}")
                                .with(std::to_string(filters.axis.spikeLimit), millisText(filters.axis.settle)));
        if (filters.axis.median > Duration{})
            words.push_back(phrase("median of {1}").with(millisText(filters.axis.median)));
        if (filters.axis.smooth > Duration{})
            words.push_back(phrase("low-pass of {1}").with(millisText(filters.axis.smooth)));
    }
    if (filters.isOfGates)
        words.push_back(phrase("hysteresis {1} counts").with(std::to_string(filters.hysteresis)));
    if (filters.isOfContact)
        words.push_back(phrase("debounce {1}").with(millisText(filters.debounce)));
    return words;
}

} // namespace flowhand
