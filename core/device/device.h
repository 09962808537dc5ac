#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/error.h"
#include "base/phrase.h"
#include "base/time.h"

namespace flowhand {

/// One data element of a device's input reports. Identity is report id + usage + its n-th occurrence in the device,
/// so that four hats with the same usage are four inputs.
struct InputKey {
    std::uint8_t reportId = 0;
    std::uint16_t usagePage = 0;
    std::uint16_t usage = 0;
    std::uint16_t nth = 0;

    bool operator==(const InputKey&) const = default;
};

enum class InputKind : std::uint8_t { Axis, Button, Hat, Relative };

/// What the report descriptor says of one input.
struct InputInfo {
    InputKey key;
    InputKind kind = InputKind::Axis;
    std::string name; ///< unique in the device, as written in rig files: "X", "Throttle", "button 3", "hat 1", "X 2"
    std::int64_t lowest = 0; ///< logical range of the raw value
    std::int64_t highest = 0;
    double firstAngle = 0.0; ///< of a Hat: degrees clockwise from up at `lowest` and at `highest`, even steps between
    double lastAngle = 0.0;
};

enum class DeviceClass : std::uint8_t { Controls, Keyboard, Mouse, SecurityKey, Other };

/// A device as the system lists it. `id` names the unit as well as it can be known: by serial, else by port.
struct DeviceInfo {
    std::string path; ///< of the node now; changes on replug
    std::uint16_t vendor = 0;
    std::uint16_t product = 0;
    std::string serial; ///< often empty
    std::string port;   ///< physical place on the bus, stable across replugs into the same socket
    std::string name;
    DeviceClass deviceClass = DeviceClass::Controls;
    bool readable = false;
    std::string whyNot; ///< when not readable: the reason and the way out, in words
};

/// How a rig file names a device: id and, to tell equal units apart, serial or port.
struct DeviceWish {
    std::string name; ///< in the rig file: "left unit"
    std::uint16_t vendor = 0;
    std::uint16_t product = 0;
    std::string serial; ///< empty: any
    std::string port;   ///< empty: any; else DeviceInfo::port, letter by letter
    SourcePlace place;
};

/// The number of a device in this run, by the order in which the rig names them.
using DeviceIndex = std::uint16_t;

/// One input's value, changed. A null state (a released hat) has `isNull`; then `raw` is the value sent.
struct Reading {
    Time time{}; ///< stamped as the report was read, on the run's clock
    DeviceIndex device = 0;
    std::uint16_t input = 0; ///< index into the device's inputs
    std::int64_t raw =
        0; ///< sign-extended logical value; a Relative input's running total; a Hat's step in its logical range
    bool isNull = false;
};

/// A device came, went or failed, in the same queue as readings so that the order is kept.
/// A Remark is something the pilot should know of a device that goes on working; each is made once.
enum class DeviceChange : std::uint8_t { Connected, Lost, Remark };

struct DeviceNotice {
    Time time{};
    DeviceIndex device = 0;
    DeviceChange change = DeviceChange::Connected;
    Phrase message; ///< of Lost and Remark: what happened and what to do, for the pilot
};

} // namespace flowhand
