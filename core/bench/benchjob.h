#pragma once

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "bench/bencherror.h"
#include "bench/benchrigstate.h"
#include "bench/inputsource.h"
#include "bench/rigfeed.h"
#include "bench/wiringwish.h"
#include "bench/workbench.h"

// The tasks of the workbench while they go on; private to it. Each belongs to the bench's thread.

namespace flowhand {

/// What the devices have said so far, for whoever begins to listen in between.
struct BenchDevices {
    InputSource& source;
    std::set<DeviceIndex> connected;
    std::map<std::pair<DeviceIndex, std::uint16_t>, Reading> last; ///< of each input
    Time now{};
};

class BenchJob {
public:
    virtual ~BenchJob() = default;
    virtual void take(const InputNews& news, const std::vector<Sample>& samples) = 0;
    /// The builder goes on, or leaves this control out.
    virtual void next(Time now) = 0;
    [[nodiscard]] virtual BenchTaskView view() const = 0;
    /// Whether the rig file or its evidence has become another since this was asked last.
    [[nodiscard]] virtual bool takeWritten() = 0;
};

[[nodiscard]] std::unique_ptr<BenchJob> wireJob(const Aircraft& aircraft, const std::string& rigFile,
                                                const WiringWish& wish, const BenchDevices& devices);
/// `rig` and `feed` must outlive it; `values` are where its signals stand.
[[nodiscard]] std::unique_ptr<BenchJob> walkJob(const Aircraft& aircraft, const BenchRigState& rig, RigFeed& feed,
                                                const std::vector<Value>& values, Time now);

/// What a task is about.
struct BenchTaskScope {
    const Aircraft& aircraft;
    const std::vector<const Flow*>& flows; ///< whose steps the filters must suit
    const BenchRigState& rig;
};

/// ApplyFilters, UndoFilters or SetTolerances, which are done at once. What was written, in words; `scope`'s rig is not
/// the file's any more then. Errors: those of applyFilters(), undoFilters(), parseTolerances() and saveRigFile(),
/// `nothing-to-apply`.
[[nodiscard]] BenchResult<std::vector<Phrase>> changeRig(const BenchWish& wish, const BenchTaskScope& scope);

/// Calibrate, Check or Measure. All of `scope` must outlive it.
[[nodiscard]] std::unique_ptr<BenchJob> measureJob(const BenchWish& wish, const BenchTaskScope& scope,
                                                   HidSystem& system, const Clock& clock, Time now);

} // namespace flowhand
