#include "feed/transport.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <poll.h>

#include "feed/serialline.h"
#include "feed/socket.h"

namespace flowhand {

namespace {

constexpr Duration kConnectWait = std::chrono::seconds(1);

std::string reason() {
    return std::strerror(errno);
}

/// Listens for datagrams.
class UdpTransport final : public FeedTransport {
public:
    explicit UdpTransport(const FeedSpec& spec) : m_spec(spec) {}

    Status open() override {
        if (m_socket.isOpen())
            return {};
        const Result<SocketAddress> own = findAddress(m_spec.host, m_spec.port, SOCK_DGRAM, true);
        if (!own)
            return tl::unexpected(own.error());
        if (!m_spec.sender.empty()) {
            Result<SocketAddress> sender = findAddress(m_spec.sender, 1, SOCK_DGRAM, true);
            if (!sender)
                return tl::unexpected(sender.error());
            m_sender = *sender;
        }
        Socket socket(::socket(own->storage.ss_family, SOCK_DGRAM | SOCK_NONBLOCK | SOCK_CLOEXEC, 0));
        if (socket.isOpen() && ::bind(socket.handle(), own->get(), own->length) == 0) {
            m_socket = std::move(socket);
            return {};
        }
        return failure("cannot-listen", "cannot listen for " + m_spec.title() + ": " + reason() +
                                            (errno == EADDRINUSE ? "; another program listens there: end it, or "
                                                                   "send to another port"
                                                                 : ""));
    }

    Result<FeedRead> read(std::span<std::uint8_t> buffer, Duration wait) override {
        if (!m_socket.waitFor(POLLIN, wait))
            return FeedRead{};
        SocketAddress from;
        from.length = sizeof from.storage;
        const ssize_t size = ::recvfrom(m_socket.handle(), buffer.data(), buffer.size(), 0,
                                        reinterpret_cast<sockaddr*>(&from.storage), &from.length);
        if (size < 0) {
            if (errno == EAGAIN || errno == EINTR)
                return FeedRead{};
            const std::string why = reason();
            m_socket = Socket();
            return failure("feed-lost", m_spec.title() + " cannot be read: " + why);
        }
        return FeedRead{static_cast<std::size_t>(size), true, m_sender && !m_sender->isSameHost(from)};
    }

private:
    const FeedSpec m_spec;
    std::optional<SocketAddress> m_sender;
    Socket m_socket;
};

/// Calls a program that listens.
class TcpTransport final : public FeedTransport {
public:
    explicit TcpTransport(const FeedSpec& spec) : m_spec(spec) {}

    Status open() override {
        m_socket = Socket();
        const Result<SocketAddress> address = findAddress(m_spec.host, m_spec.port, SOCK_STREAM, false);
        if (!address)
            return tl::unexpected(address.error());
        Socket socket(::socket(address->storage.ss_family, SOCK_STREAM | SOCK_NONBLOCK | SOCK_CLOEXEC, 0));
        if (!socket.isOpen())
            return noAnswer(reason());
        if (::connect(socket.handle(), address->get(), address->length) != 0) {
            if (errno != EINPROGRESS)
                return noAnswer(reason());
            if (!socket.waitFor(POLLOUT, kConnectWait))
                return noAnswer("nobody answers");
            int problem = 0;
            socklen_t length = sizeof problem;
            ::getsockopt(socket.handle(), SOL_SOCKET, SO_ERROR, &problem, &length);
            if (problem != 0)
                return noAnswer(std::strerror(problem));
        }
        m_socket = std::move(socket);
        return {};
    }

    Result<FeedRead> read(std::span<std::uint8_t> buffer, Duration wait) override {
        if (!m_socket.waitFor(POLLIN, wait))
            return FeedRead{};
        const ssize_t size = ::recv(m_socket.handle(), buffer.data(), buffer.size(), 0);
        if (size > 0)
            return FeedRead{static_cast<std::size_t>(size), false, false};
        if (size < 0 && (errno == EAGAIN || errno == EINTR))
            return FeedRead{};
        const std::string why = size == 0 ? "the other side hung up" : reason();
        m_socket = Socket();
        return failure("feed-lost", m_spec.title() + " broke off: " + why);
    }

private:
    [[nodiscard]] Status noAnswer(const std::string& why) const {
        return failure("no-answer", m_spec.title() + " is not there: " + why + "; is the program that sends running?");
    }

    const FeedSpec m_spec;
    Socket m_socket;
};

} // namespace

std::unique_ptr<FeedTransport> makeTransport(const FeedSpec& spec) {
    switch (spec.way) {
    case FeedWay::Udp:
        return std::make_unique<UdpTransport>(spec);
    case FeedWay::Tcp:
        return std::make_unique<TcpTransport>(spec);
    case FeedWay::Serial:
        break;
    }
    return makeSerialLine(spec);
}

} // namespace flowhand
