#pragma once

#include <optional>

#include <QDBusConnection>
#include <QList>
#include <QRect>
#include <QString>

#include "desktop.h"

namespace flowhand::test {

/// Something that a window shows, as it tells those who cannot see it.
struct Shown {
    QString role; ///< "push button", "label"
    QString name;
    QString description;
    QRect place; ///< on the screen
    bool hasFocus = false;
};

/// Reads what a desktop's programs show through the accessibility bus (AT-SPI 2, as screen readers do).
class ScreenReader {
public:
    /// Empty, or why there is no such bus. Programs that are started on the desktop afterwards talk to it.
    [[nodiscard]] QString start(Desktop& desktop);

    /// All that is on the screen now, from the outside in.
    [[nodiscard]] QList<Shown> look() const;
    /// The first that is called so, exactly; none: it is not there now.
    [[nodiscard]] std::optional<Shown> named(const QString& name) const;
    /// The first whose name begins so.
    [[nodiscard]] std::optional<Shown> beginning(const QString& name) const;

private:
    QDBusConnection m_bus{QString()};
};

} // namespace flowhand::test
