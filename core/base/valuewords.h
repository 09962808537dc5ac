#pragma once

#include "base/phrase.h"
#include "base/signal.h"

namespace flowhand {

/// valueText() for a person, whose language may have other words for on and off.
[[nodiscard]] Phrase valueWords(const Signal& signal, Value value);

[[nodiscard]] std::vector<std::string> englishOf(const std::vector<Phrase>& phrases);

} // namespace flowhand
