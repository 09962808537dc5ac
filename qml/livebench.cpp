#include "livebench.h"

#include <filesystem>

#include <QDesktopServices>
#include <QUrl>

#include "base/textfile.h"
#include "bench/rigaircraft.h"
#include "report/checksheet.h"
#include "report/coveragetable.h"
#include "rigs.h"

namespace flowhand {

namespace {

/// Of the aircraft that the rig file is written for; for a new rig, the first.
const AircraftFolder* folderFor(const std::vector<AircraftFolder>& library, const std::string& rigFile) {
    if (library.empty())
        return nullptr;
    Problems problems; // the bench tells them
    const Result<std::string> source = readFile(rigFile);
    return &library[source ? aircraftOfRig(*source, rigFile, library, problems) : 0];
}

class LiveBench final : public BenchHandle {
public:
    LiveBench(std::shared_ptr<const Aircraft> aircraft, std::string rigFile, std::vector<const Flow*> flows,
              std::unique_ptr<Workbench> bench)
        : m_aircraft(std::move(aircraft)), m_rigFile(std::move(rigFile)), m_flows(std::move(flows)),
          m_bench(std::move(bench)) {}

    [[nodiscard]] BenchSnapshot snapshot() const override { return m_bench->snapshot(); }
    [[nodiscard]] std::vector<BenchPoint> takeTrace() override { return m_bench->takeTrace(); }
    void watch(SignalId signal) override { m_bench->watch(signal); }
    void begin(const BenchWish& wish) override { m_bench->begin(wish); }
    void next() override { m_bench->next(); }
    void cancel() override { m_bench->cancel(); }
    [[nodiscard]] const Aircraft& aircraft() const override { return *m_aircraft; }
    [[nodiscard]] const std::vector<const Flow*>& flows() const override { return m_flows; }

    Status writeSheet(const std::string& file) override {
        Problems problems; // the bench has shown them
        const Result<CheckSheet> sheet = saveCheckSheet(m_rigFile, aircraft(), file, problems);
        return sheet ? Status() : tl::unexpected<Error>(sheet.error());
    }

    Status writeCoverage(const std::string& file, bool hasBothSeats) override {
        const BenchSnapshot now = m_bench->snapshot();
        const std::vector<EvidenceRecord> none;
        const std::vector<std::string> first = {aircraft().seats.front()};
        const CoverageInput input{aircraft(), m_flows, none, hasBothSeats ? aircraft().seats : first};
        return writeFile(file,
                         coverageCsv({now.rigTitle.english(), input, hasBothSeats ? *now.bothSeats : *now.coverage}));
    }

    Status showPage(const std::string& file) override {
        if (QDesktopServices::openUrl(QUrl::fromLocalFile(QString::fromStdString(file))))
            return {};
        return failure("not-shown", "this desktop has no program that shows it; open it in a browser", {file});
    }

private:
    std::shared_ptr<const Aircraft> m_aircraft; ///< with the library that it and the flows are of
    std::string m_rigFile;
    std::vector<const Flow*> m_flows;
    std::unique_ptr<Workbench> m_bench;
};

} // namespace

LiveBenches::LiveBenches(LibraryNow library, std::string rigFile, HidSystem& devices)
    : m_library(std::move(library)), m_askedRig(std::move(rigFile)), m_devices(devices) {}

QString LiveBenches::rigTitle() const {
    return rigTitleOf(file());
}

std::string LiveBenches::file() const {
    return m_askedRig.empty() ? newRigFile() : m_askedRig;
}

Result<std::unique_ptr<BenchHandle>> LiveBenches::open(std::function<void()> onChange) {
    const LibraryPtr library = m_library();
    const AircraftFolder* folder = folderFor(library->aircraft, file());
    if (folder == nullptr)
        return failure("no-aircraft", "there is no aircraft to wire controls for; see 'flowhand lint'");
    std::error_code problem;
    std::filesystem::create_directories(std::filesystem::path(file()).parent_path(), problem);
    std::vector<const Flow*> flows;
    for (const Flow& flow : folder->flows)
        flows.push_back(&flow);
    Result<std::unique_ptr<BenchHandle>> bench =
        open(std::shared_ptr<const Aircraft>(library, folder->aircraft.get()), std::move(flows), std::move(onChange));
    if (bench)
        m_opened = library;
    return bench;
}

Result<std::unique_ptr<BenchHandle>> LiveBenches::openFor(std::shared_ptr<const Aircraft> aircraft,
                                                          std::function<void()> onChange) {
    return open(std::move(aircraft), {}, std::move(onChange));
}

Result<std::unique_ptr<BenchHandle>> LiveBenches::open(std::shared_ptr<const Aircraft> aircraft,
                                                       std::vector<const Flow*> flows, std::function<void()> onChange) {
    Result<std::unique_ptr<Workbench>> bench =
        Workbench::open({*aircraft, flows, file(), m_devices, m_clock}, std::move(onChange));
    if (!bench)
        return tl::unexpected<Error>(bench.error());
    return std::make_unique<LiveBench>(std::move(aircraft), file(), std::move(flows), std::move(*bench));
}

} // namespace flowhand
