#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "base/sample.h"
#include "device/device.h"
#include "rig/controlfacts.h"

namespace flowhand {

/// How a rig file names a device: id and, to tell equal units apart, serial or port.
struct DeviceWish {
    std::string name; ///< in the rig file: "left unit"
    std::uint16_t vendor = 0;
    std::uint16_t product = 0;
    std::string serial;
    std::string port;
    SourcePlace place;
};

struct RigFile; // the parsed file: rig/rigfile.h

/// Turns readings of devices into samples of cockpit signals: wiring, calibration, filters, gates, selectors.
/// Deterministic: the same readings give the same samples. Not thread-safe; the session thread owns it.
class Rig {
public:
    ~Rig();
    Rig(Rig&&) noexcept;
    Rig& operator=(Rig&&) noexcept;

    /// `signals` are the cockpit's, its first `controlCount` the controls; only these can be wired. Refuses a rig that
    /// wires unknown signals, or two inputs to one signal without saying how to combine them. Nothing when `problems`
    /// got an error.
    [[nodiscard]] static std::optional<Rig> load(const std::string& file, const SignalTable& signals,
                                                 std::size_t controlCount, Problems& problems);
    /// The same from memory; `name` stands in messages as the file.
    [[nodiscard]] static std::optional<Rig> parse(std::string source, const std::string& name,
                                                  const SignalTable& signals, std::size_t controlCount,
                                                  Problems& problems);
    /// The rig file's whole text, kept with a run.
    [[nodiscard]] const std::string& source() const;

    [[nodiscard]] const std::string& title() const;
    [[nodiscard]] const std::vector<DeviceWish>& devices() const;
    /// By ControlId, from 1; [0] is empty.
    [[nodiscard]] const std::vector<std::string>& controlNames() const;
    /// By SignalId of the aircraft's controls.
    [[nodiscard]] const std::vector<ControlFacts>& facts() const;

    /// Binds a connected device's inputs to the wiring. Errors name the rig file's place and what the device offers
    /// instead. After an unplug the same device may be bound anew.
    [[nodiscard]] Status connect(DeviceIndex device, const std::vector<InputInfo>& inputs);

    /// Appends the samples that one reading makes (none for most). Signals a device has not reported stay unknown.
    void take(const Reading& reading, std::vector<Sample>& samples);
    /// Serves what happens by time alone (debounce, transit time, pulses) up to `time`.
    void advance(Time time, std::vector<Sample>& samples);
    [[nodiscard]] Time nextTimer() const;

    /// The reverse of take(), for tests and demonstrations with virtual devices: raw values that put `signal` at
    /// `value`. Empty when it is not wired.
    [[nodiscard]] std::vector<Reading> readingsFor(SignalId signal, Value value) const;

    /// Things a person should know at the start: a control that reports nothing until moved, a missing interlock.
    [[nodiscard]] const std::vector<std::string>& remarks() const;

private:
    struct Wiring;
    explicit Rig(std::unique_ptr<Wiring> wiring);
    std::unique_ptr<Wiring> m_wiring;
};

} // namespace flowhand
