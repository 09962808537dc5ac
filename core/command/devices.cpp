#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "base/names.h"
#include "command/command.h"
#include "command/identify.h"
#include "command/livedevices.h"
#include "device/deviceclass.h"
#include "device/inputs.h"
#include "device/udevrule.h"
#include "device/wishes.h"
#include "rig/rigfile.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;
using Id = std::pair<std::uint16_t, std::uint16_t>; ///< vendor, product

struct DevicesOptions {
    std::vector<std::string> ids; ///< "VENDOR:PRODUCT"; none: all
    std::string rig;              ///< file; empty: none
    bool watch = false;
    bool identify = false;
    bool asRule = false;
    bool asJson = false;
    double seconds = 0.0; ///< 0: until Ctrl-C
    std::string record;   ///< file; empty: no recording
};

Result<std::vector<Id>> parseIds(const std::vector<std::string>& texts) {
    std::vector<Id> ids;
    for (const std::string& text : texts) {
        const std::optional<Id> id = parseIdText(text);
        if (!id)
            return failure("bad-device-id", "'" + text +
                                                "' names no device; write VENDOR:PRODUCT in hexadecimal, as "
                                                "'flowhand devices' lists them: 1209:0001");
        ids.push_back(*id);
    }
    return ids;
}

Result<Descriptor> descriptorOf(HidSystem& system, const DeviceInfo& device) {
    const auto bytes = system.descriptor(device);
    return bytes ? parseDescriptor(*bytes) : tl::unexpected(bytes.error());
}

/// Why no command opens a device, if so; empty for most.
std::string whyLeftAlone(const DeviceInfo& device, const Result<Descriptor>& descriptor) {
    if (descriptor && isKeyboardOnly(*descriptor))
        return "no rig can use it: it " + whyNoKeyboards();
    return isPrivate(device.deviceClass) ? "left alone: it is opened only when a rig file names it" : "";
}

/// "axes X 0..1023, Throttle -127..127; 32 buttons; 1 hat".
std::string summaryOf(const std::vector<InputInfo>& inputs) {
    std::vector<std::string> named;
    std::size_t buttons = 0;
    for (const InputInfo& input : inputs) {
        if (input.kind == InputKind::Button)
            ++buttons;
        else
            named.push_back(input.name + " (" + kindName(input.kind) + ", " + std::to_string(input.lowest) + " to " +
                            std::to_string(input.highest) + ")");
    }
    if (buttons > 0)
        named.push_back(std::to_string(buttons) + (buttons == 1 ? " button" : " buttons"));
    return named.empty() ? "no controls" : joined(named, ", ");
}

void print(CommandLine& line, HidSystem& system, const DeviceInfo& device) {
    line.out << idText(device.vendor, device.product) << "  " << device.name << "\n    "
             << className(device.deviceClass);
    if (!device.port.empty())
        line.out << ", port " << device.port;
    if (!device.serial.empty())
        line.out << ", serial " << device.serial;
    line.out << ", " << device.path << "\n    ";
    const auto descriptor = descriptorOf(system, device);
    line.out << (descriptor ? summaryOf(makeInputs(*descriptor).inputs) : descriptor.error().message) << "\n";
    if (const std::string why = whyLeftAlone(device, descriptor); !why.empty())
        line.out << "    " << why << "\n";
    else if (!device.readable)
        line.out << "    not readable: " << device.whyNot << "\n";
}

Json jsonOf(HidSystem& system, const DeviceInfo& device) {
    Json json{{"id", idText(device.vendor, device.product)},
              {"name", device.name},
              {"class", className(device.deviceClass)},
              {"port", device.port},
              {"serial", device.serial},
              {"path", device.path},
              {"readable", device.readable}};
    const auto descriptor = descriptorOf(system, device);
    if (const std::string why = whyLeftAlone(device, descriptor); !why.empty())
        json["left_alone"] = why;
    else if (!device.readable)
        json["why_not"] = device.whyNot;
    if (!descriptor) {
        json["error"] = descriptor.error().message;
        return json;
    }
    json["inputs"] = Json::array();
    for (const InputInfo& input : makeInputs(*descriptor).inputs)
        json["inputs"].push_back({{"name", input.name},
                                  {"kind", kindName(input.kind)},
                                  {"report_id", input.key.reportId},
                                  {"usage_page", input.key.usagePage},
                                  {"usage", input.key.usage},
                                  {"lowest", input.lowest},
                                  {"highest", input.highest}});
    return json;
}

int list(CommandLine& line, HidSystem& system, const std::vector<DeviceInfo>& devices, bool asJson) {
    if (devices.empty() && !asJson)
        line.out << "No such HID device is connected.\n";
    for (const DeviceInfo& device : devices) {
        if (asJson)
            line.out << jsonOf(system, device).dump(-1, ' ', false, Json::error_handler_t::replace) << "\n";
        else
            print(line, system, device);
    }
    return kExitDone;
}

std::vector<DeviceInfo> withIds(const std::vector<DeviceInfo>& devices, const std::vector<Id>& ids) {
    std::vector<DeviceInfo> chosen;
    std::copy_if(devices.begin(), devices.end(), std::back_inserter(chosen), [&](const DeviceInfo& device) {
        return ids.empty() || std::find(ids.begin(), ids.end(), Id(device.vendor, device.product)) != ids.end();
    });
    return chosen;
}

std::vector<Id> idsOf(const std::vector<DeviceInfo>& devices) {
    std::vector<Id> ids;
    for (const DeviceInfo& device : devices)
        if (std::find(ids.begin(), ids.end(), Id(device.vendor, device.product)) == ids.end())
            ids.emplace_back(device.vendor, device.product);
    return ids;
}

/// The ids that were written, and those of the rig.
Result<std::vector<Id>> wantedIds(const DevicesOptions& options) {
    Result<std::vector<Id>> ids = parseIds(options.ids);
    if (!ids || options.rig.empty())
        return ids;
    Problems problems;
    for (const DeviceWish& wish : loadRigDevices(options.rig, problems))
        if (std::find(ids->begin(), ids->end(), Id(wish.vendor, wish.product)) == ids->end())
            ids->emplace_back(wish.vendor, wish.product);
    return problems.hasErrors() ? tl::unexpected(allErrors(problems)) : std::move(ids);
}

int look(CommandLine& line, HidSystem& system, const DevicesOptions& options, const std::vector<DeviceInfo>& devices) {
    LookOptions look;
    if (options.seconds > 0.0)
        look.length = fromSeconds(options.seconds);
    look.asJson = options.asJson;
    if (options.identify)
        return identifyDevice(line, system, devices, look);
    if (options.record.empty())
        return watchDevices(line, system, devices, look);
    if (devices.size() > 1)
        return complain(line,
                        {"several-devices",
                         std::to_string(devices.size()) +
                             " devices answer; name the one to record by its VENDOR:PRODUCT, or unplug the others",
                         {}});
    return recordDevice(line, system, devices.front(), options.record, look);
}

int run(CommandLine& line, const DevicesOptions& options) {
    const auto ids = wantedIds(options);
    if (!ids)
        return complain(line, ids.error());
    if (options.asRule && !ids->empty()) { // also for devices that are not plugged in
        line.out << udevRule(*ids);
        return kExitDone;
    }
    const std::unique_ptr<HidSystem> system = systemDevices();
    const std::vector<DeviceInfo> devices = withIds(system->list(), *ids);
    if (!options.watch && !options.identify && !options.asRule && options.record.empty())
        return list(line, *system, devices, options.asJson);
    const auto chosen = devicesToOpen(devices, !ids->empty(), !options.rig.empty());
    if (!chosen)
        return complain(line, chosen.error());
    if (!options.asRule)
        return look(line, *system, options, *chosen);
    line.out << udevRule(idsOf(*chosen));
    return kExitDone;
}

} // namespace

void addDevicesCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<DevicesOptions>();
    CLI::App* command = app.add_subcommand("devices", "List the HID devices that are connected, with their controls");
    command->add_option("ids", options->ids, "Only these")->type_name("VENDOR:PRODUCT");
    command->add_option("--rig", options->rig, "Only the devices that this rig file names")->type_name("FILE");
    CLI::Option* watch = command->add_flag("--watch", options->watch, "Show values as they change, until Ctrl-C");
    CLI::Option* identify = command->add_flag("--identify", options->identify,
                                              "Move one control of a unit, and see which of several it is");
    CLI::Option* record =
        command->add_option("--record", options->record, "Write one device's descriptor and reports to FILE")
            ->type_name("FILE");
    CLI::Option* rule =
        command->add_flag("--rule", options->asRule, "Print the udev rule that lets you read just these devices");
    command->add_option("--for", options->seconds, "Watch, record or wait for a movement this long")
        ->type_name("SECONDS")
        ->check(CLI::Range(0.001, 86400.0));
    command->add_flag("--json", options->asJson, "JSON lines");
    watch->excludes(record, rule, identify);
    identify->excludes(record, rule);
    record->excludes(rule);
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return run(line, *options);
        };
    });
}

} // namespace flowhand
