#include <algorithm>
#include <map>
#include <memory>

#include <nlohmann/json.hpp>

#include "bench/measure.h"
#include "command/benchrig.h"
#include "command/benchsource.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

/// A live measurement takes at least so long: drift needs a rest.
constexpr double kLeastSeconds = 25.0;

class Health {
public:
    Health(CommandLine& line, const BenchOptions& options)
        : m_line(line), m_options(options), m_progress(options.asJson ? line.err : line.out) {}

    int run() {
        Result<BenchRig> rig = loadBenchRig(m_options.rig, m_options.aircraft, m_line.err);
        if (!rig)
            return complain(m_line, rig.error());
        m_rig = std::move(*rig);
        const Result<std::vector<BenchControl>> controls = benchControlsOf(m_rig->rig, m_rig->aircraft.signals);
        if (!controls)
            return complain(m_line, controls.error());
        const Status chosen = choose(*controls);
        if (!chosen)
            return complain(m_line, chosen.error());
        for (const auto& [device, ofDevice] : m_chosen)
            if (const Status measured = measure(device, ofDevice); !measured)
                return complain(m_line, measured.error());
        return m_worst == Verdict::Bad ? kExitNotPassed : kExitDone;
    }

private:
    Status choose(const std::vector<BenchControl>& controls) {
        for (const std::string& name : m_options.controls) {
            const Result<const BenchControl*> found = findBenchControl(controls, name);
            if (!found)
                return tl::unexpected(found.error());
            m_chosen[(*found)->control->inputs().front().device].push_back(*found);
        }
        if (m_options.controls.empty())
            for (const BenchControl& control : controls)
                m_chosen[control.control->inputs().front().device].push_back(&control);
        return {};
    }

    Status measure(DeviceIndex index, const std::vector<const BenchControl*>& controls) {
        const DeviceWish& wish = m_rig->rig.devices[index];
        std::vector<std::string> inputs;
        for (const BenchControl* control : controls)
            for (const InputRef& input : control->control->inputs())
                if (input.device == index)
                    inputs.push_back(input.name);
        if (m_options.recordings.empty())
            m_progress << wish.name
                       << "\n  Leave all of it alone for ten seconds. Then move each lever slowly from end "
                       << "to end and back, three times, hold it at each gate from both sides, let it spring back from "
                       << "both sides, press each button ten times, and turn each selector through all positions. "
                       << "Ctrl-C ends it." << std::endl;
        std::string said;
        Result<DeviceSeries> device = measuredSeries(m_options, wish, inputs, [&](const DeviceSeries& sofar) {
            return guide(controls, sofar, said);
        });
        if (!device) {
            // Without names the devices that there is a recording of are measured.
            const bool isSkipped =
                device.error().code == "no-recording" && m_options.controls.empty() && m_chosen.size() > 1;
            if (isSkipped)
                m_line.err << "not measured: " << device.error().message << "\n";
            return isSkipped ? Status() : tl::unexpected(device.error());
        }
        const DeviceHealth health = measureDevice(*device);
        show(wish.name, "device", health.findings, deviceHealthJson(health));
        for (const BenchControl* control : controls)
            if (const Status measured = measure(*control, index, *device); !measured)
                return measured;
        return {};
    }

    Status measure(const BenchControl& control, DeviceIndex index, const DeviceSeries& device) {
        for (const InputRef& input : control.control->inputs())
            if (input.device != index)
                return failure("several-devices",
                               "'" + control.control->name() +
                                   "' has inputs of several devices; measure its parts by "
                                   "a rig file that wires them one by one",
                               input.place);
        const bool isOperated = !m_options.controls.empty();
        const Result<ControlHealth> health = measureControl(control, device, isOperated);
        if (!health)
            return tl::unexpected(health.error());
        const std::vector<Finding> findings = health->findings();
        const std::string json = healthJson(*health);
        show(control.control->name(), "control", findings, json);
        if (!isOperated && wasNotWorked(*health))
            return {}; // nothing was measured that could be kept
        return appendEvidence(evidenceFileOf(m_rig->file),
                              evidenceOf(kHealthEvidence, control, control.fingerprint, m_rig->rig.devices[index].name,
                                         device, worstOf(findings), json));
    }

    /// Of a control that nobody named, in a measurement of its whole device.
    static bool wasNotWorked(const ControlHealth& health) {
        return std::all_of(health.axes.begin(), health.axes.end(),
                           [](const auto& axis) {
                               return findingOf(axis.second.findings, "movement") != nullptr;
                           }) &&
               std::all_of(health.contacts.begin(), health.contacts.end(), [](const auto& contact) {
                   return contact.second.changes == 0;
               });
    }

    bool guide(const std::vector<const BenchControl*>& controls, const DeviceSeries& sofar, std::string& said) {
        if (sofar.reports.empty())
            return false;
        std::string missing;
        for (const BenchControl* control : controls) {
            const Result<ControlHealth> health = measureControl(*control, sofar, true);
            for (const Finding& finding : health ? health->findings() : std::vector<Finding>())
                if (finding.verdict == Verdict::Unmeasured || finding.check == "movement" || finding.check == "stuck" ||
                    finding.check == "positions")
                    missing = control->control->name() + ": " + finding.text +
                              (finding.verdict == Verdict::Unmeasured ? "; " + finding.remedy : "; work it");
        }
        if (!missing.empty() && missing != said)
            m_progress << "  " << missing << std::endl;
        said = missing;
        return missing.empty() && seconds(sofar.reports.back() - sofar.reports.front()) >= kLeastSeconds;
    }

    void show(const std::string& name, const char* kind, const std::vector<Finding>& findings,
              const std::string& json) {
        m_worst = std::max(m_worst, worstOf(findings));
        if (m_options.asJson)
            m_line.out << Json{{kind, name},
                               {"good", worstOf(findings) != Verdict::Bad},
                               {"verdict", verdictName(worstOf(findings))},
                               {"result", Json::parse(json)}}
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << std::endl;
        else
            m_line.out << name << ": " << verdictName(worstOf(findings)) << "\n"
                       << findingsText(findings) << std::flush;
    }

    CommandLine& m_line;
    const BenchOptions& m_options;
    std::ostream& m_progress;
    std::optional<BenchRig> m_rig;
    std::map<DeviceIndex, std::vector<const BenchControl*>> m_chosen;
    Verdict m_worst = Verdict::Good;
};

} // namespace

void addBenchHealthCommand(CLI::App& bench, CommandLine& line) {
    auto options = std::make_shared<BenchOptions>();
    CLI::App* command = bench.add_subcommand("health", "Measure noise, wear, bounce and timing of controls");
    addBenchOptions(*command, *options);
    command->callback([&line, options] {
        line.chosen = [&line, options] {
            return Health(line, *options).run();
        };
    });
}

} // namespace flowhand
