#include "presenter/phrasetext.h"

#include <QCoreApplication>

namespace flowhand {

namespace {

bool beginsWithOwnWords(const Phrase& phrase) {
    const std::string& text = phrase.text();
    const bool isPart = text.size() > 2 && text[0] == '{' && text[2] == '}';
    const std::size_t part = isPart ? static_cast<std::size_t>(text[1] - '1') : 0;
    return phrase.isPattern() &&
           (!isPart || (part < phrase.parts().size() && beginsWithOwnWords(phrase.parts()[part])));
}

} // namespace

QString textOf(const Phrase& phrase) {
    if (!phrase.isPattern())
        return QString::fromStdString(phrase.text());
    std::vector<std::string> parts;
    for (const Phrase& part : phrase.parts())
        parts.push_back(textOf(part).toStdString());
    // The pattern is its own id in core's list.
    const QString pattern = QCoreApplication::translate(nullptr, phrase.text().c_str());
    return QString::fromStdString(filledIn(pattern.toStdString(), parts));
}

QString sentenceOf(const Phrase& phrase) {
    QString words = textOf(phrase);
    if (beginsWithOwnWords(phrase) && !words.isEmpty())
        words[0] = words[0].toUpper();
    return words;
}

} // namespace flowhand
