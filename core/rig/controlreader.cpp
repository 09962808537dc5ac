#include "rig/controlreader.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "base/names.h"

namespace flowhand {

namespace {

std::vector<std::string> namesOf(const std::vector<DeviceWish>& devices) {
    std::vector<std::string> names;
    for (const DeviceWish& device : devices)
        names.push_back(device.name);
    return names;
}

/// Far beyond the 32 bits of any report.
constexpr std::int64_t kFurthest = std::int64_t{1} << 40;

/// No step waits longer for a filter than this; a longer one is a slip of the unit.
constexpr Duration kLongestFilter = std::chrono::seconds(1);

constexpr std::string_view kDirections[] = {" up", " right", " down", " left"};

bool endsWith(std::string_view text, std::string_view end) {
    return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

} // namespace

ControlReader::ControlReader(TomlReader& toml, const RigScope& scope) : m_toml(toml), m_scope(scope) {
    readSignals();
    const std::optional<std::string> name = m_toml.text("name");
    m_name = name ? *name : m_signalIds.empty() ? std::string("a control") : signal().label;
    if (m_name.empty() && !m_signalIds.empty())
        m_name = signal().name;
    if (const std::optional<std::string> device = m_toml.text("device"))
        m_device = deviceNamed(*device, m_toml.placeOf("device"));
    else if (m_scope.devices.size() == 1)
        m_device = DeviceIndex{0};
}

void ControlReader::error(std::string code, const std::string& message, std::string_view key) {
    error(std::move(code), message, m_toml.placeOf(key));
}

void ControlReader::error(std::string code, const std::string& message, SourcePlace place) {
    m_toml.problems().error(std::move(code), message, std::move(place));
}

void ControlReader::readSignals() {
    const std::vector<std::string> names = m_toml.texts("signal");
    const TomlNode* node = m_toml.tableNode().find("signal");
    if (node == nullptr || (node->kind == TomlNode::Kind::Array && node->items.empty()))
        error("missing-key", "this control needs 'signal', the name of the cockpit control it is", "signal");
    std::vector<std::string> known;
    for (std::size_t i = 0; i < m_scope.controlCount; ++i)
        known.push_back(m_scope.signals.all()[i].name);
    bool isGood = true;
    for (const std::string& name : names) {
        const std::optional<SignalId> id = m_scope.signals.find(name);
        isGood = isGood && id && indexOf(*id) < m_scope.controlCount;
        if (id && indexOf(*id) < m_scope.controlCount)
            m_signalIds.push_back(*id);
        else if (id)
            error("unknown-signal", "'" + name + "' is not a control of this aircraft and cannot be wired", "signal");
        else
            error("unknown-signal", "this aircraft has no control '" + name + "'" + nearestHint(name, known), "signal");
    }
    if (!isGood)
        m_signalIds.clear();
}

bool ControlReader::demand(SignalKind kind, std::size_t at) {
    if (signal(at).kind == kind)
        return true;
    const std::string wanted = kind == SignalKind::Number  ? "a number"
                               : kind == SignalKind::OnOff ? "on or off"
                                                           : "a list of positions";
    error("wrong-wiring",
          "'" + signal(at).name + "' is not " + wanted + ", which this wiring makes; choose another wiring", "wiring");
    return false;
}

// --- inputs ---

std::optional<DeviceIndex> ControlReader::deviceNamed(const std::string& text, const SourcePlace& place) {
    for (std::size_t i = 0; i < m_scope.devices.size(); ++i)
        if (m_scope.devices[i].name == text)
            return static_cast<DeviceIndex>(i);
    error("unknown-device", "this rig has no device '" + text + "'" + nearestHint(text, namesOf(m_scope.devices)),
          place);
    return std::nullopt;
}

InputRef ControlReader::inputNamed(const std::string& text, const SourcePlace& place, InputUse use) {
    InputRef input;
    input.use = use;
    input.place = place;
    input.name = text;
    std::optional<DeviceIndex> device = m_device;
    if (const std::size_t colon = text.find(": "); colon != std::string::npos) {
        device = deviceNamed(text.substr(0, colon), place);
        input.name = text.substr(colon + 2);
    } else if (!device && m_toml.tableNode().find("device") == nullptr) {
        error("missing-device", "say which device '" + text + "' is of: device = \"name\"", place);
    }
    input.device = device.value_or(DeviceIndex{0});
    for (int i = 0; use == InputUse::Contact && i < 4; ++i) {
        if (input.name.rfind("hat ", 0) == 0 && endsWith(input.name, kDirections[i])) {
            input.hatDirection = 2 * i;
            input.name.resize(input.name.size() - kDirections[i].size());
        }
    }
    if (use == InputUse::Contact)
        input.isNormallyClosed = m_toml.boolean("normally_closed").value_or(false);
    return input;
}

std::vector<InputRef> ControlReader::inputs(std::string_view key, InputUse use, std::size_t least, std::size_t most) {
    std::vector<InputRef> all;
    const TomlNode* node = m_toml.node(key);
    const std::vector<std::string> names = m_toml.texts(key);
    for (std::size_t i = 0; i < names.size(); ++i) {
        const bool isItem = node->kind == TomlNode::Kind::Array && names.size() == node->items.size();
        all.push_back(inputNamed(names[i], isItem ? node->items[i].place : node->place, use));
    }
    if (all.size() < least || all.size() > most) {
        const std::string wanted = least == 1 && most == 1 ? "one input"
                                   : least == most         ? "a list of " + std::to_string(least) + " inputs"
                                   : all.size() < least    ? "at least " + std::to_string(least) + " inputs"
                                                           : "at most " + std::to_string(most) + " inputs";
        error("wrong-inputs", "'" + m_name + "' needs " + wanted + " in '" + std::string(key) + "'", key);
    }
    all.resize(std::clamp(all.size(), least, most));
    return all;
}

InputRef ControlReader::input(std::string_view key, InputUse use) {
    return inputs(key, use, 1, 1).front();
}

// --- values ---

Value ControlReader::valueOf(const std::string& text, const SourcePlace& place, std::size_t at) {
    const Result<Value> value = parseValue(signal(at), text);
    if (value)
        return *value;
    error(value.error().code, value.error().message, place);
    return Value::unknown();
}

Value ControlReader::value(std::string_view key, std::optional<Value> missing, std::size_t at) {
    const std::optional<std::string> text = m_toml.text(key);
    if (text)
        return valueOf(*text, m_toml.placeOf(key), at);
    if (!missing && m_toml.tableNode().find(key) == nullptr)
        error("missing-key", "'" + m_name + "' needs '" + std::string(key) + "', a value of " + signal(at).name, key);
    return missing.value_or(Value::unknown());
}

Value ControlReader::start() {
    const std::string text = m_toml.requiredText("start");
    const TomlNode* node = m_toml.tableNode().find("start");
    const bool isText = node != nullptr && node->kind == TomlNode::Kind::Text;
    return isText && text != "ask" ? valueOf(text, node->place) : Value::unknown();
}

std::vector<Value> ControlReader::values(std::string_view key) {
    std::vector<Value> all;
    const TomlNode* node = m_toml.node(key);
    const std::vector<std::string> texts = m_toml.texts(key);
    for (std::size_t i = 0; i < texts.size(); ++i)
        all.push_back(valueOf(texts[i], i < node->items.size() ? node->items[i].place : node->place));
    return all;
}

std::optional<Value> ControlReader::naturalValue(bool isOn) const {
    return signal().kind == SignalKind::OnOff ? std::optional(Value::onOff(isOn)) : std::nullopt;
}

std::int64_t ControlReader::counts(std::string_view key, std::int64_t missing) {
    const std::int64_t number = m_toml.integer(key).value_or(missing);
    if (number >= 0)
        return number;
    error("negative-count", "'" + std::string(key) + "' of '" + m_name + "' is a number of counts, 0 or more", key);
    return missing;
}

Duration ControlReader::duration(std::string_view key, Duration missing) {
    return std::chrono::ceil<std::chrono::microseconds>(m_toml.duration(key).value_or(missing));
}

AxisLimits ControlReader::limits() {
    AxisLimits limits;
    limits.noise = m_toml.number("noise").value_or(kRoundingNoise);
    if (limits.noise < 0 || limits.noise > static_cast<double>(kFurthest)) {
        error("bad-noise", "'noise' is a standard deviation in counts, 0 or more", "noise");
        limits.noise = 0;
    }
    // A change below three sigma cannot be told from noise; without noise every change is one.
    const auto ofNoise = static_cast<std::int64_t>(std::ceil(3 * limits.noise));
    limits.leastChange = std::max<std::int64_t>(1, counts("least_change", limits.noise > kRoundingNoise ? ofNoise : 1));
    limits.spikeLimit = counts("spike_limit", 0);
    limits.settle = duration("settle", std::chrono::milliseconds(20));
    if (limits.spikeLimit == 0 && m_toml.tableNode().find("settle") != nullptr)
        error("missing-key", "'settle' is the time a jump above 'spike_limit' must last; say that limit too", "settle");
    limits.median = duration("median", Duration{});
    limits.smooth = duration("smooth", Duration{});
    for (const auto& [key, time] : {std::pair("median", limits.median), std::pair("smooth", limits.smooth)})
        if (time < Duration{} || time > kLongestFilter)
            error("bad-value", "'" + std::string(key) + "' of '" + m_name + "' is a time of 1 s or less", key);
    if (limits.spikeLimit > 0 && (limits.median > Duration{} || limits.smooth > Duration{}))
        error("two-filters",
              "'spike_limit' looks for jumps, which 'median' and 'smooth' have made round already; against spikes take "
              "'median' with 'smooth', or 'spike_limit' alone",
              "spike_limit");
    return limits;
}

// --- axes ---

std::optional<std::pair<std::int64_t, std::int64_t>> ControlReader::span(const TomlNode& node) {
    bool isGood = node.kind == TomlNode::Kind::Array && node.items.size() == 2;
    for (const TomlNode& item : node.items)
        isGood = isGood && item.kind == TomlNode::Kind::Integer && std::abs(item.integer) < kFurthest;
    if (!isGood) {
        error("bad-range",
              "a range is two whole numbers of raw counts, as in [120, 3900]; the first is read at the "
              "low end of the control, so exchange them to invert it",
              node.place);
        return std::nullopt;
    }
    if (node.items[0].integer == node.items[1].integer) {
        error("empty-range",
              "the two ends of this range are the same; move the control from end to end and write "
              "down both counts",
              node.place);
        return std::nullopt;
    }
    return std::pair(node.items[0].integer, node.items[1].integer);
}

std::array<double, 3> ControlReader::wholeRange(std::size_t at) {
    const Signal& of = signal(at);
    if (!(of.lowest < of.highest))
        error("missing-key", "'" + of.name + "' has no range of its own; say what the ends mean: to = [low, high]",
              "signal");
    return {of.lowest, (of.lowest + of.highest) / 2, of.highest};
}

std::array<double, 3> ControlReader::valuesOfRange() {
    if (m_toml.tableNode().find("to") == nullptr)
        return wholeRange(0);
    const std::vector<double> to = m_toml.numbers("to");
    const Signal& of = signal();
    bool isGood = to.size() == 2 || to.size() == 3;
    for (std::size_t i = 0; i < to.size(); ++i)
        isGood = isGood && (i == 0 || to[i] > to[i - 1]) &&
                 (of.lowest >= of.highest || (to[i] >= of.lowest && to[i] <= of.highest));
    if (!isGood) {
        error("bad-values",
              "'to' is what the ends (or low end, centre and high end) mean in " + of.name + ", rising and within " +
                  numberText(of.lowest) + " to " + numberText(of.highest) + " " + of.unit.symbol,
              "to");
        return {0.0, 0.5, 1.0};
    }
    return to.size() == 2 ? std::array{to[0], (to[0] + to[1]) / 2, to[1]} : std::array{to[0], to[1], to[2]};
}

void ControlReader::checkShape(const AxisMap::Shape& shape) {
    const std::int64_t way = std::abs(shape.to - shape.from);
    if (!shape.centre) {
        if (shape.deadBand > 0)
            error("missing-key", "'dead_band' is either side of a 'centre'; give the centre's count too", "dead_band");
        if (2 * shape.endBand >= way)
            error("band-too-large", "the two 'end_band's leave nothing of the range between them", "end_band");
        return;
    }
    const std::int64_t lower = (*shape.centre - shape.from) * (shape.to > shape.from ? 1 : -1);
    const std::int64_t upper = way - lower;
    if (lower <= 0 || upper <= 0)
        error("centre-outside-range", "the centre must lie between the two ends of the range", "centre");
    else if (shape.deadBand + shape.endBand >= std::min(lower, upper))
        error("band-too-large", "'dead_band' and 'end_band' leave nothing of the range between them",
              m_toml.tableNode().find("dead_band") != nullptr ? "dead_band" : "end_band");
}

void ControlReader::readRange(AxisMap::Shape& shape) {
    if (const TomlNode* range = m_toml.node("range")) {
        if (const auto ends = span(*range))
            std::tie(shape.from, shape.to) = *ends;
    } else {
        error("missing-key",
              "'" + m_name + "' needs 'range', the raw counts at both ends (or 'points', counts and what they mean)",
              "range");
    }
    shape.values = valuesOfRange();
}

std::optional<AxisMap::Point> ControlReader::point(const TomlNode& table) {
    TomlReader entry(m_toml.file(), table, "'points' of '" + m_name + "'", m_toml.problems());
    const std::optional<std::int64_t> at = entry.integer("at");
    const std::string text = entry.requiredText("value");
    entry.finish();
    if (!at || std::abs(*at) >= kFurthest)
        error("missing-key", "a point needs 'at', a whole number of raw counts", entry.placeOf("at"));
    const Value value = text.empty() ? Value::unknown() : valueOf(text, entry.placeOf("value"));
    if (!at || std::abs(*at) >= kFurthest || !value.isKnown())
        return std::nullopt;
    const Signal& of = signal();
    if (of.lowest < of.highest && (value.number() < of.lowest || value.number() > of.highest))
        error("bad-values",
              "'" + text + "' is outside the range of " + of.name + ", " + numberText(of.lowest) + " to " +
                  numberText(of.highest) + " " + of.unit.symbol,
              entry.placeOf("value"));
    return AxisMap::Point{*at, value.number()};
}

/// The first and the last point are the ends; one of the others is the centre, if there is one.
void ControlReader::readPoints(AxisMap::Shape& shape) {
    for (const std::string_view other : {"range", "to"})
        if (m_toml.node(other) != nullptr)
            error("bad-points",
                  "'points' says where the ends are and what they mean; remove '" + std::string(other) +
                      "', or 'points'",
                  other);
    std::vector<AxisMap::Point> points;
    for (const TomlNode* table : m_toml.tables("points")) {
        const std::optional<AxisMap::Point> next = point(*table);
        if (!next)
            return;
        const bool isRising = points.size() < 2 || points[1].at > points[0].at;
        if (!points.empty() && (next->value <= points.back().value || next->at == points.back().at ||
                                (points.size() > 1 && (next->at > points.back().at) != isRising)))
            error("bad-points",
                  "points stand in the order of their values, the lowest first, and their counts all rise or all fall; "
                  "this one does not go on from the one before it",
                  table->place);
        points.push_back(*next);
    }
    if (points.size() < 2)
        return error("bad-points", "'points' are two or more, as in { at = 1420, value = \"12 deg\" }", "points");
    const bool isCentreKnown = std::any_of(points.begin(), points.end(), [&](const AxisMap::Point& each) {
        return each.at == shape.centre;
    });
    if (shape.centre && !isCentreKnown)
        error("bad-points", "with 'points' the centre must be one of them, which says what it means", "centre");
    shape = AxisMap::shapeThrough(points, shape.centre);
}

AxisMap ControlReader::map() {
    const AxisMap::Shape harmless{0, 1, std::nullopt, 0, 0, {0.0, 0.5, 1.0}};
    if (!demand(SignalKind::Number))
        return AxisMap(harmless);
    const std::size_t before = m_toml.problems().all().size();
    AxisMap::Shape shape = harmless;
    shape.centre = m_toml.integer("centre");
    if (m_toml.node("points") != nullptr)
        readPoints(shape);
    else
        readRange(shape);
    shape.deadBand = counts("dead_band", 0);
    shape.endBand = counts("end_band", 0);
    if (m_toml.problems().all().size() == before)
        checkShape(shape);
    return AxisMap(m_toml.problems().all().size() == before ? shape : harmless);
}

AxisMap ControlReader::mapOfPart(std::size_t part, std::size_t count, std::array<double, 3> values) {
    const AxisMap::Shape harmless{0, 1, std::nullopt, 0, 0, {0.0, 0.5, 1.0}};
    const std::size_t before = m_toml.problems().all().size();
    AxisMap::Shape shape = harmless;
    const TomlNode* ranges = m_toml.node("ranges");
    if (ranges == nullptr || ranges->kind != TomlNode::Kind::Array || ranges->items.size() != count) {
        if (part == 0)
            error("bad-range",
                  "'" + m_name + "' needs 'ranges', the raw counts at both ends of each of its " +
                      std::to_string(count) + " parts, as in [[120, 3900], [100, 3950]]",
                  "ranges");
        return AxisMap(harmless);
    }
    if (const auto ends = span(ranges->items[part]))
        std::tie(shape.from, shape.to) = *ends;
    if (values[0] < values[2])
        shape.values = values;
    shape.endBand = counts("end_band", 0);
    if (m_toml.problems().all().size() == before)
        checkShape(shape);
    return AxisMap(m_toml.problems().all().size() == before ? shape : harmless);
}

void expectRaws(InputRef& input, const AxisMap& map) {
    input.raws = std::pair(map.low(), map.high());
}

} // namespace flowhand
