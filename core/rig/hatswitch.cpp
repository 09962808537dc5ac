// A hat as a switch: each of its directions that is named stands for a value.
//
//   #  the hat                                        the signal gets
//   1  has not been reported                          unknown
//   2  points where a value is named                  that value
//   3  points where none is named                     what it had
//   4  released, `released` is named                  that value
//   5  released, it is not named                      what it had
#include <array>

#include "rig/controls.h"

namespace flowhand {

namespace {

constexpr std::array<std::string_view, kHatEighths> kKeys = {"up",   "up_right",  "right", "down_right",
                                                             "down", "down_left", "left",  "up_left"};

struct HatSpec {
    std::array<std::optional<Value>, kHatEighths> byEighth;
    std::optional<Value> released;
};

class HatSwitch final : public Control {
public:
    HatSwitch(std::string name, std::vector<SignalId> signals, InputRef input, HatSpec spec)
        : Control(std::move(name), std::move(signals), {std::move(input)}), m_spec(spec) {}

    void take(std::size_t, std::int64_t eighth, Time time, Outputs& outputs) override {
        const std::optional<Value>& value =
            eighth == kHatReleased ? m_spec.released : m_spec.byEighth[static_cast<std::size_t>(eighth)];
        if (value)
            outputs.push_back({0, *value, time});
    }

    void forget() override {}

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        if (m_spec.released == value)
            wishes.push_back({0, kHatReleased, {}});
        for (int eighth = 0; eighth < kHatEighths && wishes.empty(); ++eighth)
            if (m_spec.byEighth[static_cast<std::size_t>(eighth)] == value)
                wishes.push_back({0, eighth, {}});
    }

    [[nodiscard]] ControlFacts facts(std::size_t) const override {
        ControlFacts facts;
        facts.isMomentary = m_spec.released.has_value();
        return facts;
    }

private:
    HatSpec m_spec;
};

} // namespace

std::unique_ptr<Control> readHatSwitch(ControlReader& reader) {
    HatSpec spec;
    InputRef input = reader.input("input", InputUse::Hat);
    const auto named = [&](std::string_view key) -> std::optional<Value> {
        const std::optional<std::string> text = reader.toml().text(key);
        return text ? std::optional(reader.valueOf(*text, reader.toml().placeOf(key))) : std::nullopt;
    };
    std::size_t count = 0;
    for (std::size_t i = 0; i < kKeys.size(); ++i) {
        spec.byEighth[i] = named(kKeys[i]);
        count += spec.byEighth[i] ? 1 : 0;
    }
    spec.released = named("released");
    if (count + (spec.released ? 1 : 0) < 2)
        reader.error("missing-key", "'" + reader.name() + "' needs two values or more: up, right, down, left, released",
                     "input");
    return std::make_unique<HatSwitch>(reader.name(), reader.signalIds(), std::move(input), spec);
}

} // namespace flowhand
