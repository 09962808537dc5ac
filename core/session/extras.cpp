#include "session/extras.h"

#include <algorithm>

#include "session/slowtime.h"

namespace flowhand {

namespace {

/// A slip that is noticed and put right at once.
constexpr Duration kPutBackTime = std::chrono::seconds(2);

} // namespace

Extras::Extras(const MovementDetector& movements, double timeScale)
    : m_movements(movements), m_putBackTime(ofHands(kPutBackTime, timeScale)) {}

const Extras::Stray* Extras::find(SignalId control) const {
    const auto found = std::find_if(m_strays.begin(), m_strays.end(), [&](const Stray& stray) {
        return stray.control == control;
    });
    return found == m_strays.end() ? nullptr : &*found;
}

void Extras::add(const ControlMovement& movement, ExtraResult extra) {
    Value home = movement.from;
    if (const Stray* stray = find(movement.control)) {
        home = stray->home;
        forget(movement.control);
    }
    m_strays.push_back({movement.control, home, movement.arrived});
    m_extras.push_back(std::move(extra));
}

bool Extras::isReturn(const ControlMovement& movement) const {
    const Stray* stray = find(movement.control);
    return stray != nullptr && m_movements.isSamePlace(movement.control, stray->home, movement.to);
}

std::optional<ExtraResult> Extras::putBack(const ControlMovement& movement) {
    const Stray* stray = find(movement.control);
    const bool isInTime = stray != nullptr && movement.arrived - stray->arrived <= m_putBackTime;
    forget(movement.control);
    const auto last = std::find_if(m_extras.rbegin(), m_extras.rend(), [&](const ExtraResult& extra) {
        return extra.signal == movement.control;
    });
    if (!isInTime || last == m_extras.rend())
        return std::nullopt;
    ExtraResult cancelled = *last;
    m_extras.erase(std::next(last).base());
    return cancelled;
}

void Extras::forget(SignalId control) {
    m_strays.erase(std::remove_if(m_strays.begin(), m_strays.end(),
                                  [&](const Stray& stray) {
                                      return stray.control == control;
                                  }),
                   m_strays.end());
}

} // namespace flowhand
