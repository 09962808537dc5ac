#pragma once

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/time.h"
#include "device/hidsystem.h"
#include "presenter/runmaker.h"

namespace flowhand {

/// Makes the window's real runs: on a thread each, with the devices of the rig, stored. GUI thread.
class LiveRuns final : public RunMaker {
public:
    /// `rigFile` may be empty: then the first rig of the person's rigs folder is used, as soon as there is one.
    /// `devices` must outlive the runs.
    LiveRuns(std::string rigFile, std::string storeFile, HidSystem& devices);

    /// For the runs from now on.
    void useStore(std::string storeFile) { m_storeFile = std::move(storeFile); }

    [[nodiscard]] Result<std::unique_ptr<RunHandle>> make(const FlightChoice& choice,
                                                          std::function<void()> onChange) override;
    [[nodiscard]] bool canDemonstrate(const FlightChoice& choice) const override;
    [[nodiscard]] Result<PracticeFigures> practice(const AircraftFolder& folder) const override;
    [[nodiscard]] QString rigTitle() const override;
    [[nodiscard]] ConnectedDevices devices() const override;

private:
    [[nodiscard]] std::string rigFile() const;

    std::string m_askedRig;
    std::string m_storeFile;
    HidSystem& m_devices;
    SteadyClock m_clock;
};

} // namespace flowhand
