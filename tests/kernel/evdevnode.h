#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "device/descriptor.h"

/// An event's type and code (linux/input-event-codes.h).
using EventCode = std::pair<int, int>;

/// "ABS 0x00", "KEY 0x120".
[[nodiscard]] std::string codeText(EventCode code);

/// One /dev/input/event node, open: what the kernel makes of a HID device. Of one thread.
class EvdevNode {
public:
    struct Range {
        int lowest = 0;
        int highest = 0;
        bool operator==(const Range&) const = default;
    };
    explicit EvdevNode(const std::string& path);
    ~EvdevNode();
    EvdevNode(EvdevNode&& other) noexcept;
    EvdevNode(const EvdevNode&) = delete;

    /// The keys, absolute and relative axes that the node has.
    [[nodiscard]] const std::set<EventCode>& codes() const { return m_codes; }
    [[nodiscard]] Range range(int axis) const;
    /// Takes the smoothing off every axis; true when there was some.
    [[nodiscard]] bool takeFuzzOff() const;
    /// The values of codes() now; relative axes as the sum of their movements.
    [[nodiscard]] const std::map<EventCode, std::int64_t>& values();
    /// By usage the key codes of its occurrences in the device; KEY_RESERVED where the kernel maps none.
    [[nodiscard]] std::map<flowhand::Usage, std::vector<int>> keys() const;

private:
    void addCodes(int type, int most);
    void addMovements();

    int m_file = -1;
    std::set<EventCode> m_codes;
    std::map<EventCode, std::int64_t> m_values;
};

/// The nodes of the device at this port, in the order in which the kernel made them.
[[nodiscard]] std::vector<EvdevNode> evdevNodesAt(const std::string& port);
