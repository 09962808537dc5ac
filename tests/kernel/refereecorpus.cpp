#include "refereecorpus.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <linux/input-event-codes.h>

#include "device/publisheddevices.h"

using What = Difference::What;

namespace {

/// In a joystick's application collection, by itself with no usage before the items.
std::string joystick(const std::string& items) {
    return "05 01 09 04 A1 01 " + items + " C0";
}

constexpr const char* kByte = " 15 00 26 FF 00 75 08 95 01 81 02"; // an unsigned byte, data, variable, absolute

std::vector<SampleDevice> publishedDevices() {
    return {
        {"HID 1.11 D.1 joystick", published::kJoystick, {"81 7F 00 4F", "7F 81 FF 82"}, {}},
        {"HID 1.11 E.10 mouse", published::kMouse, {"05 FF 02", "00 00 00", "02 81 7F"}, {}},
        {"HID 1.11 E.6 keyboard",
         published::kKeyboard,
         {"02 00 04 05 00 00 00 00", "02 00 01 01 01 01 01 01", "00 00 31 32 00 00 00 00", "00 00 31 00 00 00 00 00"},
         {deviation::kNoKey, deviation::kRollOver, deviation::kSharedKey}},
    };
}

/// Sections are those of USB HID 1.11, unless HUT (HID Usage Tables) or practice is said.
std::vector<SampleDevice> values() {
    return {
        {"5.8 signed byte", joystick("09 30 15 81 25 7F 75 08 95 01 81 02"), {"FF", "80"}, {}},
        {"5.8 unsigned byte", joystick(std::string("09 30") + kByte), {"FF"}, {}},
        {"5.8 signed 10 bits",
         joystick("09 30 09 31 16 00 FE 26 FF 01 75 0A 95 02 81 02"),
         {"FF 03 00", "00 02 08"},
         {deviation::kFuzz}},
        {"practice: 25 FF is 255", joystick("09 30 15 00 25 FF 75 08 95 01 81 02"), {"FE"}, {}},
        {"practice: 26 FF FF is 65535",
         joystick("09 30 15 00 26 FF FF 75 10 95 01 81 02"),
         {"FF FF"},
         {deviation::kFuzz}},
        {"practice: maximum before minimum", joystick("09 30 25 FF 15 00 75 08 95 01 81 02"), {"FE"}, {}},
        {"practice: maximum before a negative minimum",
         joystick("09 30 25 FF 15 81 75 08 95 01 81 02"),
         {"05"},
         {deviation::kFuzz, deviation::kMaximumAtOnce},
         {{deviation::kMaximumAtOnce, What::Range, 0x010030, -127, 255}}},
        {"6.2.2.2 four-byte maximum",
         joystick("09 30 15 00 27 FF FF 00 00 75 10 95 01 81 02"),
         {"FF FF"},
         {deviation::kFuzz}},
        {"6.2.2.2 32 bits unsigned",
         joystick("09 30 15 00 27 FF FF FF FF 75 20 95 01 81 02"),
         {"FF FF FF FF", "00 00 00 80", "FF FF FF 7F"},
         {deviation::kThirtyTwoBits, deviation::kFuzz},
         {{deviation::kThirtyTwoBits, What::Range, 0x010030, 0, -1}}},
        {"6.2.2.2 32 bits signed",
         joystick("09 30 17 00 00 00 80 27 FF FF FF 7F 75 20 95 01 81 02"),
         {"00 00 00 80"},
         {deviation::kFuzz}},
        {"6.2.2.2 items of no bytes", joystick("09 30 14 26 FF 00 75 08 95 01 81 02"), {"FF"}, {}},
        {"8.4 fields back to back",
         joystick("09 30 09 31 15 00 26 FF 03 75 0A 95 02 81 02"),
         {"01 08 00"},
         {deviation::kFuzz}},
        {"8.4 every size of field",
         joystick("15 00 25 03 75 02 95 01 09 30 81 02 25 1F 75 05 09 31 81 02 26 FF 1F 75 0D 09 32 81 02 "
                  "27 FF FF 7F 00 75 17 09 33 81 02 17 00 00 00 C0 27 FF FF FF 3F 75 1F 09 34 81 02"),
         {},
         {deviation::kFuzz}},
        {"practice: 17 bits from bit 17 on",
         joystick("09 30 09 31 15 00 27 FF FF 01 00 75 11 95 02 81 02"),
         {"00 00 02 00 00"},
         {deviation::kFuzz}},
        {"practice: 32 bits from an odd bit on",
         joystick("75 03 95 01 81 03 09 30 17 00 00 00 80 27 FF FF FF 7F 75 20 81 02 75 05 81 03"),
         {"FF FF FF FF FF"},
         {deviation::kFuzz}},
        {"practice: wider than 32 bits",
         joystick("09 30 15 00 26 FF 7F 75 40 95 01 81 02 09 31 75 10 81 02"),
         {"07 00 00 00 FF FF FF FF 2A 00"},
         {deviation::kWideFields, deviation::kFuzz},
         {{deviation::kWideFields, What::Extra, ABS_X}}},
        {"6.2.2.7 physical range and unit",
         joystick("09 30 15 00 25 64 35 9C 45 64 65 14 55 0F 75 08 95 01 81 02"),
         {"32"},
         {}},
        {"6.2.2.7 no range", joystick("09 30 75 08 95 01 81 02"), {"80"}, {}},
    };
}

std::vector<SampleDevice> usages() {
    return {
        {"5.5 four-byte usage", joystick(std::string("05 09 0B 30 00 01 00") + kByte), {}, {}},
        {"6.2.2.8 four-byte usage range",
         joystick("05 01 1B 01 00 09 00 2B 08 00 09 00 15 00 25 01 75 01 95 08 81 02"),
         {"04"},
         {}},
        {"practice: page at the main item",
         joystick("05 01 09 30 05 02 09 BB 15 00 25 7F 75 08 95 02 81 02"),
         {"01 02"},
         {}},
        {"practice: a range takes the page at the main item",
         joystick("05 01 19 01 29 04 05 09 15 00 25 01 75 01 95 04 81 02 95 04 81 03"),
         {"02"},
         {}},
        {"5.4 locals end at every main item",
         joystick(std::string("09 31 A1 00") + kByte + " 09 32 C0" + kByte + " 09 33 75 08 91 02" + kByte + " 09 30" +
                  kByte),
         {},
         {}},
        {"6.2.2.8 the last usage repeats",
         joystick("09 30 15 00 25 7F 75 08 95 03 81 02"),
         {"01 02 03"},
         {deviation::kSharedAxis}},
        {"6.2.2.8 unused usages",
         joystick("09 30 09 31 09 32 15 00 25 7F 75 08 95 01 81 02"),
         {},
         {deviation::kUnusedUsages},
         {{deviation::kUnusedUsages, What::Extra, ABS_Y}, {deviation::kUnusedUsages, What::Extra, ABS_Z}}},
        {"12 sliders with one usage",
         joystick("09 36 09 36 09 36 15 00 25 7F 75 08 95 03 81 02"),
         {"01 02 03"},
         {deviation::kAgainDropped}},
        {"dial, slider, wheel and what shares their codes",
         joystick("09 36 09 37 09 38 05 02 09 BB 09 BA 09 C8 09 C4 09 C5 15 00 25 7F 75 08 95 08 81 02"),
         {},
         {deviation::kAgainDropped}},
        {"HUT simulation controls",
         joystick("05 02 09 B0 09 B8 09 BA 09 BB 09 BF 09 C3 09 C4 09 C5 09 C6 09 C8 15 00 25 7F 75 08 95 0A 81 02"),
         {},
         {deviation::kSimulation}},
        {"practice: endless usage range",
         joystick(std::string("06 00 FF 1B 00 00 00 FF 2B FF FF FF FF 15 00 26 FF 00 75 08 95 01 81 02 05 01 09 30") +
                  kByte),
         {},
         {deviation::kVendorPage}},
        {"6.2.2.8 usage minimum above maximum",
         joystick(std::string("05 09 19 08 29 01 15 00 25 01 75 01 95 08 81 02 05 01 09 30") + kByte),
         {},
         {deviation::kBackwardRange},
         {{deviation::kBackwardRange, What::ExtraKeys, 0x090008}}},
        {"6.2.2.8 delimiters",
         joystick("A9 01 09 30 09 31 A9 00 A9 01 09 32 09 35 A9 00 15 00 25 7F 75 08 95 02 81 02"),
         {"05 06"},
         {deviation::kDelimiters},
         {{deviation::kDelimiters, What::Hidden, 0x010032}, {deviation::kDelimiters, What::Extra, ABS_Y}}},
        {"100 buttons",
         joystick("05 09 19 01 29 64 15 00 25 01 75 01 95 64 81 02 95 04 81 03"),
         {},
         {deviation::kManyButtons}},
        {"a button with a travel",
         joystick("05 09 09 01 15 00 26 FF 00 75 08 95 01 81 02"),
         {"01", "FF"},
         {deviation::kButtonTravel}},
    };
}

std::vector<SampleDevice> inputItems() {
    return {
        {"6.2.2.5 array from 1", joystick("05 09 15 01 25 08 19 01 29 08 75 04 95 02 81 00"), {"03", "52", "90"}, {}},
        {"6.2.2.5 array from 0",
         joystick("05 09 15 00 25 03 19 01 29 04 75 08 95 01 81 00"),
         {"00", "02", "00", "04"},
         {deviation::kFirstZero}},
        {"6.2.2.5 array: more range than usages",
         joystick("05 09 15 01 25 08 19 01 29 04 75 08 95 01 81 00"),
         {"05", "04"},
         {}},
        {"6.2.2.5 array: more usages than range",
         joystick("05 09 15 01 25 04 19 01 29 08 75 08 95 01 81 00"),
         {"05", "04"},
         {deviation::kUnusedUsages}},
        {"6.2.2.5 signed array", joystick("05 09 15 FF 25 01 19 01 29 03 75 08 95 01 81 00"), {"FF"}, {}},
        {"5.10 null hat", joystick("09 39 15 00 25 07 75 04 95 01 81 42 81 03"), {"08", "0F", "03"}, {}},
        {"5.10 hat from 1", joystick("09 39 15 01 25 08 75 04 95 01 81 42 81 03"), {"00", "01", "08"}, {}},
        {"practice: hat without the null flag", joystick("09 39 15 00 25 07 75 08 95 01 81 02"), {"08", "FF"}, {}},
        {"HUT hat of four ways",
         joystick("09 39 15 00 25 03 35 00 46 0E 01 65 14 75 08 95 01 81 42"),
         {"00", "01", "02", "03", "04"},
         {}},
        {"HUT hat of degrees",
         joystick("09 39 15 00 26 67 01 35 00 46 67 01 65 14 75 10 95 01 81 42"),
         {"2D 00", "5A 00", "B4 00", "3B 01"},
         {deviation::kHatInEightBits}},
        {"four hats",
         joystick("09 39 09 39 09 39 09 39 15 00 25 07 75 04 95 04 81 42"),
         {"12 34"},
         {deviation::kOneHat}},
        {"5.10 null axis", joystick("09 30 15 00 25 64 75 08 95 01 81 42"), {"32", "65"}, {}},
        {"practice: axis out of its range", joystick("09 30 09 31 15 0A 25 64 75 08 95 02 81 02"), {"65 09"}, {}},
        {"6.2.2.9 constants",
         joystick("75 04 95 01 81 03 09 31 81 03 75 08 09 32 81 01 81 02 09 30 25 7F 81 02"),
         {},
         {}},
        {"6.2.2.5 relative",
         "05 01 09 02 A1 01 09 30 09 31 09 38 15 81 25 7F 75 08 95 03 81 06 05 09 19 01 29 03 15 00 25 01 75 01 95 03 "
         "81 02 95 05 81 03 C0",
         {"01 FF 01 00", "81 80 FF 05"},
         {deviation::kWheelTwice}},
        {"6.2.2.5 relative dial of a joystick",
         joystick("09 37 15 81 25 7F 75 08 95 01 81 06"),
         {"01", "01", "FF"},
         {}},
        {"6.2.2.5 flags of two bytes", joystick("09 30 15 00 26 FF 00 75 08 95 01 82 02 01"), {}, {}},
        {"practice: no bits",
         joystick("09 31 15 00 25 7F 75 00 95 01 81 02 09 32 75 08 95 00 81 02 09 30 95 01 81 02"),
         {"05"},
         {deviation::kNoBits},
         {{deviation::kNoBits, What::Extra, ABS_Y}}},
    };
}

std::vector<SampleDevice> structures() {
    return {
        {"5.6 report ids",
         joystick("15 00 25 7F 75 08 95 01 85 01 09 30 81 02 85 02 09 31 81 02 85 01 09 32 81 02"),
         {"01 05 06", "02 07"},
         {}},
        {"5.6 input, output and feature apart",
         joystick("15 00 25 7F 75 08 95 01 85 07 09 40 91 02 09 41 B1 02 09 30 81 02 09 42 B1 02 09 31 81 02"),
         {"07 05 06"},
         {}},
        {"5.4 push and pop",
         joystick("15 00 25 7F 75 08 95 01 A4 05 02 15 81 75 10 09 BB 81 02 B4 09 30 81 02 09 31 A4 B4 81 02"),
         {"01 80 05 06"},
         {}},
        {"5.4 push saves the report id",
         joystick("15 00 25 7F 75 08 95 01 85 01 A4 85 02 09 30 81 02 B4 09 31 81 02"),
         {"01 05", "02 06"},
         {}},
        {"6.2.2.2 reserved types and tags",
         joystick("0D 55 0F 01 02 03 04 69 55 D0 09 30 15 00 25 7F 75 08 95 01 81 02"),
         {},
         {}},
        {"practice: zero bytes after the end", joystick("09 30 15 00 25 7F 75 08 95 01 81 02") + " 00 00", {}, {}},
        {"6.2.2.6 collections without a usage, 30 deep",
         joystick([] {
             std::string items;
             for (int i = 0; i < 29; ++i)
                 items += "A1 00 ";
             items += "09 30 15 00 25 7F 75 08 95 01 81 02";
             for (int i = 0; i < 29; ++i)
                 items += " C0";
             return items;
         }()),
         {},
         {}},
        {"6.2.2.6 two applications",
         "05 01 09 04 A1 01 85 01 09 30 15 00 25 7F 75 08 95 01 81 02 C0 "
         "09 05 A1 01 85 02 09 30 81 02 05 09 19 01 29 08 25 01 75 01 95 08 81 02 C0",
         {"01 05", "02 06 81"},
         {}},
        {"6.2.2.6 a joystick with a keyboard",
         "05 01 09 04 A1 01 85 01 09 30 15 00 25 7F 75 08 95 01 81 02 C0 "
         "09 06 A1 01 85 02 05 07 19 04 29 1D 25 01 75 01 95 1A 81 02 95 06 81 03 C0",
         {"01 05", "02 01 00 00 00"},
         {}},
    };
}

std::vector<SampleDevice> ofRigs(const std::string& folder) {
    std::vector<SampleDevice> found;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() != ".hex")
            continue;
        std::ifstream stream(entry.path());
        std::string hex(std::istreambuf_iterator<char>(stream), {});
        std::replace(hex.begin(), hex.end(), '\n', ' ');
        found.push_back({"rig " + entry.path().stem().string(), hex, {}, {deviation::kFuzz}});
    }
    std::sort(found.begin(), found.end(), [](const SampleDevice& a, const SampleDevice& b) {
        return a.name < b.name;
    });
    return found;
}

} // namespace

const std::vector<Deviation>& deviations() {
    static const std::vector<Deviation> all = {
        {deviation::kFuzz, "axes of joysticks are smoothed by fuzz = range / 256; the referee takes it off"},
        {deviation::kOneHat, "the first hat of a node is shown, others are not"},
        {deviation::kHatInEightBits, "a hat's range is kept in 8 bits: 359 becomes 103"},
        {deviation::kManyButtons, "a joystick has 80 buttons at most"},
        {deviation::kSimulation, "of the Simulation Controls only BA, BB, C4, C5 and C8 are shown"},
        {deviation::kSharedAxis, "X to Rz a second time share the first one's code; the last one that changed shows"},
        {deviation::kAgainDropped, "any other usage a second time, or another with its code, is not shown"},
        {deviation::kFirstZero, "array slots start as 0: where 0 asserts a usage, that is not seen at first"},
        {deviation::kRollOver, "a keyboard array with ErrorRollOver keeps its state"},
        {deviation::kSharedKey, "two usages of the keyboard page may have one key code"},
        {deviation::kNoKey, "usages of the keyboard page that are no keys (0 to 3) are not shown"},
        {deviation::kButtonTravel, "a button with a travel is down or up"},
        {deviation::kWheelTwice, "a relative wheel is shown in notches and in 120ths of them"},
        {deviation::kVendorPage, "the vendor page FF00 is not shown"},
        {deviation::kMaximumAtOnce, "a maximum is read by the sign of the minimum in force at that point"},
        {deviation::kThirtyTwoBits, "values are signed 32 bits wide"},
        {deviation::kWideFields, "a field of more than 32 bits is shown by its lower 32"},
        {deviation::kNoBits, "a usage of a field of no bits is shown"},
        {deviation::kUnusedUsages, "usages beyond the fields, or beyond an array's range, are shown"},
        {deviation::kBackwardRange, "a usage minimum above the maximum is a range without end"},
        {deviation::kDelimiters, "of the first delimited set every usage is taken, of others none"},
    };
    return all;
}

std::vector<SampleDevice> sampleDevices(const std::string& rigFolder) {
    std::vector<SampleDevice> all;
    for (auto&& part : {publishedDevices(), values(), usages(), inputItems(), structures(), ofRigs(rigFolder)})
        all.insert(all.end(), part.begin(), part.end());
    return all;
}
