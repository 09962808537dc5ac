// One contact. Raw is what the device says, state what is passed on.
//
//   #  now      event                          state          then
//   1  unknown  any reading                    = raw          quiet
//   2  quiet    raw = state                    -              quiet
//   3  quiet    raw != state                   = raw, at once deaf for the debounce time
//   4  deaf     any reading                    -              deaf, raw remembered
//   5  deaf     time is over, raw = state      -              quiet
//   6  deaf     time is over, raw != state     = raw          deaf for the debounce time
//
// So a pulse shorter than the debounce time is not lost, only lengthened to it.
#include "rig/contacts.h"

#include <algorithm>

namespace flowhand {

bool Contacts::take(std::size_t slot, bool isClosed, Time time) {
    Contact& contact = m_contacts[slot];
    contact.isRawClosed = isClosed;
    if (!contact.isKnown) {
        contact.isKnown = true;
        contact.isClosed = isClosed;
        return true;
    }
    if (contact.deafUntil != kForever || contact.isClosed == isClosed)
        return false;
    contact.isClosed = isClosed;
    contact.deafUntil = m_debounce > Duration{} ? time + m_debounce : kForever;
    return true;
}

bool Contacts::advance(Time time) {
    bool hasChanged = false;
    for (Contact& contact : m_contacts) {
        if (contact.deafUntil > time)
            continue;
        const bool isOther = contact.isClosed != contact.isRawClosed;
        contact.isClosed = contact.isRawClosed;
        contact.deafUntil = isOther ? time + m_debounce : kForever;
        hasChanged |= isOther;
    }
    return hasChanged;
}

Time Contacts::nextTimer() const {
    Time next = kForever;
    for (const Contact& contact : m_contacts)
        next = std::min(next, contact.deafUntil);
    return next;
}

void Contacts::forget() {
    std::fill(m_contacts.begin(), m_contacts.end(), Contact{});
}

bool Contacts::areAllKnown() const {
    return std::all_of(m_contacts.begin(), m_contacts.end(), [](const Contact& contact) {
        return contact.isKnown;
    });
}

std::size_t Contacts::closedCount() const {
    return static_cast<std::size_t>(std::count_if(m_contacts.begin(), m_contacts.end(), [](const Contact& contact) {
        return contact.isClosed;
    }));
}

} // namespace flowhand
