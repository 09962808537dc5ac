#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "device/report.h"
#include "evdevnode.h"
#include "refereecorpus.h"

/// One code of an event node beside what we say of it.
struct ShownControl {
    std::size_t node = 0;
    EventCode code;
    std::string name;                         ///< of our input
    std::optional<std::int64_t> ours;         ///< what our decoder says; nothing: not yet reported, or no control
    std::int64_t expected = 0;                ///< ours, or what a listed deviation makes of it
    const char* why = nullptr;                ///< that deviation, where the mapping brings it
    const char* whyNow = nullptr;             ///< where the last report does
    std::optional<EvdevNode::Range> ourRange; ///< of an absolute axis
    std::optional<EvdevNode::Range> expectedRange;
    std::vector<std::uint16_t> inputs; ///< that it shows
};

/// What the kernel's event nodes have to show for a device when our reading of its descriptor and reports is right:
/// the mapping of drivers/hid/hid-input.c in Linux 6.1 (from memory, borne out by the nodes themselves) with the
/// listed deviations, and nothing else. Of one thread.
class KernelView {
public:
    /// References must outlive it. `keys` are the kernel's own key codes by usage, `nodeCount` the nodes it made.
    KernelView(const SampleDevice& device, const flowhand::ReportDecoder& decoder,
               std::map<flowhand::Usage, std::vector<int>> keys);

    /// A report that was decoded; `states` are our inputs' values after it.
    struct InputState {
        bool isKnown = false;
        bool isNull = false;
        std::int64_t raw = 0;
    };
    void take(const flowhand::ReportValues& values, std::span<const std::uint8_t> data,
              const std::vector<InputState>& states);

    [[nodiscard]] const std::vector<ShownControl>& shown() const { return m_shown; }
    [[nodiscard]] std::size_t nodeCount() const { return m_applications.size(); }
    /// Found in the mapping alone.
    [[nodiscard]] const std::set<std::string>& deviations() const { return m_deviations; }
    /// Controls that the kernel hides without a deviation that says so.
    [[nodiscard]] const std::vector<std::string>& unexplained() const { return m_unexplained; }

private:
    struct Variable {
        std::size_t element = 0;
        std::uint16_t input = 0;
        EvdevNode::Range range;         ///< as the kernel reads it
        std::vector<std::size_t> shown; ///< indexes; empty: hidden; a hat has two
        std::int64_t raw = 0;           ///< of the report before; 0 at first
    };
    struct Array {
        std::size_t element = 0;
        std::vector<std::optional<std::size_t>> shown; ///< by index of the kernel's usages
        std::vector<flowhand::Usage> usages;           ///< those
        std::vector<std::int64_t> slots;               ///< values of the report before; 0 at first
        bool hasChanged = false;
    };

    void addExtras(const Difference& difference);
    void mapVariable(std::size_t element);
    void mapArray(std::size_t element);
    void mapAxis(Variable& variable, int code);
    void mapHat(Variable& variable);
    void mapRelative(Variable& variable);
    [[nodiscard]] std::optional<std::size_t> mapKey(std::size_t node, flowhand::Usage usage);
    std::size_t add(std::size_t node, EventCode code, std::uint16_t input);
    void hide(flowhand::Usage usage, const char* why);
    [[nodiscard]] std::optional<std::size_t> find(std::size_t node, EventCode code) const;
    [[nodiscard]] std::size_t nodeOf(const flowhand::InputElement& element);
    [[nodiscard]] EvdevNode::Range rangeOf(const flowhand::InputElement& element);
    void takeVariable(Variable& variable, std::int64_t raw, const InputState& state);
    void takeHat(const Variable& variable, std::int64_t raw, const InputState& state);
    void takeArray(Array& array, std::span<const std::uint8_t> data);
    [[nodiscard]] const flowhand::InputElement& elementAt(std::size_t index) const {
        return m_decoder.descriptor().elements[index];
    }

    const SampleDevice& m_device;
    const flowhand::ReportDecoder& m_decoder;
    flowhand::InputMap m_map;
    std::map<flowhand::Usage, std::vector<int>> m_keys;
    std::map<flowhand::Usage, std::size_t> m_keysTaken;
    std::vector<flowhand::Usage> m_applications; ///< by node
    std::map<std::uint8_t, std::size_t> m_nodes; ///< by report id
    std::vector<ShownControl> m_shown;
    std::map<std::size_t, Variable> m_variables; ///< by element
    std::map<std::size_t, Array> m_arrays;       ///< by element
    std::set<std::string> m_deviations;
    std::vector<std::string> m_unexplained;
};
