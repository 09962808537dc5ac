#include "report/markdown.h"

#include <sstream>
#include <string_view>
#include <vector>

#include "report/html.h"

namespace flowhand {

namespace {

using PictureOf = std::function<std::string(const std::string&)>;

bool startsWith(std::string_view text, std::string_view head) {
    return text.substr(0, head.size()) == head;
}

/// A number, a point and a blank: its length; 0: none.
std::size_t numberMark(std::string_view line) {
    std::size_t digits = 0;
    while (digits < line.size() && line[digits] >= '0' && line[digits] <= '9')
        ++digits;
    return digits > 0 && line.substr(digits, 2) == ". " ? digits + 2 : 0;
}

/// One line's words.
class Inline {
public:
    Inline(std::string_view text, const PictureOf& picture) : m_text(text), m_picture(picture) {}

    std::string html() {
        while (m_at < m_text.size())
            if (!span("**", "b") && !span("*", "i") && !code() && !link())
                m_html += escaped(m_text.substr(m_at++, 1));
        return m_html;
    }

private:
    [[nodiscard]] std::string_view rest() const { return m_text.substr(m_at); }

    bool span(std::string_view mark, const char* tag) {
        const std::size_t end = startsWith(rest(), mark) ? m_text.find(mark, m_at + mark.size()) : std::string::npos;
        if (end == std::string::npos || end == m_at + mark.size() || m_text[m_at + mark.size()] == ' ')
            return false;
        const std::string_view inner = m_text.substr(m_at + mark.size(), end - m_at - mark.size());
        m_html += std::string("<") + tag + ">" + Inline(inner, m_picture).html() + "</" + tag + ">";
        m_at = end + mark.size();
        return true;
    }

    bool code() {
        const std::size_t end = startsWith(rest(), "`") ? m_text.find('`', m_at + 1) : std::string::npos;
        if (end == std::string::npos)
            return false;
        m_html += "<code>" + escaped(m_text.substr(m_at + 1, end - m_at - 1)) + "</code>";
        m_at = end + 1;
        return true;
    }

    /// [words](target) or ![description](picture).
    bool link() {
        const bool isPicture = startsWith(rest(), "![");
        if (!isPicture && !startsWith(rest(), "["))
            return false;
        const std::size_t begin = m_at + (isPicture ? 2 : 1);
        const std::size_t middle = m_text.find("](", begin);
        const std::size_t end = middle == std::string::npos ? middle : m_text.find(')', middle);
        if (end == std::string::npos)
            return false;
        const std::string words = escaped(m_text.substr(begin, middle - begin));
        const std::string target(m_text.substr(middle + 2, end - middle - 2));
        if (!isPicture)
            m_html += "<a href=\"" + escaped(target) + "\">" + words + "</a>";
        else if (const std::string source = m_picture(target); !source.empty())
            m_html += "<img src=\"" + escaped(source) + "\" alt=\"" + words + "\">";
        m_at = end + 1;
        return true;
    }

    std::string_view m_text;
    const PictureOf& m_picture;
    std::size_t m_at = 0;
    std::string m_html;
};

/// Block after block.
class Page {
public:
    Page(const std::string& markdown, const PictureOf& picture) : m_picture(picture) {
        std::istringstream lines(markdown);
        for (std::string line; std::getline(lines, line);)
            m_lines.push_back(line);
    }

    std::string html() {
        while (m_at < m_lines.size()) {
            const std::string& line = m_lines[m_at];
            if (line.empty())
                ++m_at;
            else if (startsWith(line, "#"))
                heading();
            else if (startsWith(line, "```"))
                fence();
            else if (startsWith(line, "|"))
                table();
            else if (startsWith(line, "- "))
                list("ul");
            else if (numberMark(line) > 0)
                list("ol");
            else if (startsWith(line, "    "))
                block();
            else
                paragraph();
        }
        return m_html;
    }

private:
    [[nodiscard]] std::string words(std::string_view text) const { return Inline(text, m_picture).html(); }

    void heading() {
        const std::string& line = m_lines[m_at++];
        const std::size_t level = line.find_first_not_of('#');
        const std::string tag = "h" + std::to_string(level);
        m_html += "<" + tag + ">" + words(std::string_view(line).substr(level + 1)) + "</" + tag + ">\n";
    }

    void fence() {
        m_html += "<pre>";
        for (++m_at; m_at < m_lines.size() && !startsWith(m_lines[m_at], "```"); ++m_at)
            m_html += escaped(m_lines[m_at]) + "\n";
        ++m_at;
        m_html += "</pre>\n";
    }

    void block() {
        m_html += "<pre>";
        for (; m_at < m_lines.size() && startsWith(m_lines[m_at], "    "); ++m_at)
            m_html += escaped(m_lines[m_at].substr(4)) + "\n";
        m_html += "</pre>\n";
    }

    void list(const char* tag) {
        m_html += std::string("<") + tag + ">\n";
        const auto mark = [&](const std::string& line) {
            return tag[0] == 'o' ? numberMark(line) : startsWith(line, "- ") ? std::size_t(2) : std::size_t(0);
        };
        for (; m_at < m_lines.size() && mark(m_lines[m_at]) > 0; ++m_at)
            m_html += "<li>" + words(std::string_view(m_lines[m_at]).substr(mark(m_lines[m_at]))) + "</li>\n";
        m_html += std::string("</") + tag + ">\n";
    }

    void row(const std::string& line, const char* tag) {
        m_html += "<tr>";
        for (std::size_t at = 1; at < line.size();) {
            const std::size_t end = std::min(line.find('|', at), line.size());
            const std::string_view cell = std::string_view(line).substr(at, end - at);
            const std::size_t first = cell.find_first_not_of(' ');
            const std::size_t last = cell.find_last_not_of(' ');
            m_html += std::string("<") + tag + ">" +
                      (first == std::string_view::npos ? std::string() : words(cell.substr(first, last - first + 1))) +
                      "</" + tag + ">";
            at = end + 1;
        }
        m_html += "</tr>\n";
    }

    /// Its second line only parts the head from the rest.
    void table() {
        m_html += "<table><thead>";
        row(m_lines[m_at], "th");
        m_html += "</thead><tbody>\n";
        for (m_at += 2; m_at < m_lines.size() && startsWith(m_lines[m_at], "|"); ++m_at)
            row(m_lines[m_at], "td");
        m_html += "</tbody></table>\n";
    }

    void paragraph() { m_html += "<p>" + words(m_lines[m_at++]) + "</p>\n"; }

    const PictureOf& m_picture;
    std::vector<std::string> m_lines;
    std::size_t m_at = 0;
    std::string m_html;
};

} // namespace

std::string markdownHtml(const std::string& markdown, const PictureOf& picture) {
    return Page(markdown, picture).html();
}

} // namespace flowhand
