#pragma once

#include <array>
#include <cerrno>
#include <memory>
#include <poll.h>
#include <string>
#include <sys/socket.h>
#include <unistd.h>
#include <vector>

#include "device/hidsystem.h"

/// Stands for hidraw where no devices can be made: each device is a socket that keeps the boundaries of reports, read
/// with the same two calls of the system as hid_read_timeout makes. What it leaves out is the kernel's HID layer.
class SocketHidDevice final : public flowhand::HidDevice {
public:
    explicit SocketHidDevice(int file) : m_file(file) {}
    ~SocketHidDevice() override { close(m_file); }

    flowhand::Result<std::size_t> read(std::span<std::uint8_t> buffer, flowhand::Duration timeout) override {
        const auto millis = std::chrono::ceil<std::chrono::milliseconds>(timeout).count();
        pollfd ready{m_file, POLLIN, 0};
        if (poll(&ready, 1, static_cast<int>(millis)) <= 0)
            return std::size_t(0);
        const ssize_t length = ::read(m_file, buffer.data(), buffer.size());
        if (length <= 0)
            return flowhand::failure("device-lost", "the other end of the socket is closed");
        return static_cast<std::size_t>(length);
    }

private:
    const int m_file;
};

class SocketHid final : public flowhand::HidSystem {
public:
    /// Takes over the sockets; the n-th is product `firstProduct` + n.
    SocketHid(std::vector<int> files, std::uint16_t vendor, std::uint16_t firstProduct,
              std::vector<std::uint8_t> descriptor)
        : m_files(std::move(files)), m_descriptor(std::move(descriptor)) {
        for (std::size_t i = 0; i < m_files.size(); ++i) {
            flowhand::DeviceInfo info;
            info.path = std::to_string(i);
            info.vendor = vendor;
            info.product = static_cast<std::uint16_t>(firstProduct + i);
            info.port = "socket/" + info.path;
            info.name = info.port;
            info.readable = true;
            m_infos.push_back(info);
        }
    }

    std::vector<flowhand::DeviceInfo> list() override { return m_infos; }
    flowhand::Result<std::vector<std::uint8_t>> descriptor(const flowhand::DeviceInfo&) override {
        return m_descriptor;
    }
    flowhand::Result<std::unique_ptr<flowhand::HidDevice>> open(const flowhand::DeviceInfo& device) override {
        return std::make_unique<SocketHidDevice>(m_files.at(static_cast<std::size_t>(std::stoi(device.path))));
    }
    std::unique_ptr<flowhand::HidWatch> watch() override { return std::make_unique<QuietWatch>(); }

private:
    /// Nothing comes or goes.
    class QuietWatch final : public flowhand::HidWatch {
    public:
        QuietWatch() {
            if (pipe(m_pipe.data()) != 0)
                m_pipe = {-1, -1};
        }
        ~QuietWatch() override {
            close(m_pipe[0]);
            close(m_pipe[1]);
        }
        bool wait(flowhand::Duration timeout) override {
            pollfd ready{m_pipe[0], POLLIN, 0};
            poll(&ready, 1, static_cast<int>(std::chrono::ceil<std::chrono::milliseconds>(timeout).count()));
            return false;
        }
        void wake() override { (void)!write(m_pipe[1], "", 1); }

    private:
        std::array<int, 2> m_pipe{};
    };

    const std::vector<int> m_files;
    const std::vector<std::uint8_t> m_descriptor;
    std::vector<flowhand::DeviceInfo> m_infos;
};
