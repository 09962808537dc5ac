#include "livedesk.h"

namespace flowhand {

LiveDesk::LiveDesk()
    : m_thread([this] {
          serve();
      }) {}

LiveDesk::~LiveDesk() {
    {
        const std::lock_guard lock(m_mutex);
        m_isStopping = true;
    }
    m_news.notify_one();
    m_thread.join();
}

void LiveDesk::post(Work work, std::function<void()> then) {
    {
        const std::lock_guard lock(m_mutex);
        m_jobs.push_back({std::move(work), std::move(then)});
    }
    m_news.notify_one();
}

void LiveDesk::serve() {
    TextCheck check;
    for (;;) {
        Job job;
        {
            std::unique_lock lock(m_mutex);
            m_news.wait(lock, [this] {
                return m_isStopping || !m_jobs.empty();
            });
            if (m_isStopping)
                return;
            job = std::move(m_jobs.front());
            m_jobs.pop_front();
        }
        job.work(check);
        QMetaObject::invokeMethod(&m_window, std::move(job.then), Qt::QueuedConnection);
    }
}

} // namespace flowhand
