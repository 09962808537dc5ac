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

Phrase calibrationAsk(const BenchControl& control) {
    const AxisAsk& ask = control.axes.front().ask;
    if (!ask.gates.empty())
        return phrase("Put it into each gate and hold it there for a second: through all of them upwards, then "
                      "downwards, twice. Do not stop between gates.");
    if (!ask.values.empty()) {
        std::vector<std::string> values;
        for (const double value : ask.values)
            values.push_back(exactText(value, control.valueUnit));
        return (ask.hasCentre
                    ? phrase("Put it at {1}, and hold each for a second: through all of them upwards, then downwards, "
                             "three times. Do not stop between them. Then let it spring back and leave it alone for "
                             "two seconds; three times from each side.")
                    : phrase("Put it at {1}, and hold each for a second: through all of them upwards, then downwards, "
                             "three times. Do not stop between them."))
            .with(joined(values, ", "));
    }
    if (ask.hasIdle)
        return phrase("Hold it for a second at the far end of one part, at idle and at the far end of the other: "
                      "through all three and back, three times. Do not stop between them.");
    if (control.axes.front().isSwitched)
        return phrase("With its switch off, move it to one end and hold it there for a second, then to the other; "
                      "three times. Then the same with its switch on.");
    const Phrase ends =
        control.axes.size() > 1
            ? phrase("Move each of its parts from end to end and hold it at each end for a second, three times.")
            : phrase("Move it to one end and hold it there for a second, then to the other; three times.");
    return ask.hasCentre ? phrase("{1} Then push it to one side, let it spring back and leave it alone for two "
                                  "seconds; three times from each side.")
                               .with(ends)
                         : ends;
}

Phrase healthAsk(const std::vector<const BenchControl*>& controls) {
    const bool isOne = controls.size() == 1;
    const auto isAny = [&](auto is) {
        return std::any_of(controls.begin(), controls.end(), [&](const BenchControl* control) {
            return is(*control);
        });
    };
    std::vector<Phrase> todo;
    if (isAny([](const BenchControl& control) {
            return control.canBeCalibrated();
        }))
        todo.push_back(isOne ? phrase("move it slowly from end to end and back, three times")
                             : phrase("move each lever slowly from end to end and back, three times"));
    if (isAny([](const BenchControl& control) {
            return control.axisHealth.gateCount > 0;
        }))
        todo.push_back(phrase("hold it at each gate from both sides"));
    if (isAny([](const BenchControl& control) {
            return control.axisHealth.hasCentre;
        }))
        todo.push_back(phrase("let it spring back from both sides"));
    if (isAny([](const BenchControl& control) {
            return control.isSwitch;
        }))
        todo.push_back(isOne ? phrase("turn it through all positions, three times")
                             : phrase("turn each selector through all positions, three times"));
    if (isAny([](const BenchControl& control) {
            return !control.canBeCalibrated() && !control.isSwitch;
        }))
        todo.push_back(isOne ? phrase("work it ten times") : phrase("work each button and switch ten times"));
    return (isOne ? phrase("Leave it alone for ten seconds. Then {1}.")
                  : phrase("Leave all of it alone for ten seconds. Then {1}."))
        .with(joined(todo, ", "));
}

Guidance guideCalibration(const BenchControl& control, const Measurement& sofar) {
    const BenchResult<ControlCalibration> calibration = calibrateControl(control, sofar);
    if (!calibration)
        return {false, calibration.error().words};
    if (isComplete(*calibration))
        return {true, {}};
    Guidance guidance{false, phrase("all places are found; go on until each was held three times")};
    for (const Finding& finding : calibration->findings)
        if (finding.verdict == Soundness::Caution)
            guidance.text = phrase("{1}; {2}").with(finding.text, finding.remedy);
    return guidance;
}

Guidance guideHealth(const std::vector<const BenchControl*>& controls, const Measurement& sofar) {
    Guidance guidance;
    for (const BenchControl* control : controls) {
        const Result<ControlHealth> health = measureControl(*control, sofar, true);
        for (const Finding& finding : health ? health->findings() : std::vector<Finding>())
            if (isStillToDo(finding))
                guidance.text =
                    finding.verdict == Soundness::Unmeasured
                        ? phrase("{1}: {2}; {3}").with(control->control->name(), finding.text, finding.remedy)
                        : phrase("{1}: {2}; work it").with(control->control->name(), finding.text);
    }
    const bool isLong = !sofar.empty() && std::all_of(sofar.begin(), sofar.end(), [](const auto& device) {
        const std::vector<Time>& reports = device.second.reports;
        return !reports.empty() && seconds(reports.back() - reports.front()) >= kLeastSeconds;
    });
    guidance.isComplete = guidance.text.isEmpty() && isLong;
    return guidance;
}

} // namespace flowhand
