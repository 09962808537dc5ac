#include "liveruns.h"

#include <QObject>

#include "command/assembly.h"
#include "command/flowsearch.h"
#include "rigs.h"

namespace flowhand {

namespace {

/// One run on its thread, with all that it refers to. The run ends first: it is the last member.
class LiveRun final : public RunHandle {
public:
    LiveRun(std::unique_ptr<Store> store, AssembledRun assembled, const Clock& clock, std::function<void()> onChange)
        : m_store(std::move(store)), m_assembled(std::move(assembled)), m_setup(m_assembled.parts.header.setup),
          m_scene(sceneOf(m_assembled.parts)),
          m_run(std::move(m_assembled.parts), clock, m_assembled.origin, std::move(onChange)) {}

    void command(CommandKind kind, const std::string& text) override { m_run.command(kind, text); }
    void jump(const std::string& step) override { m_run.jump(step); }
    void moveOnScreen(SignalId signal, Value value) override { m_run.moveOnScreen(signal, value); }
    [[nodiscard]] RunSnapshot snapshot() const override { return m_run.snapshot(); }
    [[nodiscard]] SessionSetup setup() const override { return m_setup; }
    [[nodiscard]] std::shared_ptr<const GroundScene> scene() const override { return m_scene; }

private:
    static std::shared_ptr<const GroundScene> sceneOf(const RunParts& parts) {
        return parts.practice ? std::make_shared<const GroundScene>(parts.practice->scene()) : nullptr;
    }

    std::unique_ptr<Store> m_store; ///< used by the run's thread alone, once it runs: for each flow of the flight
    AssembledRun m_assembled;
    SessionSetup m_setup;
    std::shared_ptr<const GroundScene> m_scene;
    Run m_run;
};

} // namespace

LiveRuns::LiveRuns(std::string rigFile, std::string storeFile, HidSystem& devices)
    : m_askedRig(std::move(rigFile)), m_storeFile(std::move(storeFile)), m_devices(devices) {}

std::string LiveRuns::rigFile() const {
    return m_askedRig.empty() ? firstRig() : m_askedRig;
}

QString LiveRuns::rigTitle() const {
    return rigTitleOf(rigFile());
}

Result<std::unique_ptr<RunHandle>> LiveRuns::make(const FlightChoice& choice, std::function<void()> onChange) {
    const std::string rig = rigFile();
    if (choice.hands == HandsChoice::Rig && rig.empty())
        return failure("no-rig", "there is no rig file yet: go to the Bench and wire your controls, or use the screen",
                       {ownRigs()});
    RunWish wish;
    wish.aircraft = choice.folder->aircraft.get();
    wish.flow = choice.flow;
    wish.folder = choice.folder;
    wish.scenario = choice.scenario;
    wish.isDemonstration = choice.hands == HandsChoice::Demonstration;
    // Scripted hands fly by the practice aircraft, which they know.
    wish.feed = wish.isDemonstration ? std::string() : choice.feed;
    wish.rigFile = choice.hands == HandsChoice::Rig ? rig : std::string();
    wish.handsFile = wish.isDemonstration ? demonstrationOf(*choice.flow, choice.scenario, choice.seed) : std::string();
    wish.place = choice.place;
    wish.slowness = choice.slowness;
    wish.seed = choice.seed;
    wish.hasScreenControls = true;
    wish.help = choice.help;
    wish.pilot = choice.pilot;
    wish.latency = std::chrono::milliseconds(choice.delayMillis);
    // A store that cannot be opened must not keep anyone from flying; the run says that it is not stored.
    Result<Store> opened = Store::open(m_storeFile);
    auto store = opened ? std::make_unique<Store>(std::move(*opened)) : nullptr;
    Result<AssembledRun> run = assembleRun(wish, store.get(), m_devices, m_clock);
    if (!run)
        return tl::unexpected(run.error());
    if (!opened)
        run->noteNotStored(opened.error());
    run->parts.notices = run->remarks;
    auto live = std::make_unique<LiveRun>(std::move(store), std::move(*run), m_clock, std::move(onChange));
    if (choice.hands == HandsChoice::Demonstration)
        live->command(CommandKind::Start, {});
    return live;
}

bool LiveRuns::canDemonstrate(const FlightChoice& choice) const {
    return !demonstrationOf(*choice.flow, choice.scenario).empty();
}

Result<PracticeFigures> LiveRuns::practice(const AircraftFolder& folder) const {
    return loadPracticeOf(*folder.aircraft);
}

ConnectedDevices LiveRuns::devices() const {
    ConnectedDevices now;
    for (const DeviceInfo& device : m_devices.list()) {
        if (device.deviceClass != DeviceClass::Controls)
            continue;
        const QString name = QString::fromStdString(device.name);
        now.hasControls |= device.readable;
        now.remarks.push_back(device.readable ? QObject::tr("%1 is connected.").arg(name)
                                              : QObject::tr("%1: %2").arg(name, QString::fromStdString(device.whyNot)));
    }
    if (now.remarks.empty())
        now.remarks.push_back(QObject::tr("No lever, pedal or switch unit is connected now."));
    return now;
}

} // namespace flowhand
