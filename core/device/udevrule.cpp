#include "device/udevrule.h"

#include <cstdio>

#include "device/wishes.h"

namespace flowhand {

std::string howToAllow(std::uint16_t vendor, std::uint16_t product) {
    return "run 'flowhand devices " + idText(vendor, product) +
           " --rule | sudo tee -a /etc/udev/rules.d/70-flowhand.rules', then 'sudo udevadm control --reload', and plug "
           "the device in again";
}

std::string udevRule(const std::vector<std::pair<std::uint16_t, std::uint16_t>>& devices) {
    std::string rule = "# Lets the person at this computer's screen read these devices, and no others.\n"
                       "# Belongs into /etc/udev/rules.d/70-flowhand.rules; then: sudo udevadm control --reload\n";
    for (const auto& [vendor, product] : devices) {
        // KERNELS names the HID device (bus:vendor:product.number), so that it holds for Bluetooth as well as for USB
        char line[128];
        std::snprintf(line, sizeof line,
                      "SUBSYSTEM==\"hidraw\", KERNELS==\"*:%04X:%04X.*\", TAG+=\"uaccess\", MODE=\"0660\"\n", vendor,
                      product);
        rule += line;
    }
    return rule;
}

} // namespace flowhand
