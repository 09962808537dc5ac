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
#include <utility>

#include "rig/contacts.h"
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

class Selector final : public Control {
public:
    Selector(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, SelectorSpec spec)
        : Control(std::move(name), std::move(signals), std::move(inputs)), m_spec(std::move(spec)),
          m_contacts(this->inputs().size(), m_spec.debounce) {}

    void take(std::size_t slot, std::int64_t meaning, Time time, Outputs& outputs) override {
        if (m_contacts.take(slot, meaning != 0, time))
            tell(time, outputs);
    }

    void advance(Time time, Outputs& outputs) override {
        if (m_contacts.advance(time))
            tell(time, outputs);
        if (m_transitEnd <= time)
            endTransit(time, outputs);
    }

    [[nodiscard]] Time nextTimer() const override { return std::min(m_contacts.nextTimer(), m_transitEnd); }

    void forget() override {
        m_contacts.forget();
        m_isKnown = false;
        m_transitEnd = kForever;
        m_fault.clear();
    }

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        bool isWired = value == m_spec.unwired || value == Value::between();
        for (const Value& position : m_spec.positions)
            isWired = isWired || position == value;
        for (std::size_t slot = 0; isWired && slot < inputs().size(); ++slot)
            wishes.push_back({slot, m_spec.positions[slot] == value ? 1 : 0, {}});
    }

    [[nodiscard]] std::string fault() const override { return m_fault; }

private:
    void tell(Time time, Outputs& outputs) {
        if (!m_contacts.areAllKnown())
            return;
        const bool isFirst = !std::exchange(m_isKnown, true);
        const std::size_t closed = m_contacts.closedCount();
        m_transitEnd = kForever;
        m_fault.clear();
        for (std::size_t slot = 0; closed == 1 && slot < m_contacts.count(); ++slot)
            if (m_contacts.isClosed(slot))
                outputs.push_back({0, m_spec.positions[slot], time});
        if (closed == 1)
            return;
        if (closed == 0 && isFirst && m_spec.unwired) {
            outputs.push_back({0, *m_spec.unwired, time});
            return;
        }
        if (m_spec.hasBetween)
            outputs.push_back({0, Value::between(), time});
        m_transitEnd = time + m_spec.transit;
    }

    void endTransit(Time time, Outputs& outputs) {
        m_transitEnd = kForever;
        if (m_contacts.closedCount() == 0 && m_spec.unwired) {
            outputs.push_back({0, *m_spec.unwired, time});
        } else if (m_contacts.closedCount() == 0) {
            m_fault = "no contact is closed: it stands between two positions, or a wire is off";
        } else {
            m_fault = "closed at the same time:";
            for (std::size_t slot = 0; slot < m_contacts.count(); ++slot)
                if (m_contacts.isClosed(slot))
                    m_fault += " " + inputs()[slot].name + ",";
            m_fault.back() = ';';
            m_fault += " two wires touch, or a contact sticks";
            outputs.push_back({0, Value::unknown(), time, Actor::Machine});
        }
    }

    SelectorSpec m_spec;
    Contacts m_contacts;
    bool m_isKnown = false;
    Time m_transitEnd = kForever;
    std::string m_fault;
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
