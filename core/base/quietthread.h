#pragma once

#include <csignal>
#include <thread>
#include <utility>

namespace flowhand {

/// A thread that signals never interrupt: to hidapi an interrupted wait looks like an unplugged device.
template <class Work>
[[nodiscard]] std::thread quietThread(Work work) {
    sigset_t all;
    sigset_t before;
    sigfillset(&all);
    pthread_sigmask(SIG_SETMASK, &all, &before);
    std::thread thread(std::move(work));
    pthread_sigmask(SIG_SETMASK, &before, nullptr);
    return thread;
}

} // namespace flowhand
