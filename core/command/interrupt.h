#pragma once

#include <atomic>
#include <csignal>

namespace flowhand {

/// While it lives, Ctrl-C asks for the end instead of ending the program; before and after, it ends it. One at a time.
class Interrupt {
public:
    Interrupt() {
        s_isAsked = false;
        m_before = std::signal(SIGINT, [](int) {
            s_isAsked = true;
        });
    }
    ~Interrupt() { std::signal(SIGINT, m_before); }
    Interrupt(const Interrupt&) = delete;
    Interrupt& operator=(const Interrupt&) = delete;

    /// Any thread.
    [[nodiscard]] bool isAsked() const { return s_isAsked; }

private:
    static inline std::atomic<bool> s_isAsked = false; // a signal handler can reach nothing else
    void (*m_before)(int);
};

} // namespace flowhand
