#include "rig/rigfile.h"

#include <algorithm>
#include <tuple>

#include "base/names.h"
#include "base/tomlfile.h"
#include "device/wishes.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

constexpr std::int64_t kFormat = 1;

void checkFormat(TomlReader& reader) {
    const std::optional<std::int64_t> format = reader.integer("format");
    if (!format && reader.tableNode().find("format") == nullptr)
        reader.problems().error("missing-key", "a rig file begins with format = 1", reader.tableNode().place);
    else if (format && *format != kFormat)
        reader.problems().error("unknown-format",
                                "this file has format " + std::to_string(*format) + "; this program reads format 1",
                                reader.placeOf("format"));
}

DeviceWish readDevice(TomlReader& reader, const std::vector<DeviceWish>& before) {
    DeviceWish device;
    device.place = reader.tableNode().place;
    device.name = reader.requiredText("name");
    const std::string id = reader.requiredText("id");
    if (const auto parsed = parseIdText(id))
        std::tie(device.vendor, device.product) = *parsed;
    else if (reader.tableNode().find("id") != nullptr)
        reader.problems().error("bad-id",
                                "'" + id +
                                    "' is not a device's id; it is four hex digits, a colon and four more, as "
                                    "'flowhand devices' shows it: id = \"1209:F101\"",
                                reader.placeOf("id"));
    device.serial = reader.text("serial").value_or(std::string());
    device.port = reader.text("port").value_or(std::string());
    if (device.name.find(": ") != std::string::npos)
        reader.problems().error("bad-name", "a device's name cannot hold a colon and a space", reader.placeOf("name"));
    for (const DeviceWish& other : before) {
        const bool isToldApart = (!device.serial.empty() && !other.serial.empty() && device.serial != other.serial) ||
                                 (!device.port.empty() && !other.port.empty() && device.port != other.port);
        if (other.name == device.name)
            reader.problems().error("duplicate-name", "there are two devices '" + device.name + "'",
                                    reader.placeOf("name"));
        else if (other.vendor == device.vendor && other.product == device.product && !isToldApart)
            reader.problems().error("equal-devices",
                                    "'" + other.name + "' and '" + device.name +
                                        "' have the same id; give both their serial or their port; 'flowhand "
                                        "devices --identify' tells which is which",
                                    device.place);
    }
    reader.finish();
    return device;
}

std::vector<DeviceWish> readDevices(TomlReader& reader) {
    std::vector<DeviceWish> devices;
    for (const TomlNode* table : reader.tables("device")) {
        TomlReader entry(reader.file(), *table, "a device", reader.problems());
        devices.push_back(readDevice(entry, devices));
    }
    return devices;
}

std::unique_ptr<Control> readControl(TomlReader& toml, const RigScope& scope) {
    ControlReader reader(toml, scope);
    std::vector<std::string> known;
    for (const WiringKind& kind : wiringKinds())
        known.emplace_back(kind.name);
    const std::string wiring = toml.requiredText("wiring");
    const auto kind = std::find_if(wiringKinds().begin(), wiringKinds().end(), [&](const WiringKind& candidate) {
        return candidate.name == wiring;
    });
    if (kind == wiringKinds().end()) {
        if (toml.tableNode().find("wiring") != nullptr)
            reader.error("unknown-wiring",
                         "there is no wiring '" + wiring + "'" + nearestHint(wiring, known) + " There are " +
                             joined(known, ", "),
                         "wiring");
        return nullptr;
    }
    const std::size_t count = reader.signalIds().size();
    if (count == 0)
        return nullptr;
    if (count < kind->leastSignals || count > kind->mostSignals) {
        reader.error("wrong-signals",
                     "the wiring '" + wiring + "' makes " +
                         (kind->mostSignals == 1   ? std::string("one signal")
                          : kind->leastSignals > 1 ? std::to_string(kind->leastSignals) + " signals"
                                                   : "at most " + std::to_string(kind->mostSignals) + " signals") +
                         ", not " + std::to_string(count),
                     "signal");
        return nullptr;
    }
    std::unique_ptr<Control> control = kind->read(reader);
    toml.finish();
    return control;
}

/// A signal has one control; who has two inputs for it says in one control how they combine.
void checkOwners(const RigFile& file, const RigScope& scope, const std::vector<SourcePlace>& places,
                 Problems& problems) {
    std::vector<const Control*> owners(scope.controlCount, nullptr);
    for (std::size_t i = 0; i < file.controls.size(); ++i) {
        if (!file.controls[i])
            continue;
        for (const SignalId id : file.controls[i]->signals()) {
            if (const Control* other = owners[indexOf(id)])
                problems.error("signal-wired-twice",
                               "'" + scope.signals[id].name + "' is wired to '" + other->name() +
                                   "' already; put both inputs into one control that says how they combine",
                               places[i]);
            owners[indexOf(id)] = file.controls[i].get();
        }
    }
}

void checkDevicesUsed(const RigFile& file, Problems& problems) {
    for (std::size_t i = 0; i < file.devices.size(); ++i) {
        const bool isUsed = std::any_of(file.controls.begin(), file.controls.end(), [&](const auto& control) {
            return std::any_of(control->inputs().begin(), control->inputs().end(), [&](const InputRef& input) {
                return input.device == i;
            });
        });
        if (!isUsed)
            problems.warning("unused-device", "no control uses '" + file.devices[i].name + "'", file.devices[i].place);
    }
}

void collectRemarks(RigFile& file) {
    for (const std::unique_ptr<Control>& control : file.controls) {
        if (control->asksForState())
            file.remarks.push_back(phrase("{1}: say how it stands, for its switch cannot tell").with(control->name()));
        if (Phrase remark = control->remark(); !remark.isEmpty())
            file.remarks.push_back(phrase("{1}: {2}").with(control->name(), std::move(remark)));
    }
}

/// Levers that a real quadrant would lock against each other and this one does not: a guard has to judge it.
void readInterlocks(TomlReader& reader, const RigScope& scope, RigFile& file) {
    for (const TomlNode* table : reader.tables("missing_interlock")) {
        TomlReader entry(reader.file(), *table, "a missing interlock", reader.problems());
        std::vector<std::string> labels;
        for (const std::string& name : entry.texts("signal")) {
            const std::optional<SignalId> id = scope.signals.find(name);
            if (id && indexOf(*id) < scope.controlCount)
                labels.push_back(scope.signals[*id].label);
            else
                reader.problems().error("unknown-signal", "this aircraft has no control '" + name + "'",
                                        entry.placeOf("signal"));
        }
        const std::string text = entry.requiredText("text");
        entry.finish();
        file.remarks.push_back(phrase("No mechanical interlock ({1}): {2}").with(joined(labels, ", "), text));
    }
}

} // namespace

bool isRigFile(const TomlFile& file) {
    const TomlNode* controls = file.root().find("control");
    const bool isWired =
        controls != nullptr && std::any_of(controls->items.begin(), controls->items.end(), [](const TomlNode& control) {
            return control.find("wiring") != nullptr;
        });
    return isWired || file.root().find("device") != nullptr;
}

std::vector<DeviceWish> loadRigDevices(const std::string& file, Problems& problems) {
    const Result<TomlFile> toml = TomlFile::load(file);
    if (!toml) {
        problems.add(Severity::Error, toml.error());
        return {};
    }
    TomlReader reader(*toml, toml->root(), "the rig file", problems);
    checkFormat(reader);
    std::vector<DeviceWish> devices = readDevices(reader);
    if (devices.empty())
        problems.error("empty-rig", "a rig needs at least one [[device]]", toml->root().place);
    return devices;
}

std::optional<RigFile> parseRigFile(std::string source, const std::string& name, const SignalTable& signals,
                                    std::size_t controlCount, Problems& problems) {
    const Result<TomlFile> toml = TomlFile::parse(std::move(source), name);
    if (!toml) {
        problems.add(Severity::Error, toml.error());
        return std::nullopt;
    }
    Problems found;
    TomlReader reader(*toml, toml->root(), "the rig file", found);
    checkFormat(reader);
    RigFile file;
    file.source = toml->source();
    file.title = reader.requiredText("title");
    file.devices = readDevices(reader);
    const RigScope scope{signals, controlCount, file.devices};
    std::vector<SourcePlace> places;
    for (const TomlNode* table : reader.tables("control")) {
        const TomlNode* label = table->find("name") != nullptr ? table->find("name") : table->find("signal");
        const std::string what = label && label->kind == TomlNode::Kind::Text ? "'" + label->text + "'" : "a control";
        TomlReader entry(*toml, *table, what, found);
        file.controls.push_back(readControl(entry, scope));
        places.push_back(entry.placeOf("signal"));
    }
    readInterlocks(reader, scope, file);
    file.tolerances = readTolerances(reader);
    reader.finish();
    checkOwners(file, scope, places, found);
    if (file.devices.empty() || file.controls.empty())
        found.error("empty-rig", "a rig needs at least one [[device]] and one [[control]]", toml->root().place);
    if (!found.hasErrors()) {
        checkDevicesUsed(file, found);
        collectRemarks(file);
    }
    for (const Problem& problem : found.all())
        problems.add(problem.severity, problem.error);
    return found.hasErrors() ? std::nullopt : std::optional(std::move(file));
}

} // namespace flowhand
