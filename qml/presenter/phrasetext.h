#pragma once

#include <QString>

#include "base/phrase.h"

namespace flowhand {

/// A phrase of core's in the window's language; English where that has no words for it.
[[nodiscard]] QString textOf(const Phrase& phrase);

/// The same with a capital, as a sentence begins; a name and what a file says stay as they are.
[[nodiscard]] QString sentenceOf(const Phrase& phrase);

} // namespace flowhand
