#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "bench/axishealth.h"
#include "bench/calibration.h"
#include "bench/contacthealth.h"
#include "bench/devicehealth.h"

namespace flowhand {

// Results as JSON objects, for evidence and for programs. Members: README.md.

/// What findings say: in English, for programs; or as phrasejson.h has it, for evidence, which is of no language.
enum class FindingsAs : std::uint8_t { English, Record };

[[nodiscard]] std::string calibrationJson(const std::vector<AxisCalibration>& calibrations, FindingsAs as);

struct RepeatCheck;
[[nodiscard]] std::string repeatCheckJson(const RepeatCheck& check, FindingsAs as);

/// All that was measured of one control; what it does not have stays empty.
struct ControlHealth {
    std::vector<std::pair<std::string, AxisHealth>> axes;        ///< by input
    std::vector<std::pair<std::string, ContactHealth>> contacts; ///< by input
    std::vector<SwitchHealth> switches;                          ///< one at most

    [[nodiscard]] std::vector<Finding> findings() const; ///< of all, `text` led by the input where there are several
};
struct FilterAdvice;
/// How the devices of one control keep their time, by their name in the rig file.
using DeviceHealths = std::vector<std::pair<std::string, DeviceHealth>>;
/// Also what follows from it for the filters.
[[nodiscard]] std::string healthJson(const ControlHealth& health, const FilterAdvice& filters,
                                     const DeviceHealths& devices, FindingsAs as);
/// Its findings in English.
[[nodiscard]] std::string deviceHealthJson(const DeviceHealth& health);

/// "  noise         good          sigma 1.2 counts ...", and reason and remedy below where it is not good.
[[nodiscard]] std::string findingsText(const std::vector<Finding>& findings);

} // namespace flowhand
