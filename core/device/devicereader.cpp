#include "device/devicereader.h"

#include <algorithm>
#include <utility>

#include "base/quietthread.h"
#include "device/usable.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

constexpr const char* kMissing = "device-missing";

/// What only other hardware can change; trying again is in vain.
bool isFinal(const Error& error) {
    return error.code == "bad-descriptor" || error.code == "keyboard-card" || error.code == "no-controls";
}

Phrase unplugged(const DeviceWish& wish) {
    return phrase("{1} was unplugged: plug it in again").with(wishText(wish));
}

/// Why no unit is there, for the pilot; `missing` where it is just not there. What is rare stays as errors have it.
Phrase reasonOf(const Error& why, Phrase missing) {
    return why.code == kMissing ? std::move(missing) : Phrase(why.message);
}

} // namespace

DeviceReader::DeviceReader(DeviceIndex index, DeviceWish wish, HidSystem& system, RunClock clock, Doorbell& bell,
                           std::size_t queueLength)
    : m_index(index), m_wish(std::move(wish)), m_system(system), m_clock(clock), m_bell(bell), m_queue(queueLength),
      m_thread(quietThread([this] {
          work();
      })) {}

DeviceReader::~DeviceReader() {
    stop();
    m_thread.join();
}

void DeviceReader::stop() {
    {
        const std::lock_guard lock(m_mutex);
        m_isStopping = true;
    }
    m_given.notify_one();
}

void DeviceReader::give(DeviceInfo unit) {
    {
        const std::lock_guard lock(m_mutex);
        m_unit = std::move(unit);
        m_stage = Stage::Given;
    }
    m_given.notify_one();
}

void DeviceReader::tellMissing(const Error& why) {
    const std::lock_guard lock(m_mutex);
    if (m_saidCode == why.code)
        return;
    m_saidCode = why.code;
    notify(DeviceChange::Lost, reasonOf(why, notPluggedIn(m_wish)), Time{});
}

void DeviceReader::listenOnlyTo(std::vector<bool> inputs) {
    const std::lock_guard lock(m_mutex);
    if (inputs.size() != m_inputs.size())
        return;
    m_listenedTo = std::move(inputs);
    m_isAskedAnew = true;
}

void DeviceReader::attendTo(std::vector<bool> inputs) {
    const std::lock_guard lock(m_mutex);
    if (inputs.size() != m_inputs.size())
        return;
    m_attendedTo = std::move(inputs);
    m_isAskedAnew = true;
}

bool DeviceReader::isMissing() const {
    const std::lock_guard lock(m_mutex);
    return m_stage == Stage::Missing;
}

bool DeviceReader::takeLoss() {
    const std::lock_guard lock(m_mutex);
    return std::exchange(m_hasLoss, false);
}

std::optional<DeviceInfo> DeviceReader::lastUnit() const {
    const std::lock_guard lock(m_mutex);
    return m_unit;
}

std::optional<DeviceInfo> DeviceReader::connected() const {
    const std::lock_guard lock(m_mutex);
    return m_stage == Stage::Connected ? m_unit : std::nullopt;
}

std::vector<InputInfo> DeviceReader::inputs() const {
    const std::lock_guard lock(m_mutex);
    return m_inputs;
}

DeviceCounters DeviceReader::counters() const {
    DeviceCounters counters;
    counters.reports = m_reports;
    counters.suspected = m_suspected;
    counters.drops = m_queue.drops();
    counters.truncated = m_truncated;
    counters.overlong = m_overlong;
    counters.unknown = m_unknown;
    counters.period = Duration(m_period);
    return counters;
}

void DeviceReader::work() {
    for (;;) {
        DeviceInfo unit;
        {
            std::unique_lock lock(m_mutex);
            m_given.wait(lock, [this] {
                return m_isStopping || m_stage == Stage::Given;
            });
            if (m_isStopping)
                return;
            unit = *m_unit;
        }
        const Error why = use(unit);
        if (m_isStopping)
            return;
        const std::lock_guard lock(m_mutex);
        m_stage = Stage::Missing;
        m_hasLoss = !isFinal(why);
        if (m_saidCode != why.code)
            notify(DeviceChange::Lost, reasonOf(why, unplugged(m_wish)), m_nextReport);
        m_saidCode = why.code;
    }
}

Error DeviceReader::use(const DeviceInfo& unit) {
    Result<ReportDecoder> decoder = decoderFor(unit); // first: what cannot be used is not opened
    if (!decoder)
        return decoder.error();
    const auto device = m_system.open(unit);
    if (!device)
        return named(device.error());
    {
        const std::lock_guard lock(m_mutex);
        m_inputs = decoder->inputs();
        m_listenedTo.clear();
        m_attendedTo.clear();
        m_isAskedAnew = true;
        m_stage = Stage::Connected;
        m_saidCode.clear();
        m_nextReport = notify(DeviceChange::Connected, {}, Time{}) + kTick;
    }
    return readAll(**device, *decoder);
}

Result<ReportDecoder> DeviceReader::decoderFor(const DeviceInfo& unit) {
    const auto bytes = m_system.descriptor(unit);
    if (!bytes)
        return tl::unexpected(named(bytes.error()));
    return flowhand::decoderFor(*bytes, m_wish);
}

Error DeviceReader::named(const Error& error) const {
    return {error.code, wishText(m_wish) + ": " + error.message, m_wish.place};
}

Error DeviceReader::readAll(HidDevice& device, ReportDecoder& decoder) {
    std::vector<std::uint8_t> buffer(HidSystem::kMostReportBytes);
    LossWatch losses;
    losses.sawEmpty(std::max(m_clock.now(), m_nextReport)); // nothing waits at a node just opened
    m_suspectedBefore = m_suspected;
    while (!m_isStopping) {
        const auto length = device.read(buffer, losses.isBehind() ? Duration{} : DeviceHub::kReadWait);
        if (!length)
            return {kMissing, unplugged(m_wish).english(), m_wish.place};
        if (*length > 0) {
            takeReport(std::span(buffer).first(*length), decoder);
            losses.took(m_nextReport);
        } else {
            losses.sawEmpty(m_clock.now());
        }
        suspectLosses(losses);
    }
    return {};
}

/// What is asked of this reader has changed.
void DeviceReader::hearAnew(ReportDecoder& decoder) {
    const std::lock_guard lock(m_mutex);
    if (!m_listenedTo.empty())
        decoder.listenOnlyTo(m_listenedTo);
    m_hurries.clear();
    for (std::size_t i = 0; i < m_inputs.size(); ++i) {
        const bool isSwitch = m_inputs[i].kind == InputKind::Button || m_inputs[i].kind == InputKind::Hat;
        const bool isAttendedTo = m_attendedTo.empty() || m_attendedTo[i];
        m_hurries.push_back(isSwitch ? Hurry::Now : isAttendedTo ? Hurry::Soon : Hurry::Later);
    }
}

void DeviceReader::takeReport(std::span<const std::uint8_t> report, ReportDecoder& decoder) {
    const Time time = std::max(m_clock.now(), m_nextReport);
    m_nextReport = time;
    ++m_reports;
    if (m_isAskedAnew.exchange(false))
        hearAnew(decoder);
    m_changes.clear();
    const ReportFit fit = decoder.decode(report, m_changes);
    m_readings.clear();
    Hurry hurry = Hurry::Later;
    for (const InputChange& change : m_changes) {
        m_readings.push_back({time, m_index, change.input, change.raw, change.isNull});
        hurry = std::max(hurry, m_hurries[change.input]);
    }
    if (!m_readings.empty()) {
        const bool hasDropped = m_queue.push(m_readings);
        m_bell.ring(hurry);
        if (hasDropped && !std::exchange(m_saidDrops, true))
            remark(phrase("{1} sent more than the program could take; short movements may be missing")
                       .with(wishText(m_wish)));
    }
    if (fit != ReportFit::Exact)
        remarkFit(fit);
}

void DeviceReader::remarkFit(ReportFit fit) {
    std::atomic<std::uint64_t>& count = fit == ReportFit::Truncated  ? m_truncated
                                        : fit == ReportFit::Overlong ? m_overlong
                                                                     : m_unknown;
    if (++count == 1)
        remark(fitRemark(m_wish, fit));
}

void DeviceReader::suspectLosses(const LossWatch& losses) {
    m_period = losses.period().count();
    if (m_suspectedBefore + losses.suspected() == m_suspected)
        return;
    const bool isFirst = m_suspected == 0;
    m_suspected = m_suspectedBefore + losses.suspected();
    if (isFirst)
        remark(phrase("{1} may have lost reports while the computer was busy; short movements may be missing")
                   .with(wishText(m_wish)));
}

void DeviceReader::remark(Phrase message) {
    const std::lock_guard lock(m_mutex);
    m_nextReport = notify(DeviceChange::Remark, std::move(message), m_nextReport) + kTick;
}

Time DeviceReader::notify(DeviceChange change, Phrase message, Time earliest) {
    const Time time = std::max({m_clock.now(), m_nextNotice, earliest + kTick});
    m_nextNotice = time + kTick;
    m_queue.push({time, m_index, change, std::move(message)});
    m_bell.ring();
    return time;
}

} // namespace flowhand
