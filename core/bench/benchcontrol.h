#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/signal.h"
#include "bench/axishealth.h"
#include "bench/bencherror.h"
#include "bench/calibration.h"
#include "bench/contacthealth.h"
#include "bench/fingerprint.h"
#include "rig/axisfilter.h"
#include "rig/axismap.h"
#include "rig/contacts.h"
#include "rig/rigedit.h"
#include "rig/rigfile.h"

namespace flowhand {

/// Where the rig file has the places of one axis, in counts.
struct AxisInFile {
    struct Gate {
        std::int64_t at = 0;
        std::int64_t band = 0;
    };

    std::optional<std::int64_t> low; ///< the ends; gates have none
    std::optional<std::int64_t> high;
    std::optional<std::int64_t> idle; ///< of a split axis: where its first part begins ...
    std::int64_t split = 0;           ///< ... and beyond which its second part is meant
    std::optional<std::int64_t> centre;
    std::int64_t deadBand = 0;
    std::int64_t endBand = 0;
    std::vector<Gate> gates; ///< by rising count
    std::vector<AxisMap::Point> points;
};

/// One range of counts of a control that is calibrated by itself.
struct BenchAxis {
    std::size_t input = 0;          ///< index into the control's inputs
    std::optional<bool> isSwitched; ///< of a switched axis: only while its switch, the second input, is (not) operated
    Phrase name;                    ///< in words, where a control has several: "X", "X with its switch on"
    AxisAsk ask;                    ///< how to calibrate it
    AxisInFile inFile;
};

/// What the rig file has of the filters of one control. Those that its wiring does not have are as they would be left
/// out.
struct FiltersInFile {
    bool isOfAxis = false;    ///< the wiring has `noise`, `spike_limit`, `settle`, `median`, `smooth`
    bool isOfGates = false;   ///< ... `hysteresis`
    bool isOfContact = false; ///< ... `debounce`
    AxisLimits axis;          ///< but its least change
    std::int64_t hysteresis = 0;
    Duration debounce = kDebounce;

    /// By which they make the control late.
    [[nodiscard]] Duration delay() const { return axis.median / 2 + axis.smooth; }
};
/// "median of 4 ms", "debounce 5 ms"; nothing of those that there are not.
[[nodiscard]] std::vector<Phrase> filterWords(const FiltersInFile& filters);

/// One control of a rig as the bench looks at it: what its wiring says of how to measure it.
struct BenchControl {
    std::size_t index = 0; ///< of RigFile::controls and of the file's [[control]]
    const Control* control = nullptr;
    std::string wiring;
    std::vector<std::string> inputNames; ///< of each input: "X", "pedals: X" where they are of several devices
    ControlFingerprint fingerprint;
    std::vector<BenchAxis> axes; ///< empty where the wiring has no counts that are measured
    std::string valueUnit;       ///< of AxisAsk::values
    AxisHealthAsk axisHealth;    ///< of each of its axes
    bool isSwitch = false;       ///< one of its contacts is closed at a time
    SwitchHealthAsk switchHealth;
    bool hasFastEdges = false; ///< an encoder
    FiltersInFile filters;

    [[nodiscard]] bool canBeCalibrated() const { return !axes.empty(); }
};

/// In the order of the file. The rig must outlive them.
[[nodiscard]] Result<std::vector<BenchControl>> benchControlsOf(const RigFile& rig, const SignalTable& signals);

/// The control that `name` means: its name in the rig file, or one of its signals. Error `unknown-control`.
[[nodiscard]] Result<const BenchControl*> findBenchControl(const std::vector<BenchControl>& controls,
                                                           const std::string& name);

/// The true values of places that a builder will show, the lowest first, in the words of `signal`, with commas between
/// them ("0 deg, 15 deg, 30 deg"): its calibration looks for them then, and writes points. Errors: `bad-values`,
/// `not-calibrated`.
[[nodiscard]] BenchStatus giveValues(BenchControl& control, const Signal& signal, std::string_view list);

/// "15 deg", as exactly as it was given.
[[nodiscard]] std::string exactText(double value, const std::string& unit);

/// What a calibration, one of each of the control's axes, writes into the rig file; `noise` is what the file's filters
/// leave. Error `not-fitting` where the parts of a split axis are too short to be told apart.
[[nodiscard]] BenchResult<std::vector<RigKey>>
rigKeysOf(const BenchControl& control, const std::vector<AxisCalibration>& calibrations, double noise);

} // namespace flowhand
