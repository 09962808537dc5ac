#include "condition/parser.h"

#include <utility>

#include "base/names.h"
#include "base/unit.h"
#include "condition/lexer.h"

namespace flowhand {

namespace {

using Kind = Syntax::Kind;

constexpr std::pair<std::string_view, Comparator> kComparators[] = {
    {"<", Comparator::Less},          {"<=", Comparator::LessEqual}, {">", Comparator::Greater},
    {">=", Comparator::GreaterEqual}, {"==", Comparator::Equal},     {"!=", Comparator::NotEqual},
};

/// Recursive descent over the tokens. After the first error every rule returns at once.
class Parser {
public:
    Parser(std::vector<Token> tokens, std::vector<ConditionProblem>& problems)
        : m_tokens(std::move(tokens)), m_problems(problems) {}

    std::optional<Syntax> run() {
        Syntax tree = disjunction();
        if (!m_hasFailed && now().kind != Token::Kind::End)
            fail(now(), leftOver());
        return m_hasFailed ? std::nullopt : std::optional(std::move(tree));
    }

private:
    const Token& now() const { return m_tokens[m_at]; }
    bool isAt(Token::Kind kind, std::string_view text) const { return now().kind == kind && now().text == text; }
    bool isSymbol(std::string_view text) const { return isAt(Token::Kind::Symbol, text); }

    const Token& take() { return m_tokens[m_at + 1 < m_tokens.size() ? m_at++ : m_at]; }
    bool takeIf(Token::Kind kind, std::string_view text) { return isAt(kind, text) && (take(), true); }
    void expect(std::string_view symbol, const std::string& why) {
        if (!takeIf(Token::Kind::Symbol, symbol))
            fail(now(), "expected '" + std::string(symbol) + "' " + why + ", found " + described(now()));
    }

    static std::string described(const Token& token) {
        return token.kind == Token::Kind::End ? "the end of the condition" : "'" + token.text + "'";
    }

    Syntax fail(const Token& token, std::string message, std::string code = "syntax") {
        if (!m_hasFailed)
            m_problems.push_back({token.begin, std::move(code), std::move(message), false});
        m_hasFailed = true;
        return {};
    }

    std::string leftOver() const {
        for (const auto& [symbol, comparator] : kComparators)
            if (isSymbol(symbol))
                return "comparisons cannot be chained; write 'a < b and b < c'";
        if (m_at > 0 && m_tokens[m_at - 1].kind == Token::Kind::Number && now().kind == Token::Kind::Word)
            return "'" + now().text + "' is not a unit; known are " + joined(unitSymbols(), ", ");
        return "expected 'and', 'or' or the end of the condition, found " + described(now());
    }

    template <class Rule>
    Syntax deeper(Rule rule) {
        if (m_depth >= kDeepestNesting)
            return fail(now(), "nested more than " + std::to_string(kDeepestNesting) + " deep; split the condition",
                        "too-deep");
        ++m_depth;
        Syntax tree = rule();
        --m_depth;
        return tree;
    }

    static Syntax node(Kind kind, std::size_t begin, std::size_t end, std::vector<Syntax> children) {
        Syntax tree;
        tree.kind = kind;
        tree.begin = begin;
        tree.end = end;
        tree.children = std::move(children);
        return tree;
    }

    Syntax chain(Kind kind, std::string_view word, Syntax (Parser::*operand)()) {
        Syntax first = (this->*operand)();
        if (m_hasFailed || !isAt(Token::Kind::Word, word))
            return first;
        const std::size_t begin = first.begin;
        Syntax tree = node(kind, begin, first.end, {});
        tree.children.push_back(std::move(first));
        while (!m_hasFailed && takeIf(Token::Kind::Word, word))
            tree.children.push_back((this->*operand)());
        tree.end = tree.children.back().end;
        return tree;
    }

    Syntax disjunction() { return chain(Kind::Or, "or", &Parser::conjunction); }
    Syntax conjunction() { return chain(Kind::And, "and", &Parser::negation); }

    Syntax negation() {
        if (!isAt(Token::Kind::Word, "not"))
            return comparison();
        const std::size_t begin = take().begin;
        Syntax operand = deeper([this] {
            return negation();
        });
        const std::size_t end = operand.end;
        std::vector<Syntax> children;
        children.push_back(std::move(operand));
        return node(Kind::Not, begin, end, std::move(children));
    }

    Syntax comparison() {
        Syntax left = sum();
        for (const auto& [symbol, comparator] : kComparators) {
            if (m_hasFailed || !takeIf(Token::Kind::Symbol, symbol))
                continue;
            Syntax right = sum();
            Syntax tree = node(Kind::Compare, left.begin, right.end, {});
            tree.comparator = comparator;
            tree.children.push_back(std::move(left));
            tree.children.push_back(std::move(right));
            return tree;
        }
        return left;
    }

    Syntax operation(Kind kind, std::string_view one, std::string_view other, Syntax (Parser::*operand)()) {
        Syntax first = (this->*operand)();
        if (m_hasFailed || (!isSymbol(one) && !isSymbol(other)))
            return first;
        Syntax tree = node(kind, first.begin, first.end, {});
        tree.children.push_back(std::move(first));
        while (!m_hasFailed && (isSymbol(one) || isSymbol(other))) {
            tree.operators += take().text;
            tree.children.push_back((this->*operand)());
        }
        tree.end = tree.children.back().end;
        return tree;
    }

    Syntax sum() { return operation(Kind::Sum, "+", "-", &Parser::product); }
    Syntax product() { return operation(Kind::Product, "*", "/", &Parser::signedTerm); }

    Syntax signedTerm() {
        if (!isSymbol("-"))
            return term();
        const std::size_t begin = take().begin;
        Syntax operand = deeper([this] {
            return signedTerm();
        });
        const std::size_t end = operand.end;
        std::vector<Syntax> children;
        children.push_back(std::move(operand));
        return node(Kind::Negate, begin, end, std::move(children));
    }

    Syntax term() {
        if (m_hasFailed)
            return {};
        const Token token = now();
        if (token.kind == Token::Kind::Number || token.kind == Token::Kind::Quoted) {
            take();
            Syntax leaf =
                node(token.kind == Token::Kind::Number ? Kind::Number : Kind::Quoted, token.begin, token.end, {});
            leaf.text = token.text;
            leaf.unit = token.unit;
            return leaf;
        }
        if (isSymbol("(")) {
            take();
            Syntax inner = deeper([this] {
                return disjunction();
            });
            expect(")", "to close the parenthesis");
            return inner;
        }
        if (token.kind == Token::Kind::Word &&
            (!isKeyword(token.text) || token.text == "true" || token.text == "false"))
            return name(token);
        return fail(token, "expected a signal, a number or a condition, found " + described(token));
    }

    Syntax name(const Token& token) {
        take();
        Syntax leaf = node(Kind::Word, token.begin, token.end, {});
        leaf.text = token.text;
        if (isKeyword(token.text)) {
            leaf.kind = Kind::Truth;
        } else if (token.text == "aircraft") {
            expect(".", "and a name of the aircraft file, as in 'aircraft.v1'");
            if (!m_hasFailed && now().kind != Token::Kind::Word)
                return fail(now(), "expected a name of the aircraft file after 'aircraft.', found " + described(now()));
            leaf.kind = Kind::Aircraft;
            leaf.end = now().end;
            leaf.text = take().text;
        } else if (isSymbol("(")) {
            leaf.kind = Kind::Call;
            deeper([&] {
                return arguments(leaf);
            });
        }
        return leaf;
    }

    Syntax arguments(Syntax& call) {
        take();
        do {
            call.children.push_back(argument());
        } while (!m_hasFailed && takeIf(Token::Kind::Symbol, ","));
        call.end = now().end;
        expect(")", "or ',' in the list of '" + call.text + "'");
        return {};
    }

    Syntax argument() {
        Syntax first = disjunction();
        if (m_hasFailed || !isSymbol(".."))
            return first;
        Syntax window = node(Kind::Window, first.begin, now().end, {});
        take();
        window.children.push_back(std::move(first));
        if (!isSymbol(")") && !isSymbol(",")) {
            window.children.push_back(sum());
            window.end = window.children.back().end;
        }
        return window;
    }

    std::vector<Token> m_tokens;
    std::vector<ConditionProblem>& m_problems;
    std::size_t m_at = 0;
    int m_depth = 0;
    bool m_hasFailed = false;
};

} // namespace

std::optional<Syntax> parseCondition(std::string_view text, std::vector<ConditionProblem>& problems) {
    std::vector<Token> tokens = tokensOf(text, problems);
    if (tokens.empty())
        return std::nullopt;
    if (tokens.size() == 1) {
        problems.push_back({0, "syntax", "the condition is empty; write one, as in 'parking_brake'", false});
        return std::nullopt;
    }
    return Parser(std::move(tokens), problems).run();
}

} // namespace flowhand
