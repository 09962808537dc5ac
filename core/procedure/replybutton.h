#pragma once

#include <optional>

#include "procedure/aircraftfile.h"

namespace flowhand {

/// The control that replies are given with; nothing where the aircraft has none.
[[nodiscard]] inline std::optional<SignalId> replyButton(const Aircraft& aircraft) {
    const std::optional<SignalId> button = aircraft.signals.find("reply_button");
    return button && aircraft.isControl(*button) ? button : std::nullopt;
}

} // namespace flowhand
