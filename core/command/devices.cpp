#include <algorithm>
#include <charconv>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "base/names.h"
#include "command/command.h"
#include "command/livedevices.h"
#include "device/inputs.h"
#include "device/udevrule.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;
using Id = std::pair<std::uint16_t, std::uint16_t>; ///< vendor, product

struct DevicesOptions {
    std::vector<std::string> ids; ///< "VENDOR:PRODUCT"; none: all
    bool watch = false;
    bool asRule = false;
    bool asJson = false;
    double seconds = 0.0; ///< 0: until Ctrl-C
    std::string record;   ///< file; empty: no recording
};

constexpr const char* kClassNames[] = {"controls", "keyboard", "mouse", "security key", "other"};

std::optional<std::uint16_t> parseHex16(std::string_view text) {
    std::uint16_t value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value, 16);
    return error == std::errc() && end == text.data() + text.size() && !text.empty() ? std::optional(value)
                                                                                     : std::nullopt;
}

Result<std::vector<Id>> parseIds(const std::vector<std::string>& texts) {
    std::vector<Id> ids;
    for (const std::string& text : texts) {
        const std::size_t colon = std::min(text.find(':'), text.size());
        const auto vendor = parseHex16(std::string_view(text).substr(0, colon));
        const auto product = parseHex16(std::string_view(text).substr(std::min(colon + 1, text.size())));
        if (!vendor || !product)
            return failure("bad-device-id", "'" + text +
                                                "' names no device; write VENDOR:PRODUCT in hexadecimal, as "
                                                "'flowhand devices' lists them: 1209:0001");
        ids.emplace_back(*vendor, *product);
    }
    return ids;
}

Result<std::vector<InputInfo>> inputsOf(HidSystem& system, const DeviceInfo& device) {
    const auto bytes = system.descriptor(device);
    if (!bytes)
        return tl::unexpected(bytes.error());
    const auto descriptor = parseDescriptor(*bytes);
    if (!descriptor)
        return tl::unexpected(descriptor.error());
    return makeInputs(*descriptor).inputs;
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
             << kClassNames[static_cast<std::size_t>(device.deviceClass)];
    if (!device.port.empty())
        line.out << ", port " << device.port;
    if (!device.serial.empty())
        line.out << ", serial " << device.serial;
    line.out << ", " << device.path << "\n    ";
    const auto inputs = inputsOf(system, device);
    line.out << (inputs ? summaryOf(*inputs) : inputs.error().message) << "\n";
    if (!device.readable)
        line.out << "    not readable: " << device.whyNot << "\n";
}

Json jsonOf(HidSystem& system, const DeviceInfo& device) {
    Json json{{"id", idText(device.vendor, device.product)},
              {"name", device.name},
              {"class", kClassNames[static_cast<std::size_t>(device.deviceClass)]},
              {"port", device.port},
              {"serial", device.serial},
              {"path", device.path},
              {"readable", device.readable}};
    if (!device.readable)
        json["why_not"] = device.whyNot;
    const auto inputs = inputsOf(system, device);
    if (!inputs) {
        json["error"] = inputs.error().message;
        return json;
    }
    json["inputs"] = Json::array();
    for (const InputInfo& input : *inputs)
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

/// Without ids only sets of controls: what people type is nobody's business unless they name the device.
std::vector<DeviceInfo> choose(const std::vector<DeviceInfo>& devices, const std::vector<Id>& ids, bool toOpen) {
    std::vector<DeviceInfo> chosen;
    std::copy_if(devices.begin(), devices.end(), std::back_inserter(chosen), [&](const DeviceInfo& device) {
        if (ids.empty())
            return !toOpen || device.deviceClass == DeviceClass::Controls;
        return std::find(ids.begin(), ids.end(), Id(device.vendor, device.product)) != ids.end();
    });
    return chosen;
}

int run(CommandLine& line, const DevicesOptions& options) {
    const auto ids = parseIds(options.ids);
    if (!ids)
        return complain(line, ids.error());
    if (options.asRule && !ids->empty()) { // also for devices that are not plugged in
        line.out << udevRule(*ids);
        return kExitDone;
    }
    const std::unique_ptr<HidSystem> system = systemDevices();
    const bool toOpen = options.watch || options.asRule || !options.record.empty();
    const std::vector<DeviceInfo> devices = choose(system->list(), *ids, toOpen);
    if (!toOpen)
        return list(line, *system, devices, options.asJson);
    if (devices.empty())
        return complain(line, {"no-device", "no controls are connected: plug them in, and see 'flowhand devices'", {}});
    if (options.asRule) {
        std::vector<Id> found;
        for (const DeviceInfo& device : devices)
            if (std::find(found.begin(), found.end(), Id(device.vendor, device.product)) == found.end())
                found.emplace_back(device.vendor, device.product);
        line.out << udevRule(found);
        return kExitDone;
    }
    LookOptions look;
    if (options.seconds > 0.0)
        look.length = fromSeconds(options.seconds);
    look.asJson = options.asJson;
    if (options.record.empty())
        return watchDevices(line, *system, devices, look);
    if (devices.size() > 1)
        return complain(line,
                        {"several-devices",
                         std::to_string(devices.size()) +
                             " devices answer; name the one to record by its VENDOR:PRODUCT, or unplug the others",
                         {}});
    return recordDevice(line, *system, devices.front(), options.record, look);
}

} // namespace

void addDevicesCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<DevicesOptions>();
    CLI::App* command = app.add_subcommand("devices", "List the HID devices that are connected, with their controls");
    command->add_option("ids", options->ids, "Only these; keyboards and mice are opened only when named here")
        ->type_name("VENDOR:PRODUCT");
    CLI::Option* watch = command->add_flag("--watch", options->watch, "Show values as they change, until Ctrl-C");
    CLI::Option* record =
        command->add_option("--record", options->record, "Write one device's descriptor and reports to FILE")
            ->type_name("FILE");
    CLI::Option* rule =
        command->add_flag("--rule", options->asRule, "Print the udev rule that lets you read just these devices");
    command->add_option("--for", options->seconds, "Watch or record this long")
        ->type_name("SECONDS")
        ->check(CLI::Range(0.001, 86400.0));
    command->add_flag("--json", options->asJson, "JSON lines");
    watch->excludes(record, rule);
    record->excludes(rule);
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return run(line, *options);
        };
    });
}

} // namespace flowhand
