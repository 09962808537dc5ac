#include "report/texttable.h"

#include <algorithm>

namespace flowhand {

namespace {

bool isFirstByte(char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
}

/// The bytes of the first `width` characters.
std::size_t bytesOf(std::string_view text, std::size_t width) {
    std::size_t at = 0;
    while (at < text.size() && (width > 0 || !isFirstByte(text[at])))
        width -= isFirstByte(text[at++]) ? 1 : 0;
    return at;
}

void putRow(std::string& text, const std::vector<std::string>& cells, const std::vector<TextColumn>& columns,
            const std::vector<std::size_t>& widths, std::string_view indent) {
    std::vector<std::vector<std::string>> lines;
    std::size_t height = 1;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        lines.push_back(wrapped(cells[i], widths[i]));
        height = std::max(height, lines.back().size());
    }
    for (std::size_t n = 0; n < height; ++n) {
        std::string line(indent);
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const std::string cell = n < lines[i].size() ? lines[i][n] : std::string();
            const std::string blanks(widths[i] - textWidth(cell), ' ');
            line += i == 0 ? "" : "  ";
            line += columns[i].isNumber ? blanks + cell : cell + blanks;
        }
        line.erase(line.find_last_not_of(' ') + 1);
        text += line + "\n";
    }
}

} // namespace

std::size_t textWidth(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), isFirstByte));
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
    std::vector<std::string> lines;
    width = std::max<std::size_t>(width, 1);
    while (textWidth(text) > width) {
        std::size_t end = bytesOf(text, width);
        std::size_t next = end;
        if (text[end] == ' ') {
            ++next;
        } else if (const std::size_t blank = text.rfind(' ', end); blank != std::string_view::npos && blank > 0) {
            end = blank;
            next = blank + 1;
        }
        lines.emplace_back(text.substr(0, end));
        text.remove_prefix(next);
    }
    lines.emplace_back(text);
    return lines;
}

std::string textTable(const std::vector<TextColumn>& columns, const std::vector<std::vector<std::string>>& rows,
                      std::string_view indent) {
    std::vector<std::size_t> widths;
    std::vector<std::string> titles;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        std::size_t width = textWidth(columns[i].title);
        for (const std::vector<std::string>& row : rows)
            width = std::max(width, std::min(textWidth(row[i]), columns[i].widest));
        widths.push_back(width);
        titles.push_back(columns[i].title);
    }
    std::string text;
    putRow(text, titles, columns, widths, indent);
    for (const std::vector<std::string>& row : rows)
        putRow(text, row, columns, widths, indent);
    return text;
}

} // namespace flowhand
