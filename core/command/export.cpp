#include <fstream>
#include <memory>

#include "base/textfile.h"
#include "command/command.h"
#include "command/loadrun.h"
#include "report/debriefhtml.h"
#include "report/runcsv.h"
#include "store/archive.h"

namespace flowhand {

namespace {

struct ExportOptions {
    std::string run;
    std::string store = defaultStoreFile();
    std::string html;
    std::string events;
    std::string signals;
    std::string archive;
};

class Exporter {
public:
    Exporter(const ExportOptions& options, CommandLine& line) : m_options(options), m_line(line) {}

    int run() {
        if (m_options.html.empty() && m_options.events.empty() && m_options.signals.empty() &&
            m_options.archive.empty())
            return complain(m_line, {"nothing-to-export",
                                     "say what to write: --html, --csv-events, --csv-signals or --archive, each with "
                                     "a FILE",
                                     {}});
        Result<StoredRun> run = loadRun(m_options.store, m_options.run);
        if (!run)
            return complain(m_line, run.error());
        Status done = writeArchive(*run);
        if (done)
            done = writeReadable(std::move(*run));
        return done ? kExitDone : complain(m_line, done.error());
    }

private:
    Status write(const std::string& file, const std::string& content) {
        if (file.empty())
            return {};
        const Status written = writeFile(file, content);
        if (written)
            m_line.out << "Wrote " << file << ".\n";
        return written;
    }

    Status writeArchive(const StoredRun& run) {
        if (m_options.archive.empty())
            return {};
        const Result<Bytes> archive = archiveOf(run);
        return archive ? write(m_options.archive, *archive) : tl::unexpected(archive.error());
    }

    /// What needs the run's flow and aircraft to be readable.
    Status writeReadable(StoredRun run) {
        if (m_options.html.empty() && m_options.events.empty() && m_options.signals.empty())
            return {};
        const std::vector<Sample> samples = m_options.signals.empty() ? std::vector<Sample>() : run.samples;
        const Result<StoredDebrief> debrief = StoredDebrief::of(std::move(run), {FLOWHAND_VERSION});
        if (!debrief)
            return tl::unexpected(debrief.error());
        Status done;
        if (!m_options.html.empty())
            done = write(m_options.html, debriefHtml(debrief->input()));
        if (done && !m_options.events.empty())
            done = write(m_options.events, eventsCsv(debrief->timeline().run()));
        if (done && !m_options.signals.empty())
            done = write(m_options.signals, signalsCsv(debrief->timeline().run(), samples));
        return done;
    }

    const ExportOptions& m_options;
    CommandLine& m_line;
};

} // namespace

void addExportCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<ExportOptions>();
    CLI::App* command =
        app.add_subcommand("export", "Write a stored run into files: to print, to reckon with, to keep");
    command->add_option("RUN", options->run, "Its number, as 'flowhand runs' lists it, or last")->required();
    command->add_option("--html", options->html, "The debrief as one page, to read and to print")->type_name("FILE");
    command->add_option("--csv-events", options->events, "What happened, a line an event")->type_name("FILE");
    command->add_option("--csv-signals", options->signals, "Every change of every signal, a line a change")
        ->type_name("FILE");
    command->add_option("--archive", options->archive, "The whole run, for 'flowhand import'")->type_name("FILE");
    command->add_option("--db", options->store, "Where the runs are stored")->type_name("FILE");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return Exporter(*options, line).run();
        };
    });
}

} // namespace flowhand
