#pragma once

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "rig/contacts.h"
#include "rig/control.h"

namespace flowhand {

/// A control all of whose inputs are contacts: debounces them and keeps one timer. What they mean is the subclass's.
class ContactsControl : public Control {
public:
    void take(std::size_t slot, std::int64_t meaning, Time time, Outputs& outputs) final {
        if (m_contacts.take(slot, meaning != 0, time))
            tell(time, outputs);
    }
    void advance(Time time, Outputs& outputs) final {
        if (m_contacts.advance(time))
            tell(time, outputs);
        if (m_timer > time)
            return;
        m_timer = kForever;
        timeUp(time, outputs);
    }
    [[nodiscard]] Time nextTimer() const final { return std::min(m_contacts.nextTimer(), m_timer); }
    void forget() override {
        m_contacts.forget();
        m_isKnown = false;
        m_timer = kForever;
        m_fault = {};
    }
    [[nodiscard]] Phrase fault() const final { return m_fault; }

protected:
    ContactsControl(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, Duration debounce)
        : Control(std::move(name), std::move(signals), std::move(inputs)), m_contacts(this->inputs().size(), debounce) {
    }

    /// All contacts are known and one has changed, or they are known for the first time since the device came.
    virtual void changed(bool isFirst, Time time, Outputs& outputs) = 0;
    virtual void timeUp(Time /*time*/, Outputs& /*outputs*/) {}

    [[nodiscard]] const Contacts& contacts() const { return m_contacts; }
    void setTimer(Time time) { m_timer = time; }
    void setFault(Phrase fault) { m_fault = std::move(fault); }
    /// "button 1, button 2": the closed ones.
    [[nodiscard]] std::string closedNames() const {
        std::string names;
        for (std::size_t slot = 0; slot < m_contacts.count(); ++slot)
            if (m_contacts.isClosed(slot))
                names += (names.empty() ? "" : ", ") + inputs()[slot].name;
        return names;
    }

private:
    void tell(Time time, Outputs& outputs) {
        if (!m_contacts.areAllKnown())
            return;
        const bool isFirst = !std::exchange(m_isKnown, true);
        changed(isFirst, time, outputs);
    }

    Contacts m_contacts;
    bool m_isKnown = false;
    Time m_timer = kForever;
    Phrase m_fault;
};

/// How far apart the moves of a scripted hand are that presses and turns: longer than any debounce by default.
inline constexpr Duration kPressTime = std::chrono::milliseconds(50);

} // namespace flowhand
