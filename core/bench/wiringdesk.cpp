#include "bench/wiringdesk.h"

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <utility>

#include "base/textfile.h"

namespace flowhand {

namespace {

/// After the product, in letters, digits and '_', and not taken yet.
std::string freeName(const SourceDevice& unit, const std::vector<std::string>& taken) {
    std::string plain;
    for (const char c : unit.name)
        plain += std::isalnum(static_cast<unsigned char>(c)) != 0
                     ? static_cast<char>(std::tolower(static_cast<unsigned char>(c)))
                     : '_';
    if (plain.empty())
        plain = "device";
    std::string name = plain;
    for (int i = 2; std::find(taken.begin(), taken.end(), name) != taken.end(); ++i)
        name = plain + "_" + std::to_string(i);
    return name;
}

/// By serial, or by port where equal units have none.
DeviceWish wishFor(const SourceDevice& unit, const std::vector<SourceDevice>& units) {
    DeviceWish wish{{}, unit.vendor, unit.product, unit.serial, {}, {}};
    const auto equals = std::count_if(units.begin(), units.end(), [&](const SourceDevice& other) {
        return other.vendor == unit.vendor && other.product == unit.product;
    });
    if (equals > 1 && unit.serial.empty())
        wish.port = unit.port;
    return wish;
}

} // namespace

WiringDesk::WiringDesk(const Aircraft& aircraft, std::string rigFile, const InputSource& source)
    : m_aircraft(aircraft), m_rigFile(std::move(rigFile)), m_source(source) {}

Status WiringDesk::load(Problems& problems) {
    std::error_code ignored;
    if (!std::filesystem::exists(m_rigFile, ignored)) {
        nameDevices({});
        return {};
    }
    Result<std::string> text = readFile(m_rigFile);
    if (!text)
        return tl::unexpected<Error>(text.error());
    const std::optional<RigFile> rig =
        parseRigFile(*text, m_rigFile, m_aircraft.signals, m_aircraft.controls.size(), problems);
    if (!rig)
        return tl::unexpected<Error>(problems.firstError());
    m_text = std::move(*text);
    nameDevices(rig->devices);
    return {};
}

void WiringDesk::nameDevices(const std::vector<DeviceWish>& known) {
    const std::vector<SourceMatch> matches = matchSource(m_source, known);
    const std::vector<SourceDevice>& units = m_source.devices();
    std::vector<std::string> taken;
    for (const DeviceWish& wish : known)
        taken.push_back(wish.name);
    for (std::size_t i = 0; i < units.size(); ++i) {
        WiringDevice device;
        const auto match = std::find_if(matches.begin(), matches.end(), [&](const SourceMatch& candidate) {
            return candidate.device == static_cast<DeviceIndex>(i);
        });
        if (match != matches.end()) {
            device.wish = known[static_cast<std::size_t>(match - matches.begin())];
            device.name = device.wish.name;
        } else {
            device.isNew = true;
            device.wish = wishFor(units[i], units);
            device.name = freeName(units[i], taken);
            taken.push_back(device.name);
        }
        m_devices.push_back(std::move(device));
    }
}

std::string WiringDesk::nameOf(InputPlace place) const {
    return m_devices[place.device].name + ": " + m_source.inputs(place.device)[place.input].name;
}

Result<std::vector<WiringConflict>> WiringDesk::propose(const WiringWish& wish, const WiringProposal& proposal) {
    Result<std::string> text =
        withControl(m_text, "Rig of the " + m_aircraft.title, wish, m_aircraft.signals, proposal, m_devices);
    if (!text)
        return tl::unexpected<Error>(text.error());
    Problems problems;
    const std::optional<RigFile> rig =
        parseRigFile(*text, m_rigFile, m_aircraft.signals, m_aircraft.controls.size(), problems);
    if (!rig)
        return tl::unexpected<Error>(problems.firstError());
    m_proposed = std::move(*text);
    m_proposedDevices = rig->devices;
    m_conflicts = conflictsOf(*rig, wish.signals.front());
    return m_conflicts;
}

Status WiringDesk::accept(bool isShared, bool isDry) {
    if (!m_conflicts.empty() && !isShared)
        return failure("input-wired-twice", m_conflicts.front().input + " is wired to '" + m_conflicts.front().control +
                                                "' already; nothing was written. Move only the one control, or say "
                                                "--shared if both are meant to use it");
    m_text = m_proposed;
    for (WiringDevice& device : m_devices)
        device.isNew = device.isNew &&
                       std::none_of(m_proposedDevices.begin(), m_proposedDevices.end(), [&](const DeviceWish& known) {
                           return known.name == device.name;
                       });
    return isDry ? Status{} : saveRigFile(m_rigFile, m_text, m_aircraft.signals, m_aircraft.controls.size());
}

} // namespace flowhand
