#pragma once

#include <array>
#include <atomic>
#include <csignal>
#include <cstddef>

namespace flowhand {

/// While it lives, Ctrl-C, a closed terminal and a request to end ask for the end instead of ending the program; before
/// and after, they end it. One at a time.
class Interrupt {
public:
    Interrupt() {
        s_isAsked = false;
        for (std::size_t i = 0; i < kSignals.size(); ++i)
            m_before[i] = std::signal(kSignals[i], [](int) {
                s_isAsked = true;
            });
    }
    ~Interrupt() {
        for (std::size_t i = 0; i < kSignals.size(); ++i)
            std::signal(kSignals[i], m_before[i]);
    }
    Interrupt(const Interrupt&) = delete;
    Interrupt& operator=(const Interrupt&) = delete;

    /// Any thread.
    [[nodiscard]] bool isAsked() const { return s_isAsked; }

private:
    static inline std::atomic<bool> s_isAsked = false; // a signal handler can reach nothing else
    static constexpr std::array kSignals{SIGINT, SIGTERM, SIGHUP};
    std::array<void (*)(int), kSignals.size()> m_before{};
};

} // namespace flowhand
