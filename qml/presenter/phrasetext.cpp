#include "presenter/phrasetext.h"

#include <QCoreApplication>

namespace flowhand {

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
    QString whole = textOf(phrase);
    if (!whole.isEmpty())
        whole[0] = whole[0].toUpper();
    return whole;
}

} // namespace flowhand
