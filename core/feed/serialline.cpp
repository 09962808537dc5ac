#include "feed/serialline.h"

#include <algorithm>
#include <cerrno>
#include <libserialport.h>
#include <unistd.h>

namespace flowhand {

namespace {

struct PortCloser {
    void operator()(sp_port* port) const {
        sp_close(port);
        sp_free_port(port);
    }
};

/// What the library last complained of.
std::string reason() {
    const std::unique_ptr<char, decltype(&sp_free_error_message)> text(sp_last_error_message(), &sp_free_error_message);
    return text ? std::string(text.get()) : std::string("no reason given");
}

class SerialLine final : public FeedTransport {
public:
    explicit SerialLine(const FeedSpec& spec) : m_spec(spec) {}

    Status open() override {
        m_port.reset();
        sp_port* found = nullptr;
        if (sp_get_port_by_name(m_spec.path.c_str(), &found) != SP_OK)
            return failure("no-serial-line",
                           "there is no serial line " + m_spec.path +
                               ": plug it in; those that are there have names such as /dev/ttyUSB0 and /dev/ttyACM0");
        std::unique_ptr<sp_port, PortCloser> port(found);
        if (sp_open(port.get(), SP_MODE_READ) != SP_OK)
            return failure("cannot-open-serial-line",
                           "cannot open " + m_spec.path + ": " + reason() +
                               (errno == EACCES ? "; on Debian the group dialout may: adduser YOU dialout, then log "
                                                  "in again"
                                                : ""));
        if (sp_set_baudrate(port.get(), m_spec.baud) != SP_OK || sp_set_bits(port.get(), 8) != SP_OK ||
            sp_set_parity(port.get(), SP_PARITY_NONE) != SP_OK || sp_set_stopbits(port.get(), 1) != SP_OK ||
            sp_set_flowcontrol(port.get(), SP_FLOWCONTROL_NONE) != SP_OK)
            return failure("cannot-set-serial-line",
                           "cannot set " + m_spec.path + " to " + std::to_string(m_spec.baud) + " baud: " + reason());
        m_port = std::move(port);
        return {};
    }

    Result<FeedRead> read(std::span<std::uint8_t> buffer, Duration wait) override {
        const auto millis = std::chrono::ceil<std::chrono::milliseconds>(wait).count();
        const int size = sp_blocking_read_next(m_port.get(), buffer.data(), buffer.size(),
                                               static_cast<unsigned>(std::max<std::int64_t>(millis, 1)));
        if (size > 0)
            return FeedRead{static_cast<std::size_t>(size), false, false};
        // A line that was pulled out may read as one that is silent.
        if (size == 0 && ::access(m_spec.path.c_str(), F_OK) == 0)
            return FeedRead{};
        m_port.reset();
        return failure("feed-lost", m_spec.title() + " is gone: was it pulled out?");
    }

private:
    const FeedSpec m_spec;
    std::unique_ptr<sp_port, PortCloser> m_port;
};

} // namespace

std::unique_ptr<FeedTransport> makeSerialLine(const FeedSpec& spec) {
    return std::make_unique<SerialLine>(spec);
}

std::vector<SerialLineInfo> serialLines() {
    sp_port** list = nullptr;
    if (sp_list_ports(&list) != SP_OK)
        return {};
    const std::unique_ptr<sp_port*, decltype(&sp_free_port_list)> owner(list, &sp_free_port_list);
    std::vector<SerialLineInfo> lines;
    for (sp_port** port = list; *port != nullptr; ++port) {
        const char* description = sp_get_port_description(*port);
        lines.push_back({sp_get_port_name(*port), description != nullptr ? description : ""});
    }
    std::sort(lines.begin(), lines.end(), [](const SerialLineInfo& a, const SerialLineInfo& b) {
        return a.path < b.path;
    });
    return lines;
}

} // namespace flowhand
