#include "liveruns.h"

#include <algorithm>
#include <filesystem>

#include <QObject>

#include "base/tomlfile.h"
#include "command/assembly.h"

namespace flowhand {

namespace {

/// One run on its thread, with all that it refers to. The run ends first: it is the last member.
class LiveRun final : public RunHandle {
public:
    LiveRun(std::optional<Store> store, AssembledRun assembled, const Clock& clock, std::function<void()> onChange)
        : m_store(std::move(store)), m_assembled(std::move(assembled)), m_setup(m_assembled.parts.header.setup),
          m_run(std::move(m_assembled.parts), clock, m_assembled.origin, std::move(onChange)) {}

    void command(CommandKind kind, const std::string& text) override { m_run.command(kind, text); }
    void moveOnScreen(SignalId signal, Value value) override { m_run.moveOnScreen(signal, value); }
    [[nodiscard]] RunSnapshot snapshot() const override { return m_run.snapshot(); }
    [[nodiscard]] SessionSetup setup() const override { return m_setup; }

private:
    std::optional<Store> m_store; ///< used by the run's thread alone, once it runs
    AssembledRun m_assembled;
    SessionSetup m_setup;
    Run m_run;
};

std::string ownRigs() {
    return (std::filesystem::path(defaultStoreFile()).parent_path() / "rigs").string();
}

/// The first rig file of the folder, by name.
std::string firstRigIn(const std::string& folder) {
    std::error_code problem;
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder, problem))
        if (entry.path().extension() == ".toml")
            files.push_back(entry.path().string());
    return files.empty() ? std::string() : *std::min_element(files.begin(), files.end());
}

QString titleOf(const std::string& rigFile) {
    if (rigFile.empty())
        return {};
    const Result<TomlFile> file = TomlFile::load(rigFile);
    const TomlNode* title = file ? file->root().find("title") : nullptr;
    return QString::fromStdString(title != nullptr ? title->text : rigFile);
}

} // namespace

QString LiveRuns::rigsFolder() const {
    return QString::fromStdString(ownRigs());
}

LiveRuns::LiveRuns(std::string rigFile, std::string storeFile)
    : m_rigFile(rigFile.empty() ? firstRigIn(ownRigs()) : std::move(rigFile)), m_storeFile(std::move(storeFile)),
      m_rigTitle(titleOf(m_rigFile)), m_devices(systemDevices()) {}

Result<std::unique_ptr<RunHandle>> LiveRuns::make(const FlightChoice& choice, std::function<void()> onChange) {
    if (choice.hands == HandsChoice::Rig && m_rigFile.empty())
        return failure(
            "no-rig",
            "there is no rig file yet: copy one of the sample rigs into this folder and make it say which input "
            "is which control, or use the screen",
            {ownRigs()});
    RunWish wish;
    wish.aircraft = choice.folder->aircraft.get();
    wish.flow = choice.flow;
    wish.rigFile = choice.hands == HandsChoice::Rig ? m_rigFile : std::string();
    wish.handsFile = choice.hands == HandsChoice::Demonstration ? demonstrationOf(*choice.flow) : std::string();
    wish.hasScreenControls = true;
    // A store that cannot be opened must not keep anyone from flying; the run says that it is not stored.
    Result<Store> opened = Store::open(m_storeFile);
    std::optional<Store> store;
    if (opened)
        store.emplace(std::move(*opened));
    Result<AssembledRun> run = assembleRun(wish, store ? &*store : nullptr, *m_devices, m_clock);
    if (!run)
        return tl::unexpected(run.error());
    if (!opened)
        run->remarks.push_back("This run is not stored. " + describe(opened.error()));
    run->parts.notices = run->remarks;
    auto live = std::make_unique<LiveRun>(std::move(store), std::move(*run), m_clock, std::move(onChange));
    if (choice.hands == HandsChoice::Demonstration)
        live->command(CommandKind::Start, {});
    return live;
}

bool LiveRuns::canDemonstrate(const AircraftFolder&, const Flow& flow) const {
    return !demonstrationOf(flow).empty();
}

std::vector<QString> LiveRuns::deviceRemarks() const {
    std::vector<QString> remarks;
    for (const DeviceInfo& device : m_devices->list()) {
        if (device.deviceClass != DeviceClass::Controls)
            continue;
        const QString name = QString::fromStdString(device.name);
        remarks.push_back(device.readable ? QObject::tr("%1 is connected.").arg(name)
                                          : QObject::tr("%1: %2").arg(name, QString::fromStdString(device.whyNot)));
    }
    if (remarks.empty())
        remarks.push_back(QObject::tr("No lever, pedal or switch unit is connected now."));
    return remarks;
}

} // namespace flowhand
