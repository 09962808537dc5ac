#include "base/phrase.h"

namespace flowhand {

std::string filledIn(std::string_view pattern, const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t at = 0; at < pattern.size(); ++at) {
        const bool isPlace = pattern[at] == '{' && at + 2 < pattern.size() && pattern[at + 2] == '}' &&
                             pattern[at + 1] >= '1' && pattern[at + 1] <= '9';
        const std::size_t part = isPlace ? static_cast<std::size_t>(pattern[at + 1] - '1') : parts.size();
        if (part >= parts.size()) {
            text += pattern[at];
            continue;
        }
        text += parts[part];
        at += 2;
    }
    return text;
}

std::string Phrase::english() const {
    if (!m_isPattern)
        return m_text;
    std::vector<std::string> parts;
    for (const Phrase& part : m_parts)
        parts.push_back(part.english());
    return filledIn(m_text, parts);
}

Phrase phrase(const char* pattern) {
    return phraseOf(pattern, {});
}

Phrase phraseOf(std::string pattern, std::vector<Phrase> parts) {
    Phrase whole(std::move(pattern));
    whole.m_parts = std::move(parts);
    whole.m_isPattern = true;
    return whole;
}

Phrase operator+(Phrase first, Phrase second) {
    if (first.isEmpty() || second.isEmpty())
        return first.isEmpty() ? second : first;
    return phraseOf("{1}{2}", {std::move(first), std::move(second)});
}

Phrase joined(const std::vector<Phrase>& phrases, std::string_view separator) {
    // In halves, so that a long list is not as deep as it is long.
    const auto join = [&](const auto& self, std::size_t from, std::size_t to) -> Phrase {
        if (to - from < 2)
            return from < to ? phrases[from] : Phrase();
        const std::size_t middle = from + (to - from) / 2;
        Phrase first = self(self, from, middle);
        Phrase second = self(self, middle, to);
        if (first.isEmpty())
            return second;
        return phraseOf("{1}{2}{3}", {std::move(first), std::string(separator), std::move(second)});
    };
    return join(join, 0, phrases.size());
}

} // namespace flowhand
