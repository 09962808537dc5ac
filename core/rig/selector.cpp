// A rotary switch with one contact a position. While a knob turns, none is closed (it breaks before it makes) or two
// are (it makes before it breaks); both are transit for a bounded time. After the debouncing (contacts.cpp):
//
//   #  closed contacts                                       the signal gets
//   1  some not reported yet                                 unknown
//   2  one                                                   its position, at once
//   3  none, for less than `transit`                         between
//   4  none, for longer, `unwired` is named                  the unwired position
//   5  none, for longer, nothing is unwired                  between, and a fault
//   6  none when first reported, `unwired` is named          the unwired position, at once
//   7  two or more, for less than `transit`                  between
//   8  two or more, for longer                               unknown, and a fault
//
// `between` is for signals with positions; a number or an on/off keeps its value in transit.
#include <algorithm>

#include "rig/contactscontrol.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

/// A slow hand turns a knob from one detent to the next in about this time.
constexpr Duration kTransit = std::chrono::milliseconds(300);

struct SelectorSpec {
    std::vector<Value> positions; ///< by slot
    std::optional<Value> unwired;
    bool hasBetween = true;
    Duration transit = kTransit;
    Duration debounce = kDebounce;
};

class Selector final : public ContactsControl {
public:
    Selector(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, SelectorSpec spec)
        : ContactsControl(std::move(name), std::move(signals), std::move(inputs), spec.debounce),
          m_spec(std::move(spec)) {}

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        const bool hasContact =
            std::find(m_spec.positions.begin(), m_spec.positions.end(), value) != m_spec.positions.end();
        if (!hasContact && value != m_spec.unwired && !(value == Value::between()))
            return;
        for (std::size_t slot = 0; slot < inputs().size(); ++slot)
            wishes.push_back({slot, m_spec.positions[slot] == value ? 1 : 0, {}});
    }

private:
    void changed(bool isFirst, Time time, Outputs& outputs) override {
        setTimer(kForever);
        setFault({});
        const std::size_t closed = contacts().closedCount();
        if (closed == 1) {
            std::size_t slot = 0;
            while (!contacts().isClosed(slot))
                ++slot;
            outputs.push_back({0, m_spec.positions[slot], time});
        } else if (closed == 0 && isFirst && m_spec.unwired) {
            outputs.push_back({0, *m_spec.unwired, time});
        } else {
            if (m_spec.hasBetween)
                outputs.push_back({0, Value::between(), time});
            setTimer(time + m_spec.transit);
        }
    }

    void timeUp(Time time, Outputs& outputs) override {
        const bool isNone = contacts().closedCount() == 0;
        if (isNone && m_spec.unwired) {
            outputs.push_back({0, *m_spec.unwired, time});
        } else if (isNone) {
            setFault(phrase("no contact is closed: it stands between two positions, or a wire is off"));
        } else {
            setFault(phrase("closed at the same time: {1}; two wires touch, or a contact sticks").with(closedNames()));
            outputs.push_back({0, Value::unknown(), time, Actor::Machine});
        }
    }

    SelectorSpec m_spec;
};

} // namespace

std::unique_ptr<Control> readSelector(ControlReader& reader) {
    SelectorSpec spec;
    std::vector<InputRef> inputs;
    for (const TomlNode* table : reader.toml().tables("contacts")) {
        TomlReader entry(reader.toml().file(), *table, "a contact of '" + reader.name() + "'",
                         reader.toml().problems());
        const std::string input = entry.requiredText("input");
        const std::string value = entry.requiredText("value");
        inputs.push_back(reader.inputNamed(input, entry.placeOf("input"), InputUse::Contact));
        const Value position = reader.valueOf(value, entry.placeOf("value"));
        if (std::find(spec.positions.begin(), spec.positions.end(), position) != spec.positions.end())
            reader.error("position-twice", "'" + value + "' has a contact already", entry.placeOf("value"));
        spec.positions.push_back(position);
        entry.finish();
    }
    if (inputs.size() < 2)
        reader.error("wrong-inputs", "'" + reader.name() + "' needs 'contacts', two or more, each with input and value",
                     "contacts");
    if (const std::optional<std::string> unwired = reader.toml().text("unwired"))
        spec.unwired = reader.valueOf(*unwired, reader.toml().placeOf("unwired"));
    if (spec.unwired && std::find(spec.positions.begin(), spec.positions.end(), *spec.unwired) != spec.positions.end())
        reader.error("position-twice", "the unwired position has a contact", "unwired");
    spec.hasBetween = reader.signal().kind == SignalKind::Position;
    spec.transit = reader.duration("transit", kTransit);
    spec.debounce = reader.duration("debounce", kDebounce);
    return std::make_unique<Selector>(reader.name(), reader.signalIds(), std::move(inputs), std::move(spec));
}

} // namespace flowhand
