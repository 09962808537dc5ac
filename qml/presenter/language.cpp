#include "presenter/language.h"

#include <algorithm>

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>

#include "presenter/settings.h"

namespace flowhand {

namespace {

/// Letters that stay readable with their marks, one for each of a to z and A to Z.
const QString kSmall = QStringLiteral("ábçđéƒĝĥíĵķĺmñóþqŕšţúvŵxýž");
const QString kLarge = QStringLiteral("ÁBÇĐÉFĜĤÍĴĶĹMÑÓÞQŔŠŢÚVŴXÝŽ");

QChar marked(QChar letter) {
    if (letter >= QLatin1Char('a') && letter <= QLatin1Char('z'))
        return kSmall[letter.unicode() - 'a'];
    if (letter >= QLatin1Char('A') && letter <= QLatin1Char('Z'))
        return kLarge[letter.unicode() - 'A'];
    return letter;
}

/// One or two letters, such as a key's name, have no longer form in any language.
constexpr qsizetype kNameOfKey = 2;
/// And no more has a figure with its unit: "%1 kt".
constexpr qsizetype kFigure = 5;

QString codeOf(const QString& setting) {
    return setting == QStringLiteral("system") ? QLocale::system().name().left(2) : setting;
}

} // namespace

QString PseudoTranslator::translate(const char* /*context*/, const char* source, const char* /*disambiguation*/,
                                    int /*number*/) const {
    const QString text = QString::fromUtf8(source);
    if (std::none_of(text.begin(), text.end(), [](QChar letter) {
            return letter.isLetter();
        }))
        return text;
    if (text.size() <= kNameOfKey || (text.size() <= kFigure && text.contains(QLatin1Char('%'))))
        return text;
    QString out = QStringLiteral("[");
    for (const QChar letter : text)
        out += out.endsWith(QLatin1Char('%')) ? letter : marked(letter);
    return out + QString((text.size() + 2) / 3, QLatin1Char('~')) + QLatin1Char(']');
}

Language::Language(Settings& settings, QObject* parent) : QObject(parent), m_settings(settings) {
    follow();
    connect(&m_settings, &Settings::changed, this, &Language::follow);
}

Language::~Language() {
    remove();
}

void Language::remove() {
    for (const std::unique_ptr<QTranslator>& translator : m_translators)
        QCoreApplication::removeTranslator(translator.get());
    m_translators.clear();
}

void Language::follow() {
    if (m_settings.language() == m_shown)
        return;
    m_shown = m_settings.language();
    remove();
    const QString code = codeOf(m_shown);
    const auto install = [this](std::unique_ptr<QTranslator> translator) {
        QCoreApplication::installTranslator(translator.get());
        m_translators.push_back(std::move(translator));
    };
    if (code == QStringLiteral("pseudo"))
        install(std::make_unique<PseudoTranslator>());
    // Qt's own words, such as the names of keys, where they are installed; ours over them.
    auto qt = std::make_unique<QTranslator>();
    if (qt->load(QStringLiteral("qtbase_") + code, QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
        install(std::move(qt));
    for (const char* part : {"core", "flowhand"}) {
        auto own = std::make_unique<QTranslator>();
        if (own->load(QStringLiteral(":/language/%1_%2.qm").arg(QLatin1String(part), code)))
            install(std::move(own));
    }
    Q_EMIT changed();
}

} // namespace flowhand
