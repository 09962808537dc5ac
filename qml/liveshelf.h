#pragma once

#include <condition_variable>
#include <deque>
#include <mutex>
#include <string>
#include <thread>

#include <QObject>

#include "presenter/runshelf.h"

namespace flowhand {

/// The runs of one store file, on a thread of its own that opens it when it is first asked. GUI thread.
class LiveShelf final : public RunShelf {
public:
    explicit LiveShelf(std::string storeFile);
    /// What was asked is done first: a note that was written is not lost.
    ~LiveShelf() override;

    /// For what is asked from now on.
    void useStore(std::string storeFile);

protected:
    void post(Work work, std::function<void()> then) override;

private:
    struct Job {
        Work work;
        std::function<void()> then;
        std::string file; ///< of the store that is meant
    };
    void serve();

    QObject m_window;   ///< answers are handed to its thread
    std::mutex m_mutex; ///< guards the three below
    std::string m_file;
    std::deque<Job> m_jobs;
    bool m_isStopping = false;
    std::condition_variable m_news;
    std::thread m_thread;
};

} // namespace flowhand
