#pragma once

#include <memory>
#include <vector>

#include <QObject>
#include <QTranslator>

namespace flowhand {

class Settings;

/// A language that nobody speaks: every text a third longer, with marks on its letters and brackets round it. What is
/// clipped in it would be clipped in some real language; what stands there plainly is not translated at all.
class PseudoTranslator final : public QTranslator {
public:
    using QTranslator::QTranslator;
    [[nodiscard]] QString translate(const char* context, const char* source, const char* disambiguation,
                                    int number) const override;
    [[nodiscard]] bool isEmpty() const override { return false; }
};

/// The language of the window, as the settings have it. What flows and aircraft say in their files stays as it is
/// written. GUI thread; the application must be there.
class Language : public QObject {
    Q_OBJECT

public:
    /// `settings` must outlive it. Takes its translations along when it goes.
    explicit Language(Settings& settings, QObject* parent = nullptr);
    ~Language() override;

Q_SIGNALS:
    /// Texts are to be asked for anew.
    void changed();

private:
    void follow();
    void remove();

    Settings& m_settings;
    QString m_shown; ///< as in the settings
    std::vector<std::unique_ptr<QTranslator>> m_translators;
};

} // namespace flowhand
