#include "command/runskeep.h"

#include <cstdio>
#include <functional>
#include <memory>
#include <vector>

#include "command/loadrun.h"

namespace flowhand {

namespace {

std::string megabytes(std::int64_t bytes) {
    char text[32];
    std::snprintf(text, sizeof text, "%.1f MB", static_cast<double>(bytes) / 1e6);
    return text;
}

/// Opens the store and does something with it.
int inStore(const std::string& file, CommandLine& line, const std::function<Status(Store&)>& act) {
    Result<Store> store = Store::open(file, {false, true});
    if (!store)
        return complain(line, store.error());
    const Status done = act(*store);
    return done ? kExitDone : complain(line, done.error());
}

/// Does something with each of the runs named, and says what was done.
int withRuns(const std::string& file, CommandLine& line, const std::vector<std::string>& names, const char* what,
             const std::function<Status(Store&, std::int64_t)>& act) {
    return inStore(file, line, [&](Store& store) -> Status {
        for (const std::string& name : names) {
            const Result<std::int64_t> id = findRun(store, name);
            if (!id)
                return tl::unexpected(id.error());
            if (const Status done = act(store, *id); !done)
                return done;
            line.out << "Run " << *id << " " << what << ".\n";
        }
        return {};
    });
}

/// The subcommands, each with options of its own.
class Keeping {
public:
    Keeping(CLI::App& runs, CommandLine& line, const std::string& store) : m_runs(runs), m_line(line), m_store(store) {}

    void addTag(bool isSet) {
        auto names = std::make_shared<std::vector<std::string>>();
        auto tag = std::make_shared<std::string>();
        CLI::App* command =
            m_runs.add_subcommand(isSet ? "tag" : "untag", isSet ? "Mark runs with a word" : "Take a mark from runs");
        command->add_option("NAME", *tag, "The word")->required();
        addRuns(command, *names);
        choose(command, [=, &line = m_line, &store = m_store] {
            return withRuns(store, line, *names, isSet ? "is tagged" : "is no longer tagged",
                            [&](Store& opened, std::int64_t id) {
                                return isSet ? opened.tag(id, *tag) : opened.untag(id, *tag);
                            });
        });
    }

    void addReference() {
        auto name = std::make_shared<std::vector<std::string>>();
        auto isCleared = std::make_shared<bool>(false);
        CLI::App* command =
            m_runs.add_subcommand("reference", "Make a run the one that others of its flow are compared with");
        addRuns(command, *name);
        command->add_flag("--clear", *isCleared, "It is no longer");
        choose(command, [=, &line = m_line, &store = m_store] {
            return withRuns(store, line, *name,
                            *isCleared ? "is no reference any more" : "is the reference of its flow",
                            [&](Store& opened, std::int64_t id) {
                                return *isCleared ? opened.clearReference(id) : opened.setReference(id);
                            });
        });
    }

    void addDelete(bool isDeleted) {
        auto names = std::make_shared<std::vector<std::string>>();
        CLI::App* command = m_runs.add_subcommand(
            isDeleted ? "delete" : "restore",
            isDeleted ? "Take runs off the list; 'restore' brings them back until 'trim' needs their room"
                      : "Bring deleted runs back ('flowhand runs --deleted' lists them)");
        addRuns(command, *names);
        choose(command, [=, &line = m_line, &store = m_store] {
            return withRuns(store, line, *names,
                            isDeleted ? "is deleted; 'flowhand runs restore' brings it back" : "is back",
                            [&](Store& opened, std::int64_t id) {
                                return isDeleted ? opened.remove(id) : opened.restore(id);
                            });
        });
    }

    void addTrim() {
        auto size = std::make_shared<std::uint64_t>(0);
        CLI::App* command = m_runs.add_subcommand(
            "trim", "Erase runs for good until the file is no larger: deleted ones first, then the oldest without tag, "
                    "note or reference");
        command->add_option("SIZE", *size, "As in 500MB or 2GB")
            ->required()
            ->transform(CLI::AsSizeValue(true))
            ->type_name("SIZE");
        choose(command, [=, &line = m_line, &store = m_store] {
            return inStore(store, line, [&](Store& opened) -> Status {
                const Result<Trimmed> trimmed = opened.trim(static_cast<std::int64_t>(*size));
                if (!trimmed)
                    return tl::unexpected(trimmed.error());
                line.out << trimmed->runs.size() << (trimmed->runs.size() == 1 ? " run" : " runs")
                         << " erased; what is left takes " << megabytes(trimmed->bytes) << ".\n";
                if (trimmed->bytes > static_cast<std::int64_t>(*size))
                    line.out << "The rest is tagged, noted, a reference or being flown, and stays.\n";
                return {};
            });
        });
    }

    void addCheck() {
        CLI::App* command = m_runs.add_subcommand("check", "Read everything back, and name what is damaged");
        choose(command, [&line = m_line, &store = m_store] {
            bool isWhole = true;
            const int status = inStore(store, line, [&](Store& opened) -> Status {
                const Result<std::vector<std::string>> problems = opened.check();
                if (!problems)
                    return tl::unexpected(problems.error());
                isWhole = problems->empty();
                for (const std::string& problem : *problems)
                    line.out << problem << '\n';
                if (isWhole)
                    line.out << "All is whole.\n";
                return {};
            });
            return isWhole ? status : kExitError;
        });
    }

    void addBackup() {
        auto file = std::make_shared<std::string>();
        CLI::App* command =
            m_runs.add_subcommand("backup", "Copy all runs into one file, also while one is being flown");
        command->add_option("FILE", *file, "It must not be there yet")->required();
        choose(command, [=, &line = m_line, &store = m_store] {
            return inStore(store, line, [&](Store& opened) {
                return opened.backup(*file);
            });
        });
    }

private:
    static void addRuns(CLI::App* command, std::vector<std::string>& names) {
        command->add_option("RUN", names, "Numbers, as 'flowhand runs' lists them, or last")->required();
    }

    void choose(CLI::App* command, std::function<int()> act) {
        command->fallthrough(); // --db may stand behind it, too
        command->callback([&line = m_line, act = std::move(act)] {
            line.chosen = act;
        });
    }

    CLI::App& m_runs;
    CommandLine& m_line;
    const std::string& m_store;
};

} // namespace

void addRunsKeeping(CLI::App& runs, CommandLine& line, const std::string& store) {
    Keeping keeping(runs, line, store);
    keeping.addTag(true);
    keeping.addTag(false);
    keeping.addReference();
    keeping.addDelete(true);
    keeping.addDelete(false);
    keeping.addTrim();
    keeping.addCheck();
    keeping.addBackup();
    runs.require_subcommand(0, 1);
}

} // namespace flowhand
