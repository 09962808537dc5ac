#pragma once

#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>

#include <QObject>

#include "presenter/librarydesk.h"

namespace flowhand {

/// The library's files, on a thread of its own. GUI thread.
class LiveDesk final : public LibraryDesk {
public:
    LiveDesk();
    /// What was asked and has not begun is dropped: it changes nothing.
    ~LiveDesk() override;

protected:
    void post(Work work, std::function<void()> then) override;

private:
    struct Job {
        Work work;
        std::function<void()> then;
    };
    void serve();

    QObject m_window;   ///< answers are handed to its thread
    std::mutex m_mutex; ///< guards the two below
    std::deque<Job> m_jobs;
    bool m_isStopping = false;
    std::condition_variable m_news;
    std::thread m_thread;
};

} // namespace flowhand
