#include "rig/rig.h"

#include <algorithm>
#include <utility>

#include "base/tomlfile.h"
#include "rig/inputbinding.h"
#include "rig/rigfile.h"

namespace flowhand {

namespace {

/// Which input of which control a device's input feeds.
struct Feed {
    std::size_t control = 0;
    std::size_t slot = 0;
};

struct ConnectedDevice {
    std::vector<InputInfo> inputs;
    std::vector<std::vector<Feed>> feeds; ///< by input
};

/// A wired signal as last told.
struct SignalState {
    std::size_t control = 0;
    std::size_t output = 0;
    bool isWired = false;
    bool isHeard = false; ///< known since its device came
    Value value;
    Value before; ///< until `changedAt`
    Time changedAt = -kForever;
};

} // namespace

struct Rig::Wiring {
    Wiring(RigFile rigFile, const SignalTable& signals, std::size_t controlCount)
        : file(std::move(rigFile)), connected(file.devices.size()), timers(file.controls.size(), kForever),
          faults(file.controls.size()), names(1), facts(controlCount), states(controlCount) {
        for (std::size_t i = 0; i < file.controls.size(); ++i) {
            const Control& control = *file.controls[i];
            names.push_back(control.name());
            for (std::size_t output = 0; output < control.signals().size(); ++output) {
                const SignalId signal = control.signals()[output];
                ControlFacts& fact = facts[indexOf(signal)] = control.facts(output);
                fact.isWired = true;
                fact.controlName = control.name();
                if (signals[signal].kind != SignalKind::Number)
                    fact.range = fact.sigma = 0.0;
                states[indexOf(signal)].isWired = true;
                states[indexOf(signal)].control = i;
                states[indexOf(signal)].output = output;
            }
        }
    }

    /// Passes on what changed of what control `at` says.
    void tell(std::size_t at, std::vector<Sample>& samples) {
        for (const Output& output : outputs) {
            const SignalId signal = file.controls[at]->signals()[output.signal];
            SignalState& state = states[indexOf(signal)];
            const bool isFound = !state.isHeard && !facts[indexOf(signal)].isMomentary;
            state.isHeard |= output.value.isKnown();
            if (state.value == output.value)
                continue;
            const Actor actor = isFound ? Actor::Machine : output.actor;
            put({output.time, signal, output.value, actor, Origin::Device, controlId(at)}, state, samples);
        }
        outputs.clear();
        look(at);
    }

    /// What control `at` says of itself after anything happened to it.
    void look(std::size_t at) {
        if (const Time timer = file.controls[at]->nextTimer(); timer != timers[at]) {
            timers[at] = timer;
            soonest = *std::min_element(timers.begin(), timers.end());
        }
        Phrase fault = file.controls[at]->fault();
        if (fault == faults[at])
            return;
        faults[at] = std::move(fault);
        haveFaultsChanged = true;
    }

    /// Several changes of one signal at one instant are one change: the last value counts.
    static void put(const Sample& sample, SignalState& state, std::vector<Sample>& samples) {
        if (sample.time != state.changedAt)
            state.before = state.value;
        state.changedAt = sample.time;
        state.value = sample.value;
        for (auto earlier = samples.rbegin(); earlier != samples.rend() && earlier->time == sample.time; ++earlier) {
            if (earlier->signal != sample.signal)
                continue;
            samples.erase(std::next(earlier).base());
            if (sample.value == state.before)
                return;
            break;
        }
        samples.push_back(sample);
    }

    [[nodiscard]] static ControlId controlId(std::size_t at) { return ControlId{static_cast<std::uint16_t>(at + 1)}; }

    [[nodiscard]] bool usesDevice(std::size_t at, DeviceIndex device) const {
        const std::vector<InputRef>& inputs = file.controls[at]->inputs();
        return std::any_of(inputs.begin(), inputs.end(), [&](const InputRef& ref) {
            return ref.device == device;
        });
    }

    [[nodiscard]] bool isConnected(std::size_t at) const {
        const std::vector<InputRef>& inputs = file.controls[at]->inputs();
        return std::all_of(inputs.begin(), inputs.end(), [&](const InputRef& ref) {
            return connected[ref.device].has_value();
        });
    }

    void forget(DeviceIndex device) {
        for (std::size_t i = 0; i < file.controls.size(); ++i) {
            if (!usesDevice(i, device))
                continue;
            file.controls[i]->forget();
            look(i);
            for (const SignalId signal : file.controls[i]->signals())
                states[indexOf(signal)].isHeard = false;
        }
    }

    RigFile file;
    std::vector<std::optional<ConnectedDevice>> connected; ///< by DeviceIndex
    std::vector<Time> timers;                              ///< by control
    Time soonest = kForever;                               ///< of the timers
    std::vector<Phrase> faults;                            ///< by control; empty: none
    bool haveFaultsChanged = false;
    std::vector<std::string> names;
    std::vector<ControlFacts> facts;
    std::vector<SignalState> states;
    Outputs outputs; ///< empty between calls
};

Rig::Rig(std::unique_ptr<Wiring> wiring) : m_wiring(std::move(wiring)) {}
Rig::~Rig() = default;
Rig::Rig(Rig&&) noexcept = default;
Rig& Rig::operator=(Rig&&) noexcept = default;

std::optional<Rig> Rig::load(const std::string& file, const SignalTable& signals, std::size_t controlCount,
                             Problems& problems) {
    const Result<TomlFile> toml = TomlFile::load(file);
    if (!toml) {
        problems.add(Severity::Error, toml.error());
        return std::nullopt;
    }
    return parse(toml->source(), file, signals, controlCount, problems);
}

std::optional<Rig> Rig::parse(std::string source, const std::string& name, const SignalTable& signals,
                              std::size_t controlCount, Problems& problems) {
    std::optional<RigFile> file = parseRigFile(std::move(source), name, signals, controlCount, problems);
    if (!file)
        return std::nullopt;
    return Rig(std::make_unique<Wiring>(std::move(*file), signals, controlCount));
}

const std::string& Rig::source() const {
    return m_wiring->file.source;
}

const std::string& Rig::title() const {
    return m_wiring->file.title;
}

const std::vector<DeviceWish>& Rig::devices() const {
    return m_wiring->file.devices;
}

const std::vector<std::string>& Rig::controlNames() const {
    return m_wiring->names;
}

const std::vector<ControlFacts>& Rig::facts() const {
    return m_wiring->facts;
}

const std::vector<Phrase>& Rig::remarks() const {
    return m_wiring->file.remarks;
}

Status Rig::connect(DeviceIndex device, const std::vector<InputInfo>& inputs) {
    Wiring& wiring = *m_wiring;
    ConnectedDevice bound;
    bound.inputs = inputs;
    bound.feeds.resize(inputs.size());
    for (std::size_t i = 0; i < wiring.file.controls.size(); ++i) {
        const std::vector<InputRef>& refs = wiring.file.controls[i]->inputs();
        for (std::size_t slot = 0; slot < refs.size(); ++slot) {
            if (refs[slot].device != device)
                continue;
            const Result<std::size_t> input = bindInput(refs[slot], wiring.file.devices[device].name, inputs);
            if (!input)
                return tl::unexpected<Error>(input.error());
            bound.feeds[*input].push_back({i, slot});
        }
    }
    wiring.forget(device);
    wiring.connected[device] = std::move(bound);
    return {};
}

std::vector<bool> Rig::wiredInputs(DeviceIndex device) const {
    std::vector<bool> wired;
    if (device < m_wiring->connected.size() && m_wiring->connected[device])
        for (const std::vector<Feed>& feeds : m_wiring->connected[device]->feeds)
            wired.push_back(!feeds.empty());
    return wired;
}

std::vector<bool> Rig::inputsOf(DeviceIndex device, const std::vector<SignalId>& signals) const {
    std::vector<bool> needed = wiredInputs(device);
    for (std::size_t input = 0; input < needed.size(); ++input) {
        const std::vector<Feed>& feeds = m_wiring->connected[device]->feeds[input];
        needed[input] = std::any_of(feeds.begin(), feeds.end(), [&](const Feed& feed) {
            const std::vector<SignalId>& says = m_wiring->file.controls[feed.control]->signals();
            return std::find_first_of(says.begin(), says.end(), signals.begin(), signals.end()) != says.end();
        });
    }
    return needed;
}

void Rig::take(const Reading& reading, std::vector<Sample>& samples) {
    Wiring& wiring = *m_wiring;
    advance(reading.time, samples);
    if (reading.device >= wiring.connected.size() || !wiring.connected[reading.device])
        return;
    const ConnectedDevice& device = *wiring.connected[reading.device];
    if (reading.input >= device.inputs.size())
        return;
    for (const Feed& feed : device.feeds[reading.input]) {
        Control& control = *wiring.file.controls[feed.control];
        const std::optional<std::int64_t> meaning =
            meaningOf(reading, control.inputs()[feed.slot], device.inputs[reading.input]);
        if (!meaning)
            continue;
        control.take(feed.slot, *meaning, reading.time, wiring.outputs);
        wiring.tell(feed.control, samples);
    }
}

void Rig::advance(Time time, std::vector<Sample>& samples) {
    Wiring& wiring = *m_wiring;
    while (wiring.soonest <= time) {
        const auto next = std::find(wiring.timers.begin(), wiring.timers.end(), wiring.soonest);
        const auto at = static_cast<std::size_t>(next - wiring.timers.begin());
        wiring.file.controls[at]->advance(*next, wiring.outputs);
        wiring.tell(at, samples);
    }
}

Time Rig::nextTimer() const {
    return m_wiring->soonest;
}

void Rig::lose(DeviceIndex device, Time time, std::vector<Sample>& samples) {
    Wiring& wiring = *m_wiring;
    advance(time, samples);
    wiring.forget(device);
    for (std::size_t i = 0; i < wiring.file.controls.size(); ++i) {
        if (!wiring.usesDevice(i, device))
            continue;
        for (std::size_t output = 0; output < wiring.file.controls[i]->signals().size(); ++output)
            wiring.outputs.push_back({output, Value::unknown(), time, Actor::Machine});
        wiring.tell(i, samples);
    }
    if (device < wiring.connected.size())
        wiring.connected[device].reset();
}

std::vector<Reading> Rig::readingsFor(SignalId signal, Value value) const {
    const Wiring& wiring = *m_wiring;
    std::vector<Reading> readings;
    if (indexOf(signal) >= wiring.states.size() || !value.isKnown())
        return readings;
    const SignalState& state = wiring.states[indexOf(signal)];
    if (!state.isWired || !wiring.isConnected(state.control))
        return readings;
    const Control& control = *wiring.file.controls[state.control];
    std::vector<InputWish> wishes;
    control.wish(state.output, value, wishes);
    for (const InputWish& wish : wishes) {
        const InputRef& ref = control.inputs()[wish.slot];
        const ConnectedDevice& device = *wiring.connected[ref.device];
        const std::optional<std::size_t> input = findInput(ref, device.inputs);
        Reading reading = readingOf(wish.meaning, ref, device.inputs[*input]);
        reading.input = static_cast<std::uint16_t>(*input);
        reading.time = wish.after;
        // Several contacts may be directions of one hat: the one that is wanted closed counts.
        const auto same = std::find_if(readings.begin(), readings.end(), [&](const Reading& other) {
            return other.device == reading.device && other.input == reading.input && other.time == reading.time;
        });
        if (same == readings.end())
            readings.push_back(reading);
        else if (!reading.isNull)
            *same = reading;
    }
    return readings;
}

std::vector<SignalId> Rig::asked() const {
    std::vector<SignalId> all;
    for (const std::unique_ptr<Control>& control : m_wiring->file.controls)
        if (control->asksForState())
            all.insert(all.end(), control->signals().begin(), control->signals().end());
    return all;
}

void Rig::declare(SignalId signal, Value value, Time time, std::vector<Sample>& samples) {
    Wiring& wiring = *m_wiring;
    advance(time, samples);
    if (indexOf(signal) >= wiring.states.size() || !wiring.states[indexOf(signal)].isWired)
        return;
    const std::size_t at = wiring.states[indexOf(signal)].control;
    wiring.file.controls[at]->declare(value, time, wiring.outputs);
    wiring.tell(at, samples);
}

std::vector<SignalId> Rig::unheard() const {
    std::vector<SignalId> all;
    for (std::size_t i = 0; i < m_wiring->states.size(); ++i) {
        const SignalState& state = m_wiring->states[i];
        if (state.isWired && !state.value.isKnown() && m_wiring->isConnected(state.control))
            all.push_back(SignalId{static_cast<std::uint32_t>(i)});
    }
    return all;
}

std::vector<Phrase> Rig::faults() const {
    std::vector<Phrase> all;
    for (std::size_t i = 0; i < m_wiring->faults.size(); ++i)
        if (!m_wiring->faults[i].isEmpty())
            all.push_back(phrase("{1}: {2}").with(m_wiring->file.controls[i]->name(), m_wiring->faults[i]));
    return all;
}

bool Rig::takeFaultChange() {
    return std::exchange(m_wiring->haveFaultsChanged, false);
}

} // namespace flowhand
