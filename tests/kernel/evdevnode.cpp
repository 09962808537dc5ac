#include "evdevnode.h"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <linux/input.h>
#include <sys/ioctl.h>
#include <unistd.h>
#include <utility>

#include "uhiddevice.h"

namespace {

template <std::size_t Size>
bool hasBit(const std::array<std::uint8_t, Size>& bits, int bit) {
    return (bits[static_cast<std::size_t>(bit) / 8] >> (bit % 8)) & 1;
}

using KeyBits = std::array<std::uint8_t, KEY_CNT / 8 + 1>;

} // namespace

std::string codeText(EventCode code) {
    const char* type = code.first == EV_KEY ? "KEY" : code.first == EV_ABS ? "ABS" : "REL";
    char text[32];
    std::snprintf(text, sizeof text, "%s 0x%02x", type, static_cast<unsigned>(code.second));
    return text;
}

EvdevNode::EvdevNode(const std::string& path) : m_file(open(path.c_str(), O_RDWR | O_NONBLOCK | O_CLOEXEC)) {
    if (m_file < 0)
        giveUp(path + ": " + std::strerror(errno));
    addCodes(EV_KEY, KEY_CNT);
    addCodes(EV_ABS, ABS_CNT);
    addCodes(EV_REL, REL_CNT);
}

EvdevNode::~EvdevNode() {
    if (m_file >= 0)
        close(m_file);
}

EvdevNode::EvdevNode(EvdevNode&& other) noexcept
    : m_file(std::exchange(other.m_file, -1)), m_codes(std::move(other.m_codes)), m_values(std::move(other.m_values)) {}

void EvdevNode::addCodes(int type, int most) {
    KeyBits bits{};
    if (ioctl(m_file, EVIOCGBIT(static_cast<unsigned>(type), bits.size()), bits.data()) < 0)
        giveUp(std::string("EVIOCGBIT: ") + std::strerror(errno));
    for (int code = 0; code < most; ++code)
        if (hasBit(bits, code)) {
            m_codes.insert({type, code});
            m_values[{type, code}] = 0;
        }
}

EvdevNode::Range EvdevNode::range(int axis) const {
    input_absinfo info{};
    if (ioctl(m_file, EVIOCGABS(static_cast<unsigned>(axis)), &info) < 0)
        giveUp(std::string("EVIOCGABS: ") + std::strerror(errno));
    return {info.minimum, info.maximum};
}

bool EvdevNode::takeFuzzOff() const {
    bool hadFuzz = false;
    for (const auto& [type, code] : m_codes) {
        if (type != EV_ABS)
            continue;
        input_absinfo info{};
        ioctl(m_file, EVIOCGABS(static_cast<unsigned>(code)), &info);
        hadFuzz |= info.fuzz != 0;
        info.fuzz = 0;
        if (ioctl(m_file, EVIOCSABS(static_cast<unsigned>(code)), &info) < 0)
            giveUp(std::string("EVIOCSABS: ") + std::strerror(errno));
    }
    return hadFuzz;
}

const std::map<EventCode, std::int64_t>& EvdevNode::values() {
    KeyBits keys{};
    ioctl(m_file, EVIOCGKEY(keys.size()), keys.data());
    for (auto& [code, value] : m_values) {
        if (code.first == EV_KEY)
            value = hasBit(keys, code.second) ? 1 : 0;
        if (code.first == EV_ABS) {
            input_absinfo info{};
            ioctl(m_file, EVIOCGABS(static_cast<unsigned>(code.second)), &info);
            value = info.value;
        }
    }
    addMovements();
    return m_values;
}

/// The other values are asked for, so that their events may be lost.
void EvdevNode::addMovements() {
    const auto first = m_codes.lower_bound({EV_REL, 0});
    const bool hasMovements = first != m_codes.end() && first->first == EV_REL;
    std::array<input_event, 64> events{};
    for (ssize_t length; (length = read(m_file, events.data(), sizeof events)) > 0;) {
        for (std::size_t i = 0; i < static_cast<std::size_t>(length) / sizeof(input_event); ++i) {
            if (hasMovements && events[i].type == EV_SYN && events[i].code == SYN_DROPPED)
                giveUp("events were lost: one report makes more of them than the kernel keeps");
            if (events[i].type == EV_REL)
                m_values[{EV_REL, events[i].code}] += events[i].value;
        }
    }
}

std::map<flowhand::Usage, std::vector<int>> EvdevNode::keys() const {
    std::map<flowhand::Usage, std::vector<int>> keys;
    input_keymap_entry entry{};
    entry.flags = INPUT_KEYMAP_BY_INDEX;
    for (entry.index = 0; ioctl(m_file, EVIOCGKEYCODE_V2, &entry) == 0; ++entry.index) {
        flowhand::Usage usage = 0;
        std::memcpy(&usage, entry.scancode, sizeof usage);
        keys[usage].push_back(static_cast<int>(entry.keycode));
    }
    return keys;
}

std::vector<EvdevNode> evdevNodesAt(const std::string& port) {
    std::map<int, std::string> paths; // by number: as they were made
    for (const auto& entry : std::filesystem::directory_iterator("/sys/class/input")) {
        const std::string name = entry.path().filename();
        std::string phys;
        std::getline(std::ifstream(entry.path() / "device/phys"), phys);
        if (name.rfind("event", 0) == 0 && phys == port)
            paths[std::stoi(name.substr(5))] = "/dev/input/" + name;
    }
    std::vector<EvdevNode> nodes;
    for (const auto& [number, path] : paths)
        nodes.emplace_back(path);
    return nodes;
}
