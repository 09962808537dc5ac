#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "base/phrase.h"

namespace flowhand {

/// A phrase as records keep it, in no language: words taken as they are as a string, a pattern as an array of it and
/// its parts, each of them a phrase. Records of before there were other languages have strings only.
[[nodiscard]] nlohmann::ordered_json phraseJson(const Phrase& phrase);

/// Throws an exception of nlohmann's where it is no phrase, has more parts than a pattern can name, or could grow
/// beyond all measure when its parts are put in; whoever reads the record names the damage.
[[nodiscard]] Phrase phraseFrom(const nlohmann::ordered_json& json);

/// The same in a column of plain text: words as they are, a pattern as JSON.
[[nodiscard]] std::string phraseText(const Phrase& phrase);
/// What is not the JSON of a pattern is words.
[[nodiscard]] Phrase phraseOfText(const std::string& text);

} // namespace flowhand
