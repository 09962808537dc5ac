#include <algorithm>
#include <memory>

#include <nlohmann/json.hpp>

#include "base/names.h"
#include "base/signal.h"
#include "bench/measure.h"
#include "command/benchrig.h"
#include "command/benchsource.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

struct CalibrateOptions : BenchOptions {
    bool isDryRun = false;
};

std::string whatToDo(const BenchControl& control) {
    const AxisAsk& ask = control.axes.front();
    if (!ask.gates.empty())
        return "Put it into each gate and hold it there for a second: through all of them upwards, then downwards, "
               "twice. Do not stop between gates.";
    std::string text = control.axes.size() > 1
                           ? "Move each of its parts from end to end and hold it at each end for a second, three times."
                           : "Move it to one end and hold it there for a second, then to the other; three times.";
    if (ask.hasCentre)
        text += " Then push it to one side, let it spring back and leave it alone for two seconds; three times from "
                "each side.";
    return text;
}

/// Places that were held once or come to from one side are still to be visited again; what else is wrong will not
/// mend by going on.
bool isComplete(const ControlCalibration& calibration) {
    return std::none_of(calibration.findings.begin(), calibration.findings.end(),
                        [](const Finding& finding) {
                            return finding.verdict == Verdict::Caution && finding.check != "resolution" &&
                                   finding.check != "repeat";
                        }) &&
           std::all_of(calibration.axes.begin(), calibration.axes.end(), [](const AxisCalibration& axis) {
               return axis.low.visits > 2 && axis.high.visits > 2;
           });
}

class Calibrate {
public:
    Calibrate(CommandLine& line, const CalibrateOptions& options)
        : m_line(line), m_options(options), m_progress(options.asJson ? line.err : line.out) {}

    int run() {
        Result<BenchRig> rig = loadBenchRig(m_options.rig, m_options.aircraft, m_line.err);
        if (!rig)
            return complain(m_line, rig.error());
        m_rig = std::move(*rig);
        for (const std::string& name : m_options.controls)
            if (const Status done = calibrate(name); !done)
                return complain(m_line, done.error());
        return m_worst == Verdict::Bad ? kExitNotPassed : kExitDone;
    }

private:
    Status calibrate(const std::string& name) {
        const Result<std::vector<BenchControl>> controls = benchControlsOf(m_rig->rig, m_rig->aircraft.signals);
        if (!controls)
            return tl::unexpected(controls.error());
        const Result<const BenchControl*> found = findBenchControl(*controls, name);
        if (!found)
            return tl::unexpected(found.error());
        const BenchControl& control = **found;
        if (!control.canBeCalibrated())
            return tl::unexpected(calibrateControl(control, {}).error());
        std::vector<std::string> inputs;
        const DeviceIndex index = control.control->inputs().front().device;
        for (const InputRef& input : control.control->inputs()) {
            if (input.device != index)
                return failure("several-devices",
                               "'" + name +
                                   "' has inputs of several devices; write its counts "
                                   "yourself, from 'flowhand devices --watch'",
                               input.place);
            inputs.push_back(input.name);
        }
        const DeviceWish wish = m_rig->rig.devices[index];
        m_progress << control.control->name() << "\n";
        if (m_options.recordings.empty())
            m_progress << "  " << whatToDo(control) << std::endl;
        std::string said;
        const Result<DeviceSeries> device = measuredSeries(m_options, wish, inputs, [&](const DeviceSeries& sofar) {
            return guide(control, sofar, said);
        });
        if (!device)
            return tl::unexpected(device.error());
        const Result<ControlCalibration> calibration = calibrateControl(control, *device);
        if (!calibration)
            return tl::unexpected(calibration.error());
        return keep(control, *device, *calibration);
    }

    /// Says what is still missing, once each.
    bool guide(const BenchControl& control, const DeviceSeries& sofar, std::string& said) {
        const Result<ControlCalibration> calibration = calibrateControl(control, sofar);
        std::string text;
        if (!calibration) {
            text = calibration.error().message;
        } else if (isComplete(*calibration)) {
            return true;
        } else {
            text = "all places are found; go on until each was held three times";
            for (const Finding& finding : calibration->findings)
                if (finding.verdict == Verdict::Caution)
                    text = finding.text + "; " + finding.remedy;
        }
        if (text != said)
            m_progress << "  " << text << std::endl;
        said = text;
        return false;
    }

    Status keep(const BenchControl& control, const DeviceSeries& device, const ControlCalibration& calibration) {
        const Verdict worst = worstOf(calibration.findings);
        m_worst = std::max(m_worst, worst);
        const std::string deviceName = m_rig->rig.devices[control.control->inputs().front().device].name;
        EvidenceRecord record = evidenceOf(kCalibrationEvidence, control, control.fingerprint, deviceName, device,
                                           worst, calibrationJson(calibration.axes));
        if (!m_options.isDryRun) {
            const Result<std::string> source = withControlKeys(m_rig->rig.source, control.index, calibration.keys);
            if (!source)
                return tl::unexpected(source.error());
            const std::size_t index = control.index; // the control goes with the old rig
            if (const Status saved = replaceRig(*m_rig, *source); !saved)
                return saved;
            const auto fingerprints = fingerprintsOf(m_rig->rig, m_rig->aircraft.signals);
            if (!fingerprints)
                return tl::unexpected(fingerprints.error());
            record.fingerprint = (*fingerprints)[index].hash;
            if (const Status kept = appendEvidence(evidenceFileOf(m_rig->file), record); !kept)
                return kept;
        }
        print(record, calibration);
        return {};
    }

    void print(const EvidenceRecord& record, const ControlCalibration& calibration) {
        if (m_options.asJson) {
            Json keys = Json::object();
            for (const RigKey& key : calibration.keys)
                keys[key.key] = key.value;
            m_line.out << Json{{"control", record.control}, {"signals", record.signals},
                               {"good", record.isGood},     {"saved", !m_options.isDryRun},
                               {"keys", std::move(keys)},   {"result", Json::parse(record.result)}}
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << "\n";
            return;
        }
        m_line.out << findingsText(calibration.findings)
                   << (m_options.isDryRun ? "  not written, as asked:\n" : "  written into " + m_rig->file + ":\n");
        for (const RigKey& key : calibration.keys)
            m_line.out << "    " << key.key << " = " << key.value << "\n";
        for (const AxisCalibration& axis : calibration.axes)
            for (const GatePlace& gate : axis.gates)
                m_line.out << "    gate " << gate.position << ": held " << gate.place.visits << " times, within "
                           << numberText(gate.place.spread) << " counts"
                           << (gate.place.backlash ? ", backlash " + numberText(std::fabs(*gate.place.backlash)) : "")
                           << "\n";
        m_line.out << std::flush;
    }

    CommandLine& m_line;
    const CalibrateOptions& m_options;
    std::ostream& m_progress;
    std::optional<BenchRig> m_rig;
    Verdict m_worst = Verdict::Good;
};

} // namespace

void addBenchCalibrateCommand(CLI::App& bench, CommandLine& line) {
    auto options = std::make_shared<CalibrateOptions>();
    CLI::App* command = bench.add_subcommand(
        "calibrate", "Measure a control's ends, centre and gates, and write them into the rig file");
    addBenchOptions(*command, *options);
    command->get_option("CONTROL")->required();
    command->add_flag("--dry-run", options->isDryRun, "Show what would be written, and write nothing");
    command->callback([&line, options] {
        line.chosen = [&line, options] {
            return Calibrate(line, *options).run();
        };
    });
}

} // namespace flowhand
