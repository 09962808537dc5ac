#include "review/remap.h"

#include <algorithm>
#include <optional>

#include "base/names.h"

namespace flowhand {

namespace {

struct SignalMap {
    SignalId to = kNoSignal;
    std::vector<std::optional<int>> positions; ///< of positions: by the old one
};

SignalMap mapOf(const Signal& signal, const Aircraft& aircraft) {
    SignalMap map;
    const std::optional<SignalId> found = aircraft.signals.find(signal.name);
    if (!found || aircraft.signals[*found].kind != signal.kind || !(aircraft.signals[*found].unit == signal.unit))
        return map;
    map.to = *found;
    const std::vector<std::string>& names = aircraft.signals[*found].positions;
    for (const std::string& name : signal.positions) {
        const auto at = std::find(names.begin(), names.end(), name);
        map.positions.push_back(at == names.end() ? std::nullopt : std::optional(static_cast<int>(at - names.begin())));
    }
    return map;
}

Value valueIn(const SignalMap& map, Value value) {
    if (map.positions.empty() || !value.isKnown() || value == Value::between())
        return value;
    const auto old = static_cast<std::size_t>(value.position());
    const std::optional<int> position = old < map.positions.size() ? map.positions[old] : std::nullopt;
    return position ? Value::position(*position) : Value::between();
}

} // namespace

RemappedRecord remapped(const RunHeader& header, const std::vector<Sample>& samples, const Aircraft& from,
                        const Aircraft& to) {
    std::vector<SignalMap> maps;
    for (const Signal& signal : from.signals.all())
        maps.push_back(mapOf(signal, to));
    RemappedRecord record;
    record.header = header;
    record.header.setup.controls.assign(to.controls.size(), {});
    for (const CockpitControl& control : from.controls) {
        const SignalId there = maps[indexOf(control.signal)].to;
        if (there != kNoSignal && to.isControl(there) && indexOf(control.signal) < header.setup.controls.size())
            record.header.setup.controls[indexOf(there)] = header.setup.controls[indexOf(control.signal)];
    }
    std::vector<bool> isLeftOut(maps.size());
    for (const Sample& sample : samples) {
        if (indexOf(sample.signal) >= maps.size())
            continue;
        const SignalMap& map = maps[indexOf(sample.signal)];
        if (map.to == kNoSignal) {
            isLeftOut[indexOf(sample.signal)] = true;
            continue;
        }
        record.samples.push_back(sample);
        record.samples.back().signal = map.to;
        record.samples.back().value = valueIn(map, sample.value);
    }
    std::vector<std::string> names;
    for (std::size_t i = 0; i < maps.size(); ++i)
        if (isLeftOut[i])
            names.push_back(from.signals.all()[i].label);
    if (!names.empty())
        record.remarks.push_back(
            phrase("The other aircraft file has no place for what was recorded of {1}.").with(joined(names, ", ")));
    return record;
}

} // namespace flowhand
