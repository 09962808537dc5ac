#include <memory>

#include "command/command.h"
#include "command/takein.h"

namespace flowhand {

namespace {

struct ImportOptions {
    std::vector<std::string> files;
    std::string store = defaultStoreFile();
};

int importAll(const ImportOptions& options, CommandLine& line) {
    Result<Store> store = Store::open(options.store);
    if (!store)
        return complain(line, store.error());
    int status = kExitDone;
    for (const std::string& file : options.files) {
        const Result<std::int64_t> id = takeIn(*store, file);
        if (id)
            line.out << file << " is run " << *id << " now.\n";
        else
            status = complain(line, id.error());
    }
    return status;
}

} // namespace

void addImportCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<ImportOptions>();
    CLI::App* command =
        app.add_subcommand("import", "Add runs that 'flowhand export --archive' wrote, here or elsewhere");
    command->add_option("FILE", options->files, "Archives of runs")->required();
    command->add_option("--db", options->store, "Where the runs are stored")->type_name("FILE");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return importAll(*options, line);
        };
    });
}

} // namespace flowhand
