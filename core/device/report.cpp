#include "device/report.h"

#include <algorithm>

#include "device/bits.h"

namespace flowhand {

namespace {

/// As used: an axis is clamped, a null state is nothing; a hat outside its range is released, with the null flag or
/// without (HUT, Hat Switch; practice). Without a range every value is good.
std::optional<std::int64_t> usedValue(std::int64_t raw, std::int64_t lowest, std::int64_t highest, bool hasRange,
                                      bool isNullOutside) {
    if (!hasRange || (raw >= lowest && raw <= highest))
        return raw;
    if (isNullOutside)
        return std::nullopt;
    return std::clamp(raw, lowest, highest);
}

} // namespace

ReportDecoder::ReportDecoder(Descriptor descriptor)
    : m_descriptor(std::move(descriptor)), m_map(makeInputs(m_descriptor)), m_byId(256, -1),
      m_states(m_map.inputs.size()), m_isWanted(m_map.inputs.size(), true) {
    for (const InputReport& report : m_descriptor.reports) {
        m_byId[report.id] = static_cast<std::int16_t>(m_reports.size());
        m_reports.push_back({});
        m_reports.back().id = report.id;
        m_reports.back().bytes = report.bytes();
    }
    for (std::size_t i = 0; i < m_descriptor.elements.size(); ++i) {
        const InputElement& element = m_descriptor.elements[i];
        Report& report = m_reports[static_cast<std::size_t>(m_byId[element.reportId])];
        Field field;
        field.bit = element.bit;
        field.size = element.size;
        field.kind = kindOf(element);
        field.isSigned = element.isSigned();
        field.hasRange = element.hasRange();
        field.hasNull = element.hasNull || field.kind == InputKind::Hat;
        field.input = m_map.elements[i].input;
        field.lowest = element.lowest;
        field.highest = element.highest;
        field.element = i;
        report.hasRelative |= element.isRelative && !element.isArray;
        if (element.isArray)
            report.arrays.push_back(field);
        else
            addVariable(report, field);
    }
}

/// Fields come in the order of their bits.
void ReportDecoder::addVariable(Report& report, const Field& field) {
    const std::size_t firstByte = field.bit / 8;
    if (report.groups.empty() || firstByte >= report.groups.back().endByte)
        report.groups.push_back({firstByte, firstByte, {}});
    Group& group = report.groups.back();
    group.endByte = std::max<std::size_t>(group.endByte, (field.bit + field.size + 7) / 8);
    group.hasRelative |= field.kind == InputKind::Relative;
    group.fields.push_back(field);
}

void ReportDecoder::listenOnlyTo(const std::vector<bool>& inputs) {
    m_isWanted = inputs;
    for (Report& report : m_reports)
        for (Group& group : report.groups)
            group.isWanted = std::any_of(group.fields.begin(), group.fields.end(), [&](const Field& field) {
                return isWanted(field.input);
            });
}

ReportDecoder::Data ReportDecoder::dataOf(std::span<const std::uint8_t> report) const {
    std::uint8_t id = 0;
    if (m_descriptor.hasReportIds) {
        if (report.empty())
            return {};
        id = report[0];
        report = report.subspan(1);
    }
    if (m_byId[id] < 0)
        return {};
    const auto index = static_cast<std::size_t>(m_byId[id]);
    const std::size_t wanted = m_reports[index].bytes;
    if (report.size() > wanted)
        return {index, report.first(wanted), ReportFit::Overlong};
    return {index, report, report.size() < wanted ? ReportFit::Truncated : ReportFit::Exact};
}

ReportFit ReportDecoder::decode(std::span<const std::uint8_t> report, std::vector<InputChange>& changes) {
    const Data data = dataOf(report);
    if (!data.report)
        return data.fit;
    Report& layout = m_reports[*data.report];
    const bool isSame =
        !data.bytes.empty() && std::equal(data.bytes.begin(), data.bytes.end(), layout.last.begin(), layout.last.end());
    if (isSame && !layout.hasRelative)
        return data.fit;
    const std::size_t comparable = std::min(data.bytes.size(), layout.last.size());
    for (const Group& group : layout.groups) {
        const auto isAsBefore = [&] {
            return group.endByte <= comparable &&
                   std::equal(data.bytes.begin() + static_cast<std::ptrdiff_t>(group.firstByte),
                              data.bytes.begin() + static_cast<std::ptrdiff_t>(group.endByte),
                              layout.last.begin() + static_cast<std::ptrdiff_t>(group.firstByte));
        };
        if (!group.isWanted || (!group.hasRelative && isAsBefore()))
            continue;
        for (const Field& field : group.fields)
            if (isWanted(field.input) && hasBits(data.bytes, field.bit, field.size))
                decodeVariable(field, extractBits(data.bytes, field.bit, field.size, field.isSigned), changes);
    }
    for (const Field& field : layout.arrays)
        decodeArray(field, data.bytes, changes);
    layout.last.assign(data.bytes.begin(), data.bytes.end());
    return data.fit;
}

void ReportDecoder::decodeVariable(const Field& field, std::int64_t raw, std::vector<InputChange>& changes) {
    const auto value = usedValue(raw, field.lowest, field.highest, field.hasRange, field.hasNull);
    if (field.kind == InputKind::Relative) {
        if (value && *value != 0)
            change(field.input, m_states[field.input].raw + *value, false, changes);
    } else if (value) {
        change(field.input, *value, false, changes);
    } else if (field.kind == InputKind::Hat) {
        change(field.input, raw, true, changes);
    }
}

/// A slot that is missing may hold any usage: then the array says nothing at all.
void ReportDecoder::decodeArray(const Field& field, std::span<const std::uint8_t> data,
                                std::vector<InputChange>& changes) {
    const InputElement& element = m_descriptor.elements[field.element];
    const std::vector<std::uint16_t>& inputs = m_map.elements[field.element].byIndex;
    if (inputs.empty() || !hasBits(data, field.bit, std::uint32_t(field.size) * element.count))
        return;
    m_asserted.assign(inputs.size(), 0);
    for (std::uint32_t slot = 0; slot < element.count; ++slot) {
        const std::int64_t raw = extractBits(data, field.bit + slot * field.size, field.size, field.isSigned);
        if (raw >= field.lowest && raw <= field.highest && std::uint64_t(raw - field.lowest) < inputs.size())
            m_asserted[static_cast<std::size_t>(raw - field.lowest)] = 1;
    }
    for (std::size_t i = 0; i < inputs.size(); ++i)
        if (isWanted(inputs[i]))
            change(inputs[i], m_asserted[i], false, changes);
}

void ReportDecoder::change(std::uint16_t input, std::int64_t raw, bool isNull, std::vector<InputChange>& changes) {
    InputState& state = m_states[input];
    const bool isSame = state.isKnown && state.isNull == isNull && (isNull || state.raw == raw);
    if (isSame)
        return;
    state = {raw, true, isNull};
    changes.push_back({input, raw, isNull});
}

ReportValues ReportDecoder::values(std::span<const std::uint8_t> report) const {
    const Data data = dataOf(report);
    ReportValues values;
    values.fit = data.fit;
    if (m_descriptor.hasReportIds && !report.empty())
        values.id = report[0];
    if (!data.report)
        return values;
    const Report& layout = m_reports[*data.report];
    for (const Group& group : layout.groups)
        for (const Field& field : group.fields) {
            if (!hasBits(data.bytes, field.bit, field.size))
                continue;
            const std::int64_t raw = extractBits(data.bytes, field.bit, field.size, field.isSigned);
            values.elements.push_back(
                {field.element, raw, usedValue(raw, field.lowest, field.highest, field.hasRange, field.hasNull)});
        }
    for (const Field& field : layout.arrays) {
        ArrayValue array{field.element, {}};
        const InputElement& element = m_descriptor.elements[field.element];
        for (std::uint32_t slot = 0; slot < element.count; ++slot) {
            const std::uint32_t bit = field.bit + slot * field.size;
            if (!hasBits(data.bytes, bit, field.size))
                break;
            if (const Usage usage = element.usageOfSlot(extractBits(data.bytes, bit, field.size, field.isSigned)))
                array.usages.push_back(usage);
        }
        values.arrays.push_back(std::move(array));
    }
    return values;
}

} // namespace flowhand
