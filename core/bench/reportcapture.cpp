#include "bench/reportcapture.h"

#include <iterator>
#include <utility>

#include "base/quietthread.h"
#include "device/hub.h"

namespace flowhand {

ReportCapture::ReportCapture(std::unique_ptr<HidDevice> device, const Clock& clock, Time start)
    : m_device(std::move(device)), m_clock(clock), m_start(start), m_thread(quietThread([this] {
          work();
      })) {}

ReportCapture::~ReportCapture() {
    m_isStopping = true;
    m_thread.join();
}

bool ReportCapture::take(std::vector<RecordedReport>& reports) {
    const std::lock_guard lock(m_mutex);
    reports.insert(reports.end(), std::make_move_iterator(m_reports.begin()), std::make_move_iterator(m_reports.end()));
    m_reports.clear();
    return !m_isLost;
}

void ReportCapture::work() {
    std::vector<std::uint8_t> buffer(HidSystem::kMostReportBytes);
    while (!m_isStopping) {
        const Result<std::size_t> length = m_device->read(buffer, DeviceHub::kReadWait);
        const Time time = wholeTick(m_clock.now() - m_start);
        const std::lock_guard lock(m_mutex);
        if (!length) {
            m_isLost = true;
            return;
        }
        if (*length > 0)
            m_reports.push_back({time, {buffer.begin(), buffer.begin() + static_cast<std::ptrdiff_t>(*length)}});
    }
}

} // namespace flowhand
