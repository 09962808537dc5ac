#include "device/devwatch.h"

#include <climits>
#include <cstring>
#include <poll.h>
#include <sys/eventfd.h>
#include <sys/inotify.h>
#include <unistd.h>

namespace flowhand {

namespace {

/// A file descriptor that is closed with its owner; -1: none.
class Handle {
public:
    explicit Handle(int number) : m_number(number) {}
    ~Handle() {
        if (m_number >= 0)
            ::close(m_number);
    }
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    [[nodiscard]] int number() const { return m_number; }

private:
    int m_number;
};

class DevWatch final : public HidWatch {
public:
    DevWatch()
        : m_inotify(::inotify_init1(IN_NONBLOCK | IN_CLOEXEC)), m_wake(::eventfd(0, EFD_NONBLOCK | EFD_CLOEXEC)) {
        // IN_ATTRIB: udev gives the rights after the node is there
        m_hasNotice = m_inotify.number() >= 0 &&
                      ::inotify_add_watch(m_inotify.number(), "/dev", IN_CREATE | IN_DELETE | IN_ATTRIB) >= 0;
    }

    bool wait(Duration timeout) override {
        pollfd files[] = {{m_wake.number(), POLLIN, 0}, {m_hasNotice ? m_inotify.number() : -1, POLLIN, 0}};
        const auto end = std::chrono::steady_clock::now() + timeout;
        for (;;) {
            const auto left = std::chrono::ceil<std::chrono::milliseconds>(end - std::chrono::steady_clock::now());
            const int ready = left.count() <= 0 ? 0 : ::poll(files, 2, static_cast<int>(left.count()));
            if (ready <= 0 || (files[0].revents & POLLIN))
                return ready == 0 && !m_hasNotice;
            if (namesHidraw())
                return true;
        }
    }

    void wake() override {
        const std::uint64_t one = 1;
        // It can only fail when the counter is full, and then the wait ends anyway
        [[maybe_unused]] const auto written = ::write(m_wake.number(), &one, sizeof one);
    }

private:
    /// Reads all that waits.
    bool namesHidraw() {
        alignas(inotify_event) char buffer[16 * (sizeof(inotify_event) + NAME_MAX + 1)];
        bool isNamed = false;
        for (ssize_t length; (length = ::read(m_inotify.number(), buffer, sizeof buffer)) > 0;) {
            for (ssize_t at = 0; at < length;) {
                const auto* event = reinterpret_cast<const inotify_event*>(buffer + at);
                const bool isLost = event->mask & IN_Q_OVERFLOW;
                isNamed |= isLost || (event->len > 0 && std::strncmp(event->name, "hidraw", 6) == 0);
                at += static_cast<ssize_t>(sizeof(inotify_event) + event->len);
            }
        }
        return isNamed;
    }

    Handle m_inotify;
    Handle m_wake;
    bool m_hasNotice = false;
};

} // namespace

std::unique_ptr<HidWatch> watchDev() {
    return std::make_unique<DevWatch>();
}

} // namespace flowhand
