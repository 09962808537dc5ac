// A wheel or an encoder that the card itself counts: the input is a total, in which only differences mean anything.
//
//   #  case                     the signal gets
//   1  no reading yet           unknown
//   2  first reading            the value of `start`, moved by what was turned to make that reading
//   3  a later total            the value, moved by `per_count` for each count of difference
#include "rig/controls.h"
#include "rig/stepvalue.h"

namespace flowhand {

namespace {

class RelativeWheel final : public Control {
public:
    RelativeWheel(std::string name, std::vector<SignalId> signals, InputRef input, StepValue value)
        : Control(std::move(name), std::move(signals), {std::move(input)}), m_value(value) {}

    void take(std::size_t, std::int64_t total, Time time, Outputs& outputs) override {
        m_value.move(total - m_total);
        m_total = total;
        outputs.push_back({0, m_value.value(), time});
    }

    /// A device that comes anew begins its total at 0.
    void forget() override { m_total = 0; }

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        if (const std::optional<std::int64_t> steps = m_value.stepsTo(value))
            wishes.push_back({0, m_total + *steps, {}});
    }

    void declare(Value value, Time time, Outputs& outputs) override {
        m_value.set(value);
        outputs.push_back({0, m_value.value(), time, Actor::Machine});
    }

private:
    StepValue m_value;
    std::int64_t m_total = 0;
};

} // namespace

std::unique_ptr<Control> readRelativeWheel(ControlReader& reader) {
    InputRef input = reader.input("input", InputUse::Turns);
    const StepValue value = readStepValue(reader, "per_count");
    return std::make_unique<RelativeWheel>(reader.name(), reader.signalIds(), std::move(input), value);
}

} // namespace flowhand
