// Two contacts, one for less and one for more: a rocker, or an encoder whose card presses one button for each click to
// the left and another for each to the right. After the debouncing (contacts.cpp):
//
//   #  case                                     the signal gets
//   1  a contact not reported yet               unknown
//   2  both reported for the first time         the value of `start`
//   3  `less` closes                            one step less
//   4  `more` closes                            one step more
//   5  one opens                                nothing
#include "rig/contactscontrol.h"
#include "rig/controls.h"
#include "rig/stepvalue.h"

namespace flowhand {

namespace {

class StepButtons final : public ContactsControl {
public:
    StepButtons(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, StepValue value,
                Duration debounce)
        : ContactsControl(std::move(name), std::move(signals), std::move(inputs), debounce), m_value(value) {}

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        const std::optional<std::int64_t> steps = m_value.stepsTo(value);
        if (!steps)
            return;
        wishes.push_back({0, 0, {}});
        wishes.push_back({1, 0, {}});
        for (std::int64_t i = 0; i < std::abs(*steps); ++i) {
            const std::size_t slot = *steps > 0 ? 1 : 0;
            wishes.push_back({slot, 1, (2 * i + 1) * kPressTime});
            wishes.push_back({slot, 0, (2 * i + 2) * kPressTime});
        }
    }

    void declare(Value value, Time time, Outputs& outputs) override {
        m_value.set(value);
        outputs.push_back({0, m_value.value(), time, Actor::Machine});
    }

private:
    void changed(bool isFirst, Time time, Outputs& outputs) override {
        const bool isLess = contacts().isClosed(0);
        const bool isMore = contacts().isClosed(1);
        if (!isFirst)
            m_value.move((isMore && !m_isMore ? 1 : 0) - (isLess && !m_isLess ? 1 : 0));
        m_isLess = isLess;
        m_isMore = isMore;
        outputs.push_back({0, m_value.value(), time});
    }

    StepValue m_value;
    bool m_isLess = false;
    bool m_isMore = false;
};

} // namespace

std::unique_ptr<Control> readStepButtons(ControlReader& reader) {
    std::vector<InputRef> inputs = {reader.input("less", InputUse::Contact), reader.input("more", InputUse::Contact)};
    const StepValue value = readStepValue(reader, "per_press");
    return std::make_unique<StepButtons>(reader.name(), reader.signalIds(), std::move(inputs), value,
                                         reader.duration("debounce", kDebounce));
}

} // namespace flowhand
