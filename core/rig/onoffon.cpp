// A switch with a contact at each end and none in its middle. After the debouncing (contacts.cpp):
//
//   #  closed contacts                              the signal gets
//   1  some not reported yet                        unknown
//   2  the first                                    its value
//   3  the second                                   its value
//   4  none                                         the value of `centre`, at once: none is a position here
//   5  both, for less than `transit`                what it had
//   6  both, for longer                             unknown, and a fault
#include "rig/contactscontrol.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

/// Longer than both bounces together: so long may an old contact be seen closed beside the new one.
constexpr Duration kOverlap = std::chrono::milliseconds(50);

struct OnOffOnSpec {
    Value first;
    Value centre;
    Value second;
    Duration transit = kOverlap;
    Duration debounce = kDebounce;
};

class OnOffOn final : public ContactsControl {
public:
    OnOffOn(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, OnOffOnSpec spec)
        : ContactsControl(std::move(name), std::move(signals), std::move(inputs), spec.debounce), m_spec(spec) {}

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        if (!(value == m_spec.first) && !(value == m_spec.centre) && !(value == m_spec.second))
            return;
        wishes.push_back({0, value == m_spec.first ? 1 : 0, {}});
        wishes.push_back({1, value == m_spec.second ? 1 : 0, {}});
    }

private:
    void changed(bool, Time time, Outputs& outputs) override {
        const bool isBoth = contacts().closedCount() == 2;
        setTimer(isBoth ? time + m_spec.transit : kForever);
        setFault({});
        if (!isBoth)
            outputs.push_back({0,
                               contacts().isClosed(0)   ? m_spec.first
                               : contacts().isClosed(1) ? m_spec.second
                                                        : m_spec.centre,
                               time});
    }

    void timeUp(Time time, Outputs& outputs) override {
        setFault(phrase("closed at the same time: {1}; this switch closes one of them only").with(closedNames()));
        outputs.push_back({0, Value::unknown(), time, Actor::Machine});
    }

    OnOffOnSpec m_spec;
};

} // namespace

std::unique_ptr<Control> readOnOffOn(ControlReader& reader) {
    OnOffOnSpec spec;
    std::vector<InputRef> inputs = reader.inputs("input", InputUse::Contact, 2, 2);
    spec.first = reader.value("first", {});
    spec.centre = reader.value("centre", {});
    spec.second = reader.value("second", {});
    spec.transit = reader.duration("transit", kOverlap);
    spec.debounce = reader.duration("debounce", kDebounce);
    return std::make_unique<OnOffOn>(reader.name(), reader.signalIds(), std::move(inputs), spec);
}

} // namespace flowhand
