#include <algorithm>
#include <memory>

#include "base/names.h"
#include "base/textfile.h"
#include "command/command.h"
#include "command/datafolder.h"
#include "command/flowsearch.h"
#include "report/cards.h"

namespace flowhand {

namespace {

struct CardOptions {
    std::string name;
    std::string html;
    std::string procedures = dataFolder() + "/procedures";
};

Result<std::string> cardsOf(const std::vector<AircraftFolder>& library, const std::string& name) {
    const auto set = std::find_if(library.begin(), library.end(), [&](const AircraftFolder& folder) {
        return folder.aircraft->folder == name;
    });
    if (set != library.end())
        return cardSetHtml(*set);
    const Result<FoundFlow> found = findFlow(library, name);
    if (!found)
        return tl::unexpected(found.error());
    return cardHtml(*found->aircraft, *found->flow);
}

int writeCards(const CardOptions& options, CommandLine& line) {
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(options.procedures, problems);
    for (const Problem& problem : problems.all())
        if (problem.severity == Severity::Error)
            line.err << describe(problem.error) << '\n'; // what it is about has no card
    const Result<std::string> cards = cardsOf(library, options.name);
    if (!cards)
        return complain(line, cards.error());
    if (options.html.empty()) {
        line.out << *cards;
        return kExitDone;
    }
    if (const Status written = writeFile(options.html, *cards); !written)
        return complain(line, written.error());
    line.out << "Wrote " << options.html << ".\n";
    return kExitDone;
}

} // namespace

void addCardCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<CardOptions>();
    CLI::App* command = app.add_subcommand("card", "Write a flow as a card to print, or all flows of an aircraft");
    command->add_option("name", options->name, "A flow, as 'flowhand practise' takes it, or an aircraft's folder")
        ->required();
    command->add_option("--html", options->html, "The page; left out: it is printed")->type_name("FILE");
    command->add_option("--procedures", options->procedures, "Folder of the aircraft and their flows")
        ->type_name("FOLDER");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return writeCards(*options, line);
        };
    });
}

} // namespace flowhand
