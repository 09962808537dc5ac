#include "base/tomlfile.h"

#include <algorithm>

#include <toml++/toml.h>

#include "base/names.h"
#include "base/textfile.h"

namespace flowhand {

namespace {

/// Dots in one key. Each is a table in a table, which parser and tree go down one by one; people write two or three.
constexpr std::ptrdiff_t kMostKeyDots = 100;

Status checkKeyDepth(std::string_view source, const std::string& name) {
    int number = 1;
    for (std::size_t begin = 0; begin < source.size(); ++number) {
        const std::size_t end = std::min(source.find('\n', begin), source.size());
        const std::string_view line = source.substr(begin, end - begin);
        const std::string_view key = line.substr(0, line.find_first_of("=\"'#"));
        if (std::count(key.begin(), key.end(), '.') > kMostKeyDots)
            return failure("bad-toml", "this key has more than 100 parts", {name, number, 1});
        begin = end + 1;
    }
    return {};
}

SourcePlace placeOfNode(const toml::node& node, const std::string& file) {
    const toml::source_position at = node.source().begin;
    return {file, static_cast<int>(at.line), static_cast<int>(at.column)};
}

TomlNode treeOf(const toml::node& node, const std::string& file) {
    TomlNode tree;
    tree.place = placeOfNode(node, file);
    if (const auto* text = node.as_string()) {
        tree.kind = TomlNode::Kind::Text;
        tree.text = text->get();
    } else if (const auto* integer = node.as_integer()) {
        tree.kind = TomlNode::Kind::Integer;
        tree.integer = integer->get();
        tree.real = static_cast<double>(tree.integer);
    } else if (const auto* real = node.as_floating_point()) {
        tree.kind = TomlNode::Kind::Float;
        tree.real = real->get();
    } else if (const auto* boolean = node.as_boolean()) {
        tree.kind = TomlNode::Kind::Boolean;
        tree.boolean = boolean->get();
    } else if (const auto* array = node.as_array()) {
        tree.kind = TomlNode::Kind::Array;
        for (const toml::node& item : *array)
            tree.items.push_back(treeOf(item, file));
    } else if (const auto* table = node.as_table()) {
        tree.kind = TomlNode::Kind::Table;
        for (const auto& [key, member] : *table)
            tree.members.push_back({std::string(key.str()), treeOf(member, file)});
        // toml++ sorts by key; people expect the order in which they wrote.
        std::stable_sort(tree.members.begin(), tree.members.end(), [](const auto& a, const auto& b) {
            return std::pair(a.second.place.line, a.second.place.column) <
                   std::pair(b.second.place.line, b.second.place.column);
        });
    } else {
        tree.kind = TomlNode::Kind::Other;
    }
    return tree;
}

std::size_t offsetOf(std::string_view source, const SourcePlace& place) {
    std::size_t at = 0;
    for (int line = 1; line < place.line && at < source.size(); ++at)
        if (source[at] == '\n')
            ++line;
    return std::min(source.size(), at + static_cast<std::size_t>(std::max(0, place.column - 1)));
}

bool isContinuation(char c) {
    return (static_cast<unsigned char>(c) & 0xC0u) == 0x80u;
}

SourcePlace placeAt(std::string_view source, std::size_t offset, const std::string& file) {
    SourcePlace place{file, 1, 1};
    for (std::size_t i = 0; i < offset && i < source.size(); ++i) {
        if (source[i] == '\n') {
            ++place.line;
            place.column = 1;
        } else if (!isContinuation(source[i])) {
            ++place.column;
        }
    }
    return place;
}

/// Steps over one escape sequence that begins at source[at] == '\\'; how many bytes of value it makes.
std::size_t skipEscape(std::string_view source, std::size_t& at) {
    const char kind = at + 1 < source.size() ? source[at + 1] : '\0';
    const std::size_t digits = kind == 'u' ? 4 : kind == 'U' ? 8 : 0;
    if (digits > 0) {
        const std::string code(source.substr(at + 2, digits));
        const unsigned long value = std::strtoul(code.c_str(), nullptr, 16);
        at += 2 + digits;
        return value < 0x80 ? 1 : value < 0x800 ? 2 : value < 0x10000 ? 3 : 4;
    }
    if (kind == '\n' || kind == '\r' || kind == ' ' || kind == '\t') {
        ++at;
        while (at < source.size() &&
               (source[at] == '\n' || source[at] == '\r' || source[at] == ' ' || source[at] == '\t'))
            ++at;
        return 0;
    }
    at += 2;
    return 1;
}

} // namespace

const TomlNode* TomlNode::find(std::string_view key) const {
    for (const auto& [name, member] : members)
        if (name == key)
            return &member;
    return nullptr;
}

Result<TomlFile> TomlFile::load(const std::string& path) {
    Result<std::string> source = readFile(path);
    if (!source)
        return tl::unexpected(source.error());
    return parse(std::move(*source), path);
}

Result<TomlFile> TomlFile::parse(std::string source, std::string name) {
    if (const Status shallow = checkKeyDepth(source, name); !shallow)
        return tl::unexpected(shallow.error());
    TomlFile file;
    file.m_source = std::move(source);
    try {
        file.m_root = treeOf(toml::parse(file.m_source), name);
        file.m_root.place = {std::move(name), 1, 1};
    } catch (const toml::parse_error& problem) {
        return failure(
            "bad-toml", std::string(problem.description()),
            {name, static_cast<int>(problem.source().begin.line), static_cast<int>(problem.source().begin.column)});
    }
    return file;
}

SourcePlace TomlFile::placeInText(const TomlNode& text, std::size_t offset) const {
    const std::string_view source = m_source;
    std::size_t at = offsetOf(source, text.place);
    if (at >= source.size() || (source[at] != '"' && source[at] != '\''))
        return text.place;
    const char quote = source[at];
    const bool isLong = source.substr(at, 3) == std::string(3, quote);
    at += isLong ? 3 : 1;
    if (isLong && source.substr(at, 1) == "\n")
        ++at;
    else if (isLong && source.substr(at, 2) == "\r\n")
        at += 2;
    for (std::size_t made = 0; made < offset && at < source.size();) {
        if (quote == '"' && source[at] == '\\') {
            made += skipEscape(source, at);
        } else {
            ++made;
            ++at;
        }
    }
    while (quote == '"' && at + 1 < source.size() && source[at] == '\\') {
        std::size_t next = at;
        if (skipEscape(source, next) > 0)
            break;
        at = next; // a line continuation makes nothing: the character is behind it
    }
    return placeAt(source, at, text.place.file);
}

TomlReader::TomlReader(const TomlFile& file, const TomlNode& table, std::string what, Problems& problems)
    : m_file(file), m_table(table), m_what(std::move(what)), m_problems(problems) {}

const TomlNode* TomlReader::node(std::string_view key) {
    m_asked.emplace(key);
    return m_table.find(key);
}

const TomlNode* TomlReader::ask(std::string_view key, TomlNode::Kind kind, std::string_view expected) {
    const TomlNode* found = node(key);
    if (found == nullptr || found->kind == kind)
        return found;
    m_problems.error("wrong-type", "'" + std::string(key) + "' of " + m_what + " must be " + std::string(expected),
                     found->place);
    return nullptr;
}

std::optional<std::string> TomlReader::text(std::string_view key) {
    const TomlNode* found = ask(key, TomlNode::Kind::Text, "a text in quotes");
    return found ? std::optional(found->text) : std::nullopt;
}

std::optional<bool> TomlReader::boolean(std::string_view key) {
    const TomlNode* found = ask(key, TomlNode::Kind::Boolean, "true or false");
    return found ? std::optional(found->boolean) : std::nullopt;
}

std::optional<double> TomlReader::number(std::string_view key) {
    const TomlNode* found = node(key);
    if (found != nullptr && found->kind == TomlNode::Kind::Integer)
        return found->real;
    found = ask(key, TomlNode::Kind::Float, "a number");
    if (found != nullptr && !(found->real - found->real == 0.0)) {
        m_problems.error("wrong-type", "'" + std::string(key) + "' of " + m_what + " must be a finite number",
                         found->place);
        return std::nullopt;
    }
    return found ? std::optional(found->real) : std::nullopt;
}

std::optional<std::int64_t> TomlReader::integer(std::string_view key) {
    const TomlNode* found = ask(key, TomlNode::Kind::Integer, "a whole number");
    return found ? std::optional(found->integer) : std::nullopt;
}

std::optional<Duration> TomlReader::duration(std::string_view key) {
    const TomlNode* found = ask(key, TomlNode::Kind::Text, "a length of time in quotes, as in \"2 s\"");
    if (found == nullptr)
        return std::nullopt;
    Result<Duration> value = parseDuration(found->text);
    if (value)
        return *value;
    m_problems.error(value.error().code, "'" + std::string(key) + "' of " + m_what + ": " + value.error().message,
                     found->place);
    return std::nullopt;
}

std::vector<std::string> TomlReader::texts(std::string_view key) {
    const TomlNode* found = node(key);
    if (found == nullptr)
        return {};
    if (found->kind == TomlNode::Kind::Text)
        return {found->text};
    std::vector<std::string> all;
    const bool isList = found->kind == TomlNode::Kind::Array;
    for (const TomlNode& item : found->items)
        if (item.kind == TomlNode::Kind::Text)
            all.push_back(item.text);
    if (!isList || all.size() != found->items.size())
        m_problems.error("wrong-type", "'" + std::string(key) + "' of " + m_what + " must be a list of texts",
                         found->place);
    return all;
}

std::vector<double> TomlReader::numbers(std::string_view key) {
    const TomlNode* found = ask(key, TomlNode::Kind::Array, "a list of numbers");
    std::vector<double> all;
    if (found == nullptr)
        return all;
    for (const TomlNode& item : found->items)
        if (item.kind == TomlNode::Kind::Integer ||
            (item.kind == TomlNode::Kind::Float && item.real - item.real == 0.0))
            all.push_back(item.real);
    if (all.size() != found->items.size())
        m_problems.error("wrong-type", "'" + std::string(key) + "' of " + m_what + " must be a list of finite numbers",
                         found->place);
    return all;
}

const TomlNode* TomlReader::table(std::string_view key) {
    return ask(key, TomlNode::Kind::Table, "a table");
}

std::vector<const TomlNode*> TomlReader::tables(std::string_view key) {
    std::vector<const TomlNode*> all;
    const TomlNode* found = ask(key, TomlNode::Kind::Array, "a list of tables, written [[" + std::string(key) + "]]");
    if (found == nullptr)
        return all;
    for (const TomlNode& item : found->items) {
        if (item.kind == TomlNode::Kind::Table)
            all.push_back(&item);
        else
            m_problems.error("wrong-type", "'" + std::string(key) + "' of " + m_what + " must hold tables only",
                             item.place);
    }
    return all;
}

std::string TomlReader::requiredText(std::string_view key) {
    std::optional<std::string> found = text(key);
    if (!found && m_table.find(key) == nullptr)
        m_problems.error("missing-key", m_what + " needs '" + std::string(key) + "'", m_table.place);
    return found.value_or(std::string());
}

SourcePlace TomlReader::placeOf(std::string_view key) const {
    const TomlNode* found = m_table.find(key);
    return found ? found->place : m_table.place;
}

void TomlReader::finish() {
    const std::vector<std::string> known(m_asked.begin(), m_asked.end());
    for (const auto& [key, member] : m_table.members)
        if (m_asked.find(key) == m_asked.end())
            m_problems.error("unknown-key", m_what + " has no '" + key + "'" + nearestHint(key, known), member.place);
}

} // namespace flowhand
