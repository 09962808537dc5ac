#include "device/sysfs.h"

#include <fstream>
#include <iterator>

namespace flowhand {

namespace {

std::string deviceFile(const std::string& node, const std::string& file) {
    return "/sys/class/hidraw/" + node.substr(node.find_last_of('/') + 1) + "/device/" + file;
}

} // namespace

HidrawFacts hidrawFacts(const std::string& node) {
    HidrawFacts facts;
    std::ifstream file(deviceFile(node, "uevent"));
    for (std::string line; std::getline(file, line);) {
        const std::size_t equals = line.find('=');
        const std::string key = line.substr(0, equals);
        const std::string value = equals == std::string::npos ? "" : line.substr(equals + 1);
        if (key == "HID_NAME")
            facts.name = value;
        else if (key == "HID_UNIQ")
            facts.serial = value;
        else if (key == "HID_PHYS")
            facts.port = value;
    }
    return facts;
}

Result<std::vector<std::uint8_t>> hidrawDescriptor(const std::string& node) {
    const std::string path = deviceFile(node, "report_descriptor");
    std::ifstream file(path, std::ios::binary);
    std::vector<std::uint8_t> bytes{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    if (!file || bytes.empty())
        return failure("no-descriptor", "cannot read " + path + ": the device is gone, or sysfs is not mounted");
    return bytes;
}

} // namespace flowhand
