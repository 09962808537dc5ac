#pragma once

#include <cstdlib>
#include <map>
#include <random>
#include <string>
#include <vector>

#include <QString>
#include <QStringList>

#include "base/time.h"
#include "device/device.h"

namespace flowhand {

/// Devices whose inputs a test moves, as they would report: every 8 ms, with noise. Device 0: axes X, Y, Z of 12 bits,
/// buttons 1 to 8, a hat, a wheel. Device 1: axes X, Y of 16 bits. Device 2: an axis X of 32 bits.
class HandsOn {
public:
    HandsOn() {
        add(0, InputKind::Axis, "X", 4095);
        add(0, InputKind::Axis, "Y", 4095);
        add(0, InputKind::Axis, "Z", 4095);
        for (int i = 1; i <= 8; ++i)
            add(0, InputKind::Button, "button " + std::to_string(i), 1);
        add(0, InputKind::Hat, "hat 1", 7);
        m_inputs[0].back().lastAngle = 315.0;
        add(0, InputKind::Relative, "Wheel", 127);
        add(1, InputKind::Axis, "X", 65535);
        add(1, InputKind::Axis, "Y", 65535);
        add(2, InputKind::Axis, "X", 4294967295);
        for (std::size_t device = 0; device < m_inputs.size(); ++device)
            for (std::size_t i = 0; i < m_inputs[device].size(); ++i)
                m_states[{device, i}].isNull = m_inputs[device][i].kind == InputKind::Hat;
    }

    static constexpr Duration kPeriod = std::chrono::milliseconds(8);

    [[nodiscard]] const std::vector<std::vector<InputInfo>>& inputs() const { return m_inputs; }
    [[nodiscard]] Time now() const { return m_now; }
    void setNoise(double counts) { m_noise = counts; }
    /// `input` of device 0 is all over its range, whatever anybody does.
    void setRestless(const std::string& input) { m_restless = find(0, input); }
    /// Says nothing before something moves.
    void setSilent() { m_isSilent = true; }

    /// "X=3900, 1:Y=200, b3=1, hat=2, wheel=5, spike Y": where inputs go now; `hat=-` lets it go. Axes take 400 ms.
    void move(const QString& words) {
        for (const QString& word : words.split(',', Qt::SkipEmptyParts)) {
            const QString text = word.trimmed();
            if (text.startsWith("spike ")) {
                m_spike = find(0, text.mid(6).toStdString());
                continue;
            }
            const QStringList parts = text.split('=');
            const bool hasDevice = parts[0].contains(':');
            const std::size_t device = hasDevice ? parts[0].section(':', 0, 0).toUInt() : 0;
            QString name = hasDevice ? parts[0].section(':', 1) : parts[0];
            if (name.startsWith('b') && name != "between")
                name = "button " + name.mid(1);
            else if (name == "hat")
                name = "hat 1";
            else if (name == "wheel")
                name = "Wheel";
            State& state = m_states[{device, find(device, name.toStdString())}];
            state.isNull = parts[1] == "-";
            state.from = state.at;
            state.to = state.isNull ? state.to : parts[1].toDouble();
            state.since = m_now;
        }
        m_isSilent = m_isSilent && words.trimmed().isEmpty();
    }

    /// One report of each device: what changed.
    std::vector<Reading> report() {
        m_now += kPeriod;
        std::vector<Reading> readings;
        for (auto& [place, state] : m_states) {
            const InputInfo& info = m_inputs[place.first][place.second];
            const double share = std::min(1.0, seconds(m_now - state.since) / 0.4);
            const bool isAxis = info.kind == InputKind::Axis;
            state.at = isAxis ? state.from + (state.to - state.from) * share : state.to;
            double value = state.at;
            if (isAxis)
                value += std::normal_distribution<double>(0.0, m_noise)(m_random);
            if (place.first == 0 && m_restless == place.second)
                value = std::uniform_real_distribution<double>(0.0, 4095.0)(m_random);
            if (place.first == 0 && m_spike == place.second)
                value = 4095.0;
            const auto raw = std::llround(isAxis ? std::clamp(value, 0.0, static_cast<double>(info.highest)) : value);
            if (m_isSilent || (state.isHeard && state.raw == raw && state.wasNull == state.isNull))
                continue;
            state.isHeard = true;
            state.raw = raw;
            state.wasNull = state.isNull;
            readings.push_back({m_now, static_cast<DeviceIndex>(place.first), static_cast<std::uint16_t>(place.second),
                                raw, state.isNull});
        }
        m_spike = kNone;
        return readings;
    }

private:
    static constexpr std::size_t kNone = 9999;
    struct State {
        double from = 0.0, to = 0.0, at = 0.0;
        Time since{};
        bool isNull = false;
        bool isHeard = false;
        bool wasNull = false;
        std::int64_t raw = 0;
    };

    void add(std::size_t device, InputKind kind, const std::string& name, std::int64_t highest) {
        m_inputs.resize(std::max(m_inputs.size(), device + 1));
        InputInfo info;
        info.kind = kind;
        info.name = name;
        info.highest = highest;
        m_inputs[device].push_back(info);
    }

    [[nodiscard]] std::size_t find(std::size_t device, const std::string& name) const {
        for (std::size_t i = 0; i < m_inputs[device].size(); ++i)
            if (m_inputs[device][i].name == name)
                return i;
        qFatal("no input %s", name.c_str());
        return 0;
    }

    std::vector<std::vector<InputInfo>> m_inputs;
    std::map<std::pair<std::size_t, std::size_t>, State> m_states;
    std::mt19937 m_random{20240607};
    double m_noise = 1.5;
    std::size_t m_restless = kNone;
    std::size_t m_spike = kNone;
    bool m_isSilent = false;
    Time m_now{};
};

} // namespace flowhand
