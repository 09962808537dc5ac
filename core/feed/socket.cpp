#include "feed/socket.h"

#include <cstring>
#include <memory>
#include <netdb.h>
#include <netinet/in.h>
#include <poll.h>

namespace flowhand {

bool Socket::waitFor(short events, Duration wait) const {
    pollfd wanted{m_handle, events, 0};
    const auto millis = std::chrono::ceil<std::chrono::milliseconds>(wait).count();
    return ::poll(&wanted, 1, static_cast<int>(millis)) > 0;
}

bool SocketAddress::isSameHost(const SocketAddress& other) const {
    if (storage.ss_family != other.storage.ss_family)
        return false;
    if (storage.ss_family == AF_INET)
        return reinterpret_cast<const sockaddr_in&>(storage).sin_addr.s_addr ==
               reinterpret_cast<const sockaddr_in&>(other.storage).sin_addr.s_addr;
    return std::memcmp(&reinterpret_cast<const sockaddr_in6&>(storage).sin6_addr,
                       &reinterpret_cast<const sockaddr_in6&>(other.storage).sin6_addr, sizeof(in6_addr)) == 0;
}

Result<SocketAddress> findAddress(const std::string& host, std::uint16_t port, int type, bool isNumeric) {
    addrinfo hints{};
    hints.ai_socktype = type;
    hints.ai_flags = isNumeric ? AI_NUMERICHOST | AI_NUMERICSERV : AI_NUMERICSERV;
    addrinfo* list = nullptr;
    const int problem = ::getaddrinfo(host.c_str(), std::to_string(port).c_str(), &hints, &list);
    const std::unique_ptr<addrinfo, decltype(&::freeaddrinfo)> found(list, &::freeaddrinfo);
    if (problem != 0 || found == nullptr) {
        if (isNumeric)
            return failure("bad-address",
                           "'" + host + "' is no address; write one as in 127.0.0.1 or [::1], not a name");
        return failure("unknown-host", "there is no computer '" + host + "': " + ::gai_strerror(problem));
    }
    SocketAddress address;
    std::memcpy(&address.storage, found->ai_addr, found->ai_addrlen);
    address.length = found->ai_addrlen;
    return address;
}

} // namespace flowhand
