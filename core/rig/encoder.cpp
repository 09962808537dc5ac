// A quadrature encoder: two contacts A and B, a quarter of a period apart. A turn to the right is 00, 01, 11, 10, 00,
// written A then B. The contacts are not debounced: a bounce counts one up and one down again.
//
//   before \ now   00   01   11   10
//        00         0   +1    E   -1          1  +1 or -1: a quarter period to the right or left
//        01        -1    0   +1    E          2  0: nothing
//        11         E   -1    0   +1          3  E: both changed at once, so a code was missed; counted as a fault,
//        10        +1    E   -1    0             and made up for at the next detent by rounding (5)
//
//   4  an input not reported yet                          unknown
//   5  a code at which the knob rests in a detent         quarter periods so far, rounded to whole detents, are steps
//      (4 a detent: 00; 2 a detent: 00 and 11; 1: all)    of the value; the rest is dropped
//   6  first code                                         the value of `start`: nothing has been turned
//   7  more changes at the same instant (one report)      judged as one change from the code before
#include <array>
#include <cmath>

#include "rig/contactscontrol.h"
#include "rig/controls.h"
#include "rig/stepvalue.h"

namespace flowhand {

namespace {

constexpr int kMissed = 2;
/// By (before << 2) | now, codes as (A << 1) | B.
constexpr std::array<int, 16> kQuarters = {0,  +1,      -1, kMissed, -1,      0,  kMissed, +1,
                                           +1, kMissed, 0,  -1,      kMissed, -1, +1,      0};

/// What is known of a turning knob at one instant.
struct Turning {
    unsigned code = 0;
    int quarters = 0; ///< since the last detent
    int missed = 0;
    StepValue value;
};

class Encoder final : public ContactsControl {
public:
    Encoder(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, StepValue value,
            int perDetent)
        : ContactsControl(std::move(name), std::move(signals), std::move(inputs), Duration{}), m_perDetent(perDetent) {
        m_before.value = m_now.value = value;
    }

    /// Turns from the code it stands at, a quarter period each 5 ms.
    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        constexpr std::array<unsigned, 4> kTurn = {0, 1, 3, 2};
        const std::optional<std::int64_t> steps = m_now.value.stepsTo(value);
        std::size_t at = 0;
        while (kTurn[at] != m_now.code)
            ++at;
        const std::int64_t quarters = steps.value_or(0) * m_perDetent;
        for (std::int64_t i = 0; steps && i <= std::abs(quarters); ++i) {
            const unsigned code = kTurn[at];
            wishes.push_back({0, code >> 1, i * std::chrono::milliseconds(5)});
            wishes.push_back({1, code & 1u, i * std::chrono::milliseconds(5)});
            at = (at + (quarters > 0 ? 1 : 3)) % 4;
        }
    }

    void declare(Value value, Time time, Outputs& outputs) override {
        m_now.value.set(value);
        m_before = m_now;
        outputs.push_back({0, m_now.value.value(), time, Actor::Machine});
    }

private:
    void changed(bool isFirst, Time time, Outputs& outputs) override {
        if (time != m_time || isFirst)
            m_before = m_now;
        m_time = time;
        const unsigned code = (contacts().isClosed(0) ? 2u : 0u) | (contacts().isClosed(1) ? 1u : 0u);
        m_now = m_before;
        if (isFirst) {
            m_now.quarters = 0;
        } else {
            const int quarters = kQuarters[(m_before.code << 2) | code];
            m_now.quarters += quarters == kMissed ? 0 : quarters;
            m_now.missed += quarters == kMissed ? 1 : 0;
        }
        m_now.code = code;
        if (rests(code)) {
            m_now.value.move(std::lround(static_cast<double>(m_now.quarters) / m_perDetent));
            m_now.quarters = 0;
        }
        if (m_now.missed > 0)
            setFault(phrase("{1} steps came too fast to be counted; what it shows may be off")
                         .with(std::to_string(m_now.missed)));
        outputs.push_back({0, m_now.value.value(), time});
    }

    [[nodiscard]] bool rests(unsigned code) const {
        return m_perDetent == 1 || code == 0 || (m_perDetent == 2 && code == 3);
    }

    int m_perDetent;
    Time m_time = -kForever;
    Turning m_before; ///< before m_time
    Turning m_now;
};

} // namespace

std::unique_ptr<Control> readEncoder(ControlReader& reader) {
    std::vector<InputRef> inputs = reader.inputs("input", InputUse::Contact, 2, 2);
    const StepValue value = readStepValue(reader, "per_detent");
    const std::int64_t perDetent = reader.counts("transitions", 4);
    if (perDetent != 1 && perDetent != 2 && perDetent != 4)
        reader.error("bad-value",
                     "'transitions' is how often its contacts change from one detent to the next: 1, 2 "
                     "or 4",
                     "transitions");
    return std::make_unique<Encoder>(reader.name(), reader.signalIds(), std::move(inputs), value,
                                     static_cast<int>(perDetent));
}

} // namespace flowhand
