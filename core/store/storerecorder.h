#pragma once

#include <atomic>
#include <condition_variable>
#include <cstdint>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "session/record.h"
#include "store/runwriter.h"

namespace flowhand {

/// Records a run on a thread of its own, the store's writer, so that a slow disk never holds up the session: its calls
/// only hand over. begin() and finish() wait for the disk. An error of the writer comes with the next call.
///
/// What was handed over is written at the latest 0.4 s later, whether flush() is called or not; with the time the disk
/// takes, a crash loses at most the last 0.5 s.
class StoreRecorder final : public Recorder {
public:
    /// `connection` may be the error for which there is none; begin() gives it.
    explicit StoreRecorder(Result<Connection> connection);
    /// Writes what is pending. A run without finish() stays one that was cut off.
    ~StoreRecorder() override;

    [[nodiscard]] Status begin(const RunHeader& header) override;
    [[nodiscard]] Status samples(std::span<const Sample> batch) override;
    [[nodiscard]] Status command(const RunCommand& command) override;
    [[nodiscard]] Status events(std::span<const Event> events) override;
    [[nodiscard]] Status flush(Time now) override;
    [[nodiscard]] Status losses(const RunLosses& losses) override;
    [[nodiscard]] Status finish(Time end, const Score& score, const std::vector<StepResult>& results) override;
    [[nodiscard]] std::int64_t runId() const override { return m_runId; }

    /// All samples up to here are safe on the disk. Any thread.
    [[nodiscard]] Time safeUntil() const { return Time(m_safeUntil.load()); }

private:
    template <class Append>
    Status handOver(Append append);
    [[nodiscard]] Status takeError();
    void writeAll();
    void stop();

    // Session thread, until the writer thread starts.
    std::optional<Error> m_noConnection;
    std::optional<RunWriter> m_writer; ///< the writer thread's from begin() on, the session thread's again after stop()
    std::int64_t m_runId = 0;
    RunLosses m_losses;
    std::thread m_thread;

    std::atomic<std::int64_t> m_safeUntil{Time::min().count()};

    std::mutex m_mutex; ///< guards all below
    std::condition_variable m_news;
    RunBatch m_pending;
    bool m_isUrgent = false;
    bool m_isStopping = false;
    bool m_hasFailed = false;     ///< then nothing is kept any more
    std::optional<Error> m_error; ///< not yet reported
};

} // namespace flowhand
