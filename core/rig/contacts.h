#pragma once

#include <cstdint>
#include <vector>

#include "base/time.h"

namespace flowhand {

/// Longer than the longest bounce of 18 measured switches, 6.2 ms (mean 1.6 ms; J. Ganssle, A Guide to Debouncing).
inline constexpr Duration kDebounce = std::chrono::milliseconds(10);

/// The contacts of one control, each freed of its bounce. The first edge passes at once, so that a verdict comes
/// without delay; then the contact is deaf for the debounce time.
class Contacts {
public:
    Contacts(std::size_t count, Duration debounce) : m_contacts(count), m_debounce(debounce) {}

    /// True when the state that isClosed() tells has changed, or is known for the first time.
    [[nodiscard]] bool take(std::size_t slot, bool isClosed, Time time);
    /// Serves the end of deaf times up to `time`; true as for take().
    [[nodiscard]] bool advance(Time time);
    [[nodiscard]] Time nextTimer() const;
    void forget();

    [[nodiscard]] bool areAllKnown() const;
    /// Only of a known contact.
    [[nodiscard]] bool isClosed(std::size_t slot) const { return m_contacts[slot].isClosed; }
    [[nodiscard]] bool isKnown(std::size_t slot) const { return m_contacts[slot].isKnown; }
    [[nodiscard]] std::size_t count() const { return m_contacts.size(); }
    [[nodiscard]] std::size_t closedCount() const;

private:
    struct Contact {
        bool isKnown = false;
        bool isClosed = false;
        bool isRawClosed = false;
        Time deafUntil = kForever; ///< kForever: quiet
    };

    std::vector<Contact> m_contacts;
    Duration m_debounce;
};

} // namespace flowhand
