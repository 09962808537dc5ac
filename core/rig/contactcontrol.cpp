// A control that one contact tells, or several that stand for the same. Closed is what they make together: one of them
// is enough with `combine = "any"`, all must be closed with "all". After the debouncing (contacts.cpp):
//
//   #  case                                         the signal gets
//   1  a contact has not been reported              unknown
//   2  open                                         the value of `open`
//   3  closed                                       the value of `closed`
//   4  closes, with `pulse`                         the value of `closed`, for that time or until it opens ...
//   5  the pulse is over                            ... then the value of `open`
//   6  closed when first reported, with `pulse`     the value of `open`: it was not closed now
#include "rig/contactscontrol.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

struct ContactSpec {
    Value open;
    Value closed;
    bool needsAll = false;
    bool isMomentary = false;
    Duration pulse{}; ///< 0: none
    Duration debounce = kDebounce;
};

class ContactControl final : public ContactsControl {
public:
    ContactControl(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, ContactSpec spec)
        : ContactsControl(std::move(name), std::move(signals), std::move(inputs), spec.debounce), m_spec(spec) {}

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        if (!(value == m_spec.open) && !(value == m_spec.closed))
            return;
        for (std::size_t slot = 0; slot < inputs().size(); ++slot)
            wishes.push_back({slot, value == m_spec.closed && (slot == 0 || m_spec.needsAll) ? 1 : 0, {}});
    }

    [[nodiscard]] ControlFacts facts(std::size_t) const override {
        ControlFacts facts;
        facts.isMomentary = m_spec.isMomentary;
        return facts;
    }

private:
    void changed(bool isFirst, Time time, Outputs& outputs) override {
        const std::size_t closed = contacts().closedCount();
        const bool isClosed = m_spec.needsAll ? closed == contacts().count() : closed > 0;
        if (!isFirst && isClosed == m_isClosed)
            return;
        m_isClosed = isClosed;
        const bool isPulsed = m_spec.pulse > Duration{} && isClosed;
        setTimer(isPulsed && !isFirst ? time + m_spec.pulse : kForever);
        outputs.push_back({0, isClosed && !(isPulsed && isFirst) ? m_spec.closed : m_spec.open, time});
    }

    void timeUp(Time time, Outputs& outputs) override { outputs.push_back({0, m_spec.open, time, Actor::Machine}); }

    ContactSpec m_spec;
    bool m_isClosed = false;
};

} // namespace

std::unique_ptr<Control> readContact(ControlReader& reader) {
    ContactSpec spec;
    std::vector<InputRef> inputs = reader.inputs("input", InputUse::Contact, 1, 16);
    const std::optional<std::string> combine = reader.toml().text("combine");
    if (inputs.size() > 1 && !combine)
        reader.error("needs-combine",
                     "'" + reader.name() + "' has " + std::to_string(inputs.size()) +
                         " contacts; say how they combine: combine = \"any\" or \"all\"",
                     "input");
    if (combine && *combine != "any" && *combine != "all")
        reader.error("bad-value", "'combine' of contacts is any or all", "combine");
    spec.needsAll = combine == "all";
    spec.open = reader.value("open", reader.naturalValue(false));
    spec.closed = reader.value("closed", reader.naturalValue(true));
    if (spec.open == spec.closed && spec.open.isKnown())
        reader.error("same-meaning", "open and closed mean the same, so this contact tells nothing", "closed");
    spec.pulse = reader.duration("pulse", Duration{});
    spec.isMomentary = reader.toml().boolean("momentary").value_or(spec.pulse > Duration{});
    spec.debounce = reader.duration("debounce", kDebounce);
    return std::make_unique<ContactControl>(reader.name(), reader.signalIds(), std::move(inputs), spec);
}

} // namespace flowhand
