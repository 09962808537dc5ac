#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "base/error.h"
#include "device/descriptor.h"
#include "device/device.h"
#include "device/inputs.h"

namespace flowhand {

/// How a report's length agrees with the descriptor.
enum class ReportFit : std::uint8_t {
    Exact,
    Truncated, ///< elements that lie in the missing part say nothing
    Overlong,  ///< the rest is ignored
    UnknownId  ///< the report is ignored
};

/// One input's new value, as in Reading.
struct InputChange {
    std::uint16_t input = 0;
    std::int64_t raw = 0;
    bool isNull = false;

    bool operator==(const InputChange&) const = default;
};

/// What one report says of one variable element.
struct ElementValue {
    std::size_t element = 0;           ///< index into Descriptor::elements
    std::int64_t raw = 0;              ///< as sent, sign-extended
    std::optional<std::int64_t> value; ///< as used: clamped; nothing: null
};

/// The usages that one array element asserts, in the order of its slots.
struct ArrayValue {
    std::size_t element = 0;
    std::vector<Usage> usages;
};

/// Everything one report says.
struct ReportValues {
    ReportFit fit = ReportFit::Exact;
    std::optional<std::uint8_t> id; ///< where the device has ids
    std::vector<ElementValue> elements;
    std::vector<ArrayValue> arrays;
};

/// Decodes a device's input reports. Owned by the thread that reads the device.
class ReportDecoder {
public:
    explicit ReportDecoder(Descriptor descriptor);

    [[nodiscard]] const Descriptor& descriptor() const { return m_descriptor; }
    [[nodiscard]] const std::vector<InputInfo>& inputs() const { return m_map.inputs; }

    /// Appends the inputs that this report changes; in the first report of an id all of its inputs.
    ReportFit decode(std::span<const std::uint8_t> report, std::vector<InputChange>& changes);

    /// From now on decode() tells of these inputs only, one flag an input; the others are not even decoded.
    void listenOnlyTo(const std::vector<bool>& inputs);

    /// Every element's value in this report, changed or not; totals and states stay as they are.
    [[nodiscard]] ReportValues values(std::span<const std::uint8_t> report) const;

private:
    /// One element, ready to be extracted.
    struct Field {
        std::uint32_t bit = 0;
        std::uint16_t size = 0;
        InputKind kind = InputKind::Axis;
        bool isSigned = false;
        bool hasRange = false;
        bool hasNull = false;
        std::uint16_t input = ElementInputs::kNone;
        std::int64_t lowest = 0;
        std::int64_t highest = 0;
        std::size_t element = 0;
    };
    /// Fields that share bytes with each other and with no field outside.
    struct Group {
        std::size_t firstByte = 0;
        std::size_t endByte = 0;
        std::vector<Field> fields; ///< of variables
        bool hasRelative = false;
        bool isWanted = true; ///< decode() tells of one of its fields
    };
    struct Report {
        std::uint8_t id = 0;
        std::size_t bytes = 0;
        std::vector<Group> groups;
        std::vector<Field> arrays;      ///< the first slot
        std::vector<std::uint8_t> last; ///< data of the report before, to see at once what did not change
        bool hasRelative = false;
    };
    struct InputState {
        std::int64_t raw = 0;
        bool isKnown = false;
        bool isNull = false;
    };
    /// A report's data without the id byte; no layout: unknown id.
    struct Data {
        std::optional<std::size_t> report;
        std::span<const std::uint8_t> bytes;
        ReportFit fit = ReportFit::UnknownId;
    };

    [[nodiscard]] Data dataOf(std::span<const std::uint8_t> report) const;
    [[nodiscard]] bool isWanted(std::uint16_t input) const {
        return input != ElementInputs::kNone && m_isWanted[input];
    }
    static void addVariable(Report& report, const Field& field);
    void decodeVariable(const Field& field, std::int64_t raw, std::vector<InputChange>& changes);
    void decodeArray(const Field& field, std::span<const std::uint8_t> data, std::vector<InputChange>& changes);
    void change(std::uint16_t input, std::int64_t raw, bool isNull, std::vector<InputChange>& changes);

    Descriptor m_descriptor;
    InputMap m_map;
    std::vector<Report> m_reports;
    std::vector<std::int16_t> m_byId;     ///< 256 indexes into m_reports; -1: unknown
    std::vector<InputState> m_states;     ///< by input
    std::vector<bool> m_isWanted;         ///< by input
    std::vector<std::uint8_t> m_asserted; ///< by slot value of the array in hand
};

} // namespace flowhand
