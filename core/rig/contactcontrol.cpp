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
#include <algorithm>

#include "rig/contacts.h"
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

class ContactControl final : public Control {
public:
    ContactControl(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, ContactSpec spec)
        : Control(std::move(name), std::move(signals), std::move(inputs)), m_spec(spec),
          m_contacts(this->inputs().size(), spec.debounce) {}

    void take(std::size_t slot, std::int64_t meaning, Time time, Outputs& outputs) override {
        if (m_contacts.take(slot, meaning != 0, time))
            tell(time, outputs);
    }

    void advance(Time time, Outputs& outputs) override {
        if (m_contacts.advance(time))
            tell(time, outputs);
        if (m_pulseEnd > time)
            return;
        m_pulseEnd = kForever;
        outputs.push_back({0, m_spec.open, time, Actor::Machine});
    }

    [[nodiscard]] Time nextTimer() const override { return std::min(m_contacts.nextTimer(), m_pulseEnd); }

    void forget() override {
        m_contacts.forget();
        m_isKnown = false;
        m_pulseEnd = kForever;
    }

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
    void tell(Time time, Outputs& outputs) {
        if (!m_contacts.areAllKnown())
            return;
        const std::size_t closed = m_contacts.closedCount();
        const bool isClosed = m_spec.needsAll ? closed == m_contacts.count() : closed > 0;
        if (m_isKnown && isClosed == m_isClosed)
            return;
        const bool isPulse = m_spec.pulse > Duration{} && isClosed && m_isKnown;
        const bool isSilent = m_spec.pulse > Duration{} && isClosed && !m_isKnown;
        m_pulseEnd = isPulse ? time + m_spec.pulse : kForever;
        m_isKnown = true;
        m_isClosed = isClosed;
        outputs.push_back({0, isClosed && !isSilent ? m_spec.closed : m_spec.open, time});
    }

    ContactSpec m_spec;
    Contacts m_contacts;
    bool m_isKnown = false;
    bool m_isClosed = false;
    Time m_pulseEnd = kForever;
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
