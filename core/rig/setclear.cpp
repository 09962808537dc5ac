// Two momentary contacts that make a toggle: one sets, the other clears. Also a maintained switch whose card sends a
// pulse on one button when it goes on and on another when it goes off. After the debouncing (contacts.cpp):
//
//   #  case                                                  the signal gets
//   1  a contact not reported yet                            unknown
//   2  both reported for the first time, `start` is a value  that value
//   3  the same, `start` is "ask"                            unknown, until 4, 5 or 8
//   4  `set` closes                                          the value of `on_set`
//   5  `clear` closes                                        the value of `on_clear`
//   6  both close at the same instant                        what it had
//   7  one opens                                             nothing
//   8  a person says how it stands                           that value
#include "rig/contactscontrol.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

struct SetClearSpec {
    Value onSet;
    Value onClear;
    Value start; ///< unknown: ask
    Duration debounce = kDebounce;
};

class SetClear final : public ContactsControl {
public:
    SetClear(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, SetClearSpec spec)
        : ContactsControl(std::move(name), std::move(signals), std::move(inputs), spec.debounce), m_spec(spec),
          m_value(spec.start) {}

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        if (!(value == m_spec.onSet) && !(value == m_spec.onClear))
            return;
        const std::size_t slot = value == m_spec.onSet ? 0 : 1;
        wishes.push_back({0, 0, {}});
        wishes.push_back({1, 0, {}});
        wishes.push_back({slot, 1, kPressTime});
        wishes.push_back({slot, 0, 2 * kPressTime});
    }

    [[nodiscard]] bool asksForState() const override { return !m_value.isKnown(); }

    void declare(Value value, Time time, Outputs& outputs) override {
        if (!(value == m_spec.onSet) && !(value == m_spec.onClear))
            return;
        m_value = value;
        outputs.push_back({0, m_value, time, Actor::Machine});
    }

private:
    void changed(bool isFirst, Time time, Outputs& outputs) override {
        const bool isSet = contacts().isClosed(0);
        const bool isClear = contacts().isClosed(1);
        const bool sets = !isFirst && isSet && !m_isSet;
        const bool clears = !isFirst && isClear && !m_isClear;
        if (sets != clears)
            m_value = sets ? m_spec.onSet : m_spec.onClear;
        m_isSet = isSet;
        m_isClear = isClear;
        outputs.push_back({0, m_value, time});
    }

    SetClearSpec m_spec;
    Value m_value;
    bool m_isSet = false;
    bool m_isClear = false;
};

} // namespace

std::unique_ptr<Control> readSetClear(ControlReader& reader) {
    SetClearSpec spec;
    std::vector<InputRef> inputs = {reader.input("set", InputUse::Contact), reader.input("clear", InputUse::Contact)};
    spec.onSet = reader.value("on_set", reader.naturalValue(true));
    spec.onClear = reader.value("on_clear", reader.naturalValue(false));
    spec.start = reader.start();
    if (spec.start.isKnown() && !(spec.start == spec.onSet) && !(spec.start == spec.onClear))
        reader.error("bad-value", "'start' is what one of the contacts makes, or ask", "start");
    spec.debounce = reader.duration("debounce", kDebounce);
    return std::make_unique<SetClear>(reader.name(), reader.signalIds(), std::move(inputs), spec);
}

} // namespace flowhand
