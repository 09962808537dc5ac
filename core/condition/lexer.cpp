#include "condition/lexer.h"

#include <algorithm>
#include <array>

#include "base/unit.h"

namespace flowhand {

namespace {

constexpr std::array<std::string_view, 5> kKeywords = {"and", "or", "not", "true", "false"};
/// Longest first, so that `<=` is not read as `<`.
constexpr std::array<std::string_view, 15> kSymbols = {"<=", ">=", "==", "!=", "..", "<", ">", "+",
                                                       "-",  "*",  "/",  "(",  ")",  ",", "."};

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
}
bool isWordPart(char c) {
    return isLetter(c) || isDigit(c);
}
bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

class Lexer {
public:
    Lexer(std::string_view text, std::vector<ConditionProblem>& problems) : m_text(text), m_problems(problems) {}

    std::vector<Token> run() {
        while (m_at < m_text.size()) {
            if (isSpace(m_text[m_at]))
                ++m_at;
            else if (!next())
                return {};
        }
        m_tokens.push_back({Token::Kind::End, "", "", m_text.size(), m_text.size()});
        return std::move(m_tokens);
    }

private:
    bool next() {
        const char c = m_text[m_at];
        if (isDigit(c)) {
            number();
            return true;
        }
        if (isLetter(c)) {
            const std::size_t end = wordEnd(m_at);
            push(Token::Kind::Word, m_at, end);
            return true;
        }
        if (c == '\'' || c == '"')
            return quoted(c);
        for (const std::string_view symbol : kSymbols) {
            if (m_text.substr(m_at, symbol.size()) == symbol) {
                push(Token::Kind::Symbol, m_at, m_at + symbol.size());
                return true;
            }
        }
        m_problems.push_back({m_at, "syntax", unexpected(c), false});
        return false;
    }

    static std::string unexpected(char c) {
        if (c == '=')
            return "a single '=' means nothing here; write '==' to compare";
        if (c == '%')
            return "'%' must follow a number, as in '2 %'";
        if (c == '&' || c == '|' || c == '!')
            return std::string("'") + c + "' means nothing here; write 'and', 'or' or 'not'";
        const bool isPlain = c > ' ' && c <= '~';
        return (isPlain ? std::string("'") + c + "'" : std::string("this character")) +
               " has no meaning in a condition; take it out, or put a position's name in quotes";
    }

    std::size_t wordEnd(std::size_t at) const {
        while (at < m_text.size() && isWordPart(m_text[at]))
            ++at;
        return at;
    }

    void push(Token::Kind kind, std::size_t begin, std::size_t end) {
        m_tokens.push_back({kind, std::string(m_text.substr(begin, end - begin)), "", begin, end});
        m_at = end;
    }

    void number() {
        const std::size_t begin = m_at;
        std::size_t end = begin;
        const auto digits = [&] {
            while (end < m_text.size() && isDigit(m_text[end]))
                ++end;
        };
        digits();
        if (end + 1 < m_text.size() && m_text[end] == '.' && isDigit(m_text[end + 1])) {
            ++end;
            digits();
        }
        push(Token::Kind::Number, begin, end);
        std::size_t at = end;
        while (at < m_text.size() && isSpace(m_text[at]))
            ++at;
        const std::string_view symbol = unitAt(at);
        if (!symbol.empty()) {
            m_tokens.back().unit = symbol;
            m_tokens.back().end = m_at = at + symbol.size();
        }
    }

    /// The longest unit that stands at `at` as a word of its own. `ft/min (` is a length over the function `min`.
    std::string_view unitAt(std::size_t at) const {
        static const std::vector<std::string> symbols = unitSymbols();
        std::string_view longest;
        for (const std::string& symbol : symbols) {
            const std::size_t end = at + symbol.size();
            if (symbol.size() <= longest.size() || m_text.substr(at, symbol.size()) != symbol)
                continue;
            if (end < m_text.size() && symbol != "%" && (isWordPart(m_text[end]) || m_text[end] == '('))
                continue;
            longest = m_text.substr(at, symbol.size());
        }
        return longest;
    }

    bool quoted(char quote) {
        const std::size_t close = m_text.find(quote, m_at + 1);
        if (close == std::string_view::npos) {
            m_problems.push_back(
                {m_at, "syntax", "this quote is never closed; end it with another " + std::string(1, quote), false});
            return false;
        }
        m_tokens.push_back(
            {Token::Kind::Quoted, std::string(m_text.substr(m_at + 1, close - m_at - 1)), "", m_at, close + 1});
        m_at = close + 1;
        return true;
    }

    std::string_view m_text;
    std::vector<ConditionProblem>& m_problems;
    std::size_t m_at = 0;
    std::vector<Token> m_tokens;
};

} // namespace

std::vector<Token> tokensOf(std::string_view text, std::vector<ConditionProblem>& problems) {
    if (text.size() > kLongestCondition) {
        problems.push_back({kLongestCondition, "too-long",
                            "a condition may have at most " + std::to_string(kLongestCondition) +
                                " characters; split it into several steps or guards",
                            false});
        return {};
    }
    return Lexer(text, problems).run();
}

std::vector<std::string> wordsOf(std::string_view text) {
    std::vector<ConditionProblem> ignored;
    std::vector<std::string> words;
    for (const Token& token : tokensOf(text, ignored))
        if (token.kind != Token::Kind::Symbol && token.kind != Token::Kind::End && !isKeyword(token.text) &&
            std::find(words.begin(), words.end(), token.text) == words.end())
            words.push_back(token.text);
    return words;
}

bool isKeyword(std::string_view word) {
    return std::find(kKeywords.begin(), kKeywords.end(), word) != kKeywords.end();
}

} // namespace flowhand
