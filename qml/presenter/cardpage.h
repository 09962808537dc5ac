#pragma once

#include <QString>

#include "base/error.h"

namespace flowhand {

// A card of core/report/cards.h as Qt's rich text shows and prints it: its words and tables; its plan of the cockpit
// apart.

struct CardPage {
    QString words; ///< rich text without style, for the screen; empty: there is no card
    QString panel; ///< as SVG; empty: none
};

/// HTML of a page with what Qt's rich text wants of tables.
[[nodiscard]] QString richText(QString html);
[[nodiscard]] CardPage cardPage(const QString& html);

/// Writes the card as PDF: A4, sans serif 12 pt and headings 14 pt (CAP 676, chapter 7, second-hand). Error
/// `unwritable-file`.
[[nodiscard]] Status writeCardPdf(const QString& html, const QString& title, const QString& file);

} // namespace flowhand
