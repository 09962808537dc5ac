#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace flowhand {

/// What core says to a person, so that it can be said in another language too: an English pattern with {1} to {9} for
/// its parts, each of them a phrase itself; or words that are taken as they are (names, figures, what files and crews
/// say). A value; threads as of any value.
class Phrase {
public:
    Phrase() = default;
    /// Taken as it is in every language.
    Phrase(std::string words) : m_text(std::move(words)) {} // NOLINT(google-explicit-constructor)

    /// The same with its parts put in. What its pattern names beyond them stays as it is written.
    template <typename... Parts>
    [[nodiscard]] Phrase with(Parts&&... parts) && {
        (m_parts.emplace_back(std::forward<Parts>(parts)), ...);
        return std::move(*this);
    }

    [[nodiscard]] bool isEmpty() const { return m_text.empty(); }
    /// A pattern, to be looked up in a language's list; else words taken as they are.
    [[nodiscard]] bool isPattern() const { return m_isPattern; }
    /// The pattern or the words.
    [[nodiscard]] const std::string& text() const { return m_text; }
    [[nodiscard]] const std::vector<Phrase>& parts() const { return m_parts; }
    [[nodiscard]] std::string english() const;

    bool operator==(const Phrase&) const = default;

private:
    friend Phrase phrase(const char* pattern);
    friend Phrase phraseOf(std::string pattern, std::vector<Phrase> parts);

    std::string m_text;
    std::vector<Phrase> m_parts;
    bool m_isPattern = false;
};

/// A pattern of the program's own. Give it as a literal, or the lists of languages miss it.
[[nodiscard]] Phrase phrase(const char* pattern);

/// A phrase as it was stored.
[[nodiscard]] Phrase phraseOf(std::string pattern, std::vector<Phrase> parts);

/// `pattern` with `parts` for its {1} to {9}; a brace that names none of them stays as it is.
[[nodiscard]] std::string filledIn(std::string_view pattern, const std::vector<std::string>& parts);

/// One phrase after the other.
[[nodiscard]] Phrase operator+(Phrase first, Phrase second);

[[nodiscard]] Phrase joined(const std::vector<Phrase>& phrases, std::string_view separator);

} // namespace flowhand
