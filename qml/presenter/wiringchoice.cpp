#include "presenter/wiringchoice.h"

#include "presenter/benchrows.h"
#include "presenter/phrasetext.h"

namespace flowhand {

WiringChoice::WiringChoice(QObject* parent) : QObject(parent), m_rows(OfferRow::staticMetaObject, this) {}

void WiringChoice::begin(SignalId signal, const Aircraft& aircraft) {
    m_aircraft = &aircraft;
    m_signal = signal;
    m_offers = wiringOffers(signal, aircraft);
    tellAnew();
    m_chosen = -1;
    choose(0);
}

void WiringChoice::tellAnew() {
    std::vector<OfferRow> rows;
    for (const WiringOffer& offer : m_offers)
        rows.push_back({static_cast<int>(rows.size()), textOf(offer.text)});
    m_rows.setRows(rows);
}

void WiringChoice::choose(int row) {
    if (row == m_chosen || row < 0 || row >= m_rows.count())
        return;
    m_chosen = row;
    m_other = 0;
    m_words = QString::fromStdString(offer()->example);
    Q_EMIT changed();
}

void WiringChoice::turnOther(int by) {
    if (offer() == nullptr || offer()->others.empty())
        return;
    const std::size_t count = offer()->others.size();
    m_other = (m_other + (by > 0 ? 1 : count - 1)) % count;
    Q_EMIT changed();
}

QString WiringChoice::other() const {
    if (offer() == nullptr || offer()->others.empty())
        return {};
    return QString::fromStdString(m_aircraft->signals[offer()->others[m_other]].label);
}

bool WiringChoice::needsWords() const {
    return offer() != nullptr && !offer()->example.empty();
}

void WiringChoice::setWords(const QString& words) {
    if (words == m_words)
        return;
    m_words = words;
    Q_EMIT changed();
}

std::string WiringChoice::wish() const {
    if (offer() == nullptr)
        return {};
    const SignalId other = offer()->others.empty() ? kNoSignal : offer()->others[m_other];
    return wishText(*offer(), m_signal, other, m_words.toStdString(), m_aircraft->signals);
}

const WiringOffer* WiringChoice::offer() const {
    return m_chosen >= 0 && m_chosen < static_cast<int>(m_offers.size()) ? &m_offers[static_cast<std::size_t>(m_chosen)]
                                                                         : nullptr;
}

} // namespace flowhand
