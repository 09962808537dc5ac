#pragma once

#include <array>
#include <atomic>
#include <cstdlib>
#include <linux/sockios.h>
#include <memory>
#include <poll.h>
#include <string>
#include <sys/ioctl.h>
#include <sys/socket.h>
#include <unistd.h>
#include <vector>

#include "device/hidsystem.h"
#include "device/losswatch.h"

/// The two ends of one reader's stand-in for a hidraw node: a socket that keeps the boundaries of reports, and as many
/// reports as hidraw keeps for a reader (LossWatch::kKept); what comes while they wait is dropped, the newest first.
struct SocketNode {
    int read = -1;
    int send = -1;

    explicit SocketNode(std::size_t reportBytes) {
        int pair[2];
        if (socketpair(AF_UNIX, SOCK_SEQPACKET, 0, pair) != 0)
            std::abort();
        read = pair[0];
        send = pair[1];
        const std::vector<std::uint8_t> report(reportBytes);
        std::vector<std::uint8_t> buffer(reportBytes);
        // The system counts a report with what it needs to keep it; of the room asked for it gives the double.
        int room = 0;
        sendReport(report);
        if (ioctl(send, SIOCOUTQ, &room) != 0 || recv(read, buffer.data(), buffer.size(), 0) < 0)
            std::abort();
        room = room * static_cast<int>(flowhand::LossWatch::kKept) / 2;
        setsockopt(send, SOL_SOCKET, SO_SNDBUF, &room, sizeof room);
        std::uint64_t kept = 0;
        for (; sendReport(report); ++kept)
            ;
        while (recv(read, buffer.data(), buffer.size(), MSG_DONTWAIT) > 0)
            ;
        if (kept != flowhand::LossWatch::kKept)
            std::abort(); // the rows would measure something else
    }
    /// False when it was dropped.
    bool sendReport(const std::vector<std::uint8_t>& report) const {
        return ::send(send, report.data(), report.size(), MSG_DONTWAIT | MSG_NOSIGNAL) > 0;
    }
};

/// Stands for a device opened by hidapi: read with the same two calls of the system as hid_read_timeout makes. What it
/// leaves out is the kernel's HID layer.
class SocketHidDevice final : public flowhand::HidDevice {
public:
    /// Counts what it reads in `reports`, which must outlive it.
    SocketHidDevice(int file, std::atomic<std::uint64_t>& reports) : m_file(file), m_reports(reports) {}
    ~SocketHidDevice() override { close(m_file); }

    flowhand::Result<std::size_t> read(std::span<std::uint8_t> buffer, flowhand::Duration timeout) override {
        const auto millis = std::chrono::ceil<std::chrono::milliseconds>(timeout).count();
        pollfd ready{m_file, POLLIN, 0};
        if (poll(&ready, 1, static_cast<int>(millis)) <= 0)
            return std::size_t(0);
        const ssize_t length = ::read(m_file, buffer.data(), buffer.size());
        if (length <= 0)
            return flowhand::failure("device-lost", "the other end of the socket is closed");
        ++m_reports;
        return static_cast<std::size_t>(length);
    }

private:
    const int m_file;
    std::atomic<std::uint64_t>& m_reports;
};

class SocketHid final : public flowhand::HidSystem {
public:
    /// Takes over the sockets; the n-th is product `firstProduct` + n.
    SocketHid(std::vector<int> files, std::uint16_t vendor, std::uint16_t firstProduct,
              std::vector<std::uint8_t> descriptor)
        : m_files(std::move(files)), m_descriptor(std::move(descriptor)), m_reports(m_files.size()) {
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
        const auto at = static_cast<std::size_t>(std::stoi(device.path));
        return std::make_unique<SocketHidDevice>(m_files.at(at), m_reports.at(at));
    }
    std::unique_ptr<flowhand::HidWatch> watch() override { return std::make_unique<QuietWatch>(); }

    /// That were read of each device.
    [[nodiscard]] std::vector<std::uint64_t> reports() const { return {m_reports.begin(), m_reports.end()}; }

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
    std::vector<std::atomic<std::uint64_t>> m_reports; ///< by device
};
