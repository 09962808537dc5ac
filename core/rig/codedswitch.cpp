// A rotary switch whose contacts are the bits of a code, lowest bit first. A binary code passes through wrong codes
// while several bits change; a Gray code changes one bit from a position to the next. After the debouncing
// (contacts.cpp):
//
//   #  the code                                                the signal gets
//   1  some bit not reported yet                               unknown
//   2  first code, has a position                              that position, at once
//   3  as at present                                           nothing; a code that waits is dropped
//   4  Gray, one bit from the present one, has a position      that position, at once
//   5  any other                                               waits for `settle`
//   6  has waited for `settle`, has a position                 that position
//   7  has waited for `settle`, has none                       between
//   8  has had none for `transit`                              unknown, and a fault
//
// `between` is for signals with positions; a number or an on/off keeps its value in transit.
#include <algorithm>

#include "rig/contactscontrol.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

constexpr Duration kCodeSettle = std::chrono::milliseconds(20); ///< two debounce times: the last bit may bounce too
constexpr Duration kCodeTransit = std::chrono::milliseconds(300);

struct CodedSpec {
    std::vector<std::optional<Value>> byCode;
    bool isGray = false;
    bool hasBetween = true;
    Duration settle = kCodeSettle;
    Duration transit = kCodeTransit;
    Duration debounce = kDebounce;
};

/// Reflected binary code of `number` (F. Gray, US patent 2632058).
unsigned grayOf(unsigned number) {
    return number ^ (number >> 1);
}

bool isOneBit(unsigned bits) {
    return bits != 0 && (bits & (bits - 1)) == 0;
}

class CodedSwitch final : public ContactsControl {
public:
    CodedSwitch(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, CodedSpec spec)
        : ContactsControl(std::move(name), std::move(signals), std::move(inputs), spec.debounce),
          m_spec(std::move(spec)) {}

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        const auto code = std::find(m_spec.byCode.begin(), m_spec.byCode.end(), std::optional(value));
        if (code == m_spec.byCode.end())
            return;
        for (std::size_t slot = 0; slot < inputs().size(); ++slot)
            wishes.push_back({slot, ((code - m_spec.byCode.begin()) >> slot) & 1, {}});
    }

    void forget() override {
        ContactsControl::forget();
        m_present.reset();
    }

private:
    void changed(bool isFirst, Time time, Outputs& outputs) override {
        m_read = 0;
        for (std::size_t slot = 0; slot < contacts().count(); ++slot)
            m_read |= contacts().isClosed(slot) ? 1u << slot : 0u;
        m_isSettled = false;
        setTimer(kForever);
        if (m_read == m_present)
            return;
        const bool isNext = m_spec.isGray && m_present && isOneBit(m_read ^ *m_present);
        if ((isFirst || isNext) && m_spec.byCode[m_read])
            accept(time, outputs);
        else
            setTimer(time + m_spec.settle);
    }

    void timeUp(Time time, Outputs& outputs) override {
        if (m_spec.byCode[m_read]) {
            accept(time, outputs);
        } else if (!m_isSettled) {
            m_isSettled = true;
            m_present.reset();
            if (m_spec.hasBetween)
                outputs.push_back({0, Value::between(), time});
            setTimer(time + m_spec.transit);
        } else {
            setFault(phrase("its code {1} stands for no position; a bit is not connected, or the list of positions is "
                            "too short")
                         .with(std::to_string(m_read)));
            outputs.push_back({0, Value::unknown(), time, Actor::Machine});
        }
    }

    void accept(Time time, Outputs& outputs) {
        m_present = m_read;
        setFault({});
        outputs.push_back({0, *m_spec.byCode[m_read], time});
    }

    CodedSpec m_spec;
    unsigned m_read = 0;
    std::optional<unsigned> m_present; ///< the code whose position was told
    bool m_isSettled = false;          ///< m_read has no position and has waited
};

} // namespace

std::unique_ptr<Control> readCodedSwitch(ControlReader& reader) {
    CodedSpec spec;
    std::vector<InputRef> inputs = reader.inputs("input", InputUse::Contact, 2, 8);
    const std::string code = reader.toml().requiredText("code");
    if (reader.toml().tableNode().find("code") != nullptr && code != "binary" && code != "gray")
        reader.error("bad-value", "'code' is binary or gray", "code");
    spec.isGray = code == "gray";
    const std::vector<Value> positions = reader.values("positions");
    spec.byCode.resize(std::size_t{1} << inputs.size());
    const std::int64_t first = reader.counts("first_code", 0);
    if (positions.size() < 2 || static_cast<std::size_t>(first) + positions.size() > spec.byCode.size()) {
        reader.error("wrong-positions",
                     "'" + reader.name() +
                         "' needs 'positions' in the order of their codes, at least two, and from "
                         "'first_code' on no more than its " +
                         std::to_string(inputs.size()) + " bits can tell apart",
                     "positions");
        return nullptr;
    }
    for (std::size_t i = 0; i < positions.size(); ++i) {
        const auto number = static_cast<unsigned>(static_cast<std::size_t>(first) + i);
        spec.byCode[spec.isGray ? grayOf(number) : number] = positions[i];
    }
    spec.hasBetween = reader.signal().kind == SignalKind::Position;
    spec.settle = reader.duration("settle", kCodeSettle);
    spec.transit = reader.duration("transit", kCodeTransit);
    spec.debounce = reader.duration("debounce", kDebounce);
    return std::make_unique<CodedSwitch>(reader.name(), reader.signalIds(), std::move(inputs), std::move(spec));
}

} // namespace flowhand
