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

/// Turns readings of devices into samples of cockpit signals: wiring, calibration, filters, gates, selectors.
/// Deterministic: the same readings give the same samples. Not thread-safe; the session thread owns it.
///
/// The first value of a signal after its device came is where the control was found, moved by the machine; what
/// follows is the hand's, but for what a spring or a timer does.
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
    /// instead. After an unplug the same device may be bound anew; what it said before is forgotten.
    [[nodiscard]] Status connect(DeviceIndex device, const std::vector<InputInfo>& inputs);

    /// Of a connected device: which of its inputs are wired.
    [[nodiscard]] std::vector<bool> wiredInputs(DeviceIndex device) const;

    /// Of a connected device: which of its inputs these signals depend on.
    [[nodiscard]] std::vector<bool> inputsOf(DeviceIndex device, const std::vector<SignalId>& signals) const;

    /// Appends the samples that one reading makes (none for most). Signals a device has not reported stay unknown.
    /// Serves the timers before.
    void take(const Reading& reading, std::vector<Sample>& samples);
    /// Serves what happens by time alone (debounce, transit time, pulses) up to `time`.
    void advance(Time time, std::vector<Sample>& samples);
    [[nodiscard]] Time nextTimer() const;

    /// The device is gone: the signals that need it are unknown from `time` on, until it reports again.
    void lose(DeviceIndex device, Time time, std::vector<Sample>& samples);

    /// The reverse of take(), for tests and demonstrations with virtual devices: raw values that put `signal` at
    /// `value`. The times count from the first. Empty when it is not wired, its device not connected, or no input can
    /// say it.
    [[nodiscard]] std::vector<Reading> readingsFor(SignalId signal, Value value) const;

    /// Signals whose control keeps a state that cannot be seen, with `start = "ask"`: ask the person, then declare().
    [[nodiscard]] std::vector<SignalId> asked() const;
    /// A person says how such a control stands: at the start, or because cockpit and program have come apart.
    void declare(SignalId signal, Value value, Time time, std::vector<Sample>& samples);

    /// Wired signals of connected devices about which nothing is known: most devices report nothing until moved.
    [[nodiscard]] std::vector<SignalId> unheard() const;

    /// Things a person should know at the start: a missing interlock, a control that asks for a sweep or
    /// for its state.
    [[nodiscard]] const std::vector<Phrase>& remarks() const;
    /// What is wrong with a control now: "Automatic brake: closed at the same time: button 1, button 2; ...".
    [[nodiscard]] std::vector<Phrase> faults() const;
    /// Whether faults() may say something else than at the last call.
    [[nodiscard]] bool takeFaultChange();

private:
    struct Wiring;
    explicit Rig(std::unique_ptr<Wiring> wiring);
    std::unique_ptr<Wiring> m_wiring;
};

} // namespace flowhand
