#include "procedure/conditionwords.h"

#include <array>
#include <cctype>
#include <utility>

namespace flowhand {

namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 6> kSigns{
    {{"<=", "at most"}, {">=", "at least"}, {"==", "at"}, {"!=", "not at"}, {"<", "below"}, {">", "above"}}};

bool isOfWord(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '.';
}

/// In the middle of a sentence: "airspeed", but "V1".
std::string inSentence(std::string label) {
    const bool isAbbreviation = label.size() > 1 && std::islower(static_cast<unsigned char>(label[1])) == 0;
    if (!label.empty() && !isAbbreviation)
        label.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(label.front())));
    return label;
}

std::string wordFor(const std::string& name, const Aircraft& aircraft) {
    if (const std::optional<SignalId> id = aircraft.signals.find(name))
        return inSentence(aircraft.signals[*id].label);
    constexpr std::string_view kPrefix = "aircraft.";
    if (name.rfind(kPrefix, 0) != 0)
        return name;
    const auto value = aircraft.values.find(name.substr(kPrefix.size()));
    if (value == aircraft.values.end())
        return name;
    const AircraftValue& found = value->second;
    return found.isWord ? found.word
                        : numberText(found.number) + (found.unit.symbol.empty() ? "" : " ") + found.unit.symbol;
}

} // namespace

std::string conditionWords(const std::string& text, const Aircraft& aircraft) {
    std::string words;
    for (std::size_t i = 0; i < text.size();) {
        std::size_t end = i;
        while (end < text.size() && isOfWord(text[end]))
            ++end;
        if (end > i) {
            words += wordFor(text.substr(i, end - i), aircraft);
            i = end;
            continue;
        }
        std::string_view sign;
        for (const auto& [written, read] : kSigns)
            if (sign.empty() && text.compare(i, written.size(), written) == 0) {
                words += read;
                sign = written;
            }
        if (sign.empty() && text[i] != '\'')
            words += text[i];
        i += sign.empty() ? 1 : sign.size();
    }
    return words;
}

} // namespace flowhand
