#pragma once

#include <memory>
#include <string>

#include "device/hidsystem.h"
#include "presenter/benchmaker.h"
#include "procedure/library.h"

namespace flowhand {

/// Puts the pilot's rig on the bench, with the devices of this computer. GUI thread.
class LiveBenches final : public BenchMaker {
public:
    /// `rigFile` may be missing yet. The library and the devices must outlive the benches.
    LiveBenches(const std::vector<AircraftFolder>& library, std::string rigFile, HidSystem& devices);

    [[nodiscard]] QString rigTitle() const override;
    [[nodiscard]] QString rigFile() const override { return QString::fromStdString(file()); }
    [[nodiscard]] Result<std::unique_ptr<BenchHandle>> open(std::function<void()> onChange) override;

private:
    [[nodiscard]] std::string file() const;

    const std::vector<AircraftFolder>& m_library;
    std::string m_askedRig;
    HidSystem& m_devices;
    SteadyClock m_clock;
};

} // namespace flowhand
