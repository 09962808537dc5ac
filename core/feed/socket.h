#pragma once

#include <string>
#include <sys/socket.h>
#include <unistd.h>
#include <utility>

#include "base/error.h"
#include "base/time.h"

namespace flowhand {

/// Owns a socket; closes it.
class Socket {
public:
    Socket() = default;
    explicit Socket(int handle) : m_handle(handle) {}
    Socket(Socket&& other) noexcept : m_handle(std::exchange(other.m_handle, -1)) {}
    Socket& operator=(Socket&& other) noexcept {
        std::swap(m_handle, other.m_handle);
        return *this;
    }
    ~Socket() {
        if (m_handle >= 0)
            ::close(m_handle);
    }

    [[nodiscard]] int handle() const { return m_handle; }
    [[nodiscard]] bool isOpen() const { return m_handle >= 0; }
    /// Whether there is something to read or, for `events` POLLOUT, the connection is made, within `wait`.
    [[nodiscard]] bool waitFor(short events, Duration wait) const;

private:
    int m_handle = -1;
};

struct SocketAddress {
    sockaddr_storage storage{};
    socklen_t length = 0;

    [[nodiscard]] const sockaddr* get() const { return reinterpret_cast<const sockaddr*>(&storage); }
    /// Port aside.
    [[nodiscard]] bool isSameHost(const SocketAddress& other) const;
};

/// `isNumeric`: host is an address and nobody is asked for it. Errors: `bad-address`, `unknown-host`.
[[nodiscard]] Result<SocketAddress> findAddress(const std::string& host, std::uint16_t port, int type, bool isNumeric);

} // namespace flowhand
