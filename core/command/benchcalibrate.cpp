#include <algorithm>
#include <memory>

#include <nlohmann/json.hpp>

#include "base/names.h"
#include "base/signal.h"
#include "bench/guidance.h"
#include "bench/keepresult.h"
#include "command/benchrig.h"
#include "command/benchsource.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

struct CalibrateOptions : BenchOptions {
    std::string values; ///< true values, separated by commas; empty: those of the file, if any
    bool isDryRun = false;
    bool isCheck = false;
};

class Calibrate {
public:
    Calibrate(CommandLine& line, const CalibrateOptions& options)
        : m_line(line), m_options(options), m_progress(options.asJson ? line.err : line.out) {}

    int run() {
        if (!m_options.values.empty() && m_options.controls.size() > 1)
            return complain(
                m_line, {"bad-values", "'--values' are those of one control; calibrate the others by themselves", {}});
        for (const std::string& name : m_options.controls) {
            // Each calibration changes the file.
            Result<BenchRig> rig = loadBenchRig(m_options.rig, m_options.aircraft, m_line.err);
            if (!rig)
                return complain(m_line, rig.error());
            m_rig = std::move(*rig);
            if (const Status done = calibrate(name); !done)
                return complain(m_line, done.error());
        }
        return m_worst == Soundness::Bad ? kExitNotPassed : kExitDone;
    }

private:
    Status calibrate(const std::string& name) {
        const Result<std::vector<BenchControl>> controls = benchControlsOf(m_rig->rig, m_rig->aircraft().signals);
        if (!controls)
            return tl::unexpected(controls.error());
        const Result<const BenchControl*> found = findBenchControl(*controls, name);
        if (!found)
            return tl::unexpected(found.error());
        BenchControl control = **found;
        if (!control.canBeCalibrated())
            return tl::unexpected<Error>(calibrateControl(control, {}).error());
        if (!m_options.values.empty()) {
            const Signal& signal = m_rig->aircraft().signals[control.control->signals().front()];
            if (const BenchStatus given = giveValues(control, signal, m_options.values); !given)
                return tl::unexpected<Error>(given.error());
        }
        m_progress << control.control->name() << "\n";
        if (m_options.recordings.empty())
            m_progress << "  " << calibrationAsk(control).english() << std::endl;
        std::string said;
        const Result<Measurement> measurement =
            measure(m_options, m_rig->rig.devices, inputsOf(control), [&](const Measurement& sofar) {
                return guide(control, sofar, said);
            });
        if (!measurement)
            return tl::unexpected(measurement.error());
        return m_options.isCheck ? check(control, *measurement) : keep(control, *measurement);
    }

    Status keep(const BenchControl& control, const Measurement& measurement) {
        const BenchResult<KeptCalibration> kept =
            keepCalibration(m_rig->file, m_rig->rig, m_rig->aircraft(), control, measurement, m_options.isDryRun);
        if (!kept)
            return tl::unexpected<Error>(kept.error());
        m_worst = std::max(m_worst, worstOf(kept->calibration.findings));
        print(kept->record, kept->calibration);
        return {};
    }

    /// How far its places are from those of the file, which stays as it is.
    Status check(const BenchControl& control, const Measurement& measurement) {
        const BenchResult<RepeatCheck> check = checkControl(control, measurement);
        if (!check)
            return tl::unexpected<Error>(check.error());
        if (!m_options.isDryRun)
            if (const Status kept = keepRepeatCheck(m_rig->file, m_rig->rig, control, measurement, *check); !kept)
                return kept;
        const Soundness worst = worstOf(check->findings);
        m_worst = std::max(m_worst, worst);
        if (m_options.asJson)
            m_line.out << Json{{"control", control.control->name()},
                               {"signals", control.fingerprint.signals},
                               {"good", worst != Soundness::Bad},
                               {"saved", !m_options.isDryRun},
                               {"result", Json::parse(repeatCheckJson(*check, FindingsAs::English))}}
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << "\n";
        else
            m_line.out << findingsText(check->findings) << "  the rig file stays as it is\n";
        m_line.out << std::flush;
        return {};
    }

    /// Says what is still missing, once each.
    bool guide(const BenchControl& control, const Measurement& sofar, std::string& said) {
        const Guidance guidance = guideCalibration(control, sofar);
        const std::string text = guidance.text.english();
        if (!guidance.isComplete && text != said)
            m_progress << "  " << text << std::endl;
        said = text;
        return guidance.isComplete;
    }

    void print(const EvidenceRecord& record, const ControlCalibration& calibration) {
        if (m_options.asJson) {
            Json keys = Json::object();
            for (const RigKey& key : calibration.keys)
                if (!key.value.empty())
                    keys[key.key] = key.value;
            m_line.out << Json{{"control", record.control},
                               {"signals", record.signals},
                               {"good", record.isGood},
                               {"saved", !m_options.isDryRun},
                               {"keys", std::move(keys)},
                               {"result", Json::parse(calibrationJson(calibration.axes, FindingsAs::English))}}
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << "\n";
            return;
        }
        m_line.out << findingsText(calibration.findings)
                   << (m_options.isDryRun ? "  not written, as asked:\n" : "  written into " + m_rig->file + ":\n");
        for (const RigKey& key : calibration.keys)
            if (!key.value.empty())
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
    Soundness m_worst = Soundness::Good;
};

} // namespace

void addBenchCalibrateCommand(CLI::App& bench, CommandLine& line) {
    auto options = std::make_shared<CalibrateOptions>();
    CLI::App* command = bench.add_subcommand(
        "calibrate", "Measure a control's ends, centre and gates, and write them into the rig file");
    addBenchOptions(*command, *options);
    command->get_option("CONTROL")->required();
    CLI::Option* values = command->add_option(
        "--values", options->values,
        "True values of places you will hold, from the low end to the high end: \"0 deg, 15 deg, 30 deg\"; the signal "
        "reads them then (wiring 'axis')");
    command->add_flag("--dry-run", options->isDryRun, "Show what would be written, and write nothing");
    command
        ->add_flag("--check", options->isCheck,
                   "Measure again and tell how far it is from what the rig file says, which stays as it is")
        ->excludes(values);
    command->callback([&line, options] {
        line.chosen = [&line, options] {
            return Calibrate(line, *options).run();
        };
    });
}

} // namespace flowhand
