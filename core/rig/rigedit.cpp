#include "rig/rigedit.h"

#include <algorithm>
#include <optional>

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

/// The table that is edited: the `item`th [[name]] of the file, or its one [name].
struct Target {
    std::string_view name;
    std::optional<std::size_t> item;

    /// Of `root`, const or not; null when it is not there.
    template <class Node>
    [[nodiscard]] Node* in(Node& root) const {
        for (auto& member : root.members) {
            if (member.first != name)
                continue;
            if (!item)
                return &member.second;
            return *item < member.second.items.size() ? &member.second.items[*item] : nullptr;
        }
        return nullptr;
    }
};

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

/// Whether `after` is `before` but for `key` of the table, which has the value that `value` says, or is gone.
bool isJustThat(const TomlFile& before, const TomlFile& after, const Target& target, const RigKey& key) {
    TomlNode wanted = before.root();
    std::vector<TomlMember>& members = target.in(wanted)->members;
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
    if (key.value.empty())
        return text;
    // Behind the wiring of a control, and else below the table's head.
    const TomlNode* wiring = table.find("wiring");
    const std::size_t begin = offsetOf(text, wiring != nullptr ? wiring->place : table.place);
    const std::size_t end = endOfLine(text, wiring != nullptr ? endOfValue(text, begin) : begin);
    return text.insert(end, "\n" + key.key + " = " + key.value);
}

Result<std::string> withKeys(std::string source, const Target& target, const std::vector<RigKey>& keys) {
    for (const RigKey& key : keys) {
        const Result<TomlFile> before = TomlFile::parse(source, {});
        if (!before)
            return tl::unexpected(before.error());
        const TomlNode* table = target.in(before->root());
        std::string text = table != nullptr ? edited(before->source(), *table, key) : std::string();
        const Result<TomlFile> after = TomlFile::parse(text, {});
        if (table == nullptr || !after || !isJustThat(*before, *after, target, key))
            return failure("cannot-edit",
                           (target.item ? "this " + std::string(target.name) : "[" + std::string(target.name) + "]") +
                               " is written in a way that cannot be changed by the program; " +
                               (key.value.empty() ? "remove '" + key.key + "'"
                                                  : "write yourself: " + key.key + " = " + key.value));
        source = std::move(text);
    }
    return source;
}

} // namespace

Result<std::string> withControlKeys(std::string source, std::size_t control, const std::vector<RigKey>& keys) {
    return withKeys(std::move(source), {"control", control}, keys);
}

Result<std::string> withTableKeys(std::string source, std::string_view name, const std::vector<RigKey>& keys) {
    const Result<TomlFile> file = TomlFile::parse(source, {});
    if (!file)
        return tl::unexpected(file.error());
    const Target target{name, std::nullopt};
    const bool isAnySet = std::any_of(keys.begin(), keys.end(), [](const RigKey& key) {
        return !key.value.empty();
    });
    if (target.in(file->root()) == nullptr) {
        if (!isAnySet)
            return source;
        source += std::string(source.empty() || source.back() == '\n' ? "" : "\n") + "\n[" + std::string(name) + "]\n";
    }
    return withKeys(std::move(source), target, keys);
}

Result<std::vector<RigKey>> controlKeysIn(std::string source, std::size_t control,
                                          const std::vector<std::string>& keys) {
    const Result<TomlFile> file = TomlFile::parse(std::move(source), {});
    if (!file)
        return tl::unexpected(file.error());
    const TomlNode* table = Target{"control", control}.in(file->root());
    if (table == nullptr)
        return failure("cannot-edit", "the rig file does not have this control as a [[control]]");
    std::vector<RigKey> found;
    for (const std::string& key : keys) {
        const TomlNode* node = table->find(key);
        const std::size_t begin = node == nullptr ? 0 : offsetOf(file->source(), node->place);
        const std::size_t end = node == nullptr ? 0 : endOfValue(file->source(), begin);
        found.push_back({key, file->source().substr(begin, end - begin)});
    }
    return found;
}

} // namespace flowhand
