#pragma once

#include <atomic>

#include "base/time.h"

/// Stands until it is set.
class FakeClock final : public flowhand::Clock {
public:
    void set(flowhand::Time time) { m_now = time.count(); }
    [[nodiscard]] flowhand::Time now() const override { return flowhand::Time(m_now.load()); }

private:
    std::atomic<std::int64_t> m_now = 0;
};
