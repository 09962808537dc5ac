#include "store/storerecorder.h"

#include <utility>

namespace flowhand {

namespace {

/// Leaves the disk 0.1 s of the 0.5 s that may be lost.
constexpr auto kJournalPeriod = std::chrono::milliseconds(400);

} // namespace

StoreRecorder::StoreRecorder(Result<Connection> connection) {
    if (connection)
        m_writer.emplace(std::move(*connection));
    else
        m_noConnection = connection.error();
}

StoreRecorder::~StoreRecorder() {
    stop();
}

Status StoreRecorder::begin(const RunHeader& header) {
    if (m_noConnection)
        return tl::unexpected(*m_noConnection);
    const Result<std::int64_t> id = m_writer->begin(header);
    if (!id)
        return tl::unexpected(id.error());
    m_runId = *id;
    m_thread = std::thread([this] {
        writeAll();
    });
    return {};
}

template <class Append>
Status StoreRecorder::handOver(Append append) {
    const std::lock_guard lock(m_mutex);
    if (!m_hasFailed && m_thread.joinable()) {
        const bool isFirst = m_pending.isEmpty();
        append(m_pending);
        if (isFirst)
            m_news.notify_one();
    }
    return takeError();
}

Status StoreRecorder::samples(std::span<const Sample> batch) {
    return handOver([&](RunBatch& pending) {
        pending.samples.insert(pending.samples.end(), batch.begin(), batch.end());
    });
}

Status StoreRecorder::command(const RunCommand& command) {
    return handOver([&](RunBatch& pending) {
        pending.commands.push_back(command);
    });
}

Status StoreRecorder::events(std::span<const Event> events) {
    return handOver([&](RunBatch& pending) {
        pending.events.insert(pending.events.end(), events.begin(), events.end());
    });
}

Status StoreRecorder::flush(Time /*now*/) {
    const std::lock_guard lock(m_mutex);
    m_isUrgent = !m_pending.isEmpty();
    m_news.notify_one();
    return takeError();
}

Status StoreRecorder::losses(const RunLosses& losses) {
    m_losses = losses;
    return {};
}

Status StoreRecorder::finish(Time end, const Score& score, const std::vector<StepResult>& results) {
    if (!m_thread.joinable())
        return {};
    stop();
    const std::lock_guard lock(m_mutex);
    if (m_hasFailed)
        return takeError();
    m_hasFailed = true; // nothing comes after the end
    return m_writer->finish(end, score, results, m_losses);
}

Status StoreRecorder::takeError() {
    if (!m_error)
        return {};
    return tl::unexpected(*std::exchange(m_error, std::nullopt));
}

void StoreRecorder::stop() {
    if (!m_thread.joinable())
        return;
    {
        const std::lock_guard lock(m_mutex);
        m_isStopping = true;
        m_news.notify_one();
    }
    m_thread.join();
}

void StoreRecorder::writeAll() {
    std::unique_lock lock(m_mutex);
    while (!m_isStopping || !m_pending.isEmpty()) {
        m_news.wait(lock, [this] {
            return m_isStopping || !m_pending.isEmpty();
        });
        m_news.wait_for(lock, kJournalPeriod, [this] {
            return m_isStopping || m_isUrgent;
        });
        m_isUrgent = false;
        const RunBatch batch = std::exchange(m_pending, {});
        lock.unlock();
        const Status written = m_writer->write(batch);
        if (written && !batch.samples.empty())
            m_safeUntil = batch.samples.back().time.count();
        lock.lock();
        if (!written) {
            m_error = written.error();
            m_hasFailed = true;
            m_pending = {};
            return;
        }
    }
}

} // namespace flowhand
