#include "device/deviceclass.h"

#include <algorithm>

#include "device/usagenames.h"

namespace flowhand {

namespace {

bool isKeyboard(Usage application) {
    return application == usage::kKeyboard || application == usage::kKeypad;
}

/// Keys of the whole system, as keyboards have beside their letters.
bool isKeyboardExtra(Usage application) {
    return application == usage::kSystemControl || application == usage::kConsumerControl;
}

bool isControl(const InputElement& element) {
    const auto isControlPage = [](Usage usage) {
        return pageOf(usage) == usage::kGenericDesktop || pageOf(usage) == usage::kSimulation ||
               pageOf(usage) == usage::kButton;
    };
    if (!element.isArray)
        return isControlPage(element.usage);
    return std::any_of(element.usages.begin(), element.usages.end(), [&](const UsageRange& range) {
        return isControlPage(range.first);
    });
}

} // namespace

DeviceClass classOf(const Descriptor& descriptor) {
    const std::vector<Usage> applications = descriptor.applications();
    const auto has = [&](auto&& test) {
        return std::any_of(applications.begin(), applications.end(), test);
    };
    if (has([](Usage application) {
            return pageOf(application) == usage::kFido;
        }))
        return DeviceClass::SecurityKey;
    if (has(isKeyboard))
        return DeviceClass::Keyboard;
    if (has([](Usage application) {
            return application == usage::kMouse || application == usage::kPointer;
        }))
        return DeviceClass::Mouse;
    const auto& elements = descriptor.elements;
    return std::any_of(elements.begin(), elements.end(), isControl) ? DeviceClass::Controls : DeviceClass::Other;
}

const char* className(DeviceClass deviceClass) {
    static constexpr const char* kNames[] = {"controls", "keyboard", "mouse", "security key", "other"};
    return kNames[static_cast<std::size_t>(deviceClass)];
}

bool isPrivate(DeviceClass deviceClass) {
    return deviceClass == DeviceClass::Keyboard || deviceClass == DeviceClass::Mouse ||
           deviceClass == DeviceClass::SecurityKey;
}

std::string whyNoKeyboards() {
    return "types like a keyboard: what its switches send goes to every program. Set the card to its joystick mode, or "
           "use a card that has one";
}

bool isKeyboardOnly(const Descriptor& descriptor) {
    const std::vector<Usage> applications = descriptor.applications();
    return std::any_of(applications.begin(), applications.end(), isKeyboard) &&
           std::all_of(applications.begin(), applications.end(), [](Usage application) {
               return isKeyboard(application) || isKeyboardExtra(application);
           });
}

} // namespace flowhand
