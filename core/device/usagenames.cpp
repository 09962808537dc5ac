#include "device/usagenames.h"

#include <algorithm>
#include <cstdio>
#include <iterator>

namespace flowhand {

namespace {

struct Name {
    std::uint16_t id;
    const char* name;
};

// HID Usage Tables, page 0x01; values from memory. Ascending, as are all tables here.
constexpr Name kGenericDesktopNames[] = {
    {0x01, "Pointer"},
    {0x02, "Mouse"},
    {0x04, "Joystick"},
    {0x05, "Game Pad"},
    {0x06, "Keyboard"},
    {0x07, "Keypad"},
    {0x08, "Multi-axis Controller"},
    {0x30, "X"},
    {0x31, "Y"},
    {0x32, "Z"},
    {0x33, "Rx"},
    {0x34, "Ry"},
    {0x35, "Rz"},
    {0x36, "Slider"},
    {0x37, "Dial"},
    {0x38, "Wheel"},
    {0x39, "Hat switch"},
    {0x3A, "Counted Buffer"},
    {0x3B, "Byte Count"},
    {0x3C, "Motion Wakeup"},
    {0x3D, "Start"},
    {0x3E, "Select"},
    {0x40, "Vx"},
    {0x41, "Vy"},
    {0x42, "Vz"},
    {0x43, "Vbrx"},
    {0x44, "Vbry"},
    {0x45, "Vbrz"},
    {0x46, "Vno"},
    {0x47, "Feature Notification"},
    {0x48, "Resolution Multiplier"},
    {0x80, "System Control"},
    {0x81, "System Power Down"},
    {0x82, "System Sleep"},
    {0x83, "System Wake Up"},
    {0x90, "D-pad Up"},
    {0x91, "D-pad Down"},
    {0x92, "D-pad Right"},
    {0x93, "D-pad Left"},
};

// HID Usage Tables, page 0x02; devices 01 to 0C from memory.
constexpr Name kSimulationNames[] = {
    {0x01, "Flight Simulation Device"},
    {0x02, "Automobile Simulation Device"},
    {0x03, "Tank Simulation Device"},
    {0x04, "Spaceship Simulation Device"},
    {0x05, "Submarine Simulation Device"},
    {0x06, "Sailing Simulation Device"},
    {0x07, "Motorcycle Simulation Device"},
    {0x08, "Sports Simulation Device"},
    {0x09, "Airplane Simulation Device"},
    {0x0A, "Helicopter Simulation Device"},
    {0x0B, "Magic Carpet Simulation Device"},
    {0x0C, "Bicycle Simulation Device"},
    {0x20, "Flight Control Stick"},
    {0x21, "Flight Stick"},
    {0x22, "Cyclic Control"},
    {0x23, "Cyclic Trim"},
    {0x24, "Flight Yoke"},
    {0x25, "Track Control"},
    {0x26, "Driving Control"},
    {0xB0, "Aileron"},
    {0xB1, "Aileron Trim"},
    {0xB2, "Anti-Torque Control"},
    {0xB3, "Autopilot Enable"},
    {0xB4, "Chaff Release"},
    {0xB5, "Collective Control"},
    {0xB6, "Dive Brake"},
    {0xB7, "Electronic Countermeasures"},
    {0xB8, "Elevator"},
    {0xB9, "Elevator Trim"},
    {0xBA, "Rudder"},
    {0xBB, "Throttle"},
    {0xBC, "Flight Communications"},
    {0xBD, "Flare Release"},
    {0xBE, "Landing Gear"},
    {0xBF, "Toe Brake"},
    {0xC0, "Trigger"},
    {0xC1, "Weapons Arm"},
    {0xC2, "Weapons Select"},
    {0xC3, "Wing Flaps"},
    {0xC4, "Accelerator"},
    {0xC5, "Brake"},
    {0xC6, "Clutch"},
    {0xC7, "Shifter"},
    {0xC8, "Steering"},
    {0xC9, "Turret Direction"},
    {0xCA, "Barrel Elevation"},
    {0xCB, "Dive Plane"},
    {0xCC, "Ballast"},
    {0xCD, "Bicycle Crank"},
    {0xCE, "Handle Bars"},
    {0xCF, "Front Brake"},
    {0xD0, "Rear Brake"},
};

constexpr Name kPageNames[] = {
    {0x01, "Generic Desktop"}, {0x02, "Simulation Controls"},
    {0x03, "VR Controls"},     {0x04, "Sport Controls"},
    {0x05, "Game Controls"},   {0x06, "Generic Device"},
    {0x07, "Keyboard"},        {0x08, "LED"},
    {0x09, "Button"},          {0x0A, "Ordinal"},
    {0x0B, "Telephony"},       {0x0C, "Consumer"},
    {0x0D, "Digitizer"},       {0x0F, "Physical Interface"},
    {0x20, "Sensor"},          {0xF1D0, "FIDO"},
};

template <std::size_t size>
const char* find(const Name (&names)[size], std::uint16_t id) {
    const auto* found =
        std::lower_bound(std::begin(names), std::end(names), id, [](const Name& name, std::uint16_t wanted) {
            return name.id < wanted;
        });
    return found != std::end(names) && found->id == id ? found->name : nullptr;
}

} // namespace

std::string pageName(std::uint16_t page) {
    if (const char* name = find(kPageNames, page))
        return name;
    char text[16];
    std::snprintf(text, sizeof text, "page %04X", page);
    return text;
}

std::string usageName(Usage usage) {
    const std::uint16_t page = pageOf(usage);
    const char* name = nullptr;
    if (page == usage::kGenericDesktop)
        name = find(kGenericDesktopNames, idOf(usage));
    else if (page == usage::kSimulation)
        name = find(kSimulationNames, idOf(usage));
    if (name)
        return name;
    if (page == usage::kButton)
        return "button " + std::to_string(idOf(usage));
    char text[16];
    std::snprintf(text, sizeof text, "%04X:%04X", page, idOf(usage));
    return text;
}

} // namespace flowhand
