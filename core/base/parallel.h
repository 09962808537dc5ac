#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <system_error>
#include <thread>
#include <vector>

namespace flowhand {

/// Calls `work(i)` once for each i below `count`, in no order, on as many threads as the machine has cores, the
/// caller's among them; comes back when all are done. `work` must not throw.
template <class Work>
void inParallel(std::size_t count, const Work& work) {
    std::atomic<std::size_t> next{0};
    const auto go = [&] {
        for (std::size_t i = next++; i < count; i = next++)
            work(i);
    };
    const std::size_t threads = std::min<std::size_t>(count, std::max(1U, std::thread::hardware_concurrency()));
    std::vector<std::thread> others;
    others.reserve(threads);
    try {
        while (others.size() + 1 < threads)
            others.emplace_back(go);
    } catch (const std::system_error&) {
        // The machine has no thread to give: those there are do it.
    }
    go();
    for (std::thread& other : others)
        other.join();
}

} // namespace flowhand
