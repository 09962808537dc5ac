#include "rig/rigedit.h"

#include <algorithm>

#include "base/tomlfile.h"

namespace flowhand {

namespace {

/// Where a place stands in bytes; columns count characters.
std::size_t offsetOf(std::string_view text, const SourcePlace& place) {
    std::size_t at = 0;
    for (int line = 1; line < place.line && at < text.size(); ++line)
        at = std::min(text.find('\n', at), text.size() - 1) + 1;
    for (int column = 1; column < place.column && at < text.size(); ++column)
        do
            ++at;
        while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0u) == 0x80u);
    return at;
}

/// Behind the quoted text that begins at `at`, in all of TOML's four ways of quoting.
std::size_t endOfText(std::string_view text, std::size_t at) {
    const char quote = text[at];
    const std::string three(3, quote);
    const bool isLong = text.substr(at, 3) == three;
    for (at += isLong ? 3 : 1; at < text.size(); ++at) {
        if (quote == '"' && text[at] == '\\')
            ++at;
        else if (isLong ? text.substr(at, 3) == three : text[at] == quote)
            return at + (isLong ? 3 : 1);
    }
    return text.size();
}

/// Behind the value that begins at `at`.
std::size_t endOfValue(std::string_view text, std::size_t at) {
    int depth = 0;
    while (at < text.size()) {
        const char c = text[at];
        if (c == '"' || c == '\'') {
            at = endOfText(text, at);
            if (depth == 0)
                return at;
            continue;
        }
        if (c == '#') {
            if (depth == 0)
                return at;
            at = std::min(text.find('\n', at), text.size());
            continue;
        }
        if (c == '[' || c == '{')
            ++depth;
        if ((c == ']' || c == '}') && --depth == 0)
            return at + 1;
        if (depth == 0 && (c == '\n' || c == '\r' || c == ' ' || c == '\t' || c == ','))
            return at;
        ++at;
    }
    return at;
}

std::size_t endOfLine(std::string_view text, std::size_t at) {
    return std::min(text.find('\n', at), text.size());
}

const TomlNode* controlIn(const TomlFile& file, std::size_t control) {
    const TomlNode* tables = file.root().find("control");
    return tables != nullptr && control < tables->items.size() ? &tables->items[control] : nullptr;
}

bool areEqual(const TomlNode& a, const TomlNode& b) {
    if (a.kind != b.kind || a.text != b.text || a.integer != b.integer || a.real != b.real || a.boolean != b.boolean ||
        a.members.size() != b.members.size() || a.items.size() != b.items.size())
        return false;
    for (std::size_t i = 0; i < a.items.size(); ++i)
        if (!areEqual(a.items[i], b.items[i]))
            return false;
    return std::all_of(a.members.begin(), a.members.end(), [&](const TomlMember& member) {
        const TomlNode* other = b.find(member.first);
        return other != nullptr && areEqual(member.second, *other);
    });
}

/// Whether `after` is `before` but for `key` of the control, which has the value that `value` says, or is gone.
bool isJustThat(const TomlFile& before, const TomlFile& after, std::size_t control, const RigKey& key) {
    TomlNode wanted = before.root();
    const auto tables = std::find_if(wanted.members.begin(), wanted.members.end(), [](const TomlMember& member) {
        return member.first == "control";
    });
    std::vector<TomlMember>& members = tables->second.items[control].members;
    members.erase(std::remove_if(members.begin(), members.end(),
                                 [&](const TomlMember& member) {
                                     return member.first == key.key;
                                 }),
                  members.end());
    if (!key.value.empty()) {
        const Result<TomlFile> value = TomlFile::parse("value = " + key.value, {});
        if (!value || value->root().find("value") == nullptr)
            return false;
        members.push_back({key.key, *value->root().find("value")});
    }
    return areEqual(wanted, after.root());
}

/// Replaces, adds or removes the key, if the file is written line by line as people do.
std::string edited(const std::string& source, const TomlNode& table, const RigKey& key) {
    std::string text = source;
    if (const TomlNode* old = table.find(key.key)) {
        const std::size_t begin = offsetOf(text, old->place);
        const std::size_t end = endOfValue(text, begin);
        if (!key.value.empty())
            return text.replace(begin, end - begin, key.value);
        const std::size_t line = begin == 0 ? 0 : text.rfind('\n', begin - 1) + 1;
        return text.erase(line, std::min(endOfLine(text, end) + 1, text.size()) - line);
    }
    const TomlNode* wiring = table.find("wiring");
    if (key.value.empty() || wiring == nullptr)
        return text;
    const std::size_t end = endOfLine(text, endOfValue(text, offsetOf(text, wiring->place)));
    return text.insert(end, "\n" + key.key + " = " + key.value);
}

} // namespace

Result<std::string> withControlKeys(std::string source, std::size_t control, const std::vector<RigKey>& keys) {
    for (const RigKey& key : keys) {
        const Result<TomlFile> before = TomlFile::parse(source, {});
        if (!before)
            return tl::unexpected(before.error());
        const TomlNode* table = controlIn(*before, control);
        std::string text = table != nullptr ? edited(before->source(), *table, key) : std::string();
        const Result<TomlFile> after = TomlFile::parse(text, {});
        if (table == nullptr || !after || !isJustThat(*before, *after, control, key))
            return failure("cannot-edit", "this control is written in a way that cannot be changed by the program; " +
                                              (key.value.empty() ? "remove '" + key.key + "'"
                                                                 : "write yourself: " + key.key + " = " + key.value));
        source = std::move(text);
    }
    return source;
}

} // namespace flowhand
