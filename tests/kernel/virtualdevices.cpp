// Makes HID devices in the kernel and lets them send reports by a script. For the guest; needs /dev/uhid.
//
//   virtualdevices SCRIPT
//
// Script, a line each, done one after the other; DEVICE is a word that names it here:
//   plug DEVICE VENDOR:PRODUCT PORT DESCRIPTOR   (hex) and wait until the kernel's driver has it
//   unplug DEVICE
//   goon                           the time since the last unplug does not count for 'at'
//   open DEVICE                    wait until a program has opened it
//   send DEVICE REPORT             (hex), at once
//   wait MILLISECONDS
//   go FILE WORD                   wait until FILE has WORD in it: from here on 'at' counts
//   sync MICROSECONDS FILE TEXT    wait until FILE has TEXT, behind what was waited for before: it is that time now
//   at MICROSECONDS DEVICE REPORT  at that time, by the kernel's steady clock
// Exit status 1 with a message when something does not come about within 60 s.

#include <cerrno>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <linux/uhid.h>
#include <map>
#include <memory>
#include <poll.h>
#include <sstream>
#include <string>
#include <thread>
#include <unistd.h>
#include <vector>

namespace {

using Clock = std::chrono::steady_clock;
using namespace std::chrono_literals;

constexpr auto kPatience = 60s;

[[noreturn]] void giveUp(const std::string& why) {
    std::cerr << "virtualdevices: " << why << std::endl;
    std::exit(1);
}

std::vector<std::uint8_t> bytesOf(const std::string& hex) {
    std::vector<std::uint8_t> bytes;
    for (std::size_t i = 0; i + 1 < hex.size(); i += 2)
        bytes.push_back(static_cast<std::uint8_t>(std::stoul(hex.substr(i, 2), nullptr, 16)));
    return bytes;
}

/// One device; unplugged by its destructor.
class Device {
public:
    Device(const std::string& name, unsigned vendor, unsigned product, const std::string& port,
           const std::vector<std::uint8_t>& descriptor) {
        m_file = open("/dev/uhid", O_RDWR | O_CLOEXEC);
        if (m_file < 0)
            giveUp(std::string("/dev/uhid: ") + std::strerror(errno));
        uhid_event event{};
        event.type = UHID_CREATE2;
        uhid_create2_req& request = event.u.create2;
        std::snprintf(reinterpret_cast<char*>(request.name), sizeof request.name, "%s", name.c_str());
        std::snprintf(reinterpret_cast<char*>(request.phys), sizeof request.phys, "%s", port.c_str());
        request.rd_size = static_cast<std::uint16_t>(descriptor.size());
        request.bus = 3; // BUS_USB of linux/input.h
        request.vendor = vendor;
        request.product = product;
        std::memcpy(request.rd_data, descriptor.data(), descriptor.size());
        write(event);
        // A report sent before the driver is bound would be lost.
        await(
            [&] {
                return m_isStarted;
            },
            name + ": no driver took the device; is its descriptor refused?");
        await(
            [&] {
                return hasNode(port);
            },
            name + ": the device has no hidraw node");
    }
    ~Device() { close(m_file); }
    Device(const Device&) = delete;
    Device& operator=(const Device&) = delete;

    void awaitOpen(const std::string& name) {
        await(
            [&] {
                return m_isOpen;
            },
            name + ": nobody opened it");
    }

    void send(const std::vector<std::uint8_t>& report) {
        uhid_event event{};
        event.type = UHID_INPUT2;
        event.u.input2.size = static_cast<std::uint16_t>(report.size());
        std::memcpy(event.u.input2.data, report.data(), report.size());
        write(event);
        listen(0ms);
    }

private:
    static bool hasNode(const std::string& port) {
        for (const auto& entry : std::filesystem::directory_iterator("/sys/class/hidraw")) {
            std::ifstream properties(entry.path() / "device/uevent");
            for (std::string line; std::getline(properties, line);)
                if (line == "HID_PHYS=" + port)
                    return std::filesystem::exists("/dev" / entry.path().filename());
        }
        return false;
    }

    template <class Condition>
    void await(Condition isSo, const std::string& otherwise) {
        const auto end = Clock::now() + kPatience;
        while (!isSo()) {
            if (Clock::now() > end)
                giveUp(otherwise);
            listen(10ms);
        }
    }

    void listen(std::chrono::milliseconds timeout) {
        pollfd ready{m_file, POLLIN, 0};
        while (poll(&ready, 1, static_cast<int>(timeout.count())) > 0) {
            uhid_event event{};
            if (read(m_file, &event, sizeof event) <= 0)
                return;
            if (event.type == UHID_START)
                m_isStarted = true;
            if (event.type == UHID_OPEN)
                m_isOpen = true;
            if (event.type == UHID_CLOSE)
                m_isOpen = false;
            timeout = 0ms;
        }
    }

    void write(const uhid_event& event) const {
        if (::write(m_file, &event, sizeof event) < 0)
            giveUp(std::string("uhid: ") + std::strerror(errno));
    }

    int m_file = -1;
    bool m_isStarted = false;
    bool m_isOpen = false;
};

class Player {
public:
    void play(std::istream& script) {
        std::string line;
        for (m_line = 1; std::getline(script, line); ++m_line) {
            std::istringstream words(line);
            std::string verb;
            if (words >> verb && verb.front() != '#')
                act(verb, words);
        }
    }

private:
    void act(const std::string& verb, std::istringstream& words) {
        std::string name;
        if (verb == "wait" || verb == "at") {
            long long amount = 0;
            words >> amount;
            if (verb == "wait") {
                std::this_thread::sleep_for(std::chrono::milliseconds(amount));
                return;
            }
            std::this_thread::sleep_until(m_go + std::chrono::microseconds(amount));
            words >> name;
            send(name, words);
        } else if (verb == "plug") {
            plug(words);
        } else if (verb == "unplug" && words >> name) {
            m_devices.erase(name);
            m_unplugged = Clock::now();
        } else if (verb == "goon") {
            m_go += Clock::now() - m_unplugged;
        } else if (verb == "open" && words >> name) {
            device(name).awaitOpen(name);
        } else if (verb == "send" && words >> name) {
            send(name, words);
        } else if (verb == "go") {
            std::string file, word;
            words >> file >> word;
            await(file, word);
            m_go = Clock::now();
        } else if (verb == "sync") {
            long long now = 0;
            std::string file, text;
            std::getline(words >> now >> file >> std::ws, text);
            await(file, text);
            m_go = Clock::now() - std::chrono::microseconds(now);
        } else {
            giveUp("line " + std::to_string(m_line) + ": '" + verb + "' is no instruction");
        }
    }

    Device& device(const std::string& name) {
        const auto at = m_devices.find(name);
        if (at == m_devices.end())
            giveUp("line " + std::to_string(m_line) + ": no device '" + name + "'");
        return *at->second;
    }

    void send(const std::string& name, std::istringstream& words) {
        std::string hex;
        words >> hex;
        device(name).send(bytesOf(hex));
    }

    void plug(std::istringstream& words) {
        std::string name, id, port, hex;
        words >> name >> id >> port >> hex;
        const unsigned vendor = static_cast<unsigned>(std::stoul(id.substr(0, 4), nullptr, 16));
        const unsigned product = static_cast<unsigned>(std::stoul(id.substr(5, 4), nullptr, 16));
        m_devices[name] = std::make_unique<Device>(name, vendor, product, port, bytesOf(hex));
        std::cout << "plugged " << name << std::endl;
    }

    /// Until the file has the text behind what was waited for before.
    void await(const std::string& file, const std::string& text) {
        const auto end = Clock::now() + kPatience;
        while (true) {
            std::ifstream stream(file);
            const std::string whole(std::istreambuf_iterator<char>(stream), {});
            const std::size_t at = whole.find(text, m_read);
            if (at != std::string::npos) {
                m_read = at + text.size();
                return;
            }
            if (Clock::now() > end)
                giveUp("'" + text + "' never came up in " + file);
            std::this_thread::sleep_for(5ms);
        }
    }

    std::map<std::string, std::unique_ptr<Device>> m_devices;
    Clock::time_point m_go = Clock::now();
    Clock::time_point m_unplugged = Clock::now();
    std::size_t m_read = 0; ///< so far in the file that is waited for
    int m_line = 0;
};

} // namespace

int main(int argc, char** argv) {
    std::ifstream script(argc == 2 ? argv[1] : "");
    if (!script)
        giveUp("usage: virtualdevices SCRIPT");
    Player().play(script);
}
