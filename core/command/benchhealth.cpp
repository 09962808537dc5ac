#include <algorithm>
#include <memory>
#include <set>

#include <nlohmann/json.hpp>

#include "bench/filterchange.h"
#include "bench/guidance.h"
#include "bench/keepresult.h"
#include "bench/millistext.h"
#include "command/benchrig.h"
#include "command/benchsource.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

struct HealthOptions : BenchOptions {
    bool isApplied = false; ///< what follows for the filters
    bool isUndone = false;  ///< what was applied last
};

/// Controls that are measured at once: those of one device, and of all devices that one of them has inputs of too.
struct HealthGroup {
    std::set<DeviceIndex> devices;
    std::vector<const BenchControl*> controls;
};

std::vector<HealthGroup> groupsOf(const std::vector<const BenchControl*>& controls) {
    std::vector<HealthGroup> groups;
    for (const BenchControl* control : controls) {
        HealthGroup joined{{}, {control}};
        for (const auto& [device, inputs] : inputsOf(*control))
            joined.devices.insert(device);
        for (HealthGroup& group : groups) {
            const bool isShared = std::any_of(group.devices.begin(), group.devices.end(), [&](DeviceIndex device) {
                return joined.devices.count(device) > 0;
            });
            if (!isShared)
                continue;
            joined.devices.insert(group.devices.begin(), group.devices.end());
            joined.controls.insert(joined.controls.begin(), group.controls.begin(), group.controls.end());
            group.controls.clear();
        }
        groups.erase(std::remove_if(groups.begin(), groups.end(),
                                    [](const HealthGroup& group) {
                                        return group.controls.empty();
                                    }),
                     groups.end());
        groups.push_back(std::move(joined));
    }
    return groups;
}

class Health {
public:
    Health(CommandLine& line, const HealthOptions& options)
        : m_line(line), m_options(options), m_progress(options.asJson ? line.err : line.out) {}

    int run() {
        Result<BenchRig> rig = loadBenchRig(m_options.rig, m_options.aircraft, m_line.err);
        if (!rig)
            return complain(m_line, rig.error());
        m_rig = std::move(*rig);
        const Result<std::vector<BenchControl>> controls = benchControlsOf(m_rig->rig, m_rig->aircraft().signals);
        if (!controls)
            return complain(m_line, controls.error());
        const Result<std::vector<const BenchControl*>> chosen = choose(*controls);
        if (!chosen)
            return complain(m_line, chosen.error());
        if (m_options.isUndone)
            return undo(*chosen);
        findDemands(*controls);
        const std::vector<HealthGroup> groups = groupsOf(*chosen);
        for (const HealthGroup& group : groups)
            if (const Status measured = measureGroup(group, groups.size() > 1); !measured)
                return complain(m_line, measured.error());
        if (const Status applied = apply(); !applied)
            return complain(m_line, applied.error());
        return m_worst == Soundness::Bad ? kExitNotPassed : kExitDone;
    }

private:
    Result<std::vector<const BenchControl*>> choose(const std::vector<BenchControl>& controls) {
        std::vector<const BenchControl*> chosen;
        for (const std::string& name : m_options.controls) {
            const Result<const BenchControl*> found = findBenchControl(controls, name);
            if (!found)
                return tl::unexpected(found.error());
            chosen.push_back(*found);
        }
        if (m_options.controls.empty())
            for (const BenchControl& control : controls)
                chosen.push_back(&control);
        return chosen;
    }

    /// What all steps of all seats ask of the controls.
    void findDemands(const std::vector<BenchControl>& controls) {
        const Aircraft& aircraft = m_rig->aircraft();
        std::vector<const Flow*> flows;
        for (const Flow& flow : m_rig->folder.flows)
            flows.push_back(&flow);
        const std::vector<EvidenceRecord> none;
        const std::vector<Reach> reaches = reachesOf(m_rig->rig, aircraft.signals, aircraft.controls.size());
        m_demands = stepDemandsOf(controls, reaches, {aircraft, flows, none, aircraft.seats});
    }

    Status measureGroup(const HealthGroup& group, bool hasOthers) {
        WantedInputs wanted;
        for (const BenchControl* control : group.controls)
            for (const auto& [device, inputs] : inputsOf(*control))
                wanted[device].insert(wanted[device].end(), inputs.begin(), inputs.end());
        if (m_options.recordings.empty()) {
            for (const DeviceIndex device : group.devices)
                m_progress << m_rig->rig.devices[device].name << "\n";
            m_progress << "  " << healthAsk(group.controls).english() << " Ctrl-C ends it." << std::endl;
        }
        std::string said;
        const Result<Measurement> measurement =
            flowhand::measure(m_options, m_rig->rig.devices, wanted, [&](const Measurement& sofar) {
                return guide(group.controls, sofar, said);
            });
        if (!measurement) {
            // Without names the devices that there is a recording of are measured.
            const bool isSkipped =
                measurement.error().code == "no-recording" && m_options.controls.empty() && hasOthers;
            if (isSkipped)
                m_line.err << "not measured: " << measurement.error().message << "\n";
            return isSkipped ? Status() : tl::unexpected(measurement.error());
        }
        for (const auto& [name, health] : deviceHealthsOf(*measurement, m_rig->rig.devices))
            show(name, "device", health.findings, {}, deviceHealthJson(health));
        for (const BenchControl* control : group.controls)
            if (const Status measured = measureOne(*control, *measurement); !measured)
                return measured;
        return {};
    }

    Status measureOne(const BenchControl& control, const Measurement& measurement) {
        const bool isOperated = !m_options.controls.empty();
        const Result<ControlHealth> health = measureControl(control, measurement, isOperated);
        if (!health)
            return tl::unexpected(health.error());
        const FilterAdvice filters = adviseFilters(control, *health, measurement, m_demands[control.index]);
        m_cost = "late by " + millisText(filters.delay) + " with them, " + millisText(filters.allowed) + " are allowed";
        show(control.control->name(), "control", health->findings(), filters.findings,
             healthJson(*health, filters, {}, FindingsAs::English));
        if (!isOperated && wasNotWorked(*health))
            return {}; // nothing was measured that could be kept
        if (!filters.keys.empty())
            m_changes.push_back({control.index, filters.keys});
        return keepHealth(m_rig->file, m_rig->rig, control, measurement, *health, filters);
    }

    /// Writes what follows for the filters, or says how.
    Status apply() {
        if (m_changes.empty())
            return {};
        if (m_options.isApplied)
            if (const Status applied = applyFilters(m_rig->file, m_rig->rig, m_rig->aircraft(), m_changes); !applied)
                return applied;
        tell(m_options.isApplied ? "filters written into " + m_rig->file + "; --undo takes them back"
                                 : "filters to change, which --apply writes into " + m_rig->file,
             m_changes);
        return {};
    }

    /// Of the controls that were named, else of all that were changed last.
    int undo(const std::vector<const BenchControl*>& named) {
        const Result<std::vector<EvidenceRecord>> evidence = loadEvidenceOf(m_rig->file, m_line.err);
        const Result<std::vector<ControlFingerprint>> fingerprints =
            fingerprintsOf(m_rig->rig, m_rig->aircraft().signals);
        if (!evidence || !fingerprints)
            return complain(m_line, evidence ? fingerprints.error() : evidence.error());
        std::vector<std::size_t> controls;
        if (m_options.controls.empty())
            controls = lastChangedControls(*evidence, *fingerprints);
        else
            for (const BenchControl* control : named)
                controls.push_back(control->index);
        const BenchResult<std::vector<ControlKeys>> undone =
            undoFilters(m_rig->file, m_rig->rig, m_rig->aircraft(), *evidence, controls);
        if (!undone)
            return complain(m_line, undone.error());
        tell("filters taken back in " + m_rig->file, *undone);
        return kExitDone;
    }

    void tell(const std::string& what, const std::vector<ControlKeys>& changes) {
        if (m_options.asJson) {
            Json json = Json::array();
            for (const ControlKeys& change : changes) {
                Json keys = Json::object();
                for (const RigKey& key : change.keys)
                    keys[key.key] = key.value.empty() ? Json(nullptr) : Json(key.value);
                json.push_back({{"control", m_rig->rig.controls[change.control]->name()}, {"keys", std::move(keys)}});
            }
            m_line.out << Json{{m_options.isUndone    ? "filters_undone"
                                : m_options.isApplied ? "filters_written"
                                                      : "filters_to_change",
                                std::move(json)}}
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << std::endl;
            return;
        }
        m_line.out << what << ":\n";
        for (const ControlKeys& change : changes) {
            m_line.out << "  " << m_rig->rig.controls[change.control]->name() << "\n";
            for (const RigKey& key : change.keys)
                m_line.out << "    " << keyText(key).english() << "\n";
        }
        m_line.out << std::flush;
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

    bool guide(const std::vector<const BenchControl*>& controls, const Measurement& sofar, std::string& said) {
        const Guidance guidance = guideHealth(controls, sofar);
        const std::string text = guidance.text.english();
        if (!text.empty() && text != said)
            m_progress << "  " << text << std::endl;
        said = text;
        return guidance.isComplete;
    }

    void show(const std::string& name, const char* kind, const std::vector<Finding>& findings,
              const std::vector<Finding>& filters, const std::string& json) {
        const Soundness worst = worstOf(findings);
        // That a filter is to be changed is no fault; that none can be enough, is.
        m_worst = std::max({m_worst, worst, worstOf(filters)});
        if (m_options.asJson)
            m_line.out << Json{{kind, name},
                               {"good", worst != Soundness::Bad},
                               {"verdict", soundnessName(worst)},
                               {"result", Json::parse(json)}}
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << std::endl;
        else
            m_line.out << name << ": " << soundnessName(worst) << "\n"
                       << findingsText(findings) << (filters.empty() ? std::string() : "  filters: " + m_cost + "\n")
                       << findingsText(filters) << std::flush;
    }

    CommandLine& m_line;
    const HealthOptions& m_options;
    std::ostream& m_progress;
    std::optional<BenchRig> m_rig;
    std::vector<StepDemand> m_demands; ///< by index of the rig's controls
    std::vector<ControlKeys> m_changes;
    std::string m_cost; ///< of the filters of the control that is shown
    Soundness m_worst = Soundness::Good;
};

} // namespace

void addBenchHealthCommand(CLI::App& bench, CommandLine& line) {
    auto options = std::make_shared<HealthOptions>();
    CLI::App* command = bench.add_subcommand(
        "health", "Measure noise, wear, bounce and timing of controls, and what filters they need");
    addBenchOptions(*command, *options);
    CLI::Option* apply =
        command->add_flag("--apply", options->isApplied, "Write the filters that follow into the rig file");
    command
        ->add_flag("--undo", options->isUndone,
                   "Measure nothing; take the filters back that --apply wrote last (with CONTROL: of these controls)")
        ->excludes(apply);
    command->callback([&line, options] {
        line.chosen = [&line, options] {
            return Health(line, *options).run();
        };
    });
}

} // namespace flowhand
