#include <algorithm>
#include <cstdio>
#include <memory>

#include <nlohmann/json.hpp>

#include "base/doorbell.h"
#include "base/names.h"
#include "command/assembly.h"
#include "command/command.h"
#include "command/datafolder.h"
#include "command/feedtext.h"
#include "command/flowsearch.h"
#include "command/interrupt.h"
#include "session/unobserved.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

constexpr Duration kShowPeriod = std::chrono::seconds(1); // as often as a person reads a new line
constexpr Duration kLook = std::chrono::milliseconds(100);

constexpr const char* kWays =
    "A feed is written FORMAT:WAY.\n"
    "  FORMAT  json   JSON lines: every motion signal by its name\n"
    "          nmea   NMEA 0183 RMC, VTG and GGA: ground speed, track, altitude; no airspeed\n"
    "          gdl90  GDL 90: ground speed, track, altitude, vertical speed, on ground; no airspeed\n"
    "  WAY     PORT, ADDRESS:PORT          UDP; without an address only this computer is heard\n"
    "          ADDRESS:PORT:from:SENDER    UDP from one sender alone\n"
    "          tcp:HOST:PORT               a program that listens there is called\n"
    "          serial:PATH:BAUD            a serial line\n"
    "See what comes:   flowhand feeds --watch json:49100 --flow twin_jet/take_off\n"
    "Fly by it:        flowhand practise twin_jet/take_off --rig FILE --feed json:49100\n";

struct FeedsOptions {
    std::string watch;
    std::string flow;
    std::string procedures = dataFolder() + "/procedures";
    double seconds = 0.0; ///< 0: until Ctrl-C
    bool isJson = false;
};

class Watching {
public:
    Watching(CommandLine& line, const FeedsOptions& options) : m_line(line), m_options(options) {}

    int run() {
        const Result<FeedSpec> spec = FeedSpec::parse(m_options.watch);
        if (!spec)
            return complain(m_line, spec.error());
        Problems problems;
        m_library = loadLibrary(m_options.procedures, problems);
        if (const Status chosen = choose(problems); !chosen)
            return complain(m_line, chosen.error());
        const SteadyClock clock;
        const RunClock runClock{clock, wholeTick(clock.now())};
        Doorbell bell;
        const FeedSignals signals{&m_aircraft->signals, m_aircraft->controls.size()};
        Result<std::unique_ptr<Feed>> feed = Feed::open(*spec, signals, runClock, [&bell] {
            bell.ring();
        });
        if (!feed)
            return complain(m_line, feed.error());
        if (!m_options.isJson)
            m_line.out << (*feed)->title() << ", for the signals of " << m_aircraft->title << std::endl;
        const FeedStatus last = listen(**feed, runClock, bell);
        if (!m_options.isJson)
            sum(last);
        return last.silent ? kExitDone : kExitError;
    }

private:
    /// Whose signals are listened for: the flow's aircraft's, or those of the one that has most.
    Status choose(const Problems& problems) {
        if (!m_options.flow.empty()) {
            const Result<FoundFlow> found = findFlow(m_library, m_options.flow);
            if (!found)
                return tl::unexpected(found.error());
            m_aircraft = found->aircraft;
            m_flow = found->flow;
            return {};
        }
        if (m_library.empty())
            return problems.hasErrors() ? tl::unexpected(problems.firstError())
                                        : failure("no-aircraft", "there is no aircraft in " + m_options.procedures +
                                                                     " whose signals could be listened for");
        m_aircraft = talkativeAircraft(m_library)->aircraft.get();
        return {};
    }

    FeedStatus listen(Feed& feed, const RunClock& clock, Doorbell& bell) {
        const Interrupt interrupt;
        std::vector<FeedChange> changes;
        std::vector<FeedNotice> notices;
        Time shown{};
        for (;;) {
            (void)bell.wait(kLook);
            changes.clear();
            notices.clear();
            feed.drain(changes, notices);
            const Time now = clock.now();
            for (const FeedNotice& notice : notices)
                tell(notice, feed.status());
            const bool isOver = interrupt.isAsked() || (m_options.seconds > 0.0 && seconds(now) >= m_options.seconds);
            if (isOver || now - shown >= kShowPeriod) {
                shown = now;
                show(now, feed.status());
            }
            if (isOver)
                return feed.status();
        }
    }

    void tell(const FeedNotice& notice, const FeedStatus& status) {
        if (m_options.isJson)
            return;
        m_line.out << clockText(notice.time) << "  "
                   << (notice.news == FeedNews::Heard ? "It is heard." : "It has fallen silent: a run would be held.")
                   << std::endl;
        if (notice.news != FeedNews::Heard || m_flow == nullptr)
            return;
        const std::vector<SignalId> missing = unobservedSignals(*m_flow, *m_aircraft, known(status));
        for (const Phrase& remark : unobservedRemarks(*m_flow, *m_aircraft, missing))
            m_line.out << "         " << remark.english() << '\n';
        if (missing.empty())
            m_line.out << "         It tells all that " << m_flow->title << " needs.\n";
    }

    /// What a run by this feed would know: besides what the feed says, what the practice aircraft adds.
    [[nodiscard]] std::vector<Value> known(const FeedStatus& status) const {
        std::vector<Value> values = status.values;
        const Result<MotionSources> sources = MotionSources::choose(*m_aircraft, true, {});
        for (std::size_t i = m_aircraft->controls.size(); sources && i < values.size(); ++i)
            if (!values[i].isKnown() && sources->takesPractice(SignalId(static_cast<std::uint32_t>(i))))
                values[i] = Value::number(0.0);
        return values;
    }

    void show(Time now, const FeedStatus& status) {
        if (m_options.isJson) {
            m_line.out << json(now, status).dump(-1, ' ', false, Json::error_handler_t::replace) << std::endl;
            return;
        }
        m_line.out << clockText(now) << "  " << feedText(status).english();
        if (const std::string values = feedValues(status, *m_aircraft); !values.empty())
            m_line.out << "\n         " << values;
        if (const std::string counted = feedCounts(status.tally).english(); !counted.empty())
            m_line.out << "\n         " << counted;
        m_line.out << std::endl;
    }

    Json json(Time now, const FeedStatus& status) const {
        const auto inSeconds = [](const std::optional<Duration>& duration) {
            return duration ? Json(seconds(*duration)) : Json(nullptr);
        };
        Json values = Json::object();
        for (std::size_t i = 0; i < status.values.size(); ++i)
            if (status.values[i].isKnown())
                values[m_aircraft->signals.all()[i].name] = valueText(m_aircraft->signals.all()[i], status.values[i]);
        const FeedTally& tally = status.tally;
        return {{"time", seconds(now)},
                {"heard", status.isHeard},
                {"rate", status.rate},
                {"clock", inSeconds(status.own)},
                {"delay", inSeconds(status.delay)},
                {"silent", inSeconds(status.silent)},
                {"problem", status.problem},
                {"bytes", tally.bytes},
                {"messages", tally.messages},
                {"other_messages", tally.others},
                {"malformed", tally.malformed},
                {"bad_checksum", tally.badChecksum},
                {"oversized", tally.oversized},
                {"unknown_names", tally.unknownNames},
                {"refused_values", tally.refused},
                {"out_of_time", tally.backwards},
                {"from_others", tally.foreign},
                {"dropped", tally.dropped},
                {"names", tally.names},
                {"values", std::move(values)}};
    }

    void sum(const FeedStatus& status) {
        if (!status.silent)
            m_line.out << "Nothing that tells of motion came. Does the sender send to this computer and port, in this "
                          "format?\n";
        if (!status.tally.names.empty())
            m_line.out << "Names that no motion signal of " << m_aircraft->title
                       << " has: " << joined(status.tally.names, ", ") << '\n';
    }

    CommandLine& m_line;
    const FeedsOptions& m_options;
    std::vector<AircraftFolder> m_library;
    const Aircraft* m_aircraft = nullptr;
    const Flow* m_flow = nullptr;
};

} // namespace

void addFeedsCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<FeedsOptions>();
    CLI::App* command = app.add_subcommand("feeds", "Motion from outside: how a feed is written, and what one says");
    CLI::Option* watch =
        command
            ->add_option("--watch", options->watch,
                         "Listen, and show signals, rate, delay, clock and what was refused, until Ctrl-C")
            ->type_name("FORMAT:WAY");
    command->add_option("--flow", options->flow, "Say which of its steps this feed cannot tell")
        ->needs(watch)
        ->type_name("FLOW");
    command->add_option("--for", options->seconds, "Listen this long")
        ->needs(watch)
        ->type_name("SECONDS")
        ->check(CLI::Range(0.001, 86400.0));
    command->add_option("--procedures", options->procedures, "Folder of the aircraft")->type_name("FOLDER");
    command->add_flag("--json", options->isJson, "JSON lines")->needs(watch);
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            if (!options->watch.empty())
                return Watching(line, *options).run();
            line.out << kWays;
            return kExitDone;
        };
    });
}

} // namespace flowhand
