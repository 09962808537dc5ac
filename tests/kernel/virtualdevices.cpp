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

#include <chrono>
#include <fstream>
#include <iostream>
#include <map>
#include <memory>
#include <sstream>
#include <string>
#include <thread>

#include "device/recording.h"
#include "uhiddevice.h"

namespace {

using Clock = std::chrono::steady_clock;
using namespace std::chrono_literals;

constexpr auto kPatience = 60s;

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
            device(name).awaitOpen();
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

    UhidDevice& device(const std::string& name) {
        const auto at = m_devices.find(name);
        if (at == m_devices.end())
            giveUp("line " + std::to_string(m_line) + ": no device '" + name + "'");
        return *at->second;
    }

    void send(const std::string& name, std::istringstream& words) {
        std::string hex;
        words >> hex;
        device(name).send(bytes(hex));
    }

    std::vector<std::uint8_t> bytes(const std::string& hex) const {
        const auto bytes = flowhand::parseHex(hex);
        if (!bytes)
            giveUp("line " + std::to_string(m_line) + ": '" + hex + "' is not hexadecimal");
        return *bytes;
    }

    void plug(std::istringstream& words) {
        std::string name, id, port, hex;
        words >> name >> id >> port >> hex;
        DeviceShape shape;
        shape.name = name;
        shape.vendor = static_cast<std::uint16_t>(std::stoul(id.substr(0, 4), nullptr, 16));
        shape.product = static_cast<std::uint16_t>(std::stoul(id.substr(5, 4), nullptr, 16));
        shape.port = port;
        shape.descriptor = bytes(hex);
        m_devices.erase(name);
        m_devices[name] = std::make_unique<UhidDevice>(std::move(shape));
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

    std::map<std::string, std::unique_ptr<UhidDevice>> m_devices;
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
