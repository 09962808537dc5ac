// A parking brake that latches the pedals: pressed pedals plus a pull set it, pressing them again lets it off. Pressed
// is every pedal beyond `pressed` of its travel, let go when one is back below that less 10 %. The pull is debounced
// (contacts.cpp).
//
//   #  now    event                                                  the signal gets   then
//   1  any    a pedal or the pull not reported yet                   unknown           -
//   2  first  all reported for the first time                        as kept (`start`) off or on
//   3  off    pull closes while the pedals are pressed               set               on, held
//   4  off    pedals get pressed while the pull is closed            set               on, held
//   5  off    pull without pedals, pedals without pull               nothing           off
//   6  held   pedals still pressed since it was set                  nothing           held
//   7  held   pedals let go                                          nothing           on
//   8  on     pedals get pressed with the pull open                  released          off
//   9  on     pedals get pressed with the pull closed                nothing           held
//  10  any    a person says how it stands                            that value        off or on
#include <algorithm>

#include "rig/contactscontrol.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

constexpr double kLetGo = 0.1; ///< hysteresis, share of the travel
constexpr double kPressed = 0.6;

struct Pedal {
    AxisMap map;
    std::optional<std::int64_t> raw;
};

class ParkingLatch final : public Control {
public:
    ParkingLatch(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs,
                 std::vector<Pedal> pedals, double pressed, Value start, Duration debounce)
        : Control(std::move(name), std::move(signals), std::move(inputs)), m_pedals(std::move(pedals)),
          m_pressedShare(pressed), m_pull(1, debounce), m_value(start) {}

    void take(std::size_t slot, std::int64_t meaning, Time time, Outputs& outputs) override {
        if (slot < m_pedals.size())
            m_pedals[slot].raw = meaning;
        else if (!m_pull.take(0, meaning != 0, time))
            return;
        tell(time, outputs);
    }

    void advance(Time time, Outputs& outputs) override {
        if (m_pull.advance(time))
            tell(time, outputs);
    }

    [[nodiscard]] Time nextTimer() const override { return m_pull.nextTimer(); }

    void forget() override {
        m_pull.forget();
        m_isKnown = m_isPressed = false;
        for (Pedal& pedal : m_pedals)
            pedal.raw.reset();
    }

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        const std::size_t pull = m_pedals.size();
        const bool isOther = !(value == m_value);
        for (std::size_t i = 0; isOther && i < pull; ++i)
            wishes.push_back({i, m_pedals[i].map.shape().to, {}});
        wishes.push_back({pull, isOther && value.isOn() ? 1 : 0, kPressTime});
        for (std::size_t i = 0; i < pull; ++i)
            wishes.push_back({i, m_pedals[i].map.shape().from, 2 * kPressTime});
        wishes.push_back({pull, 0, 3 * kPressTime});
    }

    [[nodiscard]] bool asksForState() const override { return !m_value.isKnown(); }

    void declare(Value value, Time time, Outputs& outputs) override {
        m_value = value;
        m_isHeld = m_isPressed;
        outputs.push_back({0, m_value, time, Actor::Machine});
    }

private:
    [[nodiscard]] bool arePressed() const {
        const double limit = m_isPressed ? m_pressedShare - kLetGo : m_pressedShare;
        return std::all_of(m_pedals.begin(), m_pedals.end(), [&](const Pedal& pedal) {
            return pedal.map.share(*pedal.raw) > limit;
        });
    }

    void tell(Time time, Outputs& outputs) {
        const bool areKnown =
            m_pull.areAllKnown() && std::all_of(m_pedals.begin(), m_pedals.end(), [](const Pedal& pedal) {
                return pedal.raw.has_value();
            });
        if (!areKnown)
            return;
        const bool isFirst = !std::exchange(m_isKnown, true);
        const bool wasPressed = std::exchange(m_isPressed, arePressed());
        const bool isPulled = m_pull.isClosed(0);
        const bool getsPressed = m_isPressed && !wasPressed && !isFirst;
        const bool wasPulled = std::exchange(m_wasPulled, isPulled);
        const bool getsPulled = isPulled && !wasPulled && !isFirst;
        m_isHeld = m_isHeld && m_isPressed;
        if (m_value.isOn()) {
            if (getsPressed && isPulled)
                m_isHeld = true;
            else if (getsPressed && !m_isHeld)
                m_value = Value::onOff(false);
        } else if (m_isPressed && isPulled && (getsPressed || getsPulled)) {
            m_value = Value::onOff(true);
            m_isHeld = true;
        }
        outputs.push_back({0, m_value, time});
    }

    std::vector<Pedal> m_pedals;
    double m_pressedShare;
    Contacts m_pull;
    Value m_value; ///< unknown: asked for
    bool m_isKnown = false;
    bool m_isPressed = false;
    bool m_wasPulled = false;
    bool m_isHeld = false;
};

} // namespace

std::unique_ptr<Control> readParkingLatch(ControlReader& reader) {
    std::vector<InputRef> inputs = reader.inputs("pedals", InputUse::Axis, 1, 2);
    std::vector<Pedal> pedals(inputs.size());
    for (std::size_t i = 0; i < pedals.size(); ++i) {
        pedals[i].map = reader.mapOfPart(i, pedals.size(), {0.0, 0.5, 1.0});
        expectRaws(inputs[i], pedals[i].map);
    }
    inputs.push_back(reader.input("pull", InputUse::Contact));
    reader.demand(SignalKind::OnOff);
    const double pressed = reader.toml().number("pressed").value_or(kPressed * 100) / 100;
    if (pressed <= kLetGo || pressed >= 1)
        reader.error("bad-value", "'pressed' is a share of the travel in %, between 10 and 100", "pressed");
    return std::make_unique<ParkingLatch>(reader.name(), reader.signalIds(), std::move(inputs), std::move(pedals),
                                          pressed, reader.start(), reader.duration("debounce", kDebounce));
}

} // namespace flowhand
