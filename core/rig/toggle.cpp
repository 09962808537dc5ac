// A momentary or pulsing contact for a function that stays: each press goes on to the next value of a list. The state
// is the program's own; the cockpit cannot show it. After the debouncing (contacts.cpp):
//
//   #  case                                                  the signal gets
//   1  a contact not reported yet                            unknown
//   2  reported for the first time, `start` is a value       that value; a contact found closed is no press
//   3  reported for the first time, `start` is "ask"         unknown, until a person says how it stands
//   4  `input` closes                                        the next value of the list, after the last the first
//   5  `input` closes, the state is not known                unknown
//   6  `resync` closes                                       the value of `start`, with "ask" the first of the list
//   7  one opens                                             nothing
//   8  a person says how it stands                           that value
#include <algorithm>

#include "rig/contactscontrol.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

constexpr std::size_t kNotKnown = static_cast<std::size_t>(-1);

class Toggle final : public ContactsControl {
public:
    Toggle(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, std::vector<Value> values,
           std::size_t start, Duration debounce)
        : ContactsControl(std::move(name), std::move(signals), std::move(inputs), debounce),
          m_values(std::move(values)), m_start(start), m_at(start) {}

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        const std::size_t wanted = indexOfValue(value);
        if (wanted == kNotKnown || m_at == kNotKnown)
            return;
        wishes.push_back({0, 0, {}});
        const std::size_t presses = (wanted + m_values.size() - m_at) % m_values.size();
        for (std::size_t i = 0; i < presses; ++i) {
            wishes.push_back({0, 1, static_cast<int>(2 * i + 1) * kPressTime});
            wishes.push_back({0, 0, static_cast<int>(2 * i + 2) * kPressTime});
        }
    }

    [[nodiscard]] bool asksForState() const override { return m_at == kNotKnown; }

    void declare(Value value, Time time, Outputs& outputs) override {
        const std::size_t at = indexOfValue(value);
        if (at == kNotKnown)
            return;
        m_at = at;
        outputs.push_back({0, m_values[m_at], time, Actor::Machine});
    }

private:
    void changed(bool isFirst, Time time, Outputs& outputs) override {
        const bool isPressed = contacts().isClosed(0);
        const bool isResync = contacts().count() > 1 && contacts().isClosed(1);
        if (!isFirst && isPressed && !m_isPressed && m_at != kNotKnown)
            m_at = (m_at + 1) % m_values.size();
        if (!isFirst && isResync && !m_isResync)
            m_at = m_start == kNotKnown ? 0 : m_start;
        m_isPressed = isPressed;
        m_isResync = isResync;
        if (m_at != kNotKnown)
            outputs.push_back({0, m_values[m_at], time});
    }

    [[nodiscard]] std::size_t indexOfValue(Value value) const {
        const auto found = std::find(m_values.begin(), m_values.end(), value);
        return found == m_values.end() ? kNotKnown : static_cast<std::size_t>(found - m_values.begin());
    }

    std::vector<Value> m_values;
    std::size_t m_start;
    std::size_t m_at;
    bool m_isPressed = false;
    bool m_isResync = false;
};

} // namespace

std::unique_ptr<Control> readToggle(ControlReader& reader) {
    std::vector<InputRef> inputs = {reader.input("input", InputUse::Contact)};
    if (reader.toml().tableNode().find("resync") != nullptr)
        inputs.push_back(reader.input("resync", InputUse::Contact));
    std::vector<Value> values = reader.values("values");
    if (reader.toml().tableNode().find("values") == nullptr && reader.naturalValue(true))
        values = {Value::onOff(false), Value::onOff(true)};
    if (values.size() < 2)
        reader.error("missing-key", "'" + reader.name() + "' needs 'values', two or more that each press goes through",
                     "values");
    const Value start = reader.start();
    const auto found = std::find(values.begin(), values.end(), start);
    const std::size_t at = found == values.end() ? kNotKnown : static_cast<std::size_t>(found - values.begin());
    if (start.isKnown() && at == kNotKnown)
        reader.error("bad-value", "'start' is one of the values, or ask", "start");
    return std::make_unique<Toggle>(reader.name(), reader.signalIds(), std::move(inputs), std::move(values), at,
                                    reader.duration("debounce", kDebounce));
}

} // namespace flowhand
