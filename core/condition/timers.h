#pragma once

#include <cstdint>
#include <vector>

#include "condition/program.h"

namespace flowhand {

/// At most one timer for each of many watches, soonest first: a binary heap that knows where each stands.
class Timers {
public:
    /// kNever takes it out.
    void set(std::uint32_t watch, Key due);
    /// kNever when there is none.
    [[nodiscard]] Key soonest() const { return m_heap.empty() ? kNever : m_heap.front().due; }
    /// Takes out and returns the soonest; only when there is one.
    std::uint32_t take();

private:
    struct Timer {
        Key due = kNever;
        std::uint32_t watch = 0;
    };
    static constexpr std::uint32_t kNowhere = 0xFFFFFFFF;

    void put(std::uint32_t at, Timer timer);
    void settleAt(std::uint32_t at, Timer timer);
    void erase(std::uint32_t at);

    std::vector<Timer> m_heap;
    std::vector<std::uint32_t> m_places; // by watch
};

} // namespace flowhand
