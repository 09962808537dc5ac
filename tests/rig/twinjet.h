#pragma once

#include <cstdlib>
#include <string>
#include <vector>

#include "base/signal.h"
#include "base/tomlfile.h"
#include "rig/rig.h"

namespace flowhand {

/// The controls of the demonstration aircraft, and behind them one signal that is no control.
struct TwinJet {
    SignalTable signals;
    std::size_t controlCount = 0;

    TwinJet() {
        const Result<TomlFile> file = TomlFile::load(PROCEDURES "/twin_jet/aircraft.toml");
        if (!file)
            std::abort();
        for (const TomlNode& control : file->root().find("control")->items) {
            Signal signal;
            signal.name = control.find("name")->text;
            signal.label = control.find("label")->text;
            if (const TomlNode* positions = control.find("positions")) {
                signal.kind = SignalKind::Position;
                for (const TomlNode& position : positions->items)
                    signal.positions.push_back(position.text);
            } else if (const TomlNode* range = control.find("range")) {
                signal.unit = *findUnit(control.find("unit")->text);
                signal.lowest = range->items[0].real;
                signal.highest = range->items[1].real;
            } else {
                signal.kind = SignalKind::OnOff;
            }
            if (!signals.add(signal))
                std::abort();
        }
        controlCount = signals.size();
        Signal motion;
        motion.name = "airspeed";
        if (!signals.add(motion))
            std::abort();
    }

    [[nodiscard]] SignalId id(const std::string& name) const { return *signals.find(name); }
    [[nodiscard]] Value value(const std::string& name, const std::string& text) const {
        return *parseValue(signals[id(name)], text);
    }
};

[[nodiscard]] inline const TwinJet& twinJet() {
    static const TwinJet jet;
    return jet;
}

/// Inputs as a device with these axes (0..4095), buttons and hats would list them.
[[nodiscard]] inline std::vector<InputInfo> inputsOf(const std::vector<std::string>& axes, int buttons, int hats = 0) {
    std::vector<InputInfo> inputs;
    const auto add = [&](InputKind kind, const std::string& name, std::int64_t highest) {
        InputInfo input;
        input.kind = kind;
        input.name = name;
        input.highest = highest;
        inputs.push_back(input);
    };
    for (const std::string& axis : axes)
        add(InputKind::Axis, axis, 4095);
    for (int i = 1; i <= buttons; ++i)
        add(InputKind::Button, "button " + std::to_string(i), 1);
    for (int i = 1; i <= hats; ++i) {
        add(InputKind::Hat, "hat " + std::to_string(i), 7);
        inputs.back().lastAngle = 315.0;
    }
    return inputs;
}

/// A rig of one device with axes X, Y, Z, 16 buttons, a hat and a wheel, and the controls of `source`.
class Bench {
public:
    explicit Bench(const std::string& controls, const std::string& device = "")
        : m_inputs(inputsOf({"X", "Y", "Z"}, 16, 1)) {
        InputInfo wheel;
        wheel.kind = InputKind::Relative;
        wheel.name = "Wheel";
        wheel.lowest = -127;
        wheel.highest = 127;
        m_inputs.push_back(wheel);
        const std::string head = "format = 1\ntitle = \"Bench\"\n[[device]]\nname = \"unit\"\nid = \"1209:F101\"\n";
        Problems problems;
        m_rig = Rig::parse(head + device + controls, "bench.toml", twinJet().signals, twinJet().controlCount, problems);
        for (const Problem& problem : problems.all())
            if (problem.severity == Severity::Error)
                m_problems += describe(problem.error) + "\n";
        if (m_rig && !m_rig->connect(0, m_inputs))
            m_problems += "not connected";
    }

    [[nodiscard]] const std::string& problems() const { return m_problems; }
    [[nodiscard]] Rig& rig() { return *m_rig; }

    /// Input `name` sends `raw` at `time` milliseconds; the samples it makes.
    std::vector<Sample> send(double time, const std::string& name, std::int64_t raw, bool isNull = false) {
        std::vector<Sample> samples;
        add(samples, time, name, raw, isNull);
        return samples;
    }
    void add(std::vector<Sample>& samples, double time, const std::string& name, std::int64_t raw,
             bool isNull = false) {
        Reading reading;
        reading.time = at(time);
        reading.raw = raw;
        reading.isNull = isNull;
        while (m_inputs[reading.input].name != name)
            ++reading.input;
        m_rig->take(reading, samples);
        keep(samples);
    }
    std::vector<Sample> wait(double time) {
        std::vector<Sample> samples;
        m_rig->advance(at(time), samples);
        keep(samples);
        return samples;
    }
    /// All buttons open, from one report.
    std::vector<Sample> openAll(double time = 0) {
        std::vector<Sample> samples;
        for (const InputInfo& input : m_inputs)
            if (input.kind == InputKind::Button)
                add(samples, time, input.name, 0);
        return samples;
    }

    /// As a person reads it, after the samples so far.
    [[nodiscard]] std::string text(const std::string& signal) const {
        const SignalId id = twinJet().id(signal);
        Value value;
        for (const Sample& sample : m_kept)
            if (sample.signal == id)
                value = sample.value;
        return valueText(twinJet().signals[id], value);
    }
    [[nodiscard]] double number(const std::string& signal) const {
        double number = -1e9;
        for (const Sample& sample : m_kept)
            if (sample.signal == twinJet().id(signal))
                number = sample.value.number();
        return number;
    }
    [[nodiscard]] Actor lastActor() const { return m_kept.back().actor; }
    [[nodiscard]] double lastTime() const { return seconds(m_kept.back().time) * 1000; }
    [[nodiscard]] std::string fault() const { return m_rig->faults().empty() ? "" : m_rig->faults().front().english(); }
    [[nodiscard]] const std::vector<InputInfo>& inputs() const { return m_inputs; }

    [[nodiscard]] static Time at(double milliseconds) { return fromSeconds(milliseconds / 1000); }

private:
    void keep(const std::vector<Sample>& samples) { m_kept.insert(m_kept.end(), samples.begin(), samples.end()); }

    std::vector<InputInfo> m_inputs;
    std::optional<Rig> m_rig;
    std::string m_problems;
    std::vector<Sample> m_kept;
};

} // namespace flowhand
