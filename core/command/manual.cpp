#include "command/manual.h"

#include <memory>

#include "base/names.h"
#include "base/textfile.h"
#include "command/datafolder.h"
#include "report/manual.h"

namespace flowhand {

namespace {

struct ManualOptions {
    std::string page;
    std::string html;
    std::string folder = manualFolder();
};

int printPage(const std::vector<ManualPage>& pages, const std::string& id, CommandLine& line) {
    std::vector<std::string> known;
    for (const ManualPage& page : pages) {
        known.push_back(page.id);
        if (page.id != id)
            continue;
        line.out << page.text;
        return kExitDone;
    }
    return complain(line, {"unknown-page",
                           "there is no page '" + id + "'; there are " + joined(known, ", ") + nearestHint(id, known),
                           {}});
}

int showManual(const ManualOptions& options, CommandLine& line) {
    const Result<std::vector<ManualPage>> pages = manualPages(options.folder);
    if (!pages)
        return complain(line, pages.error());
    if (!options.html.empty()) {
        if (const Status written = writeFile(options.html, manualHtml(*pages, options.folder)); !written)
            return complain(line, written.error());
        line.out << "Wrote " << options.html << ".\n";
        return kExitDone;
    }
    if (!options.page.empty())
        return printPage(*pages, options.page, line);
    for (const ManualPage& page : *pages)
        line.out << page.id << std::string(page.id.size() < 20 ? 20 - page.id.size() : 1, ' ') << page.title << '\n';
    return kExitDone;
}

} // namespace

void addManualCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<ManualOptions>();
    CLI::App* command = app.add_subcommand("manual", "The manual: its pages, one of them, or all as one page to read");
    command->add_option("page", options->page, "The page to print; left out: they are listed");
    command->add_option("--html", options->html, "Write all pages as one HTML file")->type_name("FILE");
    command->add_option("--folder", options->folder, "Folder of the pages")->type_name("FOLDER");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return showManual(*options, line);
        };
    });
}

} // namespace flowhand
