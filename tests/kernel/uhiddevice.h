#pragma once

#include <chrono>
#include <cstdint>
#include <string>
#include <vector>

/// What a virtual device is to be.
struct DeviceShape {
    std::string name;
    std::uint16_t vendor = 0;
    std::uint16_t product = 0;
    std::string port;   ///< as the kernel tells it: HID_PHYS
    std::string serial; ///< HID_UNIQ; empty: none
    std::vector<std::uint8_t> descriptor;
};

/// A HID device in this kernel, made through /dev/uhid; unplugged by its destructor. Of one thread. What the kernel
/// refuses, or does not do within a minute, ends the program with a message.
class UhidDevice {
public:
    /// Returns when the kernel's driver has it and its hidraw node is there.
    explicit UhidDevice(DeviceShape shape);
    ~UhidDevice();
    UhidDevice(const UhidDevice&) = delete;
    UhidDevice& operator=(const UhidDevice&) = delete;

    [[nodiscard]] const DeviceShape& shape() const { return m_shape; }
    /// Waits until a program has opened it.
    void awaitOpen();
    /// The kernel has dealt with the report when this returns.
    void send(const std::vector<std::uint8_t>& report);

private:
    template <class Condition>
    void await(Condition isSo, const std::string& otherwise);
    void listen(std::chrono::milliseconds timeout);

    DeviceShape m_shape;
    int m_file = -1;
    bool m_isStarted = false;
    bool m_isOpen = false;
};

/// Ends the program, with exit status 1.
[[noreturn]] void giveUp(const std::string& why);
