#include "report/html.h"

#include <cstdio>

namespace flowhand {

const char* const kPageStyle = R"(
@page { size: A4; margin: 14mm; }
* { box-sizing: border-box; }
body { font: 11pt/1.4 "Noto Sans", "DejaVu Sans", sans-serif; color: #111; background: #fff; max-width: 190mm; margin: 8mm auto; padding: 0 4mm; }
h1 { font-size: 18pt; margin: 0 0 1mm; } h2 { font-size: 13pt; margin: 6mm 0 2mm; }
p { margin: 1.5mm 0; } ul { margin: 1mm 0 1mm 6mm; padding: 0; }
table { border-collapse: collapse; width: 100%; } thead { display: table-header-group; }
th { text-align: left; font-size: 10pt; border-bottom: 0.6mm solid #111; padding: 1mm 1.5mm; }
td { vertical-align: top; border-bottom: 0.2mm solid #999; padding: 1.5mm; font-size: 10pt; }
tr { break-inside: avoid; }
.note { border: 0.5mm solid #111; padding: 2mm 3mm; margin: 3mm 0; font-weight: 600; }
.facts td { border: 0; padding: 0.3mm 3mm 0.3mm 0; } .facts { width: auto; }
.small { font-size: 9pt; color: #333; } .no { font-weight: 700; } .nowrap { white-space: nowrap; }
svg { display: block; } .sign { margin-top: 8mm; display: flex; gap: 8mm; } .sign div { flex: 1; border-top: 0.3mm solid #111; padding-top: 1mm; font-size: 9pt; }
@media print { body { margin: 0; padding: 0; max-width: none; } }
)";

std::string escaped(std::string_view text) {
    std::string html;
    for (const char c : text) {
        switch (c) {
        case '&':
            html += "&amp;";
            break;
        case '<':
            html += "&lt;";
            break;
        case '>':
            html += "&gt;";
            break;
        case '"':
            html += "&quot;";
            break;
        default:
            html += c;
        }
    }
    return html;
}

std::string fixed(double number) {
    char text[32];
    std::snprintf(text, sizeof text, "%.1f", number);
    return text;
}

} // namespace flowhand
