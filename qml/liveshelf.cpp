#include "liveshelf.h"

#include <optional>

namespace flowhand {

LiveShelf::LiveShelf(std::string storeFile)
    : m_file(std::move(storeFile)), m_thread([this] {
          serve();
      }) {}

LiveShelf::~LiveShelf() {
    {
        const std::lock_guard lock(m_mutex);
        m_isStopping = true;
    }
    m_news.notify_one();
    m_thread.join();
}

void LiveShelf::useStore(std::string storeFile) {
    const std::lock_guard lock(m_mutex);
    m_file = std::move(storeFile);
}

void LiveShelf::post(Work work, std::function<void()> then) {
    {
        const std::lock_guard lock(m_mutex);
        m_jobs.push_back({std::move(work), std::move(then), m_file});
    }
    m_news.notify_one();
}

void LiveShelf::serve() {
    std::optional<Result<Store>> store;
    std::string opened;
    for (;;) {
        Job job;
        {
            std::unique_lock lock(m_mutex);
            m_news.wait(lock, [this] {
                return m_isStopping || !m_jobs.empty();
            });
            if (m_jobs.empty())
                return;
            job = std::move(m_jobs.front());
            m_jobs.pop_front();
        }
        // What could not be opened may be free, or put right, by the next time.
        if (!store || !*store || opened != job.file)
            store.emplace(Store::open(job.file));
        opened = job.file;
        job.work(*store);
        QMetaObject::invokeMethod(&m_window, std::move(job.then), Qt::QueuedConnection);
    }
}

} // namespace flowhand
