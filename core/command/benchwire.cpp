#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "base/names.h"
#include "base/valuewords.h"
#include "bench/wiringdesk.h"
#include "bench/wiringguide.h"
#include "command/benchcommand.h"
#include "command/interrupt.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

struct WireOptions {
    std::string rigFile;
    std::string aircraftFile;
    std::vector<std::string> wishes;
    std::vector<std::string> recordings;
    bool isShared = false;
    bool isDry = false;
    bool asJson = false;
};

/// Wires one control after the other. Lives for one command.
class Wirer {
public:
    Wirer(CommandLine& line, const WireOptions& options, const Aircraft& aircraft, InputSource& source)
        : m_line(line), m_options(options), m_aircraft(aircraft), m_source(source),
          m_desk(aircraft, options.rigFile, source) {}

    int run(const std::vector<WiringWish>& wishes) {
        Problems problems;
        const Status loaded = m_desk.load(problems);
        for (const Problem& problem : problems.all())
            if (loaded)
                m_line.err << describe(problem.error) << "\n";
        if (!loaded)
            return complain(m_line, loaded.error());
        for (const WiringWish& wish : wishes) {
            const BenchResult<WiringProposal> proposal = lead(wish);
            const Status status = proposal ? take(wish, *proposal) : tl::unexpected<Error>(proposal.error());
            if (!status)
                return complain(m_line, status.error());
        }
        return kExitDone;
    }

private:
    BenchResult<WiringProposal> lead(const WiringWish& wish) {
        WiringGuide guide(wish, m_aircraft, m_watch, m_now);
        tellStage(guide);
        while (!guide.isDone()) {
            const std::optional<InputNews> news = m_source.next();
            if (!news)
                return failure("nothing-moved", std::string(m_source.isRecorded() ? "the recordings end" : "stopped") +
                                                    " while this was waited for: " + guide.ask().english());
            for (const DeviceIndex device : news->connected)
                m_watch.connect(device, m_source.inputs(device));
            for (const Phrase& message : news->messages)
                m_line.err << message.english() << "\n";
            for (const Reading& reading : news->readings)
                m_watch.take(reading);
            m_now = news->now;
            if (guide.advance(m_now) && !guide.isDone())
                tellStage(guide);
        }
        return guide.solve([this](InputPlace place) {
            return m_desk.nameOf(place);
        });
    }

    void tellStage(const WiringGuide& guide) {
        if (m_options.asJson)
            m_line.out << Json({{"stage", guide.stage() + 1},
                                {"of", guide.stageCount()},
                                {"ask", guide.ask().english()}})
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << "\n";
        else
            m_line.out << "(" << guide.stage() + 1 << " of " << guide.stageCount() << ") " << guide.ask().english()
                       << "\n";
        m_line.out << std::flush;
    }

    /// Shows the proposal, looks for conflicts, and writes it.
    Status take(const WiringWish& wish, const WiringProposal& proposal) {
        const Result<std::vector<WiringConflict>> conflicts = m_desk.propose(wish, proposal);
        if (!conflicts)
            return tl::unexpected<Error>(conflicts.error());
        tellProposal(wish, proposal, *conflicts);
        return m_desk.accept(m_options.isShared, m_options.isDry);
    }

    void tellProposal(const WiringWish& wish, const WiringProposal& proposal,
                      const std::vector<WiringConflict>& conflicts) {
        std::vector<std::string> signals;
        for (const SignalId id : wish.signals)
            signals.push_back(m_aircraft.signals[id].name);
        std::vector<std::string> inputs;
        for (const InputPlace place : proposal.inputs)
            inputs.push_back(m_desk.nameOf(place));
        if (m_options.asJson) {
            Json json{{"signal", signals}, {"wiring", proposal.wiring}, {"inputs", inputs}, {"keys", proposal.keys}};
            json["remarks"] = englishOf(proposal.remarks);
            json["conflicts"] = Json::array();
            for (const WiringConflict& conflict : conflicts)
                json["conflicts"].push_back({{"input", conflict.input}, {"control", conflict.control}});
            m_line.out << json.dump(-1, ' ', false, Json::error_handler_t::replace) << "\n";
            return;
        }
        m_line.out << joined(signals, ", ") << ": " << proposal.wiring << " from " << joined(inputs, ", ") << "\n"
                   << proposal.keys;
        for (const Phrase& remark : proposal.remarks)
            m_line.out << "Note: " << remark.english() << "\n";
        for (const WiringConflict& conflict : conflicts)
            m_line.out << "Conflict: " << conflict.input << " is also wired to '" << conflict.control << "'\n";
        m_line.out << std::flush;
    }

    CommandLine& m_line;
    const WireOptions& m_options;
    const Aircraft& m_aircraft;
    InputSource& m_source;
    WiringDesk m_desk;
    InputWatch m_watch;
    Time m_now{};
};

int wire(CommandLine& line, const WireOptions& options) {
    Problems problems;
    const std::optional<Aircraft> aircraft = loadAircraft(options.aircraftFile, problems);
    if (!aircraft)
        return complain(line, problems.firstError());
    std::vector<WiringWish> wishes;
    for (const std::string& text : options.wishes) {
        BenchResult<WiringWish> wish = parseWiringWish(text, *aircraft);
        if (!wish)
            return complain(line, wish.error());
        wishes.push_back(std::move(*wish));
    }
    const std::unique_ptr<HidSystem> system = systemDevices();
    const SteadyClock clock;
    const Interrupt interrupt;
    const auto source = options.recordings.empty() ? liveSource(*system, clock, {},
                                                                [&interrupt] {
                                                                    return interrupt.isAsked();
                                                                })
                                                   : recordedSource(options.recordings);
    if (!source)
        return complain(line, source.error());
    Wirer wirer(line, options, *aircraft, **source);
    const int status = wirer.run(wishes);
    if (status == kExitDone && !options.asJson)
        line.out << (options.isDry ? "Nothing was written." : "Written to " + options.rigFile + ".") << "\n";
    return status;
}

} // namespace

void addBenchWireCommand(CLI::App& bench, CommandLine& line) {
    auto options = std::make_shared<WireOptions>();
    CLI::App* command =
        bench.add_subcommand("wire", "Find the inputs of controls by moving them, and write them to the rig file");
    command
        ->add_option("control", options->wishes,
                     "Controls of the aircraft, as core/bench/README.md says: flap_lever, "
                     "thrust_lever_1+reverse_lever_1=split_axis")
        ->required()
        ->type_name("SIGNAL[+SIGNAL][=WIRING]");
    command->add_option("--rig", options->rigFile, "Rig file; a new one is begun")->required()->type_name("FILE");
    command->add_option("--aircraft", options->aircraftFile, "Aircraft file, aircraft.toml")
        ->required()
        ->type_name("FILE");
    command->add_option("--recording", options->recordings, "A recording instead of devices; once for each device")
        ->allow_extra_args(false)
        ->type_name("FILE");
    command->add_flag("--shared", options->isShared, "An input may have another control as well");
    command->add_flag("--dry-run", options->isDry, "Show what is found and write nothing");
    command->add_flag("--json", options->asJson, "JSON lines: the stages, then what was found");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return wire(line, *options);
        };
    });
}

} // namespace flowhand
