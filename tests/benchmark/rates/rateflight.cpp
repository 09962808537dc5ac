#include "rateflight.h"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>

#include "command/assembly.h"
#include "command/flowsearch.h"
#include "command/flyrun.h"
#include "stream.h"

using namespace flowhand;
namespace fs = std::filesystem;

namespace {

constexpr std::array<const char*, RateFlight::kDevices> kLevers{"thrust_lever_1", "thrust_lever_2", "tiller",
                                                                "rudder_pedals",  "toe_brake_left", "toe_brake_right",
                                                                "yoke_pitch",     "yoke_roll"};

/// What the buttons of the first device switch on.
constexpr std::array<const char*, StreamReport::kButtons> kSwitches{"taxi_light", "landing_lights", "parking_brake",
                                                                    "takeoff_button", "reply_button"};
/// And what its Y is.
constexpr const char* kThrownLever = "pitch_trim";

void writeFlow(const fs::path& file, std::size_t steps) {
    std::ofstream out(file);
    out << "format = 1\ntitle = \"Rates\"\nphases = [\"taxi_out\"]\nseat = \"captain\"\n[start]\nplace = \"stand\"\n"
           "[start.controls]\nparking_brake = \"on\"\n"; // it is not, so a run waits until that is waived
    for (std::size_t i = 0; i < steps; ++i) {
        const std::size_t pressed = i % StreamReport::kPressed;
        out << "[[step]]\nid = \"press_" << i << "\"\ntitle = \"Press\"\nwithin = \"100 s\"\ndone = \"rise("
            << (pressed < kSwitches.size() ? kSwitches[pressed] : kThrownLever + std::string(" > 0 deg"))
            << ")\"\nwhy = \"To be timed.\"\n";
    }
}

void writeRig(const fs::path& file, std::size_t devices) {
    std::ofstream out(file);
    out << "format = 1\ntitle = \"Streaming devices\"\n";
    char id[16];
    for (std::size_t i = 0; i < devices; ++i) {
        std::snprintf(id, sizeof id, "%04X:%04X", RateFlight::kVendor,
                      static_cast<unsigned>(RateFlight::kFirstProduct + i));
        // The flicker is even over 16 counts: a standard deviation of 4.6.
        out << "[[device]]\nname = \"unit " << i << "\"\nid = \"" << id << "\"\n[[control]]\nsignal = \"" << kLevers[i]
            << "\"\ndevice = \"unit " << i << "\"\nwiring = \"axis\"\ninput = \"X\"\nrange = [0, 65535]\nnoise = 4.6\n";
    }
    out << "[[control]]\nsignal = \"" << kThrownLever
        << "\"\ndevice = \"unit 0\"\nwiring = \"axis\"\ninput = \"Y\"\nrange = [0, 65535]\nnoise = 4.6\n";
    for (std::size_t i = 0; i < kSwitches.size(); ++i)
        out << "[[control]]\nsignal = \"" << kSwitches[i]
            << "\"\ndevice = \"unit 0\"\nwiring = \"contact\"\ninput = \"button " << i + 1 << "\"\n";
}

[[noreturn]] void giveUp(const Error& error) {
    std::cerr << describe(error) << std::endl;
    std::exit(1);
}

} // namespace

RateFlight::RateFlight(const std::string& folder, std::size_t devices, std::size_t steps)
    : m_procedures(folder + "/procedures"), m_rigFile(folder + "/rig.toml"), m_storeFile(folder + "/runs.sqlite"),
      m_devices(devices) {
    const fs::path aircraft = fs::path(m_procedures) / "twin_jet";
    fs::create_directories(aircraft);
    for (const char* file : {"aircraft.toml", "practice.toml"})
        fs::copy_file(fs::path(PROCEDURES) / "twin_jet" / file, aircraft / file, fs::copy_options::overwrite_existing);
    fs::copy(fs::path(PROCEDURES) / "fenholt", fs::path(m_procedures) / "fenholt",
             fs::copy_options::recursive | fs::copy_options::overwrite_existing);
    writeFlow(aircraft / "rates.toml", steps);
    writeRig(m_rigFile, devices);
}

Measured RateFlight::fly(HidSystem& system, bool (*isOver)()) const {
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(m_procedures, problems);
    const Result<FoundFlow> found = findFlow(library, "twin_jet/rates");
    if (!found)
        giveUp(problems.all().empty() ? found.error() : problems.all().front().error);
    Result<Store> store = Store::open(m_storeFile);
    if (!store)
        giveUp(store.error());
    const SteadyClock clock;
    RunWish wish;
    wish.aircraft = found->aircraft;
    wish.flow = found->flow;
    wish.rigFile = m_rigFile;
    Result<AssembledRun> run = assembleRun(wish, &*store, system, clock);
    if (!run)
        giveUp(run.error());
    const DeviceHub& hub = *run->devices;
    Measured measured;
    std::int64_t cpuBefore = -1;
    const LiveFlight live{clock, run->origin, *run->bell,
                          [&] {
                              if (cpuBefore < 0 && hub.counters(0).reports > 0)
                                  cpuBefore = cpuMicros();
                              if (!isOver())
                                  return false;
                              if (measured.cpuMicros == 0)
                                  measured.cpuMicros = cpuMicros() - cpuBefore;
                              return true;
                          },
                          [](const std::string& text) {
                              std::cerr << text << '\n';
                          }};
    (void)flyLive(std::move(run->parts), live, {.from = {}, .isPlaced = false, .isWaived = true},
                  [&](const Event& event, const Flow&) {
                      if (event.kind == EventKind::StepSeen)
                          measured.seenNanos.push_back(steadyNanos());
                  });
    for (std::size_t i = 0; i < m_devices; ++i) {
        const DeviceCounters counters = hub.counters(static_cast<DeviceIndex>(i));
        measured.reports.push_back(counters.reports);
        measured.suspected += counters.suspected;
    }
    return measured;
}
