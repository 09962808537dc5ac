#pragma once

#include <atomic>
#include <condition_variable>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "base/doorbell.h"
#include "base/newestqueue.h"
#include "base/time.h"
#include "device/device.h"
#include "device/hidsystem.h"
#include "device/hub.h"
#include "device/losswatch.h"
#include "device/report.h"

namespace flowhand {

struct InputOfReading {
    std::uint16_t operator()(const Reading& reading) const { return reading.input; }
};
using ReadingQueue = NewestQueue<Reading, DeviceNotice, InputOfReading>;

/// Reads one device on a thread of its own: opens the unit it is given, reads until that is lost, waits for the next.
/// Owned by the hub. All functions from any thread.
class DeviceReader {
public:
    /// References must outlive the reader; `bell` is rung for each thing to drain.
    DeviceReader(DeviceIndex index, DeviceWish wish, HidSystem& system, RunClock clock, Doorbell& bell,
                 std::size_t queueLength);
    /// Stops and joins, within DeviceHub::kReadWait.
    ~DeviceReader();
    DeviceReader(const DeviceReader&) = delete;
    DeviceReader& operator=(const DeviceReader&) = delete;

    /// Does not wait for the thread to end; the destructor does.
    void stop();
    /// A unit to open; only while isMissing().
    void give(DeviceInfo unit);
    /// Why no unit is there. Said only when it is of another kind than what was said last.
    void tellMissing(const Error& why);

    /// Until the next connection only these inputs' changes are handed on. Ignored unless there is one flag an input.
    void listenOnlyTo(std::vector<bool> inputs);

    /// As DeviceHub::attendTo(). Ignored unless there is one flag an input.
    void attendTo(std::vector<bool> inputs);

    [[nodiscard]] bool isMissing() const;
    /// Whether a unit was lost since the last call.
    [[nodiscard]] bool takeLoss();
    /// The unit in use, else the last one that was.
    [[nodiscard]] std::optional<DeviceInfo> lastUnit() const;
    [[nodiscard]] std::optional<DeviceInfo> connected() const;
    [[nodiscard]] std::vector<InputInfo> inputs() const;
    [[nodiscard]] DeviceCounters counters() const;
    void drain(std::vector<Reading>& readings, std::vector<DeviceNotice>& notices) { m_queue.drain(readings, notices); }

private:
    enum class Stage : std::uint8_t { Missing, Given, Connected };

    void work();
    /// Until the unit is lost or the reader is stopped; what ended it.
    [[nodiscard]] Error use(const DeviceInfo& unit);
    [[nodiscard]] Result<ReportDecoder> decoderFor(const DeviceInfo& unit);
    [[nodiscard]] Error named(const Error& error) const;
    [[nodiscard]] Error readAll(HidDevice& device, ReportDecoder& decoder);
    void hearAnew(ReportDecoder& decoder);
    void takeReport(std::span<const std::uint8_t> report, ReportDecoder& decoder);
    void suspectLosses(const LossWatch& losses);
    void remarkFit(ReportFit fit);
    void remark(Phrase message);
    /// m_mutex must be held. The time given to the notice.
    Time notify(DeviceChange change, Phrase message, Time earliest);

    const DeviceIndex m_index;
    const DeviceWish m_wish;
    HidSystem& m_system;
    const RunClock m_clock;
    Doorbell& m_bell;
    ReadingQueue m_queue;

    mutable std::mutex m_mutex; ///< guards the eight below
    std::condition_variable m_given;
    Stage m_stage = Stage::Missing;
    std::optional<DeviceInfo> m_unit;
    std::vector<InputInfo> m_inputs;
    std::vector<bool> m_listenedTo; ///< by input; empty: all
    std::vector<bool> m_attendedTo; ///< by input; empty: all
    std::string m_saidCode;         ///< of the last reason said for having no unit
    Time m_nextNotice{};            ///< the earliest time of the next notice
    bool m_hasLoss = false;

    std::atomic<bool> m_isStopping = false;
    std::atomic<bool> m_isAskedAnew = false; ///< the two of them are news
    std::atomic<std::uint64_t> m_reports = 0;
    std::atomic<std::uint64_t> m_suspected = 0;
    std::atomic<std::int64_t> m_period = 0; ///< ns
    std::atomic<std::uint64_t> m_truncated = 0;
    std::atomic<std::uint64_t> m_overlong = 0;
    std::atomic<std::uint64_t> m_unknown = 0;

    // Of the reader's thread alone
    Time m_nextReport{};                 ///< the earliest time of the next report
    std::uint64_t m_suspectedBefore = 0; ///< of earlier connections
    std::vector<Hurry> m_hurries;        ///< by input
    std::vector<InputChange> m_changes;
    std::vector<Reading> m_readings;
    bool m_saidDrops = false;

    std::thread m_thread;
};

} // namespace flowhand
