#include "bench/guidance.h"

#include <algorithm>

#include "base/names.h"

namespace flowhand {

namespace {

/// A live measurement takes at least so long: drift needs a rest.
constexpr double kLeastSeconds = 25.0;

/// Places that were held once or come to from one side are still to be visited again; what else is wrong will not
/// mend by going on.
bool isComplete(const ControlCalibration& calibration) {
    return std::none_of(calibration.findings.begin(), calibration.findings.end(),
                        [](const Finding& finding) {
                            return finding.verdict == Soundness::Caution && finding.check != "resolution" &&
                                   finding.check != "repeat";
                        }) &&
           std::all_of(calibration.axes.begin(), calibration.axes.end(), [](const AxisCalibration& axis) {
               return axis.low.visits > 2 && axis.high.visits > 2;
           });
}

bool isStillToDo(const Finding& finding) {
    return finding.verdict == Soundness::Unmeasured || finding.check == "movement" || finding.check == "stuck" ||
           finding.check == "positions";
}

} // namespace

std::string calibrationAsk(const BenchControl& control) {
    const AxisAsk& ask = control.axes.front().ask;
    if (!ask.gates.empty())
        return "Put it into each gate and hold it there for a second: through all of them upwards, then downwards, "
               "twice. Do not stop between gates.";
    if (!ask.values.empty()) {
        std::vector<std::string> values;
        for (const double value : ask.values)
            values.push_back(exactText(value, control.valueUnit));
        return "Put it at " + joined(values, ", ") +
               ", and hold each for a second: through all of them upwards, then downwards, three times. Do not stop "
               "between them." +
               (ask.hasCentre
                    ? " Then let it spring back and leave it alone for two seconds; three times from each side."
                    : "");
    }
    if (ask.hasIdle)
        return "Hold it for a second at the far end of one part, at idle and at the far end of the other: through all "
               "three and back, three times. Do not stop between them.";
    if (control.axes.front().isSwitched)
        return "With its switch off, move it to one end and hold it there for a second, then to the other; three "
               "times. Then the same with its switch on.";
    std::string text = control.axes.size() > 1
                           ? "Move each of its parts from end to end and hold it at each end for a second, three times."
                           : "Move it to one end and hold it there for a second, then to the other; three times.";
    if (ask.hasCentre)
        text += " Then push it to one side, let it spring back and leave it alone for two seconds; three times from "
                "each side.";
    return text;
}

std::string healthAsk(const std::vector<const BenchControl*>& controls) {
    const bool isOne = controls.size() == 1;
    const auto isAny = [&](auto is) {
        return std::any_of(controls.begin(), controls.end(), [&](const BenchControl* control) {
            return is(*control);
        });
    };
    std::vector<std::string> todo;
    if (isAny([](const BenchControl& control) {
            return control.canBeCalibrated();
        }))
        todo.push_back((isOne ? "move it" : "move each lever") +
                       std::string(" slowly from end to end and back, three times"));
    if (isAny([](const BenchControl& control) {
            return control.axisHealth.gateCount > 0;
        }))
        todo.push_back("hold it at each gate from both sides");
    if (isAny([](const BenchControl& control) {
            return control.axisHealth.hasCentre;
        }))
        todo.push_back("let it spring back from both sides");
    if (isAny([](const BenchControl& control) {
            return control.isSwitch;
        }))
        todo.push_back((isOne ? "turn it" : "turn each selector") + std::string(" through all positions, three times"));
    if (isAny([](const BenchControl& control) {
            return !control.canBeCalibrated() && !control.isSwitch;
        }))
        todo.push_back((isOne ? "work it" : "work each button and switch") + std::string(" ten times"));
    return std::string(isOne ? "Leave it" : "Leave all of it") + " alone for ten seconds. Then " + joined(todo, ", ") +
           ".";
}

Guidance guideCalibration(const BenchControl& control, const Measurement& sofar) {
    const Result<ControlCalibration> calibration = calibrateControl(control, sofar);
    if (!calibration)
        return {false, calibration.error().message};
    if (isComplete(*calibration))
        return {true, {}};
    Guidance guidance{false, "all places are found; go on until each was held three times"};
    for (const Finding& finding : calibration->findings)
        if (finding.verdict == Soundness::Caution)
            guidance.text = finding.text + "; " + finding.remedy;
    return guidance;
}

Guidance guideHealth(const std::vector<const BenchControl*>& controls, const Measurement& sofar) {
    Guidance guidance;
    for (const BenchControl* control : controls) {
        const Result<ControlHealth> health = measureControl(*control, sofar, true);
        for (const Finding& finding : health ? health->findings() : std::vector<Finding>())
            if (isStillToDo(finding))
                guidance.text = control->control->name() + ": " + finding.text +
                                (finding.verdict == Soundness::Unmeasured ? "; " + finding.remedy : "; work it");
    }
    const bool isLong = !sofar.empty() && std::all_of(sofar.begin(), sofar.end(), [](const auto& device) {
        const std::vector<Time>& reports = device.second.reports;
        return !reports.empty() && seconds(reports.back() - reports.front()) >= kLeastSeconds;
    });
    guidance.isComplete = guidance.text.empty() && isLong;
    return guidance;
}

} // namespace flowhand
