#pragma once

#include <algorithm>
#include <condition_variable>
#include <deque>
#include <memory>
#include <mutex>
#include <string>

#include "feed/transport.h"

/// A feed's way in memory, with its faults; what the test holds of it. All functions from any thread. Nothing sleeps:
/// a wait ends with what it waits for.
class FakeLine {
public:
    /// Sends a datagram, and waits until the feed has dealt with it.
    void send(const std::string& bytes) {
        std::unique_lock lock(m_mutex);
        m_datagrams.push_back(bytes);
        settle(lock);
    }
    /// Lets the feed look at the clock.
    void pass() {
        std::unique_lock lock(m_mutex);
        m_isWoken = true;
        settle(lock);
    }
    /// Reading fails, and opening until mend().
    void breakOff() {
        const std::lock_guard lock(m_mutex);
        m_isBroken = true;
        m_changed.notify_all();
    }
    void mend() {
        const std::lock_guard lock(m_mutex);
        m_isBroken = false;
    }

    [[nodiscard]] std::unique_ptr<flowhand::FeedTransport> transport();

private:
    friend class FakeTransport;

    /// Until the feed waits for bytes, with none there.
    void settle(std::unique_lock<std::mutex>& lock) {
        m_isIdle = false;
        m_changed.notify_all();
        m_changed.wait(lock, [this] {
            return m_isIdle;
        });
    }

    std::mutex m_mutex; ///< guards all below
    std::condition_variable m_changed;
    std::deque<std::string> m_datagrams;
    bool m_isWoken = false;
    bool m_isIdle = false;
    bool m_isBroken = false;
};

class FakeTransport final : public flowhand::FeedTransport {
public:
    explicit FakeTransport(FakeLine& line) : m_line(line) {}

    flowhand::Status open() override {
        const std::lock_guard lock(m_line.m_mutex);
        if (m_line.m_isBroken)
            return flowhand::failure("no-answer", "the line is cut");
        return {};
    }
    flowhand::Result<flowhand::FeedRead> read(std::span<std::uint8_t> buffer, flowhand::Duration wait) override {
        std::unique_lock lock(m_line.m_mutex);
        if (m_line.m_datagrams.empty() && !m_line.m_isWoken) {
            m_line.m_isIdle = true;
            m_line.m_changed.notify_all();
        }
        m_line.m_changed.wait_for(lock, wait, [this] {
            return m_line.m_isBroken || m_line.m_isWoken || !m_line.m_datagrams.empty();
        });
        m_line.m_isWoken = false;
        if (m_line.m_isBroken)
            return flowhand::failure("feed-lost", "the line broke");
        if (m_line.m_datagrams.empty())
            return flowhand::FeedRead{};
        const std::string datagram = m_line.m_datagrams.front();
        m_line.m_datagrams.pop_front();
        std::copy(datagram.begin(), datagram.end(), buffer.begin());
        return flowhand::FeedRead{datagram.size(), true, false};
    }

private:
    FakeLine& m_line;
};

inline std::unique_ptr<flowhand::FeedTransport> FakeLine::transport() {
    return std::make_unique<FakeTransport>(*this);
}
