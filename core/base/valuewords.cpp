#include "base/valuewords.h"

namespace flowhand {

Phrase valueWords(const Signal& signal, Value value) {
    if (!value.isKnown())
        return phrase("not known yet");
    if (signal.kind == SignalKind::OnOff)
        return value.isOn() ? phrase("on") : phrase("off");
    const bool isBetween = signal.kind == SignalKind::Position &&
                           (value.position() < 0 || value.position() >= static_cast<int>(signal.positions.size()));
    return isBetween ? phrase("between") : Phrase(valueText(signal, value));
}

std::vector<std::string> englishOf(const std::vector<Phrase>& phrases) {
    std::vector<std::string> all;
    for (const Phrase& one : phrases)
        all.push_back(one.english());
    return all;
}

} // namespace flowhand
