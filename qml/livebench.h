#pragma once

#include <functional>
#include <memory>
#include <string>

#include "device/hidsystem.h"
#include "presenter/benchmaker.h"
#include "presenter/currentlibrary.h"

namespace flowhand {

/// Puts the pilot's rig on the bench, with the devices of this computer. GUI thread.
class LiveBenches final : public BenchMaker {
public:
    /// The library that there is when a rig is put on the bench.
    using LibraryNow = std::function<LibraryPtr()>;

    /// `rigFile` may be missing yet. The devices must outlive the benches.
    LiveBenches(LibraryNow library, std::string rigFile, HidSystem& devices);

    [[nodiscard]] QString rigTitle() const override;
    [[nodiscard]] QString rigFile() const override { return QString::fromStdString(file()); }
    [[nodiscard]] Result<std::unique_ptr<BenchHandle>> open(std::function<void()> onChange) override;
    [[nodiscard]] Result<std::unique_ptr<BenchHandle>> openFor(std::shared_ptr<const Aircraft> aircraft,
                                                               std::function<void()> onChange) override;

private:
    [[nodiscard]] Result<std::unique_ptr<BenchHandle>>
    open(std::shared_ptr<const Aircraft> aircraft, std::vector<const Flow*> flows, std::function<void()> onChange);
    [[nodiscard]] std::string file() const;

    LibraryNow m_library;
    LibraryPtr m_opened; ///< of the newest bench: what was shown of it may outlive it
    std::string m_askedRig;
    HidSystem& m_devices;
    SteadyClock m_clock;
};

} // namespace flowhand
