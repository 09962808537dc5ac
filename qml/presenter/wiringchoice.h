#pragma once

#include <string>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "bench/wiringwish.h"
#include "presenter/rowmodel.h"

namespace flowhand {

/// The ways of wiring a control that have to be asked for; which of them is chosen, and what it needs to be told. GUI
/// thread.
class WiringChoice : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Bench place's presenter")
    Q_PROPERTY(flowhand::RowModel* offers READ offers CONSTANT)
    Q_PROPERTY(int chosen READ chosen WRITE choose NOTIFY changed)
    Q_PROPERTY(QString other READ other NOTIFY changed)
    Q_PROPERTY(bool needsWords READ needsWords NOTIFY changed)
    Q_PROPERTY(QString words READ words WRITE setWords NOTIFY changed)

public:
    explicit WiringChoice(QObject* parent);

    /// For another control. The aircraft must outlive it.
    void begin(SignalId signal, const Aircraft& aircraft);
    /// All that is shown once more: the language is another one.
    void tellAnew();
    /// A row of `offers`; what is beyond them is not looked at.
    Q_INVOKABLE void choose(int row);
    /// The next one (1) or the one before (-1) as the second control, in a ring.
    Q_INVOKABLE void turnOther(int by);

    [[nodiscard]] RowModel* offers() { return &m_rows; }
    [[nodiscard]] int chosen() const { return m_chosen; }
    /// The second control; empty: this way needs none.
    [[nodiscard]] QString other() const;
    [[nodiscard]] bool needsWords() const;
    /// How much one click is, or the values of the zones.
    [[nodiscard]] QString words() const { return m_words; }
    void setWords(const QString& words);
    /// As parseWiringWish() reads it.
    [[nodiscard]] std::string wish() const;

Q_SIGNALS:
    void changed();

private:
    [[nodiscard]] const WiringOffer* offer() const;

    const Aircraft* m_aircraft = nullptr;
    SignalId m_signal = kNoSignal;
    std::vector<WiringOffer> m_offers;
    RowModel m_rows;
    int m_chosen = 0;
    std::size_t m_other = 0;
    QString m_words;
};

} // namespace flowhand
