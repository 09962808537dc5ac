#include <algorithm>
#include <map>
#include <memory>

#include <nlohmann/json.hpp>

#include "bench/guidance.h"
#include "bench/keepresult.h"
#include "command/benchrig.h"
#include "command/benchsource.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

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
        return m_worst == Soundness::Bad ? kExitNotPassed : kExitDone;
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
            m_progress << wish.name << "\n  " << healthAsk() << " Ctrl-C ends it." << std::endl;
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
            if (const Status measured = measure(*control, *device); !measured)
                return measured;
        return {};
    }

    Status measure(const BenchControl& control, const DeviceSeries& device) {
        if (const Result<MeasuredInputs> inputs = measuredInputs(control); !inputs)
            return tl::unexpected(inputs.error());
        const bool isOperated = !m_options.controls.empty();
        const Result<ControlHealth> health = measureControl(control, device, isOperated);
        if (!health)
            return tl::unexpected(health.error());
        show(control.control->name(), "control", health->findings(), healthJson(*health));
        if (!isOperated && wasNotWorked(*health))
            return {}; // nothing was measured that could be kept
        return keepHealth(m_rig->file, m_rig->rig, control, device, *health);
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
        const Guidance guidance = guideHealth(controls, sofar);
        if (!guidance.text.empty() && guidance.text != said)
            m_progress << "  " << guidance.text << std::endl;
        said = guidance.text;
        return guidance.isComplete;
    }

    void show(const std::string& name, const char* kind, const std::vector<Finding>& findings,
              const std::string& json) {
        m_worst = std::max(m_worst, worstOf(findings));
        if (m_options.asJson)
            m_line.out << Json{{kind, name},
                               {"good", worstOf(findings) != Soundness::Bad},
                               {"verdict", soundnessName(worstOf(findings))},
                               {"result", Json::parse(json)}}
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << std::endl;
        else
            m_line.out << name << ": " << soundnessName(worstOf(findings)) << "\n"
                       << findingsText(findings) << std::flush;
    }

    CommandLine& m_line;
    const BenchOptions& m_options;
    std::ostream& m_progress;
    std::optional<BenchRig> m_rig;
    std::map<DeviceIndex, std::vector<const BenchControl*>> m_chosen;
    Soundness m_worst = Soundness::Good;
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
