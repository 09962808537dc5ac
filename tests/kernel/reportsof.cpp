// Turns scripted hands into the HID reports that a rig's devices would send for them, as a script for virtualdevices.
//
//   reportsof RIG FLOW HANDS GOFILE DESCRIPTOR.hex... > SCRIPT
//
// The hands fly the flow here first, with every control simulated; each movement they made becomes a report of the
// device that RIG wires it to. One descriptor a device, in the rig's order. The devices first report where the flow
// starts from, then wait for the word 'started' in GOFILE.

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iostream>

#include "command/assembly.h"
#include "command/datafolder.h"
#include "command/flowsearch.h"
#include "command/flyrun.h"
#include "device/descriptor.h"
#include "device/inputs.h"
#include "session/startvalue.h"

using namespace flowhand;

namespace {

[[noreturn]] void giveUp(const std::string& why) {
    std::cerr << "reportsof: " << why << std::endl;
    std::exit(1);
}

/// Keeps what the hands moved.
class HandKeeper final : public Recorder {
public:
    struct Due {
        Time told; ///< when the program said so
        int step;
    };
    std::vector<Sample> hands;
    std::vector<Due> dues;
    Time started{};

    Status begin(const RunHeader&) override { return {}; }
    Status samples(std::span<const Sample> batch) override {
        m_now = batch.empty() ? m_now : batch.front().time;
        for (const Sample& sample : batch)
            if (sample.actor == Actor::Hand)
                hands.push_back(sample);
        return {};
    }
    Status command(const RunCommand&) override { return {}; }
    Status events(std::span<const Event> events) override {
        for (const Event& event : events) {
            if (event.kind == EventKind::RunStarted)
                started = event.time;
            if (event.kind == EventKind::StepDue)
                dues.push_back({std::max(m_now, event.time), event.step}); // nothing moves while the aircraft stands
        }
        return {};
    }
    Status flush(Time) override { return {}; }
    Status finish(Time, const Score&, const std::vector<StepResult>&) override { return {}; }
    std::int64_t runId() const override { return 0; }

private:
    Time m_now{};
};

std::vector<std::uint8_t> hexFile(const std::string& path) {
    std::ifstream stream(path);
    if (!stream)
        giveUp(path + " cannot be read");
    std::vector<std::uint8_t> bytes;
    std::string digits;
    for (char c = 0; stream.get(c);)
        if (std::isxdigit(static_cast<unsigned char>(c)))
            digits += c;
    for (std::size_t i = 0; i + 1 < digits.size(); i += 2)
        bytes.push_back(static_cast<std::uint8_t>(std::stoul(digits.substr(i, 2), nullptr, 16)));
    return bytes;
}

std::string hexOf(const std::vector<std::uint8_t>& bytes) {
    std::string text;
    char digits[3];
    for (const std::uint8_t byte : bytes) {
        std::snprintf(digits, sizeof digits, "%02X", byte);
        text += digits;
    }
    return text;
}

/// One device's present report, and where each input lies in it. All inputs are in one report.
class ReportImage {
public:
    explicit ReportImage(const std::string& file) : m_bytes(hexFile(file)) {
        const Result<Descriptor> descriptor = parseDescriptor(m_bytes);
        if (!descriptor)
            giveUp(file + ": " + descriptor.error().message);
        m_descriptor = *descriptor;
        m_map = makeInputs(m_descriptor);
        if (m_descriptor.reports.size() != 1)
            giveUp(file + ": only devices with one report are played");
        m_report.resize(m_descriptor.reports.front().bytes());
    }

    [[nodiscard]] const std::vector<std::uint8_t>& descriptor() const { return m_bytes; }
    [[nodiscard]] const std::vector<InputInfo>& inputs() const { return m_map.inputs; }

    void set(std::uint16_t input, std::int64_t raw) {
        const InputElement& element = elementOf(input);
        for (std::uint16_t i = 0; i < element.size; ++i) {
            const std::uint32_t bit = element.bit + i;
            const auto mask = static_cast<std::uint8_t>(1u << (bit % 8));
            const bool isSet = ((static_cast<std::uint64_t>(raw) >> i) & 1u) != 0;
            m_report[bit / 8] = static_cast<std::uint8_t>(isSet ? m_report[bit / 8] | mask : m_report[bit / 8] & ~mask);
        }
    }

    /// As the device sends it, with the id where the descriptor has ids.
    [[nodiscard]] std::string hex() const {
        std::vector<std::uint8_t> bytes = m_report;
        if (m_descriptor.hasReportIds)
            bytes.insert(bytes.begin(), m_descriptor.reports.front().id);
        return hexOf(bytes);
    }

private:
    const InputElement& elementOf(std::uint16_t input) const {
        for (std::size_t i = 0; i < m_map.elements.size(); ++i)
            if (m_map.elements[i].input == input)
                return m_descriptor.elements[i];
        giveUp("an input lies in no field of its own");
    }

    std::vector<std::uint8_t> m_bytes;
    Descriptor m_descriptor;
    InputMap m_map;
    std::vector<std::uint8_t> m_report;
};

struct Scene {
    std::vector<AircraftFolder> library;
    FoundFlow flow;
    std::string handsFile;
    std::optional<Rig> rig;
    std::vector<ReportImage> images; ///< by DeviceIndex
};

/// The hands' movements while they fly alone, with every control simulated.
HandKeeper flownAlone(const Scene& scene) {
    RunWish wish;
    wish.aircraft = scene.flow.aircraft;
    wish.flow = scene.flow.flow;
    wish.handsFile = scene.handsFile;
    const std::unique_ptr<HidSystem> none = systemDevices();
    const SteadyClock clock;
    Result<AssembledRun> run = assembleRun(wish, nullptr, *none, clock);
    if (!run)
        giveUp(describe(run.error()));
    HandKeeper keeper;
    run->parts.recorder = &keeper;
    (void)flyScripted(std::move(run->parts), {}, [](const Event&, const Flow&) {});
    return keeper;
}

/// Puts a signal's value into the reports; the devices that changed.
std::vector<DeviceIndex> put(Scene& scene, SignalId signal, Value value) {
    std::vector<DeviceIndex> changed;
    for (const Reading& reading : scene.rig->readingsFor(signal, value)) {
        scene.images[reading.device].set(reading.input, reading.raw);
        if (changed.empty() || changed.back() != reading.device)
            changed.push_back(reading.device);
    }
    return changed;
}

void printScript(Scene& scene, const std::string& goFile) {
    const Rig& rig = *scene.rig;
    const Aircraft& aircraft = *scene.flow.aircraft;
    const auto name = [&](std::size_t device) {
        return "device" + std::to_string(device);
    };
    for (const CockpitControl& control : aircraft.controls)
        put(scene, control.signal, startOf(*scene.flow.flow, aircraft, control.signal));
    char id[16];
    for (std::size_t i = 0; i < scene.images.size(); ++i) {
        const DeviceWish& wish = rig.devices()[i];
        std::snprintf(id, sizeof id, "%04X:%04X", wish.vendor, wish.product);
        const std::string port = wish.port.empty() ? "virtual/" + name(i) : wish.port;
        std::cout << "plug " << name(i) << ' ' << id << ' ' << port << ' ' << hexOf(scene.images[i].descriptor())
                  << '\n';
    }
    for (std::size_t i = 0; i < scene.images.size(); ++i)
        std::cout << "open " << name(i) << "\nsend " << name(i) << ' ' << scene.images[i].hex() << '\n';
    std::cout << "go " << goFile << " started\n";
    const HandKeeper keeper = flownAlone(scene);
    const auto micros = [&](Time time) {
        return (time - keeper.started).count() / 1000;
    };
    auto due = keeper.dues.begin();
    for (const Sample& sample : keeper.hands) {
        // Real time drifts from the flight here; where a step falls due both meet again.
        for (; due != keeper.dues.end() && due->told < sample.time; ++due)
            std::cout << "sync " << micros(due->told) << ' ' << goFile << " due            "
                      << scene.flow.flow->steps[static_cast<std::size_t>(due->step)].title << '\n';
        for (const DeviceIndex device : put(scene, sample.signal, sample.value))
            std::cout << "at " << micros(sample.time) << ' ' << name(device) << ' ' << scene.images[device].hex()
                      << '\n';
    }
    std::cout << "wait 600000\n";
}

} // namespace

int main(int argc, char** argv) {
    if (argc < 6)
        giveUp("usage: reportsof RIG FLOW HANDS GOFILE DESCRIPTOR.hex... (one a device of the rig, in its order)");
    Scene scene;
    Problems problems;
    scene.library = loadLibrary(dataFolder() + "/procedures", problems);
    const Result<FoundFlow> flow = findFlow(scene.library, argv[2]);
    if (!flow)
        giveUp(describe(flow.error()));
    scene.flow = *flow;
    scene.handsFile = argv[3];
    scene.rig = Rig::load(argv[1], flow->aircraft->signals, flow->aircraft->controls.size(), problems);
    if (!scene.rig)
        giveUp(describe(problems.firstError()));
    for (int i = 5; i < argc; ++i) {
        scene.images.emplace_back(argv[i]);
        const auto device = static_cast<DeviceIndex>(i - 5);
        if (const Status connected = scene.rig->connect(device, scene.images.back().inputs()); !connected)
            giveUp(describe(connected.error()));
    }
    printScript(scene, argv[4]);
}
