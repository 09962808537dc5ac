#pragma once

#include <string>

#include "base/phrase.h"

namespace flowhand {

/// A header's words for a person: those that the program wrote there itself; names stay as they are.

/// Of RunHeader::help.
[[nodiscard]] Phrase helpWords(const std::string& help);
/// Of RunHeader::motionSource, as MotionSources::title() makes it.
[[nodiscard]] Phrase motionWords(const std::string& motionSource);

} // namespace flowhand
