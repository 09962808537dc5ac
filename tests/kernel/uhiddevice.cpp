#include "uhiddevice.h"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <linux/uhid.h>
#include <poll.h>
#include <unistd.h>

using namespace std::chrono_literals;

namespace {

using Clock = std::chrono::steady_clock;

constexpr auto kPatience = 60s;
constexpr std::uint16_t kUsb = 3; // BUS_USB of linux/input.h

template <std::size_t Size>
void put(__u8 (&field)[Size], const std::string& text) {
    std::snprintf(reinterpret_cast<char*>(field), Size, "%s", text.c_str());
}

void writeEvent(int file, const uhid_event& event) {
    if (::write(file, &event, sizeof event) < 0)
        giveUp(std::string("uhid: ") + std::strerror(errno));
}

/// The device has a hidraw node, and it is in /dev.
bool hasNode(const DeviceShape& shape) {
    for (const auto& entry : std::filesystem::directory_iterator("/sys/class/hidraw")) {
        std::ifstream properties(entry.path() / "device/uevent");
        int agreeing = 0;
        for (std::string line; std::getline(properties, line);)
            agreeing += line == "HID_PHYS=" + shape.port || line == "HID_UNIQ=" + shape.serial;
        if (agreeing == 2)
            return std::filesystem::exists("/dev" / entry.path().filename());
    }
    return false;
}

} // namespace

void giveUp(const std::string& why) {
    std::cerr << why << std::endl;
    std::exit(1);
}

UhidDevice::UhidDevice(DeviceShape shape) : m_shape(std::move(shape)) {
    m_file = open("/dev/uhid", O_RDWR | O_CLOEXEC);
    if (m_file < 0)
        giveUp(std::string("/dev/uhid: ") + std::strerror(errno));
    uhid_event event{};
    event.type = UHID_CREATE2;
    uhid_create2_req& request = event.u.create2;
    put(request.name, m_shape.name);
    put(request.phys, m_shape.port);
    put(request.uniq, m_shape.serial);
    request.rd_size = static_cast<std::uint16_t>(m_shape.descriptor.size());
    request.bus = kUsb;
    request.vendor = m_shape.vendor;
    request.product = m_shape.product;
    std::memcpy(request.rd_data, m_shape.descriptor.data(), m_shape.descriptor.size());
    writeEvent(m_file, event);
    // A report sent before the driver is bound would be lost.
    await(
        [&] {
            return m_isStarted;
        },
        "no driver took the device; is its descriptor refused?");
    await(
        [&] {
            return hasNode(m_shape);
        },
        "the device has no hidraw node");
}

UhidDevice::~UhidDevice() {
    close(m_file);
}

void UhidDevice::awaitOpen() {
    await(
        [&] {
            return m_isOpen;
        },
        "nobody opened it");
}

void UhidDevice::send(const std::vector<std::uint8_t>& report) {
    uhid_event event{};
    event.type = UHID_INPUT2;
    event.u.input2.size = static_cast<std::uint16_t>(report.size());
    std::memcpy(event.u.input2.data, report.data(), report.size());
    writeEvent(m_file, event);
    listen(0ms);
}

template <class Condition>
void UhidDevice::await(Condition isSo, const std::string& otherwise) {
    const auto end = Clock::now() + kPatience;
    while (!isSo()) {
        if (Clock::now() > end)
            giveUp(m_shape.name + ": " + otherwise);
        listen(10ms);
    }
}

void UhidDevice::listen(std::chrono::milliseconds timeout) {
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
